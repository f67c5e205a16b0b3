#pragma once
/// The magneto check of the run-up: how far the speed falls on each side.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "describe/catalogue.hpp"
#include "ignition/part.hpp"
#include "quantity/text.hpp"

namespace wm::ignition {

using EnteredRpm = quantity::Entered<quantity::RotationSpeed>;

/// OFF for an instant at idle: the engine must falter.
enum class GroundingCheck : std::uint8_t { not_done, faltered, did_not_falter };

struct RpmDropInput {
  EnteredRpm both;
  EnteredRpm left;                 ///< running on the left one alone
  EnteredRpm right;                ///< running on the right one alone
  std::optional<EnteredRpm> step;  ///< to which the tachometer can be read
  std::optional<EnteredRpm> highest_drop;
  std::optional<EnteredRpm> highest_difference;
  std::string limit_source;
  bool left_rough{};
  bool right_rough{};
  GroundingCheck grounding{GroundingCheck::not_done};
  std::optional<quantity::Entered<quantity::Length>> pressure_altitude;
  std::optional<quantity::Temperature> outside;
};

struct RpmDropAnswer {
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string in_words;
  quantity::RotationSpeed left_drop;
  quantity::RotationSpeed right_drop;
  quantity::RotationSpeed difference;
  std::vector<PartVerdict> parts;
  std::vector<Figure> figures;
  std::optional<quantity::Length> density_altitude;
  std::vector<std::string> notes;
};

/// Judge the drop of each side, their difference, and the check that OFF grounds both.
///
/// A drop that the tachometer cannot tell from none is undecided, whatever the limit: the magneto
/// that should be off may not be grounded. Each reading is known to half the step; a drop to
/// 2 x sqrt(2) x step / sqrt(12).
/// @return conflict (an altitude without temperature), and what evidence::conformity refuses.
/// @source limits: the aircraft's manual, entered. FAA-H-8083-32: drop in general 25 to 75 rpm,
///         shown; at idle OFF for an instant must make the engine falter. Density altitude: ISA,
///         from memory, unconfirmed.
[[nodiscard]] Checked<RpmDropAnswer> rpm_drop(const RpmDropInput& in,
                                              const describe::Context& context);

std::string_view describe(describe::Choices<GroundingCheck>& c);
std::string_view describe(describe::Fields<RpmDropInput>& f);
std::string_view describe(describe::Fields<RpmDropAnswer>& f);

}  // namespace wm::ignition
