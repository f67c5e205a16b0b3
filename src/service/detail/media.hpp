#pragma once
/// What an attachment is, and whether a browser may show it in the page's own origin.

#include <string>
#include <string_view>

#include "bay/state.hpp"

namespace wm::service::detail {

struct Media {
  std::string type{"application/octet-stream"};
  std::string name;  ///< file name as stored; may be empty
  bool shown{};      ///< else handed out as a download
};

/// From the event that names the content; where only a defect's list of photos does, from the
/// first bytes.
[[nodiscard]] Media media_of(const bay::State& state, std::string_view hash,
                             std::string_view content);

/// image/*, audio/* and application/pdf are shown; everything else is handed out as a file, and
/// so is SVG, which can carry a program.
[[nodiscard]] bool may_be_shown(std::string_view type);

/// A media type that can stand in a header: "image/jpeg"; anything else is unknown bytes.
[[nodiscard]] std::string clean_type(std::string_view type);

/// PNG, JPEG, GIF, WebP and PDF by their first bytes; otherwise unknown bytes.
/// @source PNG 3rd ed. 5.2; JFIF 1.02; GIF89a 17; RFC 9649 2.4; ISO 32000-1 7.5.2 (from memory)
[[nodiscard]] std::string type_by_content(std::string_view content);

/// Content-Disposition with the name in plain letters and in UTF-8.
/// @source RFC 6266, RFC 8187 (from memory)
[[nodiscard]] std::string disposition(bool shown, std::string_view name);

}  // namespace wm::service::detail
