#pragma once
/// The search behind the cut plan: pieces of one width and coils of one length taken together.

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

#include "hose/cut_plan.hpp"

namespace wm::hose::detail {

/// Pieces of one length. The kerf belongs to the piece: width = length + kerf.
struct CutKind {
  std::int64_t width{};
  std::vector<int> pieces;
};

/// Coils of one length, in the order in which they are taken.
struct CutCoils {
  std::int64_t length{};
  std::int64_t room{};   ///< for widths, whatever is left: length - trim + kerf
  std::int64_t loose{};  ///< for widths, when the remainder shall go back into stock
  std::vector<int> coils;
  std::vector<std::int64_t> weights;  ///< what each adds to the order of preference
};

struct CutGroups {
  std::vector<CutKind> kinds;   ///< widest first
  std::vector<CutCoils> coils;  ///< longest first
  [[nodiscard]] static CutGroups of(const CutTask& task);
};

/// Total by the aim, then by the order of preference.
struct CutCost {
  std::int64_t total{};
  std::int64_t order{};
  friend bool operator==(const CutCost&, const CutCost&) = default;
};
[[nodiscard]] inline bool less(const CutCost& a, const CutCost& b) {
  return a.total != b.total ? a.total < b.total : a.order < b.order;
}

/// What is still to be cut, and from what.
struct CutState {
  std::vector<int> left;         ///< of each kind
  std::vector<int> free;         ///< of each length of coil
  std::vector<char> tight_only;  ///< this kind can only go where no remainder is kept
  std::int64_t left_width{};
  std::int64_t tight_width{};  ///< of left_width, that of kinds marked tight_only
};

/// So many coils of each length, and their total.
struct CutSet {
  std::int64_t total{};
  std::vector<int> counts;
};

/// Least total of coils that could hold what is left if pieces could be cut up at will, apart
/// from a few counting rules. It is a bound, never a plan.
class CutBound {
 public:
  CutBound(const CutTask& task, const CutGroups& groups);
  /// @return a total that no plan from this state can undercut, or nothing where no plan is
  [[nodiscard]] std::optional<std::int64_t> least(const CutState& state, std::int64_t steps);
  /// @return false when it is certain that from this state no plan has a total below `target`
  [[nodiscard]] bool may_beat(const CutState& state, std::int64_t target);
  /// The same for a total and an order of preference that both stay below theirs.
  /// @param taken  coils already opened of each length
  [[nodiscard]] bool may_beat(const CutState& state, const std::vector<std::size_t>& taken,
                              const CutCost& targets);
  /// Every set of coils with a total from `least` to below `target` that the bound lets pass.
  /// @return nothing when there are more than `most` of them, or too many to look for
  [[nodiscard]] std::optional<std::vector<CutSet>> sets(const CutState& state, std::int64_t least,
                                                        std::int64_t target, std::size_t most);
  [[nodiscard]] std::int64_t effort() const { return effort_; }

 private:
  static constexpr std::size_t k_rules = 6;
  struct Choice {
    std::int64_t cost{};   ///< fixed, once opened
    std::int64_t waste{};  ///< of the cost, what no piece can fill
    std::int64_t room{};
    std::int64_t counts[k_rules]{};
  };
  struct Need {
    std::int64_t width{};
    std::int64_t tight{};
    std::int64_t counts[k_rules]{};
  };
  void rules();
  void choices(const CutState& state, bool reachable);
  void reach(const CutState& state);
  [[nodiscard]] std::int64_t reached(std::int64_t room) const;
  [[nodiscard]] Need need_of(const CutState& state) const;
  [[nodiscard]] bool enough(const Need& need) const;
  [[nodiscard]] bool possible(const Need& need, std::size_t from) const;
  [[nodiscard]] std::int64_t value(std::int64_t tight_cost, std::int64_t extra) const;
  [[nodiscard]] std::int64_t ahead(const Need& need, std::size_t from) const;
  /// @return false when the steps ran out
  struct Paid {
    std::int64_t tight_cost{};  ///< surely paid: whole coils, and the trim of the others
    std::int64_t extra{};       ///< beyond the widths, or all of it where coils count whole
    std::int64_t order{};
  };
  bool cover(std::size_t from, const Need& need, const Paid& paid);
  bool collect(std::size_t from, const Need& need, CutSet& set, std::vector<CutSet>& out,
               std::int64_t least, std::size_t most);
  [[nodiscard]] bool may_cover(const CutState& state, std::int64_t target);
  void weigh(const std::vector<std::size_t>& taken);
  [[nodiscard]] std::int64_t order_ahead(const Need& need, std::size_t from) const;

