#pragma once
/// Which piece is cut from which coil, so that the least stock goes: one-dimensional cutting of
/// real coils, each with its own length, without a splice.
///
/// All lengths are whole numbers of one small unit (the calculation takes nanometres, in which
/// inches, sixty-fourths and millimetres are all whole), so that no sum is ever rounded.
///
///   a coil of length L loses the trim once, when it is opened, and a kerf at each cut;
///   pieces of lengths l fit when  trim + sum l + kerf (number - 1) <= L  (the last piece may end
///   where the coil ends);  remainder r = max(0, L - trim - sum (l + kerf))
///
/// Two aims, both solved exactly (docs/method/cut-plan.md):
///   used    least  sum over opened coils of  L - r where r >= least_kept, L otherwise
///   opened  least  sum over opened coils of  L
/// Among plans of equal total the one that takes coils earlier in the owner's order, then fewer.

#include <cstdint>
#include <functional>
#include <vector>

namespace wm::hose {

enum class CutAim : std::uint8_t { used, opened };

struct CutTask {
  CutAim aim{CutAim::used};
  std::vector<std::int64_t> coils;   ///< length of each
  std::vector<std::int64_t> places;  ///< of each coil in the order to take them: 1 first; as long
  std::vector<std::int64_t> pieces;  ///< length of each piece, above zero
  std::int64_t kerf{};
  std::int64_t trim{};        ///< once a coil, its own cut included
  std::int64_t least_kept{};  ///< shortest remainder that goes back into stock
};

/// What to spend on the search. It is counted, not timed: the same task ends in the same plan.
struct CutEffort {
  std::int64_t steps{24'000'000};
  std::function<bool(double share)> go_on{};  ///< false: stop with the best plan so far
};

inline constexpr int k_not_cut = -1;

struct CutSolution {
  std::vector<int> coil_of;      ///< for each piece its coil, or k_not_cut
  std::int64_t total{};          ///< by the aim
  std::int64_t bound{};          ///< no plan for these pieces can do with less
  bool complete{};               ///< every piece is cut
  bool decided{true};            ///< incomplete: shown that the stock cannot hold more pieces
  bool proved{};                 ///< total is the least there is for the pieces cut
  bool order_proved{};           ///< and no other such plan takes coils earlier in the order
  bool stopped{};                ///< by go_on
  std::int64_t states{};         ///< looked at
  std::vector<int> left_over{};  ///< pieces not cut: the longest, so that most are cut
};

/// Remainder of a coil that carries `count` pieces of together `length`; zero where nothing is cut.
[[nodiscard]] std::int64_t remainder_of(const CutTask& task, std::int64_t coil, std::int64_t length,
                                        std::int64_t count);
[[nodiscard]] bool fits(const CutTask& task, std::int64_t coil, std::int64_t length,
                        std::int64_t count);
/// Total by the aim. Pieces that are not cut count nothing.
[[nodiscard]] std::int64_t total_of(const CutTask& task, const std::vector<int>& coil_of);

/// The longest piece first, each from the first coil (in the owner's order) that has room.
[[nodiscard]] std::vector<int> first_fit_decreasing(const CutTask& task);

/// Branch and bound. Where not all pieces fit, as many as can: then the shortest are cut, because
/// any plan stays one when a piece is exchanged for a shorter one.
/// @pre lengths >= 0, pieces above zero, places as many as coils
[[nodiscard]] CutSolution solve(const CutTask& task, const CutEffort& effort);

}  // namespace wm::hose
