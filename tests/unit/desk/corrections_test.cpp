// A correction replaces what counts and leaves what was said first in view.
#include "unit/desk/bench.hpp"

namespace {

using namespace wm;
using desk::test::bird_bench;
using desk::test::joined;
using desk::test::refused;
using desk::test::says;

/// The act: which event, its whole body anew.
std::string anew(const std::string& event, const std::string& body) {
  std::string quoted;
  for (const char c : body) quoted += c == '"' ? std::string("\\\"") : std::string(1, c);
  return fmt::format(R"("event":"{}","body":"{}","reason":"mistyped")", event, quoted);
}
constexpr const char* k_read =
    R"("check":"lead-1","instrument":"meter","range":"20 kohm","leads":"nulled","value":"9.00 kohm")";
constexpr const char* k_right = R"({"aircraft":"bird","check":"lead-1","instrument":"meter",)"
                                R"("range":"20 kohm","leads":"nulled","value":"5.00 kohm"})";
std::string reading_event(const desk::test::Bench& bench) {
  return bench.bird().checks.at("lead-1").readings.back().event;
}

TEST(Corrections, ACorrectedReadingIsJudgedAgain) {
  auto bench = bird_bench();
  bench.done("measure", k_read);
  const auto said = bench.done("correct", anew(reading_event(bench), k_right));
  EXPECT_TRUE(says(joined(said.notes), "Judged again: conforms"));
  const auto& readings = bench.bird().checks.at("lead-1").readings;
  ASSERT_EQ(readings.size(), 1U);
  EXPECT_TRUE(readings[0].corrected);
  EXPECT_EQ(readings[0].reading.value->text, "5.00 kohm");
  EXPECT_EQ(readings[0].verdict->verdict, bay::Verdict::conforms);
}

TEST(Corrections, HistoryShowsBoth) {
  auto bench = bird_bench();
  bench.done("measure", k_read);
  const auto event = reading_event(bench);
  bench.done("correct", anew(event, k_right));
  const auto page = bench.view<desk::HistoryPage>("history");
  bool found = false;
  for (const auto& line : page.lines) {
    if (line.event != event) continue;
    found = true;
    EXPECT_TRUE(line.corrected);
    EXPECT_TRUE(says(line.words, "9.00 kohm"));
    EXPECT_TRUE(says(line.corrected_words, "5.00 kohm"));
    EXPECT_EQ(line.correction_reason, "mistyped");
  }
  EXPECT_TRUE(found);
}

TEST(Corrections, TheLastCorrectionCounts) {
  auto bench = bird_bench();
  bench.done("measure", k_read);
  const auto event = reading_event(bench);
  bench.done("correct", anew(event, k_right));
  std::string third = k_right;
  third.replace(third.find("5.00"), 4, "6.00");
  bench.done("correct", anew(event, third));
  EXPECT_EQ(bench.bird().checks.at("lead-1").latest()->reading.value->text, "6.00 kohm");
  EXPECT_EQ(bench.state.corrections.at(event).size(), 2U);
}

TEST(Corrections, FactsAndCorrectionsAreNotCorrected) {
  auto bench = bird_bench();
  bench.done("measure", k_read);
  const auto verdict = bench.last_event();
  EXPECT_TRUE(refused(bench.act("correct", anew(verdict, "{}")), Kind::refused, "event"));
  bench.done("sign-entry", R"("text":"leads read","name":"Anna Example","signer":"owner")");
  EXPECT_TRUE(
      refused(bench.act("correct", anew(bench.last_event(), "{}")), Kind::refused, "event"));
  bench.done("correct", anew(reading_event(bench), k_right));
  const auto& correction = bench.state.events[bench.state.events.size() - 2]->meta.id;
  EXPECT_TRUE(refused(bench.act("correct", anew(correction, "{}")), Kind::refused, "event"));
  EXPECT_TRUE(refused(bench.act("correct", anew("nothing", "{}")), Kind::not_found, "event"));
}

TEST(Corrections, ABodyIsReadByTheSameRules) {
  auto bench = bird_bench();
  bench.done("measure", k_read);
  const auto event = reading_event(bench);
  std::string body = k_right;
  body.replace(body.find("lead-1"), 6, "lead-9");
  EXPECT_TRUE(refused(bench.act("correct", anew(event, body)), Kind::not_found, "body/check"));
  EXPECT_TRUE(refused(
      bench.act("correct", anew(event, R"({"aircraft":"bird","check":"lead-1","value":"5"})")),
      Kind::bad_text, "body/value"));
  EXPECT_FALSE(bench.act("correct", anew(event, "not JSON")).empty());
}

TEST(Corrections, AReadingCorrectedAfterSignatureAmendsTheEntry) {
  auto bench = bird_bench();
  bench.ready_to_open();
  bench.done("measure", std::string(k_read) + R"(,"stage":"one")");
  ASSERT_TRUE(bench.sign("open-stage", "one").empty());
  const auto said = bench.done("correct", anew(reading_event(bench), k_right));
  EXPECT_TRUE(says(joined(said.notes), "amended after signature"));
  const auto page = bench.view<desk::EntriesPage>("entries");
  ASSERT_EQ(page.entries.size(), 1U);
  EXPECT_TRUE(page.entries[0].amended_after_signature);
}

TEST(Corrections, ACounterIsNotCorrectedBackwards) {
  auto bench = bird_bench();
  bench.done("read-counter", R"("at":[{"counter":"engine","hours":"1050.0 h"}])");
  const auto event = bench.last_event();
  const auto body = [](const char* hours) {
    return fmt::format(R"({{"aircraft":"bird","at":[{{"counter":"engine","hours":"{}"}}]}})",
                       hours);
  };
  const auto problems = bench.act("correct", anew(event, body("900.0 h")));
  EXPECT_TRUE(refused(problems, Kind::conflict, "body"));
  EXPECT_NEAR(*bench.bird().engine_hours()->now(), 1050, 1e-9);
  EXPECT_TRUE(bench.act("correct", anew(event, body("1040.0 h"))).empty());
  EXPECT_NEAR(*bench.bird().engine_hours()->now(), 1040, 1e-9);
}

}  // namespace
