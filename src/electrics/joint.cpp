#include "electrics/joint.hpp"

#include <fmt/core.h>

#include <cmath>

#include "electrics/detail/figures.hpp"
#include "electrics/detail/milliohm.hpp"
#include "electrics/detail/problem.hpp"
#include "evidence/decision.hpp"
#include "evidence/siblings.hpp"
#include "tables/electrics/bond_limits.hpp"
#include "tables/electrics/starting_elements.hpp"

namespace wm::electrics {
namespace {

using detail::Known;
using detail::known;
using detail::milliohm;
using detail::problem;
using evidence::Verdict;
using quantity::pencil;

constexpr double k_least_current = 1.0;  // ampere, four-wire bond test: common practice

/// Drop over both polarities, with a word in the working and on a thermal voltage.
template <class Answer>
Known drop_of(const MeasuredVoltage& drop, const std::optional<MeasuredVoltage>& reversed,
              Answer& out) {
  Known one = known(drop);
  // Probes the other way round, or current the other way: a drop has a size, a resistance no sign.
  if (one.value < 0.0) {
    one.value = -one.value;
    out.notes.emplace_back(
        "The reading is negative: the probes were the other way round. Its size counts.");
  }
  if (!reversed) {
    out.notes.emplace_back(
        "One polarity only: read the other way round too, and the mean takes a "
        "thermal voltage off.");
    return one;
  }
  Known other = known(*reversed);
  other.value = std::abs(other.value);
  const Known both = detail::mean(one, other);
  out.working.push_back(fmt::format("both polarities: ({} + {}) / 2 = {} mV",
                                    pencil(1e3 * one.value), pencil(1e3 * other.value),
                                    pencil(1e3 * both.value)));
  if (std::abs(one.value - other.value) > std::hypot(one.doubt, other.doubt)) {
    out.notes.emplace_back(
        "The two polarities differ by more than the meter's doubt: a thermal "
        "voltage, or the contact moved. Let it settle and repeat.");
  }
  return both;
}

template <class Answer>
Known ohms_of(Known drop, const MeasuredCurrent& current, Answer& out) {
  const Known r = detail::resistance_of(drop, known(current));
  out.working.push_back(fmt::format("{} mV / {} A = {} +-{}", pencil(1e3 * drop.value),
                                    pencil(current.value.si), milliohm(r.value),
                                    milliohm(r.doubt)));
  return r;
}

std::string compared(Known now, const MeasuredResistance& baseline) {
  const Known then = known(baseline);
  const auto drift =
      evidence::compare_baseline(now.value, now.doubt / 2, then.value, then.doubt / 2);
  if (!drift) return {};
  const char* moved = drift->drift == evidence::Drift::unchanged
                          ? "not shown to have changed"
                          : (drift->drift == evidence::Drift::risen ? "risen" : "fallen");
  return fmt::format("{} against its own earlier {}: {}", milliohm(now.value), milliohm(then.value),
                     moved);
}

void judge_joint(const JointDropInput& in, Known r, JointDropAnswer& out) {
  const auto& table = tables::starting_elements;
  const auto row = detail::row_of(table, "joint").value_or(0);
  const double good = detail::figure(table, row, "good-to").value_or(0.0) / 1e3;
  const auto by_advice = evidence::judge_upper(r.value, r.doubt, good);
  out.advice = fmt::format(
      "a good lug joint has 0.05 to 0.2 mohm (common practice, no source): {}",
      by_advice == Verdict::conforms
          ? "this one is like that"
          : (by_advice == Verdict::undecided ? "this meter cannot tell" : "this one has more"));
  if (!in.limit) {
    out.in_words =
        fmt::format("not tested against a limit: {} +-{}", milliohm(r.value), milliohm(r.doubt));
    out.do_next.emplace_back(
        "enter the maker's limit, or keep this reading as the joint's own "
        "baseline");
    return;
  }
  out.verdict = evidence::judge_upper(r.value, r.doubt, in.limit->value.si);
  out.in_words = fmt::format("{}: {} +-{} against {} ({})", evidence::words(out.verdict),
                             milliohm(r.value), milliohm(r.doubt), milliohm(in.limit->value.si),
                             in.limit_source.empty() ? "entered" : in.limit_source);
  if (out.verdict == Verdict::undecided) {
    out.do_next.emplace_back("more current, a lower range, or a meter of better accuracy");
  } else if (out.verdict == Verdict::does_not_conform) {
    out.do_next.emplace_back(
        "open it, clean to bright metal, renew lug or washer, torque it, read "
        "it again at the same current");
  }
}

class Bonding {
 public:
  explicit Bonding(const BondingInput& in) : in_(in) {}

  Checked<BondingAnswer> run() {
    Problems problems;
    find_limit(problems);
    check(problems);
    if (!problems.empty()) return Fail(std::move(problems));
    const auto r = resistance();
    if (r) {
      out_.resistance = quantity::Resistance{r->value};
      out_.doubt = quantity::Resistance{r->doubt};
    }
    judge(r);
    out_.in_words = std::string(evidence::words(out_.verdict));
    out_.notes.emplace_back(
        "A bond joins the part to basic structure, not through another part; strip, treat and "
        "protect within 24 h (AC 43.13-1B par. 11-188, 11-189).");
    return std::move(out_);
  }

