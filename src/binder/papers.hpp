#pragma once
/// What is printed from the record: cards, hose sheets, tags. Both doors ask here.

#include <string>

#include "binder/binder.hpp"
#include "describe/catalogue.hpp"

namespace wm::binder {

struct RecordPaper {
  std::string kind;  ///< "work", "stage" (of a stage), "entry", "hose", "tag" (of a hose), "trend"
  std::string aircraft, id;
  std::string as;     ///< "pdf", "svg", "png"
  std::string paper;  ///< "a4", "letter"; empty: a4
};

/// The bytes of the file. The record is read first, then drawn, when it is free for others.
/// @return unknown_choice ("kind", "as"), not_found (aircraft, stage, entry, hose, check), and what
/// the
///         calculation of an old drawing refuses today
[[nodiscard]] Checked<std::string> record_paper(Binder& binder, const RecordPaper& wanted,
                                                const describe::Context& context);

}  // namespace wm::binder
