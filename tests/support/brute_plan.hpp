#pragma once
/// The cheapest split into stages by trying every one: slow, and written from the model alone
/// (docs/method/staging.md), not from the search that it checks.

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "staging/stage_plan.hpp"

namespace wm::test {

class BrutePlan {
 public:
  using Group = std::vector<std::size_t>;

  explicit BrutePlan(const staging::StagePlanInput& in) : in_(in), n_(in.changes.size()) {}

  double best{std::numeric_limits<double>::infinity()};
  int optima{};                                               ///< ordered splits that cost the same
  int splits{};                                               ///< ordered splits there are
  int feasible{};                                             ///< of them keep the rules
  double runner_up{std::numeric_limits<double>::infinity()};  ///< another grouping

  void run() {
    std::vector<std::size_t> stage_of(n_);
    for (std::size_t stages = 1; stages <= n_; ++stages) assign(stage_of, 0, stages);
    for (const auto& [grouping, cost] : groupings_) {
      if (grouping == best_grouping_) continue;
      runner_up = std::min(runner_up, cost);
    }
  }

 private:
  static double hours(const staging::EnteredHours& h) { return h.value.si / 3600.0; }
  std::size_t find(const std::string& name) const {
    for (std::size_t i = 0; i < n_; ++i) {
      if (in_.changes[i].name == name) return i;
    }
    return n_;
  }

  void assign(std::vector<std::size_t>& stage_of, std::size_t i, std::size_t stages) {
    if (i < n_) {
      for (std::size_t k = 0; k < stages; ++k) {
        stage_of[i] = k;
        assign(stage_of, i + 1, stages);
      }
      return;
    }
    std::vector<Group> split(stages);
    for (std::size_t c = 0; c < n_; ++c) split[stage_of[c]].push_back(c);
    for (const auto& g : split) {
      if (g.empty()) return;
    }
    ++splits;
    if (!allowed(stage_of, split)) return;
    ++feasible;
    weigh(split);
  }

  void weigh(const std::vector<Group>& split) {
    double cost = 0.0, waiting = 0.0;
    for (const auto& c : in_.changes) waiting += c.waiting_cost;
    for (const auto& g : split) {
      cost += stage_cost(g, waiting);
      for (const auto c : g) waiting -= in_.changes[c].waiting_cost;
    }
    std::set<Group> grouping(split.begin(), split.end());
    const auto known = groupings_.try_emplace(grouping, cost).first;
    known->second = std::min(known->second, cost);
    if (cost < best - 1e-7) {
      best = cost;
      optima = 1;
      best_grouping_ = grouping;
    } else if (cost < best + 1e-7) {
      ++optima;
    }
  }

  bool allowed(const std::vector<std::size_t>& stage_of, const std::vector<Group>& split) const {
    for (std::size_t i = 0; i < n_; ++i) {
      for (const auto& a : in_.changes[i].after) {
        if (stage_of[find(a)] >= stage_of[i]) return false;
      }
      for (const auto& a : in_.changes[i].not_later_than) {
        if (stage_of[i] > stage_of[find(a)]) return false;
      }
      for (const auto& a : in_.changes[i].together) {
        if (stage_of[i] != stage_of[find(a)]) return false;
      }
    }
    for (const auto& p : in_.never) {
      if (stage_of[find(p.one)] == stage_of[find(p.other)]) return false;
    }
    for (const auto& g : split) {
      if (in_.size_cap && static_cast<std::int64_t>(g.size()) > *in_.size_cap) return false;
      double none = 1.0;
      for (const auto c : g) none *= 1.0 - in_.changes[c].fault_chance.si;
      if (in_.risk_cap && 1.0 - none > in_.risk_cap->si + 1e-12) return false;
    }
    return true;
  }

  struct Item {
    double q, t;
  };

  static double any(const std::vector<Item>& r) {
    double none = 1.0;
    for (const auto& i : r) none *= 1.0 - i.q;
    return 1.0 - none;
  }

