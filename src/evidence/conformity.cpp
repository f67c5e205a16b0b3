#include "evidence/conformity.hpp"

#include <fmt/format.h>

#include <cmath>

#include "evidence/detail/budget.hpp"
#include "evidence/detail/figures.hpp"
#include "evidence/risk.hpp"
#include "quantity/text.hpp"

namespace wm::evidence {
namespace {

using describe::AnyQuantity;
using detail::figure;
using detail::with_unit;
using quantity::KindOf;
using quantity::Unit;

/// A limit is inclusive in whatever unit it was typed: this much of it is rounding.
constexpr double k_rounding = 1e-12;
/// Test leads of 0.2 to 0.5 ohm show below this (common practice, no source).
constexpr double k_leads_matter_below_ohm = 20.0;
/// Used so little of the range that a lower one is worth trying (common practice, no source).
constexpr double k_low_on_range = 0.1;

/// Kinds that cannot be negative: an upper limit alone then still has a floor.
bool has_floor(KindOf kind) {
  switch (kind) {
    case KindOf::length:
    case KindOf::area:
    case KindOf::volume:
    case KindOf::mass:
    case KindOf::time:
    case KindOf::pressure_absolute:
    case KindOf::resistance:
    case KindOf::capacitance:
    case KindOf::frequency:
    case KindOf::rotation_speed:
    case KindOf::resistance_per_length:
    case KindOf::density:
    case KindOf::mass_per_length:
    case KindOf::bending_stiffness:
      return true;
    default:
      return false;
  }
}

Problems one(Problem problem, std::string path) {
  problem.path = std::move(path);
  return {std::move(problem)};
}

/// The value that decides which unit the sum is done in.
const AnyQuantity* first_of(const ConformityInput& in) {
  if (in.reading) return &*in.reading;
  if (in.upper) return &*in.upper;
  if (in.lower) return &*in.lower;
  return nullptr;
}

class Judge {
 public:
  Judge(const ConformityInput& in, const AnyQuantity& shown)
      : in_(in), shown_(shown), unit_(detail::unit_of(shown)) {}

  Checked<Conformity> judge() {
    out_.limit_source = in_.limit_source;
    if (auto problems = check(); !problems.empty()) return Fail(std::move(problems));
    limits_ = {limit(in_.lower), limit(in_.upper)};
    if (in_.over_range) return over_range();
    if (!in_.reading) return not_tested();
    return measured();
  }

 private:
  Problems check() const {
    Problems problems;
    const KindOf kind = shown_.kind;
    if (in_.lower) detail::need_kind(*in_.lower, kind, "lower", false, problems);
    if (in_.upper) detail::need_kind(*in_.upper, kind, "upper", false, problems);
    if (!in_.lower && !in_.upper)
      problems.push_back(one(Fail(Kind::missing, "no limit to judge against",
                                  "a lower or an upper limit; without one, compare with siblings "
                                  "or with the part's own earlier reading",
                                  "27.60 kohm")
                                 .error,
                             "upper")
                             .front());
    if (in_.over_range && in_.reading)
      problems.push_back(one(Fail(Kind::conflict, "over-range and a reading as well",
                                  "one of the two: over-range shows no figure")
                                 .error,
                             "over_range")
                             .front());
    if (in_.such_parts) {
      detail::need_kind(in_.such_parts->mean, kind, "such_parts/mean", false, problems);
      detail::need_kind(in_.such_parts->standard_deviation, kind, "such_parts/standard_deviation",
                        true, problems);
    }
    if (problems.empty() && in_.lower && in_.upper && in_.lower->si > in_.upper->si)
      problems.push_back(one(Fail(Kind::conflict, "the lower limit lies above the upper one",
                                  "a lower limit below the upper one")
                                 .error,
                             "lower")
                             .front());
    return problems;
  }

  std::optional<double> limit(const std::optional<AnyQuantity>& q) const {
    if (!q) return std::nullopt;
    return detail::point_in(*q, unit_);
  }

  /// The limits with the rounding of a change of unit on their outer side.
  Limits inclusive() const {
    Limits l = limits_;
    if (l.lower) l.lower = *l.lower - k_rounding * std::abs(*l.lower);
    if (l.upper) l.upper = *l.upper + k_rounding * std::abs(*l.upper);
    return l;
  }

  Checked<detail::Budget> budget(const AnyQuantity& reading, bool with_repeats) const {
    using Repeats = std::span<const AnyQuantity>;
    return detail::budget_of({&reading, with_repeats ? Repeats(in_.repeats) : Repeats(),
                              in_.meter ? &*in_.meter : nullptr, in_.leads,
                              in_.lead_resistance ? &*in_.lead_resistance : nullptr});
  }

  double expanded_of(const detail::Budget& b) const {
    return in_.guard_from == GuardFrom::worst_case ? b.worst_case : 2.0 * b.combined.u;
  }