  const CutTask& task_;
  const CutGroups& groups_;
  std::int64_t thresholds_[k_rules]{};
  std::vector<Choice> tight_, loose_;
  std::vector<Choice> rest_;  ///< all of the coils from here on together
  /// Cheapest cost for one of each count, last for a width, from here on.
  std::vector<std::array<double, k_rules + 1>> cheapest_;
  std::vector<std::vector<std::int64_t>> weights_;  ///< of so many more coils of each length
  std::vector<double> lightest_;  ///< least order of preference for a width, from here on
  std::int64_t order_target_{};
  std::vector<int> free_;
  std::int64_t unit_{1};
  std::vector<std::uint64_t> sums_;  ///< which sums of widths there are, in units
  std::int64_t width_{};
  std::int64_t target_{};
  std::int64_t best_{};
  bool first_will_do_{};
  std::int64_t steps_{};
  std::int64_t effort_{};
};

/// Branch and bound over "which coil gives the widest piece that is left, and what else".
class CutSearch {
 public:
  CutSearch(const CutTask& task, const CutEffort& effort);
  /// Does any plan hold every piece? @return nothing when the effort ran out first
  [[nodiscard]] std::optional<bool> can_hold(std::int64_t steps);
  [[nodiscard]] CutSolution best(std::int64_t steps);

 private:
  enum class Aim : std::uint8_t { any, total, order };
  struct Taken {
    std::size_t coils;
    std::vector<int> counts;
  };
  /// One coil while it is being filled.
  struct Filling {
    std::size_t coils{};
    bool loose{};  ///< a remainder to keep shall stay
    std::size_t widest{};
    std::vector<int> counts;
    std::vector<std::int64_t> behind;  ///< width of all that may follow from this kind on
  };

  void first_plans();
  [[nodiscard]] std::vector<int> pack(const std::vector<int>& coils, bool best_fit,
                                      bool loose) const;
  void offer(const std::vector<int>& coil_of);
  void run(Aim aim, std::int64_t steps);
  /// Aim `opened`: can this set of coils hold everything? From the least total upwards.
  void by_sets(std::int64_t steps);
  [[nodiscard]] bool try_sets(std::vector<CutSet> sets, std::int64_t target, std::int64_t end);
  void visit();
  void open(std::size_t coils, bool loose, std::size_t widest);
  void fill(Filling& f, std::size_t kind, std::int64_t room);
  void close(const Filling& f, std::int64_t room);
  /// A piece still left could go into this coil, or take a narrower one's place there.
  [[nodiscard]] bool improves(const Filling& f, std::int64_t room, std::size_t kind) const;
  void keep_plan();
  [[nodiscard]] bool spend();
  [[nodiscard]] bool over() const;
  [[nodiscard]] bool hopeless();
  [[nodiscard]] bool seen_before();
  [[nodiscard]] CutCost cost_of(const std::vector<int>& coil_of) const;

  const CutTask& task_;
  const CutEffort& effort_;
  CutGroups groups_;
  CutBound bound_;
  CutState state_;
  std::vector<std::size_t> used_;  ///< coils taken of each length
  CutCost spent_;
  std::vector<Taken> path_;
  Aim aim_{Aim::total};
  std::int64_t least_{};  ///< bound of the whole task
  std::optional<CutCost> best_;
  std::vector<int> best_plan_;
  std::unordered_map<std::string, CutCost> seen_;
  std::int64_t steps_{}, steps_end_{}, told_{}, states_{};
  bool out_of_steps_{}, stopped_{};
};

}  // namespace wm::hose::detail
