// Branch and bound for plans too large for subsets: stages are grown unit by unit, and a branch
// ends where even its least cost is no better than the best plan known.
#include <algorithm>
#include <bit>
#include <unordered_map>

#include "staging/detail/plan_search.hpp"

namespace wm::staging::detail {
namespace {

constexpr Set bit(int i) { return Set{1} << i; }
constexpr std::size_t at(int i) { return static_cast<std::size_t>(i); }
constexpr std::size_t k_remember = 1'000'000;
constexpr std::uint64_t k_ask_every = 0xff;
constexpr double k_equal = 1e-9;
constexpr int k_rounds = 200;

template <class F>
void each(Set set, const F& visit) {
  for (; set != 0; set &= set - 1) visit(std::countr_zero(set));
}

class ByBound {
 public:
  explicit ByBound(const Search& search)
      : search_(search),
        units_(search.units),
        n_(units_.count()),
        all_(bit(n_) - 1),
        free_order_(!order_counts(search.costs, search.units)) {
    for (int u = 0; u < n_; ++u) prepare(u);
    hour_order_.resize(at(n_));
    for (int u = 0; u < n_; ++u) hour_order_[at(u)] = u;
    std::stable_sort(hour_order_.begin(), hour_order_.end(),
                     [&](int a, int b) { return hours_cost_[at(a)] > hours_cost_[at(b)]; });
  }

  Plan run() {
    start();
    finish_stage(0, 0.0);
    Plan plan;
    plan.cost = best_;
    plan.at_least = std::min(best_, open_);
    plan.stopped = stopped_;
    for (const Set s : best_stages_) plan.stages.push_back(units_.changes(s));
    return plan;
  }

 private:
  /// Least that a unit brings to whatever stage it joins; its share of hours apart.
  void prepare(int u) {
    const CostModel& m = search_.costs.model();
    double share = 0.0, hours_cost = 0.0, waits = 0.0;
    each(units_.members[at(u)], [&](int c) {
      const Suspect& s = m.suspects[at(c)];
      share += search_.costs.least_share(c);
      const auto longer = std::lower_bound(m.grid.begin(), m.grid.end(), s.hours);
      double hours = longer == m.grid.end() ? s.hours : *longer;
      double cost = m.hour_cost * hours;
      if (m.ground_stages && s.ground_hours >= 0.0) {
        cost = std::min(cost, m.ground_hour_cost * s.ground_hours);
        hours = std::min(hours, s.ground_hours);
      }
      hours_cost = std::max(hours_cost, cost);
      waits += s.waiting * hours;
    });
    share_.push_back(share);
    hours_cost_.push_back(hours_cost);
    waits_.push_back(waits);
  }

  /// Least cost of stages for exactly these units.
  double rest(Set set) const {
    if (set == 0) return 0.0;
    const CostModel& m = search_.costs.model();
    double sum = 0.0, risk = 0.0, by_size = 0.0, by_pair = 0.0;
    int size = 0, place = 0;
    Set areas = 0, apart = 0;
    for (const int u : hour_order_) {
      if ((set & bit(u)) == 0) continue;
      sum += share_[at(u)] + waits_[at(u)];
      risk += units_.risk[at(u)];
      size += units_.size[at(u)];
      if (place++ % units_.size_limit == 0) by_size += hours_cost_[at(u)];
      // Units that may not meet, each of which needs a stage of its own.
      if ((units_.never[at(u)] & apart) == apart) {
        apart |= bit(u);
        by_pair += hours_cost_[at(u)];
      }
      each(units_.members[at(u)], [&](int c) { areas |= m.suspects[at(c)].areas; });
    }
    each(areas, [&](int a) { sum += m.areas[at(a)]; });
    int stages = std::max(std::popcount(apart), (size + units_.size_limit - 1) / units_.size_limit);
    if (units_.risk_limit < k_never && units_.risk_limit > 0.0) {
      while (stages * units_.risk_limit < risk - k_equal) ++stages;
    }
    return sum + stages * m.stage_cost + std::max(by_size, by_pair);
  }

  /// What units cost at least that may still join the stage at hand.
  double joining(Set set) const {
    double sum = 0.0;
    each(set, [&](int u) { sum += share_[at(u)]; });
    return sum;
  }

  const std::vector<StageOption>& options(Set stage) {
    const auto known = known_.find(stage);
    if (known != known_.end()) return known->second;
    if (known_.size() > k_remember) known_.clear();
    return known_.emplace(stage, search_.costs.options(units_.changes(stage))).first->second;
  }
  double stage_cost(Set stage, double waiting) {
    double least = k_never;
    for (const auto& o : options(stage)) least = std::min(least, o.cost + o.hours * waiting);
    return least;
  }
  double waiting(Set done) const { return waiting_of(search_.costs, units_.changes(all_ & ~done)); }

  bool in_order(Set done, Set stage) const {
    bool good = true;
    each(stage, [&](int u) {
      good = good && (units_.not_after[at(u)] & ~(done | stage)) == 0 &&
             (units_.strictly_before[at(u)] & ~done) == 0;
    });
    return good;
  }

  /// Cost of a whole plan in units; k_never where it breaks a rule.
  double whole(const std::vector<Set>& stages) {
    double sum = 0.0;
    Set done = 0;
    for (const Set s : stages) {
      if (!in_order(done, s) || !may_meet(units_, s)) return k_never;
      if (units_.changes(s) == search_.forbidden) return k_never;
      sum += stage_cost(s, waiting(done));
      done |= s;
    }
    return sum;
  }