  RuleSettings settings() const { return {in_.rule, in_.guard_factor, in_.probability.si}; }

  std::string limits_in_words() const {
    if (in_.lower && in_.upper) {
      // One unit for both: it is said once.
      auto from = limit_in_words(*in_.lower);
      const auto to = limit_in_words(*in_.upper);
      const auto gap = from.rfind(' ');
      if (gap != std::string::npos && to.ends_with(from.substr(gap))) from.resize(gap);
      return fmt::format("{} to {}", from, to);
    }
    if (in_.upper) return "at most " + limit_in_words(*in_.upper);
    return "at least " + limit_in_words(*in_.lower);
  }

  /// As its document printed it; a computed one to the digits that its inputs earn.
  std::string limit_in_words(const AnyQuantity& limit) const {
    if (!limit.text.empty()) return limit.text;
    return quantity::print(limit.si, unit_, limit.resolution_si);
  }

  /// A computed figure, no finer than the second digit of its doubt; without its unit.
  std::string rounded(double value, double doubt) const {
    const double digit = detail::second_digit(doubt);
    if (!(digit > 0.0)) return figure(value);
    return quantity::print_number(value * unit_.factor + unit_.offset, unit_, digit * unit_.factor);
  }
  std::string rounded_width(double width) const {
    const double digit = detail::second_digit(width);
    return digit > 0.0 ? figure(std::round(width / digit) * digit) : figure(width);
  }
  std::string with_symbol(const std::string& number) const {
    return fmt::format("{} {}", number, unit_.symbol);
  }

  void note_limit() {
    out_.working.push_back(
        fmt::format("limit: {} ({})", limits_in_words(),
                    in_.limit_source.empty() ? "source not given" : in_.limit_source));
  }

  Conformity not_tested() {
    out_.verdict = Verdict::not_tested;
    out_.in_words = std::string(words(out_.verdict));
    out_.reason = "nothing was read; the limit is " + limits_in_words();
    out_.risk = "nothing was measured, so nothing is known";
    note_limit();
    return std::move(out_);
  }

  // ------------------------------------------------------------------ over-range

  Checked<Conformity> over_range() {
    note_limit();
    const bool resistance = shown_.kind == KindOf::resistance;
    const auto* full = in_.meter && in_.meter->full_scale ? &*in_.meter->full_scale : nullptr;
    if (full == nullptr) return over_unknown_range(resistance);
    auto b = budget(*full, false);
    if (!b) return Fail(b.error());
    const double end = detail::point_in(*full, unit_);
    // The display turns over somewhere near its end: the meter's doubt comes off.
    const double doubt = expanded_of(*b) * b->unit->factor / unit_.factor;
    const double w = in_.rule == Rule::simple ? 0.0 : doubt;
    out_.accuracy_known = b->accuracy_known;
    out_.working.push_back(fmt::format("over-range on {}: the value is above {} - {} = {}",
                                       with_unit(end, unit_), figure(end), figure(w),
                                       with_unit(end - w, unit_)));
    const std::string beyond = fmt::format("over-range on the range to {}", with_unit(end, unit_));
    if (limits_.upper && end - w > *limits_.upper) return over_fails(resistance, beyond);
    if (!limits_.upper && end - w >= *limits_.lower) {
      set(Verdict::conforms, fmt::format("{}, so it lies above the lower limit {}", beyond,
                                         limit_in_words(*in_.lower)));
      return std::move(out_);
    }
    set(Verdict::undecided,
        fmt::format("{}, which ends too low for a limit of {}: it says nothing yet", beyond,
                    limits_in_words()));
    out_.do_next = {NextStep::use_higher_range, NextStep::reseat_and_repeat, NextStep::hold};
    return std::move(out_);
  }

  Conformity over_unknown_range(bool resistance) {
    if (!limits_.upper) {
      set(Verdict::undecided,
          "over-range, but the end of the range was not given: it may lie below the lower limit");
      out_.do_next = {NextStep::use_higher_range, NextStep::hold};
      return std::move(out_);
    }
    auto out = over_fails(resistance, "over-range (end of the range not given)");
    out.do_next.insert(out.do_next.begin(), NextStep::use_higher_range);
    return out;
  }

  Conformity over_fails(bool resistance, const std::string& beyond) {
    out_.open = resistance;
    set(Verdict::does_not_conform, fmt::format("{}: {}above the upper limit {}", beyond,
                                               resistance ? "an open circuit, or at any rate " : "",
                                               limit_in_words(*in_.upper)));
    if (resistance) {
      out_.in_words += " (open)";
      out_.reason +=
          ". An open inside a lead or a coil may still spark by jumping the break: it "
          "does not conform even if the engine runs";
    }
    out_.do_next = {NextStep::reseat_and_repeat, NextStep::hold};
    return std::move(out_);
  }

