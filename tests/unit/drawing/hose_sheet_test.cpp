#include "drawing/hose_sheet.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "drawing/detail/hose_space.hpp"
#include "drawing/pdf.hpp"
#include "drawing/svg.hpp"
#include "outside_tools.hpp"
#include "sample_hose.hpp"
#include "sheet_checks.hpp"

namespace wm::drawing {
namespace {

using test::answer_of;
using test::length;
using test::sample_about;
using test::sample_hose;
using test::two_elbows;

std::string words(const Page& page) { return test::words_of(test::all_text({page})); }

/// Laid out on both papers: nothing on top of anything, all within the margins. Gives the A4 page.
Page tidy(const hose::HoseSheetInput& in, const HoseSheetAbout& about = sample_about()) {
  const auto answer = answer_of(in);
  const TextMeasurer measurer;
  Page first;
  for (const Paper paper : {Paper::letter, Paper::a4}) {
    const auto page = lay_out_hose(in, answer, about, paper);
    EXPECT_TRUE(page) << (page ? "" : page.error().what);
    if (!page) return {};
    test::expect_tidy(*page, measurer, 9);
    for (const Item& item : page->items)
      if (const auto* path = std::get_if<Path>(&item))
        for (const Point& p : path->points) {
          EXPECT_TRUE(p.x >= 5 && p.x <= page->width - 5 && p.y >= 5 && p.y <= page->height - 5)
              << p.x << ' ' << p.y;
        }
    first = *page;
  }
  EXPECT_EQ(first.width, 297);
  EXPECT_EQ(first.height, 210);
  return first;
}

TEST(HoseSheet, SaysAllThatBelongsOnIt) {
  auto in = sample_hose();
  in.keep_outs = {test::tube_beside("exhaust stack 3")};
  const auto text = words(tidy(in));
  for (const char* part : {"SIDE",
                           "FRONT",
                           "TOP",
                           "third-angle",
                           "x 14.00 in",
                           "y 13.00 in",
                           "z 4.000 in",
                           "near",
                           "far",
                           "exhaust stack 3",
                           "tightest",
                           "shortest",
                           "longest",
                           "best",
                           "chosen",
                           "shortened by pressure",
                           "lengthened",
                           "Clocking",
                           "In words",
                           "oil cooler, inlet",
                           "engine, oil outlet",
                           "straight swivel",
                           "rigid 1.5 in",
                           "AC 43.13-1B table 9-3",
                           "AC 43.13-1B CHG 1, fig. 9-9",
                           "2 in from exhaust stack 3: entered",
                           "Working pressure: not entered",
                           "Proof pressure: not entered",
                           "never with air",
                           "licensed practice decide",
                           "not twisted",
                           "1:5",
                           "inches",
                           "1 of 1",
                           "2026-11-25",
                           "checked by",
                           "drawn by",
                           "oil cooler, pressure side"})
    EXPECT_NE(text.find(part), std::string::npos) << part << "\nin: " << text;
}

TEST(HoseSheet, PressuresStandThereWithTheirSource) {
  auto in = sample_hose();
  in.working_pressure = quantity::read<quantity::PressureGauge>("90 psi").value();
  in.proof_pressure = quantity::read<quantity::PressureGauge>("4000 psi").value();
  EXPECT_NE(words(tidy(in)).find("Proof pressure 4000 psi: its source not given"),
            std::string::npos);
  in.proof_source = "AC 43.13-1B table 9-3";
  const auto text = words(tidy(in));
  EXPECT_NE(text.find("Proof pressure 4000 psi: AC 43.13-1B table 9-3"), std::string::npos);
  EXPECT_NE(text.find("Working pressure with surges 90 psi"), std::string::npos);
}

TEST(HoseSheet, TwoElbowsHaveTheirClockFaceAndMetricFigures) {
  const auto text = words(tidy(two_elbows()));
  for (const char* part :
       {"near elbow", "clockwise from the near one", "seen from the near end", "+-", "x 420.0 mm",
        "figures in mm", "90 degree elbow", "drop 30 mm", "port (0, 0, 1)"})
    EXPECT_NE(text.find(part), std::string::npos) << part;
}

TEST(HoseSheet, LacquerIsOnlyOnTheStripeOfTheLength) {
  const auto page = tidy(sample_hose());
  int stripes = 0;
  for (const Item& item : page.items) {
    if (const auto* rect = std::get_if<Rect>(&item)) stripes += rect->fill == Role::lacquer;
    if (const auto* path = std::get_if<Path>(&item)) {
      EXPECT_NE(path->fill, Role::lacquer);
      EXPECT_NE(path->pen.role, Role::lacquer_text);
    }
  }
  EXPECT_EQ(stripes, 2);
}

TEST(HoseSheet, AStraightRunIsDrawnToo) {
  auto in = sample_hose();
  in.far_end.seat = test::place("20 in", "0 in", "0 in");
  in.far_end.leaves = {-1, 0, 0};
  const auto text = words(tidy(in));
  EXPECT_NE(text.find("x 20.00 in"), std::string::npos);
  EXPECT_EQ(text.find("y 0"), text.find("y 0 in,")) << "no dimension of nothing";
}

TEST(HoseSheet, AUBendOnePlaneIsDrawnToo) {
  auto in = sample_hose();
  in.near_end.leaves = in.far_end.leaves = {0, 0, -1};
  in.far_end.seat = test::place("12 in", "0 in", "0 in");
  EXPECT_NE(words(tidy(in)).find("tightest"), std::string::npos);
}

TEST(HoseSheet, WhereNoLengthWillDoTheSheetSaysSo) {
  auto in = sample_hose();
  in.far_end.seat = test::place("7 in", "4 in", "0 in");
  in.least_radius = length("9 in");
  EXPECT_NE(words(tidy(in)).find("no length keeps the least radius"), std::string::npos);
}

TEST(HoseSheet, TwelveThingsAndLongNamesStayOnOnePage) {
  auto in = sample_hose();
  in.title =
      "oil cooler, pressure side, from the inlet of the cooler behind the left baffle to "
      "the outlet of the engine above the accessory case";
  in.near_at = in.far_at =
      "a fitting whose name is so long that nobody would ever write it all "
      "down, but somebody did, and here it stands";
  for (int i = 0; i < 12; ++i) {
    auto thing = test::tube_beside("a thing with quite a long name, number " + std::to_string(i));
    auto& tube = std::get<hose::TubeShape>(thing.shape);
    tube.from.z = tube.to.z = length(std::to_string(-4 - i) + " in");
    in.keep_outs.push_back(std::move(thing));
  }
  in.keep_outs[3].shape = hose::BallShape{test::place("4 in", "9 in", "8 in"), length("1 in")};
  in.keep_outs[4].shape = hose::WallShape{test::place("18 in", "0 in", "0 in"), {-1, 0, 0.2}};
  in.keep_outs[5].shape = hose::BoxShape{test::place("4 in", "10 in", "2 in"), length("3 in"),
                                         length("2 in"), length("2 in")};
  const auto text = words(tidy(in));
  EXPECT_NE(text.find("number 11"), std::string::npos) << text;
  EXPECT_NE(text.find("never with air"), std::string::npos);
}

TEST(HoseSheet, AListTooLongForThePageSaysWhereTheRestStands) {
  auto in = sample_hose();
  auto answer = answer_of(in);
  for (int i = 0; i < 200; ++i)
    answer.length.near.push_back({"thing " + std::to_string(i),
                                  length("5 in").value,
                                  length("2 in").value,
                                  length("3 in").value,
                                  {}});
  const auto page = lay_out_hose(in, answer, sample_about(), Paper::a4);
  ASSERT_TRUE(page);
  test::expect_tidy(*page, TextMeasurer{}, 9);
  const auto text = words(*page);
  EXPECT_NE(text.find("more: see the answer of hose-length"), std::string::npos) << text;
  EXPECT_NE(text.find("never with air"), std::string::npos) << "cautions are never cut";
  EXPECT_NE(text.find("not twisted"), std::string::npos);
}

TEST(HoseSheet, ATitleWithoutEndIsRefused) {
  auto in = sample_hose();
  const auto answer = answer_of(in);
  in.title = std::string(3000, 'x');
  const auto page = lay_out_hose(in, answer, sample_about(), Paper::a4);
  ASSERT_FALSE(page);
  EXPECT_EQ(page.error().kind, Kind::out_of_bounds);
  EXPECT_EQ(page.error().path, "title");
}

TEST(HoseSheet, WordsWithoutEndAreRefused) {
  const auto in = sample_hose();
  auto about = sample_about();
  about.cautions.assign(400, "a caution that is never left out");
  const auto page = lay_out_hose(in, answer_of(in), about, Paper::a4);
  ASSERT_FALSE(page);
  EXPECT_EQ(page.error().kind, Kind::out_of_bounds);
}

TEST(HoseSheet, AnAnswerWithoutPointsIsStillAPage) {
  const auto in = sample_hose();
  hose::HoseSheetAnswer bare;
  bare.length.best = bare.shape.overall = length("20 in").value;
  EXPECT_TRUE(lay_out_hose(in, bare, sample_about(), Paper::a4));
}

TEST(HoseSheet, AsPdfItIsOnePageWithItsFigures) {
  if (!test::have("pdftotext")) GTEST_SKIP() << "pdftotext (package poppler-utils) not installed";
  const auto page = tidy(sample_hose());
  const auto bytes = pdf(std::vector<Page>{page}, {"t", "s", "2026-11-25"});
  ASSERT_TRUE(bytes);
  const test::TemporaryFile file{".pdf", *bytes};
  const auto text = test::words_of(test::run("pdftotext -layout " + file.path() + " -").output);
  for (const char* part : {"x 14.00 in", "y 13.00 in", "1:5", "5.015 in"})
    EXPECT_NE(text.find(part), std::string::npos) << part;
  EXPECT_NE(test::run("pdfinfo " + file.path()).output.find("Pages:           1"),
            std::string::npos);
}

TEST(HoseSheet, AsSvgItIsWellFormedWhateverItsNames) {
  if (!test::have("xmllint")) GTEST_SKIP() << "xmllint (package libxml2-utils) not installed";
  auto in = sample_hose();
  in.title = "<script>&\"\x01";
  in.keep_outs = {test::tube_beside("</text><script>")};
  const auto page = lay_out_hose(in, answer_of(in), sample_about(), Paper::a4);
  ASSERT_TRUE(page);
  const auto text = svg(*page);
  ASSERT_TRUE(text);
  EXPECT_EQ(text->find("<script"), std::string::npos);
  const test::TemporaryFile file{".svg", *text};
  const auto ran = test::run("xmllint --noout " + file.path());
  EXPECT_EQ(ran.status, 0) << ran.output;
}

// What the views are made of.

TEST(HoseSpace, AxesOfAThirdAngleArrangement) {
  // Side by the left: aft is right. Above it the top view: the right wing is up. Left of it the
  // front view: the right wing is left.
  const auto& all = detail::views();
  for (const auto& view : all) {
    EXPECT_NEAR(view.right.dot(view.up), 0, 1e-12);
    EXPECT_LT((view.right.cross(view.up) - view.towards).norm(), 1e-12)
        << view.title << ": right, up and towards the eye are right-handed";
  }
  EXPECT_EQ(all[detail::k_side].right, all[detail::k_top].right) << "x runs alike in both";
  EXPECT_EQ(all[detail::k_side].up, all[detail::k_front].up) << "z runs alike in both";
}

TEST(HoseSpace, ATubeKeepsItsTrueWidth) {
  std::vector<Point> line;
  for (int i = 0; i <= 40; ++i) line.push_back({i * 1.0, 10 + 3 * std::sin(i * 0.15)});
  const auto outline = detail::tube_outline(line, 2, false);
  ASSERT_EQ(outline.rings.size(), 1U);
  for (const Point& p : outline.rings.front()) {
    double nearest = 1e9;
    for (std::size_t i = 0; i + 1 < line.size(); ++i)
      for (int k = 0; k <= 20; ++k) {
        const double t = k / 20.0;
        nearest =
            std::min(nearest, detail::distance(p, {line[i].x + t * (line[i + 1].x - line[i].x),
                                                   line[i].y + t * (line[i + 1].y - line[i].y)}));
      }
    // Within a twentieth of a millimetre of the radius on both sides: chords of the rounding.
    EXPECT_LT(nearest, 2.01);
  }
}

TEST(HoseSpace, ALoopKeepsItsHole) {
  std::vector<Point> ring;
  for (int i = 0; i <= 60; ++i)
    ring.push_back({20 * std::cos(i * 0.1047), 20 * std::sin(i * 0.1047)});
  const auto outline = detail::tube_outline(ring, 3, true);
  EXPECT_EQ(outline.rings.size(), 2U);
  ASSERT_EQ(outline.fills.size(), 1U);
  EXPECT_GT(outline.fills[0].size(), outline.rings[0].size() + outline.rings[1].size());
}

TEST(HoseSpace, ATubeSeenEndOnIsACircle) {
  const auto outline = detail::tube_outline({{5, 5}, {5, 5}, {5.001, 5}}, 2, false);
  ASSERT_EQ(outline.rings.size(), 1U);
  for (const Point& p : outline.rings[0]) EXPECT_NEAR(detail::distance(p, {5, 5}), 2, 0.05);
}

TEST(HoseSpace, ClippedKeepsOnlyWhatIsInside) {
  const detail::Frame frame{0, 0, 10, 10};
  const auto pieces = detail::clipped({{-5, 5}, {15, 5}, {15, 8}, {-5, 8}}, true, frame);
  ASSERT_EQ(pieces.size(), 2U);
  EXPECT_EQ(pieces[0].front(), (Point{0, 5}));
  EXPECT_EQ(pieces[0].back(), (Point{10, 5}));
  EXPECT_TRUE(detail::clipped({{-5, 50}, {15, 50}}, false, frame).empty());
}

TEST(HoseSpace, AChainLineIsAsLongAsItsPatternSays) {
  double drawn = 0;
  for (const auto& piece : detail::chain_dotted({{0, 0}, {30, 0}, {30, 53}}))
    for (std::size_t i = 0; i + 1 < piece.size(); ++i)
      drawn += detail::distance(piece[i], piece[i + 1]);
  // Ten patterns of 8.3 mm, of which 6.5 mm are drawn.
  EXPECT_NEAR(drawn, 65, 1e-6);
}

TEST(HoseSpace, AHexagonSeenFromAheadHasSixCorners) {
  const detail::Placed placed{&detail::views()[detail::k_side], {0, 0, 100, 100}, {0, 0, 0}, 1000};
  const auto end_on = detail::seen(detail::prism({0, 0, 0}, {0, 0.01, 0}, 0.01, 6), placed);
  EXPECT_EQ(end_on.outline.size(), 6U);
  for (const Point& p : end_on.outline) EXPECT_NEAR(detail::distance(p, {50, 50}), 10, 1e-9);
  const auto beside = detail::seen(detail::prism({0, 0, 0}, {0.01, 0, 0}, 0.01, 6), placed);
  EXPECT_EQ(beside.edges.size(), 2U) << "three faces of six look at the eye";
}

}  // namespace
}  // namespace wm::drawing
