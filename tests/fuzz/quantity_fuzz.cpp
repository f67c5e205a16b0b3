// Every parser of the room on arbitrary bytes: an answer or a problem with words, never a crash,
// and never a value that is not finite.
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "quantity/date.hpp"
#include "quantity/text.hpp"

namespace {

using namespace wm::quantity;

void must(bool truth) {
  if (!truth) std::abort();
}

void check_parsed(const Parsed& p, KindOf kind) {
  must(std::isfinite(p.si) && std::isfinite(p.resolution_si) && p.resolution_si >= 0);
  const Unit* unit = find_unit(kind, p.unit);
  must(unit != nullptr);
  // What was understood can be shown, and what is shown can be read.
  must(static_cast<bool>(parse(print(p.si, *unit, p.resolution_si), kind)));
  must(!print(p.si, kind, UnitSet::si, p.resolution_si).empty());
}

void check_kind(std::string_view text, KindOf kind) {
  if (const auto read = parse(text, kind)) {
    check_parsed(*read, kind);
  } else {
    must(!read.error().what.empty() && !read.error().example.empty());
  }
  const auto measured = parse_measured(text, kind);
  if (!measured) return;
  check_parsed(measured->value, kind);
  if (measured->expanded) {
    must(std::isfinite(measured->expanded->si) && measured->expanded->si > 0);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  for (const KindInfo& k : all_kinds()) check_kind(text, k.kind);
  if (const auto number = parse_number(text)) must(std::isfinite(*number));
  if (const auto date = parse_date(text)) must(*parse_date(print_date(*date)) == *date);
  if (const auto at = parse_instant(text)) must(std::isfinite(*at) && !print_instant(*at).empty());
  return 0;
}
