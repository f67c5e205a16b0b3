#include "electrics/reserve.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "electrics/detail/problem.hpp"
#include "quantity/as_typed.hpp"

namespace wm::electrics {
namespace {

using detail::problem;
using quantity::pencil;

constexpr double k_hour = 3600.0;
constexpr double k_generator_share = 0.8;
constexpr double k_minute = 60.0;

double average(const BusLoad& load) { return load.current.value.si * load.duty.si; }

class Reserve {
 public:
  explicit Reserve(const ReserveInput& in) : in_(in) {}

  Checked<ReserveAnswer> run() {
    Problems problems;
    check(problems);
    if (!problems.empty()) return Fail(std::move(problems));
    generator();
    out_.usable = {in_.capacity.value.si * in_.age.si * in_.charged.si * in_.cold.si * share()};
    out_.working.push_back(fmt::format(
        "usable: {} Ah x {} (age) x {} (charged) x {} (cold) x {} (cut-out) = {} Ah",
        pencil(in_.capacity.value.si / k_hour), pencil(in_.age.si), pencil(in_.charged.si),
        pencil(in_.cold.si), pencil(share()), pencil(out_.usable.si / k_hour)));
    discharge();
    tell();
    return std::move(out_);
  }

 private:
  void check(Problems& problems) const {
    if (in_.loads.empty()) {
      problems.push_back(problem("loads", Kind::missing, "there is no load",
                                 "every load that is on in flight",
                                 R"([{"name": "radio", "current": "2 A", "essential": true}])"));
    }
    std::set<std::string> names;
    for (std::size_t i = 0; i < in_.loads.size(); ++i) {
      if (names.insert(in_.loads[i].name).second) continue;
      problems.push_back(problem(fmt::format("loads/{}/name", i), Kind::duplicate,
                                 fmt::format("two loads are called `{}`", in_.loads[i].name),
                                 "a name of its own"));
    }
    if (!in_.loads.empty() && !(after_all() > 0.0)) {
      problems.push_back(problem("loads", Kind::not_applicable,
                                 "nothing stays on: the battery has no end",
                                 "at least one essential load that draws current"));
    }
    if (in_.peukert && !in_.rated_time) {
      problems.push_back(problem("rated_time", Kind::missing,
                                 "the exponent needs the time for which the capacity is rated",
                                 "as on the battery's label", "20 h"));
    }
    check_voltages(problems);
  }

  void check_voltages(Problems& problems) const {
    if (!in_.cut_out) return;
    if (!in_.full || !in_.empty) {
      problems.push_back(problem(in_.full ? "empty" : "full", Kind::missing,
                                 "a cut-out voltage says nothing without the battery's own",
                                 "its voltage under this load, full and at the end of its capacity",
                                 in_.full ? "10.5 V" : "12.4 V"));
      return;
    }
    if (in_.full->value > in_.empty->value && in_.cut_out->value < in_.full->value) return;
    problems.push_back(problem("cut_out", Kind::conflict,
                               "full, cut-out and empty are not in this order",
                               "full above empty, the cut-out below full", "11 V"));
  }

  double share() const {
    if (!in_.cut_out) return 1.0;
    const double full = in_.full->value.si;
    return std::min(1.0, (full - in_.cut_out->value.si) / (full - in_.empty->value.si));
  }

  /// Seconds since the failure at which a load goes off; nothing when it stays on.
  std::optional<double> off_at(const BusLoad& load) const {
    if (load.shed_after) return load.shed_after->value.si;
    if (load.essential) return std::nullopt;
    return in_.noticed_after.value.si;
  }

  double after_all() const {
    double sum = 0.0;
    for (const auto& load : in_.loads) {
      if (!off_at(load)) sum += average(load);
    }
    return sum;
  }

