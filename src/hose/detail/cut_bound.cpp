// The bound of the cut plan: a covering problem over the coils that are left.
//
// Any plan opens coils whose rooms together are at least the widths still to be cut. More than
// that: floor(x / t) is superadditive, so for every threshold t the sum of floor(width / t) over
// the pieces is at most the sum of floor(room / t) over the coils opened. With t just above a
// half or a third of a room that says how many large pieces a coil can hold. And no coil is ever
// filled further than the largest sum of widths below its room.
#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "hose/detail/cut_search.hpp"

namespace wm::hose::detail {
namespace {

constexpr std::int64_t k_most_sums = 1 << 18;
constexpr std::int64_t k_steps_in_search = 1500;
constexpr std::int64_t k_steps_for_sets = 100'000;
constexpr double k_nearly_one = 1.0 - 1e-12;

/// A real bound on whole numbers, rounded so that it stays one.
std::int64_t whole(double x) {
  if (!(x > 0.0)) return 0;
  return static_cast<std::int64_t>(std::ceil(x * k_nearly_one));
}

}  // namespace

CutGroups CutGroups::of(const CutTask& task) {
  CutGroups out;
  std::vector<int> pieces(task.pieces.size());
  std::iota(pieces.begin(), pieces.end(), 0);
  std::stable_sort(pieces.begin(), pieces.end(), [&](int a, int b) {
    return task.pieces[static_cast<std::size_t>(a)] > task.pieces[static_cast<std::size_t>(b)];
  });
  for (const int p : pieces) {
    const std::int64_t width = task.pieces[static_cast<std::size_t>(p)] + task.kerf;
    if (out.kinds.empty() || out.kinds.back().width != width) out.kinds.push_back({width, {}});
    out.kinds.back().pieces.push_back(p);
  }
  std::vector<int> coils(task.coils.size());
  std::iota(coils.begin(), coils.end(), 0);
  std::stable_sort(coils.begin(), coils.end(), [&](int a, int b) {
    const auto i = static_cast<std::size_t>(a);
    const auto j = static_cast<std::size_t>(b);
    return task.coils[i] != task.coils[j] ? task.coils[i] > task.coils[j]
                                          : task.places[i] < task.places[j];
  });
  const std::int64_t narrowest = out.kinds.empty() ? 0 : out.kinds.back().width;
  const auto more = static_cast<std::int64_t>(task.coils.size()) + 1;
  for (const int c : coils) {
    const auto i = static_cast<std::size_t>(c);
    const std::int64_t room = task.coils[i] - task.trim + task.kerf;
    if (room < narrowest) continue;
    if (out.coils.empty() || out.coils.back().length != task.coils[i]) {
      out.coils.push_back({task.coils[i], room, room - task.kerf - task.least_kept, {}, {}});
    }
    out.coils.back().coils.push_back(c);
    // Earlier in the order first, then fewer coils.
    out.coils.back().weights.push_back(task.places[i] * more + 1);
  }
  return out;
}

CutBound::CutBound(const CutTask& task, const CutGroups& groups) : task_(task), groups_(groups) {
  std::int64_t unit = 0;
  for (const CutKind& kind : groups.kinds) unit = std::gcd(unit, kind.width);
  unit_ = std::max<std::int64_t>(unit, 1);
  rules();
  weigh(std::vector<std::size_t>(groups.coils.size(), 0));
}

void CutBound::weigh(const std::vector<std::size_t>& taken) {
  const std::size_t n = groups_.coils.size();
  weights_.assign(n, {});
  lightest_.assign(n + 1, std::numeric_limits<double>::infinity());
  for (std::size_t g = n; g-- > 0;) {
    const CutCoils& c = groups_.coils[g];
    weights_[g].push_back(0);
    for (std::size_t i = taken[g]; i < c.weights.size(); ++i) {
      weights_[g].push_back(weights_[g].back() + c.weights[i]);
    }
    lightest_[g] = lightest_[g + 1];
    if (taken[g] < c.weights.size()) {
      const double each = static_cast<double>(c.weights[taken[g]]) / static_cast<double>(c.room);
      lightest_[g] = std::min(lightest_[g], each);
    }
  }
}

std::int64_t CutBound::order_ahead(const Need& need, std::size_t from) const {
  if (need.width <= 0 || !std::isfinite(lightest_[from])) return 0;
  return whole(static_cast<double>(need.width) * lightest_[from]);
}

void CutBound::rules() {
  // Just above a half, a third and a quarter of the longest and of the commonest coil.
  std::vector<std::int64_t> rooms;
  for (const CutCoils& c : groups_.coils) rooms.push_back(c.room);
  if (rooms.empty()) rooms.push_back(1);
  std::size_t common = 0;
  for (std::size_t g = 1; g < groups_.coils.size(); ++g) {
    if (groups_.coils[g].coils.size() > groups_.coils[common].coils.size()) common = g;
  }
  const std::int64_t other = common == 0 ? rooms[rooms.size() / 2] : rooms[common];
  std::size_t at = 0;
  for (const std::int64_t room : {rooms.front(), other}) {
    for (const std::int64_t part : {2, 3, 4}) thresholds_[at++] = room / part + 1;
  }
}

CutBound::Need CutBound::need_of(const CutState& state) const {
  Need out;
  out.width = state.left_width;
  out.tight = state.tight_width;
  for (std::size_t k = 0; k < state.left.size(); ++k) {
    for (std::size_t r = 0; r < k_rules; ++r) {
      out.counts[r] += state.left[k] * (groups_.kinds[k].width / thresholds_[r]);
    }
  }
  return out;
}

void CutBound::reach(const CutState& state) {
  std::int64_t most = 0;
  for (std::size_t g = 0; g < groups_.coils.size(); ++g) {
    if (state.free[g] > 0) {
      most = groups_.coils[g].room / unit_;
      break;
    }
  }
  most = std::min(most, state.left_width / unit_);
  const std::size_t words = static_cast<std::size_t>(most / 64) + 1;
  sums_.assign(words, 0);
  sums_[0] = 1;
  for (std::size_t k = 0; k < state.left.size(); ++k) {
    const auto step = static_cast<std::size_t>(groups_.kinds[k].width / unit_);
    if (static_cast<std::int64_t>(step) > most) continue;
    for (int i = 0; i < state.left[k]; ++i) {
      const std::size_t whole_words = step / 64;
      const auto bits = static_cast<unsigned>(step % 64);
      for (std::size_t w = words; w-- > whole_words;) {
        std::uint64_t moved = sums_[w - whole_words] << bits;
        if (bits != 0 && w > whole_words) moved |= sums_[w - whole_words - 1] >> (64U - bits);
        sums_[w] |= moved;
      }
      effort_ += static_cast<std::int64_t>(words / 16) + 1;
    }
  }
}

std::int64_t CutBound::reached(std::int64_t room) const {
  if (room <= 0) return room;
  auto at = static_cast<std::size_t>(room / unit_);
  const std::size_t last = sums_.size() * 64 - 1;
  at = std::min(at, last);
  while (at > 0 && (sums_[at / 64] >> (at % 64) & 1U) == 0) --at;
  return static_cast<std::int64_t>(at) * unit_;
}

void CutBound::choices(const CutState& state, bool reachable) {
  const std::size_t n = groups_.coils.size();
  tight_.assign(n, {});
  loose_.assign(n, {});
  free_ = state.free;
  width_ = state.left_width;
  for (std::size_t g = 0; g < n; ++g) {
    const CutCoils& coil = groups_.coils[g];
    if (free_[g] == 0) continue;
    const auto make = [&](Choice& c, std::int64_t room) {
      c.room = std::max<std::int64_t>(0, reachable ? reached(room) : room);
      for (std::size_t r = 0; r < k_rules; ++r) c.counts[r] = c.room / thresholds_[r];
    };
    make(tight_[g], coil.room);
    tight_[g].cost = coil.length;
    tight_[g].waste = task_.aim == CutAim::opened
                          ? coil.length
                          : std::max(task_.trim, coil.length - tight_[g].room);
    if (task_.aim == CutAim::used && coil.loose > 0) {
      make(loose_[g], coil.loose);
      loose_[g].cost = loose_[g].waste = task_.trim;
    }
  }
  rest_.assign(n + 1, {});
  cheapest_.assign(n + 1, {});
  cheapest_[n].fill(std::numeric_limits<double>::infinity());
  for (std::size_t g = n; g-- > 0;) {
    rest_[g] = rest_[g + 1];
    cheapest_[g] = cheapest_[g + 1];
    rest_[g].room += free_[g] * tight_[g].room;
    for (std::size_t r = 0; r < k_rules; ++r) {
      rest_[g].counts[r] += free_[g] * tight_[g].counts[r];
    }
    if (free_[g] == 0) continue;
    for (const Choice* c : {&tight_[g], &loose_[g]}) {
      const auto waste = static_cast<double>(c->waste);
      const auto take = [&](double& least, std::int64_t gain) {
        if (gain > 0) least = std::min(least, waste / static_cast<double>(gain));
      };
      take(cheapest_[g][k_rules], c->room);
      for (std::size_t r = 0; r < k_rules; ++r) take(cheapest_[g][r], c->counts[r]);
    }
  }
}

bool CutBound::enough(const Need& need) const {
  return need.width <= 0 && need.tight <= 0 &&
         std::all_of(std::begin(need.counts), std::end(need.counts),
                     [](std::int64_t c) { return c <= 0; });
}

bool CutBound::possible(const Need& need, std::size_t from) const {
  const Choice& rest = rest_[from];
  if (need.width > rest.room || need.tight > rest.room) return false;
  for (std::size_t r = 0; r < k_rules; ++r) {
    if (need.counts[r] > rest.counts[r]) return false;
  }
  return true;
}

std::int64_t CutBound::value(std::int64_t tight_cost, std::int64_t extra) const {
  if (task_.aim == CutAim::opened) return extra;
  return std::max(width_ + extra, tight_cost);
}

std::int64_t CutBound::ahead(const Need& need, std::size_t from) const {
  double most = 0.0;
  const auto take = [&](std::int64_t amount, double each) {
    if (amount > 0 && std::isfinite(each)) {
      most = std::max(most, static_cast<double>(amount) * each);
    }
  };
  take(need.width, cheapest_[from][k_rules]);
  for (std::size_t r = 0; r < k_rules; ++r) take(need.counts[r], cheapest_[from][r]);
  return whole(most);
}

bool CutBound::cover(std::size_t from, const Need& need, const Paid& paid) {
  if (--steps_ < 0) return false;
  ++effort_;
  if (enough(need)) {
    if (paid.order < order_target_) best_ = std::min(best_, value(paid.tight_cost, paid.extra));
    return true;
  }
  if (from == free_.size() || !possible(need, from)) return true;
  if (value(paid.tight_cost, paid.extra + ahead(need, from)) >= best_) return true;
  if (paid.order + order_ahead(need, from) >= order_target_) return true;
  const Choice& t = tight_[from];
  const Choice& l = loose_[from];
  const int all = free_[from];
  for (int tight = all; tight >= 0; --tight) {
    for (int loose = l.room > 0 ? all - tight : 0; loose >= 0; --loose) {
      Need less = need;
      less.width -= tight * t.room + loose * l.room;
      less.tight -= tight * t.room;
      for (std::size_t r = 0; r < k_rules; ++r) {
        less.counts[r] -= tight * t.counts[r] + loose * l.counts[r];
      }
      const Paid more{
          paid.tight_cost + tight * t.cost + loose * l.cost,
          paid.extra + tight * t.waste + loose * l.waste,
          paid.order +
              weights_[from][static_cast<std::size_t>(tight) + static_cast<std::size_t>(loose)]};
      if (!cover(from + 1, less, more)) return false;
      if (first_will_do_ && best_ < target_) return true;
    }
  }
  return true;
}

std::optional<std::int64_t> CutBound::least(const CutState& state, std::int64_t steps) {
  const Need need = need_of(state);
  const bool sums = !groups_.coils.empty() && groups_.coils.front().room / unit_ <= k_most_sums;
  if (sums) reach(state);
  choices(state, sums);
  if (!possible(need, 0)) return std::nullopt;
  constexpr std::int64_t k_none = std::numeric_limits<std::int64_t>::max();
  best_ = k_none;
  order_target_ = k_none;
  first_will_do_ = false;
  steps_ = steps;
  const std::int64_t relaxed = value(0, ahead(need, 0));
  if (!cover(0, need, {})) return relaxed;
  if (best_ == k_none) return std::nullopt;
  return best_;
}

bool CutBound::collect(std::size_t from, const Need& need, CutSet& set, std::vector<CutSet>& out,
                       std::int64_t least, std::size_t most) {
  if (--steps_ < 0) return false;
  ++effort_;
  if (set.total >= target_ || !possible(need, from)) return true;
  if (set.total + ahead(need, from) >= target_) return true;
  if (from == free_.size()) {
    if (set.total >= least) out.push_back(set);
    return out.size() <= most;
  }
  const Choice& t = tight_[from];
  for (int n = free_[from]; n >= 0; --n) {
    Need less = need;
    less.width -= n * t.room;
    less.tight -= n * t.room;
    for (std::size_t r = 0; r < k_rules; ++r) less.counts[r] -= n * t.counts[r];
    set.counts[from] = n;
    set.total += n * t.cost;
    const bool go_on = collect(from + 1, less, set, out, least, most);
    set.total -= n * t.cost;
    set.counts[from] = 0;
    if (!go_on) return false;
  }
  return true;
}

std::optional<std::vector<CutSet>> CutBound::sets(const CutState& state, std::int64_t least,
                                                  std::int64_t target, std::size_t most) {
  const Need need = need_of(state);
  const bool sums = !groups_.coils.empty() && groups_.coils.front().room / unit_ <= k_most_sums;
  if (sums) reach(state);
  choices(state, sums);
  target_ = target;
  steps_ = k_steps_for_sets;
  CutSet set{0, std::vector<int>(free_.size(), 0)};
  std::vector<CutSet> out;
  if (!collect(0, need, set, out, least, most)) return std::nullopt;
  return out;
}

bool CutBound::may_cover(const CutState& state, std::int64_t target) {
  const Need need = need_of(state);
  effort_ += static_cast<std::int64_t>(state.left.size() + 16 * state.free.size());
  for (const bool sums : {false, true}) {
    if (sums) {
      if (groups_.coils.empty() || groups_.coils.front().room / unit_ > k_most_sums) return true;
      reach(state);
    }
    choices(state, sums);
    if (!possible(need, 0)) return false;
    if (value(0, ahead(need, 0)) >= target) return false;
    best_ = target_ = target;
    first_will_do_ = true;
    steps_ = k_steps_in_search;
    if (!cover(0, need, {})) continue;
    if (best_ >= target) return false;
  }
  return true;
}

bool CutBound::may_beat(const CutState& state, std::int64_t target) {
  order_target_ = std::numeric_limits<std::int64_t>::max();
  return may_cover(state, target);
}

bool CutBound::may_beat(const CutState& state, const std::vector<std::size_t>& taken,
                        const CutCost& targets) {
  weigh(taken);
  order_target_ = targets.order;
  return may_cover(state, targets.total);
}

}  // namespace wm::hose::detail
