#include "hose/condition.hpp"

#include <gtest/gtest.h>

#include <utility>

namespace {

using namespace wm;
using namespace wm::hose;
using evidence::Verdict;

/// Everything looked at, nothing found.
HoseConditionInput sound(HoseKind kind) {
  HoseConditionInput in;
  in.kind = kind;
  in.operating = *quantity::read<quantity::PressureGauge>("2000 psi");
  in.drops_per_hour = 0.0;
  in.wires_in_one_plait = 0;
  in.wires_per_foot = 0;
  for (auto* seen : {&in.wire_where_kink, &in.cover_parted, &in.cracked, &in.cold_flow,
                     &in.fabric_shows, &in.abraded_or_kinked, &in.blistered, &in.rust, &in.twisted,
                     &in.end_moved, &in.swage_failed}) {
    *seen = Seen::no;
  }
  in.sleeve = SleeveState::whole;
  in.nut = NutLeak::dry;
  return in;
}
Verdict verdict(const HoseConditionInput& in) { return hose_condition(in, {})->verdict; }

bool says(const std::vector<std::string>& lines, const std::string& words) {
  for (const auto& line : lines) {
    if (line.find(words) != std::string::npos) return true;
  }
  return false;
}

TEST(HoseCondition, ConformsOnlyWhenEverythingWasLookedAt) {
  for (const auto kind : {HoseKind::elastomer, HoseKind::ptfe}) {
    EXPECT_EQ(verdict(sound(kind)), Verdict::conforms);
    auto in = sound(kind);
    in.rust = Seen::not_looked;
    const auto got = hose_condition(in, {});
    EXPECT_EQ(got->verdict, Verdict::not_tested);
    EXPECT_EQ(got->not_looked_at, std::vector<std::string>{"rust through the braid"});
    EXPECT_NE(got->in_words.find("1 of "), std::string::npos) << got->in_words;
  }
}

TEST(HoseCondition, NothingLookedAtIsNotTested) {
  HoseConditionInput in;
  in.kind = HoseKind::elastomer;
  const auto got = hose_condition(in, {});
  EXPECT_EQ(got->verdict, Verdict::not_tested);
  EXPECT_EQ(got->not_looked_at.size(), got->criteria.size());
  EXPECT_EQ(got->criteria.size(), 16U);
  EXPECT_TRUE(got->in_words.starts_with("not tested: nothing was looked at; 16 of 16"));
}

TEST(HoseCondition, BrokenWires) {
  struct Row {
    HoseKind kind;
    std::int64_t plait, foot;
    Verdict expected;
  };
  const Row rows[] = {{HoseKind::elastomer, 1, 5, Verdict::conforms},
                      {HoseKind::elastomer, 2, 0, Verdict::does_not_conform},
                      {HoseKind::elastomer, 1, 6, Verdict::does_not_conform},
                      {HoseKind::ptfe, 1, 6, Verdict::conforms},
                      {HoseKind::ptfe, 1, 7, Verdict::does_not_conform},
                      {HoseKind::ptfe, 2, 0, Verdict::does_not_conform}};
  for (const Row& row : rows) {
    auto in = sound(row.kind);
    in.wires_in_one_plait = row.plait;
    in.wires_per_foot = row.foot;
    EXPECT_EQ(verdict(in), row.expected) << row.plait << " " << row.foot;
  }
  auto in = sound(HoseKind::ptfe);
  in.wire_where_kink = Seen::yes;
  EXPECT_EQ(verdict(in), Verdict::does_not_conform);
}

TEST(HoseCondition, TheFiguresForWiresAreForHoseOf500PsiAndOver) {
  auto in = sound(HoseKind::elastomer);
  EXPECT_FALSE(says(hose_condition(in, {})->notes, "500 psi"));
  in.operating = *quantity::read<quantity::PressureGauge>("200 psi");
  EXPECT_TRUE(says(hose_condition(in, {})->notes, "500 psi"));
  in.operating.reset();
  EXPECT_TRUE(says(hose_condition(in, {})->notes, "500 psi"));
}

TEST(HoseCondition, Leaks) {
  auto rubber = sound(HoseKind::elastomer);
  rubber.drops_per_hour = 0.5;
  EXPECT_EQ(verdict(rubber), Verdict::does_not_conform);
  auto ptfe = sound(HoseKind::ptfe);
  ptfe.drops_per_hour = 1.0;
  EXPECT_EQ(verdict(ptfe), Verdict::conforms);
  ptfe.drops_per_hour = 1.5;
  EXPECT_EQ(verdict(ptfe), Verdict::does_not_conform);
}

TEST(HoseCondition, EveryFindingRejectsAnElastomerHoseWithItsSource) {
  for (auto member : {&HoseConditionInput::wire_where_kink, &HoseConditionInput::cover_parted,
                      &HoseConditionInput::cracked, &HoseConditionInput::cold_flow,
                      &HoseConditionInput::fabric_shows, &HoseConditionInput::abraded_or_kinked,
                      &HoseConditionInput::blistered, &HoseConditionInput::rust,
                      &HoseConditionInput::end_moved, &HoseConditionInput::swage_failed}) {
    auto in = sound(HoseKind::elastomer);
    in.*member = Seen::yes;
    const auto got = hose_condition(in, {});
    EXPECT_EQ(got->verdict, Verdict::does_not_conform);
    EXPECT_TRUE(got->in_words.starts_with("reject: "));
    for (const auto& c : got->criteria) EXPECT_FALSE(c.source.empty()) << c.what;
  }
}

TEST(HoseCondition, WhatTheSourceNamesForRubberOnlyIsNotPassedOverOnPtfe) {
  for (auto member : {&HoseConditionInput::cover_parted, &HoseConditionInput::cracked,
                      &HoseConditionInput::cold_flow, &HoseConditionInput::fabric_shows}) {
    auto in = sound(HoseKind::ptfe);
    in.*member = Seen::not_looked;
    EXPECT_EQ(verdict(in), Verdict::conforms);
    in.*member = Seen::yes;
    const auto got = hose_condition(in, {});
    EXPECT_EQ(got->verdict, Verdict::undecided);
    EXPECT_TRUE(says(got->do_next, "ask the maker"));
  }
  auto in = sound(HoseKind::ptfe);
  in.rust = Seen::yes;
  EXPECT_EQ(verdict(in), Verdict::does_not_conform);
}

TEST(HoseCondition, FireSleeve) {
  for (const auto& [state, expected] : {std::pair{SleeveState::whole, Verdict::conforms},
                                        {SleeveState::no_sleeve, Verdict::conforms},
                                        {SleeveState::not_looked, Verdict::not_tested},
                                        {SleeveState::worn_through, Verdict::does_not_conform},
                                        {SleeveState::torn, Verdict::does_not_conform},
                                        {SleeveState::cut, Verdict::does_not_conform},
                                        {SleeveState::oil_soaked, Verdict::does_not_conform}}) {
    auto in = sound(HoseKind::ptfe);
    in.sleeve = state;
    EXPECT_EQ(verdict(in), expected) << static_cast<int>(state);
  }
  auto in = sound(HoseKind::elastomer);
  in.sleeve = SleeveState::no_sleeve;
  EXPECT_TRUE(says(hose_condition(in, {})->notes, "ahead of the firewall needs one"));
}

TEST(HoseCondition, ATwistIsRelievedFirst) {
  auto in = sound(HoseKind::elastomer);
  in.twisted = Seen::yes;
  auto got = hose_condition(in, {});
  EXPECT_EQ(got->verdict, Verdict::undecided);
  EXPECT_TRUE(says(got->do_next, "relieve the twist"));
  in.abraded_or_kinked = Seen::yes;
  EXPECT_EQ(verdict(in), Verdict::does_not_conform);
  in = sound(HoseKind::elastomer);
  in.twisted = Seen::not_looked;
  EXPECT_EQ(verdict(in), Verdict::not_tested);
}

TEST(HoseCondition, ASwivelNutThatLeaksIsPutRightFirst) {
  auto in = sound(HoseKind::ptfe);
  in.nut = NutLeak::leaks;
  const auto got = hose_condition(in, {});
  EXPECT_EQ(got->verdict, Verdict::undecided);
  EXPECT_TRUE(says(got->do_next, "clean the seat"));
  in.nut = NutLeak::still_leaks;
  EXPECT_EQ(verdict(in), Verdict::does_not_conform);
  in.nut = NutLeak::not_looked;
  EXPECT_EQ(verdict(in), Verdict::not_tested);
}

TEST(HoseCondition, OneRejectionOutweighsWhatWasNotLookedAt) {
  HoseConditionInput in;
  in.kind = HoseKind::elastomer;
  in.end_moved = Seen::yes;
  const auto got = hose_condition(in, {});
  EXPECT_EQ(got->verdict, Verdict::does_not_conform);
  EXPECT_EQ(got->not_looked_at.size(), 15U);
}

TEST(HoseCondition, AsksForTheKind) {
  const auto got = hose_condition({}, {});
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error().front().path, "kind");
  EXPECT_EQ(got.error().front().kind, Kind::missing);
}

TEST(HoseCondition, IsDescribedWithoutAGap) {
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<HoseConditionInput>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<HoseConditionAnswer>()), "");
}

}  // namespace
