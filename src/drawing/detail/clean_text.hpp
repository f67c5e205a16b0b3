#pragma once
/// Text from anywhere, made fit for paper and for XML.

#include <string>
#include <string_view>

namespace wm::drawing::detail {

/// Valid UTF-8 without anything that would break or disguise a printed line.
///
/// Bytes that are not UTF-8, control characters, noncharacters and marks that reverse
/// the reading direction become U+FFFD, so that the reader sees that something was
/// there. Characters without a shape (zero-width space, byte order mark, soft hyphen)
/// are left out. Tab and carriage return become a space; a line feed stays.
[[nodiscard]] std::string clean_text(std::string_view text);

/// The same, then escaped for XML content and quoted attributes.
[[nodiscard]] std::string xml_text(std::string_view text);

}  // namespace wm::drawing::detail
