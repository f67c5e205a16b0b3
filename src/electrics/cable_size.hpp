#pragma once
/// The calculation `cable-size`: the smallest cable that meets drop and current, and which rule
/// binds.

#include "describe/catalogue.hpp"
#include "electrics/cable_drop.hpp"
#include "electrics/derating.hpp"

namespace wm::electrics {

enum class SizeRule : std::uint8_t { none, drop, current, aluminium };

struct CableSizeInput {
  std::string name;
  CableKind kind{CableKind::aircraft_copper};
  Metal metal{Metal::copper};  ///< of aircraft sizes
  EnteredLength length;
  std::optional<EnteredLength> return_length;
  EnteredCurrent current;
  Duty duty{Duty::continuous};
  NominalVoltage nominal{NominalVoltage::v14};
  CircuitRole role{CircuitRole::equipment};
  std::optional<EnteredVoltage> regulated;
  std::optional<EnteredVoltage> limit;
  std::string limit_source;
  std::optional<Surroundings> surroundings;
  std::optional<EnteredTemperature> temperature;
};

/// One size that was looked at.
struct SizeTried {
  std::string size;
  quantity::Voltage drop{};
  bool drop_met{};
  std::optional<quantity::Current> allowed;
  std::optional<bool> current_met;  ///< nothing where the current was not judged
  std::string why;
};

struct CableSizeAnswer {
  std::string size;
  std::string in_words;
  SizeRule binding{SizeRule::none};
  bool advice{};  ///< some figure that decided is advice
  std::optional<quantity::Voltage> drop;
  std::optional<quantity::Voltage> limit;
  std::string limit_from;
  std::optional<quantity::Current> breaker;
  std::optional<quantity::Current> fuse;
  std::vector<SizeTried> tried;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// Largest breaker or fuse of a copper wire.
struct Protection {
  std::optional<double> breaker;
  std::optional<double> fuse;
};
/// @source AC 43.13-1B table 11-3, page 11-15.
[[nodiscard]] Protection protection_of(std::string_view size);

/// From the smallest size up, the first that keeps the drop limit and carries the current.
///
/// The drop is counted at the conductor temperature entered; else, where the surroundings are
/// known, at the cautious estimate (estimated_celsius); else at 20 degC.
/// Aluminium in aircraft sizes: two sizes larger than the copper wire, not below No. 8.
///
/// @return not_found where no size of the table is large enough; not_applicable for a maker's
///         cable, which has no row of sizes; and what drop_limit and check refuse.
/// @source AC 43.13-1B CHG 1 pages 11-22 to 11-27, tables 11-3, 11-6 and 11-9.
[[nodiscard]] Checked<CableSizeAnswer> cable_size(const CableSizeInput& input,
                                                  const describe::Context& context);

std::string_view describe(describe::Choices<SizeRule>& c);
std::string_view describe(describe::Fields<CableSizeInput>& f);
std::string_view describe(describe::Fields<SizeTried>& f);
std::string_view describe(describe::Fields<CableSizeAnswer>& f);

}  // namespace wm::electrics
