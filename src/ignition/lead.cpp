#include "ignition/lead.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "evidence/siblings.hpp"
#include "quantity/as_typed.hpp"

namespace wm::ignition {
namespace {

using describe::AnyQuantity;
using evidence::Conformity;
using evidence::ConformityInput;
using evidence::Verdict;
using quantity::KindOf;
using quantity::pencil;

constexpr double k_reference_kelvin = 293.15;

Problem problem(std::string path, Kind kind, std::string what, std::string expected = {}) {
  Problem p;
  p.kind = kind;
  p.path = std::move(path);
  p.what = std::move(what);
  p.expected = std::move(expected);
  return p;
}

/// Limits in ohm; the doubt of each comes from the doubt of the length.
struct Band {
  std::optional<double> low, high;
  double low_doubt{};
  double high_doubt{};
};

void check_fields(const LeadCheckInput& in, Problems& problems) {
  if ((in.per_length_low || in.per_length_high) && !in.length) {
    problems.push_back(problem("length", Kind::missing,
                               "resistance for a length is given, but not the length of the lead",
                               "its length, conductor end to conductor end"));
  }
  if (in.temperature && !in.temperature_coefficient) {
    problems.push_back(problem("temperature_coefficient", Kind::missing,
                               "a temperature alone corrects nothing",
                               "the conductor's coefficient, or no temperature"));
  }
  if (in.over_range && in.reading) {
    problems.push_back(problem("over_range", Kind::conflict, "over-range and a reading as well",
                               "one of the two: over-range shows no figure"));
  }
}

const quantity::Unit& unit_for(const LeadCheckInput& in, quantity::UnitSet set) {
  if (in.reading) return quantity::typed_unit(*in.reading, set);
  if (in.highest) return quantity::typed_unit(*in.highest, set);
  if (in.lowest) return quantity::typed_unit(*in.lowest, set);
  const auto& per_length = in.per_length_high ? in.per_length_high : in.per_length_low;
  const bool large = per_length && per_length->value.si >= 1000.0;
  const quantity::Unit* kilo = quantity::find_unit(KindOf::resistance, "kohm");
  return large && kilo != nullptr ? *kilo : quantity::default_unit(KindOf::resistance, set);
}

class Check {
 public:
  Check(const LeadCheckInput& in, const describe::Context& context)
      : in_(in), context_(context), unit_(unit_for(in, context.units)) {}

  Checked<LeadCheckAnswer> run() {
    Problems problems;
    check_fields(in_, problems);
    find_band();
    if (band_.low && band_.high && *band_.low > *band_.high) {
      problems.push_back(problem(in_.lowest ? "lowest" : "per_length_low", Kind::conflict,
                                 "the lower limit lies above the upper one", "low up to high"));
    }
    if (!problems.empty()) return Fail(std::move(problems));
    out_.not_covered = std::string(k_not_covered);
    if (auto judged = judge(); !judged) return Fail(judged.error());
    per_length();
    compare();
    return std::move(out_);
  }

 private:
  std::string say(double ohm) const { return pencil(ohm, unit_); }
  bool limited() const { return band_.low || band_.high; }
  bool binding() const { return limited() && in_.limit_basis != LimitBasis::typical_figure; }

  /// One limit from the length, in ohm at 20 degC, and its doubt.
  void from_length(const std::optional<quantity::Entered<quantity::ResistancePerLength>>& each,
                   const char* word, std::optional<double>& limit, double& doubt) {
    if (!each || !in_.length) return;
    const double terminals = in_.terminals ? in_.terminals->value.si : 0.0;
    limit = in_.length->value.si * each->value.si + terminals;
    doubt = each->value.si * in_.length->expanded_si.value_or(0.0);
    const auto& length_unit = quantity::typed_unit(*in_.length, context_.units);
    const auto& each_unit = quantity::typed_unit(*each, context_.units);
    out_.working.push_back(fmt::format("{} = {} x {}{} = {}", word,
                                       pencil(in_.length->value.si, length_unit),
                                       pencil(each->value.si, each_unit),
                                       in_.terminals ? " + " + say(terminals) : "", say(*limit)));
    if (doubt > 0.0) {
      out_.working.push_back(
          fmt::format("the length is known to {}, the limit therefore to {} x that = {}",
                      pencil(*in_.length->expanded_si, length_unit),
                      pencil(each->value.si, each_unit), say(doubt)));
    }
  }

  void find_band() {
    from_length(in_.per_length_low, "lowest", band_.low, band_.low_doubt);
    from_length(in_.per_length_high, "highest", band_.high, band_.high_doubt);
    if (in_.lowest && (!band_.low || in_.lowest->value.si > *band_.low)) {
      band_.low = in_.lowest->value.si;
      band_.low_doubt = 0.0;
    }
    if (in_.highest && (!band_.high || in_.highest->value.si < *band_.high)) {
      band_.high = in_.highest->value.si;
      band_.high_doubt = 0.0;
    }
    if (in_.temperature && in_.temperature_coefficient && limited()) warm();
    const auto limit = [&](double ohm) {
      return EnteredResistance{{ohm}, 0.01 * unit_.factor, {}};
    };
    if (band_.low) out_.lowest = limit(*band_.low);
    if (band_.high) out_.highest = limit(*band_.high);
  }

