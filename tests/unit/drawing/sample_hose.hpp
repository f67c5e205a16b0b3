#pragma once
/// Invented hoses for the tests of the hose sheet.

#include <gtest/gtest.h>

#include <string>

#include "drawing/hose_sheet.hpp"

namespace wm::drawing::test {

inline hose::EnteredLength length(std::string_view text) {
  return quantity::read<quantity::Length>(text).value();
}
inline hose::Place place(std::string_view x, std::string_view y, std::string_view z) {
  return {length(x), length(y), length(z)};
}

/// Straight ends, 14 by 13 by 4 inches apart.
inline hose::HoseSheetInput sample_hose() {
  hose::HoseSheetInput in;
  in.title = "oil cooler, pressure side";
  in.near_end.seat = place("0 in", "0 in", "0 in");
  in.near_end.leaves = {1, 0, 0};
  in.near_end.rigid = length("1.5 in");
  in.far_end.seat = place("14 in", "13 in", "4 in");
  in.far_end.leaves = {0, -1, 0};
  in.far_end.rigid = length("1.5 in");
  in.near_at = "oil cooler, inlet";
  in.far_at = "engine, oil outlet";
  in.outside_diameter = length("0.77 in");
  in.least_radius = length("4.63 in");
  in.radius_source = "AC 43.13-1B table 9-3";
  return in;
}

/// Two 90 degree elbows, in millimetres.
inline hose::HoseSheetInput two_elbows() {
  auto in = sample_hose();
  in.title = "strainer to pump";
  in.near_end = {place("0 mm", "0 mm", "0 mm"),
                 {1, 0, 0},
                 hose::EndForm::elbow_90,
                 length("40 mm"),
                 hose::Way{0, 0, 1},
                 length("30 mm")};
  in.far_end = {place("420 mm", "160 mm", "140 mm"),
                {0, -1, 0},
                hose::EndForm::elbow_90,
                length("40 mm"),
                hose::Way{-1, 0, 0},
                length("30 mm")};
  in.outside_diameter = length("17 mm");
  in.least_radius = length("75 mm");
  return in;
}

inline hose::KeepOut tube_beside(const std::string& name) {
  return {name, hose::Beside::exhaust, length("2 in"),
          hose::TubeShape{place("10 in", "0 in", "-8 in"), place("10 in", "10 in", "-8 in"),
                          length("1 in")}};
}

inline HoseSheetAbout sample_about() {
  HoseSheetAbout about;
  about.cautions = {"Proof test with liquid and never with air.",
                    "The maker's manual, the local authority and licensed practice decide."};
  about.sources = {"docs/method/hose-shape.md"};
  about.today =
      quantity::Date{std::chrono::year{2026}, std::chrono::month{11}, std::chrono::day{25}};
  return about;
}

inline hose::HoseSheetAnswer answer_of(const hose::HoseSheetInput& in) {
  auto got = hose::hose_sheet(in, {});
  EXPECT_TRUE(got) << (got ? "" : got.error().front().path + ": " + got.error().front().what);
  return got ? std::move(*got) : hose::HoseSheetAnswer{};
}

}  // namespace wm::drawing::test
