#include "binder/papers.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "binder/cards.hpp"
#include "binder/hose_paper.hpp"
#include "binder/trend_paper.hpp"
#include "calculation/json_face.hpp"
#include "drawing/hose_tag.hpp"
#include "drawing/pdf.hpp"
#include "drawing/png.hpp"
#include "drawing/svg.hpp"

namespace wm::binder {
namespace {

constexpr double k_dots_an_inch = 150;

Problem refusal(std::string path, Kind kind, std::string what, std::string expected,
                std::string example) {
  return {kind, std::move(path), std::move(what), std::move(expected), std::move(example), {}, {}};
}

drawing::Paper paper_named(std::string_view word) {
  return word == "letter" ? drawing::Paper::letter : drawing::Paper::a4;
}

Result<bay::HoseRecord> hose_of(const bay::State& state, const RecordPaper& wanted) {
  const auto* aircraft = state.find_aircraft(wanted.aircraft);
  if (aircraft == nullptr)
    return Fail(Kind::not_found, "there is no aircraft `" + wanted.aircraft + "`");
  const auto hose = aircraft->hoses.find(wanted.id);
  if (hose == aircraft->hoses.end())
    return Fail(Kind::not_found, "there is no hose `" + wanted.id + "`");
  return hose->second;
}

std::string joined(std::initializer_list<std::string> parts, std::string_view between) {
  std::string out;
  for (const auto& part : parts) {
    if (part.empty()) continue;
    out += (out.empty() ? std::string{} : std::string(between)) + part;
  }
  return out;
}

/// The first sixteen letters of the head, in fours: enough to compare by eye.
std::string short_head(const std::string& head) {
  std::string out;
  for (std::size_t i = 0; i < head.size() && i < 16; ++i) {
    if (i > 0 && i % 4 == 0) out += ' ';
    out += head[i];
  }
  return out;
}

/// "does not conform", as on a card.
std::string in_words(evidence::Verdict verdict) {
  std::string out(evidence::word(verdict));
  std::ranges::replace(out, '-', ' ');
  return out;
}

void proved_on(drawing::HoseTag& tag, const bay::HoseRecord& hose) {
  const auto* proof = hose.latest();
  if (proof == nullptr) {
    tag.proof = "No proof test is on record.";
    return;
  }
  const auto& about = proof->about;
  const auto words =
      fmt::format("{}, {}, {}, {}: {}", about.test_pressure.text, about.held.text, about.medium,
                  quantity::print_date(proof->day), in_words(about.verdict));
  tag.proved = about.verdict == evidence::Verdict::conforms && !hose.drawn_since();
  tag.proof = hose.drawn_since() ? "Drawn anew since: " + words : words;
  tag.by = about.by;
  tag.part = about.part;
  if (about.assembled)
    tag.assembled = fmt::format("{} ({})", drawing::quarter_code(*about.assembled),
                                quantity::print_date(*about.assembled));
}

drawing::HoseTag tag_of(const bay::State& state, const RecordPaper& wanted,
                        const bay::HoseRecord& hose) {
  const auto& about = hose.about;
  drawing::HoseTag tag;
  tag.title = about.title;
  tag.registration = state.find_aircraft(wanted.aircraft)->about.registration;
  tag.between = joined({about.near_at, about.far_at}, " to ");
  tag.made_as =
      joined({joined({about.family, about.size}, " "), "overall " + about.overall.text}, ", ");
  if (about.clocking) tag.clocking = about.clocking->text + ", " + about.clocking_read;
  if (about.working_pressure) tag.working_pressure = "at most " + about.working_pressure->text;
  proved_on(tag, hose);
  tag.mark = fmt::format("WM1 {} {}", state.sequence, state.head);
  tag.mark_words =
      fmt::format("record at entry {}, head {}", state.sequence, short_head(state.head));
  return tag;
}

Checked<std::string> drawn(const drawing::Page& page, const RecordPaper& wanted,
                           const drawing::PdfInfo& info) {
  const std::array<drawing::Page, 1> pages{page};
  auto bytes = wanted.as == "svg"   ? drawing::svg(page)
               : wanted.as == "png" ? drawing::png(page, k_dots_an_inch)
                                    : drawing::pdf(pages, info);
  if (!bytes) return Fail(Problems{bytes.error()});
  return std::move(*bytes);
}

Checked<std::string> tag_paper(Binder& binder, const RecordPaper& wanted,
                               const describe::Context& context) {
  std::optional<Result<drawing::HoseTag>> tag;
  binder.look([&](const bay::State& state) {
    const auto hose = hose_of(state, wanted);
    tag = hose ? Result<drawing::HoseTag>(tag_of(state, wanted, *hose)) : Fail(hose.error());
  });
  if (!*tag) return Fail(Problems{tag->error()});
  const auto page = drawing::lay_out_tags(**tag, paper_named(wanted.paper));
  if (!page) return Fail(Problems{page.error()});
  return drawn(*page, wanted,
               {"Tag: " + (*tag)->title, "hose tag", quantity::print_date(context.today)});
}

Checked<std::string> hose_paper(Binder& binder, const RecordPaper& wanted,
                                const describe::Context& context) {
  std::optional<Result<bay::HoseRecord>> hose;
  binder.look([&](const bay::State& state) { hose = hose_of(state, wanted); });
  if (!*hose) return Fail(Problems{hose->error()});
  const auto& about = (*hose)->about;
  auto then = context;
  then.today = (*hose)->day;
  auto made = paper_of(
      {about.calculation, wanted.as, wanted.paper},
      [&](const describe::Type& type, void* out) {
        return calculation::read_json(about.sheet, type, out);
      },
      then);
  if (!made) return Fail(made.error());
  return std::move(made->bytes);
}

Checked<std::string> trend_paper(Binder& binder, const RecordPaper& wanted,
                                 const describe::Context& context) {
  std::optional<Result<drawing::Page>> page;
  binder.look([&](const bay::State& state) {
    const auto* aircraft = state.find_aircraft(wanted.aircraft);
    if (aircraft == nullptr || !aircraft->checks.contains(wanted.id)) {
      page = Fail(Kind::not_found, "there is no check `" + wanted.id + "`");
      return;
    }
    const auto history = desk::check_history({wanted.aircraft, wanted.id}, state, context);
    page = history ? trend_page(*history,
                                joined({aircraft->about.name, aircraft->about.registration}, " "),
                                wanted.paper == "letter")
                   : Result<drawing::Page>(Fail(history.error().front()));
  });
  if (!*page) return Fail(Problems{page->error()});
  return drawn(**page, wanted, {"Trend", "readings", quantity::print_date(context.today)});
}

Checked<std::string> card_paper(Binder& binder, const RecordPaper& wanted, CardKind kind,
                                const describe::Context& context) {
  std::optional<Result<drawing::Card>> made;
  binder.look([&](const bay::State& state) {
    made = binder::card(state, {kind, wanted.aircraft, wanted.id}, context.today);
  });
  if (!*made) return Fail(Problems{made->error()});
  auto printed = print_card(**made, paper_named(wanted.paper), wanted.as);
  if (!printed) return Fail(Problems{printed.error()});
  return std::move(*printed);
}

}  // namespace

Checked<std::string> record_paper(Binder& binder, const RecordPaper& wanted,
                                  const describe::Context& context) {
  if (wanted.as != "pdf" && wanted.as != "svg" && wanted.as != "png")
    return Fail(Problems{refusal("as", Kind::unknown_choice,
                                 fmt::format("nothing is printed as `{}`", wanted.as),
                                 "pdf, svg or png", "pdf")});
  if (wanted.kind == "tag") return tag_paper(binder, wanted, context);
  if (wanted.kind == "trend") return trend_paper(binder, wanted, context);
  if (wanted.kind == "hose") return hose_paper(binder, wanted, context);
  const auto kind = card_kind(wanted.kind);
  if (!kind)
    return Fail(Problems{refusal("kind", Kind::unknown_choice,
                                 fmt::format("there is no paper `{}`", wanted.kind),
                                 "work, stage, entry, hose, tag or trend", "work")});
  return card_paper(binder, wanted, *kind, context);
}

}  // namespace wm::binder
