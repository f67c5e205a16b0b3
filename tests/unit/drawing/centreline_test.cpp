#include "drawing/centreline.hpp"

#include <gtest/gtest.h>

#include <sstream>

#include "sample_hose.hpp"

namespace wm::drawing {
namespace {

using test::answer_of;
using test::sample_hose;
using test::two_elbows;

constexpr auto k_us = quantity::UnitSet::us_customary;

/// Rows of a table by RFC 4180, without quotes: there are none.
std::vector<std::vector<std::string>> rows_of(const std::string& text) {
  std::vector<std::vector<std::string>> out;
  std::size_t from = 0;
  while (from < text.size()) {
    const auto end = text.find("\r\n", from);
    EXPECT_NE(end, std::string::npos) << "every line ends in CRLF";
    if (end == std::string::npos) break;
    std::stringstream line(text.substr(from, end - from) + ",");
    std::vector<std::string> cells;
    for (std::string cell; std::getline(line, cell, ',');) cells.push_back(cell);
    out.push_back(std::move(cells));
    from = end + 2;
  }
  return out;
}

TEST(CentrelineTable, ReadsBackAsTheShape) {
  const auto in = sample_hose();
  const auto answer = answer_of(in);
  const auto rows = rows_of(centreline_csv(in, answer, k_us));
  ASSERT_EQ(rows.size(), answer.shape.points.size() + 1);
  EXPECT_EQ(rows[0], (std::vector<std::string>{"station_in", "x_in", "y_in", "z_in", "radius_in"}));
  for (std::size_t i = 1; i < rows.size(); ++i) {
    const auto& p = answer.shape.points[i - 1];
    ASSERT_EQ(rows[i].size(), 5U);
    const auto metres = [&](std::size_t column) {
      return quantity::parse_number(rows[i][column]).value() * 0.0254;
    };
    // Half of the last digit written.
    constexpr double half = 0.5e-5 * 0.0254 + 1e-12;
    EXPECT_NEAR(metres(0), p.station.si, half);
    EXPECT_NEAR(metres(1), p.x.si, half);
    EXPECT_NEAR(metres(2), p.y.si, half);
    EXPECT_NEAR(metres(3), p.z.si, half);
    if (p.radius) {
      EXPECT_NEAR(metres(4), p.radius->si, half);
    } else {
      EXPECT_EQ(rows[i][4], "");
    }
  }
}

TEST(CentrelineTable, SpeaksMillimetresWhereTheHoseDoes) {
  const auto in = two_elbows();
  EXPECT_TRUE(centreline_csv(in, answer_of(in), k_us).starts_with("station_mm,x_mm"));
}

/// A small reader of pairs of lines: group code, value.
struct Pair {
  int code;
  std::string value;
};
std::vector<Pair> pairs_of(const std::string& text) {
  std::vector<Pair> out;
  std::stringstream lines(text);
  for (std::string code, value; std::getline(lines, code) && std::getline(lines, value);)
    out.push_back({std::stoi(code), value});
  return out;
}

struct Drawn {
  std::vector<hose::Vector> vertices;
  std::vector<std::pair<hose::Vector, hose::Vector>> lines;
  int unit{};
  bool ended{};
};
Drawn read_dxf(const std::string& text) {
  Drawn out;
  std::string entity, variable;
  std::string layer;
  for (const auto& [code, value] : pairs_of(text)) {
    if (code == 0) {
      entity = value;
      out.ended = value == "EOF";
      if (value == "VERTEX") out.vertices.emplace_back(0, 0, 0);
      if (value == "LINE") out.lines.emplace_back();
      continue;
    }
    if (code == 9) variable = value;
    if (code == 8) layer = value;
    if (variable == "$INSUNITS" && code == 70 && out.unit == 0) out.unit = std::stoi(value);
    const int axis = code / 10 - 1;
    const bool second = code % 10 == 1;
    if (axis < 0 || axis > 2 || code % 10 > 1) continue;
    const double figure = quantity::parse_number(value).value();
    if (entity == "VERTEX") {
      EXPECT_EQ(layer, "HOSE");
      out.vertices.back()[axis] = figure;
    }
    if (entity == "LINE") {
      EXPECT_EQ(layer, "FITTINGS");
      (second ? out.lines.back().second : out.lines.back().first)[axis] = figure;
    }
  }
  return out;
}

TEST(CentrelineDrawing, ReadsBackAsTheShapeAndItsFittings) {
  const auto in = two_elbows();
  const auto answer = answer_of(in);
  const auto got = read_dxf(centreline_dxf(in, answer, k_us));
  EXPECT_TRUE(got.ended);
  EXPECT_EQ(got.unit, 4) << "millimetres";
  ASSERT_EQ(got.vertices.size(), answer.shape.points.size());
  for (std::size_t i = 0; i < got.vertices.size(); ++i) {
    const auto& p = answer.shape.points[i];
    EXPECT_LT((0.001 * got.vertices[i] - hose::Vector(p.x.si, p.y.si, p.z.si)).norm(), 1e-7);
  }
  // Seat, corner, hose: two lines an elbow, and the last ends where the hose begins.
  ASSERT_EQ(got.lines.size(), 4U);
  EXPECT_LT(got.lines[0].first.norm(), 1e-9);
  EXPECT_LT((got.lines[0].second - hose::Vector(0, 0, 30)).norm(), 1e-9);
  EXPECT_LT((got.lines[1].second - got.vertices.front()).norm(), 1e-3);
  EXPECT_LT((got.lines[3].second - got.vertices.back()).norm(), 1e-3);
}

TEST(CentrelineDrawing, InchesAreInches) {
  const auto in = sample_hose();
  const auto got = read_dxf(centreline_dxf(in, answer_of(in), k_us));
  EXPECT_EQ(got.unit, 1);
  ASSERT_EQ(got.lines.size(), 2U);
  EXPECT_LT((got.lines[1].first - hose::Vector(14, 13, 4)).norm(), 1e-9);
}

TEST(CentrelineDrawing, EverySectionIsClosed) {
  const auto in = sample_hose();
  int open = 0;
  for (const auto& pair : pairs_of(centreline_dxf(in, answer_of(in), k_us))) {
    if (pair.code != 0) continue;
    open += pair.value == "SECTION";
    open -= pair.value == "ENDSEC";
    EXPECT_TRUE(open == 0 || open == 1);
  }
  EXPECT_EQ(open, 0);
}

}  // namespace
}  // namespace wm::drawing
