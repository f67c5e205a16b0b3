#pragma once
/// Reference cases: a check against something outside the project that also
/// writes its row of docs/validation.md.
#include <string>

namespace wm::test {

struct ReferenceCase {
  std::string calculation;  ///< catalogue name, e.g. "torque-setting"; or room for bare functions
  std::string id;           ///< the case, e.g. "T1 in-line extension"
  std::string source;       ///< document, edition, table or page
  std::string expected;     ///< as printed in the source, with unit
  double expected_value{};
  double got{};
  double tolerance{};
  std::string why;  ///< why the tolerance is what it is
};

/// EXPECT_NEAR, and a row for docs/validation.md.
void check(const ReferenceCase& c);

/// For answers that are words or dates: equality, and a row.
void check_text(const std::string& calculation, const std::string& id, const std::string& source,
                const std::string& expected, const std::string& got);

}  // namespace wm::test
