#include "ignition/harness.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>

#include "ignition/detail/harness_siblings.hpp"
#include "ignition/detail/judge.hpp"
#include "ignition/detail/problem.hpp"
#include "quantity/as_typed.hpp"

namespace wm::ignition {
namespace {

using detail::problem;
using evidence::MeterRange;
using evidence::Verdict;
using quantity::pencil;

/// Test leads of a multimeter: 0.2 to 0.5 ohm is normal (secondary source).
constexpr double k_test_leads_ohm = 0.5;
/// A "short" needs a lowest limit well clear of what a short reads (common practice, no source).
constexpr double k_clear_of_short = 10.0;

constexpr std::string_view k_conductor_only = "conductor only, insulation not tested";

/// Fields of lead_check that belong to one lead here; the others are the harness's.
bool of_the_lead(std::string_view path, const HarnessLead& lead) {
  constexpr std::array<std::string_view, 3> always{"reading", "over_range", "length"};
  const auto head = path.substr(0, path.find('/'));
  if (std::find(always.begin(), always.end(), head) != always.end()) return true;
  return (head == "lowest" && lead.lowest) || (head == "highest" && lead.highest);
}

class OneLead {
 public:
  OneLead(const HarnessCheckInput& in, std::size_t index, const describe::Context& context)
      : in_(in), lead_(in.leads[index]), index_(index), context_(context) {}

  Checked<HarnessLeadAnswer> run() {
    auto first = check(lead_.reading, lead_.over_range);
    if (!first) return Fail(first.error());
    take(*first);
    if (auto flexed = flex(); !flexed) return Fail(flexed.error());
    name_what_was_found();
    out_.not_covered = fmt::format("{}; leads can be crossed", k_conductor_only);
    return std::move(out_);
  }

 private:
  std::string path(std::string_view field) const {
    return fmt::format("leads/{}/{}", index_, field);
  }

  Result<std::optional<MeterRange>> range(const std::optional<MeasuredResistance>& reading) const {
    return detail::range_for(in_.ranges, lead_.range, detail::any(reading));
  }

  Checked<LeadCheckAnswer> check(const std::optional<MeasuredResistance>& reading,
                                 bool over_range) const {
    LeadCheckInput c;
    c.name = lead_.name;
    c.length = lead_.length;
    c.per_length_low = in_.per_length_low;
    c.per_length_high = in_.per_length_high;
    c.terminals = in_.terminals;
    c.lowest = lead_.lowest ? lead_.lowest : in_.lowest;
    c.highest = lead_.highest ? lead_.highest : in_.highest;
    c.limit_basis = in_.limit_basis;
    c.limit_source = in_.limit_source;
    c.temperature = in_.temperature;
    c.temperature_coefficient = in_.temperature_coefficient;
    c.reading = reading;
    c.over_range = over_range;
    if (reading || over_range) {
      auto meter = range(reading);
      if (!meter) {
        Problem p = meter.error();
        p.path = path("range");
        return Fail(Problems{std::move(p)});
      }
      c.meter = *meter;
    }
    c.leads = in_.test_leads;
    c.lead_resistance = in_.test_lead_resistance;
    c.guard_from = in_.guard_from;
    c.baseline = lead_.earlier;
    auto got = lead_check(c, context_);
    if (got) return got;
    Problems moved = got.error();
    for (Problem& p : moved) {
      if (p.path.starts_with("meter")) p.path = "ranges";
      if (of_the_lead(p.path, lead_)) p.path = path(p.path);
    }
    return Fail(std::move(moved));
  }

  void take(const LeadCheckAnswer& got) {
    out_.name = lead_.name;
    out_.verdict = got.verdict;
    out_.in_words = got.in_words;
    out_.reason = got.reason;
    out_.lowest = got.lowest;
    out_.highest = got.highest;
    out_.guard = got.guard;
    out_.per_length = got.per_length;
    out_.earlier = got.baseline;
    out_.do_next = got.do_next;
    out_.working = got.working;
    if (got.open) out_.found.emplace_back("open");
  }

  std::vector<MeasuredResistance> all_readings() const {
    std::vector<MeasuredResistance> all = lead_.flexing;
    if (lead_.reading) all.push_back(*lead_.reading);
    return all;
  }

  double doubt(const MeasuredResistance& reading) const {
    const auto meter = range(reading);
    return detail::worst_case(detail::any(reading), meter ? *meter : std::optional<MeterRange>{});
  }

