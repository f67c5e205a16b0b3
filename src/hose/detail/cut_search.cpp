// Branch and bound of the cut plan.
//
// The widest piece that is left must come from some coil. The search tries each length of coil
// and everything else that this coil could give with it, and goes on with the rest. What keeps
// it short (docs/method/cut-plan.md has the reasons):
//   - a coil that is used up is filled so far that no piece left fits into it, nor could take the
//     place of a narrower one in it;
//   - a coil of which the remainder is kept may be left with room, but what would have fitted
//     there is then only of use in a coil that is used up;
//   - what is left, from the same coils, at no less cost, was looked at before;
//   - the bound says that nothing better can follow.
#include "hose/detail/cut_search.hpp"

#include <algorithm>
#include <limits>
#include <numeric>
#include <random>

namespace wm::hose::detail {
namespace {

constexpr std::int64_t k_root_steps = 200'000;
constexpr std::int64_t k_tell_every = 1 << 16;
constexpr std::size_t k_most_seen_bytes = 48'000'000;  // of keys; long tasks have long ones
constexpr std::size_t k_most_sets = 2000;
constexpr std::int64_t k_steps_a_set = 50'000;
constexpr int k_shuffles = 50;

void append(std::string& key, int number) {
  key.push_back(static_cast<char>(number & 0xff));
  key.push_back(static_cast<char>(number >> 8 & 0xff));
}

}  // namespace

CutSearch::CutSearch(const CutTask& task, const CutEffort& effort)
    : task_(task), effort_(effort), groups_(CutGroups::of(task)), bound_(task, groups_) {
  for (const CutKind& kind : groups_.kinds) {
    const auto count = static_cast<int>(kind.pieces.size());
    state_.left.push_back(count);
    state_.left_width += count * kind.width;
  }
  state_.tight_only.assign(groups_.kinds.size(), 0);
  for (const CutCoils& coils : groups_.coils) {
    state_.free.push_back(static_cast<int>(coils.coils.size()));
  }
  used_.assign(groups_.coils.size(), 0);
}

CutCost CutSearch::cost_of(const std::vector<int>& coil_of) const {
  CutCost out;
  out.total = total_of(task_, coil_of);
  std::vector<char> opened(task_.coils.size(), 0);
  for (const int c : coil_of) opened[static_cast<std::size_t>(c)] = 1;
  const auto more = static_cast<std::int64_t>(task_.coils.size()) + 1;
  for (std::size_t c = 0; c < opened.size(); ++c) {
    if (opened[c] != 0) out.order += task_.places[c] * more + 1;
  }
  return out;
}

void CutSearch::offer(const std::vector<int>& coil_of) {
  if (std::find(coil_of.begin(), coil_of.end(), k_not_cut) != coil_of.end()) return;
  const CutCost cost = cost_of(coil_of);
  if (best_ && !less(cost, *best_)) return;
  best_ = cost;
  best_plan_ = coil_of;
}

/// Widest first into the first (or the fullest) coil with room; with `loose` first of all where a
/// remainder to keep is left.
std::vector<int> CutSearch::pack(const std::vector<int>& coils, bool best_fit, bool loose) const {
  std::vector<int> out(task_.pieces.size(), k_not_cut);
  std::vector<std::int64_t> room(task_.coils.size());
  std::vector<char> opened(task_.coils.size(), 0);
  for (std::size_t c = 0; c < room.size(); ++c) {
    room[c] = task_.coils[c] - task_.trim + task_.kerf;
  }
  const std::int64_t kept = task_.kerf + task_.least_kept;
  for (const CutKind& kind : groups_.kinds) {
    for (const int piece : kind.pieces) {
      int into = k_not_cut;
      for (const std::int64_t reserve : {loose ? kept : 0, std::int64_t{0}}) {
        for (const int coil : coils) {
          const auto c = static_cast<std::size_t>(coil);
          if (room[c] - reserve < kind.width) continue;
          if (into == k_not_cut) into = coil;
          const auto i = static_cast<std::size_t>(into);
          if (best_fit && opened[c] != 0 && (opened[i] == 0 || room[c] < room[i])) into = coil;
          if (!best_fit) break;
        }
        if (into != k_not_cut) break;
      }
      if (into == k_not_cut) return out;
      room[static_cast<std::size_t>(into)] -= kind.width;
      opened[static_cast<std::size_t>(into)] = 1;
      out[static_cast<std::size_t>(piece)] = into;
    }
  }
  return out;
}

void CutSearch::first_plans() {
  offer(first_fit_decreasing(task_));
  std::vector<int> coils;
  for (const CutCoils& c : groups_.coils) coils.insert(coils.end(), c.coils.begin(), c.coils.end());
  const auto try_order = [&] {
    for (const bool best_fit : {false, true}) {
      for (const bool loose : {false, true}) offer(pack(coils, best_fit, loose));
    }
  };
  try_order();
  std::reverse(coils.begin(), coils.end());
  try_order();
  std::stable_sort(coils.begin(), coils.end(), [&](int a, int b) {
    return task_.places[static_cast<std::size_t>(a)] < task_.places[static_cast<std::size_t>(b)];
  });
  try_order();
  // NOLINTNEXTLINE(cert-msc32-c,cert-msc51-cpp): the same task must give the same plan
  std::mt19937_64 draw{1};
  for (int i = 0; i < k_shuffles; ++i) {
    if (best_ && best_->total <= least_) return;
    for (std::size_t left = coils.size(); left > 1; --left) {
      std::swap(coils[left - 1], coils[draw() % left]);
    }
    try_order();
  }
}

bool CutSearch::spend() {
  ++steps_;
  const std::int64_t done = steps_ + bound_.effort();
  if (done > steps_end_) out_of_steps_ = true;
  if (done - told_ > k_tell_every) {
    told_ = done;
    const double share = static_cast<double>(done) / static_cast<double>(steps_end_);
    if (effort_.go_on && !effort_.go_on(std::min(1.0, share))) stopped_ = true;
  }
  return !over();
}

bool CutSearch::over() const {
  if (out_of_steps_ || stopped_) return true;
  if (!best_) return false;
  return aim_ == Aim::any || (aim_ == Aim::total && best_->total <= least_);
}

bool CutSearch::hopeless() {
  constexpr std::int64_t k_any = std::numeric_limits<std::int64_t>::max() / 4;
  if (!best_ || aim_ == Aim::any) return !bound_.may_beat(state_, k_any);
  if (aim_ == Aim::total) return !bound_.may_beat(state_, best_->total - spent_.total);
  return !bound_.may_beat(state_, used_,
                          {best_->total - spent_.total + 1, best_->order - spent_.order});
}

bool CutSearch::seen_before() {
  std::string key;
  key.reserve(3 * state_.left.size() + 2 * state_.free.size());
  for (std::size_t k = 0; k < state_.left.size(); ++k) {
    append(key, state_.left[k]);
    key.push_back(state_.left[k] > 0 ? state_.tight_only[k] : '\0');
  }
  for (const int f : state_.free) append(key, f);
  const auto found = seen_.find(key);
  if (found == seen_.end()) {
    if ((seen_.size() + 1) * (key.size() + 64) < k_most_seen_bytes)
      seen_.emplace(std::move(key), spent_);
    return false;
  }
  CutCost& before = found->second;
  if (aim_ == Aim::any) return true;
  if (before.total <= spent_.total && (aim_ == Aim::total || before.order <= spent_.order)) {
    return true;
  }
  if (spent_.total <= before.total && (aim_ == Aim::total || spent_.order <= before.order)) {
    before = spent_;
  }
  return false;
}

void CutSearch::keep_plan() {
  if (best_ && !less(spent_, *best_)) return;
  best_ = spent_;
  best_plan_.assign(task_.pieces.size(), k_not_cut);
  std::vector<std::size_t> piece(groups_.kinds.size(), 0);
  std::vector<std::size_t> coil(groups_.coils.size(), 0);
  for (const Taken& taken : path_) {
    const int from = groups_.coils[taken.coils].coils[coil[taken.coils]++];
    for (std::size_t k = 0; k < taken.counts.size(); ++k) {
      for (int i = 0; i < taken.counts[k]; ++i) {
        best_plan_[static_cast<std::size_t>(groups_.kinds[k].pieces[piece[k]++])] = from;
      }
    }
  }
}

void CutSearch::visit() {
  if (!spend()) return;
  ++states_;
  if (state_.left_width == 0) {
    keep_plan();
    return;
  }
  if (seen_before() || hopeless()) return;
  const auto first =
      std::find_if(state_.left.begin(), state_.left.end(), [](int n) { return n > 0; });
  const auto widest = static_cast<std::size_t>(first - state_.left.begin());
  const std::int64_t width = groups_.kinds[widest].width;
  std::vector<std::size_t> order;
  for (std::size_t g = 0; g < groups_.coils.size(); ++g) {
    if (state_.free[g] > 0 && groups_.coils[g].room >= width) order.push_back(g);
  }
  if (aim_ == Aim::order) {
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
      return groups_.coils[a].weights[used_[a]] < groups_.coils[b].weights[used_[b]];
    });
  }
  const bool keeps = task_.aim == CutAim::used && aim_ != Aim::any;
  for (const std::size_t g : order) {
    if (keeps && groups_.coils[g].loose >= width && state_.tight_only[widest] == 0) {
      open(g, true, widest);
    }
    if (over()) return;
    open(g, false, widest);
    if (over()) return;
  }
}

