#include "service/detail/guard.hpp"

#include <arpa/inet.h>

#include <algorithm>
#include <charconv>
#include <optional>
#include <string>

namespace wm::service::detail {
namespace {

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

bool same(std::string_view a, std::string_view b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](char x, char y) { return lower(x) == lower(y); });
}

struct Place {
  std::string_view host;
  int port{80};
};

std::optional<int> port_of(std::string_view text) {
  int port{};
  const auto* end = text.data() + text.size();
  const auto [stopped, error] = std::from_chars(text.data(), end, port);
  if (text.empty() || error != std::errc{} || stopped != end || port < 1 || port > 65535)
    return std::nullopt;
  return port;
}

std::optional<Place> split(std::string_view header) {
  Place out;
  std::string_view rest;
  if (header.starts_with('[')) {
    const auto close = header.find(']');
    if (close == std::string_view::npos) return std::nullopt;
    out.host = header.substr(1, close - 1);
    rest = header.substr(close + 1);
  } else {
    const auto colon = header.find(':');
    out.host = header.substr(0, colon);
    rest = colon == std::string_view::npos ? std::string_view{} : header.substr(colon);
  }
  if (out.host.empty()) return std::nullopt;
  if (rest.empty()) return out;
  if (!rest.starts_with(':')) return std::nullopt;
  const auto port = port_of(rest.substr(1));
  if (!port) return std::nullopt;
  out.port = *port;
  return out;
}

bool is_plain_address(std::string_view host) {
  const std::string text(host);
  in6_addr room{};
  return inet_pton(AF_INET, text.c_str(), &room) == 1 ||
         inet_pton(AF_INET6, text.c_str(), &room) == 1;
}

bool is_every_address(std::string_view bound) { return bound == "0.0.0.0" || bound == "::"; }

}  // namespace

bool host_is_ours(std::string_view header, std::string_view bound, int port) {
  const auto place = split(header);
  if (!place || place->port != port) return false;
  const auto host = place->host;
  if (same(host, "localhost") || host == "127.0.0.1" || host == "::1") return true;
  return same(host, bound) || (is_every_address(bound) && is_plain_address(host));
}

bool origin_is_ours(std::string_view origin, std::string_view host_header) {
  constexpr std::string_view k_scheme = "http://";
  if (origin.size() <= k_scheme.size() || !same(origin.substr(0, k_scheme.size()), k_scheme))
    return false;
  return same(origin.substr(k_scheme.size()), host_header);
}

bool is_json(std::string_view content_type) {
  auto type = content_type.substr(0, content_type.find(';'));
  while (!type.empty() && (type.back() == ' ' || type.back() == '\t')) type.remove_suffix(1);
  return same(type, "application/json");
}

}  // namespace wm::service::detail
