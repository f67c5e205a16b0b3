#include "drawing/marks.hpp"

#include <gtest/gtest.h>

#include <limits>

#include "drawing/palette.hpp"
#include "drawing/svg.hpp"
#include "outside_tools.hpp"
#include "sheet_checks.hpp"

namespace wm::drawing {
namespace {

constexpr double k_nan = std::numeric_limits<double>::quiet_NaN();

StripeMark mark(StripeState state, double used = 0, double uncertainty = 0) {
  return {state, used, uncertainty, false, "starter contactor", "0.09 V of 0.20 V at 180 A",
          6.4,   true};
}

/// Left edges of filled lacquer rectangles: upper half, lower half.
std::vector<Rect> lacquered(const Page& page) {
  std::vector<Rect> out;
  for (const Item& item : page.items)
    if (const auto* r = std::get_if<Rect>(&item))
      if (r->fill == Role::lacquer) out.push_back(*r);
  return out;
}
const Line& limit_line(const Page& page) {
  for (const Item& item : page.items)
    if (const auto* l = std::get_if<Line>(&item))
      if (l->pen.dash_on > 0) return *l;
  throw std::runtime_error{"no limit line"};
}
std::size_t ragged(const Page& page) {
  std::size_t n = 0;
  for (const Item& item : page.items) n += std::holds_alternative<Path>(item);
  return n;
}

TEST(StripeWords, SayWhatTheShapeSays) {
  const auto used = [](double share) { return stripe_words(mark(StripeState::used, share)); };
  EXPECT_EQ(used(0), "nothing used yet");
  EXPECT_EQ(used(0.001), "less than 1 % used");
  EXPECT_EQ(used(0.45), "45 % used");
  EXPECT_EQ(used(0.998), "more than 99 % used");
  EXPECT_EQ(used(1), "100 % used");
  EXPECT_EQ(used(1.0001), "past limit");
  EXPECT_EQ(stripe_words(mark(StripeState::undecided, 0.9)), "undecided");
  EXPECT_EQ(stripe_words(mark(StripeState::unknown)), "unknown");
  EXPECT_EQ(stripe_words(mark(StripeState::not_tested)), "not tested");
  StripeMark drifting = mark(StripeState::used, 0.45);
  drifting.drifting = true;
  EXPECT_EQ(stripe_words(drifting), "45 % used, drifting");
}

TEST(Stripe, LowerHalfIsDisplacedByTheShareUsed) {
  // Height 6.4 mm: one grid unit is 0.1 mm; the allowance is 70 units long.
  for (double used : {0.0, 0.25, 0.45, 1.0}) {
    const auto got = stripe(mark(StripeState::used, used));
    ASSERT_TRUE(got);
    const auto halves = lacquered(got->page);
    ASSERT_EQ(halves.size(), 2U);
    EXPECT_NEAR(halves[1].at.x - halves[0].at.x, used * 7.0, 1e-9);
    EXPECT_NEAR(halves[1].width, halves[0].width, 1e-9);
    EXPECT_EQ(ragged(got->page), 0U);
  }
  // At the limit the middle of the lower half is on the dotted line.
  const auto full = stripe(mark(StripeState::used, 1));
  const auto halves = lacquered(full->page);
  EXPECT_NEAR(halves[1].at.x + halves[1].width / 2, limit_line(full->page).from.x, 1e-9);
}

TEST(Stripe, PastTheLimitItIsInTwoPiecesClearOfTheLimit) {
  for (double used : {1.001, 1.07, 2.0, 1000.0}) {
    const auto got = stripe(mark(StripeState::used, used));
    ASSERT_TRUE(got);
    EXPECT_TRUE(lacquered(got->page).empty());
    ASSERT_EQ(ragged(got->page), 2U) << used;
    const double limit = limit_line(got->page).from.x;
    int beyond = 0;
    for (const Item& item : got->page.items)
      if (const auto* p = std::get_if<Path>(&item)) {
        bool clear = true;
        for (const Point& at : p->points) {
          clear = clear && at.x > limit;
          EXPECT_LE(at.x, 22.0) << "on the plate";
        }
        beyond += clear;
      }
    EXPECT_EQ(beyond, 1);
  }
}

TEST(Stripe, UndecidedIsHatchedAsWideAsItsUncertainty) {
  const auto got = stripe(mark(StripeState::undecided, 0.9, 0.2));
  ASSERT_TRUE(got);
  EXPECT_EQ(lacquered(got->page).size(), 1U) << "the upper half stands";
  bool found = false;
  std::size_t hatching = 0;
  for (const Item& item : got->page.items) {
    if (const auto* r = std::get_if<Rect>(&item); r != nullptr && r->fill == Role::zinc_light) {
      EXPECT_NEAR(r->width, 2 * 0.2 * 7.0, 1e-9);
      EXPECT_NEAR(r->at.x + r->width / 2, 4.0 + 0.9 * 7.0, 1e-9);
      found = true;
    }
    if (const auto* l = std::get_if<Line>(&item)) hatching += l->pen.dash_on == 0;
  }
  EXPECT_TRUE(found);
  EXPECT_GE(hatching, 3U);
}

TEST(Stripe, UnknownAndNotTestedAreEmptyOutlinesAsLargeAsAnyOther) {
  const auto whole = stripe(mark(StripeState::used, 0.5));
  for (StripeState state : {StripeState::unknown, StripeState::not_tested}) {
    const auto got = stripe(mark(state));
    ASSERT_TRUE(got);
    EXPECT_TRUE(lacquered(got->page).empty());
    EXPECT_EQ(got->page.height, whole->page.height);
    const auto* outline = std::get_if<Rect>(&got->page.items[2]);
    ASSERT_NE(outline, nullptr);
    EXPECT_EQ(outline->fill, Role::zinc_light);
    EXPECT_GT(outline->pen.width, 0);
    EXPECT_GT(outline->height, lacquered(whole->page)[0].height * 2 - 1e-9);
  }
}

TEST(Stripe, WordsStandBesideAndAreSpoken) {
  const auto got = stripe(mark(StripeState::used, 0.45));
  ASSERT_TRUE(got);
  EXPECT_EQ(got->title, "starter contactor: 45 % used");
  EXPECT_EQ(got->description, "0.09 V of 0.20 V at 180 A");
  const std::string text = test::all_text({got->page});
  EXPECT_NE(text.find("45 % used"), std::string::npos);
  EXPECT_NE(text.find("0.09 V of 0.20 V"), std::string::npos);
  const auto drawn = svg(*got);
  ASSERT_TRUE(drawn);
  EXPECT_NE(drawn->find("<title id=\"drawing-title\">starter contactor: 45 % used</title>"),
            std::string::npos);
  EXPECT_NE(drawn->find("<desc id=\"drawing-desc\">0.09 V of 0.20 V at 180 A</desc>"),
            std::string::npos);
  const TextMeasurer measurer;
  for (double height : {2.0, 6.35, 12.0, 100.0}) {
    StripeMark m = mark(StripeState::used, 0.45);
    m.height = height;
    test::expect_tidy(stripe(m)->page, measurer, 0);
  }
}

TEST(Stripe, WholeSignStaysInsideItsPage) {
  for (StripeState state : {StripeState::used, StripeState::undecided, StripeState::unknown})
    for (double used : {0.0, 0.5, 1.5, 1e6})
      for (double uncertainty : {0.0, 0.1, 1e6}) {
        StripeMark m = mark(state, used, uncertainty);
        m.with_words = false;
        const auto got = stripe(m);
        ASSERT_TRUE(got);
        for (const Item& item : got->page.items) {
          if (const auto* r = std::get_if<Rect>(&item)) {
            EXPECT_GE(r->at.x, 0);
            EXPECT_LE(r->at.x + r->width, got->page.width + 1e-9);
          }
          if (const auto* l = std::get_if<Line>(&item)) {
            EXPECT_GE(l->from.x, 0);
            EXPECT_LE(l->to.x, got->page.width + 1e-9);
          }
        }
      }
}

TEST(Stripe, RefusesSharesThatAreNone) {
  for (double bad : {-0.1, k_nan, std::numeric_limits<double>::infinity()}) {
    EXPECT_FALSE(stripe(mark(StripeState::used, bad)));
    EXPECT_FALSE(stripe(mark(StripeState::undecided, 0.5, bad)));
  }
  StripeMark m = mark(StripeState::used, 0.5);
  m.height = 0;
  EXPECT_FALSE(stripe(m));
}

TEST(Palette, StripeReadsInGreyOnItsPlates) {
  // The edge of the lacquer carries the shape: 3:1 against what it lies on (WCAG 2.2,
  // 1.4.11 non-text contrast), and contrast is of luminance alone, hence also in grey.
  for (Ground ground : {Ground::day, Ground::night, Ground::print})
    for (Role plate : {Role::zinc, Role::zinc_dark, Role::zinc_light}) {
      EXPECT_GE(contrast(colour(Role::lacquer_text, ground), colour(plate, ground)), 3.0);
      EXPECT_GE(contrast(colour(Role::ink, ground), colour(plate, ground)), 3.0);
    }
}

TEST(Palette, TextReadsOnEveryGround) {
  for (Ground ground : {Ground::day, Ground::night, Ground::print})
    for (Role role : {Role::ink, Role::second_ink, Role::lacquer_text})
      for (Role under : {Role::paper, Role::zinc_light, Role::zinc})
        EXPECT_GE(contrast(colour(role, ground), colour(under, ground)), 4.5)
            << role_word(role) << " on " << role_word(under);
}

AcceptanceBand band() {
  return {"lead 2 bottom",
          BandLimit{3, "lowest 3.0 kΩ"},
          BandLimit{8, "highest 8.0 kΩ"},
          7.9,
          0.2,
          "7.9 ± 0.2 kΩ",
          "undecided",
          "maker's sheet, rev. C",
          100};
}
std::optional<Circle> dot_of(const Page& page) {
  for (const Item& item : page.items)
    if (const auto* c = std::get_if<Circle>(&item))
      if (c->fill == Role::lacquer) return *c;
  return {};
}

TEST(AcceptanceBand, ReadingStandsInProportionToItsLimits) {
  AcceptanceBand b = band();
  b.reading = 5.5;
  const auto got = acceptance_band(b);
  ASSERT_TRUE(got);
  std::vector<double> limits;
  for (const Item& item : got->page.items)
    if (const auto* l = std::get_if<Line>(&item))
      if (l->pen.role == Role::ink) limits.push_back(l->from.x);
  ASSERT_EQ(limits.size(), 2U);
  ASSERT_TRUE(dot_of(got->page));
  EXPECT_NEAR(dot_of(got->page)->centre.x, (limits[0] + limits[1]) / 2, 1e-9);
  const double mm_per_kohm = (limits[1] - limits[0]) / 5;
  for (const Item& item : got->page.items)
    if (const auto* l = std::get_if<Line>(&item);
        l != nullptr && l->pen.role == Role::lacquer_text && l->from.y == l->to.y) {
      EXPECT_NEAR(l->to.x - l->from.x, 0.4 * mm_per_kohm, 1e-9);
    }
}

TEST(AcceptanceBand, SpeaksItsWords) {
  const auto got = acceptance_band(band());
  ASSERT_TRUE(got);
  EXPECT_EQ(got->title, "lead 2 bottom: undecided");
  EXPECT_EQ(got->description,
            "reading 7.9 ± 0.2 kΩ; lowest 3.0 kΩ; highest 8.0 kΩ; maker's sheet, rev. C");
}

TEST(AcceptanceBand, LabelsNeverCollideOrLeave) {
  const TextMeasurer measurer;
  AcceptanceBand b = band();
  for (double reading : {-1e9, -5.0, 3.0, 5.0, 8.0, 9.0, 30.0, 1e9})
    for (double width : {40.0, 60.0, 100.0, 300.0})
      for (double upper : {3.0, 3.001, 3.5, 8.0, 1e12}) {
        b.reading = reading;
        b.width = width;
        b.upper->value = upper;
        const auto got = acceptance_band(b);
        ASSERT_TRUE(got);
        test::expect_tidy(got->page, measurer, 0);
      }
}

TEST(AcceptanceBand, AReadingFarOutSaysThatItIsOffTheScale) {
  AcceptanceBand b = band();
  b.reading = 4000;
  b.reading_text = "4.0 MΩ";
  const auto got = acceptance_band(b);
  ASSERT_TRUE(got);
  EXPECT_FALSE(dot_of(got->page));
  EXPECT_NE(test::all_text({got->page}).find("off this scale"), std::string::npos);
}

TEST(AcceptanceBand, OneLimitOrNoReadingIsEnough) {
  AcceptanceBand b = band();
  b.lower.reset();
  EXPECT_TRUE(acceptance_band(b));
  b.reading.reset();
  EXPECT_NE(acceptance_band(b)->description.find("no reading"), std::string::npos);
  b.upper = BandLimit{-5, "at most -5 °C"};
  EXPECT_TRUE(acceptance_band(b));
  b.upper = BandLimit{0, "at most 0 V"};
  EXPECT_TRUE(acceptance_band(b));
  b.upper.reset();
  EXPECT_EQ(acceptance_band(b).error().kind, Kind::missing);
  b.lower = BandLimit{0, "at least 0 V"};
  EXPECT_TRUE(acceptance_band(b));
}

TEST(AcceptanceBand, RefusesWhatCannotBeDrawn) {
  AcceptanceBand b = band();
  b.reading = k_nan;
  EXPECT_EQ(acceptance_band(b).error().kind, Kind::out_of_bounds);
  b = band();
  b.uncertainty = -1;
  EXPECT_EQ(acceptance_band(b).error().kind, Kind::out_of_bounds);
  b = band();
  b.lower->value = 9;
  EXPECT_EQ(acceptance_band(b).error().kind, Kind::conflict);
  b = band();
  b.width = 5;
  EXPECT_EQ(acceptance_band(b).error().kind, Kind::out_of_bounds);
}

Trend lead_trend() {
  return {"lead 4 top",
          {{0, 5.1, 0.2}, {100, 5.3, 0.2}, {300, 5.6, 0.2}, {400, 5.9, 0.2}},
          "Mar 2023",
          "Nov 2026",
          "5.9 kΩ",
          BandLimit{3, "lowest 3.0 kΩ"},
          BandLimit{8, "highest 8.0 kΩ"},
          "+0.4 kΩ a year",
          90,
          32};
}

TEST(Trend, LastReadingIsTheOneInLacquerAndLabelled) {
  const auto got = trend(lead_trend());
  ASSERT_TRUE(got);
  std::vector<Circle> dots;
  for (const Item& item : got->page.items)
    if (const auto* c = std::get_if<Circle>(&item)) dots.push_back(*c);
  ASSERT_EQ(dots.size(), 4U);
  EXPECT_EQ(dots.back().fill, Role::lacquer);
  EXPECT_EQ(dots.front().fill, Role::ink);
  for (std::size_t i = 1; i < 4; ++i) {
    EXPECT_GT(dots[i].centre.x, dots[i - 1].centre.x);
    EXPECT_LT(dots[i].centre.y, dots[i - 1].centre.y) << "a larger reading stands higher";
  }
  // 0, 100, 300, 400: the gaps keep their proportion.
  EXPECT_NEAR(dots[2].centre.x - dots[1].centre.x, 2 * (dots[1].centre.x - dots[0].centre.x), 1e-9);
  EXPECT_EQ(got->description,
            "4 readings; last 5.9 kΩ; highest 8.0 kΩ; lowest 3.0 kΩ; +0.4 kΩ a year");
  const TextMeasurer measurer;
  test::expect_tidy(got->page, measurer, 0);
}

TEST(Trend, OnePointEqualPointsAndLongWordsAreFine) {
  const TextMeasurer measurer;
  Trend t = lead_trend();
  t.points = {{5, 5, 0}};
  t.lower.reset();
  t.upper.reset();
  t.words = std::string(300, 'w');
  t.name = std::string(300, 'n');
  t.last_text = std::string(100, '9');
  const auto got = trend(t);
  ASSERT_TRUE(got);
  test::expect_tidy(got->page, measurer, 0);
  EXPECT_TRUE(svg(*got));
}

TEST(Trend, RefusesWhatCannotBeDrawn) {
  Trend t = lead_trend();
  t.points.clear();
  EXPECT_EQ(trend(t).error().kind, Kind::missing);
  t = lead_trend();
  t.points[1].when = 900;
  EXPECT_EQ(trend(t).error().kind, Kind::out_of_bounds);
  t = lead_trend();
  t.points[1].value = k_nan;
  EXPECT_EQ(trend(t).error().kind, Kind::out_of_bounds);
  t = lead_trend();
  t.width = 1;
  EXPECT_EQ(trend(t).error().kind, Kind::out_of_bounds);
}

}  // namespace
}  // namespace wm::drawing