  void warm() {
    const double step = in_.temperature->si - k_reference_kelvin;
    const double factor = 1.0 + *in_.temperature_coefficient * step;
    for (auto* limit : {&band_.low, &band_.high}) {
      if (*limit) **limit *= factor;
    }
    band_.low_doubt *= factor;
    band_.high_doubt *= factor;
    out_.working.push_back(
        fmt::format("limits at this temperature = those at 20 degC x (1 + {} x "
                    "{}) = x {}",
                    pencil(*in_.temperature_coefficient), pencil(step), pencil(factor)));
  }

  AnyQuantity any(double ohm) const {
    // The text gives the unit in which the sum is told; the value stays exact.
    return {KindOf::resistance, ohm, 0.01 * unit_.factor, {}, say(ohm)};
  }

  /// Judge inside the limits moved inwards (`by` = +1) or outwards (-1) by their doubt.
  Checked<Conformity> conformity(double by) const {
    ConformityInput c;
    if (in_.reading) {
      c.reading =
          AnyQuantity{KindOf::resistance, in_.reading->value.si, in_.reading->resolution_si,
                      in_.reading->expanded_si,
                      in_.reading->text.empty() ? say(in_.reading->value.si) : in_.reading->text};
    }
    c.over_range = in_.over_range;
    c.meter = in_.meter;
    c.leads = in_.leads;
    if (in_.lead_resistance) {
      c.lead_resistance =
          AnyQuantity{KindOf::resistance,
                      in_.lead_resistance->value.si,
                      in_.lead_resistance->resolution_si,
                      {},
                      in_.lead_resistance->text.empty() ? say(in_.lead_resistance->value.si)
                                                        : in_.lead_resistance->text};
    }
    if (band_.low) c.lower = any(*band_.low + by * band_.low_doubt);
    if (band_.high) c.upper = any(*band_.high - by * band_.high_doubt);
    c.limit_source = in_.limit_source;
    c.guard_from = in_.guard_from;
    return evidence::conformity(c, context_);
  }

  Checked<Done> judge() {
    if (!limited()) {
      without_limit();
      return Done{};
    }
    const bool doubtful = band_.low_doubt > 0.0 || band_.high_doubt > 0.0;
    if (doubtful && *band_narrowed_low() > *band_narrowed_high()) {
      undecided_by_length();
      return Done{};
    }
    auto narrow = conformity(1.0);
    if (!narrow) return Fail(narrow.error());
    if (doubtful && narrow->verdict == Verdict::does_not_conform) {
      auto wide = conformity(-1.0);
      if (!wide) return Fail(wide.error());
      if (wide->verdict != Verdict::does_not_conform) {
        narrow->verdict = Verdict::undecided;
        narrow->in_words = std::string(words(Verdict::undecided));
        narrow->reason = "the length is not known well enough to tell; measure it again";
      }
    }
    take(*narrow);
    return Done{};
  }

  std::optional<double> band_narrowed_low() const {
    return band_.low ? *band_.low + band_.low_doubt : -HUGE_VAL;
  }
  std::optional<double> band_narrowed_high() const {
    return band_.high ? *band_.high - band_.high_doubt : HUGE_VAL;
  }

  void undecided_by_length() {
    out_.verdict = in_.reading ? Verdict::undecided : Verdict::not_tested;
    if (in_.over_range) {
      open("over-range: an open circuit, or at any rate above the range used");
      return;
    }
    out_.in_words = std::string(words(out_.verdict));
    out_.reason = "the length is known so poorly that no reading could conform; measure it again";
    out_.do_next.push_back("measure the length of the lead again");
  }

  void open(std::string reason) {
    out_.verdict = Verdict::does_not_conform;
    out_.open = true;
    out_.in_words = "does not conform (open)";
    out_.reason = std::move(reason);
    out_.do_next = {
        "repeat on the highest range, probes held firmly, the lead straight and then "
        "flexed at its terminals",
        "look for a missing spring or a broken core; renew the lead or its terminal"};
  }

  void without_limit() {
    if (in_.over_range) {
      open(
          "over-range: an open circuit. An open inside a lead may still spark by jumping the "
          "break: it does not conform even if the engine runs");
      return;
    }
    out_.verdict = Verdict::not_tested;
    out_.in_words = std::string(words(out_.verdict));
    out_.reason = in_.reading ? std::string(k_no_makers_limit) : "nothing was read";
    out_.do_next.push_back(in_.reading ? "ask the maker of the lead for its resistance for a length"
                                       : "measure the lead, both ends off");
  }

