// The example of docs/adding-a-calculation.md, compiled and run; the page shows this text.
#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "calculation/catalogue.hpp"
#include "calculation/json_face.hpp"

namespace wm::example {

using quantity::Entered;
using quantity::feet;
using quantity::Length;
using quantity::Temperature;

struct WarmRunInput {
  Entered<Length> run_at_20;
  Entered<Temperature> conductor;
};
struct WarmRunAnswer {
  Length run;
};
/// Longest run once the conductor is warm: L2 = L1 * 254.5 / (234.5 + T2), T2 in degC.
/// @return  not_applicable below 20 degC: the rule is there to shorten.
/// @source  AC 43.13-1B CHG 1, par. 11-66, item (4), page 11-22.
Checked<WarmRunAnswer> warm_run(const WarmRunInput& in, const describe::Context& context);
std::string_view describe(describe::Fields<WarmRunInput>& f);
std::string_view describe(describe::Fields<WarmRunAnswer>& f);

Checked<WarmRunAnswer> warm_run(const WarmRunInput& in, const describe::Context& /*context*/) {
  const double t2 = in.conductor.value.si - 273.15;
  if (t2 < 20) {
    return Fail(Problems{{Kind::not_applicable, "conductor", "colder than 20 degC",
                          "20 degC or more", "60 degC", "use the run at 20 degC", ""}});
  }
  return WarmRunAnswer{in.run_at_20.value * (254.5 / (234.5 + t2))};
}
std::string_view describe(describe::Fields<WarmRunInput>& f) {
  f.has<&WarmRunInput::run_at_20>("run_at_20", "Run at 20 degC").needed("20 ft").above(feet(0));
  f.has<&WarmRunInput::conductor>("conductor", "Temperature of the conductor").needed("60 degC");
  return "warm-run-input";
}
std::string_view describe(describe::Fields<WarmRunAnswer>& f) {
  f.has<&WarmRunAnswer::run>("run", "Run allowed when warm");
  return "warm-run-answer";
}

void declarations(describe::Catalogue& catalogue) {
  catalogue.add(describe::calculation<&warm_run>(
      "warm-run", "Longest cable run once the conductor is warm",
      {describe::read("AC 43.13-1B CHG 1", "par. 11-66, item (4)")}, {describe::caution::defer}));
}

}  // namespace wm::example

namespace {

using namespace wm;

describe::Catalogue made() {
  describe::Catalogue catalogue;
  example::declarations(catalogue);
  return catalogue;
}

TEST(AddingACalculation, TheExampleIsWhole) {
  EXPECT_EQ(calculation::complaints(made(), std::vector<std::string>{"warm-run"}),
            std::vector<std::string>{});
}

// By hand: at 20 degC the factor is 254.5 / 254.5; at 60 degC 20 ft * 254.5 / 294.5 = 17.284 ft.
TEST(AddingACalculation, TheExampleRuns) {
  const auto catalogue = made();
  const auto run = [&](std::string_view input) {
    return calculation::call_json(*catalogue.find("warm-run"), input, {});
  };
  const auto cold = run(R"({"run_at_20":"20 ft","conductor":"10 degC"})");
  ASSERT_FALSE(cold);
  EXPECT_EQ(cold.error()[0].path, "conductor");
  const auto same = run(R"({"run_at_20":"20 ft","conductor":"20 degC","units":{"run":"ft"}})");
  ASSERT_TRUE(same);
  EXPECT_NE(same->find(R"("value":20.0,"unit":"ft")"), std::string::npos) << *same;
  const auto warm = run(R"({"run_at_20":"20 ft","conductor":"60 degC","units":{"run":"ft"}})");
  ASSERT_TRUE(warm);
  EXPECT_NE(warm->find(R"("value":17.28)"), std::string::npos) << *warm;
}

/// Lines without their indentation.
std::vector<std::string> lines_of(std::istream& in) {
  std::vector<std::string> out;
  for (std::string line; std::getline(in, line);) {
    const auto start = line.find_first_not_of(' ');
    out.push_back(start == std::string::npos ? "" : line.substr(start));
  }
  return out;
}

TEST(AddingACalculation, ThePageShowsThisTextInFortyLines) {
  const std::string root = WM_SOURCE_DIR;
  std::ifstream page_file(root + "/docs/adding-a-calculation.md");
  std::ifstream own_file(root + "/tests/unit/calculation/adding_a_calculation_test.cpp");
  const auto page = lines_of(page_file);
  const auto own = lines_of(own_file);
  std::size_t blocks = 0;
  std::size_t code_lines = 0;
  for (auto at = page.begin(); at != page.end(); ++at) {
    if (*at != "```cpp") continue;
    const auto end = std::find(at, page.end(), "```");
    ++blocks;
    code_lines += static_cast<std::size_t>(end - at) - 1;
    EXPECT_NE(std::search(own.begin(), own.end(), at + 1, end), own.end())
        << "not the text of the test: the block that starts with " << *(at + 1);
    at = end;
  }
  EXPECT_EQ(blocks, 3U);
  EXPECT_LE(code_lines, 40U);
}

}  // namespace
