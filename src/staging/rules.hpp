#pragma once
/// Splitting changes into stages: the rules that a stage must keep, graded by disturbance.
///
/// In this version the owner makes the stages and the program checks them.

#include <cstdint>
#include <string>
#include <vector>

namespace wm::staging {

/// How much a change disturbs, in rising order.
enum class Disturbance : std::uint8_t { looked_at, adjusted, opened, renewed, redesigned };

/// What a rule needs to know of a change.
struct ChangeFacts {
  std::string id;
  std::string title;
  std::string position;
  std::string redundant_with;  ///< the position that can do its work, if any
  bool ignition{};
  bool fuel{};
  Disturbance disturbance{Disturbance::renewed};
  bool mount_isolators{};             ///< the engine settles on them
  bool needs_settled_engine{};        ///< rigging of controls, measuring a hose on the aircraft
  std::vector<std::string> after;     ///< changes that come first
  std::vector<std::string> together;  ///< changes that must go into the air with it
};

enum class Rule : std::uint8_t {
  pair_renewed,        ///< both halves of a redundant pair renewed or redesigned
  pair_opened,         ///< both halves disturbed, not both renewed
  ignition_with_fuel,  ///< symptoms that cannot be told apart
  order,               ///< something that must come first comes later
  together,            ///< what must fly together is torn apart
  isolators_first      ///< mount isolators before rigging and hose measuring
};
/// "pair-renewed", "ignition-with-fuel", ...
[[nodiscard]] std::string word(Rule rule);

/// What answers an objection; an order cannot be argued with, only changed.
struct AnswersAccepted {
  bool independent_inspection{};
  bool separate_proof{};
  bool override_in_writing{};
};

struct Objection {
  Rule rule{};
  std::vector<std::string> changes;  ///< the ones that clash
  std::string words;                 ///< what is wrong and why it matters
  std::string answer;                ///< what would settle it
  std::string source;
  AnswersAccepted accepted;
};

/// A stage as the rules see it: its changes, and those already in the air or in earlier stages.
struct StageFacts {
  std::vector<ChangeFacts> changes;
  std::vector<std::string> done_before;  ///< ids of changes done, or placed in an earlier stage
  /// Mount isolators that are planned, not yet done and in no earlier stage: id and title.
  std::vector<std::pair<std::string, std::string>> isolators_pending;
};

/// Every objection to a stage.
///
/// Renewed or redesigned halves of one pair, or ignition together with fuel: an independent
/// inspection or an override in writing settles it. Opened and refitted or adjusted halves ask
/// only for a separate proof of each half, so that an annual inspection does not drown in
/// objections; looked-at counts for nothing.
/// @source 14 CFR 121.374(c)(2) and AC 120-42B (dual maintenance, as read in the project's
///         rules-records reference), carried over to one aircraft: derived. Isolators first:
///         common practice, no source.
[[nodiscard]] std::vector<Objection> check(const StageFacts& stage);

}  // namespace wm::staging
