#pragma once
/// What the tables say of the hose on a sheet, where its family is one of theirs: a sheet must not
/// print figures beside each other that contradict their own source.

#include <string>
#include <vector>

#include "hose/sheet.hpp"

namespace wm::hose {

struct TableWords {
  Problems refused;                ///< above what a table that was read allows
  std::vector<std::string> lines;  ///< for the sheet
  bool has_proof{};                ///< among the lines: the proof pressure of the table
};

/// An unknown family, or none, is compared with nothing.
/// @return refused: out_of_bounds at "working_pressure" or "proof_pressure", with the table's
///         figure and its source
/// @source AC 43.13-1B CHG 1 table 9-3; TM 1-1500-204-23-2 tables 4-15 and 4-23; data/hose
[[nodiscard]] TableWords compared_with_tables(const HoseSheetInput& in,
                                              const describe::Context& context);

}  // namespace wm::hose