  void take(const std::vector<Set>& stages, double cost) {
    if (!(cost < best_)) return;
    best_ = cost;
    best_stages_ = stages;
  }

  /// A first plan: one by one in order, then improved as long as one move helps.
  void start() {
    std::vector<Set> plan;
    Set done = 0;
    while (done != all_) {
      int next = -1;
      for (int u = 0; u < n_ && next < 0; ++u) {
        const bool ready = ((units_.strictly_before[at(u)] | units_.not_after[at(u)]) & ~done) == 0;
        if ((done & bit(u)) == 0 && ready) next = u;
      }
      if (next < 0) return;
      plan.push_back(bit(next));
      done |= bit(next);
    }
    take(plan, whole(plan));
    for (int round = 0; round < k_rounds && improve(plan); ++round) {
    }
  }

  /// The best of: two stages made one; one unit moved to another stage or to a new one.
  bool improve(std::vector<Set>& plan) {
    const double now = whole(plan);
    double least = now - k_equal * std::max(1.0, now);
    std::vector<Set> better;
    const auto consider = [&](std::vector<Set> next) {
      next.erase(std::remove(next.begin(), next.end(), Set{0}), next.end());
      const double cost = whole(next);
      if (!(cost < least)) return;
      least = cost;
      better = std::move(next);
    };
    for (std::size_t a = 0; a < plan.size(); ++a) {
      for (std::size_t b = 0; b < plan.size(); ++b) {
        if (a == b) continue;
        auto merged = plan;
        merged[b] |= merged[a];
        merged[a] = 0;
        consider(std::move(merged));
        each(plan[a], [&](int u) {
          auto moved = plan;
          moved[a] &= ~bit(u);
          moved[b] |= bit(u);
          consider(std::move(moved));
        });
      }
    }
    for (std::size_t a = 0; a < plan.size(); ++a) {
      for (std::size_t place = 0; place <= plan.size(); ++place) {
        each(plan[a], [&](int u) {
          auto moved = plan;
          moved[a] &= ~bit(u);
          moved.insert(moved.begin() + static_cast<std::ptrdiff_t>(place), bit(u));
          consider(std::move(moved));
        });
      }
    }
    if (better.empty()) return false;
    plan = std::move(better);
    take(plan, least);
    return true;
  }

  /// True where this branch is worth no step; an unfinished one leaves its bound behind.
  bool ends(double bound) {
    if (bound >= best_ - k_equal * std::max(1.0, best_)) return true;
    ++nodes_;
    if (!spent_ && nodes_ >= search_.nodes) spent_ = true;
    if (!spent_ && (nodes_ & k_ask_every) == 0 && search_.go_on) {
      const double share = static_cast<double>(nodes_) / static_cast<double>(search_.nodes);
      if (!search_.go_on(std::min(1.0, share))) spent_ = stopped_ = true;
    }
    if (spent_) open_ = std::min(open_, bound);
    return spent_;
  }

  void finish_stage(Set done, double cost) {
    if (done == all_) {
      take(stages_, cost);
      return;
    }
    if (ends(cost + rest(all_ & ~done))) return;
    if (!remember(done, cost)) return;
    Set open = 0;
    each(all_ & ~done, [&](int u) {
      if ((units_.strictly_before[at(u)] & ~done) == 0) open |= bit(u);
    });
    const double waits = waiting(done);
    if (free_order_) {
      const int first = std::countr_zero(all_ & ~done);
      grow({done, cost, waits}, bit(first), open & ~bit(first) & ~units_.never[at(first)]);
      return;
    }
    while (open != 0) {
      const int first = std::countr_zero(open);
      open &= open - 1;
      grow({done, cost, waits}, bit(first), open & ~units_.never[at(first)]);
    }
  }

  /// False where the same units were already done for no more.
  bool remember(Set done, double cost) {
    const auto known = reached_.find(done);
    if (known == reached_.end()) {
      if (reached_.size() < k_remember) reached_.emplace(done, cost);
      return true;
    }
    if (known->second <= cost) return false;
    known->second = cost;
    return true;
  }

  struct Before {
    Set done{};
    double cost{};
    double waits{};
  };

  void grow(const Before& before, Set stage, Set may_join) {
    if (!may_meet(units_, stage)) return;
    const double own = before.cost + stage_cost(stage, before.waits);
    const Set later = all_ & ~(before.done | stage | may_join);
    if (ends(own + joining(may_join) + rest(later))) return;
    if (may_join == 0) {
      if (!in_order(before.done, stage) || units_.changes(stage) == search_.forbidden) return;
      stages_.push_back(stage);
      finish_stage(before.done | stage, own);
      stages_.pop_back();
      return;
    }
    const int u = std::countr_zero(may_join);
    const Set others = may_join & ~bit(u);
    grow(before, stage | bit(u), others & ~units_.never[at(u)]);
    grow(before, stage, others);
  }

  const Search& search_;
  const Units& units_;
  int n_;
  Set all_;
  bool free_order_;
  std::vector<double> share_, hours_cost_, waits_;
  std::vector<int> hour_order_;
  std::unordered_map<Set, std::vector<StageOption>> known_;
  std::unordered_map<Set, double> reached_;
  std::vector<Set> stages_, best_stages_;
  double best_{k_never};
  double open_{k_never};
  std::uint64_t nodes_{};
  bool spent_{};
  bool stopped_{};
};

}  // namespace

Plan by_bound(const Search& search) { return ByBound(search).run(); }

}  // namespace wm::staging::detail
