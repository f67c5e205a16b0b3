// Behaviour checks for records, worked out beforehand in the project's rules-records reference
// (section 13, R1 to R10 as far as the record knows the matter; the rules behind them are named in
// each row). Words are compared whole; no tolerance.
#include "support/reference_case.hpp"
#include "unit/desk/bench.hpp"

namespace {

using namespace wm;
using desk::test::bird_bench;
using desk::test::joined;
using desk::test::told;

constexpr const char* k_name = R"("name":"Anna Example","signer":"owner")";

std::string has(const std::string& text, const std::string& wanted) {
  return text.find(wanted) != std::string::npos ? "warned" : "not warned: " + text;
}

TEST(RecordsRules, R1MaintenanceEntryWithoutCertificate) {
  auto bench = bird_bench();
  const auto said = bench.done("sign-entry", std::string(R"("text":"oil changed",)") + k_name);
  test::check_text("sign-entry", "R1 entry without certificate number, not under part 43",
                   "14 CFR 43.1(b), 43.9(a)", "warned",
                   has(joined(said.notes), "No certificate number"));
  const auto problems =
      bench.act("sign-entry",
                std::string(R"("text":"inspected","purpose":"condition-inspection",)") + k_name);
  test::check_text("sign-entry", "R1 condition inspection without certificate", "14 CFR 43.11(a)",
                   "certificate", problems.empty() ? "accepted" : problems[0].path);
}

TEST(RecordsRules, R2TheWordAirworthyInAConditionInspection) {
  auto bench = bird_bench();
  const auto said = bench.done(
      "sign-entry", fmt::format(R"("text":"found airworthy","purpose":"condition-inspection",)"
                                R"("certificate":"R-1, invented",{})",
                                k_name));
  test::check_text("sign-entry", "R2 \"airworthy\" in an inspection text",
                   "operating limitations of amateur-built aircraft", "warned",
                   has(joined(said.notes), "condition for safe operation"));
}

TEST(RecordsRules, R7RecurringAt100HoursOr12Months) {
  auto bench = bird_bench();
  bench.done("set-limit", R"("id":"recurring","title":"Recurring task","counter":"engine",)"
                          R"("every_hours":"100 h","every_months":12,"month_rule":"anniversary",)"
                          R"("authority":"law","document":"AD, invented","revision":"rev. 1")");
  bench.day = "2026-05-10";
  bench.done("task-done", R"("limit":"recurring","text":"done by method 2",)"
                          R"("at":[{"counter":"engine","hours":"1520.0 h"}])");
  bench.day = "2026-11-25";
  const auto page = bench.view<desk::DuePage>("due");
  std::string due, document;
  for (const auto& row : page.rows) {
    if (row.id != "recurring") continue;
    due = row.due;
    document = row.document;
  }
  test::check_text("due", "R7 each 100 h or 12 months, done at 1520.0 h on 2026-05-10",
                   "14 CFR 91.417(a)(2)(v)", "1620.0 h or 2027-05-10, whichever comes first", due);
  EXPECT_NE(document.find("rev. 1"), std::string::npos) << "method and revision stay: " << document;
}

TEST(RecordsRules, R8BothIgnitionsInOneStage) {
  auto bench = bird_bench();
  bench.plan("left", "left-magneto");
  bench.plan("right", "right-magneto");
  bench.stage("one", R"("left","right")");
  const auto problems = bench.sign("open-stage", "one");
  test::check_text(
      "plan-stage", "R8 left and right ignition in stage 1",
      "14 CFR 121.374(c)(2), carried over (derived)",
      "\"left\" and \"right\" renew both halves of one redundant pair: the same "
      "mistake made twice would take away both.",
      problems.empty() ? "accepted" : problems[0].what.substr(0, problems[0].what.find(" Put")));
}

TEST(RecordsRules, R9UnsatisfactoryCheckFlight) {
  auto bench = bird_bench();
  bench.ready_to_open();
  ASSERT_TRUE(bench.sign("open-stage", "one").empty());
  bench.done("stage-step", R"("stage":"one","step":"check-flight","result":"unsatisfactory",)"
                           R"("text":"rough")");
  test::check_text("stage-step", "R9 unsatisfactory check flight", "14 CFR 91.407(b)", "held",
                   std::string(bay::word(bench.bird().stages.at("one").state)));
}

TEST(RecordsRules, R10AnEditedEntryKeepsItsOriginal) {
  auto bench = bird_bench();
  bench.done("note-defect", R"("id":"film","text":"oil film, left")");
  const auto original = bench.last_event();
  bench.done(
      "correct",
      fmt::format(
          R"("event":"{}","reason":"other side",)"
          R"("body":"{{\"aircraft\":\"bird\",\"id\":\"film\",\"text\":\"oil film, right\"}}")",
          original));
  const auto& first =
      std::get<bay::DefectNoted>(bench.state.events[bench.state.by_id.at(original)]->payload);
  test::check_text("correct", "R10 original retained", "rules-records, section 7 (derived)",
                   "oil film, left", first.text);
  test::check_text("correct", "R10 correction counts", "rules-records, section 7 (derived)",
                   "oil film, right", bench.bird().defects.at("film").about.text);
  test::check_text("correct", "R10 correction linked", "rules-records, section 7 (derived)",
                   original, bench.state.events.back()->meta.refers_to);
}

}  // namespace