  void set(Verdict verdict, std::string reason) {
    out_.verdict = verdict;
    out_.in_words = std::string(words(verdict));
    out_.reason = std::move(reason);
    out_.risk = "no figure was shown, so no chance can be computed";
  }

  // ------------------------------------------------------------------ a figure was read

  Checked<Conformity> measured() {
    auto b = budget(shown_, true);
    if (!b) return Fail(b.error());
    const Knowledge known{b->value, b->combined.u, expanded_of(*b), Distribution::normal};
    const auto d = decide(known, inclusive(), settings());
    if (!d)
      return Fail(one(d.error(), in_.rule == Rule::probability ? "probability" : "guard_factor"));
    out_.working = std::move(b->working);
    out_.accuracy_known = b->accuracy_known;
    out_.verdict = d->verdict;
    out_.in_words = std::string(words(d->verdict));
    out_.meter_good_enough = d->meter_good_enough && above_floor(*d);
    fill_figures(known, *d);
    out_.reason = reason(known, *d);
    out_.risk = risk_in_words(*d, settings());
    steps(known);
    note_sum(known, *d);
    if (in_.such_parts) {
      if (auto problem = long_run(known, *d)) return Fail(Problems{*problem});
    }
    return std::move(out_);
  }

  /// With an upper limit alone, a quantity that cannot be negative has to have room above 0.
  bool above_floor(const Decision& d) const {
    return !(has_floor(shown_.kind) && !limits_.lower && d.accept_to && *d.accept_to < 0.0);
  }

  void fill_figures(const Knowledge& known, const Decision& d) {
    const double expanded = 2.0 * known.u;
    out_.value = detail::as_point(known.value, expanded, unit_);
    out_.value->expanded_si = expanded * unit_.factor;
    if (expanded > 0.0)
      out_.value->text =
          quantity::print_with_uncertainty(out_.value->si, *out_.value->expanded_si, unit_);
    out_.guard = detail::as_width(d.guard, unit_);
    if (d.accept_from) out_.accept_from = detail::as_point(*d.accept_from, expanded, unit_);
    if (d.accept_to) out_.accept_to = detail::as_point(*d.accept_to, expanded, unit_);
    out_.probability_of_conformity = quantity::ratio(d.probability_inside);
    if (d.verdict == Verdict::conforms) out_.false_accept = quantity::ratio(d.false_accept);
    if (d.verdict == Verdict::does_not_conform) out_.false_reject = quantity::ratio(d.false_reject);
    // A share of a temperature in degF means nothing: its zero is a convention.
    if (shown_.kind != KindOf::temperature || (limits_.lower && limits_.upper))
      if (const auto used = allowance_used(known.value, limits_))
        // What is left of a subtraction that should give nought is no share of anything.
        out_.allowance_used = quantity::ratio(std::abs(*used) < 1e-9 ? 0.0 : *used);
  }

  std::string zone_in_words(const Knowledge& known, const Decision& d) const {
    const double doubt = 2.0 * known.u;
    if (d.accept_from && d.accept_to)
      return fmt::format("{} to {}", rounded(*d.accept_from, doubt),
                         with_symbol(rounded(*d.accept_to, doubt)));
    if (d.accept_to) return "up to " + with_symbol(rounded(*d.accept_to, doubt));
    if (d.accept_from) return "from " + with_symbol(rounded(*d.accept_from, doubt));
    return "nowhere";
  }

  std::string reason(const Knowledge& known, const Decision& d) const {
    // As it was read; a mean or a reading less its leads no finer than its doubt.
    const bool as_read = !in_.reading->text.empty() && in_.repeats.empty() && !in_.lead_resistance;
    const std::string value =
        as_read ? in_.reading->text : with_symbol(rounded(known.value, 2.0 * known.u));
    std::string text;
    switch (d.verdict) {
      case Verdict::conforms:
        text = fmt::format("{} lies where it conforms ({})", value, zone_in_words(known, d));
        break;
      case Verdict::does_not_conform:
        text = fmt::format("{} lies outside the limit ({}){}", value, limits_in_words(),
                           in_.rule == Rule::simple ? "" : ", by more than the meter's doubt");
        break;
      default:
        text = out_.meter_good_enough
                   ? fmt::format("{} lies too close to the limit ({}): the meter cannot tell",
                                 value, limits_in_words())
                   : fmt::format(
                         "the meter is not good enough: with a guard band of {} no reading "
                         "can conform to {}",
                         with_symbol(rounded_width(d.guard > 0.0 ? d.guard : known.expanded)),
                         limits_in_words());
    }
    if (!out_.accuracy_known)
      text += ". The meter's accuracy was not given, so the true doubt is larger";
    return text;
  }

