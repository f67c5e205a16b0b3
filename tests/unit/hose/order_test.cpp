#include "hose/order.hpp"

#include <gtest/gtest.h>

#include "hose/declarations.hpp"
#include "hose/incoming.hpp"

namespace {

using namespace wm;
using namespace wm::hose;
using evidence::Verdict;

template <class Q>
quantity::Entered<Q> typed(const std::string& text) {
  return *quantity::read<Q>(text);
}
template <class Q>
quantity::Measured<Q> measured(const std::string& text) {
  const auto parsed = quantity::parse_measured(text, Q::kind);
  quantity::Measured<Q> m{{parsed->value.si}, {}, parsed->value.resolution_si, text};
  if (parsed->expanded) m.expanded_si = parsed->expanded->si;
  return m;
}
bool says(const std::vector<std::string>& lines, const std::string& words) {
  for (const auto& line : lines) {
    if (line.find(words) != std::string::npos) return true;
  }
  return false;
}

class Order : public testing::Test {
 protected:
  void SetUp() override {
    declare(catalogue);
    context.tables = catalogue.tables();
  }
  HoseOrderInput good() {
    HoseOrderInput in;
    in.specification = "PTFE, steel braid, MIL-H-25579 assembly";
    in.family = ProofFamily::ptfe_swivel;
    in.size = "-8";
    in.liner = Liner::ptfe_conductive;
    in.carries = Carries::oil;
    in.near_end = {EndForm::elbow_90, "3/4-16, 37 degree, swivel nut", "steel", ""};
    in.far_end = {EndForm::elbow_45, "3/4-16, 37 degree, swivel nut", "steel", "P-1"};
    in.overall = typed<quantity::Length>("16 1/2 in");
    in.length_tolerance = typed<quantity::Length>("0.188 in");
    in.clocking = typed<quantity::Angle>("50 deg");
    in.sleeve = FireSleeve::integral;
    in.sleeve_past_socket = typed<quantity::Length>("1/8 in");
    in.working_pressure = typed<quantity::PressureGauge>("100 psi");
    return in;
  }
  HoseOrderAnswer run(const HoseOrderInput& in) {
    auto got = hose_order(in, context);
    EXPECT_TRUE(got) << (got ? "" : got.error()[0].path + ": " + got.error()[0].what);
    return got ? *got : HoseOrderAnswer{};
  }
  std::string paths(const HoseOrderInput& in) {
    const auto got = hose_order(in, context);
    std::string all;
    if (!got) {
      for (const Problem& p : got.error()) all += p.path + " ";
    }
    return all;
  }
  std::string text(const HoseOrderAnswer& a, const std::string& label) {
    for (const auto& l : a.lines) {
      if (l.label == label) return l.text;
    }
    return {};
  }
  describe::Catalogue catalogue;
  describe::Context context;
};

TEST_F(Order, SaysWhatAShopMustKnow) {
  const auto got = run(good());
  EXPECT_EQ(got.lines.front().label, "Quantity");
  EXPECT_EQ(text(got, "Overall length"), "16 1/2 in +- 0.188 in (length code 0164)");
  EXPECT_EQ(text(got, "Measured at the near end"),
            "along the hose's axis to the centre line of the 90 degree outlet");
  EXPECT_EQ(text(got, "Clocking"),
            "50 deg +- 3 deg: near elbow at six o'clock, counter-clockwise to the far elbow, seen "
            "from the near end (code 10)");
  EXPECT_NE(text(got, "Proof test").find("3000 psi with liquid"), std::string::npos);
  EXPECT_NE(text(got, "Tag").find("operating 100 psi"), std::string::npos);
  EXPECT_NE(text(got, "Far end").find("part no. P-1"), std::string::npos);
  EXPECT_NE(got.message.find("  Clocking: 50 deg +- 3 deg"), std::string::npos);
  EXPECT_TRUE(got.warnings.empty()) << got.warnings[0];
}

TEST_F(Order, AsksForEverythingThatIsMissing) {
  EXPECT_EQ(paths({}),
            "specification size liner carries sleeve near_end/thread far_end/thread overall "
            "makers_proof ");
  auto in = good();
  in.length_tolerance.reset();
  const auto got = hose_order(in, context);
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error()[0].path, "length_tolerance");
  EXPECT_NE(got.error()[0].expected.find("+-0.188 in"), std::string::npos);
  in = good();
  in.clocking.reset();
  EXPECT_EQ(paths(in), "clocking ");
  in = good();
  in.quantity = 0;
  EXPECT_EQ(paths(in), "quantity ");
}

