#pragma once
/// The web page, embedded at build time.

#include <span>
#include <string>
#include <string_view>

#include "service/detail/exchange.hpp"

namespace wm::service::detail {

struct Asset {
  std::string_view name;
  std::string_view type;
  bool forever{};  ///< its name carries a hash of its content
  std::string_view plain;
  std::string_view gzip;  ///< empty: there is no compressed copy
  std::string tag;        ///< entity tag of the content
};

/// Everything that was in web/dist at build time; empty when the page was not built.
[[nodiscard]] std::span<const Asset> assets();

/// Answer for "/" or "/app.3CUR.css": compressed where that is accepted, "not changed" where the
/// asker has it, a plain page that says what to do where the web page was not built.
[[nodiscard]] Answer serve_asset(const Ask& ask);

/// Whether an Accept-Encoding header takes gzip.
[[nodiscard]] bool takes_gzip(std::string_view accept_encoding);
/// Whether an If-None-Match header names this entity tag.
[[nodiscard]] bool has_tag(std::string_view if_none_match, std::string_view tag);

}  // namespace wm::service::detail