  void generator() {
    for (const auto& load : in_.loads) out_.before.si += average(load);
    out_.after = {after_all()};
    if (!in_.generator) return;
    out_.of_generator = {out_.before / in_.generator->value};
    out_.generator = against(out_.of_generator->si, k_generator_share, false);
    out_.working.push_back(
        fmt::format("loads {} A of {} A generator: {} % (80 % without placard "
                    "or monitoring: AC 43.13-1B par. 11-35)",
                    pencil(out_.before.si), pencil(in_.generator->value.si),
                    pencil(100 * out_.of_generator->si)));
    if (out_.generator == Against::over) {
      out_.do_next.emplace_back(
          "continuous load above 80 % of the generator: a placard or a means "
          "to watch the load is asked for (AC 43.13-1B par. 11-35)");
    }
  }

  /// What a current takes from the battery in a second, coulomb.
  double drain(double amperes) const {
    if (!in_.peukert || amperes <= 0.0) return amperes;
    const double rated = in_.capacity.value.si / in_.rated_time->value.si;
    return rated * std::pow(amperes / rated, *in_.peukert);
  }

  void discharge() {
    std::set<double> steps;
    for (const auto& load : in_.loads) {
      if (const auto off = off_at(load)) steps.insert(*off);
    }
    double left = out_.usable.si;
    double now = 0.0;
    for (const double step : steps) {
      if (step > now && !phase(now, step, left)) return;
      now = std::max(now, step);
    }
    phase(now, HUGE_VAL, left);
  }

  /// @return false when the battery is flat before `until`.
  bool phase(double from, double until, double& left) {
    double amperes = 0.0;
    std::string on;
    for (const auto& load : in_.loads) {
      if (const auto off = off_at(load); off && *off <= from) continue;
      amperes += average(load);
      on += (on.empty() ? "" : ", ") + load.name;
    }
    const double rate = drain(amperes);
    const double lasts = rate > 0.0 ? left / rate : HUGE_VAL;
    const double end = std::min(until, from + lasts);
    left -= rate * (end - from);
    out_.phases.push_back({{from}, {end}, {amperes}, on});
    out_.endurance = {end};
    out_.working.push_back(fmt::format("from {} to {} min: {} A takes {} Ah",
                                       pencil(from / k_minute), pencil(end / k_minute),
                                       pencil(amperes), pencil(rate * (end - from) / k_hour)));
    return end >= until;
  }

  void tell() {
    out_.in_words = fmt::format("about {} min after charging fails",
                                static_cast<long>(std::floor(out_.endurance.si / k_minute)));
    if (in_.wanted) {
      // More time than wanted is what is asked for: the roles of value and limit change places.
      out_.against_wanted = against(in_.wanted->value.si, out_.endurance.si, false);
      const bool enough = *out_.against_wanted == Against::within;
      out_.in_words += enough ? ": as long as you want" : ": less than you want";
      if (!enough) {
        out_.do_next.emplace_back(
            "shed more or sooner, a larger or younger battery, or land "
            "sooner");
      }
    }
    out_.notes.emplace_back(
        "The clock starts when charging fails, not when you notice. A low-voltage "
        "warning at 13 V (14 V system) or 26 V (28 V) tells early (AC 43.13-1B "
        "par. 11-35).");
    out_.notes.emplace_back(
        "Age, charge and cold are your own factors. Prove the capacity by a test "
        "as the battery's maker says; this sum proves nothing.");
    if (in_.peukert) {
      out_.notes.emplace_back(
          "The exponent is yours; the law it belongs to is from memory and holds "
          "for lead-acid near its rated current.");
    }
    if (in_.cut_out) {
      out_.notes.emplace_back(
          "The voltage is taken to fall in a straight line: common practice, no "
          "source; the last part falls faster.");
    }
  }