 private:
  bool by_drop() const { return in_.instrument == BondInstrument::millivolt_method; }

  void find_limit(Problems& problems) {
    if (in_.limit) {
      out_.limit = in_.limit->value;
      out_.limit_from = in_.limit_source.empty() ? "entered" : "entered: " + in_.limit_source;
      return;
    }
    if (in_.bond == Bond::own_limit) {
      problems.push_back(problem("limit", Kind::missing, "your own limit is not there",
                                 "a resistance", "2.5 mohm"));
      return;
    }
    const auto& table = tables::bond_limits;
    const auto row = static_cast<std::size_t>(in_.bond);
    // Only a row that was read can be a limit; any other would be advice.
    if (detail::provenance(table, row) != "read") {
      problems.push_back(problem("limit", Kind::missing,
                                 "the figure on record for this bond is advice and can't judge",
                                 "the limit that applies, with its document", "2.5 mohm"));
      return;
    }
    out_.limit = {detail::figure(table, row, "limit").value_or(0.0) / 1e3};
    out_.strict = detail::word(table, row, "strict") == "below";
    out_.limit_from = std::string(detail::word(table, row, "source"));
  }

  void check(Problems& problems) const {
    if (!by_drop()) {
      if (in_.reading && in_.reading->value.si < -known(*in_.reading).doubt) {
        problems.push_back(problem("reading", Kind::conflict, "a resistance is not negative",
                                   "null the instrument with its clips together, then read again",
                                   "1.8 mohm"));
      }
      return;
    }
    if (in_.reading && !in_.drop) {
      problems.push_back(problem(
          "instrument", Kind::conflict, "a reading in milliohm, but by the millivolt method",
          "say which instrument read it, or enter drop and current", "bonding-meter"));
    }
    if (in_.drop && !in_.current) {
      problems.push_back(problem("current", Kind::missing,
                                 "a drop without its current gives no resistance",
                                 "the current through the bond", "10 A"));
    }
    if (in_.current && !(in_.current->value.si > 0.0)) {
      problems.push_back(
          problem("current", Kind::conflict, "no current flowed", "more than 0 A", "10 A"));
    }
  }

  std::optional<Known> resistance() {
    if (!by_drop()) {
      if (!in_.reading) return std::nullopt;
      return known(*in_.reading);
    }
    if (!in_.drop || !in_.current) return std::nullopt;
    if (in_.current->value.si < k_least_current) {
      out_.notes.emplace_back(
          "Below 1 A the millivolts get lost: use 1 A or more (common practice).");
    }
    return ohms_of(drop_of(*in_.drop, in_.reversed, out_), *in_.current, out_);
  }

  void judge(const std::optional<Known>& r) {
    if (!r) {
      out_.reason = "nothing was read";
      out_.do_next.emplace_back(
          "send a known current of 1 A or more through the bond and read the "
          "millivolts across it, probes inside the current clips");
      return;
    }
    if (in_.instrument == BondInstrument::hand_multimeter) {
      out_.verdict = Verdict::undecided;
      out_.reason = fmt::format(
          "{} by a hand multimeter, which is not acceptable for a bond (AC "
          "43.13-1B par. 11-188 i, j)",
          milliohm(r->value));
      out_.do_next.emplace_back("bonding meter, or the millivolt method with a known current");
      return;
    }
    const double limit = out_.limit.si;
    const bool inside = out_.strict ? r->value + r->doubt < limit : r->value + r->doubt <= limit;
    const bool beyond = out_.strict ? r->value - r->doubt >= limit : r->value - r->doubt > limit;
    out_.verdict =
        inside ? Verdict::conforms : (beyond ? Verdict::does_not_conform : Verdict::undecided);
    out_.reason = fmt::format("{} +-{}, limit {} {} ({})", milliohm(r->value), milliohm(r->doubt),
                              out_.strict ? "below" : "up to", milliohm(limit), out_.limit_from);
    if (out_.verdict == Verdict::undecided) {
      out_.do_next.emplace_back("more current or a better meter; then both polarities again");
    } else if (out_.verdict == Verdict::does_not_conform) {
      out_.do_next.emplace_back(
          "open the bond, clean both faces, treat, refit, protect, read again");
    }
  }

  const BondingInput& in_;
  BondingAnswer out_;
};

}  // namespace

Checked<JointDropAnswer> joint_drop(const JointDropInput& input,
                                    const describe::Context& /*context*/) {
  if (!(input.current.value.si > 0.0)) {
    return Fail(Problems{
        problem("current", Kind::conflict, "no current flowed", "more than 0 A", "200 A +- 5 A")});
  }
  JointDropAnswer out;
  const Known r = ohms_of(drop_of(input.drop, input.reversed, out), input.current, out);
  out.resistance = {r.value};
  out.doubt = {r.doubt};
  judge_joint(input, r, out);
  if (input.baseline) out.against_baseline = compared(r, *input.baseline);
  if (input.at_current) {
    out.drop_at = quantity::Voltage{r.value * input.at_current->value.si};
    out.working.push_back(
        fmt::format("at {} A: {} V", pencil(input.at_current->value.si), pencil(out.drop_at->si)));
  }
  return out;
}

Checked<BondingAnswer> bonding_check(const BondingInput& input,
                                     const describe::Context& /*context*/) {
  return Bonding(input).run();
}

}  // namespace wm::electrics
