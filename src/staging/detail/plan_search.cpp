// The exact search: f(done) = least cost of having `done` behind us, over all last stages.
#include "staging/detail/plan_search.hpp"

#include <algorithm>
#include <bit>

namespace wm::staging::detail {
namespace {

constexpr Set bit(int i) { return Set{1} << i; }
constexpr std::size_t at(Set set) { return static_cast<std::size_t>(set); }
constexpr int k_most_units = 20;
constexpr double k_equal = 1e-9;
constexpr Set k_ask_every = 0x3ff;

/// Visits every set of units out of `from` that may make up a stage. Fewer may always meet when
/// more may, so a set that may not ends its branch.
template <class Visit>
class Stages {
 public:
  Stages(const Units& units, Visit visit) : units_(units), visit_(std::move(visit)) {}
  /// @param first  a unit that the stage must hold, -1: any
  void run(Set from, int first) {
    if (first < 0) return grow({}, from);
    add({}, first, from & ~bit(first));
  }

 private:
  struct Part {
    Set units{};
    double risk{};
    int size{};
  };
  void add(const Part& part, int u, Set rest) {
    const auto i = at(static_cast<Set>(u));
    const Part more{part.units | bit(u), part.risk + units_.risk[i], part.size + units_.size[i]};
    if (more.risk > units_.risk_limit || more.size > units_.size_limit) return;
    if (!visit_(more.units)) return;
    grow(more, rest & ~units_.never[i]);
  }
  void grow(const Part& part, Set rest) {
    while (rest != 0) {
      const int u = std::countr_zero(rest);
      rest &= rest - 1;
      add(part, u, rest);
    }
  }
  const Units& units_;
  Visit visit_;
};

class OverSubsets {
 public:
  explicit OverSubsets(const Search& search)
      : search_(search),
        units_(search.units),
        all_(bit(search.units.count()) - 1),
        free_order_(!search.all_orders && !order_counts(search.costs, search.units)),
        waits_(waiting_of(search.costs, search.units.changes(all_)) > 0.0) {}

  Plan run() {
    Plan plan;
    plan.exact = true;
    if (!prepare() || !fill()) {
      plan.stopped = true;
      return plan;
    }
    plan.cost = least_[at(all_)];
    plan.at_least = plan.cost;
    plan.optima = ways_[at(all_)];
    if (plan.cost < k_never) {
      for (Set done = all_; done != 0; done &= ~last_[at(done)]) {
        plan.stages.push_back(units_.changes(last_[at(done)]));
      }
      std::reverse(plan.stages.begin(), plan.stages.end());
    }
    return plan;
  }

 private:
  bool go_on(Set count, double from, double to) const {
    if ((count & k_ask_every) != 0 || !search_.go_on) return true;
    return search_.go_on(from +
                         (to - from) * static_cast<double>(count) / static_cast<double>(all_));
  }

  /// Costs of every set that may make up a stage.
  bool prepare() {
    if (waits_) {
      first_option_.assign(at(all_) + 2, 0);
    } else {
      stage_.assign(at(all_) + 1, k_never);
    }
    for (Set s = 1; s <= all_; ++s) {
      if (!go_on(s, 0.0, 0.3)) return false;
      if (waits_) first_option_[at(s)] = options_.size();
      const Set changes = units_.changes(s);
      if (changes == search_.forbidden || !may_meet(units_, s)) continue;
      if (!waits_) {
        stage_[at(s)] = search_.costs.best(changes, 0.0).cost;
      } else {
        for (const auto& o : search_.costs.options(changes)) options_.push_back(o);
      }
    }
    if (waits_) first_option_[at(all_) + 1] = options_.size();
    return true;
  }

  double stage_cost(Set stage, double waiting) const {
    if (!waits_) return stage_[at(stage)];
    double least = k_never;
    for (auto i = first_option_[at(stage)]; i < first_option_[at(stage) + 1]; ++i) {
      least = std::min(least, options_[i].cost + options_[i].hours * waiting);
    }
    return least;
  }

