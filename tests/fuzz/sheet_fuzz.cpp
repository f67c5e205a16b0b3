// Any bytes as an aircraft sheet: a value or problems, never a crash; canonical text is stable.
#include <cstdlib>

#include "calculation/json_face.hpp"
#include "calculation/toml_face.hpp"
#include "unit/calculation/sample.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace wm;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto& type = describe::type_of<sample::Everything>();
  sample::Everything value;
  if (!calculation::read_toml(text, type, &value).empty()) return 0;
  const auto sheet = calculation::write_toml(type, &value);
  sample::Everything again;
  if (!calculation::read_toml(sheet, type, &again).empty()) std::abort();
  if (calculation::write_toml(type, &again) != sheet) std::abort();
  return 0;
}
