// What describes the aircraft: names, limits, checks, defects, mass.
#include "unit/desk/bench.hpp"

namespace {

using namespace wm;
using desk::test::bird_bench;
using desk::test::joined;
using desk::test::refused;
using desk::test::says;

TEST(Aircraft, ShortNamesAreShortAndTakenOnce) {
  auto bench = bird_bench();
  EXPECT_TRUE(
      refused(bench.act("describe-aircraft", R"("id":"My Bird","name":"B","registration":"Q-B")"),
              Kind::bad_text, "id"));
  EXPECT_TRUE(refused(bench.act("define-counter", R"("id":"engine","name":"again")"),
                      Kind::duplicate, "id"));
  EXPECT_TRUE(refused(bench.act("add-position", R"("id":"mounts","name":"again","system":"oil")"),
                      Kind::duplicate, "id"));
  EXPECT_TRUE(refused(bench.act("register-instrument", R"("id":"My meter","name":"m")"),
                      Kind::bad_text, "id"));
}

TEST(Aircraft, APositionDoesNotStandInForItself) {
  auto bench = bird_bench();
  const auto problems = bench.act(
      "add-position", R"("id":"pump","name":"Pump","system":"fuel","redundant_with":"pump")");
  EXPECT_FALSE(problems.empty());
}

TEST(Aircraft, ATorqueHasALeastAndAMost) {
  auto bench = bird_bench();
  EXPECT_TRUE(refused(bench.act("add-joint", R"("id":"n","name":"n","position":"mounts",)"
                                             R"("torque_least":"10 in-lb")"),
                      Kind::missing, "torque_most"));
  EXPECT_TRUE(
      refused(bench.act("add-joint", R"("id":"n","name":"n","position":"mounts",)"
                                     R"("torque_least":"20 in-lb","torque_most":"10 in-lb",)"
                                     R"("torque_table":"t")"),
              Kind::conflict, "torque_most"));
}

TEST(Limits, SayWhatTheyLimitAndByWhat) {
  auto bench = bird_bench();
  EXPECT_TRUE(
      refused(bench.act("set-limit", R"("id":"l","title":"L")"), Kind::missing, "every_hours"));
  EXPECT_TRUE(refused(bench.act("set-limit", R"("id":"l","title":"L","every_hours":"50 h")"),
                      Kind::missing, "counter"));
}

// Own policy tolerance (rules-records, section 3): only recommendations may be stretched.
TEST(Limits, ABindingOneHasItsDocumentAndNoTolerance) {
  auto bench = bird_bench();
  for (const auto* authority : {"law", "maker-mandatory"}) {
    const auto problems = bench.act(
        "set-limit", fmt::format(R"("id":"l","title":"L","every_months":12,"authority":"{}",)"
                                 R"("tolerance_days":30)",
                                 authority));
    EXPECT_TRUE(refused(problems, Kind::refused, "tolerance_days")) << authority;
    EXPECT_TRUE(refused(problems, Kind::missing, "document")) << authority;
  }
}

TEST(Checks, TheirLimitsFitEachOther) {
  auto bench = bird_bench();
  EXPECT_TRUE(refused(bench.act("describe-check", R"("id":"c","title":"C","position":"mounts",)"
                                                  R"("lowest":"8 kohm","highest":"3 kohm")"),
                      Kind::conflict, "highest"));
  EXPECT_TRUE(refused(bench.act("describe-check", R"("id":"c","title":"C","position":"mounts",)"
                                                  R"("lowest":"3 psi","highest":"8 kohm")"),
                      Kind::wrong_dimension, "highest"));
  EXPECT_TRUE(refused(bench.act("describe-check", R"("id":"c","title":"C","position":"mounts",)"
                                                  R"("highest":"8 kohm","unit":"psi")"),
                      Kind::wrong_dimension, "unit"));
  EXPECT_TRUE(refused(bench.act("describe-check", R"("id":"C 1","title":"C","position":"mounts")"),
                      Kind::bad_text, "id"));
}

TEST(Defects, NotedInOneLineAndNamedFromIt) {
  auto bench = bird_bench();
  const auto said = bench.done("note-defect", R"("text":"Oil film below cylinder 4")");
  EXPECT_EQ(said.id, "oil-film-below-cylinder-4");
  EXPECT_TRUE(says(joined(said.notes), "not decided"));
  EXPECT_EQ(bench.done("note-defect", R"("text":"Oil film below cylinder 4")").id,
            "oil-film-below-cylinder-4-2");
}

TEST(Defects, AClosedOneIsLeftAlone) {
  auto bench = bird_bench();
  bench.done("note-defect", R"("id":"film","text":"oil film")");
  bench.done("decide-defect", R"("defect":"film","decision":"ground","reason":"not found")");
  EXPECT_EQ(bench.bird().defects.at("film").decision, bay::FlyDecision::ground);
  bench.done("close-defect", R"("defect":"film","how":"gasket renewed")");
  EXPECT_TRUE(refused(bench.act("close-defect", R"("defect":"film","how":"again")"), Kind::conflict,
                      "defect"));
  EXPECT_TRUE(
      refused(bench.act("decide-defect", R"("defect":"film","decision":"fly","reason":"x")"),
              Kind::conflict, "defect"));
}

TEST(Mass, LimitsStandInTheirOrderAndAnOutsideCentreIsTold) {
  auto bench = bird_bench();
  const std::string mass = R"("empty_mass":"1000 lb","empty_arm":"30 in","document":"weighing",)";
  EXPECT_TRUE(
      refused(bench.act("revise-mass", mass + R"("forward_limit":"20 in","aft_limit":"10 in")"),
              Kind::conflict, "aft_limit"));
  const auto said =
      bench.done("revise-mass", mass + R"("forward_limit":"10 in","aft_limit":"20 in")");
  EXPECT_TRUE(says(joined(said.notes), "outside the limits"));
}

}  // namespace