  bool leads_matter() const {
    return shown_.kind == KindOf::resistance && in_.leads == TestLeads::not_stated &&
           std::abs(shown_.si) < k_leads_matter_below_ohm;
  }

  bool low_on_range(const Knowledge& known) const {
    if (!in_.meter || !in_.meter->full_scale) return false;
    const double full = std::abs(detail::point_in(*in_.meter->full_scale, unit_));
    return std::abs(known.value) < k_low_on_range * full;
  }

  void steps(const Knowledge& known) {
    auto& next = out_.do_next;
    if (!out_.accuracy_known) next.push_back(NextStep::give_the_accuracy);
    if (leads_matter() && (out_.verdict != Verdict::conforms || limits_.lower))
      next.push_back(NextStep::null_the_leads);
    if (out_.verdict == Verdict::does_not_conform) {
      next.push_back(NextStep::reseat_and_repeat);
      next.push_back(NextStep::hold);
    }
    if (out_.verdict != Verdict::undecided) return;
    if (low_on_range(known)) next.push_back(NextStep::use_lower_range);
    if (!out_.meter_good_enough) next.push_back(NextStep::other_instrument);
    next.push_back(NextStep::reseat_and_repeat);
    next.push_back(NextStep::swap_with_sibling);
    if (out_.meter_good_enough) next.push_back(NextStep::other_instrument);
    next.push_back(NextStep::hold);
  }

  void note_sum(const Knowledge& known, const Decision& d) {
    note_limit();
    const char* from = in_.guard_from == GuardFrom::worst_case ? "worst case" : "2 u";
    if (in_.rule == Rule::guarded)
      out_.working.push_back(fmt::format("guard band w = {} x {} ({}) = {}",
                                         figure(in_.guard_factor), figure(known.expanded), from,
                                         with_symbol(rounded_width(d.guard))));
    if (in_.rule == Rule::simple) out_.working.emplace_back("simple acceptance: no guard band");
    if (in_.rule == Rule::probability)
      out_.working.push_back("asked for: " + detail::per_cent(in_.probability.si) + " probability");
    out_.working.push_back("conforms: " + zone_in_words(known, d));
    if (known.u > 0.0) {
      if (limits_.upper) note_distance("upper", *limits_.upper - known.value, known.u);
      if (limits_.lower) note_distance("lower", known.value - *limits_.lower, known.u);
    }
    out_.working.push_back("probability of being inside: " +
                           detail::per_cent(d.probability_inside));
  }

  void note_distance(const char* which, double distance, double u) {
    out_.working.push_back(
        fmt::format("distance to the {} limit: {} / {} = {} standard "
                    "uncertainties",
                    which, figure(distance), figure(u), figure(distance / u)));
  }

  std::optional<Problem> long_run(const Knowledge& known, const Decision& d) {
    Prior prior;
    prior.mean = detail::point_in(in_.such_parts->mean, unit_);
    prior.sd = detail::width_in(in_.such_parts->standard_deviation, unit_);
    // No zone means that nothing is ever accepted: crossed limits say so.
    const Limits accept = d.meter_good_enough
                              ? Limits{d.accept_from, d.accept_to}
                              : Limits{std::optional<double>(1.0), std::optional<double>(0.0)};
    const auto risk = global_risk(prior, known.u, limits_, accept);
    if (!risk) return one(risk.error(), "such_parts").front();
    out_.consumer_risk = quantity::ratio(risk->consumer);
    out_.producer_risk = quantity::ratio(risk->producer);
    out_.working.push_back(fmt::format(
        "over many such parts: {} outside before any check; {} accepted and yet outside, {} inside "
        "and yet not accepted",
        detail::per_cent(risk->outside), detail::per_cent(risk->consumer),
        detail::per_cent(risk->producer)));
    return std::nullopt;
  }

  const ConformityInput& in_;
  const AnyQuantity& shown_;
  const Unit& unit_;
  Limits limits_;
  Conformity out_;
};

}  // namespace

Checked<Conformity> conformity(const ConformityInput& input, const describe::Context&) {
  const AnyQuantity* shown = first_of(input);
  if (shown == nullptr)
    return Fail(one(
        Fail(Kind::missing, "no limit to judge against", "a lower or an upper limit", "27.60 kohm")
            .error,
        "upper"));
  return Judge(input, *shown).judge();
}

Result<ConformityInput> conformity_input(const Reading& reading, const Instrument* instrument) {
  ConformityInput in;
  in.reading = reading.value;
  in.over_range = reading.over_range;
  in.repeats = reading.repeats;
  in.leads = reading.leads;
  if (instrument == nullptr || reading.range.empty()) return in;
  auto range = range_of(*instrument, reading.range);
  if (!range) {
    Problem problem = range.error();
    problem.path = "range";
    return Fail(std::move(problem));
  }
  in.meter = std::move(*range);
  return in;
}

}  // namespace wm::evidence
