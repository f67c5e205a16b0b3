#include "electrics/contactor.hpp"

#include <fmt/core.h>

#include <algorithm>

#include "electrics/detail/milliohm.hpp"
#include "electrics/detail/problem.hpp"
#include "evidence/decision.hpp"

namespace wm::electrics {
namespace {

using detail::Known;
using detail::known;
using detail::milliohm;
using detail::problem;
using evidence::Verdict;
using quantity::pencil;

constexpr double k_contact_advice = 0.2;  // volt, from an answer list on aircraft contactors
constexpr double k_diode_from = 0.4;      // volt; 0.5 to 0.7 is usual, meters differ
constexpr double k_diode_to = 0.8;

class Contactor {
 public:
  explicit Contactor(const ContactorInput& in) : in_(in) {}

  Checked<ContactorAnswer> run() {
    Problems problems;
    check(problems);
    if (!problems.empty()) return Fail(std::move(problems));
    coil();
    pull_in();
    contacts();
    diode();
    sum_up();
    return std::move(out_);
  }

 private:
  void check(Problems& problems) const {
    if (in_.coil_open && in_.coil) {
      problems.push_back(problem("coil_open", Kind::conflict, "over-range and a reading as well",
                                 "one of the two"));
    }
    if (in_.coil_nominal && !in_.coil_tolerance) {
      problems.push_back(problem("coil_tolerance", Kind::missing,
                                 "the maker's coil resistance needs its tolerance", "a share",
                                 "10 %"));
    }
    if (in_.contact_drop.has_value() != in_.contact_current.has_value()) {
      problems.push_back(problem(in_.contact_drop ? "contact_current" : "contact_drop",
                                 Kind::missing, "the contacts need drop and current together",
                                 "both or neither", in_.contact_drop ? "200 A +- 5 A" : "0.11 V"));
    }
    if (in_.contact_current && !(in_.contact_current->value.si > 0.0)) {
      problems.push_back(problem("contact_current", Kind::conflict, "no current flowed",
                                 "more than 0 A", "200 A"));
    }
    if (in_.diode_forward == DiodeReading::drop && !in_.diode_forward_drop) {
      problems.push_back(problem("diode_forward_drop", Kind::missing,
                                 "the forward drop is not there", "what the display showed",
                                 "0.58 V"));
    }
  }

  void item(std::string what, Verdict verdict, std::string words) {
    out_.items.push_back({std::move(what), verdict, std::move(words)});
  }

  double celsius() const { return in_.coil_temperature.value.si - k_zero_celsius; }

  void coil() {
    if (in_.coil_open) {
      item("coil", Verdict::does_not_conform, "open: over-range");
      return;
    }
    if (!in_.coil) return item("coil", Verdict::not_tested, "nothing was read");
    Known r = known(*in_.coil);
    const double warm = warm_factor(Metal::copper, celsius());
    out_.working.push_back(fmt::format("coil at 20 degC: {} ohm x 254.5 / (234.5 + {}) = {} ohm",
                                       pencil(r.value), pencil(celsius()), pencil(r.value / warm)));
    r.value /= warm;
    r.doubt /= warm;
    out_.coil_at_20 = quantity::Resistance{r.value};
    if (!in_.coil_nominal) {
      item(
          "coil", Verdict::not_tested,
          fmt::format("{} ohm at 20 degC; without its maker's figure there is nothing to judge by "
                      "(advice: 12 V continuous about 12 to 18 ohm, intermittent about 3 to 5 ohm)",
                      pencil(r.value)));
      return;
    }
    judge_coil(r);
  }

  void judge_coil(const Known& r) {
    const double nominal = in_.coil_nominal->value.si;
    const double tolerance = in_.coil_tolerance->si * nominal;
    const auto low = evidence::judge_lower(r.value, r.doubt, nominal - tolerance);
    const auto high = evidence::judge_upper(r.value, r.doubt, nominal + tolerance);
    const bool fails = low == Verdict::does_not_conform || high == Verdict::does_not_conform;
    const bool passes = low == Verdict::conforms && high == Verdict::conforms;
    const auto verdict =
        fails ? Verdict::does_not_conform : (passes ? Verdict::conforms : Verdict::undecided);
    const char* means = low == Verdict::does_not_conform    ? ": shorted turns, or another coil"
                        : high == Verdict::does_not_conform ? ": a poor joint, or another coil"
                                                            : "";
    item("coil", verdict,
         fmt::format("{} +-{} ohm at 20 degC against {} +-{} ohm{}", pencil(r.value),
                     pencil(r.doubt), pencil(nominal), pencil(tolerance), means));
  }

