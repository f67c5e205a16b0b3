#pragma once
/// A line and a hose that does it with ease; each test spoils one thing.

#include <gtest/gtest.h>

#include <string>

#include "hose/declarations.hpp"
#include "hose/rating.hpp"

namespace wm::hose::sample {

template <class Q>
quantity::Entered<Q> typed(const std::string& text) {
  return *quantity::read<Q>(text);
}
inline EnteredPressure psi(const std::string& text) {
  return typed<quantity::PressureGauge>(text + " psi");
}
inline EnteredDifference psi_more(const std::string& text) {
  return typed<quantity::PressureDifference>(text + " psi");
}
inline EnteredTemperature fahrenheit(const std::string& text) {
  return typed<quantity::Temperature>(text + " degF");
}
inline EnteredLength inch(const std::string& text) { return typed<quantity::Length>(text + " in"); }

/// Oil hose behind the firewall: accepted as it stands.
inline HoseRatingInput oil_line() {
  HoseRatingInput in;
  in.demand.fluid = LineFluid::mineral_engine_oil;
  in.demand.working_pressure = psi("60");
  in.demand.surge = psi_more("20");
  in.demand.fluid_highest = fahrenheit("220");
  in.demand.surrounding_highest = fahrenheit("180");
  in.demand.lowest = fahrenheit("0");
  in.demand.fitting = quantity::Date{std::chrono::year{2026} / 11 / 25};
  HoseCandidate hose;
  hose.name = "one";
  hose.family = "MIL-H-8794";
  hose.size = "-8";
  hose.liner = LinerCompound::nitrile;
  hose.cure = "2Q2024";
  hose.assembly = "A3Q25";
  in.candidates.push_back(hose);
  return in;
}

/// The same line with a PTFE hose: accepted as it stands.
inline HoseRatingInput ptfe_line() {
  auto in = oil_line();
  HoseCandidate hose;
  hose.name = "one";
  hose.family = "AS1946 class I";
  hose.size = "-8";
  hose.ends = EndMetal::steel;
  hose.carbon_loaded = Known::yes;
  hose.proof = "2026-06-01";
  hose.operating = psi("1500");
  hose.operating_to = fahrenheit("450");
  in.candidates = {hose};
  return in;
}

class Rating : public testing::Test {
 protected:
  void SetUp() override {
    declare(catalogue);
    context.tables = catalogue.tables();
  }
  RatedHose judged(const HoseRatingInput& in) const {
    const auto got = hose_rating(in, context);
    EXPECT_TRUE(got) << got.error().front().path << ": " << got.error().front().what;
    return got ? got->ranked.front() : RatedHose{};
  }
  /// "refuses", "asks", "advises", "met": the worst that is said about the matter; "" for nothing.
  std::string worst(const HoseRatingInput& in, const std::string& about) const {
    static const char* const k_words[] = {"met", "advises", "asks", "refuses"};
    int found = -1;
    for (const auto& r : judged(in).reasons) {
      if (r.about == about) found = std::max(found, static_cast<int>(r.stands));
    }
    return found < 0 ? "" : k_words[found];
  }
  std::string text(const HoseRatingInput& in, const std::string& about) const {
    for (const auto& r : judged(in).reasons) {
      if (r.about == about) return r.text + " [" + r.source + "; " + r.known + "]";
    }
    return {};
  }
  std::string paths(const HoseRatingInput& in) const {
    std::string all;
    const auto got = hose_rating(in, context);
    if (got) return "none";
    for (const auto& p : got.error()) all += p.path + " ";
    return all;
  }
  bool accepted(const HoseRatingInput& in) const {
    return judged(in).stands == CandidateStands::accepted;
  }
  describe::Catalogue catalogue;
  describe::Context context;
};

}  // namespace wm::hose::sample
