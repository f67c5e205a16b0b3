// Every refusal, with the words a person sees.
#include <gtest/gtest.h>

#include <string>

#include "quantity/text.hpp"

namespace wm::quantity {
namespace {

using enum KindOf;

struct Case {
  std::string text;
  KindOf kind;
  Kind problem;
  std::string what;
};

class Refused : public testing::TestWithParam<Case> {};

TEST_P(Refused, WithAReasonAndAnExample) {
  const Case& c = GetParam();
  const auto got = parse(c.text, c.kind);
  ASSERT_FALSE(got) << c.text << " gave " << got->si;
  EXPECT_EQ(got.error().kind, c.problem) << got.error().what;
  EXPECT_EQ(got.error().what, c.what);
  EXPECT_FALSE(got.error().expected.empty());
  ASSERT_FALSE(got.error().example.empty());
  EXPECT_TRUE(parse(got.error().example, c.kind)) << got.error().example;
}

INSTANTIATE_TEST_SUITE_P(
    NoUnit, Refused,
    testing::Values(
        Case{"38", length, Kind::bad_text, "`38` has no unit; a length is needed, e.g. `38 in`"},
        Case{"3/8", length, Kind::bad_text, "`3/8` has no unit; a length is needed, e.g. `38 in`"},
        Case{"0.7", fraction, Kind::bad_text,
             "`0.7` has no unit; a fraction is needed, e.g. `70 %`"},
        Case{"3 ft 4", length, Kind::bad_text,
             "`4` has no unit; a length is needed, e.g. `38 in`"}));

INSTANTIATE_TEST_SUITE_P(
    OtherKind, Refused,
    testing::Values(
        Case{"38 psi", length, Kind::wrong_dimension, "`38 psi` is a pressure, a length is needed"},
        Case{"38 in", pressure_gauge, Kind::wrong_dimension,
             "`38 in` is a length, a gauge pressure is needed"},
        Case{"28 psia", pressure_gauge, Kind::wrong_dimension,
             "`28 psia` is an absolute pressure, a gauge pressure is needed"},
        Case{"28 psi abs", pressure_gauge, Kind::wrong_dimension,
             "`28 psi abs` is an absolute pressure, a gauge pressure is needed"},
        Case{"1.9 bara", pressure_gauge, Kind::wrong_dimension,
             "`1.9 bara` is an absolute pressure, a gauge pressure is needed"},
        Case{"28 psig", pressure_absolute, Kind::wrong_dimension,
             "`28 psig` is a gauge pressure, an absolute pressure is needed"},
        Case{"1.9 bar(g)", pressure_absolute, Kind::wrong_dimension,
             "`1.9 bar(g)` is a gauge pressure, an absolute pressure is needed"},
        Case{"28 psig", pressure_difference, Kind::wrong_dimension,
             "`28 psig` is a gauge pressure, a pressure difference is needed"},
        Case{"12 J", torque, Kind::wrong_dimension, "`12 J` is an energy, a torque is needed"},
        Case{"12 Nm", energy, Kind::wrong_dimension, "`12 Nm` is a torque, an energy is needed"},
        Case{"12 Nm", mass_moment, Kind::wrong_dimension,
             "`12 Nm` is a torque, a mass moment is needed"},
        Case{"12 kg-m", torque, Kind::wrong_dimension,
             "`12 kg-m` is a mass moment, a torque is needed"},
        Case{"5 oz", volume, Kind::wrong_dimension, "`5 oz` is a mass, a volume is needed"},
        Case{"5 m", time, Kind::wrong_dimension, "`5 m` is a length, a time is needed"}));

INSTANTIATE_TEST_SUITE_P(
    NoSuchUnit, Refused,
    testing::Values(
        Case{"38 inn", length, Kind::bad_text,
             "`38 inn`: `inn` is not a unit known here; the nearest is `in`"},
        Case{"2 MV", voltage, Kind::bad_text,
             "`2 MV`: `MV` is not a unit known here; the nearest is `mV`"},
        Case{"5 furlong", time, Kind::bad_text,
             "`5 furlong`: `furlong` is not a unit known here; a time may be in h, min, s, day, "
             "ms"},
        Case{"2:30 h", time, Kind::bad_text,
             "`2:30 h`: `:30 h` is not a unit known here; a time may be in h, min, s, day, ms"},
        Case{"5 m m", length, Kind::bad_text,
             "`5 m m`: `m m` is not a unit known here; the nearest is `mm`"}));

INSTANTIATE_TEST_SUITE_P(
    NotANumber, Refused,
    testing::Values(Case{"in", length, Kind::bad_text, "`in` does not start with a number"},
                    Case{"OL", resistance, Kind::bad_text, "`OL` does not start with a number"},
                    Case{"--5 in", length, Kind::bad_text, "`--5 in` does not start with a number"},
                    Case{". in", length, Kind::bad_text, "`. in` does not start with a number"},
                    Case{"nan ohm", resistance, Kind::bad_text,
                         "`nan ohm` is not a number that can be measured"},
                    Case{"-inf ohm", resistance, Kind::bad_text,
                         "`-inf ohm` is not a number that can be measured"},
                    Case{"infinity in", length, Kind::bad_text,
                         "`infinity in` is not a number that can be measured"},
                    Case{"1e999 ohm", resistance, Kind::out_of_bounds,
                         "`1e999 ohm` is beyond any measured number (powers of ten go to 30)"},
                    Case{"1e-31 ohm", resistance, Kind::out_of_bounds,
                         "`1e-31 ohm` is beyond any measured number (powers of ten go to 30)"},
                    Case{"1/0 in", length, Kind::bad_text, "`1/0 in` divides by zero"},
                    Case{"1 9/8 in", length, Kind::bad_text,
                         "`1 9/8 in`: 9/8 beside a whole number must be less than one"},
                    Case{"85 ohm +- 1 ohm", resistance, Kind::bad_text,
                         "`85 ohm +- 1 ohm` has an uncertainty; this field takes a value alone"}));

INSTANTIATE_TEST_SUITE_P(
    Separators, Refused,
    testing::Values(
        Case{"3,5 in", length, Kind::bad_text, "`3,5 in` has a comma: write 3.5, not 3,5"},
        Case{"1,200 mm", length, Kind::bad_text,
             "`1,200 mm` has a comma: write 1.200 if a decimal is meant, 1200 if thousands are"},
        Case{"1,200,000 mm", length, Kind::bad_text,
             "`1,200,000 mm` has a thousands separator: write 1200000, not 1,200,000"},
        Case{"1,200.5 mm", length, Kind::bad_text,
             "`1,200.5 mm` has a thousands separator: write 1200.5, not 1,200.5"},
        Case{"38 in,", length, Kind::bad_text, "`38 in,` has a comma that does not belong there"},
        Case{"0.85,2 mm", length, Kind::bad_text,
             "`0.85,2 mm` has a comma that does not belong there"},
        Case{"1'200 mm", length, Kind::bad_text,
             "`1'200 mm` has a thousands separator: write 1200"},
        Case{"1_200 mm", length, Kind::bad_text,
             "`1_200 mm` has a thousands separator: write 1200"},
        Case{"1 200 mm", length, Kind::bad_text,
             "`1 200 mm`: a unit must follow `1`; write numbers without a gap between the "
             "digits"}));

INSTANTIATE_TEST_SUITE_P(
    Parts, Refused,
    testing::Values(
        Case{"4 in 3 ft", length, Kind::bad_text,
             "`4 in 3 ft`: the larger unit comes first, as in `3 ft 4 in`"},
        Case{"3.5 ft 4 in", length, Kind::bad_text,
             "`3.5 ft 4 in`: only the last part may have a fraction"},
        Case{"3 ft 14 in", length, Kind::bad_text,
             "`3 ft 14 in`: 14 in is 1 ft or more; carry it over"},
        Case{"3 ft 12 in", length, Kind::bad_text,
             "`3 ft 12 in`: 12 in is 1 ft or more; carry it over"},
        Case{"3 ft 4 cm", length, Kind::bad_text,
             "`3 ft 4 cm`: ft and cm do not go together in one value; use one unit"},
        Case{"15 degC 3 degC", temperature, Kind::bad_text,
             "`15 degC 3 degC`: degC and degC do not go together in one value; use one unit"},
        Case{"3 ft -4 in", length, Kind::bad_text,
             "`3 ft -4 in`: a sign may stand only in front"}));

INSTANTIATE_TEST_SUITE_P(
    Physics, Refused,
    testing::Values(Case{"-1 K", temperature, Kind::out_of_bounds, "`-1 K` is below absolute zero"},
                    Case{"-459.68 degF", temperature, Kind::out_of_bounds,
                         "`-459.68 degF` is below absolute zero"},
                    Case{"-0.1 psi", pressure_absolute, Kind::out_of_bounds,
                         "`-0.1 psi` is below zero, which an absolute pressure cannot be"}));

INSTANTIATE_TEST_SUITE_P(
    NotText, Refused,
    testing::Values(
        Case{"", length, Kind::bad_text, "there is nothing here"},
        Case{" \t ", length, Kind::bad_text, "there is nothing here"},
        Case{std::string("38\0in", 5), length, Kind::bad_text,
             "this text has a control character in it"},
        Case{"38\x1b[31m in", length, Kind::bad_text, "this text has a control character in it"},
        Case{"38\u0085in", length, Kind::bad_text, "this text has a control character in it"},
        Case{"38 \xff", length, Kind::bad_text, "this text is not UTF-8"},
        Case{"38 \xc0\xaf", length, Kind::bad_text, "this text is not UTF-8"},
        Case{"38 \xed\xa0\x80", length, Kind::bad_text, "this text is not UTF-8"},
        Case{std::string(121, '1'), length, Kind::bad_text,
             "this text is longer than 120 characters"},
        Case{std::string(100000, '1'), length, Kind::bad_text,
             "this text is longer than 120 characters"}));

TEST(Refusal, SaysHowToGetFromOnePressureToTheOther) {
  EXPECT_EQ(parse("28 psig", pressure_absolute).error().do_next,
            "add the ambient pressure (absolute = gauge + ambient)");
  EXPECT_NE(parse("28 psia", pressure_gauge).error().do_next, "");
  EXPECT_EQ(parse("2:30 h", time).error().do_next, "write 2 h 30 min, not 2:30 h");
}

TEST(Refusal, NamesTheUnitsThereAre) {
  EXPECT_EQ(parse("15 inn", temperature).error().expected,
            "a temperature in one of: degF, degC, K");
}

TEST(Refusal, EveryKindRefusesABareNumberAndAnotherKind) {
  for (const KindInfo& k : all_kinds()) {
    const auto bare = parse("1", k.kind);
    ASSERT_FALSE(bare) << k.name;
    EXPECT_EQ(bare.error().kind, Kind::bad_text) << k.name;
    const auto other = parse(k.kind == voltage ? "1 A" : "1 V", k.kind);
    ASSERT_FALSE(other) << k.name;
    EXPECT_EQ(other.error().kind, Kind::wrong_dimension) << k.name;
  }
}

TEST(ParseNumber, RefusesWhatIsNoPlainDecimal) {
  for (const char* text : {"", "nan", "inf", "-inf", "1e999", "1e-999", "3,5", "1 200", "3.5 in",
                           "0x10", "--1", "+-1", "1e", ".", "-", "1_000"}) {
    const auto got = parse_number(text);
    EXPECT_FALSE(got) << text;
    if (!got) {
      EXPECT_NE(got.error().what, "") << text;
    }
  }
  EXPECT_EQ(parse_number("3,5").error().what, "`3,5` has a comma: write 3.5, not 3,5");
  EXPECT_EQ(parse_number("1e999").error().kind, Kind::out_of_bounds);
}

}  // namespace
}  // namespace wm::quantity