void CutSearch::open(std::size_t coils, bool loose, std::size_t widest) {
  Filling f;
  f.coils = coils;
  f.loose = loose;
  f.widest = widest;
  const std::size_t n = state_.left.size();
  f.counts.assign(n, 0);
  f.behind.assign(n + 1, 0);
  for (std::size_t k = n; k-- > widest;) {
    const bool may = !loose || state_.tight_only[k] == 0;
    f.behind[k] = f.behind[k + 1] + (may ? state_.left[k] * groups_.kinds[k].width : 0);
  }
  fill(f, widest, loose ? groups_.coils[coils].loose : groups_.coils[coils].room);
}

void CutSearch::fill(Filling& f, std::size_t kind, std::int64_t room) {
  if (!spend()) return;
  const std::size_t n = state_.left.size();
  while (kind < n && (state_.left[kind] == 0 || groups_.kinds[kind].width > room ||
                      (f.loose && state_.tight_only[kind] != 0))) {
    ++kind;
  }
  if (kind == n) {
    close(f, room);
    return;
  }
  const std::int64_t width = groups_.kinds[kind].width;
  const CutCoils& coil = groups_.coils[f.coils];
  const bool keeps = task_.aim == CutAim::used && aim_ != Aim::any;
  const int lowest = kind == f.widest ? 1 : 0;
  int count = static_cast<int>(std::min<std::int64_t>(state_.left[kind], room / width));
  for (; count >= lowest; --count) {
    const std::int64_t rest = room - count * width;
    if (!f.loose) {
      // With everything narrower in it too, would there still be room for one more of these?
      const std::int64_t at_least = rest - f.behind[kind + 1];
      if (count < state_.left[kind] && at_least - task_.kerf >= width) break;
      if (keeps && coil.room - at_least <= coil.loose) break;
    }
    f.counts[kind] = count;
    fill(f, kind + 1, rest);
    if (over()) break;
  }
  f.counts[kind] = 0;
}

