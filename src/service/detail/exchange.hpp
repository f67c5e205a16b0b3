#pragma once
/// A question and its answer, as far from the wire as the routes need to be.

#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wm::service::detail {

struct Ask {
  std::string path;  ///< decoded
  std::string body;
  std::multimap<std::string, std::string> query;
  /// Value of a header; empty when it is not there.
  std::function<std::string(const char*)> header;
};

struct Answer {
  int status{200};
  std::string type{"application/json"};
  std::string body;
  /// Bytes that live as long as the program, instead of `body`.
  std::string_view fixed;
  std::vector<std::pair<std::string, std::string>> headers;
  /// End the connection: what follows on it must not be taken for another question.
  bool close{};
};

}  // namespace wm::service::detail
