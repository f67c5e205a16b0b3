// Laws of date codes, of ages and of the look on condition, over seeded inputs.
#include <gtest/gtest.h>

#include <chrono>
#include <string>

#include "hose/age.hpp"
#include "hose/condition.hpp"
#include "hose/date_code.hpp"
#include "statistics/draws.hpp"

namespace {

using namespace wm;
using namespace wm::hose;
using evidence::Verdict;

int whole(statistics::Draws& draws, int from, int to) {
  return from + static_cast<int>(draws.uniform() * (to - from + 1));
}

quantity::Date random_day(statistics::Draws& draws) {
  const std::chrono::sys_days base{std::chrono::year{1950} / 1 / 1};
  return quantity::Date{base + std::chrono::days{whole(draws, 0, 36000)}};
}

TEST(AgeLaws, QuartersCountBackWhatWasAdded) {
  statistics::Draws draws(41);
  for (int i = 0; i < 20000; ++i) {
    const auto day = random_day(draws);
    const int quarters = whole(draws, 0, 120);
    const auto later = add_quarters(day, quarters);
    ASSERT_TRUE(later.ok());
    ASSERT_EQ(quarters_between(day, later), quarters) << quantity::print_date(day);
    ASSERT_GE(std::chrono::sys_days{later}, std::chrono::sys_days{day});
    // A cure counts from the end of its quarter: there the sums are exact.
    const auto end = end_of_quarter(day);
    const int more = whole(draws, 0, 40);
    ASSERT_EQ(add_quarters(add_quarters(end, quarters), more), add_quarters(end, quarters + more));
    ASSERT_EQ(end_of_quarter(add_quarters(end, quarters)), add_quarters(end, quarters));
  }
}

TEST(AgeLaws, AQuarterIsReadBack) {
  statistics::Draws draws(42);
  for (int i = 0; i < 5000; ++i) {
    const auto day = random_day(draws);
    for (const auto& text : {quarter_name(day), "A" + quarter_name(day)}) {
      const auto span = read_date_code(text);
      ASSERT_TRUE(span) << text;
      ASSERT_LE(span->first, day);
      ASSERT_GE(span->last, day);
      ASSERT_EQ(span->assembled, text[0] == 'A');
    }
  }
}

TEST(AgeLaws, NoTextBreaksTheReader) {
  statistics::Draws draws(43);
  const std::string letters = "0123456789QqAa-/ .x";
  for (int i = 0; i < 20000; ++i) {
    std::string text;
    for (int k = whole(draws, 0, 11); k > 0; --k) {
      text +=
          letters[static_cast<std::size_t>(whole(draws, 0, static_cast<int>(letters.size()) - 1))];
    }
    const auto span = read_date_code(text);
    if (span) {
      ASSERT_TRUE(span->first.ok() && span->last.ok()) << text;
      ASSERT_LE(span->first, span->last) << text;
    } else {
      ASSERT_FALSE(span.error().what.empty()) << text;
    }
  }
}

TEST(AgeLaws, AnEnteredLimitIsPastExactlyAfterItsDueDay) {
  statistics::Draws draws(44);
  for (int i = 0; i < 500; ++i) {
    HoseAgeInput in;
    in.kind = HoseKind::elastomer;
    in.fitting = random_day(draws);
    const auto months = static_cast<std::int64_t>(whole(draws, 1, 240));
    in.own_limits = {{AgeClock::service, AgeFrom::fitting, months, ""}};
    in.on = add_months(*in.fitting, static_cast<int>(months));
    ASSERT_EQ(hose_age(in, {})->standing, AgeStanding::within_limit);
    in.on = quantity::Date{std::chrono::sys_days{*in.on} + std::chrono::days{1}};
    ASSERT_EQ(hose_age(in, {})->standing, AgeStanding::past_limit);
  }
}

Seen random_seen(statistics::Draws& draws) {
  const double p = draws.uniform();
  if (p < 0.3) return Seen::not_looked;
  return p < 0.9 ? Seen::no : Seen::yes;
}

HoseConditionInput random_look(statistics::Draws& draws) {
  HoseConditionInput in;
  in.kind = draws.uniform() < 0.5 ? HoseKind::elastomer : HoseKind::ptfe;
  if (draws.uniform() < 0.8) in.drops_per_hour = draws.uniform() < 0.7 ? 0.0 : 2 * draws.uniform();
  if (draws.uniform() < 0.8) in.wires_in_one_plait = whole(draws, 0, 2);
  if (draws.uniform() < 0.8) in.wires_per_foot = whole(draws, 0, 7);
  for (auto* seen : {&in.wire_where_kink, &in.cover_parted, &in.cracked, &in.cold_flow,
                     &in.fabric_shows, &in.abraded_or_kinked, &in.blistered, &in.rust, &in.twisted,
                     &in.end_moved, &in.swage_failed}) {
    *seen = random_seen(draws);
  }
  in.sleeve = static_cast<SleeveState>(whole(draws, 0, 6));
  in.nut = static_cast<NutLeak>(whole(draws, 0, 3));
  return in;
}

TEST(ConditionLaws, OneMoreFindingNeverSavesAHose) {
  statistics::Draws draws(45);
  for (int i = 0; i < 800; ++i) {
    auto in = random_look(draws);
    const auto before = hose_condition(in, {})->verdict;
    const auto field = whole(draws, 0, 3);
    if (field == 0) in.rust = Seen::yes;
    if (field == 1) in.end_moved = Seen::yes;
    if (field == 2) in.wires_in_one_plait = 2;
    if (field == 3) in.sleeve = SleeveState::oil_soaked;
    const auto after = hose_condition(in, {})->verdict;
    ASSERT_EQ(after, Verdict::does_not_conform) << static_cast<int>(before);
  }
}

TEST(ConditionLaws, ConformsOnlyWithNothingLeftUnseen) {
  statistics::Draws draws(46);
  int conforms = 0;
  for (int i = 0; i < 5000; ++i) {
    auto in = random_look(draws);
    if (i % 2 == 0) {  // mostly sound, so that some conform
      for (auto* seen : {&in.wire_where_kink, &in.cover_parted, &in.cracked, &in.cold_flow,
                         &in.fabric_shows, &in.abraded_or_kinked, &in.blistered, &in.rust,
                         &in.twisted, &in.end_moved, &in.swage_failed}) {
        if (*seen == Seen::yes || draws.uniform() < 0.9) *seen = Seen::no;
      }
    }
    const auto got = hose_condition(in, {});
    if (got->verdict != Verdict::conforms) continue;
    ++conforms;
    ASSERT_TRUE(got->not_looked_at.empty());
    for (const auto& c : got->criteria) {
      ASSERT_TRUE(!c.counts || c.verdict == Verdict::conforms) << c.what;
    }
  }
  EXPECT_GT(conforms, 10);
}

}  // namespace