bool CutSearch::improves(const Filling& f, std::int64_t room, std::size_t kind) const {
  const std::int64_t width = groups_.kinds[kind].width;
  if (width <= room) return true;
  for (std::size_t k = kind + 1; k < f.counts.size(); ++k) {
    if (f.counts[k] > 0 && width - groups_.kinds[k].width <= room) return true;
  }
  return false;
}

void CutSearch::close(const Filling& f, std::int64_t room) {
  const CutCoils& coil = groups_.coils[f.coils];
  const bool keeps = task_.aim == CutAim::used && aim_ != Aim::any;
  const std::size_t n = state_.left.size();
  const std::int64_t width = (f.loose ? coil.loose : coil.room) - room;
  if (keeps && !f.loose && width <= coil.loose) return;
  // Without the kerf that may lie beyond the end of the coil: moving a piece there must be free.
  const std::int64_t spare = f.loose ? room : room - task_.kerf;
  std::vector<std::size_t> marked;
  for (std::size_t k = f.widest; k < n && spare > 0; ++k) {
    if (state_.left[k] == f.counts[k] || !improves(f, spare, k)) continue;
    if (!f.loose) return;
    if (state_.tight_only[k] == 0) marked.push_back(k);
  }
  const std::int64_t tight_before = state_.tight_width;
  for (std::size_t k = f.widest; k < n; ++k) {
    state_.left[k] -= f.counts[k];
    if (state_.tight_only[k] != 0) state_.tight_width -= f.counts[k] * groups_.kinds[k].width;
  }
  for (const std::size_t k : marked) {
    state_.tight_only[k] = 1;
    state_.tight_width += state_.left[k] * groups_.kinds[k].width;
  }
  const CutCost before = spent_;
  if (task_.aim == CutAim::opened) {
    spent_.total += coil.length;
  } else {
    const std::int64_t taken = task_.trim + width;
    spent_.total += coil.length - taken >= task_.least_kept ? taken : std::max(coil.length, taken);
  }
  spent_.order += coil.weights[used_[f.coils]];
  state_.left_width -= width;
  --state_.free[f.coils];
  ++used_[f.coils];
  path_.push_back({f.coils, f.counts});

  visit();

  path_.pop_back();
  --used_[f.coils];
  ++state_.free[f.coils];
  state_.left_width += width;
  spent_ = before;
  for (const std::size_t k : marked) state_.tight_only[k] = 0;
  for (std::size_t k = f.widest; k < n; ++k) state_.left[k] += f.counts[k];
  state_.tight_width = tight_before;
}