TEST_F(Order, RefusesWhatContradictsItself) {
  auto in = good();
  in.far_end.form = EndForm::straight;
  in.clocking_tolerance = typed<quantity::Angle>("3 deg");
  EXPECT_EQ(paths(in), "clocking clocking_tolerance ");
  in = good();
  in.length_tolerance = typed<quantity::Length>("20 in");
  EXPECT_EQ(paths(in), "length_tolerance ");
  in = good();
  in.working_pressure = typed<quantity::PressureGauge>("3000 psi");
  EXPECT_EQ(paths(in), "working_pressure ");
}

// Hoses notes, section 12 item 2.
TEST_F(Order, ProofAboveTheTableIsRefused) {
  auto in = good();
  in.proof_pressure = typed<quantity::PressureGauge>("3001 psi");
  EXPECT_EQ(paths(in), "proof_pressure ");
  in.proof_pressure = typed<quantity::PressureGauge>("2500 psi");
  in.proof_source = "kit instructions";
  EXPECT_EQ(run(in).proof_source, "kit instructions");
  // No table: the figure and its source are enough; without a source the maker's is asked for.
  in.family = ProofFamily::other;
  EXPECT_EQ(paths(in), "");
  in.proof_source.clear();
  EXPECT_EQ(paths(in), "makers_proof ");
}

TEST_F(Order, FluidAndLinerMustAgree) {
  auto in = good();
  in.carries = Carries::fuel;
  EXPECT_EQ(paths(in), "");
  in.liner = Liner::ptfe_plain;
  EXPECT_EQ(paths(in), "liner ");
  in.liner = Liner::elastomer;
  EXPECT_EQ(paths(in), "");
  in.carries = Carries::fuel_with_alcohol;
  EXPECT_EQ(paths(in), "remarks ");
  in.carries = Carries::hydraulic_phosphate;
  EXPECT_EQ(paths(in), "remarks ");
  in.remarks = "liner by name";
  EXPECT_EQ(paths(in), "");
  in.carries = Carries::fuel;
  in.liner = Liner::ptfe_plain;
  EXPECT_TRUE(says(run(in).warnings, "sparks through"));
}

TEST_F(Order, WarnsOfWhatIsUnusual) {
  auto in = good();
  in.sleeve = FireSleeve::none;
  in.carries = Carries::fuel_with_alcohol;
  in.overall = typed<quantity::Length>("420 mm");
  in.length_tolerance = typed<quantity::Length>("1 mm");
  in.clocking = typed<quantity::Angle>("52 deg");
  in.clocking_tolerance = typed<quantity::Angle>("1 deg");
  in.working_pressure.reset();
  auto got = run(in);
  EXPECT_FALSE(got.length_code);
  EXPECT_FALSE(got.clocking_code);
  for (const char* part :
       {"no fire sleeve", "in writing", "no whole step", "eighths", "no operating pressure",
        "closer than the standard", "closer than what"}) {
    EXPECT_TRUE(says(got.warnings, part)) << part;
  }
  in.liner = Liner::elastomer;
  in.remarks = "named";
  EXPECT_TRUE(says(run(in).warnings, "an elastomer hose ahead of the firewall without"));
  in = good();
  in.sleeve = FireSleeve::over;
  in.sleeve_past_socket.reset();
  got = run(in);
  EXPECT_TRUE(says(got.warnings, "1/8 in"));
}

