#pragma once
/// What a stage costs: the model of docs/method/staging.md over numbered changes.

#include <cstdint>
#include <limits>
#include <optional>
#include <utility>
#include <vector>

namespace wm::staging::detail {

/// A set of items as bits: changes first, faults of other origin behind them.
using Set = std::uint64_t;

inline constexpr double k_never = std::numeric_limits<double>::infinity();

/// Something that can be at fault.
struct Suspect {
  double chance{};
  double check_cost{};
  double found_per_hour{};  ///< negative: surely found
  double hours{};           ///< test hours asked for
  double ground_hours{-1};  ///< negative: a ground run does not show it
  Set symptoms{};           ///< none: its symptom is like no other
  Set areas{};
  double waiting{};
};

struct Harm {
  Set both{};
  double cost{};  ///< harm x p x p
};

enum class HoursRule : std::uint8_t { longest, given };

struct CostModel {
  std::vector<Suspect> suspects;  ///< changes, then other causes
  int changes{};
  std::vector<double> areas;
  std::vector<Harm> harms;
  double stage_cost{};
  double hour_cost{};
  double ground_hour_cost{};
  double confirmation_cost{};
  double escape_cost{};
  HoursRule rule{HoursRule::longest};
  std::vector<double> grid;  ///< hours that a stage may have, rising, under HoursRule::given
  bool ground_stages{};
};

/// One way to test a stage.
struct StageOption {
  double cost{};
  double hours{};
  bool ground{};
};

/// One look in the search for a fault.
struct Look {
  int suspect{};
  double chance_needed{};  ///< that it or one after it is at fault: only then it is looked at
  double shown{};          ///< chance that its fault shows: q
};

/// What the cost of a stage is made of.
struct StageParts {
  double fixed{};  ///< once a stage, areas, harms
  double testing{};
  double escapes{};
  std::vector<std::vector<Look>> kinds;
};

/// Costs of stages, with what hangs on the hours alone worked out beforehand.
class StageCosts {
 public:
  explicit StageCosts(CostModel model);

  /// Every way to test this set of changes, those beaten in cost and hours left out.
  [[nodiscard]] std::vector<StageOption> options(Set changes) const;
  /// The cheapest of them when each hour also costs `waiting`.
  [[nodiscard]] StageOption best(Set changes, double waiting) const;
  /// Least that a change adds to any stage it joins, the hours left out.
  [[nodiscard]] double least_share(int change) const { return share_[index(change)]; }
  /// The kinds of symptom in a stage: sets of suspects, other causes among them.
  [[nodiscard]] std::vector<Set> kinds(Set changes) const;
  /// The same cost in its parts, with the looks in order.
  [[nodiscard]] StageParts parts(Set changes, const StageOption& option) const;
  [[nodiscard]] const CostModel& model() const { return model_; }
  /// Cost of untangling one kind of symptom, all shown for certain: W of the model.
  [[nodiscard]] double untangle(Set kind) const { return untangle(kind, profiles_.front()); }

 private:
  /// Chances and order of looking for one number of hours.
  struct Profile {
    double hours{};
    std::vector<double> shown;  ///< q = p d, a suspect each
    std::vector<int> order;
  };
  static std::size_t index(int i) { return static_cast<std::size_t>(i); }
  [[nodiscard]] Profile profile(double hours, bool certain) const;
  [[nodiscard]] const Profile& at_hours(double hours) const;
  [[nodiscard]] double untangle(Set kind, const Profile& at) const;
  [[nodiscard]] double fixed(Set changes) const;
  [[nodiscard]] double testing(Set changes, const std::vector<Set>& kinds, const Profile& at) const;
  void add_ground(Set changes, const std::vector<Set>& kinds, double base,
                  std::vector<StageOption>& out) const;
  void find_shares();

  CostModel model_;
  std::vector<Profile> profiles_;  ///< first: all shown for certain; then one an hour figure
  std::vector<double> share_;
};

}  // namespace wm::staging::detail
