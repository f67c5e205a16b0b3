// Whole tables of the wiring notes, cell by cell, typed again from the source and not from data/.
// Source:    IEC 60228 maximum conductor resistance at 20 degC (three agreeing public extracts); AC
//            43.13-1B CHG 1: table 11-9 (page 11-23), table 11-3 (page 11-15); third-party readings
//            of MIL-W-5088L (bundle and altitude curves).
// Tolerance: exact: a cell is a cell.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <sstream>
#include <vector>

#include "support/reference_case.hpp"
#include "tables/electrics/wire_aircraft_copper.hpp"
#include "tables/electrics/wire_altitude_factor.hpp"
#include "tables/electrics/wire_bundle_factor.hpp"
#include "tables/electrics/wire_metric.hpp"
#include "tables/electrics/wire_protection.hpp"

namespace {

using namespace wm;

/// "." where the source gives nothing.
void compare(const describe::Table& table, const char* source, const std::string& typed) {
  std::istringstream lines(typed);
  std::string line;
  std::size_t row = 0;
  int cells = 0;
  while (std::getline(lines, line)) {
    std::istringstream words(line);
    std::vector<std::string> cell;
    for (std::string word; words >> word;) cell.push_back(word);
    if (cell.empty()) continue;
    ASSERT_LT(row, table.rows.size()) << table.name;
    ASSERT_EQ(cell.size(), table.columns.size()) << table.name << ": " << line;
    EXPECT_EQ(cell[0], table.rows[row][0]) << table.name;
    for (std::size_t i = 1; i < cell.size(); ++i) {
      const std::string have(table.rows[row][i]);
      if (cell[i] == ".") {
        EXPECT_EQ(have, "") << table.name << ' ' << cell[0];
        continue;
      }
      ASSERT_NE(have, "") << table.name << ' ' << cell[0] << ' ' << table.columns[i].key;
      EXPECT_DOUBLE_EQ(std::stod(cell[i]), std::stod(have))
          << table.name << ' ' << cell[0] << ' ' << table.columns[i].key;
      ++cells;
    }
    ++row;
  }
  EXPECT_EQ(row, table.rows.size()) << table.name;
  test::check_text("electrics", fmt::format("table {}, every cell", table.name), source,
                   fmt::format("{} cells", cells),
                   fmt::format("{} cells", testing::Test::HasFailure() ? 0 : cells));
}

TEST(WholeTables, MetricConductors) {
  compare(tables::wire_metric, "IEC 60228 (three public extracts)", R"(
0.5  36.0 36.7 39.0 40.1 .
0.75 24.5 24.8 26.0 26.7 .
1    18.1 18.2 19.5 20.0 .
1.5  12.1 12.2 13.3 13.7 .
2.5  7.41 7.56 7.98 8.21 .
4    4.61 4.70 4.95 5.09 .
6    3.08 3.11 3.30 3.39 .
10   1.83 1.84 1.91 1.95 3.08
16   1.15 1.16 1.21 1.24 1.91
25   0.727 0.734 0.780 0.795 1.20
35   0.524 0.529 0.554 0.565 0.868
50   0.387 0.391 0.386 0.393 0.641
70   0.268 0.270 0.272 0.277 0.443
)");
}

// The extracts' own spread of tinned over plain copper: a mistyped cell would leave it.
TEST(WholeTables, TinnedOverPlainStaysInItsBand) {
  for (const auto& row : tables::wire_metric.rows) {
    const auto cell = [&](std::size_t i) { return std::stod(std::string(row[i])); };
    const double class_2 = cell(2) / cell(1);
    EXPECT_GE(class_2, 1.005) << row[0];
    EXPECT_LE(class_2, 1.0205) << row[0];
    if (cell(0) > 35) continue;
    const double class_5 = cell(4) / cell(3);
    EXPECT_GE(class_5, 1.018) << row[0];
    EXPECT_LE(class_5, 1.0305) << row[0];
  }
}

TEST(WholeTables, AircraftCopper) {
  compare(tables::wire_aircraft_copper, "AC 43.13-1B CHG 1, table 11-9, page 11-23", R"(
24 475 28.40 2.5 4 5
22 755 16.20 3 5 6
20 1216 9.88 4 7 9
18 1900 6.23 6 9 12
16 2426 4.81 7 11 14
14 3831 3.06 10 14 18
12 5874 2.02 13 19 25
10 9354 1.26 17 26 32
8 16983 0.70 38 57 71
6 26818 0.44 50 76 97
4 42615 0.28 68 103 133
2 66500 0.18 95 141 179
1 81700 0.15 113 166 210
0 104500 0.12 128 192 243
00 133000 0.09 147 222 285
000 166500 0.07 172 262 335
0000 210900 0.06 204 310 395
)");
}

TEST(WholeTables, BundleFactors) {
  compare(tables::wire_bundle_factor, "third-party table of the MIL-W-5088L bundle curves", R"(
1 1 1 1 1 1
2 .968 .920 .910 .870 .825
3 .935 .855 .815 .770 .725
4 .908 .805 .750 .705 .660
5 .875 .760 .695 .650 .610
6 .850 .725 .655 .605 .573
8 .795 .668 .595 .543 .513
10 .755 .623 .550 .500 .465
12 .715 .585 .515 .465 .430
14 .685 .553 .480 .435 .398
16 .658 .528 .455 .410 .370
19 .625 .495 .423 .380 .343
33 .55 . . . .
)");
}

TEST(WholeTables, AltitudeFactors) {
  compare(tables::wire_altitude_factor, "third-party table of the altitude figure", R"(
0 1.00
5000 .98
10000 .96
15000 .94
20000 .92
25000 .90
30000 .88
40000 .84
50000 .80
60000 .77
)");
}

TEST(WholeTables, Protection) {
  const auto& table = tables::wire_protection;
  const std::vector<std::vector<std::string>> typed{
      {"22", "5", "5"},   {"20", "7.5", "5"}, {"18", "10", "10"}, {"16", "15", "10"},
      {"14", "20", "15"}, {"12", "30", "20"}, {"10", "40", "30"}, {"8", "50", "50"},
      {"6", "80", "70"},  {"4", "100", "70"}, {"2", "125", "100"}};
  for (std::size_t i = 0; i < typed.size(); ++i) {
    for (std::size_t k = 0; k < 3; ++k)
      EXPECT_EQ(typed[i][k], table.rows[i][k]) << "No. " << typed[i][0];
  }
  // Sizes 1 and 0 have a fuse and no breaker.
  for (std::size_t i = typed.size(); i < table.rows.size(); ++i) {
    EXPECT_EQ(table.rows[i][1], "") << table.rows[i][0];
    EXPECT_EQ(table.rows[i][2], "150") << table.rows[i][0];
  }
}

}  // namespace
