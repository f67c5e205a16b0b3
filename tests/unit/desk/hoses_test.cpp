// Hoses in the record: drawn, drawn anew, proved; what is refused and what is told.
#include "calculation/json_face.hpp"
#include "desk/acts_hoses.hpp"
#include "unit/desk/bench.hpp"

namespace {

using namespace wm;
using desk::test::Bench;
using desk::test::bird_bench;
using desk::test::joined;
using desk::test::refused;
using desk::test::says;

constexpr std::string_view k_sheet = R"("sheet":{"title":"oil cooler, pressure side",
 "near_end":{"seat":{"x":"0 in","y":"0 in","z":"0 in"},"leaves":{"x":1},"rigid":"1.5 in"},
 "far_end":{"seat":{"x":"14 in","y":"13 in","z":"4 in"},"leaves":{"y":-1},"rigid":"1.5 in"},
 "near_at":"oil cooler","far_at":"engine","size":"-8","family":"MIL-H-8794",
 "outside_diameter":"0.77 in","least_radius":"4.63 in","working_pressure":"90 psi"})";

constexpr std::string_view k_seen_none =
    R"("findings":{"leak":"no","push_off_moved":"no","gap_changed":"no","deformed":"no","bulge_or_kink":"no"})";

std::string drawn(const std::string& more = {}) { return std::string(k_sheet) + more; }
std::string proved(std::string_view findings, const std::string& more = {}) {
  return fmt::format(
      R"("hose":"oil","test":{{"family":"medium-elastomer","size":"-8","bore":"13/32 in","length":"24 in","carries":"oil",{}}}{})",
      findings, more);
}

const bay::HoseRecord& oil(const Bench& bench) { return bench.bird().hoses.at("oil"); }

TEST(Hoses, ADrawingIsKeptWithItsFiguresAndWhatItWasDrawnFrom) {
  auto bench = bird_bench();
  const auto said = bench.done("draw-hose", drawn(R"(,"position":"oil-hose")"));
  EXPECT_EQ(said.id, "oil-cooler-pressure-side");
  EXPECT_TRUE(says(said.words, "Hose drawn: oil cooler, pressure side, overall"));
  const auto& hose = bench.bird().hoses.at(said.id);
  EXPECT_EQ(hose.about.calculation, "hose-sheet");
  EXPECT_EQ(hose.about.working_pressure->text, "90 psi");
  EXPECT_GT(hose.about.tightest_radius.value.si, hose.about.least_radius.value.si);
  EXPECT_FALSE(hose.about.lines.empty());
  EXPECT_EQ(hose.proofs.size(), 0U);
  EXPECT_TRUE(says(desk::in_words(bench.state.events.back()->payload), "Hose drawn: oil cooler"));
}

TEST(Hoses, WhatItWasDrawnFromIsReadAgainAsIfTyped) {
  auto bench = bird_bench();
  bench.done("draw-hose", drawn(R"(,"id":"new-one")"));
  const auto page = bench.view<desk::HosePage>("hose", R"("hose":"new-one")");
  hose::HoseSheetInput typed;
  const auto& type = describe::type_of<hose::HoseSheetInput>();
  const auto problems = calculation::read_json(page.sheet, type, &typed);
  EXPECT_TRUE(problems.empty()) << desk::test::told(problems);
  EXPECT_EQ(typed.title, "oil cooler, pressure side");
  EXPECT_EQ(typed.outside_diameter.text, "0.77 in");
  EXPECT_DOUBLE_EQ(typed.lengthens.si, 0.02) << "what was not entered is kept as well";
}

TEST(Hoses, ItTakesThePositionOfItsChange) {
  auto bench = bird_bench();
  bench.plan("hose", "oil-hose");
  bench.done("draw-hose", drawn(R"(,"id":"oil","change":"hose")"));
  EXPECT_EQ(oil(bench).about.position, "oil-hose");
  const auto work = bench.view<desk::WorkPage>("work");
  ASSERT_EQ(work.hoses.size(), 1U);
  EXPECT_EQ(work.hoses[0].change, "hose");
  EXPECT_EQ(work.hoses[0].verdict, "not-tested");
}

TEST(Hoses, SeveralCanBeDrawnForOneChange) {
  auto bench = bird_bench();
  bench.plan("hose", "oil-hose");
  bench.done("draw-hose", drawn(R"(,"id":"oil","change":"hose")"));
  bench.done("draw-hose", drawn(R"(,"id":"oil-return","change":"hose")"));
  EXPECT_EQ(bench.view<desk::WorkPage>("work").hoses.size(), 2U);
}