  void pull_in() {
    if (!in_.pull_in) return;
    const double hot = in_.hot ? in_.hot->value.si - k_zero_celsius : celsius();
    out_.pull_in_hot = pull_in_at(in_.pull_in->value, hot);
    out_.working.push_back(fmt::format("pull-in at {} degC: {} V x (234.5 + {}) / 254.5 = {} V",
                                       pencil(hot), pencil(in_.pull_in->value.si), pencil(hot),
                                       pencil(out_.pull_in_hot->si)));
    if (!in_.available) return;
    out_.to_spare = quantity::Voltage{in_.available->value.si - out_.pull_in_hot->si};
    if (out_.to_spare->si < 0.0) {
      // Derived and not read: it can't fail the part, and it keeps it from passing.
      item("pull-in when hot", Verdict::undecided,
           fmt::format("{} V by its coil's resistance, {} V available",
                       pencil(out_.pull_in_hot->si), pencil(in_.available->value.si)));
      out_.notes.push_back(fmt::format("Hot, it needs {} V more than it gets: it may only click.",
                                       quantity::significant(-out_.to_spare->si, 2)));
      out_.do_next.emplace_back(
          "look for drops in its coil circuit (switch, wire, ground), shield it "
          "from heat, or fit one with a lower pull-in");
    }
  }

  void contacts() {
    if (!in_.contact_drop) return item("contacts", Verdict::not_tested, "no drop under load read");
    Known drop = known(*in_.contact_drop);
    if (drop.value < 0.0) {
      drop.value = -drop.value;
      out_.notes.emplace_back(
          "The drop is negative: the probes were the other way round. Its size counts.");
    }
    const Known r = detail::resistance_of(drop, known(*in_.contact_current));
    out_.contact = quantity::Resistance{r.value};
    out_.contact_doubt = quantity::Resistance{r.doubt};
    out_.working.push_back(fmt::format("contacts: {} V / {} A = {} +-{}", pencil(drop.value),
                                       pencil(in_.contact_current->value.si), milliohm(r.value),
                                       milliohm(r.doubt)));
    if (in_.contact_limit) {
      const auto verdict = evidence::judge_upper(r.value, r.doubt, in_.contact_limit->value.si);
      item("contacts", verdict,
           fmt::format("{} +-{} against {} (entered)", milliohm(r.value), milliohm(r.doubt),
                       milliohm(in_.contact_limit->value.si)));
      return;
    }
    item("contacts", Verdict::not_tested,
         fmt::format("{} +-{}; no maker's limit. Advice: 0.2 V in to out under load is worn; this "
                     "is {} V",
                     milliohm(r.value), milliohm(r.doubt), pencil(drop.value)));
    if (drop.value >= k_contact_advice) {
      out_.do_next.emplace_back("renew the contactor (advice: 0.2 V or more under load)");
    }
  }

  void diode() {
    using enum DiodeReading;
    if (in_.diode_forward == not_read || in_.diode_reverse == not_read) {
      return item("suppression diode", Verdict::not_tested, "not read both ways");
    }
    if (!in_.coil_lead_lifted) {
      item("suppression diode", Verdict::undecided,
           "the coil masks it: both ways show the coil. Lift one coil lead and read again");
      return;
    }
    // Common practice has no limit: words, and no verdict, unless it is open or shorted.
    const bool forward_open = in_.diode_forward == over_range;
    const bool reverse_open = in_.diode_reverse == over_range;
    if (forward_open && reverse_open) {
      return item("suppression diode", Verdict::does_not_conform, "open: over-range both ways");
    }
    if (!forward_open && !reverse_open) {
      return item("suppression diode", Verdict::does_not_conform,
                  "conducts both ways: shorted. It would short the start switch");
    }
    if (forward_open) {
      return item("suppression diode", Verdict::undecided,
                  "conducts the wrong way: leads swapped, or the diode is fitted the wrong way "
                  "round (then it shorts the start switch)");
    }
    const double volts = in_.diode_forward_drop->value.si;
    const bool usual = volts >= k_diode_from && volts <= k_diode_to;
    item("suppression diode", usual ? Verdict::not_tested : Verdict::undecided,
         fmt::format("{} V one way, over-range the other{}", pencil(volts),
                     usual ? " as a good diode does (0.5 to 0.7 V is usual: common practice, "
                             "so no verdict)"
                           : ": not what a silicon diode shows (0.5 to 0.7 V)"));
  }

  void sum_up() {
    const auto any = [&](Verdict v) {
      return std::any_of(out_.items.begin(), out_.items.end(),
                         [v](const ContactorItem& i) { return i.verdict == v; });
    };
    for (const auto v : {Verdict::does_not_conform, Verdict::undecided, Verdict::conforms}) {
      if (!any(v)) continue;
      out_.verdict = v;
      break;
    }
    out_.in_words = std::string(evidence::words(out_.verdict));
    if (out_.verdict == Verdict::conforms && any(Verdict::not_tested)) {
      out_.in_words += " in what was judged; the rest is not tested";
    }
    out_.notes.emplace_back(
        "An intermittent contactor overheats when it is held on: duty 15 s in "
        "5 min was reported (second hand); its maker's figure counts.");
  }

  const ContactorInput& in_;
  ContactorAnswer out_;
};

}  // namespace

quantity::Voltage pull_in_at(quantity::Voltage at_20, double celsius) {
  return {at_20.si * warm_factor(Metal::copper, celsius)};
}

Checked<ContactorAnswer> contactor_check(const ContactorInput& input,
                                         const describe::Context& /*context*/) {
  return Contactor(input).run();
}

}  // namespace wm::electrics
