#include "evidence/meter_uncertainty.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace wm::evidence {
namespace {

using describe::AnyQuantity;
using quantity::per_cent;

AnyQuantity value(const char* text) {
  const auto v = describe::read_any(text);
  EXPECT_TRUE(v) << text;
  return *v;
}
MeterRange meter(double percent, std::int64_t counts) {
  MeterRange m;
  m.of_reading = per_cent(percent);
  m.counts = counts;
  return m;
}
bool mentions(const std::vector<std::string>& lines, const std::string& part) {
  return std::any_of(lines.begin(), lines.end(),
                     [&](const std::string& l) { return l.find(part) != std::string::npos; });
}
Problems problems(const MeterUncertaintyInput& in) {
  const auto got = meter_uncertainty(in, {});
  EXPECT_FALSE(got);
  return got ? Problems{} : got.error();
}

TEST(MeterUncertainty, TheDigitsTypedAreTheResolution) {
  MeterUncertaintyInput in;
  in.reading = value("12.34 V");
  in.meter = meter(0.5, 2);
  const auto got = meter_uncertainty(in, {});
  ASSERT_TRUE(got);
  EXPECT_NEAR(got->worst_case.si, 0.0817, 1e-12);
  EXPECT_EQ(got->in_words, "12.340 V +- 0.095 V");
  EXPECT_EQ(got->coverage_factor, 2.0);
  EXPECT_FALSE(got->degrees_of_freedom.has_value());
  EXPECT_TRUE(mentions(got->working, "0.5 % of 12.34 + 2 x 0.01 V = +-0.0817"));
  EXPECT_TRUE(mentions(got->working, "U = 2 x 0.0472578 = 0.0945155 V"));
}

TEST(MeterUncertainty, PerCentOfDegreesShownNotOfKelvin) {
  MeterUncertaintyInput in;
  in.reading = value("200 degF");
  in.meter = meter(1.0, 0);
  in.meter->resolution = value("1 degF");  // a step, not the temperature 1 degF
  const auto got = meter_uncertainty(in, {});
  ASSERT_TRUE(got);
  EXPECT_EQ(got->worst_case.kind, quantity::KindOf::temperature_difference);
  EXPECT_NEAR(got->worst_case.si, 2.0 / 1.8, 1e-9);
  EXPECT_NEAR(got->budget[1].standard_uncertainty.si, 1.0 / 1.8 / std::sqrt(12.0), 1e-9);
}

TEST(MeterUncertainty, PointerGauge) {
  MeterUncertaintyInput in;
  in.reading = value("40 psi");
  in.meter = MeterRange{};
  in.meter->full_scale = value("100 psi");
  in.meter->resolution = value("1 psi");
  in.meter->of_full_scale = per_cent(2);
  const auto got = meter_uncertainty(in, {});
  ASSERT_TRUE(got);
  EXPECT_NEAR(got->worst_case.si, 2.0 * quantity::psi_gauge(1).si, 1e-6);
  in.meter->full_scale.reset();
  EXPECT_EQ(problems(in).front().path, "meter/full_scale");
}

TEST(MeterUncertainty, StatedWithTheReading) {
  MeterUncertaintyInput in;
  in.reading = value("85.2 ohm +- 0.7 ohm");
  in.meter = meter(5.0, 5);
  const auto got = meter_uncertainty(in, {});
  ASSERT_TRUE(got);
  EXPECT_NEAR(got->expanded_uncertainty.si, 0.7, 1e-12);
  EXPECT_TRUE(mentions(got->working, "not the meter's accuracy"));
}

TEST(MeterUncertainty, NoAccuracyIsSaid) {
  MeterUncertaintyInput in;
  in.reading = value("85.2 ohm");
  const auto got = meter_uncertainty(in, {});
  ASSERT_TRUE(got);
  EXPECT_FALSE(got->accuracy_known);
  EXPECT_TRUE(mentions(got->working, "accuracy was not given"));
}

TEST(MeterUncertainty, RepeatsAddTheirScatterAndStudentsT) {
  MeterUncertaintyInput in;
  in.reading = value("12.3 V");
  in.repeats = {value("12.5 V"), value("12.4 V")};
  in.coverage = CoverageRule::t_as_computed;
  const auto got = meter_uncertainty(in, {});
  ASSERT_TRUE(got);
  EXPECT_NEAR(got->value.si, 12.4, 1e-12);
  ASSERT_TRUE(got->degrees_of_freedom.has_value());
  EXPECT_GT(*got->degrees_of_freedom, 2.0);
  EXPECT_GT(got->coverage_factor, 2.0);
}

TEST(MeterUncertainty, TestLeads) {
  MeterUncertaintyInput in;
  in.reading = value("1.50 ohm");
  in.leads = TestLeads::not_nulled;
  in.lead_resistance = value("0.30 ohm +- 0.02 ohm");
  const auto off = meter_uncertainty(in, {});
  ASSERT_TRUE(off);
  EXPECT_NEAR(off->value.si, 1.2, 1e-12);
  EXPECT_TRUE(mentions(off->working, "1.5 - 0.3 = 1.2 ohm"));
  in.lead_resistance = value("0.30 ohm");
  EXPECT_NEAR(meter_uncertainty(in, {})->worst_case.si, 0.015, 1e-12);
  in.lead_resistance.reset();
  in.leads = TestLeads::nulled;
  const auto nulled = meter_uncertainty(in, {});
  EXPECT_EQ(nulled->budget.size(), 2u);
  EXPECT_NEAR(nulled->value.si, 1.5, 1e-12);
  in.lead_resistance = value("0.30 ohm");  // nulled and taken off as well
  EXPECT_EQ(problems(in).front().kind, Kind::conflict);
}

TEST(MeterUncertainty, EveryErrorAtOnceWithItsPath) {
  MeterUncertaintyInput in;
  in.reading = value("12.34 V");
  in.repeats = {value("12.34 V"), value("3 ohm")};
  in.meter = meter(0.5, 2);
  in.meter->full_scale = value("60 psi");
  in.meter->resolution = value("1 in");
  const auto p = problems(in);
  ASSERT_EQ(p.size(), 3u);
  EXPECT_EQ(p[0].path, "repeats/1");
  EXPECT_EQ(p[0].kind, Kind::wrong_dimension);
  EXPECT_EQ(p[1].path, "meter/full_scale");
  EXPECT_EQ(p[2].path, "meter/resolution");
}

TEST(MeterUncertainty, Refusals) {
  MeterUncertaintyInput in;
  in.reading = value("12.34 V");
  in.meter = meter(0.5, 2);
  in.meter->full_scale = value("6 V");
  EXPECT_EQ(problems(in).front().path, "reading");
  in.meter = meter(0.5, -2);
  EXPECT_EQ(problems(in).front().path, "meter");
  in.meter = meter(0.5, 2);
  in.meter->resolution = value("0 V");
  EXPECT_EQ(problems(in).front().path, "meter/resolution");
  in.meter.reset();
  in.coverage = CoverageRule::t_as_computed;
  in.level = quantity::ratio(0.1);
  EXPECT_EQ(problems(in).front().path, "level");
}

}  // namespace
}  // namespace wm::evidence