  /// Expected cost of a search once the symptom is there, by the conditional recursion.
  static double value(const std::vector<Item>& r, double confirm) {
    const double on = any(r);
    if (r.empty() || on <= 0.0) return 0.0;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < r.size(); ++i) {
      auto rest = r;
      rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
      const double then = value(rest, confirm), still = any(rest);
      const double cost =
          r[i].t + r[i].q / on * (confirm + still * then) + (1.0 - r[i].q) * still / on * then;
      least = std::min(least, cost);
    }
    return least;
  }

  bool alike(std::size_t a, std::size_t b) const {
    for (const auto& s : in_.changes[a].symptoms) {
      for (const auto& z : in_.changes[b].symptoms) {
        if (s == z) return true;
      }
    }
    return false;
  }

  double searching(const Group& s, double h, bool certain) {
    double cost = 0.0;
    const double confirm = in_.hour_cost * hours(in_.confirmation);
    std::set<std::size_t> left(s.begin(), s.end());
    while (!left.empty()) {
      Group kind{*left.begin()};
      left.erase(left.begin());
      for (std::size_t k = 0; k < kind.size(); ++k) {
        for (auto it = left.begin(); it != left.end();) {
          if (alike(kind[k], *it)) {
            kind.push_back(*it);
            it = left.erase(it);
          } else {
            ++it;
          }
        }
      }
      std::vector<Item> items;
      std::set<std::string> words;
      for (const auto c : kind) {
        const auto& change = in_.changes[c];
        const double p = change.fault_chance.si;
        const double d =
            certain || !change.found_per_hour ? 1.0 : 1.0 - std::exp(-*change.found_per_hour * h);
        items.push_back({p * d, change.check_cost});
        cost += in_.escape_cost * p * (1.0 - d);
        words.insert(change.symptoms.begin(), change.symptoms.end());
      }
      for (const auto& o : in_.other_causes) {
        if (words.count(o.symptom) != 0) items.push_back({o.chance.si, o.check_cost});
      }
      cost += any(items) * value(items, confirm);
    }
    return cost;
  }

  double stage_cost(const Group& s, double waiting) {
    const auto key = std::pair{s, waiting};
    const auto known = memo_.find(key);
    if (known != memo_.end()) return known->second;
    double base = in_.stage_cost;
    std::set<std::string> opened;
    double asked = 0.0, ground = 0.0;
    bool on_ground = in_.ground_stages;
    for (const auto c : s) {
      const auto& change = in_.changes[c];
      opened.insert(change.areas.begin(), change.areas.end());
      if (change.hours) asked = std::max(asked, hours(*change.hours));
      on_ground = on_ground && change.ground_hours;
      if (change.ground_hours) ground = std::max(ground, hours(*change.ground_hours));
    }
    for (const auto& a : in_.areas) base += opened.count(a.name) != 0 ? a.opening_cost : 0.0;
    for (const auto& h : in_.harms) {
      const auto a = find(h.one), b = find(h.other);
      if (std::count(s.begin(), s.end(), a) != 0 && std::count(s.begin(), s.end(), b) != 0) {
        base += h.harm * in_.changes[a].fault_chance.si * in_.changes[b].fault_chance.si;
      }
    }
    std::vector<double> tried{asked};
    if (in_.test_hours == staging::TestHours::the_same_for_all) tried = {hours(*in_.same_hours)};
    if (in_.test_hours == staging::TestHours::cheapest) {
      tried.clear();
      const double from = hours(*in_.hours_from), step = hours(*in_.hours_step);
      for (int k = 0; from + k * step <= hours(*in_.hours_to) + 1e-9; ++k) {
        if (from + k * step >= asked) tried.push_back(from + k * step);
      }
    }
    double least = std::numeric_limits<double>::infinity();
    for (const double h : tried) {
      least = std::min(least, base + (in_.hour_cost + waiting) * h + searching(s, h, false));
    }
    if (on_ground) {
      least = std::min(
          least, base + (in_.ground_hour_cost + waiting) * ground + searching(s, ground, true));
    }
    return memo_[key] = least;
  }

  const staging::StagePlanInput& in_;
  std::size_t n_;
  std::map<std::pair<Group, double>, double> memo_;
  std::map<std::set<Group>, double> groupings_;
  std::set<Group> best_grouping_;
};

}  // namespace wm::test
