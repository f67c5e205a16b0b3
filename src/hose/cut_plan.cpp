#include "hose/cut_plan.hpp"

#include <algorithm>
#include <numeric>

#include "hose/detail/cut_search.hpp"

namespace wm::hose {
namespace {

std::vector<int> by_length(const std::vector<std::int64_t>& lengths) {
  std::vector<int> out(lengths.size());
  std::iota(out.begin(), out.end(), 0);
  std::stable_sort(out.begin(), out.end(), [&](int a, int b) {
    return lengths[static_cast<std::size_t>(a)] < lengths[static_cast<std::size_t>(b)];
  });
  return out;
}

CutTask shortest(const CutTask& task, const std::vector<int>& order, std::size_t count) {
  CutTask out = task;
  out.pieces.clear();
  for (std::size_t i = 0; i < count; ++i) {
    out.pieces.push_back(task.pieces[static_cast<std::size_t>(order[i])]);
  }
  return out;
}

/// The most pieces that can be cut, and whether that is certain.
struct Most {
  std::size_t count{};
  bool decided{true};
  std::int64_t states{};
};

Most most_pieces(const CutTask& task, const std::vector<int>& order, const CutEffort& effort) {
  Most out;
  std::size_t low = 0;
  std::size_t high = order.size() - 1;  // all of them were tried before
  while (low < high) {
    const std::size_t middle = low + (high - low + 1) / 2;
    const CutTask part = shortest(task, order, middle);
    detail::CutSearch search(part, effort);
    const auto holds = search.can_hold(effort.steps / 8);
    if (!holds) out.decided = false;
    if (holds && *holds) {
      low = middle;
    } else {
      high = middle - 1;
    }
  }
  out.count = low;
  return out;
}

}  // namespace

bool fits(const CutTask& task, std::int64_t coil, std::int64_t length, std::int64_t count) {
  return count == 0 || length + task.kerf * (count - 1) + task.trim <= coil;
}

std::int64_t remainder_of(const CutTask& task, std::int64_t coil, std::int64_t length,
                          std::int64_t count) {
  if (count == 0) return 0;
  return std::max<std::int64_t>(0, coil - task.trim - length - task.kerf * count);
}

std::int64_t total_of(const CutTask& task, const std::vector<int>& coil_of) {
  std::vector<std::int64_t> width(task.coils.size());
  for (std::size_t i = 0; i < coil_of.size(); ++i) {
    if (coil_of[i] >= 0) {
      width[static_cast<std::size_t>(coil_of[i])] += task.pieces[i] + task.kerf;
    }
  }
  std::int64_t total = 0;
  for (std::size_t c = 0; c < width.size(); ++c) {
    if (width[c] == 0) continue;
    const std::int64_t taken = task.trim + width[c];
    const bool back = task.coils[c] - taken >= task.least_kept;
    if (task.aim == CutAim::opened) {
      total += task.coils[c];
    } else {
      total += back ? taken : std::max(task.coils[c], taken);
    }
  }
  return total;
}

std::vector<int> first_fit_decreasing(const CutTask& task) {
  auto pieces = by_length(task.pieces);
  std::reverse(pieces.begin(), pieces.end());
  const auto coils = by_length(task.places);
  std::vector<std::int64_t> room(task.coils.size());
  for (std::size_t c = 0; c < room.size(); ++c) room[c] = task.coils[c] - task.trim;
  std::vector<int> out(task.pieces.size(), k_not_cut);
  for (const int piece : pieces) {
    const auto p = static_cast<std::size_t>(piece);
    for (const int coil : coils) {
      auto& left = room[static_cast<std::size_t>(coil)];
      if (left < task.pieces[p]) continue;
      left -= task.pieces[p] + task.kerf;
      out[p] = coil;
      break;
    }
  }
  return out;
}

CutSolution solve(const CutTask& task, const CutEffort& effort) {
  CutSolution out;
  if (task.pieces.empty()) {
    out.complete = out.proved = out.order_proved = true;
    return out;
  }
  {
    detail::CutSearch search(task, effort);
    out = search.best(effort.steps);
  }
  if (out.complete) return out;
  const auto order = by_length(task.pieces);
  const bool decided = out.decided;
  const Most most = most_pieces(task, order, effort);
  const CutTask part = shortest(task, order, most.count);
  CutSolution some;
  some.complete = some.proved = some.order_proved = true;
  if (most.count > 0) {
    detail::CutSearch search(part, effort);
    some = search.best(effort.steps);
  }
  CutSolution whole = some;
  whole.complete = false;
  whole.decided = decided && most.decided;
  whole.states += out.states;
  whole.stopped = whole.stopped || out.stopped;
  whole.coil_of.assign(task.pieces.size(), k_not_cut);
  for (std::size_t i = 0; i < order.size(); ++i) {
    const auto p = static_cast<std::size_t>(order[i]);
    if (i < some.coil_of.size()) {
      whole.coil_of[p] = some.coil_of[i];
    } else {
      whole.left_over.push_back(order[i]);
    }
  }
  return whole;
}

}  // namespace wm::hose