  Checked<Done> flex() {
    if (lead_.open_when_flexed || (lead_.over_range && !lead_.flexing.empty())) {
      intermittent("over-range for a moment while it was flexed: the conductor is broken");
      return Done{};
    }
    if (lead_.flexing.empty()) return Done{};
    const auto all = all_readings();
    const auto by_value = [](const auto& a, const auto& b) { return a.value < b.value; };
    const auto [low, high] = std::minmax_element(all.begin(), all.end(), by_value);
    if (auto judged = judge_flexed({*low, *high}); !judged) return Fail(judged.error());
    if (all.size() > 1) spread(*low, *high);
    return Done{};
  }

  /// The furthest readings count as well as the quiet one.
  Checked<Done> judge_flexed(const std::array<MeasuredResistance, 2>& ends) {
    for (const MeasuredResistance& reading : ends) {
      auto got = check(reading, false);
      if (!got) return Fail(got.error());
      if (got->verdict != Verdict::does_not_conform || out_.verdict == got->verdict) continue;
      out_.verdict = got->verdict;
      out_.in_words = got->in_words;
      out_.reason = "while it was flexed: " + got->reason;
      out_.do_next.insert(out_.do_next.end(), got->do_next.begin(), got->do_next.end());
    }
    return Done{};
  }

  void spread(const MeasuredResistance& low, const MeasuredResistance& high) {
    const auto& unit = quantity::typed_unit(high, context_.units);
    const double apart = high.value.si - low.value.si;
    const double allowed = doubt(low) + doubt(high);
    out_.working.push_back(
        fmt::format("flexed: {} to {}, {} apart; the meter explains {} + {} = "
                    "{}",
                    pencil(low.value.si, unit), pencil(high.value.si, unit), pencil(apart, unit),
                    pencil(doubt(low), unit), pencil(doubt(high), unit), pencil(allowed, unit)));
    if (apart > allowed * (1.0 + 1e-9)) {
      intermittent(
          fmt::format("its readings lie {} apart while it is flexed, the meter explains "
                      "no more than {}",
                      pencil(apart, unit), pencil(allowed, unit)));
      return;
    }
    const double digits = 2.0 * std::max(low.resolution_si, high.resolution_si);
    if (apart > digits) {
      out_.flexing = fmt::format(
          "moves by {} while flexed: within the meter's doubt of {}, yet the same meter on the "
          "same range should repeat better; hold the probes with clips and flex again",
          pencil(apart, unit), pencil(allowed, unit));
    } else {
      out_.flexing = "steady while flexed";
    }
  }

  void intermittent(std::string why) {
    out_.flexing = why;
    out_.found.emplace_back("intermittent");
    out_.verdict = Verdict::does_not_conform;
    out_.in_words = "does not conform (intermittent)";
    out_.reason = std::move(why);
    out_.do_next.insert(out_.do_next.begin(),
                        "repeat with the probes clipped on, so that only the lead moves; if it "
                        "still jumps, renew the lead or its terminal");
  }

  void name_what_was_found() {
    if (!lead_.reading || out_.verdict != Verdict::does_not_conform) return;
    const double value = lead_.reading->value.si;
    if (out_.lowest && value < out_.lowest->value.si) {
      const double zero = doubt(*lead_.reading) + k_test_leads_ohm;
      const bool is_short = value <= zero && out_.lowest->value.si > k_clear_of_short * zero;
      out_.found.emplace_back(is_short ? "short" : "low");
      if (is_short) {
        out_.in_words = "does not conform (short)";
        out_.do_next.emplace_back(
            "a short: the core touches itself or the shield; lift both ends "
            "and read core to shield");
      }
    }
    if (out_.highest && value > out_.highest->value.si) out_.found.emplace_back("high");
  }

  const HarnessCheckInput& in_;
  const HarnessLead& lead_;
  std::size_t index_;
  const describe::Context& context_;
  HarnessLeadAnswer out_;
};

class Harness {
 public:
  Harness(const HarnessCheckInput& in, const describe::Context& context)
      : in_(in), context_(context) {}

  Checked<HarnessCheckAnswer> run() {
    check_range_names();
    for (std::size_t i = 0; i < in_.leads.size(); ++i) lead(i);
    insulation();
    lead_map();
    if (in_.leads.empty() && in_.towers.empty() && in_.insulation.empty()) {
      problems_.push_back(problem("leads", Kind::missing, "no lead, no tower, no insulation",
                                  "at least one reading or one traced lead"));
    }
    if (!problems_.empty()) return Fail(std::move(problems_));
    detail::compare_leads(in_, context_, out_);
    figures();
    conclude();
    return std::move(out_);
  }

 private:
  void add(const Problems& problems) {
    for (const Problem& p : problems) {
      // A field of the harness would otherwise complain once for each lead.
      if (std::find(problems_.begin(), problems_.end(), p) == problems_.end()) {
        problems_.push_back(p);
      }
    }
  }

