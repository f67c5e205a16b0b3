#include "drawing/detail/hose_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "drawing/detail/hose_pane.hpp"

namespace wm::drawing::detail {
namespace {

constexpr std::array<double, 6> k_sizes{2.6, 2.45, 2.3, 2.15, 2.0, 1.9};
constexpr double k_leading_small = 1.28;

std::string_view form_words(hose::EndForm form) {
  switch (form) {
    case hose::EndForm::straight:
      return "straight swivel";
    case hose::EndForm::elbow_45:
      return "45 degree elbow";
    case hose::EndForm::elbow_90:
      return "90 degree elbow";
    case hose::EndForm::male_thread:
      return "male thread";
  }
  return "";
}

/// The ratios of a direction, as entered.
std::string way_words(const hose::Way& way) {
  return fmt::format("({:.3g}, {:.3g}, {:.3g})", way.x, way.y, way.z);
}

std::string end_words(const Subject& subject, const hose::HoseEnd& end, std::string_view which,
                      const std::string& screwed_to) {
  std::string out =
      fmt::format("{}: {}, {}", which, screwed_to.empty() ? "screwed to: not entered" : screwed_to,
                  form_words(end.form));
  if (end.rigid) out += ", rigid " + subject.say(*end.rigid);
  if (end.drop) out += ", drop " + subject.say(*end.drop);
  out += fmt::format(". Seat x {}, y {}, z {}; hose leaves {}", subject.say(end.seat.x),
                     subject.say(end.seat.y), subject.say(end.seat.z), way_words(end.leaves));
  if (end.port) out += ", port " + way_words(*end.port);
  return out + ".";
}

Block ends(const Subject& subject) {
  const auto& in = subject.in;
  return {"Ends (x aft, y right, z up)",
          {end_words(subject, in.near_end, "Near", in.near_at),
           end_words(subject, in.far_end, "Far", in.far_at)},
          true,
          {}};
}

Block limits(const Subject& subject) {
  const auto& in = subject.in;
  const auto& answer = subject.answer;
  Block out{"Limits, and where they come from", {}, false, "see the answer of hose-length"};
  const std::string source =
      in.radius_source.empty() ? "entered, its source not given" : in.radius_source;
  out.lines.push_back(fmt::format(
      "Least bend radius {} {}{}: {}.", subject.say(in.least_radius),
      in.radius_to == hose::RadiusTo::inside ? "to the inside" : "to the centreline",
      in.radius_to == hose::RadiusTo::inside
          ? fmt::format(", so {} to the centreline", subject.say(answer.length.least_radius))
          : std::string{},
      source));
  const bool standard =
      std::abs(in.lengthens.si - 0.02) < 1e-9 && std::abs(in.shortens.si - 0.04) < 1e-9;
  out.lines.push_back(fmt::format("Under pressure +{} % to -{} % of the hose: {}.",
                                  quantity::significant(100 * in.lengthens.si, 2),
                                  quantity::significant(100 * in.shortens.si, 2),
                                  standard ? "AC 43.13-1B CHG 1, fig. 9-9" : "entered"));
  if (answer.shape.clocking)
    out.lines.emplace_back("Clocking tolerance: MIL-DTL-83796/5, fig. 3, notes 1, 3, 4 and 5.");
  for (const auto& near : answer.length.near) {
    const auto found = std::ranges::find(in.keep_outs, near.name, &hose::KeepOut::name);
    const bool entered = found == in.keep_outs.end() || found->needed.has_value();
    if (!near.needed) continue;
    out.lines.push_back(
        fmt::format("{} from {}: {}.",
                    found != in.keep_outs.end() && found->needed ? subject.say(*found->needed)
                                                                 : subject.say(*near.needed),
                    near.name, entered ? "entered" : "AC 43.13-1B CHG 1, par. 11-96"));
  }
  return out;
}

Block pressure(const Subject& subject) {
  const auto& in = subject.in;
  const auto say = [](const auto& p) { return p.text; };
  Block out{"Rating and proof", {}, true, {}};
  out.lines.push_back(fmt::format(
      "Hose: {}{}.", in.family.empty() ? "family not entered" : in.family,
      in.size.empty() ? std::string(", size not entered") : fmt::format(" {}", in.size)));
  out.lines.push_back(in.working_pressure ? "Working pressure with surges " +
                                                say(*in.working_pressure) + ": entered."
                                          : std::string("Working pressure: not entered."));
  out.lines.push_back(
      in.proof_pressure
          ? fmt::format("Proof pressure {}: {}.", say(*in.proof_pressure),
                        in.proof_source.empty() ? "its source not given" : in.proof_source)
          : std::string("Proof pressure: not entered."));
  return out;
}

Block assumed(const Subject& subject) {
  const bool weight = subject.in.weight.has_value();
  Block out{"Taken", {}, true, {}};
  out.lines.push_back(fmt::format(
      "A round hose, made and stored straight, not twisted; no friction; ends rigid; weight {}. "
      "Radii are to the centreline. Fittings are drawn simplified.",
      weight ? "as entered" : "left out"));
  return out;
}

struct Setting {
  const TextMeasurer& measurer;
  double size;
  [[nodiscard]] double step() const { return size * k_leading_small; }
};

/// Sets into the frames; writes only where `items` is given. @return whether all fits
bool set(const Setting& setting, const std::vector<Block>& blocks, const std::vector<Frame>& frames,
         std::vector<Item>* items) {
  std::size_t at = 0;
  double y = 0;
  const double step = setting.step();
  const auto left = [&] { return frames[at].height - y; };
  const auto write = [&](const std::string& text, double indent, Weight weight) {
    if (items != nullptr)
      items->emplace_back(Text{{frames[at].left + indent, frames[at].top + y + setting.size},
                               text,
                               setting.size,
                               weight,
                               Anchor::start,
                               Role::ink});
    y += step;
  };
  for (const auto& block : blocks) {
    if (block.lines.empty()) continue;
    const double before = y > 0 ? 0.55 * step : 0;
    // A heading is not left alone at the foot of a frame.
    const auto first = setting.measurer.wrap(block.lines.front(), setting.size, Weight::normal,
                                             frames[at].width - 2);
    if (left() < before + step * (1.4 + static_cast<double>(first.size()))) {
      if (++at == frames.size()) return false;
      y = 0;
    } else {
      y += before;
    }
    write(block.heading, 0, Weight::bold);
    for (const auto& line : block.lines) {
      const auto rows =
          setting.measurer.wrap(line, setting.size, Weight::normal, frames[at].width - 2);
      if (left() < step * static_cast<double>(rows.size())) {
        if (++at == frames.size()) return false;
        y = 0;
        for (const auto& row :
             setting.measurer.wrap(line, setting.size, Weight::normal, frames[at].width - 2)) {
          if (left() < step) return false;
          write(row, 2, Weight::normal);
        }
        continue;
      }
      for (const auto& row : rows) write(row, 2, Weight::normal);
    }
  }
  return true;
}

std::vector<Block> cut_to(const std::vector<Block>& blocks, std::size_t most) {
  auto out = blocks;
  for (auto& block : out) {
    if (block.whole || block.lines.size() <= most) continue;
    const std::size_t more = block.lines.size() - (most - 1);
    block.lines.resize(most - 1);
    block.lines.push_back(fmt::format("and {} more: {}", more, block.cut_words));
  }
  return out;
}

}  // namespace

std::vector<Block> blocks_of(const Subject& subject, const std::vector<std::string>& not_drawn) {
  std::vector<Block> out;
  out.push_back({"In words", subject.answer.lines, false, "see the answer of hose-sheet"});
  out.push_back(ends(subject));
  out.push_back(limits(subject));
  out.push_back(pressure(subject));
  out.push_back({"Cautions", subject.about.cautions, true, {}});
  std::vector<std::string> ghosts;
  for (const auto& ghost : subject.answer.ghosts) ghosts.push_back(ghost.why);
  if (!ghosts.empty()) {
    std::string all = "Thin dashed: ";
    for (std::size_t i = 0; i < std::min<std::size_t>(ghosts.size(), 4); ++i)
      all += (i > 0 ? "; " : "") + ghosts[i];
    if (ghosts.size() > 4)
      all += fmt::format("; and {} more: see the answer of hose-sheet", ghosts.size() - 4);
    out.push_back({"Where motion takes it", {all + "."}, true, {}});
  }
  out.push_back({"Not in the views", not_drawn, false, "see the answer of hose-length"});
  Block notes{"Mind", subject.answer.length.notes, false, "see the answer of hose-length"};
  for (const auto& note : subject.answer.shape.notes)
    if (std::ranges::find(notes.lines, note) == notes.lines.end()) notes.lines.push_back(note);
  // Said under "Taken" in any case.
  std::erase_if(notes.lines, [](const std::string& n) { return n.starts_with("taken"); });
  out.push_back(std::move(notes));
  out.push_back(assumed(subject));
  std::string sources;
  for (const auto& s : subject.about.sources) sources += (sources.empty() ? "" : "; ") + s;
  if (!sources.empty()) out.push_back({"Sources of the sums", {sources + "."}, false, {}});
  return out;
}

bool set_blocks(std::vector<Item>& items, const TextMeasurer& measurer,
                const std::vector<Block>& blocks, const std::vector<Frame>& frames) {
  for (const double size : k_sizes)
    if (set({measurer, size}, blocks, frames, nullptr))
      return set({measurer, size}, blocks, frames, &items);
  const double smallest = k_sizes.back();
  for (std::size_t most = 24; most >= 1; --most) {
    const auto cut = cut_to(blocks, most);
    if (set({measurer, smallest}, cut, frames, nullptr))
      return set({measurer, smallest}, cut, frames, &items);
  }
  return false;
}

}  // namespace wm::drawing::detail