TEST_F(Order, Codes) {
  EXPECT_EQ(length_code(typed<quantity::Length>("9 7/8 in").value), "0097");
  EXPECT_EQ(length_code(typed<quantity::Length>("120 in").value), "1200");
  EXPECT_FALSE(length_code(typed<quantity::Length>("16.51 in").value));
  EXPECT_FALSE(length_code(typed<quantity::Length>("1000 in").value));
  EXPECT_FALSE(length_code({0.0}));
  EXPECT_EQ(clocking_code(quantity::degrees(0)), "00");
  EXPECT_EQ(clocking_code(quantity::degrees(355)), "71");
  EXPECT_FALSE(clocking_code(quantity::degrees(360)));
  EXPECT_FALSE(clocking_code(quantity::degrees(52)));
  EXPECT_NEAR(usual_length_tolerance(context, quantity::inches(100))->si, 0.0254, 1e-12);
  EXPECT_FALSE(usual_length_tolerance({}, quantity::inches(100)));
  EXPECT_EQ(words(EndForm::male_thread), "male thread");
}

// ---------------------------------------------------------------- incoming

class Incoming : public Order {
 protected:
  HoseIncomingInput came() {
    HoseIncomingInput in;
    in.ordered = good();
    in.overall = measured<quantity::Length>("16.55 in +- 0.03 in");
    in.clocking = measured<quantity::Angle>("51 deg +- 1 deg");
    for (Seen HoseIncomingInput::* f : k_seen) in.*f = Seen::yes;
    in.tag_proof = typed<quantity::PressureGauge>("3000 psi");
    in.sleeve_near = measured<quantity::Length>("0.16 in +- 0.02 in");
    in.sleeve_far = in.sleeve_near;
    return in;
  }
  HoseIncomingAnswer check(const HoseIncomingInput& in) {
    auto got = hose_incoming(in, context);
    EXPECT_TRUE(got) << (got ? "" : got.error()[0].path + ": " + got.error()[0].what);
    return got ? *got : HoseIncomingAnswer{};
  }
  std::string wrong(const HoseIncomingInput& in) {
    const auto got = hose_incoming(in, context);
    std::string all;
    if (!got) {
      for (const Problem& p : got.error()) all += p.path + " ";
    }
    return all;
  }
  const Criterion& line(const HoseIncomingAnswer& a, const std::string& what) {
    for (const auto& c : a.lines) {
      if (c.what.find(what) != std::string::npos) return c;
    }
    ADD_FAILURE() << what;
    return a.lines.front();
  }
  static constexpr Seen HoseIncomingInput::* k_seen[] = {&HoseIncomingInput::near_end_as_ordered,
                                                         &HoseIncomingInput::far_end_as_ordered,
                                                         &HoseIncomingInput::ball_passes,
                                                         &HoseIncomingInput::tag_there,
                                                         &HoseIncomingInput::tag_test_date,
                                                         &HoseIncomingInput::capped,
                                                         &HoseIncomingInput::cure_and_assembly_date,
                                                         &HoseIncomingInput::layline_straight,
                                                         &HoseIncomingInput::undamaged};
};

TEST_F(Incoming, AsOrderedConforms) {
  const auto got = check(came());
  for (const auto& c : got.lines) EXPECT_EQ(c.verdict, Verdict::conforms) << c.what;
  EXPECT_EQ(got.verdict, Verdict::conforms);
  EXPECT_TRUE(says(got.notes, "proof tested again"));
}

TEST_F(Incoming, EveryLineCounts) {
  for (Seen HoseIncomingInput::* f : k_seen) {
    auto in = came();
    in.*f = Seen::no;
    auto got = check(in);
    EXPECT_EQ(got.verdict, Verdict::does_not_conform);
    EXPECT_TRUE(says(got.do_next, "do not fit it"));
    in.*f = Seen::not_looked;
    got = check(in);
    EXPECT_EQ(got.verdict, Verdict::not_tested);
    EXPECT_TRUE(says(got.do_next, "still to be looked at"));
  }
  auto in = came();
  in.overall.reset();
  in.clocking.reset();
  in.tag_proof.reset();
  in.sleeve_near.reset();
  EXPECT_EQ(check(in).verdict, Verdict::not_tested);
}

