// The aircraft sheet: out and in again without a change, all of it or nothing.
#include <algorithm>
#include <fstream>
#include <iterator>

#include "calculation/toml_face.hpp"
#include "unit/desk/bench.hpp"

namespace {

using namespace wm;
using desk::AircraftSheet;
using desk::test::bird_bench;
using desk::test::joined;
using desk::test::refused;
using desk::test::says;
using desk::test::told;

std::string exported(desk::test::Bench& bench, const std::string& aircraft = "bird") {
  const auto sheet =
      bench.view<AircraftSheet>("sheet", fmt::format(R"("aircraft":"{}")", aircraft));
  return calculation::write_toml(describe::type_of<AircraftSheet>(), &sheet);
}
/// A sheet of text into a bench, as an import of the file would do it.
Checked<desk::ImportAnswer> take_in(desk::test::Bench& bench, const std::string& toml) {
  AircraftSheet sheet;
  auto problems = calculation::read_toml(toml, describe::type_of<AircraftSheet>(), &sheet);
  if (!problems.empty()) return Fail(std::move(problems));
  const auto payload = calculation::write_payload(describe::type_of<AircraftSheet>(), &sheet);
  problems = bench.act("import-sheet", payload);
  if (!problems.empty()) return Fail(std::move(problems));
  return bench.answer<desk::ImportAnswer>();
}

TEST(Sheet, OutAndIntoAnEmptyBinderAndOutAgainIsTheSameBytes) {
  auto first = bird_bench();
  const auto out = exported(first);
  desk::test::Bench second;
  const auto answer = take_in(second, out);
  ASSERT_TRUE(answer) << told(answer.error());
  EXPECT_EQ(exported(second), out);
  EXPECT_TRUE(second.state.oddities.empty());
}

TEST(Sheet, TheDemoSheetsGoInAndOutAndIn) {
  for (const std::string name : {"pebblewing", "thornback"}) {
    std::ifstream file(std::string(WM_SOURCE_DIR) + "/demo/" + name + ".toml");
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    ASSERT_FALSE(text.empty());
    desk::test::Bench first, second;
    auto answer = take_in(first, text);
    ASSERT_TRUE(answer) << told(answer.error());
    const auto out = exported(first, name);
    answer = take_in(second, out);
    ASSERT_TRUE(answer) << told(answer.error());
    EXPECT_EQ(exported(second, name), out);
    answer = take_in(first, text);
    ASSERT_TRUE(answer) << told(answer.error());
    EXPECT_TRUE(says(answer->words, "Nothing to do"));
  }
}

// Symptom: after a meter was exchanged only the new meter's reading was kept; parts on the shelf,
// counter readings at fitting and where a part was before were lost without a word.
TEST(Sheet, ExchangedMetersShelfPartsAndFittingReadingsComeBack) {
  auto first = bird_bench();
  first.day = "2018-05-01";
  first.today = "2026-11-25";
  first.done(
      "install-part",
      R"("part":"hose-2","position":"oil-hose","at":[{"counter":"engine","hours":"400.5 h"}],)"
      R"("until_day":"2021-03-01","until":[{"counter":"engine","hours":"650 h"}],)"
      R"("reason":"five years old")");
  first.day = "2026-03-01";
  first.done("replace-counter", R"("counter":"engine","old_last_hours":"1050.25 h",)"
                                R"("new_first_hours":"0.5 h","reason":"blank")");
  first.done("replace-counter", R"("counter":"starts","new_first_count":0,"reason":"worn")");
  first.day = "2026-11-25";
  first.done("register-part", R"("id":"spare","type":"hose")");
  first.done("register-part", R"("id":"pump","type":"pump")");
  first.done("install-part", R"("part":"pump","position":"fuel-hose",)"
                             R"("at":[{"counter":"engine","hours":"3.75 h"}])");
  const auto out = exported(first);
  desk::test::Bench second;
  const auto answer = take_in(second, out);
  ASSERT_TRUE(answer) << told(answer.error());
  EXPECT_EQ(exported(second), out);
  EXPECT_TRUE(second.state.oddities.empty());
  const auto& engine = second.bird().counters.at("engine");
  EXPECT_NEAR(*engine.now(), 1050.25 + 3.25, 1e-9) << "both meters count";
  EXPECT_TRUE(second.state.parts.contains("spare"));
  const auto& hose = second.state.parts.at("hose-2").installations;
  ASSERT_EQ(hose.size(), 1U);
  EXPECT_DOUBLE_EQ(hose[0].from_counters.at("engine"), 400.5);
  EXPECT_DOUBLE_EQ(hose[0].to_counters.at("engine"), 650);
  EXPECT_NEAR(second.state.parts.at("pump").current()->from_counters.at("engine"), 1053.5, 1e-9);
  const auto again = take_in(first, out);
  ASSERT_TRUE(again) << told(again.error());
  EXPECT_TRUE(says(again->words, "Nothing to do"));
}

TEST(Sheet, WhatASheetCannotHoldIsCounted) {
  auto bench = bird_bench();
  bench.done("measure", R"("check":"lead-1","value":"5.00 kohm")");
  bench.done("task-done", R"("limit":"oil-change","text":"done")");
  const auto lines = joined(desk::not_in_sheet(bench.state, bench.bird()));
  EXPECT_TRUE(says(lines, "1 readings of checks"));
  EXPECT_TRUE(says(lines, "1 times that a limited task was done"));
  const auto preface = desk::sheet_preface(bench.state, bench.bird().about.id);
  EXPECT_TRUE(says(preface, "#   1 readings of checks"));
  EXPECT_EQ(desk::sheet_preface(bench.state, "no-such-aircraft"), "");
}

TEST(Sheet, TwiceInIsNothingToDo) {
  auto bench = bird_bench();
  const auto before = bench.state.sequence;
  bench.done("import-sheet", std::string(desk::test::k_bird));
  const auto& answer = bench.answer<desk::ImportAnswer>();
  EXPECT_TRUE(says(answer.words, "Nothing to do"));
  EXPECT_EQ(answer.added + answer.changed, 0);
  EXPECT_EQ(bench.state.sequence, before);
}

TEST(Sheet, ItsOwnExportIsNothingToDoAfterAMeterWasExchanged) {
  auto bench = bird_bench();
  bench.done("read-counter", R"("at":[{"counter":"engine","hours":"1050.25 h"}])");
  bench.done("replace-counter", R"("counter":"engine","old_last_hours":"1050.25 h",)"
                                R"("new_first_hours":"0.0 h","reason":"blank")");
  bench.done("read-counter", R"("at":[{"counter":"engine","hours":"3.75 h"}])");
  const auto answer = take_in(bench, exported(bench));
  ASSERT_TRUE(answer) << told(answer.error());
  EXPECT_TRUE(says(answer->words, "Nothing to do")) << joined(answer->changes);
}

TEST(Sheet, ItsOwnExportIsNothingToDoAfterAStageRevisedTheMass) {
  auto bench = bird_bench();
  bench.ready_to_open();
  const auto answer = take_in(bench, exported(bench));
  ASSERT_TRUE(answer) << told(answer.error());
  EXPECT_TRUE(says(answer->words, "Nothing to do")) << joined(answer->changes);
}

TEST(Sheet, EveryErrorIsToldAndNothingIsRecorded) {
  auto bench = bird_bench();
  const auto before = bench.state.sequence;
  std::string sheet(desk::test::k_bird);
  const auto swap = [&](const std::string& from, const std::string& to) {
    const auto at = sheet.find(from);
    ASSERT_NE(at, std::string::npos) << from;
    sheet.replace(at, from.size(), to);
  };
  swap(R"("id":"bird")", R"("id":"other")");
  swap(R"("position":"oil-hose","kind")", R"("position":"oil-house","kind")");
  // The table of the second torque, the interval of the oil change, a limit upside down.
  swap(R"("torque_most":"130 in-lb","torque_table":"maker's sheet, invented")",
       R"("torque_most":"130 in-lb")");
  swap(R"(,"every_hours":"50 h")", "");
  swap(R"("lowest":"3.0 kohm")", R"("lowest":"9.0 kohm")");
  const auto problems = bench.act("import-sheet", sheet);
  EXPECT_TRUE(refused(problems, Kind::not_found, "joints/0/position"));
  EXPECT_TRUE(refused(problems, Kind::missing, "joints/1/torque_table"));
  EXPECT_TRUE(refused(problems, Kind::missing, "limits/0/every_hours"));
  EXPECT_TRUE(refused(problems, Kind::conflict, "checks/0/highest"));
  EXPECT_EQ(bench.state.sequence, before);
  EXPECT_FALSE(bench.state.aircraft.contains("other"));
}

TEST(Sheet, ErrorsOfTheTextNameTheirLine) {
  desk::test::Bench bench;
  const auto answer = take_in(bench,
                              "[aircraft]\nid = \"x\"\nname = \"X\"\nregistration = \"Q-X\"\n"
                              "[[limits]]\nid = \"l\"\ntitle = \"L\"\nevery_hours = \"50\"\n"
                              "wings = 2\n");
  ASSERT_FALSE(answer);
  EXPECT_TRUE(refused(answer.error(), Kind::bad_text, "limits/0/every_hours"));
  EXPECT_TRUE(refused(answer.error(), Kind::unknown_field, "limits/0/wings"));
  EXPECT_TRUE(says(told(answer.error()), "line 8"));
}

TEST(Sheet, AChangedLimitIsTakenOverAndNothingIsRemoved) {
  auto bench = bird_bench();
  std::string sheet(desk::test::k_bird);
  const auto at = sheet.find("\"50 h\"");
  sheet.replace(at, 6, "\"25 h\"");
  bench.done("import-sheet", sheet);
  EXPECT_EQ(bench.answer<desk::ImportAnswer>().changed, 1);
  EXPECT_EQ(bench.bird().limits.at("oil-change").about.every_hours->text, "25 h");
  bench.done("import-sheet", R"({"aircraft":{"id":"bird","name":"Bird","registration":"Q-BRD",)"
                             R"("serial":"007","part_43_applies":"no"}})");
  EXPECT_EQ(bench.bird().positions.size(), 6U);
}

TEST(Sheet, HalvesOfAPairNameEachOther) {
  auto bench = bird_bench();
  EXPECT_EQ(bench.bird().positions.at("left-magneto").redundant_with, "right-magneto");
  EXPECT_EQ(bench.bird().positions.at("right-magneto").redundant_with, "left-magneto");
}

}  // namespace