  const ReserveInput& in_;
  ReserveAnswer out_;
};

}  // namespace

Checked<ReserveAnswer> battery_reserve(const ReserveInput& input,
                                       const describe::Context& /*context*/) {
  return Reserve(input).run();
}

std::string_view describe(describe::Fields<BusLoad>& f) {
  f.has<&BusLoad::name>("name", "Load").needed("radio").unique();
  f.has<&BusLoad::current>("current", "Current while it draws")
      .needed("2 A")
      .between(quantity::amperes(0), quantity::amperes(1000));
  f.has<&BusLoad::duty>("duty", "Share of the time it draws")
      .example("20 %")
      .between(quantity::per_cent(0), quantity::per_cent(100));
  f.has<&BusLoad::essential>("essential", "Stays on");
  f.has<&BusLoad::shed_after>("shed_after", "Switched off this long after charging failed")
      .between(quantity::seconds(0), quantity::hours(24));
  return "bus-load";
}

std::string_view describe(describe::Fields<ReserveInput>& f) {
  using In = ReserveInput;
  const auto none = quantity::volts(1);
  const auto most = quantity::volts(60);
  f.has<&In::name>("name", "Which aircraft or bus").example("main bus");
  f.has<&In::loads>("loads", "Loads in flight")
      .needed(R"([{"name": "radio", "current": "2 A", "essential": true},
 {"name": "ignition", "current": "4 A", "essential": true},
 {"name": "landing light", "current": "8 A"}])")
      .at_most(200);
  f.has<&In::generator>("generator", "Rated current of the generator")
      .example("40 A")
      .above(quantity::amperes(0))
      .at_most(quantity::amperes(1000));
  f.has<&In::capacity>("capacity", "Rated capacity of the battery")
      .needed("24 Ah")
      .above(quantity::Charge{0})
      .at_most(quantity::Charge{3.6e6});
  f.has<&In::age>("age", "Share left by age")
      .needed("80 %")
      .above(quantity::per_cent(0))
      .at_most(quantity::per_cent(110))
      .help("From your last capacity test.");
  f.has<&In::charged>("charged", "State of charge when charging fails")
      .above(quantity::per_cent(0))
      .at_most(quantity::per_cent(100));
  f.has<&In::cold>("cold", "Share left by temperature")
      .above(quantity::per_cent(0))
      .at_most(quantity::per_cent(110))
      .help("From the battery maker's curve at the lowest temperature expected.");
  f.has<&In::noticed_after>("noticed_after", "Failure noticed, other loads off, after")
      .needed("5 min")
      .between(quantity::seconds(0), quantity::hours(24));
  f.has<&In::peukert>("peukert", "Exponent of its capacity, if known").between(1.0, 2.0);
  f.has<&In::rated_time>("rated_time", "Capacity is rated for")
      .above(quantity::seconds(0))
      .at_most(quantity::hours(100));
  f.has<&In::cut_out>("cut_out", "Voltage below which the equipment stops").between(none, most);
  f.has<&In::full>("full", "Battery under this load, full").between(none, most);
  f.has<&In::empty>("empty", "Battery at the end of its rated capacity").between(none, most);
  f.has<&In::wanted>("wanted", "How long you want it to last")
      .example("30 min")
      .between(quantity::seconds(0), quantity::hours(24));
  return "reserve-input";
}

std::string_view describe(describe::Fields<ReservePhase>& f) {
  f.has<&ReservePhase::from>("from", "From");
  f.has<&ReservePhase::until>("until", "Until");
  f.has<&ReservePhase::current>("current", "Current");
  f.has<&ReservePhase::on>("on", "On");
  return "reserve-phase";
}

std::string_view describe(describe::Fields<ReserveAnswer>& f) {
  using A = ReserveAnswer;
  f.has<&A::endurance>("endurance", "Battery lasts");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::against_wanted>("against_wanted", "Against what you want");
  f.has<&A::usable>("usable", "Usable of the battery");
  f.has<&A::before>("before", "Loads in flight");
  f.has<&A::after>("after", "What stays on");
  f.has<&A::of_generator>("of_generator", "Share of the generator");
  f.has<&A::generator>("generator", "Against 80 % of it");
  f.has<&A::phases>("phases", "Step by step");
  f.has<&A::do_next>("do_next", "Do next");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum");
  return "reserve-answer";
}

}  // namespace wm::electrics
