#pragma once
/// Who may ask: a web page from elsewhere must not drive the binder through the owner's browser.

#include <string_view>

namespace wm::service::detail {

/// Whether a Host header names this server.
///
/// A name that is re-pointed at this machine (DNS rebinding) still arrives as that name, so only
/// loopback names and the address that we listen on are taken. When we listen on every address of
/// the machine, any plain address counts: an address cannot be re-pointed.
///
/// @param header  "127.0.0.1:8480", "[::1]:8480"; without a port, 80 is meant
/// @param bound   the address that we listen on
[[nodiscard]] bool host_is_ours(std::string_view header, std::string_view bound, int port);

/// Whether an Origin header is the page that this server gave out under that Host header.
[[nodiscard]] bool origin_is_ours(std::string_view origin, std::string_view host_header);

/// "application/json", with or without parameters, in any case of letters.
[[nodiscard]] bool is_json(std::string_view content_type);

}  // namespace wm::service::detail