TEST(Hoses, AHoseThatCannotLieThereIsRefusedWithThePathOfTheSheet) {
  auto bench = bird_bench();
  auto sheet = std::string(k_sheet);
  sheet.replace(sheet.find("0.77 in"), 7, "0 in");
  EXPECT_TRUE(
      refused(bench.act("draw-hose", sheet), Kind::out_of_bounds, "sheet/outside_diameter"));
  sheet = std::string(k_sheet);
  sheet.replace(sheet.find(R"("leaves":{"x":1})"), 16, R"("leaves":{"x":0})");
  const auto problems = bench.act("draw-hose", sheet);
  ASSERT_FALSE(problems.empty());
  EXPECT_TRUE(problems[0].path.starts_with("sheet/near_end")) << problems[0].path;
  EXPECT_TRUE(bench.bird().hoses.empty());
}

TEST(Hoses, ADrawingForAWithdrawnChangeIsRefused) {
  auto bench = bird_bench();
  bench.plan("hose", "oil-hose");
  bench.done("withdraw-change", R"("change":"hose","reason":"not this winter")");
  EXPECT_TRUE(
      refused(bench.act("draw-hose", drawn(R"(,"change":"hose")")), Kind::refused, "change"));
}

TEST(Hoses, AProofIsKeptWithItsVerdictAndCannotBeCorrected) {
  auto bench = bird_bench();
  bench.done("draw-hose", drawn(R"(,"id":"oil")"));
  ASSERT_EQ(desk::test::told(bench.act("prove-hose", proved(R"("findings":{"leak":"yes"})"))), "");
  EXPECT_EQ(bench.answer<desk::Proved>().verdict, evidence::Verdict::does_not_conform);
  EXPECT_EQ(oil(bench).latest()->about.by, "anna") << "who entered it, where nobody is named";
  EXPECT_EQ(bench.view<desk::WorkPage>("work").hoses[0].verdict, "does-not-conform");
  EXPECT_TRUE(refused(bench.act("correct", fmt::format(R"("event":"{}","body":"{{}}","reason":"x")",
                                                       bench.last_event())),
                      Kind::refused, "event"));
  ASSERT_EQ(desk::test::told(bench.act("prove-hose", proved(k_seen_none))), "");
  EXPECT_EQ(oil(bench).proofs.size(), 2U) << "the first one stays";
  const auto page = bench.view<desk::HosePage>("hose", R"("hose":"oil")");
  ASSERT_EQ(page.proofs.size(), 2U);
  EXPECT_EQ(page.proofs[1].verdict, "does-not-conform") << "newest first";
}

TEST(Hoses, DrawnAnewItsProofIsOfTheOldDrawing) {
  auto bench = bird_bench();
  bench.done("draw-hose", drawn(R"(,"id":"oil")"));
  ASSERT_TRUE(bench.act("prove-hose", proved(k_seen_none)).empty());
  EXPECT_FALSE(bench.view<desk::WorkPage>("work").hoses[0].drawn_since);
  const auto said = bench.done("draw-hose", drawn(R"(,"id":"oil")"));
  EXPECT_TRUE(says(said.words, "drawn anew"));
  EXPECT_TRUE(says(joined(said.notes), "prove it again"));
  EXPECT_TRUE(bench.view<desk::WorkPage>("work").hoses[0].drawn_since);
  EXPECT_FALSE(bench.view<desk::HosePage>("hose", R"("hose":"oil")").proofs[0].of_this_drawing);
}

TEST(Hoses, WhatDoesNotFitTheDrawingIsTold) {
  auto bench = bird_bench();
  bench.done("draw-hose", drawn(R"(,"id":"oil")"));
  auto other = proved(k_seen_none);
  other.replace(other.find(R"("24 in")"), 7, R"("12 in")");
  ASSERT_TRUE(bench.act("prove-hose", other).empty());
  EXPECT_TRUE(says(joined(bench.answer<desk::Proved>().notes), "is it this hose?"));
}

TEST(Hoses, AProofOfNothingAndADayToComeAreRefused) {
  auto bench = bird_bench();
  EXPECT_TRUE(refused(bench.act("prove-hose", proved(k_seen_none)), Kind::not_found, "hose"));
  bench.done("draw-hose", drawn(R"(,"id":"oil")"));
  EXPECT_TRUE(refused(bench.act("prove-hose", proved(k_seen_none, R"(,"assembled":"2027-01-01")")),
                      Kind::out_of_bounds, "assembled"));
  auto gas = proved(R"("medium":"air")");
  EXPECT_TRUE(refused(bench.act("prove-hose", gas), Kind::refused, "test/medium"));
}

}  // namespace
