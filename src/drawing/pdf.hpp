#pragma once
/// PDF with selectable text; the same pages give the same bytes.

#include <span>
#include <string>

#include "drawing/display_list.hpp"

namespace wm::drawing {

struct PdfInfo {
  std::string title;
  std::string subject;
  /// When the paper was made, "2026-11-25" or "2026-11-25T14:05:00Z". Given, never
  /// asked of the clock: a paper printed again from the same record is the same paper.
  std::string created;
};

/// @return  The bytes of one PDF file; `Kind::missing` without a page,
///          `Kind::bad_text` for a date of another form, `Kind::out_of_bounds` see `check`.
/// @throws std::runtime_error when cairo itself fails (no memory).
[[nodiscard]] Result<std::string> pdf(std::span<const Page> pages, const PdfInfo& info);

}  // namespace wm::drawing
