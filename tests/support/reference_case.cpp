#include "support/reference_case.hpp"

#include <fmt/core.h>
#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <fstream>

namespace wm::test {
namespace {

std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    out += (c == '\n') ? ' ' : c;
  }
  return out;
}

/// One JSON line a case, in $WM_VALIDATION_DIR; tools/validation.mjs makes the table.
void write_row(const std::string& calculation, const std::string& id, const std::string& source,
               const std::string& expected, const std::string& got, const std::string& difference,
               const std::string& tolerance, const std::string& why, bool passed) {
  const char* dir = std::getenv("WM_VALIDATION_DIR");
  if (dir == nullptr) return;
  const auto* info = testing::UnitTest::GetInstance()->current_test_info();
  std::ofstream out(fmt::format("{}/{}.{}.jsonl", dir,
                                info->test_suite_name()[0] == 0 ? "x" : "rows", calculation),
                    std::ios::app);
  out << fmt::format(
             R"({{"calculation":"{}","id":"{}","source":"{}","expected":"{}","got":"{}","difference":"{}","tolerance":"{}","why":"{}","passed":{}}})",
             escaped(calculation), escaped(id), escaped(source), escaped(expected), escaped(got),
             escaped(difference), escaped(tolerance), escaped(why), passed)
      << '\n';
}

}  // namespace

void check(const ReferenceCase& c) {
  const double difference = c.got - c.expected_value;
  EXPECT_NEAR(c.got, c.expected_value, c.tolerance)
      << c.calculation << " " << c.id << " (" << c.source << ")";
  write_row(c.calculation, c.id, c.source, c.expected, fmt::format("{:.7g}", c.got),
            fmt::format("{:.1e}", std::abs(difference)), fmt::format("{:.2g}", c.tolerance), c.why,
            std::abs(difference) <= c.tolerance);
}

void check_text(const std::string& calculation, const std::string& id, const std::string& source,
                const std::string& expected, const std::string& got) {
  EXPECT_EQ(got, expected) << calculation << " " << id << " (" << source << ")";
  write_row(calculation, id, source, expected, got, got == expected ? "0" : "differs", "exact", "",
            got == expected);
}

}  // namespace wm::test
