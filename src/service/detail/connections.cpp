#include "service/detail/connections.hpp"

#include <netinet/in.h>
#include <sys/socket.h>

#include <charconv>
#include <filesystem>
#include <string>
#include <system_error>

namespace wm::service::detail {
namespace {

/// Port of this end, or 0 when it is no connection of the internet kind.
int own_port(int descriptor) {
  sockaddr_storage place{};
  socklen_t size = sizeof(place);
  if (getsockname(descriptor, reinterpret_cast<sockaddr*>(&place), &size) != 0) return 0;
  if (place.ss_family == AF_INET) return ntohs(reinterpret_cast<sockaddr_in*>(&place)->sin_port);
  if (place.ss_family == AF_INET6) return ntohs(reinterpret_cast<sockaddr_in6*>(&place)->sin6_port);
  return 0;
}

}  // namespace

void hang_up(int port) {
  std::error_code none;
  for (const auto& entry : std::filesystem::directory_iterator("/proc/self/fd", none)) {
    const auto name = entry.path().filename().string();
    int descriptor{};
    const auto* end = name.data() + name.size();
    if (std::from_chars(name.data(), end, descriptor).ec != std::errc{}) continue;
    if (own_port(descriptor) == port) ::shutdown(descriptor, SHUT_RD);
  }
}

}  // namespace wm::service::detail