void CutSearch::run(Aim aim, std::int64_t steps) {
  aim_ = aim;
  seen_.clear();
  out_of_steps_ = false;
  steps_end_ = steps_ + bound_.effort() + steps;
  if (!over()) visit();
}

/// @return false when a set stayed undecided, or the end of the effort came
bool CutSearch::try_sets(std::vector<CutSet> sets, std::int64_t target, std::int64_t end) {
  std::stable_sort(sets.begin(), sets.end(),
                   [](const CutSet& a, const CutSet& b) { return a.total < b.total; });
  const std::vector<int> free = state_.free;
  bool settled = true;
  for (const CutSet& set : sets) {
    if (settled) least_ = std::max(least_, set.total);
    const std::int64_t steps = std::min(k_steps_a_set, end - steps_ - bound_.effort());
    if (steps <= 0 || stopped_) {
      settled = false;
      break;
    }
    const auto kept = best_;
    const auto kept_plan = best_plan_;
    best_.reset();
    state_.free = set.counts;
    run(Aim::any, steps);
    if (best_) break;
    if (out_of_steps_ || stopped_) settled = false;
    best_ = kept;
    best_plan_ = kept_plan;
  }
  state_.free = free;
  if (settled) least_ = std::max(least_, std::min(target, best_->total));
  return settled;
}

void CutSearch::by_sets(std::int64_t steps) {
  const std::int64_t end = steps_ + bound_.effort() + steps;
  while (!stopped_ && best_->total > least_ && steps_ + bound_.effort() < end) {
    // So narrow a band of totals that the sets in it can be listed.
    std::int64_t target = best_->total;
    auto sets = bound_.sets(state_, least_, target, k_most_sets);
    while (!sets && target > least_ + 1) {
      target = least_ + (target - least_) / 2;
      sets = bound_.sets(state_, least_, target, k_most_sets);
    }
    if (!sets || !try_sets(std::move(*sets), target, end)) return;
  }
}

std::optional<bool> CutSearch::can_hold(std::int64_t steps) {
  first_plans();
  if (best_) return true;
  if (!bound_.least(state_, k_root_steps)) return false;
  run(Aim::any, steps);
  if (best_) return true;
  if (out_of_steps_ || stopped_) return std::nullopt;
  return false;
}

CutSolution CutSearch::best(std::int64_t steps) {
  CutSolution out;
  const auto least = bound_.least(state_, k_root_steps);
  if (!least) return out;
  least_ = *least;
  out.bound = *least;
  first_plans();
  if (!best_) run(Aim::any, steps / 4);
  const bool undecided = !best_ && (out_of_steps_ || stopped_);
  if (best_ && !stopped_ && task_.aim == CutAim::opened) by_sets(steps / 4);
  if (best_ && !stopped_) run(Aim::total, steps / 2);
  out.proved = best_ && (best_->total <= least_ || !(out_of_steps_ || stopped_));
  if (out.proved && !stopped_) {
    run(Aim::order, steps / 4);
    out.order_proved = !(out_of_steps_ || stopped_);
  }
  out.states = states_;
  out.stopped = stopped_;
  out.decided = !undecided;
  if (!best_) return out;
  out.complete = true;
  out.coil_of = best_plan_;
  out.total = best_->total;
  out.bound = out.proved ? out.total : least_;
  return out;
}

}  // namespace wm::hose::detail