TEST_F(Incoming, TheTapesDoubtIsTheGuardBand) {
  auto in = came();
  in.overall = measured<quantity::Length>("16.67 in +- 0.03 in");
  EXPECT_EQ(check(in).verdict, Verdict::undecided);
  EXPECT_TRUE(says(check(in).do_next, "finer tape"));
  in.overall = measured<quantity::Length>("16.67 in +- 0.01 in");
  EXPECT_EQ(check(in).verdict, Verdict::conforms);
  in.overall = measured<quantity::Length>("16.73 in +- 0.03 in");
  EXPECT_EQ(check(in).verdict, Verdict::does_not_conform);
  in.overall = measured<quantity::Length>("16.50 in");
  EXPECT_TRUE(says(check(in).notes, "tape's uncertainty"));
}

TEST_F(Incoming, ClockingWrapsRound) {
  auto in = came();
  in.ordered.clocking = typed<quantity::Angle>("0 deg");
  in.clocking = measured<quantity::Angle>("358.5 deg +- 1 deg");
  EXPECT_EQ(check(in).verdict, Verdict::conforms);
  in.clocking = measured<quantity::Angle>("357.5 deg +- 1 deg");
  EXPECT_EQ(check(in).verdict, Verdict::undecided);
  in.ordered.clocking = typed<quantity::Angle>("50 deg");
  in.clocking = measured<quantity::Angle>("310 deg");
  const auto got = check(in);
  EXPECT_EQ(got.verdict, Verdict::does_not_conform);
  EXPECT_TRUE(says(got.notes, "other way round"));
  EXPECT_TRUE(says(got.notes, "protractor's uncertainty"));
}

TEST_F(Incoming, TagMustSayTheOrderedPressure) {
  auto in = came();
  in.tag_proof = typed<quantity::PressureGauge>("2500 psi");
  EXPECT_NE(line(check(in), "proof pressure").reason.find("less than"), std::string::npos);
  in.tag_proof = typed<quantity::PressureGauge>("3500 psi");
  EXPECT_NE(line(check(in), "proof pressure").reason.find("maximum"), std::string::npos);
  EXPECT_EQ(check(in).verdict, Verdict::does_not_conform);
}

TEST_F(Incoming, AdviceDoesNotCount) {
  auto in = came();
  in.ordered.sleeve_past_socket.reset();
  in.sleeve_near = measured<quantity::Length>("0.05 in +- 0.02 in");
  in.liner_current = measured<quantity::Current>("2 uA +- 0.5 uA");
  const auto got = check(in);
  EXPECT_EQ(line(got, "near end").counts, true);
  EXPECT_EQ(line(got, "sleeve past the socket, near").verdict, Verdict::does_not_conform);
  EXPECT_EQ(line(got, "liner").verdict, Verdict::does_not_conform);
  EXPECT_FALSE(line(got, "liner").counts);
  EXPECT_EQ(got.verdict, Verdict::conforms);
  in.liner_current.reset();
  in.ordered.carries = Carries::fuel;
  EXPECT_TRUE(says(check(in).notes, "that the liner conducts was not measured"));
}

TEST_F(Incoming, TellsWhatIsWrongWithTheOrder) {
  auto in = came();
  in.ordered.size.clear();
  EXPECT_EQ(wrong(in), "ordered/size ");
  in = came();
  in.ordered.far_end.form = EndForm::straight;
  in.ordered.clocking.reset();
  EXPECT_EQ(wrong(in), "clocking ");
  in = came();
  in.ordered.sleeve = FireSleeve::none;
  EXPECT_EQ(wrong(in), "sleeve_near ");
}

TEST_F(Incoming, IsDeclaredWithoutAGap) {
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<HoseOrderInput>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<HoseOrderAnswer>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<OrderEnd>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<OrderLine>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<HoseIncomingInput>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<HoseIncomingAnswer>()), "");
}

}  // namespace
