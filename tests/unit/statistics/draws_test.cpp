#include "statistics/draws.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <vector>

#include "statistics/detail/portable_math.hpp"
#include "statistics/robust.hpp"
#include "statistics/summary.hpp"

namespace wm::statistics {
namespace {

constexpr int k_many = 100'000;

template <class Draw>
std::vector<double> many(Draw draw) {
  std::vector<double> out(k_many);
  for (double& v : out) v = draw();
  return out;
}

/// Mean and standard deviation within four standard errors (seeds are fixed: no flicker).
void expect_moments(const std::vector<double>& values, double mean_expected, double sd_expected,
                    double sd_error_factor = 1.0) {
  const double error = sd_expected / std::sqrt(k_many);
  EXPECT_NEAR(mean(values), mean_expected, 4.0 * error);
  EXPECT_NEAR(*standard_deviation(values), sd_expected, 4.0 * error * sd_error_factor);
}

TEST(PortableMath, AgreesWithTheLibraryToTwoUlp) {
  for (double x = 1e-12; x < 1e12; x *= 1.37) {
    const double expected = std::log(x);
    EXPECT_NEAR(detail::portable_log(x), expected, 4.5e-16 * std::abs(expected) + 1e-17) << x;
  }
  for (double x = -600.0; x < 600.0; x += 0.717) {
    const double expected = std::exp(x);
    EXPECT_NEAR(detail::portable_exp(x), expected, 4.5e-16 * expected) << x;
  }
  EXPECT_EQ(detail::portable_log(1.0), 0.0);
  EXPECT_EQ(detail::portable_exp(0.0), 1.0);
}

TEST(Draws, TheEngineIsTheOneOfTheStandard) {
  // ISO C++ [rand.predef]: the 10000th value of a default-seeded mt19937_64.
  std::mt19937_64 engine;
  engine.discard(9999);
  EXPECT_EQ(engine(), 9981545732273789042ULL);
}

TEST(Draws, EqualSeedsGiveEqualNumbersAndOthersDoNot) {
  Draws a(7);
  Draws b(7);
  Draws c(8);
  bool differs = false;
  for (int i = 0; i < 100; ++i) {
    const double first = a.normal();
    EXPECT_EQ(first, b.normal());
    differs = differs || first != c.normal();
  }
  EXPECT_TRUE(differs);
}

TEST(Draws, DigitsAreFrozen) {
  // Bit for bit, so that a change of the method or a machine that differs is seen.
  Draws d(2026);
  const std::array<double, 5> got{d.uniform(), d.normal(), d.gamma(0.5, 1.0), d.arcsine(-1, 1),
                                  d.student_t(3.0)};
  const std::array<double, 5> frozen{0x1.451db4ff71ddcp-2, 0x1.1395439f70071p+1,
                                     0x1.fc49b5e397046p-5, -0x1.6162637d5d049p-4,
                                     0x1.17522fcd22e6bp-5};
  for (std::size_t i = 0; i < got.size(); ++i) EXPECT_EQ(got[i], frozen[i]) << i;
}

TEST(Draws, HaveTheMomentsOfTheirLaw) {
  Draws d(1);
  expect_moments(many([&] { return d.uniform(2.0, 6.0); }), 4.0, 4.0 / std::sqrt(12.0));
  expect_moments(many([&] { return d.normal(10.0, 3.0); }), 10.0, 3.0);
  expect_moments(many([&] { return d.triangular(-1.0, 1.0); }), 0.0, 1.0 / std::sqrt(6.0));
  expect_moments(many([&] { return d.arcsine(-1.0, 1.0); }), 0.0, 1.0 / std::sqrt(2.0));
  expect_moments(many([&] { return d.gamma(4.0, 2.0); }), 2.0, 1.0, 1.3);
  expect_moments(many([&] { return d.gamma(0.3, 1.0); }), 0.3, std::sqrt(0.3), 3.5);
  expect_moments(many([&] { return d.exponential(0.5); }), 2.0, 2.0, 1.5);
  expect_moments(many([&] { return d.student_t(12.0); }), 0.0, std::sqrt(1.2), 1.5);
}

TEST(Draws, StayInsideTheirBounds) {
  Draws d(3);
  for (int i = 0; i < 10'000; ++i) {
    const double u = d.uniform();
    ASSERT_TRUE(u >= 0.0 && u < 1.0);
    ASSERT_LE(std::abs(d.arcsine(-1.0, 1.0)), 1.0);
    ASSERT_LE(std::abs(d.triangular(-1.0, 1.0)), 1.0);
    ASSERT_GE(d.gamma(0.01, 1.0), 0.0);
    ASSERT_LT(d.index(7), 7u);
  }
}

TEST(Draws, IndexIsEven) {
  Draws d(5);
  std::array<int, 6> seen{};
  for (int i = 0; i < 60'000; ++i) ++seen[d.index(6)];
  for (const int n : seen) EXPECT_NEAR(n, 10'000, 400);  // 4 standard errors: 365
}

}  // namespace
}  // namespace wm::statistics
