#include "hose/rating.hpp"

#include <fmt/core.h>

#include "hose/date_code.hpp"
#include "hose/family.hpp"
#include "unit/hose/rating_sample.hpp"

namespace {

using namespace wm;
using namespace wm::hose;
using sample::fahrenheit;
using sample::inch;
using sample::oil_line;
using sample::psi;
using sample::psi_more;
using sample::ptfe_line;
using HoseRating = sample::Rating;

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

TEST_F(HoseRating, AcceptsWhatIsWithinEveryLimit) {
  EXPECT_TRUE(accepted(oil_line()));
  EXPECT_TRUE(accepted(ptfe_line()));
  const auto got = hose_rating(oil_line(), context);
  EXPECT_NEAR(got->system_pressure.value.si, quantity::psi_gauge(80).si, 1e-6);
  EXPECT_EQ(got->working[0], "system pressure = 60 psi + 20 psi = 80 psi");
  EXPECT_EQ(got->in_words, "1 accepted, 0 to be asked about, 0 refused");
  // 80 of 2000 psi leaves 0.96; (250 - 220) / (250 - 68) degF leaves 0.165 of the temperature.
  EXPECT_EQ(got->ranked[0].margin_of, "temperature above 20 degC");
  EXPECT_NEAR(got->ranked[0].margin->si, 30.0 / 182.0, 1e-9);
}

TEST_F(HoseRating, PressureWithSurgeAgainstTheTable) {
  auto in = oil_line();
  in.demand.working_pressure = psi("1990");
  in.demand.fluid_highest = fahrenheit("200");
  EXPECT_EQ(worst(in, "pressure"), "refuses");
  EXPECT_EQ(
      text(in, "pressure"),
      "2010 psi with surge is above 2000 psi [AC 43.13-1B CHG 1, table 9-3, page 9-22; read]");
  in.demand.surge = psi_more("10");
  EXPECT_EQ(worst(in, "pressure"), "met");
}

TEST_F(HoseRating, TheOwnersPressureWinsOverTheTable) {
  auto in = oil_line();
  in.candidates[0].operating = psi("70");
  in.candidates[0].limits_source = "maker's sheet, page 2";
  EXPECT_EQ(text(in, "pressure"),
            "80 psi with surge is above 70 psi [entered: maker's sheet, page 2; entered]");
  in.demand.working_pressure = psi("2480");
  in.candidates[0].operating = psi("2500");
  in.candidates[0].operating_to = fahrenheit("250");
  EXPECT_TRUE(accepted(in));
  EXPECT_EQ(worst(in, "pressure"), "advises");
  EXPECT_TRUE(holds(text(in, "pressure"), "above the table's 2000 psi and wins over it"));
}

TEST_F(HoseRating, AnUnknownOperatingPressureIsAskedFor) {
  auto in = ptfe_line();
  in.candidates[0].operating.reset();
  EXPECT_EQ(worst(in, "pressure"), "asks");
  EXPECT_TRUE(holds(text(in, "pressure"), "the strongest size of the family has 1500 psi"));
  in.demand.working_pressure = psi("1490");
  EXPECT_EQ(worst(in, "pressure"), "refuses");
  in.candidates[0].family = "MIL-H-25579";
  EXPECT_EQ(worst(in, "pressure"), "asks");
  EXPECT_TRUE(holds(text(in, "pressure"), "proof pressure is 3000 psi, half of which would be"));
  in.candidates[0].family = "AS620";
  EXPECT_TRUE(holds(text(in, "pressure"), "take the maker's figure"));
}

TEST_F(HoseRating, APressureFromMemoryIsNoLimit) {
  auto in = oil_line();
  in.demand.fluid = LineFluid::petrol;
  in.candidates[0].family = "SAE J30 R7";
  EXPECT_EQ(worst(in, "pressure"), "asks");
  EXPECT_TRUE(holds(text(in, "pressure"), "not read in its document"));
}

TEST_F(HoseRating, APressureHoldsOnlyAsHotAsTheDataSay) {
  auto in = ptfe_line();
  in.candidates[0].operating_to = fahrenheit("200");
  EXPECT_EQ(worst(in, "pressure"), "asks");
  EXPECT_TRUE(holds(text(in, "pressure"), "holds only up to 200 degF"));
  in.candidates[0].operating_to.reset();
  EXPECT_EQ(worst(in, "pressure"), "asks");
  in.demand.fluid_highest = fahrenheit("75");
  in.demand.surrounding_highest = fahrenheit("75");
  EXPECT_EQ(worst(in, "pressure"), "met");
  // A figure below the table's keeps the table's range of temperature.
  auto elastomer = oil_line();
  elastomer.candidates[0].operating = psi("500");
  EXPECT_TRUE(accepted(elastomer));
}

TEST_F(HoseRating, ConvolutedHoseIsDeratedWhereHot) {
  auto in = ptfe_line();
  auto& hose = in.candidates[0];
  hose.family = "MA620";
  hose.size = "DN06";
  hose.operating.reset();
  hose.operating_to.reset();
  hose.highest = fahrenheit("400");
  hose.lowest = fahrenheit("-65");
  in.demand.surge = psi_more("0");
  in.demand.working_pressure = psi("690");  // 0.699 x 6900 kPa = 699.8 psi
  EXPECT_TRUE(accepted(in));
  EXPECT_NEAR(judged(in).allowed->value.si, 6900e3 * 193.0 / 276.0, 1.0);
  in.demand.working_pressure = psi("710");
  EXPECT_EQ(worst(in, "pressure"), "asks");  // a derived factor asks, it does not refuse
  in.demand.fluid_highest = fahrenheit("75");
  in.demand.surrounding_highest = fahrenheit("75");
  EXPECT_EQ(worst(in, "pressure"), "met");
  in.demand.working_pressure = psi("1010");
  EXPECT_EQ(worst(in, "pressure"), "refuses");
  hose.highest = fahrenheit("450");
  in.demand.fluid_highest = fahrenheit("410");
  in.demand.working_pressure = psi("100");
  EXPECT_EQ(worst(in, "pressure"), "asks");
  EXPECT_TRUE(holds(text(in, "pressure"), "204 degC of the hot burst test"));
}

TEST_F(HoseRating, NeverBothMaximaTogether) {
  auto in = oil_line();
  in.demand.working_pressure = psi("2000");
  in.demand.surge = psi_more("0");
  in.demand.fluid_highest = fahrenheit("250");
  EXPECT_EQ(worst(in, "both maxima"), "refuses");
  EXPECT_TRUE(holds(text(in, "both maxima"), "table 9-3, note; read"));
  in.demand.working_pressure = psi("1800");  // 90 %
  EXPECT_EQ(worst(in, "both maxima"), "asks");
  in.demand.fluid_highest = fahrenheit("225");  // 25 degF below
  EXPECT_EQ(worst(in, "both maxima"), "asks");
  in.demand.fluid_highest = fahrenheit("224");
  EXPECT_EQ(worst(in, "both maxima"), "");
  in.demand.fluid_highest = fahrenheit("250");
  in.demand.working_pressure = psi("1790");
  EXPECT_EQ(worst(in, "both maxima"), "");
  // The maker may state both together; then that wins.
  in.demand.working_pressure = psi("2000");
  in.candidates[0].operating = psi("2000");
  in.candidates[0].operating_to = fahrenheit("250");
  EXPECT_EQ(worst(in, "both maxima"), "");
}

TEST_F(HoseRating, BothMaximaOfAPtfeHoseAreAskedAbout) {
  auto in = ptfe_line();
  auto& hose = in.candidates[0];
  hose.family = "AS1339";
  hose.operating.reset();
  hose.operating_to.reset();
  hose.lowest = fahrenheit("-65");
  in.demand.fluid = LineFluid::hydraulic_mineral;
  in.demand.working_pressure = psi("2980");
  in.demand.fluid_highest = fahrenheit("400");
  EXPECT_EQ(worst(in, "both maxima"), "asks");
}

TEST_F(HoseRating, TemperaturesAgainstTheirLimits) {
  auto in = oil_line();
  in.candidates[0].sleeve = SleeveFitted::over;
  in.demand.surrounding_highest = fahrenheit("251");
  EXPECT_EQ(worst(in, "highest temperature"), "refuses");
  EXPECT_TRUE(holds(text(in, "highest temperature"), "a fire sleeve does not raise it"));
  in.candidates[0].highest = fahrenheit("260");
  EXPECT_EQ(worst(in, "highest temperature"), "met");
  in = oil_line();
  in.demand.lowest = fahrenheit("-66");
  EXPECT_EQ(worst(in, "lowest temperature"), "refuses");
  in.demand.lowest = fahrenheit("-65");
  EXPECT_EQ(worst(in, "lowest temperature"), "met");
  in.candidates[0].size = "-16";  // where two documents differ the narrower counts
  EXPECT_EQ(worst(in, "lowest temperature"), "refuses");
  EXPECT_TRUE(holds(text(in, "family"), "AC 43.13-1B has -40 to +275 degF, MIL-DTL-8794F -65"));
  in.candidates[0].lowest = fahrenheit("-65");
  EXPECT_EQ(worst(in, "lowest temperature"), "met");
}

TEST_F(HoseRating, TemperaturesThatAreNotKnownAreAskedFor) {
  auto in = oil_line();
  in.demand.fluid = LineFluid::petrol;
  in.candidates[0].family = "SAE J30 R12";
  EXPECT_EQ(worst(in, "highest temperature"), "asks");
  EXPECT_EQ(worst(in, "lowest temperature"), "asks");
  in.demand.fluid = LineFluid::mineral_engine_oil;
  in.candidates[0].family = "MIL-DTL-6000 push-on";  // its highest is only reported
  EXPECT_EQ(worst(in, "highest temperature"), "asks");
  EXPECT_TRUE(holds(text(in, "highest temperature"), "not read in its document"));
  EXPECT_EQ(worst(in, "lowest temperature"), "met");
}

TEST_F(HoseRating, AluminiumEndsHoldAPtfeAssemblyBack) {
  auto in = ptfe_line();
  in.demand.fluid_highest = fahrenheit("300");
  EXPECT_TRUE(accepted(in));
  in.candidates[0].ends = EndMetal::not_said;
  EXPECT_EQ(worst(in, "metal of the ends"), "asks");
  in.candidates[0].ends = EndMetal::aluminium;
  EXPECT_EQ(worst(in, "highest temperature"), "refuses");
  EXPECT_TRUE(holds(text(in, "highest temperature"), "set by the aluminium ends"));
  in.candidates[0].highest = fahrenheit("350");
  EXPECT_EQ(worst(in, "highest temperature"), "met");
  EXPECT_EQ(worst(in, "metal of the ends"), "advises");
  // An elastomer assembly has its own, lower limit.
  auto elastomer = oil_line();
  elastomer.candidates[0].ends = EndMetal::aluminium;
  EXPECT_TRUE(accepted(elastomer));
}

TEST_F(HoseRating, PotableWaterHoseIsNotForFuelOrOil) {
  auto in = ptfe_line();
  in.candidates[0].family = "AS4468";
  for (const auto fluid : {LineFluid::avgas, LineFluid::mineral_engine_oil}) {
    in.demand.fluid = fluid;
    EXPECT_EQ(worst(in, "fluid"), "refuses");
  }
  in.demand.fluid = LineFluid::water;
  EXPECT_EQ(worst(in, "fluid"), "met");
}

TEST_F(HoseRating, LinersAgainstFluids) {
  auto in = oil_line();
  in.candidates[0].liner = LinerCompound::butyl;
  EXPECT_EQ(worst(in, "fluid"), "refuses");
  in.candidates[0].liner = LinerCompound::epdm;
  EXPECT_EQ(worst(in, "fluid"), "asks");  // common practice does not refuse by itself
  in.candidates[0].liner = LinerCompound::nitrile;
  in.demand.fluid = LineFluid::phosphate_ester;
  EXPECT_EQ(worst(in, "fluid"), "refuses");
  in.candidates[0].liner = LinerCompound::neoprene;
  in.demand.fluid = LineFluid::petrol;
  EXPECT_EQ(worst(in, "fluid"), "advises");
  in.candidates[0].liner = LinerCompound::not_said;
  EXPECT_EQ(worst(in, "fluid"), "advises");
  EXPECT_TRUE(holds(text(in, "fluid"), "not read in its document"));
  in.demand.fluid = LineFluid::phosphate_ester;
  EXPECT_EQ(worst(in, "fluid"), "asks");
  in.demand.fluid = LineFluid::other;
  EXPECT_EQ(worst(in, "fluid"), "asks");
  in.candidates[0].fluid_stated = Known::yes;
  EXPECT_EQ(worst(in, "fluid"), "met");
  in.candidates[0].fluid_stated = Known::no;
  EXPECT_EQ(worst(in, "fluid"), "refuses");
}

TEST_F(HoseRating, AFamilyMadeForSomethingElseIsAskedAbout) {
  auto in = oil_line();
  in.candidates[0].family = "MIL-DTL-83796";
  in.demand.fluid = LineFluid::hydraulic_mineral;
  EXPECT_EQ(worst(in, "fluid"), "asks");
  in.candidates[0].liner = LinerCompound::not_said;
  in.demand.fluid = LineFluid::mineral_engine_oil;
  EXPECT_EQ(worst(in, "fluid"), "met");
}

TEST_F(HoseRating, PetrolWithAlcohol) {
  auto in = oil_line();
  in.demand.fluid = LineFluid::petrol_with_alcohol;
  EXPECT_EQ(worst(in, "fluid"), "asks");
  in.candidates[0].alcohol_stated = Known::no;
  EXPECT_EQ(worst(in, "fluid"), "refuses");
  in.candidates[0].alcohol_stated = Known::yes;
  EXPECT_EQ(worst(in, "fluid"), "met");
  in.candidates[0].alcohol_stated = Known::not_known;
  in.candidates[0].liner = LinerCompound::butyl;
  EXPECT_EQ(worst(in, "fluid"), "refuses");
  auto ptfe = ptfe_line();
  ptfe.demand.fluid = LineFluid::petrol_with_alcohol;
  EXPECT_TRUE(accepted(ptfe));
  EXPECT_TRUE(holds(hose_rating(ptfe, context)->notes.back(), "shorten the interval"));
}

TEST_F(HoseRating, FuelThroughPlainPtfeIsAskedAbout) {
  auto in = ptfe_line();
  in.demand.fluid = LineFluid::avgas;
  EXPECT_EQ(worst(in, "static charge"), "met");
  in.candidates[0].carbon_loaded = Known::not_known;
  EXPECT_EQ(worst(in, "static charge"), "asks");
  in.candidates[0].carbon_loaded = Known::no;
  EXPECT_EQ(worst(in, "static charge"), "asks");
  in.demand.fluid = LineFluid::mineral_engine_oil;
  EXPECT_EQ(worst(in, "static charge"), "");
}

TEST_F(HoseRating, SuctionNeedsTheMakersFigure) {
  auto in = oil_line();
  in.demand.suction = sample::typed<quantity::PressureDifference>("4 inHg");
  EXPECT_EQ(worst(in, "suction"), "asks");
  in.candidates[0].suction_limit = sample::typed<quantity::PressureDifference>("10 inHg");
  EXPECT_EQ(worst(in, "suction"), "met");
  in.candidates[0].suction_limit = sample::typed<quantity::PressureDifference>("3 inHg");
  EXPECT_EQ(worst(in, "suction"), "refuses");
  in.demand.suction = sample::typed<quantity::PressureDifference>("0 psi");
  EXPECT_EQ(worst(in, "suction"), "");
  auto ptfe = ptfe_line();
  ptfe.demand.suction = sample::typed<quantity::PressureDifference>("4 inHg");
  ptfe.candidates[0].suction_limit = sample::typed<quantity::PressureDifference>("10 inHg");
  EXPECT_EQ(worst(ptfe, "suction"), "advises");
}

TEST_F(HoseRating, LongPushOnHoseCollapses) {
  auto in = oil_line();
  in.candidates[0].family = "MIL-DTL-6000 push-on";
  EXPECT_EQ(worst(in, "ends"), "advises");
  EXPECT_EQ(worst(in, "length"), "asks");
  in.demand.length = inch("18");
  EXPECT_EQ(worst(in, "length"), "met");
  in.demand.length = inch("18.5");
  EXPECT_EQ(worst(in, "length"), "refuses");
  in.candidates[0].suction_limit = psi_more("1");
  EXPECT_EQ(worst(in, "length"), "advises");
}

TEST_F(HoseRating, AheadOfTheFirewall) {
  auto in = oil_line();
  in.demand.ahead_of_firewall = true;
  in.candidates[0].fire_class = FireTested::class_a;
  EXPECT_EQ(worst(in, "fire"), "asks");  // sleeve not said
  in.candidates[0].sleeve = SleeveFitted::none;
  EXPECT_EQ(worst(in, "fire"), "refuses");
  in.candidates[0].sleeve = SleeveFitted::over;
  EXPECT_EQ(worst(in, "fire"), "met");
  in.candidates[0].fire_class = FireTested::class_b;
  EXPECT_EQ(worst(in, "fire"), "met");
  in.candidates[0].fire_class = FireTested::none;
  EXPECT_EQ(worst(in, "fire"), "asks");
  in.candidates[0].fire_class = FireTested::not_known;
  EXPECT_EQ(worst(in, "fire"), "asks");
  auto ptfe = ptfe_line();
  ptfe.demand.ahead_of_firewall = true;
  EXPECT_EQ(worst(ptfe, "fire"), "asks");
  in.demand.fluid = LineFluid::water;
  EXPECT_EQ(worst(in, "fire"), "");
  in.demand.fluid = LineFluid::petrol;
  in.candidates[0].family = "SAE J1527";
  in.candidates[0].fire_class = FireTested::class_a;
  EXPECT_EQ(worst(in, "fire"), "advises");  // 2.5 min of flame is reported, not read
}

TEST_F(HoseRating, BoreOfTheFitting) {
  auto in = oil_line();
  in.demand.least_bore = inch("0.30");
  EXPECT_EQ(worst(in, "bore"), "asks");
  in.candidates[0].bore = inch("0.35");
  EXPECT_EQ(worst(in, "bore"), "met");
  in.candidates[0].bore = inch("0.29");
  EXPECT_EQ(worst(in, "bore"), "refuses");
  in.candidates[0].bore.reset();
  in.demand.least_bore = inch("0.41");  // 13/32 in is 0.40625
  EXPECT_EQ(worst(in, "bore"), "refuses");
  EXPECT_TRUE(holds(text(in, "bore"), "13/32 in of the hose itself is under 0.41 in"));
  in.candidates[0].family = "MIL-H-8788";
  in.demand.least_bore = inch("0.36");
  EXPECT_EQ(worst(in, "bore"), "met");
  in.demand.least_bore = inch("0.37");
  EXPECT_EQ(worst(in, "bore"), "refuses");
  auto ptfe = ptfe_line();
  ptfe.candidates[0].family = "AS620";
  ptfe.demand.least_bore = inch("0.36");
  EXPECT_EQ(worst(ptfe, "bore"), "asks");
  EXPECT_TRUE(holds(text(ptfe, "bore"), ".345 in at least, its columns are uncertain"));
}

TEST_F(HoseRating, AgeOfAnElastomerOnTheDayOfFitting) {
  auto in = oil_line();
  in.candidates[0].cure = "2Q2018";
  in.candidates[0].assembly = "A3Q18";
  // 32 quarters end on 30 June 2026: reported figures advise, they do not refuse.
  EXPECT_EQ(worst(in, "age"), "advises");
  EXPECT_TRUE(holds(text(in, "age"), "32 quarters to 2Q2026"));
  EXPECT_TRUE(accepted(in));
  in.demand.fitting = quantity::Date{std::chrono::year{2026} / 6 / 30};
  EXPECT_EQ(worst(in, "age"), "");
  in.candidates[0].cure = "2Q2012";
  in.candidates[0].assembly = "A3Q12";
  EXPECT_EQ(worst(in, "age"), "advises");
  in.candidates[0].liner = LinerCompound::chlorinated_polyethylene;
  EXPECT_EQ(worst(in, "age"), "advises");  // made up when new
  in.candidates[0].assembly = "A2Q24";     // 48 quarters end on 30 June 2024
  EXPECT_EQ(worst(in, "age"), "advises");
  in.candidates[0].assembly = "A3Q24";
  EXPECT_EQ(worst(in, "age"), "refuses");
  EXPECT_TRUE(holds(text(in, "age"), "MIL-DTL-83797C 3.8"));
  in.candidates[0].cure.clear();
  EXPECT_EQ(worst(in, "age"), "asks");
}

TEST_F(HoseRating, PtfeTestedMoreThanAYearAgoIsTestedAgain) {
  auto in = ptfe_line();
  in.candidates[0].proof = "2025-11-25";
  EXPECT_EQ(text(in, "proof test"),
            "tested 2025-11-25, fitted 2026-11-25: within one year [TM 1-1500-204-23-2 page 4-56 "
            "region; read]");
  in.candidates[0].proof = "2025-11-24";
  EXPECT_EQ(worst(in, "proof test"), "asks");
  EXPECT_TRUE(holds(text(in, "proof test"), "put on a new band"));
  in.candidates[0].proof.clear();
  EXPECT_EQ(worst(in, "proof test"), "asks");
}

TEST_F(HoseRating, RanksTheAcceptedFirstThenByWhatIsLeft) {
  auto in = oil_line();
  in.candidates.push_back(ptfe_line().candidates[0]);
  in.candidates.push_back(in.candidates[0]);
  in.candidates.push_back(in.candidates[0]);
  in.candidates[0].name = "asks";
  in.candidates[0].cure.clear();
  in.candidates[1].name = "hotter";
  in.candidates[2].name = "refused";
  in.candidates[2].highest = fahrenheit("200");
  in.candidates[3].name = "plain";
  const auto got = hose_rating(in, context);
  ASSERT_TRUE(got);
  std::string order;
  for (const auto& r : got->ranked) {
    order += fmt::format("{}:{}:{} ", r.place, r.number, r.name);
  }
  EXPECT_EQ(order, "1:2:hotter 2:4:plain 3:1:asks 4:3:refused ");
  EXPECT_TRUE(holds(got->ranked_by, "accepted first"));
  // What is against it stands first among the reasons.
  EXPECT_EQ(got->ranked[3].reasons.front().stands, ReasonStands::refuses);
}

TEST_F(HoseRating, WithoutAFamilyTheEnteredLimitsJudge) {
  auto in = ptfe_line();
  auto& hose = in.candidates[0];
  hose.family.clear();
  EXPECT_EQ(paths(in), "candidates/0/liner ");
  hose.liner = LinerCompound::ptfe_convoluted;
  EXPECT_EQ(worst(in, "highest temperature"), "asks");
  hose.highest = fahrenheit("400");
  hose.lowest = fahrenheit("-65");
  EXPECT_TRUE(accepted(in));
  hose.liner = LinerCompound::other_elastomer;
  EXPECT_EQ(worst(in, "fluid"), "asks");
}

TEST_F(HoseRating, NamesWhatIsMissingOrContradicts) {
  EXPECT_EQ(paths({}), "demand/fluid demand/fitting candidates ");
  auto in = oil_line();
  in.demand.fitting.reset();
  EXPECT_EQ(paths(in), "demand/fitting ");
  context.today = quantity::Date{std::chrono::year{2026} / 11 / 25};
  EXPECT_EQ(paths(in), "none");
  in = oil_line();
  in.demand.lowest = fahrenheit("190");
  EXPECT_EQ(paths(in), "demand/surrounding_highest ");
  in = oil_line();
  in.candidates[0].family = "MIL-H-9999";
  EXPECT_EQ(paths(in), "candidates/0/family ");
  in.candidates[0].family = "MIL-H-8794";
  in.candidates[0].size = "-7";
  EXPECT_EQ(paths(in), "candidates/0/size ");
  in.candidates[0].size.clear();
  EXPECT_EQ(paths(in), "candidates/0/size ");
  in = oil_line();
  in.candidates[0].liner = LinerCompound::ptfe_smooth;
  EXPECT_EQ(paths(in), "candidates/0/liner ");
  in = oil_line();
  in.candidates.push_back(in.candidates[0]);
  EXPECT_EQ(paths(in), "candidates/1/name ");
}

TEST_F(HoseRating, DatesInTheWrongOrder) {
  auto in = oil_line();
  in.candidates[0].cure = "spring";
  EXPECT_EQ(paths(in), "candidates/0/cure ");
  in.candidates[0].cure = "A2Q24";
  EXPECT_EQ(paths(in), "candidates/0/cure ");
  in.candidates[0].cure = "4Q2025";  // after 3Q2025, the assembly
  EXPECT_EQ(paths(in), "candidates/0/cure ");
  in.candidates[0].cure = "3Q2025";  // the same quarter is possible
  EXPECT_EQ(paths(in), "none");
  in.candidates[0].assembly = "2026-12-01";
  EXPECT_EQ(paths(in), "candidates/0/assembly ");
  in = oil_line();
  in.candidates[0].proof = "2027-01-01";
  EXPECT_EQ(paths(in), "candidates/0/proof ");
  in.candidates[0].proof = "2025-01-01";
  EXPECT_EQ(paths(in), "candidates/0/assembly ");
}

TEST_F(HoseRating, ReadsDateCodes) {
  const auto code = [](const std::string& text) {
    const auto got = read_date_code(text);
    return got ? quantity::print_date(got->first) + "/" + quantity::print_date(got->last)
               : got.error().what;
  };
  EXPECT_EQ(code("2Q2018"), "2018-04-01/2018-06-30");
  EXPECT_EQ(code("A2Q80"), "1980-04-01/1980-06-30");
  EXPECT_EQ(code(" a4q49 "), "2049-10-01/2049-12-31");
  EXPECT_EQ(code("1Q50"), "1950-01-01/1950-03-31");
  EXPECT_EQ(code("2018-05-14"), "2018-05-14/2018-05-14");
  EXPECT_EQ(code("5Q2018"), "\"5Q2018\": there is no such quarter");
  EXPECT_EQ(code("2Q18x"), "\"2Q18x\" is no date as it stands on a hose");
  EXPECT_EQ(code(""), "\"\" is no date as it stands on a hose");
  EXPECT_EQ(read_date_code("2018-02-30").error().kind, Kind::out_of_bounds);
  const quantity::Date day{std::chrono::year{2026} / 11 / 30};
  EXPECT_EQ(quantity::print_date(add_quarters(day, 1)), "2027-02-28");
  const quantity::Date before{std::chrono::year{2026} / 11 / 15};
  EXPECT_EQ(quantity::print_date(add_quarters(before, 2)), "2027-05-15");
  EXPECT_EQ(quarters_between(before, quantity::Date{std::chrono::year{2027} / 5 / 14}), 1);
  EXPECT_EQ(quarters_between(before, quantity::Date{std::chrono::year{2027} / 5 / 15}), 2);
}

TEST_F(HoseRating, EveryFamilyCanBeJudgedAndSaysWhereItIsFrom) {
  const auto* table = context.table("hose-families");
  ASSERT_NE(table, nullptr);
  for (const auto& row : table->rows) {
    const auto sizes = std::string(row[1]);
    const auto size = sizes.empty() ? std::string("-8") : sizes.substr(0, sizes.find(' '));
    const auto got = family_figures(context, row[0], size);
    ASSERT_TRUE(got) << row[0];
    EXPECT_NE(got->lining, Lining::not_said) << row[0];
    EXPECT_FALSE(got->source.empty()) << row[0];
  }
  EXPECT_EQ(family_figures({}, "MIL-H-8794", "-8").error().kind, Kind::not_found);
  EXPECT_FALSE(convoluted_hot_ratio({}));
}

TEST_F(HoseRating, IsDescribedWithoutAGap) {
  for (const auto* type :
       {&describe::type_of<HoseRatingInput>(), &describe::type_of<HoseRatingAnswer>(),
        &describe::type_of<HoseCandidate>(), &describe::type_of<HoseDemand>(),
        &describe::type_of<RatedHose>(), &describe::type_of<RatingReason>()}) {
    EXPECT_EQ(describe::undescribed_gap(*type), "") << type->name;
  }
}

}  // namespace
