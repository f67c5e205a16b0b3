// Any bytes as JSON, as a payload and as key=value words: a value or problems, never a crash,
// and what was read is written and read back the same.
#include <cstdlib>

#include "calculation/text_face.hpp"
#include "unit/calculation/sample.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace wm;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto& type = describe::type_of<sample::Everything>();
  sample::Everything value;
  if (calculation::read_json(text, type, &value).empty()) {
    const auto payload = calculation::write_payload(type, &value);
    sample::Everything again;
    if (!calculation::read_payload(payload, type, &again).empty()) std::abort();
    if (calculation::write_payload(type, &again) != payload) std::abort();
    (void)calculation::write_json(type, &value);
    (void)calculation::write_text(type, &value);
  }
  sample::Everything loose;
  const auto problems = calculation::read_payload(text, type, &loose);
  (void)calculation::write_problems(problems);
  (void)calculation::problems_text(problems);

  std::vector<std::string_view> words;
  for (std::size_t start = 0; start <= text.size() && words.size() < 64;) {
    const auto end = std::min(text.find('\n', start), text.size());
    words.push_back(text.substr(start, end - start));
    start = end + 1;
  }
  sample::Everything spoken;
  (void)calculation::read_key_values(words, type, &spoken);
  (void)calculation::call_json(sample::per_length_calculation(), text, {});
  return 0;
}
