// Joints: opened, torqued by a named table, locked, marked, seen; the cowl closes last.
#include "unit/desk/bench.hpp"

namespace {

using namespace wm;
using desk::test::bird_bench;
using desk::test::joined;
using desk::test::refused;
using desk::test::says;

TEST(Joints, AnOpenedJointGetsANumberAndOpensTheCowl) {
  auto bench = bird_bench();
  const auto said = bench.done("work-joint", R"("joint":"oil-nut","state":"open","by":"anna")");
  EXPECT_TRUE(says(joined(said.notes), "number 1 on the list"));
  EXPECT_FALSE(bench.bird().cowl_closed);
  EXPECT_EQ(bench.bird().joints.at("oil-nut").open_number, 1);
}

TEST(Joints, ATorqueNamesItsFigureAndItsTable) {
  auto bench = bird_bench();
  bench.joint("lead-nut", "open");
  const auto problems = bench.act("work-joint", R"("joint":"lead-nut","state":"torqued")");
  EXPECT_TRUE(refused(problems, Kind::missing, "torque"));
  EXPECT_TRUE(refused(problems, Kind::missing, "torque_table"));
  EXPECT_TRUE(
      refused(bench.act("add-joint", R"("id":"new-nut","name":"New nut","position":"mounts",)"
                                     R"("torque_least":"10 in-lb","torque_most":"20 in-lb")"),
              Kind::missing, "torque_table"));
}

// Symptom: a torque outside the joint's band was recorded with no more than a note.
TEST(Joints, ATorqueOutsideItsBandIsRefusedWithoutAWrittenReason) {
  auto bench = bird_bench();
  bench.joint("oil-nut", "open");
  for (const auto* reason : {"", R"(,"reason_outside_band":"  ")"}) {
    const auto problems =
        bench.act("work-joint", fmt::format(R"("joint":"oil-nut","state":"torqued",)"
                                            R"("torque":"300 in-lb"{})",
                                            reason));
    ASSERT_TRUE(refused(problems, Kind::out_of_bounds, "torque"));
    EXPECT_EQ(problems[0].expected, "230 in-lb to 260 in-lb (maker's sheet, invented)");
    EXPECT_TRUE(says(problems[0].do_next, "Enter it again as read, or write why"));
  }
  EXPECT_TRUE(refused(bench.act("work-joints", R"("joints":["oil-nut"],"state":"torqued",)"
                                               R"("torque":"300 in-lb")"),
                      Kind::out_of_bounds, "torque"));
}

TEST(Joints, ATorqueOutsideItsBandIsShownWithItsReason) {
  auto bench = bird_bench();
  bench.joint("oil-nut", "open");
  const auto said = bench.done("work-joint", R"("joint":"oil-nut","state":"torqued",)"
                                             R"("torque":"300 in-lb",)"
                                             R"("reason_outside_band":"letter 4 of the maker")");
  EXPECT_TRUE(says(joined(said.notes), "outside 230 in-lb to 260 in-lb"));
  const auto& joint = bench.bird().joints.at("oil-nut");
  EXPECT_TRUE(says(desk::joint_line(joint, bench.state).torque, "letter 4 of the maker"));
  EXPECT_TRUE(says(desk::in_words(bench.state.events.back()->payload), "letter 4 of the maker"));
  bench.joint("oil-nut", "torqued", R"("torque":"245 in-lb")");
  EXPECT_EQ(desk::joint_line(joint, bench.state).torque, "245 in-lb") << "put right";
}

// Final torque = wanted torque + drag of the self-locking nut (AC 43.13-1B CHG 1, par. 7-40):
// 270 in-lb shown less 20 in-lb drag is 250 in-lb, within 230 to 260.
TEST(Joints, DragIsTakenOffBeforeTheTorqueIsCompared) {
  auto bench = bird_bench();
  bench.joint("oil-nut", "open");
  const auto said = bench.done("work-joint", R"("joint":"oil-nut","state":"torqued",)"
                                             R"("torque":"270 in-lb","drag":"20 in-lb")");
  EXPECT_TRUE(said.notes.empty()) << joined(said.notes);
}

TEST(Joints, TheMarkComesAfterTheTorqueAndTheLookAfterTheMark) {
  auto bench = bird_bench();
  bench.joint("oil-nut", "open");
  EXPECT_TRUE(refused(bench.act("work-joint", R"("joint":"oil-nut","state":"marked")"),
                      Kind::refused, "state"));
  EXPECT_TRUE(refused(bench.act("work-joint", R"("joint":"oil-nut","state":"seen")"), Kind::refused,
                      "state"));
  bench.oil_nut_closed();
  EXPECT_TRUE(bench.bird().joints.at("oil-nut").closed());
}

// Symptom: a joint on which no work was recorded could be marked, and then seen.
TEST(Joints, OnlyATightJointIsMarkedLockedOrSeen) {
  auto bench = bird_bench();
  auto problems = bench.act("work-joint", R"("joint":"lead-nut","state":"marked","by":"anna")");
  ASSERT_TRUE(refused(problems, Kind::refused, "state"));
  EXPECT_TRUE(says(problems[0].what, "no work on this joint is on record"));
  EXPECT_TRUE(refused(bench.act("work-joint", R"("joint":"lead-nut","state":"seen","by":"anna")"),
                      Kind::refused, "state"));
  EXPECT_TRUE(refused(bench.act("work-joint", R"("joint":"fuel-nut","state":"locked")"),
                      Kind::refused, "state"));
  bench.joint("lead-nut", "open");
  problems = bench.act("work-joint", R"("joint":"lead-nut","state":"marked","by":"anna")");
  ASSERT_TRUE(refused(problems, Kind::refused, "state"));
  EXPECT_TRUE(says(problems[0].what, "not on record since it was opened"));
  bench.joint("lead-nut", "assembled");
  bench.joint("lead-nut", "marked");
  bench.joint("lead-nut", "seen");
  EXPECT_TRUE(bench.bird().joints.at("lead-nut").closed());
}

// Symptom: "an independent inspection is another person's" compared names letter by letter.
TEST(Joints, ANameWrittenAnotherWayIsTheSamePerson) {
  auto bench = bird_bench();
  bench.joint("fuel-nut", "open");
  const auto worked = [](const char* more) { return std::string(R"("joint":"fuel-nut",)") + more; };
  bench.done("work-joint",
             worked(R"("state":"torqued","torque":"120 in-lb","by":"J. Ford, invented")"));
  bench.done("work-joint", worked(R"("state":"locked","by":"J. Ford, invented")"));
  bench.joint("fuel-nut", "marked");
  for (const auto* by : {" j.  ford, INVENTED ", "J. Ford, invented", "   "})
    EXPECT_TRUE(refused(
        bench.act("work-joint", worked(R"("state":"seen","by":")") + std::string(by) + "\""),
        Kind::refused, "by"))
        << by;
  bench.done("work-joint", worked(R"("state":"seen","by":"B. Ford, invented")"));
}

TEST(Joints, ASecondPersonIsAnotherPersonWithAName) {
  auto bench = bird_bench();
  bench.joint("fuel-nut", "open");
  bench.joint("fuel-nut", "torqued", R"("torque":"120 in-lb")");
  bench.joint("fuel-nut", "locked");
  bench.joint("fuel-nut", "marked");
  EXPECT_TRUE(refused(bench.act("work-joint", R"("joint":"fuel-nut","state":"seen","by":"anna")"),
                      Kind::refused, "by"));
  EXPECT_TRUE(
      refused(bench.act("work-joint", R"("joint":"fuel-nut","state":"seen")"), Kind::refused, "by"))
      << "nobody is not a second person";
  EXPECT_TRUE(bench.act("work-joint", R"("joint":"fuel-nut","state":"seen","by":"ben")").empty());
  EXPECT_TRUE(bench.bird().joints.at("fuel-nut").closed());
}

TEST(Joints, ALockedJointIsNotClosedWithoutItsLock) {
  auto bench = bird_bench();
  bench.joint("fuel-nut", "open");
  bench.joint("fuel-nut", "torqued", R"("torque":"120 in-lb")");
  bench.joint("fuel-nut", "marked");
  bench.done("work-joint", R"("joint":"fuel-nut","state":"seen","by":"ben")");
  EXPECT_FALSE(bench.bird().joints.at("fuel-nut").closed());
}

TEST(Joints, AMarkDoesNotOutliveANewTorque) {
  auto bench = bird_bench();
  bench.joint("oil-nut", "open");
  bench.oil_nut_closed();
  bench.joint("oil-nut", "torqued", R"("torque":"240 in-lb")");
  const auto& joint = bench.bird().joints.at("oil-nut");
  EXPECT_FALSE(joint.closed()) << "the old stripe says nothing about the new torque";
  EXPECT_GT(joint.open_number, 0);
  bench.joint("oil-nut", "marked");
  bench.joint("oil-nut", "seen");
  EXPECT_TRUE(bench.bird().joints.at("oil-nut").closed());
}

TEST(Joints, SeveralAtOnceAllOrNone) {
  auto bench = bird_bench();
  bench.done("work-joints", R"("joints":["oil-nut","lead-nut"],"state":"open","by":"anna")");
  bench.done("work-joint", R"("joint":"lead-nut","state":"assembled","by":"anna")");
  const auto before = bench.state.sequence;
  const auto problems =
      bench.act("work-joints", R"("joints":["lead-nut","oil-nut"],"state":"marked","by":"anna")");
  EXPECT_TRUE(refused(problems, Kind::refused, "joints/1"));
  EXPECT_EQ(bench.state.sequence, before);
}

TEST(Joints, TheCowlStaysOpenOverAnOpenJointOrABung) {
  auto bench = bird_bench();
  bench.joint("oil-nut", "open");
  bench.done("count-bung", R"("id":"red cap 3","where":"cooler outlet")");
  const auto problems = bench.act("move-cowl", R"("closed":true)");
  ASSERT_EQ(problems.size(), 2U) << "both are named";
  EXPECT_TRUE(says(problems[0].what, "Oil hose at the engine"));
  EXPECT_TRUE(says(problems[1].what, "red cap 3"));
  bench.oil_nut_closed();
  bench.done("count-bung", R"("id":"red cap 3","fitted":false)");
  EXPECT_TRUE(bench.act("move-cowl", R"("closed":true)").empty());
}

TEST(Joints, BungsAreCountedOnceInAndOnceOut) {
  auto bench = bird_bench();
  EXPECT_TRUE(
      refused(bench.act("count-bung", R"("id":"rag","fitted":false)"), Kind::not_found, "id"));
  bench.done("count-bung", R"("id":"rag")");
  EXPECT_TRUE(refused(bench.act("count-bung", R"("id":"rag")"), Kind::duplicate, "id"));
}

}  // namespace
