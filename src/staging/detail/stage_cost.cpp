#include "staging/detail/stage_cost.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <numeric>

namespace wm::staging::detail {
namespace {

constexpr Set bit(int i) { return Set{1} << i; }

template <class F>
void each(Set set, const F& visit) {
  while (set != 0) {
    visit(std::countr_zero(set));
    set &= set - 1;
  }
}

double shown_share(const Suspect& s, double hours, bool certain) {
  return certain || s.found_per_hour < 0.0 ? 1.0 : -std::expm1(-s.found_per_hour * hours);
}

/// Looking order: rising t (1 - q) / q. What cannot be at fault comes last.
double patience(double cost, double q) { return q > 0.0 ? cost * (1.0 - q) / q : k_never; }

}  // namespace

StageCosts::StageCosts(CostModel model) : model_(std::move(model)) {
  if (model_.rule == HoursRule::longest) {
    model_.grid.clear();
    for (int i = 0; i < model_.changes; ++i) model_.grid.push_back(model_.suspects[index(i)].hours);
    std::sort(model_.grid.begin(), model_.grid.end());
    model_.grid.erase(std::unique(model_.grid.begin(), model_.grid.end()), model_.grid.end());
  }
  profiles_.push_back(profile(0.0, true));
  for (const double hours : model_.grid) profiles_.push_back(profile(hours, false));
  find_shares();
}

StageCosts::Profile StageCosts::profile(double hours, bool certain) const {
  Profile made;
  made.hours = hours;
  for (const Suspect& s : model_.suspects) {
    made.shown.push_back(s.chance * shown_share(s, hours, certain));
  }
  made.order.resize(model_.suspects.size());
  std::iota(made.order.begin(), made.order.end(), 0);
  std::stable_sort(made.order.begin(), made.order.end(), [&](int a, int b) {
    return patience(model_.suspects[index(a)].check_cost, made.shown[index(a)]) <
           patience(model_.suspects[index(b)].check_cost, made.shown[index(b)]);
  });
  return made;
}

void StageCosts::find_shares() {
  for (int i = 0; i < model_.changes; ++i) {
    const Suspect& s = model_.suspects[index(i)];
    double least = s.chance * (s.check_cost + model_.confirmation_cost);  // on the ground, certain
    for (std::size_t k = 1; k < profiles_.size(); ++k) {
      const double q = profiles_[k].shown[index(i)];
      const double here =
          q * (s.check_cost + model_.confirmation_cost) + model_.escape_cost * (s.chance - q);
      least = k == 1 && s.ground_hours < 0.0 ? here : std::min(least, here);
    }
    share_.push_back(least);
  }
}

const StageCosts::Profile& StageCosts::at_hours(double hours) const {
  const auto found = std::find_if(profiles_.begin() + 1, profiles_.end(),
                                  [&](const Profile& p) { return p.hours >= hours; });
  return found == profiles_.end() ? profiles_.back() : *found;
}

std::vector<Set> StageCosts::kinds(Set changes) const {
  std::vector<Set> out;
  Set left = changes;
  while (left != 0) {
    Set kind = left & (~left + 1);
    Set symptoms = model_.suspects[index(std::countr_zero(kind))].symptoms;
    for (bool grown = true; grown;) {
      grown = false;
      each(left & ~kind, [&](int i) {
        const Suspect& s = model_.suspects[index(i)];
        if ((s.symptoms & symptoms) == 0) return;
        kind |= bit(i);
        symptoms |= s.symptoms;
        grown = true;
      });
    }
    left &= ~kind;
    for (int i = model_.changes; i < static_cast<int>(model_.suspects.size()); ++i) {
      if ((model_.suspects[index(i)].symptoms & symptoms) != 0) kind |= bit(i);
    }
    out.push_back(kind);
  }
  return out;
}

double StageCosts::untangle(Set kind, const Profile& at) const {
  double none = 1.0;  // chance that none of those still to be looked at is at fault
  double cost = 0.0;
  for (auto i = at.order.rbegin(); i != at.order.rend(); ++i) {
    if ((kind & bit(*i)) == 0) continue;
    const double q = at.shown[index(*i)];
    none *= 1.0 - q;
    cost += model_.suspects[index(*i)].check_cost * (1.0 - none) + model_.confirmation_cost * q;
  }
  return cost;
}

double StageCosts::fixed(Set changes) const {
  double cost = model_.stage_cost;
  Set areas = 0;
  each(changes, [&](int i) { areas |= model_.suspects[index(i)].areas; });
  each(areas, [&](int a) { cost += model_.areas[index(a)]; });
  for (const Harm& h : model_.harms) {
    if ((h.both & changes) == h.both) cost += h.cost;
  }
  return cost;
}

double StageCosts::testing(Set changes, const std::vector<Set>& kinds, const Profile& at) const {
  double cost = 0.0;
  for (const Set kind : kinds) cost += untangle(kind, at);
  if (model_.escape_cost > 0.0) {
    each(changes, [&](int i) {
      cost += model_.escape_cost * (model_.suspects[index(i)].chance - at.shown[index(i)]);
    });
  }
  return cost;
}

void StageCosts::add_ground(Set changes, const std::vector<Set>& kinds, double base,
                            std::vector<StageOption>& out) const {
  if (!model_.ground_stages) return;
  double hours = 0.0;
  bool all = true;
  each(changes, [&](int i) {
    const double asked = model_.suspects[index(i)].ground_hours;
    all = all && asked >= 0.0;
    hours = std::max(hours, asked);
  });
  if (!all) return;
  const double cost =
      base + model_.ground_hour_cost * hours + testing(changes, kinds, profiles_.front());
  out.push_back({cost, hours, true});
}

std::vector<StageOption> StageCosts::options(Set changes) const {
  const double base = fixed(changes);
  const auto of = kinds(changes);
  double asked = 0.0;
  each(changes, [&](int i) { asked = std::max(asked, model_.suspects[index(i)].hours); });
  std::vector<StageOption> all;
  const auto add = [&](const Profile& at) {
    all.push_back({base + model_.hour_cost * at.hours + testing(changes, of, at), at.hours, false});
  };
  if (model_.rule == HoursRule::longest) {
    add(at_hours(asked));
  } else {
    for (std::size_t k = 1; k < profiles_.size(); ++k) {
      if (profiles_[k].hours >= asked) add(profiles_[k]);
    }
  }
  add_ground(changes, of, base, all);
  std::stable_sort(all.begin(), all.end(), [](const StageOption& a, const StageOption& b) {
    return a.hours < b.hours || (a.hours == b.hours && a.cost < b.cost);
  });
  std::vector<StageOption> out;
  for (const StageOption& o : all) {
    if (out.empty() || o.cost < out.back().cost) out.push_back(o);
  }
  return out;
}

StageOption StageCosts::best(Set changes, double waiting) const {
  const auto all = options(changes);
  if (all.empty()) return {k_never, 0.0, false};
  return *std::min_element(all.begin(), all.end(), [&](const auto& a, const auto& b) {
    return a.cost + a.hours * waiting < b.cost + b.hours * waiting;
  });
}

StageParts StageCosts::parts(Set changes, const StageOption& option) const {
  const Profile& at = option.ground ? profiles_.front() : at_hours(option.hours);
  StageParts out;
  out.fixed = fixed(changes);
  out.testing = option.hours * (option.ground ? model_.ground_hour_cost : model_.hour_cost);
  each(changes, [&](int i) {
    out.escapes += model_.escape_cost * (model_.suspects[index(i)].chance - at.shown[index(i)]);
  });
  for (const Set kind : kinds(changes)) {
    std::vector<Look> looks;
    double none = 1.0;
    for (auto i = at.order.rbegin(); i != at.order.rend(); ++i) {
      if ((kind & bit(*i)) == 0) continue;
      none *= 1.0 - at.shown[index(*i)];
      looks.push_back({*i, 1.0 - none, at.shown[index(*i)]});
    }
    std::reverse(looks.begin(), looks.end());
    out.kinds.push_back(std::move(looks));
  }
  return out;
}

}  // namespace wm::staging::detail
