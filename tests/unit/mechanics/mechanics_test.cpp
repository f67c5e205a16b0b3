#include <fmt/core.h>
#include <gtest/gtest.h>

#include "mechanics/balance.hpp"
#include "mechanics/declarations.hpp"
#include "mechanics/torque.hpp"

namespace {

using namespace wm;
using namespace wm::mechanics;

template <class Q>
quantity::Entered<Q> typed(const std::string& text) {
  return *quantity::read<Q>(text);
}
quantity::Entered<quantity::Torque> torque(const std::string& t) {
  return typed<quantity::Torque>(t);
}
bool says(const std::vector<std::string>& lines, const std::string& words) {
  for (const auto& line : lines) {
    if (line.find(words) != std::string::npos) return true;
  }
  return false;
}

class Torque : public testing::Test {
 protected:
  void SetUp() override {
    declare(catalogue);
    context.tables = catalogue.tables();
  }
  describe::Catalogue catalogue;
  describe::Context context;
};

TEST_F(Torque, NamesTheTablesSizesAndCasesThereAre) {
  EXPECT_NE(torque_band(context, "torque-x", "-4", "").error().expected.find("torque-pipe-threads"),
            std::string::npos);
  const auto size = torque_band(context, "torque-hose-nuts", "-7", "steel");
  EXPECT_EQ(size.error().path, "size");
  EXPECT_EQ(size.error().expected, "-2, -3, -4, -5, -6, -8, -10, -12, -16, -20, -24, -32");
  const auto which = torque_band(context, "torque-hose-nuts", "-8", "");
  EXPECT_EQ(which.error().path, "which");
  EXPECT_EQ(which.error().expected, "steel, aluminium");
}

TEST_F(Torque, SaysEverythingThatIsMissing) {
  TorqueSettingInput in;
  in.extension = typed<quantity::Length>("2 in");
  const auto got = torque_setting(in, context);
  ASSERT_FALSE(got);
  ASSERT_EQ(got.error().size(), 2U);
  EXPECT_EQ(got.error()[0].path, "wanted");
  EXPECT_EQ(got.error()[1].path, "lever");
}

TEST_F(Torque, RefusesABandUpsideDownAndHalfABand) {
  TorqueSettingInput in;
  in.lowest = torque("70 in-lb");
  in.highest = torque("50 in-lb");
  EXPECT_EQ(torque_setting(in, context).error()[0].kind, Kind::conflict);
  in.highest.reset();
  EXPECT_EQ(torque_setting(in, context).error()[0].path, "highest");
  in.wanted = torque("60 in-lb");
  EXPECT_EQ(torque_setting(in, context).error()[0].path, "wanted");
}

TEST_F(Torque, RefusesAnExtensionFoldedOntoTheGrip) {
  TorqueSettingInput in;
  in.wanted = torque("60 in-lb");
  in.lever = typed<quantity::Length>("10 in");
  in.extension = typed<quantity::Length>("9 in");
  in.shortens = true;
  EXPECT_EQ(torque_setting(in, context).error()[0].kind, Kind::not_applicable);
}

TEST_F(Torque, ShowsTheBandAndTheCastleNutRule) {
  TorqueSettingInput in;
  in.table = "torque-bolts";
  in.size = "1/4-28";
  in.which = "tension nut";
  in.castle_nut = true;
  in.drag = torque("7 in-lb");
  const auto got = torque_setting(in, context);
  ASSERT_TRUE(got);
  EXPECT_NEAR(got->setting_lowest->value / quantity::inch_pounds(1), 57, 1e-9);
  EXPECT_NEAR(got->setting_highest->value / quantity::inch_pounds(1), 77, 1e-9);
  EXPECT_TRUE(says(got->notes, "most here 107 in-lb"));
  EXPECT_TRUE(says(got->working, "60 in-lb wanted + 7 in-lb drag = 67 in-lb"));
}

TEST_F(Torque, NoticesFeetForInches) {
  TorqueSettingInput in;
  in.table = "torque-bolts";
  in.size = "1/4-28";
  in.which = "tension nut";
  in.wanted = torque("60 ft-lb");
  const auto got = torque_setting(in, context);
  ASSERT_TRUE(got);
  EXPECT_TRUE(says(got->notes, "look at the unit"));
  in.wanted = torque("90 in-lb");
  EXPECT_TRUE(says(torque_setting(in, context)->notes, "lies outside"));
  EXPECT_TRUE(says(torque_setting(in, context)->notes, "no friction drag entered"));
}

TEST_F(Torque, WarnsAtNinetyDegreesAndOffTheScale) {
  TorqueSettingInput in;
  in.wanted = torque("60 in-lb");
  in.lever = typed<quantity::Length>("10 in");
  in.extension = typed<quantity::Length>("2 in");
  in.angle = typed<quantity::Angle>("90 deg");
  in.wrench_from = torque("100 in-lb");
  in.wrench_to = torque("500 in-lb");
  const auto got = torque_setting(in, context);
  EXPECT_TRUE(says(got->notes, "no correction"));
  EXPECT_TRUE(says(got->notes, "below the wrench's scale"));
  in.wanted = torque("600 in-lb");
  EXPECT_TRUE(says(torque_setting(in, context)->notes, "above the wrench's scale"));
}

TEST_F(Torque, ShowsASumThatAPencilCanRepeat) {
  TorqueSettingInput in;
  in.wanted = torque("100 in-lb");
  in.lever = typed<quantity::Length>("12 in");
  in.extension = typed<quantity::Length>("6 in");
  const auto got = torque_setting(in, context);
  ASSERT_TRUE(got);
  EXPECT_EQ(got->working.at(0), "setting = 100 in-lb x 12 in / (12 in + 6 in) = 66.6667 in-lb");
}

TEST(Mechanics, IsDeclaredWithoutAGap) {
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<TorqueSettingInput>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<TorqueSettingAnswer>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<MassBalanceInput>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<MassBalanceAnswer>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<Station>()), "");
}

