// A value with the expanded uncertainty beside it.
#include <gtest/gtest.h>

#include "quantity/text.hpp"

namespace wm::quantity {
namespace {

using enum KindOf;
constexpr double k_psi = 0.45359237 * 9.80665 / (0.0254 * 0.0254);

struct Case {
  const char* text;
  KindOf kind;
  double si;
  double expanded_si;
};

class MeasuredText : public testing::TestWithParam<Case> {};

TEST_P(MeasuredText, IsUnderstood) {
  const Case& c = GetParam();
  const auto got = parse_measured(c.text, c.kind);
  ASSERT_TRUE(got) << c.text << ": " << got.error().what;
  EXPECT_DOUBLE_EQ(got->value.si, c.si) << c.text;
  ASSERT_TRUE(got->expanded) << c.text;
  EXPECT_DOUBLE_EQ(got->expanded->si, c.expanded_si) << c.text;
}

INSTANTIATE_TEST_SUITE_P(
    Forms, MeasuredText,
    testing::Values(Case{"85.2 ohm +- 0.7 ohm", resistance, 85.2, 0.7},
                    Case{"85.2 +- 0.7 ohm", resistance, 85.2, 0.7},
                    Case{"85.2+-0.7ohm", resistance, 85.2, 0.7},
                    Case{"85.2 ohm +/- 0.7 ohm", resistance, 85.2, 0.7},
                    Case{"85.2 ohm \u00b1 0.7 ohm", resistance, 85.2, 0.7},
                    Case{"(85.2 \u00b1 0.7) \u03a9", resistance, 85.2, 0.7},
                    Case{"15.6 kohm +- 120 ohm", resistance, 15600, 120},
                    Case{"85.2 ohm \u00b1 1 %", resistance, 85.2, 0.852},
                    Case{"-50 mV +- 2%", voltage, -0.05, 0.001},
                    Case{"38 +- 1/8 in", length, 38 * 0.0254, 0.0254 / 8},
                    Case{"3 ft 4 in +- 1/4 in", length, 40 * 0.0254, 0.0254 / 4},
                    Case{"70 +- 2 %", fraction, 0.70, 0.02},
                    Case{"70 % +- 2 %", fraction, 0.70, 0.02},
                    Case{"15 degC +- 2 degC", temperature, 288.15, 2},
                    Case{"15 +- 2 degC", temperature, 288.15, 2},
                    Case{"15 degC +- 1.8 degF", temperature, 288.15, 1},
                    Case{"28 psi +- 0.5 psi", pressure_gauge, 28 * k_psi, 0.5 * k_psi},
                    Case{"28 psig +- 0.5 psig", pressure_gauge, 28 * k_psi, 0.5 * k_psi},
                    Case{"28 +- 0.5 psia", pressure_absolute, 28 * k_psi, 0.5 * k_psi}));

TEST(MeasuredText, WithoutUncertaintyHasNone) {
  const auto got = parse_measured("85.2 ohm", resistance);
  ASSERT_TRUE(got);
  EXPECT_FALSE(got->expanded);
}

struct Bad {
  const char* text;
  KindOf kind;
  Kind problem;
  const char* what;
};

class MeasuredRefused : public testing::TestWithParam<Bad> {};

TEST_P(MeasuredRefused, WithAReason) {
  const Bad& c = GetParam();
  const auto got = parse_measured(c.text, c.kind);
  ASSERT_FALSE(got) << c.text;
  EXPECT_EQ(got.error().kind, c.problem);
  EXPECT_EQ(got.error().what, c.what);
}

INSTANTIATE_TEST_SUITE_P(
    Forms, MeasuredRefused,
    testing::Values(
        Bad{"85.2 ohm +- 0.7", resistance, Kind::bad_text,
            "`0.7` has no unit; a resistance is needed, e.g. `85.2 ohm`"},
        Bad{"85.2 +- 1 %", resistance, Kind::bad_text,
            "`85.2` has no unit; a resistance is needed, e.g. `85.2 ohm`"},
        Bad{"85.2 +- 0.7", resistance, Kind::bad_text,
            "`85.2` has no unit; a resistance is needed, e.g. `85.2 ohm`"},
        Bad{"85.2 ohm +- 0.7 V", resistance, Kind::wrong_dimension,
            "`85.2 ohm +- 0.7 V` is a voltage, a resistance is needed"},
        Bad{"85.2 ohm +- -0.7 ohm", resistance, Kind::bad_text,
            "`85.2 ohm +- -0.7 ohm`: an uncertainty has no sign of its own"},
        Bad{"85.2 ohm +- 0 ohm", resistance, Kind::out_of_bounds,
            "`85.2 ohm +- 0 ohm`: an uncertainty must be more than zero; leave it out where it is "
            "not known"},
        Bad{"85.2 ohm +- 1 ohm +- 2 ohm", resistance, Kind::bad_text,
            "`85.2 ohm +- 1 ohm +- 2 ohm`: only one +- may stand in a value"},
        Bad{"+- 1 ohm", resistance, Kind::bad_text, "`+- 1 ohm`: a value must stand before +-"},
        Bad{"85.2 ohm +-", resistance, Kind::bad_text,
            "`85.2 ohm +-`: an uncertainty must follow +-"},
        Bad{"15 degC +- 1 %", temperature, Kind::bad_text,
            "`15 degC +- 1 %`: a temperature has no uncertainty in per cent; write it in degrees"},
        Bad{"85,2 ohm +- 0,7 ohm", resistance, Kind::bad_text,
            "`85,2 ohm +- 0,7 ohm` has a comma: write 85.2, not 85,2"}));

}  // namespace
}  // namespace wm::quantity
