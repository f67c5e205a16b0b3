#include "hose/length.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using quantity::Length;
using quantity::pencil;

constexpr Length k_eighth{0.0254 / 8.0};
constexpr Length k_millimetre{0.001};
constexpr double k_rounding_m = 1e-9;

Problem problem(std::string path, Kind kind, std::string what, std::string expected = {}) {
  Problem p;
  p.kind = kind;
  p.path = std::move(path);
  p.what = std::move(what);
  p.expected = std::move(expected);
  return p;
}

/// What is known of the ends before any length is worked out.
struct Ends {
  std::optional<Length> cut_near, cut_far;  ///< of a pair: half each
  std::optional<Length> rigid_near, rigid_far;
  bool from_pair{};
  [[nodiscard]] std::optional<Length> cut() const {
    if (!cut_near || !cut_far) return std::nullopt;
    return *cut_near + *cut_far;
  }
  [[nodiscard]] std::optional<Length> rigid() const {
    if (!rigid_near || !rigid_far) return std::nullopt;
    return *rigid_near + *rigid_far;
  }
};

std::optional<Length> cut_of(const EndFitting& end, const char* name, const std::string& size,
                             const describe::Context& context, Problems& problems) {
  if (end.cut_off) return end.cut_off->value;
  if (end.family.empty()) return std::nullopt;
  auto found = cut_off(context, end.family, size);
  if (found) return *found;
  Problem p = found.error();
  if (p.path == "family") p.path = fmt::format("{}/family", name);
  problems.push_back(std::move(p));
  return std::nullopt;
}

Ends ends_of(const LengthAllowanceInput& in, const describe::Context& context, Problems& problems,
             std::vector<std::string>& notes) {
  Ends ends;
  ends.cut_near = cut_of(in.near_end, "near_end", in.size, context, problems);
  ends.cut_far = cut_of(in.far_end, "far_end", in.size, context, problems);
  if (!in.pair_form.empty()) {
    if (ends.cut_near || ends.cut_far) {
      problems.push_back(problem("pair_form", Kind::conflict,
                                 "cut-offs of single ends and of the pair are both given",
                                 "one of the two"));
    }
    if (auto pair = cut_off_pair(context, in.size, in.pair_form)) {
      ends.cut_near = *pair / 2.0;
      ends.cut_far = ends.cut_near;
      ends.from_pair = true;
    } else {
      problems.push_back(pair.error());
    }
  }
  const auto rigid = [&](const EndFitting& end, const std::optional<Length>& cut) {
    if (end.rigid) return std::optional<Length>(end.rigid->value);
    if (cut) {
      notes.push_back(
          "rigid length of an end not entered: its cut-off stands in for it, which makes the hose "
          "a little longer; measure from the seat to where the hose can bend");
    }
    return cut;
  };
  ends.rigid_near = rigid(in.near_end, ends.cut_near);
  ends.rigid_far = rigid(in.far_end, ends.cut_far);
  if (notes.size() > 1) notes.pop_back();
  return ends;
}

void check_fields(const LengthAllowanceInput& in, const Ends& ends, Problems& problems) {
  if (!in.between_seats && !in.overall) {
    problems.push_back(problem("between_seats", Kind::missing, "there is no length to start from",
                               "the distance between the seats, or an overall length"));
  }
  if (in.slack_from > in.slack_to) {
    problems.push_back(
        problem("slack_from", Kind::conflict, "least slack above most slack", "5 % to 8 %"));
  }
  if (in.between_seats && !ends.rigid()) {
    problems.push_back(problem(ends.rigid_near ? "far_end/rigid" : "near_end/rigid", Kind::missing,
                               "how much of the end fitting does not bend is not known",
                               "its length from the seat to where the hose can bend, or its "
                               "cut-off"));
  }
  const auto whole = in.between_seats ? in.between_seats : in.overall;
  if (whole && ends.rigid() && *ends.rigid() >= whole->value) {
    problems.push_back(problem(in.between_seats ? "between_seats" : "overall", Kind::conflict,
                               "the end fittings alone are longer than that",
                               "a length above that of both fittings"));
  }
  if (whole && ends.cut() && in.overall && *ends.cut() >= in.overall->value) {
    problems.push_back(problem("overall", Kind::conflict, "nothing is left to cut",
                               "an overall length above both cut-offs"));
  }
}