  void check_range_names() {
    for (std::size_t i = 0; i < in_.ranges.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        if (in_.ranges[i].name.empty() || in_.ranges[i].name != in_.ranges[j].name) continue;
        problems_.push_back(problem(fmt::format("ranges/{}/name", i), Kind::duplicate,
                                    fmt::format("two ranges are called `{}`", in_.ranges[i].name),
                                    "a name for each range", "60 kohm"));
      }
    }
  }

  void lead(std::size_t i) {
    auto got = OneLead(in_, i, context_).run();
    if (!got) {
      add(got.error());
      return;
    }
    out_.leads.push_back(std::move(*got));
  }

  void insulation() {
    for (std::size_t i = 0; i < in_.insulation.size(); ++i) {
      auto got =
          judge_insulation(in_.insulation[i], fmt::format("insulation/{}", i), "lead", context_);
      if (!got) {
        add(got.error());
        continue;
      }
      const auto& part = in_.insulation[i].part;
      if (!in_.leads.empty() &&
          std::ranges::none_of(in_.leads, [&](const auto& lead) { return lead.name == part; })) {
        add({problem(fmt::format("insulation/{}/part", i), Kind::not_found,
                     fmt::format("there is no lead `{}` in this harness", part),
                     "the name of one of its leads", in_.leads.empty() ? "" : in_.leads[0].name)});
        continue;
      }
      cover(part, got->judged.verdict);
      out_.insulation.push_back(std::move(*got));
    }
  }

  /// What the insulation test of a lead adds to the words beside its conductor's verdict.
  void cover(const std::string& part, Verdict verdict) {
    for (HarnessLeadAnswer& a : out_.leads) {
      if (a.name != part || verdict == Verdict::not_tested) continue;
      if (verdict == Verdict::does_not_conform) a.found.emplace_back("insulation");
      a.not_covered =
          fmt::format("insulation tested by itself: {}; leads can be crossed", words(verdict));
    }
  }

  void lead_map() {
    if (in_.towers.empty()) return;
    auto got = trace_leads(in_.towers, in_.firing_order);
    if (!got) {
      add(got.error());
      return;
    }
    out_.lead_map = std::move(*got);
  }

  void figures() {
    if (in_.core == LeadCore::not_said) {
      out_.notes.emplace_back("say what the core is made of to see what the trade expects of it");
      return;
    }
    constexpr std::array<std::string_view, 4> words{"", "spiral", "carbon", "metal"};
    std::optional<describe::AnyQuantity> own;
    if (out_.own_per_length) {
      own = describe::AnyQuantity{
          quantity::KindOf::resistance_per_length, out_.own_per_length->si, 0, {}, {}};
    }
    out_.figures = detail::figures(context_.table("lead-figures"),
                                   words[static_cast<std::size_t>(in_.core)], own);
    if (in_.core == LeadCore::spiral) detail::what_the_ends_hold(in_, context_, out_);
  }

  void conclude() {
    std::vector<PartVerdict> all;
    const auto put = [&](Verdict v) {
      PartVerdict p;
      p.verdict = v;
      all.push_back(std::move(p));
    };
    for (const auto& a : out_.leads) put(a.verdict);
    for (const auto& a : out_.insulation) put(a.judged.verdict);
    if (out_.lead_map) put(out_.lead_map->verdict);
    out_.verdict = worst(all);
    const auto bad = std::count_if(all.begin(), all.end(), [](const PartVerdict& p) {
      return p.verdict == Verdict::does_not_conform;
    });
    out_.in_words = std::string(words(out_.verdict));
    if (bad > 0) out_.in_words += fmt::format(": {} of {} checks", bad, all.size());
    const bool insulated = !out_.insulation.empty();
    out_.in_words +=
        fmt::format(" ({}; {})", insulated ? "insulation judged beside it" : k_conductor_only,
                    out_.lead_map ? "leads traced" : "leads not traced");
    if (!insulated) {
      out_.notes.emplace_back("insulation: not tested; a high-tension test is still owed");
    }
    if (!out_.lead_map) {
      out_.notes.emplace_back("lead map: not tested; trace each lead from its tower to its plug");
    }
  }

  const HarnessCheckInput& in_;
  const describe::Context& context_;
  Problems problems_;
  HarnessCheckAnswer out_;
};

}  // namespace

Checked<HarnessCheckAnswer> harness_check(const HarnessCheckInput& in,
                                          const describe::Context& context) {
  return Harness(in, context).run();
}

}  // namespace wm::ignition
