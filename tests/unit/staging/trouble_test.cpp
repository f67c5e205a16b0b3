// The table of troubles: every row has its source, every check that is judged by a calculation
// names one that there is, and words find their symptom.
#include "staging/trouble.hpp"

#include <gtest/gtest.h>

#include <set>

#include "calculation/catalogue.hpp"

namespace wm::staging {
namespace {

describe::Context context() {
  describe::Context out;
  out.tables = calculation::catalogue().tables();
  return out;
}

TEST(Trouble, EachRowHasItsSourceAndItsCalculationExists) {
  const auto here = context();
  const auto* table = here.table("trouble");
  ASSERT_NE(table, nullptr);
  for (const auto& row : table->rows) {
    EXPECT_FALSE(row[7].empty()) << row[3];
    EXPECT_TRUE(row[8] == "secondary" || row[8] == "common-practice") << row[8];
    EXPECT_EQ(row[8] == "common-practice", row[7] == "common practice, no source") << row[3];
    if (!row[5].empty()) {
      EXPECT_NE(calculation::catalogue().find(row[5]), nullptr) << row[5] << " of " << row[3];
    }
  }
}

TEST(Trouble, AKeyAndAFewWordsFindTheSame) {
  const auto by_key = trouble_causes({"click-only"}, context());
  const auto by_words = trouble_causes({"Click, does not turn"}, context());
  ASSERT_TRUE(by_key && by_words);
  EXPECT_EQ(by_key->symptom, by_words->symptom);
  EXPECT_EQ(by_key->causes.front().cause, "battery weak");
  EXPECT_EQ(by_key->causes.front().order, 1);
  EXPECT_EQ(by_key->others.size(), 19U);
}

TEST(Trouble, CrankingComesWithItsCautionFirst) {
  const auto told = trouble_causes({"slow-crank"}, context());
  ASSERT_TRUE(told);
  ASSERT_FALSE(told->first.empty());
  EXPECT_NE(told->first.front().find("Fuel off, ignition proven dead"), std::string::npos);
}

TEST(Trouble, AnUnknownOrAmbiguousSymptomIsAnsweredWithWhatThereIs) {
  const auto none = trouble_causes({"wings fell off"}, context());
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error()[0].path, "symptom");
  EXPECT_NE(none.error()[0].expected.find("kick-back"), std::string::npos);
  const auto two = trouble_causes({"misfires"}, context());
  ASSERT_FALSE(two);
  EXPECT_NE(two.error()[0].what.find("fits 2 symptoms"), std::string::npos) << two.error()[0].what;
}

}  // namespace
}  // namespace wm::staging