/// Up to the next eighth of an inch (or millimetre), as lengths are called out.
Length rounded_up(Length exact, Length step) { return step * std::ceil(exact / step - 1e-6); }

std::string per_cent_text(quantity::Fraction f) { return pencil(f.si * 100.0) + " %"; }

std::string tolerance_advice(const describe::Context& context, Length cut) {
  const describe::Table* table = context.table("hose-length-tolerance");
  if (table == nullptr) return {};
  const double in = cut / quantity::inches(1);
  for (const auto& row : table->rows) {
    const auto up_to = quantity::parse_number(row[1]);
    if (up_to && in <= *up_to + 1e-9) {
      return fmt::format("advice: hose of this length is usually cut to +-{} in ({}, {})", row[2],
                         table->document, table->place);
    }
  }
  return fmt::format("advice: hose of this length is usually cut to +-1 % ({}, {})",
                     table->document, table->place);
}

class Work {
 public:
  Work(const LengthAllowanceInput& in, const Ends& ends, const describe::Context& context)
      : in_(in),
        ends_(ends),
        context_(context),
        unit_(quantity::typed_unit(in.between_seats ? *in.between_seats : *in.overall,
                                   context.units)) {}

  LengthAllowanceAnswer run(std::vector<std::string> notes) {
    out_.notes = std::move(notes);
    if (in_.between_seats) from_gap();
    choose();
    cut();
    flexible();
    surroundings();
    return std::move(out_);
  }

 private:
  std::string say(Length l) const { return pencil(l.si, unit_); }
  EnteredLength made(Length l) const { return {l, 0.01 * unit_.factor, {}}; }

  void from_gap() {
    const Length gap = in_.between_seats->value - *ends_.rigid();
    out_.working.push_back(fmt::format("gap to bridge = {} - {} - {} = {}",
                                       say(in_.between_seats->value), say(*ends_.rigid_near),
                                       say(*ends_.rigid_far), say(gap)));
    const Length shortest = flexible_length(gap, in_.slack_from, in_.slack_rule);
    const Length longest = flexible_length(gap, in_.slack_to, in_.slack_rule);
    const bool total = in_.slack_rule == SlackRule::of_total;
    const auto sum = [&](quantity::Fraction s) {
      return total ? fmt::format("{} / (1 - {})", say(gap), pencil(s.si))
                   : fmt::format("{} x (1 + {})", say(gap), pencil(s.si));
    };
    out_.working.push_back(fmt::format(
        "hose at {} slack {} = {} = {}", per_cent_text(in_.slack_from),
        total ? "of its total length" : "beyond the gap", sum(in_.slack_from), say(shortest)));
    out_.working.push_back(fmt::format("hose at {} slack = {} = {}", per_cent_text(in_.slack_to),
                                       sum(in_.slack_to), say(longest)));
    out_.flexible_shortest = made(shortest);
    out_.flexible_longest = made(longest);
    out_.overall_shortest = made(shortest + *ends_.rigid());
    out_.overall_longest = made(longest + *ends_.rigid());
    out_.working.push_back(fmt::format("overall = hose + both rigid ends = {} to {}",
                                       say(out_.overall_shortest->value),
                                       say(out_.overall_longest->value)));
  }

  void choose() {
    if (in_.overall) {
      out_.overall = *in_.overall;
      return;
    }
    const bool inches = unit_.symbol == "in" || unit_.symbol == "ft";
    const Length up = rounded_up(out_.overall_shortest->value, inches ? k_eighth : k_millimetre);
    // A very short hose may have no such mark inside its band.
    out_.overall = made(up <= out_.overall_longest->value ? up : out_.overall_shortest->value);
    out_.overall.resolution_si = 0.001 * unit_.factor;
    out_.working.push_back(fmt::format("to make: the shortest, rounded up to {} = {}",
                                       inches ? "the next eighth of an inch" : "the millimetre",
                                       say(out_.overall.value)));
  }

