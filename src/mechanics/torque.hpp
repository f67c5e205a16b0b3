#pragma once
/// Torque, and mass and balance.
///
/// This header: what to set on the wrench when it carries an extension, and torque from the
/// named tables.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "describe/catalogue.hpp"
#include "quantity/text.hpp"

namespace wm::mechanics {

/// One row of a torque table, with the name of the table: a joint's record names it too.
struct TorqueBand {
  quantity::Torque lowest{};
  quantity::Torque highest{};
  std::optional<quantity::Torque> most{};  ///< never past this while a castle nut is lined up
  std::string table;                       ///< name of the table
  std::string in_words;                    ///< "torque-bolts, 1/4-28, tension nut: 50 to 70 in-lb"
  bool may_be_limit{};  ///< the row was read from its document; anything else is advice
};

/// Look a torque up. `which` is the nut or the metal as the table words it; it may be left
/// empty where the size has one row only.
///
/// @return not_found: no such table, size or row, each with what there is. Never a value
///         between two rows.
[[nodiscard]] Result<TorqueBand> torque_band(const describe::Context& context,
                                             std::string_view table, std::string_view size,
                                             std::string_view which);

/// What the extension does to the wrench: shown on the scale / at the nut.
///
///   setting = T L / (L + E cos a)
///
/// @param lever      L, from the middle of the grip to the drive, > 0.
/// @param extension  E, from the drive to the nut, >= 0.
/// @param angle      a, between wrench and extension: 0 in line and longer, 90 deg no effect,
///                   180 deg back over the wrench and shorter.
/// @return           not_applicable when the nut would come to lie within a fifth of L from
///                   the grip (our choice: there the setting hangs on where the hand is).
/// @source           TM 9-254, figure 46; NAVEDTRA and TM 1-1500-204-23-9, figures 8-16, 8-17.
[[nodiscard]] Result<double> extension_factor(quantity::Length lever, quantity::Length extension,
                                              quantity::Angle angle);

struct TorqueSettingInput {
  std::optional<quantity::Entered<quantity::Torque>> wanted;
  std::optional<quantity::Entered<quantity::Torque>> lowest;
  std::optional<quantity::Entered<quantity::Torque>> highest;
  std::string table;
  std::string size;
  std::string which;
  std::string source;  ///< of a torque typed in: the maker's document
  std::optional<quantity::Entered<quantity::Torque>> drag;
  std::optional<quantity::Entered<quantity::Length>> lever;
  std::optional<quantity::Entered<quantity::Length>> extension;
  std::optional<quantity::Entered<quantity::Angle>> angle;
  bool shortens{};
  bool castle_nut{};
  std::optional<quantity::Entered<quantity::Torque>> wrench_from;
  std::optional<quantity::Entered<quantity::Torque>> wrench_to;
};

struct TorqueSettingAnswer {
  quantity::Entered<quantity::Torque> setting;  ///< on the wrench's scale
  std::optional<quantity::Entered<quantity::Torque>> setting_lowest;
  std::optional<quantity::Entered<quantity::Torque>> setting_highest;
  quantity::Entered<quantity::Torque> at_the_nut;  ///< wanted and drag together
  std::string torque_source;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// @return missing (no torque, no lever beside an extension), conflict (wanted and a band, band
///         upside down), not_found (table), not_applicable (extension folded back too far).
[[nodiscard]] Checked<TorqueSettingAnswer> torque_setting(const TorqueSettingInput& input,
                                                          const describe::Context& context);

std::string_view describe(describe::Fields<TorqueSettingInput>& f);
std::string_view describe(describe::Fields<TorqueSettingAnswer>& f);

}  // namespace wm::mechanics