  Set open_to(Set done) const {
    Set out = 0;
    for (int u = 0; u < units_.count(); ++u) {
      const auto i = at(static_cast<Set>(u));
      if ((done & bit(u)) == 0 && (units_.strictly_before[i] & ~done) == 0) out |= bit(u);
    }
    return out;
  }

  bool in_order(Set done, Set stage) const {
    if (!units_.ordered) return true;
    for (Set left = stage; left != 0; left &= left - 1) {
      if ((units_.not_after[at(static_cast<Set>(std::countr_zero(left)))] & ~(done | stage)) != 0) {
        return false;
      }
    }
    return true;
  }

  void relax(Set done, Set stage, double waiting) {
    const double cost = least_[at(done)] + stage_cost(stage, waiting);
    if (!(cost < k_never) || !in_order(done, stage)) return;
    const auto to = at(done | stage);
    const double slack = k_equal * std::max(1.0, cost);
    if (cost < least_[to] - slack) {
      least_[to] = cost;
      ways_[to] = ways_[at(done)];
      last_[to] = static_cast<std::uint32_t>(stage);
    } else if (cost <= least_[to] + slack) {
      ways_[to] += ways_[at(done)];
    }
  }

  bool fill() {
    least_.assign(at(all_) + 1, k_never);
    ways_.assign(at(all_) + 1, 0.0);
    last_.assign(at(all_) + 1, 0);
    least_[0] = 0.0;
    ways_[0] = 1.0;
    Set done = 0;
    double waiting = 0.0;
    const auto visit = [&](Set stage) {
      relax(done, stage, waiting);
      return true;
    };
    Stages<decltype(visit)> stages(units_, visit);
    for (done = 0; done < all_; ++done) {
      if (!go_on(done, 0.3, 1.0)) return false;
      if (!(least_[at(done)] < k_never)) continue;
      waiting = waits_ ? waiting_of(search_.costs, units_.changes(all_ & ~done)) : 0.0;
      stages.run(open_to(done), free_order_ ? std::countr_one(done) : -1);
    }
    return true;
  }

  const Search& search_;
  const Units& units_;
  Set all_;
  bool free_order_;
  bool waits_;
  std::vector<double> stage_;
  std::vector<StageOption> options_;
  std::vector<std::size_t> first_option_;
  std::vector<double> least_;
  std::vector<double> ways_;
  std::vector<std::uint32_t> last_;
};

}  // namespace

double waiting_of(const StageCosts& costs, Set changes) {
  double sum = 0.0;
  for (; changes != 0; changes &= changes - 1) {
    sum += costs.model().suspects[at(static_cast<Set>(std::countr_zero(changes)))].waiting;
  }
  return sum;
}

bool order_counts(const StageCosts& costs, const Units& units) {
  return units.ordered || waiting_of(costs, units.changes(bit(units.count()) - 1)) > 0.0;
}

double cost_of(const StageCosts& costs, const std::vector<Set>& stages) {
  Set left = 0;
  for (const Set s : stages) left |= s;
  double sum = 0.0;
  for (const Set s : stages) {
    const double waiting = waiting_of(costs, left);
    const auto best = costs.best(s, waiting);
    sum += best.cost + best.hours * waiting;
    left &= ~s;
  }
  return sum;
}

std::uint64_t subset_steps(const Search& search, std::uint64_t limit) {
  const Units& units = search.units;
  const int n = units.count();
  if (n > k_most_units) return limit + 1;
  const bool free_order = !search.all_orders && !order_counts(search.costs, units);
  std::uint64_t steps = 0;
  const auto visit = [&](Set stage) {
    // What may be done before: anything of the rest; with free order all before its first unit.
    const int first = std::countr_zero(stage);
    const int rest = n - std::popcount(stage) - (free_order ? first : 0);
    steps += std::uint64_t{1} << rest;
    return steps <= limit;
  };
  Stages<decltype(visit)>(units, visit).run(bit(n) - 1, -1);
  return std::min(steps, limit + 1);
}

Plan over_subsets(const Search& search) { return OverSubsets(search).run(); }

Plan cheapest(const Search& search) {
  return subset_steps(search, search.steps) <= search.steps ? over_subsets(search)
                                                            : by_bound(search);
}

}  // namespace wm::staging::detail