  void cut() {
    const auto off = ends_.cut();
    if (!off) {
      out_.notes.push_back(
          "no cut length: the cut-off of each end is needed; measure it or take the maker's");
      return;
    }
    out_.cut_length = made(out_.overall.value - *off);
    out_.working.push_back(
        ends_.from_pair
            ? fmt::format("cut length = {} - {} (both ends together) = {}", say(out_.overall.value),
                          say(*off), say(out_.cut_length->value))
            : fmt::format("cut length = {} - {} - {} = {}", say(out_.overall.value),
                          say(*ends_.cut_near), say(*ends_.cut_far), say(out_.cut_length->value)));
    if (auto advice = tolerance_advice(context_, out_.cut_length->value); !advice.empty()) {
      out_.notes.push_back(std::move(advice));
    }
    if (ends_.from_pair && in_.size == "-8" && in_.pair_form == "45 degree elbow") {
      out_.notes.push_back(
          "the table's 3.58 in looks out of line with its neighbours: measure before cutting");
    }
    const bool table = ends_.from_pair || !in_.near_end.cut_off || !in_.far_end.cut_off;
    if (table) {
      out_.notes.push_back(
          "cut-off from a table: fittings of one number differ between makers; measure, or take "
          "the maker's figure");
    }
  }

  void flexible() {
    if (!ends_.rigid()) return;
    const Length hose = out_.overall.value - *ends_.rigid();
    out_.flexible = made(hose);
    out_.lengthens = made(hose * k_lengthens);
    out_.shortens = made(hose * k_shortens);
    out_.working.push_back(fmt::format("under pressure: +2 % of {} = {} longer, 4 % = {} shorter",
                                       say(hose), say(out_.lengthens->value),
                                       say(out_.shortens->value)));
    if (!in_.between_seats) return;
    const Length gap = in_.between_seats->value - *ends_.rigid();
    out_.slack = quantity::ratio(1.0 - gap / hose);
    out_.in_hand = made(hose * (1.0 - k_shortens) - gap);
    out_.working.push_back(fmt::format("in hand when it has shortened = {} x 0.96 - {} = {}",
                                       say(hose), say(gap), say(out_.in_hand->value)));
    if (out_.in_hand->value.si < -k_rounding_m) {
      out_.notes.push_back("too short: under pressure it pulls on its end fittings");
    } else if (in_.overall && out_.overall.value < out_.overall_shortest->value) {
      out_.notes.push_back("less slack than the rule asks for");
    } else if (in_.overall && out_.overall.value > out_.overall_longest->value) {
      out_.notes.push_back("more slack than the rule: look for chafing and support");
    }
  }

  void surroundings() {
    if (in_.outside_diameter) {
      const Length straight = in_.outside_diameter->value * k_straight_diameters;
      out_.straight_at_ends = made(straight);
      out_.working.push_back(fmt::format("straight at each end: at least 2 x {} = {}",
                                         say(in_.outside_diameter->value), say(straight)));
    }
    out_.measured.push_back(fmt::format("near end: {}", measured_from(in_.near_end.form)));
    out_.measured.push_back(fmt::format("far end: {}", measured_from(in_.far_end.form)));
  }

  const LengthAllowanceInput& in_;
  const Ends& ends_;
  const describe::Context& context_;
  const quantity::Unit& unit_;
  LengthAllowanceAnswer out_;
};

}  // namespace

std::string_view measured_from(EndForm form) {
  switch (form) {
    case EndForm::straight:
      return "from the sealing seat of the swivel, hose laid straight";
    case EndForm::elbow_45:
      return "along the hose's axis to the centre of the 45 degree outlet's sealing face";
    case EndForm::elbow_90:
      return "along the hose's axis to the centre line of the 90 degree outlet";
    case EndForm::male_thread:
      return "from the end of the thread";
  }
  return "";
}

quantity::Length flexible_length(quantity::Length gap, quantity::Fraction slack, SlackRule rule) {
  return rule == SlackRule::of_total ? gap / (1.0 - slack.si) : gap * (1.0 + slack.si);
}

Checked<LengthAllowanceAnswer> length_allowance(const LengthAllowanceInput& input,
                                                const describe::Context& context) {
  Problems problems;
  std::vector<std::string> notes;
  const Ends ends = ends_of(input, context, problems, notes);
  check_fields(input, ends, problems);
  if (!problems.empty()) return Fail(std::move(problems));
  return Work(input, ends, context).run(std::move(notes));
}

}  // namespace wm::hose
