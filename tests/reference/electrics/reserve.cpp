// Source:    AC 43.13-1B CHG 1 par. 11-35 (80 % of the generator); Peukert's law, a worked figure
//            of an encyclopaedia (200 Ah at 20 h, exponent 1.2, 20 A: 8.7 h), from memory,
//            unconfirmed; ampere-hours by hand.
// Tolerance: half a unit of the last printed digit; exact by hand.
#include "electrics/reserve.hpp"

#include <gtest/gtest.h>

#include "support/reference_case.hpp"
#include "unit/electrics/support.hpp"

namespace {

using namespace wm;
using namespace wm::electrics;
using namespace wm::electrics::testing_support;

ReserveInput plain(const char* capacity, const char* amps) {
  ReserveInput in;
  in.capacity = typed<quantity::Charge>(capacity);
  in.age = {1.0};
  in.noticed_after = typed<quantity::Duration>("0 min");
  in.loads = {{"all", current(amps), {1.0}, true, {}}};
  return in;
}

TEST(ReserveCases, EightyPerCentOfTheGenerator) {
  auto in = plain("24 Ah", "32 A");
  in.generator = current("40 A");
  const auto at = battery_reserve(in, {});
  test::check({"battery-reserve", "32 A of 40 A", "AC 43.13-1B par. 11-35: 80 %", "80 %", 80,
               at->of_generator->si * 100, 1e-9, "exact"});
  EXPECT_EQ(at->generator, Against::within);
  in.loads[0].current = current("32.1 A");
  EXPECT_EQ(battery_reserve(in, {})->generator, Against::over);
}

TEST(ReserveCases, PeukertFromMemory) {
  auto in = plain("200 Ah", "20 A");
  in.peukert = 1.2;
  in.rated_time = typed<quantity::Duration>("20 h");
  test::check({"battery-reserve", "200 Ah at 20 h, exponent 1.2, 20 A",
               "Peukert's law, worked figure of an encyclopaedia (from memory, unconfirmed)",
               "8.7 h", 8.7, battery_reserve(in, {})->endurance.si / 3600, 0.05,
               "half a unit of the last printed digit"});
}

TEST(ReserveCases, AmpereHoursByHand) {
  // 24 Ah x 80 % = 19.2 Ah; 5 min at 14 A take 1.1667 Ah; the rest at 6 A lasts 180.333 min.
  auto in = plain("24 Ah", "6 A");
  in.age = {0.8};
  in.noticed_after = typed<quantity::Duration>("5 min");
  in.loads.push_back({"light", current("8 A"), {1.0}, false, {}});
  test::check({"battery-reserve", "24 Ah at 80 %, 14 A for 5 min, then 6 A", "by hand",
               "185.33 min", 5 + 18.033333333 / 6 * 60, battery_reserve(in, {})->endurance.si / 60,
               1e-6, "exact"});
}

}  // namespace
