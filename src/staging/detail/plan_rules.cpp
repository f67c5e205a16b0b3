#include "staging/detail/plan_rules.hpp"

#include <algorithm>
#include <bit>
#include <cmath>

namespace wm::staging::detail {
namespace {

constexpr double k_slack = 1e-12;
constexpr Set bit(int i) { return Set{1} << i; }
constexpr std::size_t at(int i) { return static_cast<std::size_t>(i); }

double risk_of(double chance) { return chance < 1.0 ? -std::log1p(-chance) : k_never; }
double risk_limit(double cap) { return cap < 1.0 ? -std::log1p(-(cap + k_slack)) : k_never; }

/// Who must come no later than whom, followed to the end; each no later than itself.
std::vector<Set> reach(int changes, const std::vector<PlanRule>& rules) {
  std::vector<Set> to(at(changes));
  for (int i = 0; i < changes; ++i) to[at(i)] = bit(i);
  for (const PlanRule& r : rules) {
    if (r.wish > Wish::together) continue;
    to[at(r.first)] |= bit(r.second);
    if (r.wish == Wish::together) to[at(r.second)] |= bit(r.first);
  }
  for (int via = 0; via < changes; ++via) {
    for (int i = 0; i < changes; ++i) {
      if ((to[at(i)] & bit(via)) != 0) to[at(i)] |= to[at(via)];
    }
  }
  return to;
}

/// The group of each change: those that reach it and are reached by it.
std::vector<Set> groups(const std::vector<Set>& to) {
  std::vector<Set> out(to.size());
  for (std::size_t i = 0; i < to.size(); ++i) {
    for (std::size_t k = 0; k < to.size(); ++k) {
      if ((to[i] >> k & 1U) != 0 && (to[k] >> i & 1U) != 0) out[i] |= Set{1} << k;
    }
  }
  return out;
}

double group_risk(const std::vector<Suspect>& suspects, Set group) {
  double sum = 0.0;
  for (; group != 0; group &= group - 1)
    sum += risk_of(suspects[at(std::countr_zero(group))].chance);
  return sum;
}

bool kept(const PlanRule& rule, const std::vector<Suspect>& suspects,
          const std::vector<Set>& group) {
  const auto same = [&] { return (group[at(rule.first)] & bit(rule.second)) != 0; };
  switch (rule.wish) {
    case Wish::before:
    case Wish::never:
      return !same();
    case Wish::risk_cap:
      return std::all_of(group.begin(), group.end(),
                         [&](Set g) { return group_risk(suspects, g) <= risk_limit(rule.limit); });
    case Wish::size_cap:
      return std::all_of(group.begin(), group.end(),
                         [&](Set g) { return std::popcount(g) <= rule.limit; });
    case Wish::not_later:
    case Wish::together:
      break;
  }
  return true;
}

Set units_in(const std::vector<Set>& members, Set changes) {
  Set out = 0;
  for (std::size_t u = 0; u < members.size(); ++u) {
    if ((members[u] & changes) != 0) out |= Set{1} << u;
  }
  return out;
}

void apply(Units& units, const PlanRule& r) {
  if (r.wish == Wish::risk_cap) units.risk_limit = std::min(units.risk_limit, risk_limit(r.limit));
  if (r.wish == Wish::size_cap) {
    units.size_limit = std::min(units.size_limit, static_cast<int>(r.limit));
  }
  if (r.first < 0) return;
  const Set first = units_in(units.members, bit(r.first));
  const Set second = units_in(units.members, bit(r.second));
  const auto a = at(std::countr_zero(first));
  const auto b = at(std::countr_zero(second));
  if (r.wish == Wish::before) units.strictly_before[b] |= first;
  if (r.wish == Wish::not_later && a != b) units.not_after[b] |= first;
  if (r.wish == Wish::never) {
    units.never[a] |= second;
    units.never[b] |= first;
  }
}

}  // namespace

Set Units::changes(Set units) const {
  Set out = 0;
  for (; units != 0; units &= units - 1) out |= members[at(std::countr_zero(units))];
  return out;
}

bool can_be_kept(const std::vector<Suspect>& suspects, int changes,
                 const std::vector<PlanRule>& rules) {
  const auto group = groups(reach(changes, rules));
  return std::all_of(rules.begin(), rules.end(),
                     [&](const PlanRule& r) { return kept(r, suspects, group); });
}

std::vector<PlanRule> contradiction(const std::vector<Suspect>& suspects, int changes,
                                    const std::vector<PlanRule>& rules) {
  std::vector<PlanRule> least = rules;
  // Which rules stay hangs on the order in which they are tried: start once from each.
  for (std::size_t start = 0; start < rules.size(); ++start) {
    std::vector<PlanRule> left = rules;
    std::rotate(left.begin(), left.begin() + static_cast<std::ptrdiff_t>(start), left.end());
    for (std::size_t i = 0; i < left.size();) {
      std::vector<PlanRule> without = left;
      without.erase(without.begin() + static_cast<std::ptrdiff_t>(i));
      if (can_be_kept(suspects, changes, without)) {
        ++i;
      } else {
        left = std::move(without);
      }
    }
    if (left.size() < least.size()) least = std::move(left);
  }
  return least;
}

Units units_of(const std::vector<Suspect>& suspects, int changes,
               const std::vector<PlanRule>& rules) {
  const auto group = groups(reach(changes, rules));
  Units out;
  for (int i = 0; i < changes; ++i) {
    if (std::countr_zero(group[at(i)]) == i) out.members.push_back(group[at(i)]);
  }
  const auto hours = [&](Set members) {
    double most = 0.0;
    for (; members != 0; members &= members - 1) {
      most = std::max(most, suspects[at(std::countr_zero(members))].hours);
    }
    return most;
  };
  std::stable_sort(out.members.begin(), out.members.end(),
                   [&](Set a, Set b) { return hours(a) > hours(b); });
  for (const Set members : out.members) {
    out.risk.push_back(group_risk(suspects, members));
    out.size.push_back(std::popcount(members));
  }
  out.strictly_before.resize(out.members.size());
  out.not_after.resize(out.members.size());
  out.never.resize(out.members.size());
  for (const PlanRule& r : rules) apply(out, r);
  const auto any = [](const std::vector<Set>& sets) {
    return std::any_of(sets.begin(), sets.end(), [](Set s) { return s != 0; });
  };
  out.ordered = any(out.strictly_before) || any(out.not_after);
  return out;
}

bool may_meet(const Units& units, Set stage) {
  double risk = 0.0;
  int size = 0;
  for (Set left = stage; left != 0; left &= left - 1) {
    const auto u = at(std::countr_zero(left));
    if ((units.never[u] & stage) != 0) return false;
    risk += units.risk[u];
    size += units.size[u];
  }
  return risk <= units.risk_limit && size <= units.size_limit;
}

}  // namespace wm::staging::detail