EnteredMass lb(const char* t) { return typed<quantity::Mass>(t); }
EnteredArm in(const char* t) { return typed<quantity::Length>(t); }

TEST(MassBalance, SaysEverythingThatIsWrong) {
  MassBalanceInput a;
  a.empty_mass = lb("1000 lb");
  a.empty_arm = in("10 in");
  a.changes = {{"battery", MassChangeKind::moved, lb("28 lb"), in("-24 in"), {}}};
  a.stations = {{"pilot", in("16 in"), lb("180 lb"), lb("170 lb"), false}};
  a.loadings = {{"two up", {{"pilto", lb("1 lb")}}}};
  a.forward_limit = in("22 in");
  a.aft_limit = in("8 in");
  a.mac_length = in("60 in");
  std::string paths;
  const auto got = mass_balance(a, {});
  ASSERT_FALSE(got);
  for (const auto& p : got.error()) paths += p.path + " ";
  EXPECT_EQ(paths,
            "changes/0/to_arm stations/0/least forward_limit mac_leading_edge "
            "loadings/0/items/0/station ");
}

TEST(MassBalance, CannotRemoveMoreThanThereIs) {
  MassBalanceInput a;
  a.empty_mass = lb("1000 lb");
  a.empty_arm = in("10 in");
  a.changes = {{"all of it", MassChangeKind::removed, lb("1000 lb"), in("10 in"), {}}};
  EXPECT_EQ(mass_balance(a, {}).error()[0].kind, Kind::conflict);
}

TEST(MassBalance, WithoutLimitsNothingIsJudged) {
  MassBalanceInput a;
  a.empty_mass = lb("1000 lb");
  a.empty_arm = in("10 in");
  a.stations = {{"pilot", in("16 in"), {}, lb("170 lb"), false}};
  const auto got = mass_balance(a, {});
  ASSERT_TRUE(got);
  EXPECT_EQ(got->within, Within::not_judged);
  EXPECT_EQ(got->in_words, "not judged: limits are missing");
}

TEST(MassBalance, KeepsExtremesWithinTheGreatestMass) {
  MassBalanceInput a;
  a.empty_mass = lb("1000 lb");
  a.empty_arm = in("10 in");
  a.stations = {{"near", in("30 in"), {}, lb("300 lb"), false},
                {"far", in("90 in"), {}, lb("100 lb"), false}};
  a.forward_limit = in("5 in");
  a.aft_limit = in("20 in");
  a.most_mass = lb("1200 lb");
  const auto got = mass_balance(a, {});
  ASSERT_TRUE(got);
  EXPECT_NEAR(got->loadings[1].mass.value / quantity::pounds(1), 1200, 1e-6);
  EXPECT_EQ(got->loadings[1].carried.front(), "near 100 lb at +30 in");
}

}  // namespace
