#include "evidence/siblings.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace wm::evidence {
namespace {

TEST(Siblings, OneStandsOut) {
  const std::vector<double> leads{15.1, 15.4, 15.2, 15.3, 22.0, 15.2};
  const auto c = compare_siblings(leads, 0.05);
  ASSERT_TRUE(c);
  for (std::size_t i = 0; i < leads.size(); ++i)
    EXPECT_EQ(c->each[i].standing, i == 4 ? Standing::stands_out : Standing::like_others) << i;
  EXPECT_NE(c->in_words.find("no maker's limit: compared with its siblings"), std::string::npos);
  EXPECT_NE(c->in_words.find("1 of 6 stands out"), std::string::npos) << c->in_words;
}

TEST(Siblings, TheModifiedScoreOfTheHandbook) {
  // 0.6745 (x - median) / MAD: values 1 2 3 4 10: median 3, MAD 1, score of 10 is 4.7213.
  const auto c = compare_siblings(std::vector<double>{1, 2, 3, 4, 10}, 0.0);
  EXPECT_NEAR(c->each[4].score, 0.6744898 * 7.0, 1e-6);
  EXPECT_EQ(c->each[4].standing, Standing::stands_out);
}

TEST(Siblings, ThreeThatAgreeByChanceDoNotAccuseTheFourth) {
  // Alike to the last digit, the fourth one count off: within the meter's doubt.
  const auto c = compare_siblings(std::vector<double>{15.2, 15.2, 15.2, 15.3}, 0.1);
  EXPECT_EQ(c->each[3].standing, Standing::like_others);
  EXPECT_EQ(c->scale, 0.1);
  // Without any known doubt a difference from equals is all there is to go by.
  const auto bare = compare_siblings(std::vector<double>{15.2, 15.2, 15.2, 15.3}, 0.0);
  EXPECT_EQ(bare->each[3].standing, Standing::stands_out);
}

TEST(Siblings, TooFewAreShownNotCompared) {
  const auto c = compare_siblings(std::vector<double>{15.0, 25.0}, 0.1);
  EXPECT_EQ(c->each[1].standing, Standing::too_few);
  EXPECT_NE(c->in_words.find("too few"), std::string::npos);
}

TEST(Siblings, AllAlikeMayAllHaveAged) {
  const auto c = compare_siblings(std::vector<double>{15.0, 15.1, 15.2}, 0.1);
  EXPECT_NE(c->in_words.find("aged together"), std::string::npos);
}

TEST(Siblings, Refusals) {
  EXPECT_EQ(compare_siblings({}, 0.1).error().kind, Kind::missing);
  EXPECT_EQ(compare_siblings(std::vector<double>{1, INFINITY}, 0.1).error().kind,
            Kind::out_of_bounds);
  EXPECT_EQ(compare_siblings(std::vector<double>{1, 2}, -0.1).error().kind, Kind::out_of_bounds);
}

TEST(Baseline, AChangeMustExceedItsOwnDoubt) {
  EXPECT_EQ(compare_baseline(15.4, 0.15, 15.0, 0.15)->drift, Drift::unchanged);
  EXPECT_EQ(compare_baseline(15.5, 0.15, 15.0, 0.15)->drift, Drift::risen);
  EXPECT_EQ(compare_baseline(14.5, 0.15, 15.0, 0.15)->drift, Drift::fallen);
  const auto c = compare_baseline(16.5, 0.15, 15.0, 0.15);
  EXPECT_NEAR(c->relative_change, 0.1, 1e-12);
  EXPECT_NE(c->in_words.find("no maker's limit"), std::string::npos);
  EXPECT_EQ(compare_baseline(1.0, 0.0, 0.0, 0.0)->relative_change, 0.0);
  EXPECT_EQ(compare_baseline(NAN, 0.1, 15.0, 0.1).error().kind, Kind::out_of_bounds);
  EXPECT_EQ(compare_baseline(1, -0.1, 15.0, 0.1).error().kind, Kind::out_of_bounds);
}

}  // namespace
}  // namespace wm::evidence
