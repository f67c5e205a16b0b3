#include "service/detail/assets.hpp"

#include <algorithm>
#include <vector>

#include "record/digest.hpp"
#include "service/detail/texts.hpp"
#include "service_assets.inc"

namespace wm::service::detail {
namespace {

constexpr std::string_view k_not_built =
    "<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><title>Witnessmark</title>"
    "<h1>Witnessmark</h1><p>The web page was not built: run ./start in the project's folder. "
    "The command line and the API under /api/ work all the same.</p></html>";

/// The next entry of a comma-separated header, without blanks around it.
std::string_view next_entry(std::string_view& rest) {
  const auto comma = rest.find(',');
  auto entry = rest.substr(0, comma);
  rest = comma == std::string_view::npos ? std::string_view{} : rest.substr(comma + 1);
  while (entry.starts_with(' ')) entry.remove_prefix(1);
  while (entry.ends_with(' ')) entry.remove_suffix(1);
  return entry;
}

std::vector<Asset> embedded() {
  [[maybe_unused]] const auto between = [](const char* from, const char* to) {
    return std::string_view(from, static_cast<std::size_t>(to - from));
  };
  std::vector<Asset> out{WM_ASSETS};
  for (auto& asset : out) asset.tag = "\"" + record::sha256_hex(asset.plain).substr(0, 32) + "\"";
  return out;
}

}  // namespace

std::span<const Asset> assets() {
  static const std::vector<Asset> all = embedded();
  return all;
}

bool takes_gzip(std::string_view accept_encoding) {
  while (!accept_encoding.empty()) {
    const auto entry = next_entry(accept_encoding);
    const auto name = entry.substr(0, entry.find(';'));
    if (name != "gzip" && name != "*") continue;
    const auto weight = entry.find("q=");
    return weight == std::string_view::npos ||
           entry.substr(weight + 2).find_first_not_of("0.") != std::string_view::npos;
  }
  return false;
}

bool has_tag(std::string_view if_none_match, std::string_view tag) {
  while (!if_none_match.empty()) {
    auto entry = next_entry(if_none_match);
    if (entry.starts_with("W/")) entry.remove_prefix(2);
    if (entry == tag || entry == "*") return true;
  }
  return false;
}

Answer serve_asset(const Ask& ask) {
  const auto wanted =
      ask.path == "/" ? std::string_view("index.html") : std::string_view(ask.path).substr(1);
  const auto all = assets();
  Answer answer;
  if (all.empty() && wanted == "index.html") {
    answer.type = "text/html; charset=utf-8";
    answer.fixed = k_not_built;
    answer.headers = {{"Cache-Control", "no-cache"}};
    return answer;
  }
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const Asset& a) { return a.name == wanted; });
  if (found == all.end()) return not_here("there is no page of this name");
  const bool zipped = !found->gzip.empty() && takes_gzip(ask.header("Accept-Encoding"));
  // Two encodings of one content are two entities (RFC 9110, 8.8.3.3; from memory).
  auto tag = found->tag;
  if (zipped) tag.insert(tag.size() - 1, "-gzip");
  answer.type = found->type;
  answer.headers = {
      {"Cache-Control", found->forever ? "public, max-age=31536000, immutable" : "no-cache"},
      {"ETag", tag},
      {"Vary", "Accept-Encoding"}};
  if (has_tag(ask.header("If-None-Match"), tag)) {
    answer.status = 304;
    return answer;
  }
  if (zipped) answer.headers.emplace_back("Content-Encoding", "gzip");
  answer.fixed = zipped ? found->gzip : found->plain;
  return answer;
}

}  // namespace wm::service::detail
