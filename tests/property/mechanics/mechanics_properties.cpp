// Laws of levers and of moments, over seeded inputs.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <cmath>

#include "mechanics/balance.hpp"
#include "mechanics/torque.hpp"
#include "statistics/draws.hpp"

namespace {

using namespace wm;
using namespace wm::mechanics;
using quantity::Entered;

// Moments about the grip: the hand's force times its lever is the same for scale and nut.
TEST(TorqueLaws, TheHandPullsTheSameForce) {
  statistics::Draws draws(1);
  for (int i = 0; i < 1000; ++i) {
    const double lever = draws.uniform(0.1, 1.0);
    const double extension = draws.uniform(0, lever * 0.7);
    const double angle = draws.uniform(0, 3.14159);
    const double nut = draws.uniform(1, 200);
    const double setting = nut * *extension_factor({lever}, {extension}, {angle});
    const double force = setting / lever;
    ASSERT_NEAR(force * (lever + extension * std::cos(angle)), nut, 1e-12 * nut);
  }
}

TEST(TorqueLaws, UnitsDoNotMatterAndMoreAngleMeansMoreSetting) {
  statistics::Draws draws(2);
  for (int i = 0; i < 300; ++i) {
    TorqueSettingInput a;
    a.wanted = Entered<quantity::Torque>{{draws.uniform(2, 100)}, 0.1, {}};
    a.lever = Entered<quantity::Length>{{draws.uniform(0.2, 0.8)}, 0.01, {}};
    a.extension = Entered<quantity::Length>{{draws.uniform(0.01, 0.1)}, 0.01, {}};
    const double plain = torque_setting(a, {})->setting.value.si;
    auto b = a;
    b.wanted->text = fmt::format("{} in-lb", a.wanted->value.si / quantity::inch_pounds(1).si);
    b.lever->text = fmt::format("{} ft", a.lever->value.si / 0.3048);
    ASSERT_EQ(torque_setting(b, {})->setting.value.si, plain);
    double before = plain;
    for (const double degrees : {20.0, 60.0, 90.0, 140.0}) {
      a.angle = Entered<quantity::Angle>{quantity::degrees(degrees), 0.01, {}};
      const double now = torque_setting(a, {})->setting.value.si;
      ASSERT_GT(now, before);
      before = now;
    }
  }
}

MassBalanceInput random_aeroplane(statistics::Draws& draws) {
  MassBalanceInput a;
  const auto mass = [&](double most) { return EnteredMass{{draws.uniform(1, most)}, 0.1, {}}; };
  const auto arm = [&](double far) { return EnteredArm{{draws.uniform(-far, far)}, 0.01, {}}; };
  a.empty_mass = {{draws.uniform(300, 900)}, 0.1, {}};
  a.empty_arm = arm(0.5);
  for (int i = 0; i < 5; ++i) {
    Station s{fmt::format("s{}", i), arm(2), {}, mass(120), false};
    if (draws.uniform() < 0.4) s.least = EnteredMass{{s.most.value.si * draws.uniform()}, 0.1, {}};
    a.stations.push_back(s);
  }
  a.forward_limit = EnteredArm{{a.empty_arm.value.si - 0.2}, 0.01, {}};
  a.aft_limit = EnteredArm{{a.empty_arm.value.si + 0.2}, 0.01, {}};
  a.most_mass = EnteredMass{{a.empty_mass.value.si + draws.uniform(300, 600)}, 0.1, {}};
  return a;
}

TEST(BalanceLaws, ToAndFroChangesNothing) {
  statistics::Draws draws(3);
  for (int i = 0; i < 300; ++i) {
    auto a = random_aeroplane(draws);
    const EnteredMass m{{draws.uniform(1, 20)}, 0.1, {}};
    const EnteredArm here{{draws.uniform(-1, 1)}, 0.01, {}};
    const EnteredArm there{{draws.uniform(-1, 1)}, 0.01, {}};
    a.changes = {{"x", MassChangeKind::moved, m, here, there},
                 {"x", MassChangeKind::moved, m, there, here},
                 {"y", MassChangeKind::added, m, here, {}},
                 {"y", MassChangeKind::removed, m, here, {}}};
    const auto got = mass_balance(a, {});
    ASSERT_TRUE(got);
    ASSERT_NEAR(got->empty_arm.value.si, a.empty_arm.value.si, 1e-12);
    ASSERT_NEAR(got->empty_mass.value.si, a.empty_mass.value.si, 1e-9);
  }
}

// Second way: try loadings at random; none that keeps the mass may pull farther past a limit
// than the extreme found.
TEST(BalanceLaws, NoLoadingPullsFartherThanTheExtremes) {
  statistics::Draws draws(4);
  for (int i = 0; i < 200; ++i) {
    const auto a = random_aeroplane(draws);
    const auto got = mass_balance(a, {});
    ASSERT_TRUE(got);
    const auto pull = [&](double mass, double arm, double limit) { return mass * (arm - limit); };
    const auto& f = got->loadings[0];
    const auto& r = got->loadings[1];
    const double forward = pull(f.mass.value.si, f.arm.value.si, a.forward_limit->value.si);
    const double aft = pull(r.mass.value.si, r.arm.value.si, a.aft_limit->value.si);
    for (int k = 0; k < 200; ++k) {
      double mass = a.empty_mass.value.si;
      double moment = mass * a.empty_arm.value.si;
      for (const Station& s : a.stations) {
        const double least = s.least ? s.least->value.si : 0.0;
        const double load = draws.uniform() < 0.5 ? least : draws.uniform(least, s.most.value.si);
        mass += load;
        moment += load * s.arm.value.si;
      }
      if (mass > a.most_mass->value.si) continue;
      ASSERT_GE(pull(mass, moment / mass, a.forward_limit->value.si), forward - 1e-9);
      ASSERT_LE(pull(mass, moment / mass, a.aft_limit->value.si), aft + 1e-9);
    }
  }
}

}  // namespace