  void take(const Conformity& c) {
    const auto limit = [&](const std::optional<AnyQuantity>& q) {
      std::optional<EnteredResistance> made;
      if (q) made = EnteredResistance{{q->si}, q->resolution_si, {}};
      return made;
    };
    out_.accept_from = limit(c.accept_from);
    out_.accept_to = limit(c.accept_to);
    out_.guard = limit(c.guard);
    out_.allowance_used = c.allowance_used;
    out_.working.insert(out_.working.end(), c.working.begin(), c.working.end());
    for (const evidence::NextStep step : c.do_next) {
      out_.do_next.emplace_back(evidence::words(step));
    }
    out_.verdict = c.verdict;
    out_.in_words = c.in_words;
    out_.reason = c.reason;
    out_.open = c.open;
    if (!binding() && !c.open) {
      // A typical figure is no limit: what it says is told, but it is no verdict.
      out_.verdict = Verdict::not_tested;
      out_.in_words = std::string(words(Verdict::not_tested));
      out_.reason = fmt::format("{}; by a typical figure it would read: {}, {}", k_no_makers_limit,
                                c.in_words, c.reason);
      return;
    }
    explain();
  }

  /// What such a reading means in a lead.
  void explain() {
    if (out_.verdict != Verdict::does_not_conform || out_.open || !in_.reading) return;
    const double value = in_.reading->value.si;
    if (band_.high && value > *band_.high) {
      out_.do_next.emplace_back("above its band: look for a burnt core or a poor terminal");
    } else if (band_.low && value < *band_.low) {
      out_.do_next.emplace_back("below its band: wrong cable, or a core shorted to itself");
    }
  }

  void per_length() {
    if (!in_.reading || !in_.length || !(in_.length->value.si > 0.0)) return;
    const double terminals = in_.terminals ? in_.terminals->value.si : 0.0;
    out_.per_length = {(in_.reading->value.si - terminals) / in_.length->value.si};
  }

  double standard(const MeasuredResistance& reading) const {
    if (reading.expanded_si) return *reading.expanded_si / 2.0;
    if (out_.guard && in_.guard_from == evidence::GuardFrom::worst_case) {
      return out_.guard->value.si / std::numbers::sqrt3;
    }
    return reading.resolution_si / std::sqrt(12.0);
  }

  void compare() {
    if (!in_.reading) return;
    if (!in_.siblings.empty()) compare_with_siblings();
    if (!in_.baseline) return;
    const auto drift = evidence::compare_baseline(in_.reading->value.si, standard(*in_.reading),
                                                  in_.baseline->value.si, standard(*in_.baseline));
    if (!drift) return;
    const char* moved = drift->drift == evidence::Drift::unchanged
                            ? "not shown to have changed"
                            : (drift->drift == evidence::Drift::risen ? "risen" : "fallen");
    out_.baseline =
        fmt::format("{} against its own earlier {}: {} by {}", moved, say(in_.baseline->value.si),
                    say(in_.reading->value.si), say(drift->change));
  }

  void compare_with_siblings() {
    // Leads differ in length: compare ohm per metre where every length is known.
    const bool by_length =
        in_.length && std::all_of(in_.siblings.begin(), in_.siblings.end(), [](const auto& s) {
          return s.length && s.length->value.si > 0.0;
        });
    const double terminals = in_.terminals ? in_.terminals->value.si : 0.0;
    const auto scaled = [&](double ohm, double metres) {
      return by_length ? (ohm - terminals) / metres : ohm;
    };
    const double own_length = in_.length ? in_.length->value.si : 1.0;
    std::vector<double> readings{scaled(in_.reading->value.si, own_length)};
    for (const SiblingLead& s : in_.siblings) {
      readings.push_back(scaled(s.reading.value.si, s.length ? s.length->value.si : 1.0));
    }
    const double u = standard(*in_.reading) / (by_length ? own_length : 1.0);
    const auto found = evidence::compare_siblings(readings, u);
    if (!found) return;
    const char* basis = by_length ? " for its length" : "";
    switch (found->each.front().standing) {
      case evidence::Standing::too_few:
        out_.siblings = "too few siblings to compare with";
        break;
      case evidence::Standing::like_others:
        out_.siblings = fmt::format("like its siblings{}", basis);
        break;
      case evidence::Standing::stands_out:
        out_.siblings = fmt::format("stands out from its siblings{}: {} than their middle", basis,
                                    found->each.front().from_median > 0 ? "higher" : "lower");
        out_.do_next.emplace_back("swap it with a sibling and see whether the fault goes with it");
        break;
    }
    if (!binding())
      out_.siblings = fmt::format("{} ({})", out_.siblings, evidence::k_siblings_label);
  }

  const LeadCheckInput& in_;
  const describe::Context& context_;
  const quantity::Unit& unit_;
  Band band_;
  LeadCheckAnswer out_;
};

}  // namespace

Checked<LeadCheckAnswer> lead_check(const LeadCheckInput& input, const describe::Context& context) {
  return Check(input, context).run();
}

}  // namespace wm::ignition
