// The table of troubles against the texts it was taken from, in our own words:
// FAA-H-8083-32 (powerplant handbook), starter trouble table and ignition text, as read in the
// project's notes on electrics and ignition, section 8. Not the figures: which cause stands there.
#include <gtest/gtest.h>

#include "calculation/catalogue.hpp"
#include "staging/trouble.hpp"
#include "support/reference_case.hpp"

namespace wm::staging {
namespace {

std::string first_cause(const std::string& symptom) {
  describe::Context context;
  context.tables = calculation::catalogue().tables();
  const auto told = trouble_causes({symptom}, context);
  EXPECT_TRUE(told) << symptom;
  return told ? told->causes.front().cause : std::string{};
}

TEST(TroubleReference, TheFirstCauseIsTheHandbooks) {
  const std::string starter = "FAA-H-8083-32, starter trouble table (notes, section 8)";
  const std::string ignition = "FAA-H-8083-32, ignition text (notes, section 8)";
  const auto same = [](const std::string& what, const std::string& source,
                       const std::string& expected, const std::string& key) {
    test::check_text("trouble-causes", what, source, expected, first_cause(key));
  };
  same("no click", starter, "master or start switch circuit open", "no-click");
  same("click only", starter, "battery weak", "click-only");
  same("cranks slowly", starter, "battery low or cold", "slow-crank");
  same("dead on one magneto", ignition, "its grounding lead grounded", "dead-magneto");
  same("no drop", ignition, "grounding lead open: that magneto is always live", "no-drop");
}

}  // namespace
}  // namespace wm::staging
