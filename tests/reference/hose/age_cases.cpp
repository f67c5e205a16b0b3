// Source:    hoses notes, section 11, case 11 (derived there: 32 and 48 quarters from 2Q2018);
//            NAVEDTRA 14018 pp. 5-3, 5-10 (A2Q80 = assembled 2nd quarter 1980; Oct-Dec = 4Q);
//            section 7.1 (MIL-DTL-83797C 3.8: 12 years = 48 quarters).
// Tolerance: exact, quarters and days.
#include <gtest/gtest.h>

#include "hose/age.hpp"
#include "hose/date_code.hpp"
#include "hose/declarations.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm;
using namespace wm::hose;

std::string quarter_due(const HoseAgeAnswer& answer, const std::string& what) {
  for (const auto& f : answer.figures) {
    if (f.what.starts_with(what)) return f.due_quarter;
  }
  return "no such figure";
}

TEST(AgeCases, Case11QuartersFromTheCure) {
  describe::Catalogue catalogue;
  declare(catalogue);
  describe::Context context;
  context.tables = catalogue.tables();
  context.today = quantity::Date{std::chrono::year{2026} / 11 / 25};
  HoseAgeInput in;
  in.kind = HoseKind::elastomer;
  in.liner = LinerCompound::chlorinated_polyethylene;
  in.cure = "2Q2018";
  const auto got = hose_age(in, context);
  ASSERT_TRUE(got);
  test::check_text("hose-age", "case 11: cure 2Q2018, 32 quarters", "hoses notes, case 11",
                   "2Q2026", quarter_due(*got, "acceptance"));
  test::check_text("hose-age", "case 11: cure 2Q2018, 48 quarters",
                   "hoses notes, case 11; MIL-DTL-83797C 3.8", "2Q2030",
                   quarter_due(*got, "age of bulk hose"));
}

TEST(AgeCases, DateCodes) {
  const auto code = read_date_code("A2Q80");
  ASSERT_TRUE(code && code->assembled);
  test::check_text("hose-age", "A2Q80 is the 2nd quarter of 1980", "NAVEDTRA 14018 p. 5-10",
                   "2Q1980", quarter_name(code->last));
  test::check_text("hose-age", "October to December is the 4th quarter", "NAVEDTRA 14018 p. 5-3",
                   "4Q1980", quarter_name(quantity::Date{std::chrono::year{1980} / 10 / 1}));
  test::check_text("hose-age", "January to March is the 1st quarter", "NAVEDTRA 14018 p. 5-3",
                   "1Q1980", quarter_name(quantity::Date{std::chrono::year{1980} / 3 / 31}));
}

}  // namespace
