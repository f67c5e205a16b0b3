#include "hose/cut.hpp"

#include <gtest/gtest.h>

#include <numbers>

#include "hose/declarations.hpp"

namespace {

using namespace wm;
using namespace wm::hose;
using quantity::inches;

EnteredLength typed(const std::string& text) { return *quantity::read<quantity::Length>(text); }
quantity::Entered<quantity::Angle> angle(const std::string& text) {
  return *quantity::read<quantity::Angle>(text);
}
bool says(const std::vector<std::string>& lines, const std::string& words) {
  for (const auto& line : lines) {
    if (line.find(words) != std::string::npos) return true;
  }
  return false;
}
double in_inches(const EnteredLength& l) { return l.value / inches(1); }

/// Number of the first step whose text holds the words; -1: none.
int at(const AssemblyCut& a, const std::string& words) {
  for (std::size_t i = 0; i < a.card.size(); ++i) {
    if (a.card[i].text.find(words) != std::string::npos) return static_cast<int>(i);
  }
  return -1;
}
const WorkStep& step(const AssemblyCut& a, const std::string& words) {
  static const WorkStep none{"no such step", "", "", ""};
  const int i = at(a, words);
  EXPECT_GE(i, 0) << words;
  return i < 0 ? none : a.card[static_cast<std::size_t>(i)];
}
const PartNeeded* part(const HoseCutAnswer& a, const std::string& what) {
  for (const auto& p : a.parts) {
    if (p.what == what) return &p;
  }
  return nullptr;
}

class HoseCut : public testing::Test {
 protected:
  void SetUp() override {
    declare(catalogue);
    context.tables = catalogue.tables();
  }
  static AssemblyToMake elastomer() {
    AssemblyToMake a;
    a.name = "supply";
    a.making = Making::elastomer_screwed;
    a.family = "MIL-H-8794";
    a.size = "-8";
    a.overall = typed("16.50 in");
    for (EndToMake* end : {&a.near_end, &a.far_end}) {
      end->family = "MS24587";
      end->socket = typed("1.10 in");
      end->widest = typed("1.02 in");
    }
    a.sleeve = SleeveToMake{"fire sleeve", typed("0.88 in"), typed("1.12 in")};
    a.bends = {angle("90 deg")};
    a.proof_family = ProofFamily::medium_elastomer;
    return a;
  }
  static AssemblyToMake ptfe() {
    AssemblyToMake a;
    a.name = "pressure";
    a.making = Making::ptfe_sleeved;
    a.family = "PTFE";
    a.size = "-6";
    a.overall = typed("18.00 in");
    a.pair_form = "straight";
    return a;
  }
  HoseCutAnswer run(const HoseCutInput& in) {
    auto got = hose_cut(in, context);
    EXPECT_TRUE(got) << (got ? "" : got.error()[0].path + ": " + got.error()[0].what);
    return got ? *got : HoseCutAnswer{};
  }
  AssemblyCut run(const AssemblyToMake& a) {
    HoseCutInput in;
    in.assemblies = {a};
    auto got = run(in);
    return got.assemblies.empty() ? AssemblyCut{} : got.assemblies[0];
  }
  std::string paths(const AssemblyToMake& a) {
    HoseCutInput in;
    in.assemblies = {a};
    const auto got = hose_cut(in, context);
    std::string all;
    if (!got) {
      for (const Problem& p : got.error()) all += p.path + " ";
    }
    return all;
  }
  describe::Catalogue catalogue;
  describe::Context context;
};

TEST_F(HoseCut, CutLengthSleeveAndTheSum) {
  const auto got = run(elastomer());
  EXPECT_NEAR(in_inches(got.cut_length), 14.62, 1e-9);
  // (14.62 + 2 x 1.10 + 2 x 0.125 + pi/2 x 0.56) x 1.02
  const double expected = (14.62 + 2.2 + 0.25 + std::numbers::pi / 2.0 * 0.56) * 1.02;
  EXPECT_NEAR(in_inches(*got.sleeve_length), expected, 1e-9);
  EXPECT_TRUE(says(got.working, "cut length = 16.5 in - 0.94 in - 0.94 in = 14.62 in"));
  EXPECT_TRUE(says(got.working, "90 deg x pi/180 x 1.12 in / 2 = 0.879646 in"));
  EXPECT_TRUE(says(got.working, "x (1 + 0.02) = 18.3086 in"));
  EXPECT_TRUE(says(got.measured, "from the sealing seat"));
  EXPECT_TRUE(says(got.notes, "secondary"));
}

TEST_F(HoseCut, FromTheHoseThatCanBend) {
  auto a = elastomer();
  a.overall.reset();
  a.flexible = typed("13.50 in");
  a.near_end.rigid = typed("1.50 in");
  EXPECT_EQ(paths(a), "assemblies/0/far_end/rigid ");
  a.far_end.rigid = typed("1.50 in");
  const auto got = run(a);
  EXPECT_NEAR(in_inches(got.overall), 16.5, 1e-9);
  EXPECT_NEAR(in_inches(got.cut_length), 14.62, 1e-9);
  EXPECT_TRUE(says(got.working, "overall = 13.5 in + 1.5 in + 1.5 in = 16.5 in"));
}

TEST_F(HoseCut, TheCardFollowsTheOrderOfTheTrade) {
  const auto got = run(elastomer());
  const std::vector<std::string> order{"cut length: 14.62 in",
                                       "Cut square",
                                       "Deburr",
                                       "Blow out",
                                       "near end: screw the",
                                       "near end: draw a line",
                                       "near end: oil bore",
                                       "near end: gap",
                                       "near end: the hose has not been",
                                       "slip it on now",
                                       "far end: screw the",
                                       "far end: draw a line",
                                       "far end: gap",
                                       "far end: the hose has not been",
                                       "Look through the bore",
                                       "Bore check",
                                       "Clean before the test",
                                       "Proof test",
                                       "Gap again",
                                       "The line at each socket",
                                       "Clean after the test",
                                       "Overall length",
                                       "Sleeve over both sockets",
                                       "Cap both ends",
                                       "Tag:"};
  int last = -1;
  for (const auto& words : order) {
    const int here = at(got, words);
    EXPECT_GT(here, last) << words;
    last = here;
  }
  for (const auto& s : got.card) {
    EXPECT_FALSE(s.source.empty()) << s.text;
    EXPECT_FALSE(s.box.empty()) << s.text;
  }
  EXPECT_NE(step(got, "near end: gap").limit.find("0.005 to 0.031 in; another document: 0.000"),
            std::string::npos);
  EXPECT_EQ(step(got, "Proof test").limit, "4000 psi at most");
  EXPECT_NE(step(got, "Proof test").text.find("hold the sleeve back"), std::string::npos);
  EXPECT_NE(step(got, "Measure and mark").limit.find("+-0.188 in"), std::string::npos);
}

TEST_F(HoseCut, PtfeHasItsOwnSteps) {
  const auto got = run(ptfe());
  EXPECT_NEAR(in_inches(got.cut_length), 16.38, 1e-9);
  EXPECT_GE(at(got, "work the braid apart"), 0);
  EXPECT_EQ(at(got, "counter-clockwise till"), -1);
  EXPECT_EQ(at(got, "sleeve on now"), -1);
  EXPECT_NE(step(got, "near end: gap").limit.find("not under 0.025 in"), std::string::npos);
  EXPECT_EQ(step(got, "has not been pushed out").source, "common practice, no source");
  EXPECT_NE(step(got, "Clean before").text.find("never wire-brush"), std::string::npos);
  EXPECT_NE(step(got, "Proof test").limit.find("see proof-test"), std::string::npos);
  EXPECT_FALSE(says(got.notes, "MIL-DTL-8794F"));
}

TEST_F(HoseCut, PushOutDependsOnTheSize) {
  auto a = elastomer();
  EXPECT_EQ(step(run(a), "has not been pushed out").limit, "none");
  a.size = "-12";
  EXPECT_EQ(step(run(a), "has not been pushed out").limit, "up to 1/32 in");
  a.size = "-7";
  for (EndToMake* end : {&a.near_end, &a.far_end}) {
    end->family.clear();
    end->cut_off = typed("0.9 in");
  }
  a.proof_family = ProofFamily::not_said;
  EXPECT_NE(step(run(a), "has not been pushed out").limit.find("not listed"), std::string::npos);
}

TEST_F(HoseCut, TwoElbowsAreSetBeforeTheLastTightening) {
  auto a = elastomer();
  a.near_end.form = EndForm::elbow_90;
  a.far_end.form = EndForm::elbow_45;
  EXPECT_EQ(paths(a), "assemblies/0/clocking ");
  a.clocking = angle("50 deg");
  const auto got = run(a);
  EXPECT_EQ(step(got, "far end: stop short").limit, "gap 0.040 in at this point");
  EXPECT_NE(step(got, "Set the clocking").text.find("50 deg"), std::string::npos);
  EXPECT_NE(step(got, "Set the clocking").text.find("do not back off"), std::string::npos);
  EXPECT_LT(at(got, "far end: stop short"), at(got, "Set the clocking"));
  EXPECT_LT(at(got, "Set the clocking"), at(got, "both ends: gap"));
  EXPECT_EQ(at(got, "near end: gap"), -1) << "the gap is final only after the angle";
  EXPECT_GE(at(got, "Gap and clocking again"), 0);
  EXPECT_TRUE(says(got.measured, "centre line of the 90 degree outlet"));
  a.making = Making::ptfe_sleeved;
  EXPECT_EQ(step(run(a), "Set the clocking").text.find("do not back off"), std::string::npos);
}

TEST_F(HoseCut, SaysWhetherAnEndPassesThroughTheSleeve) {
  auto a = elastomer();
  a.far_end.widest = typed("0.80 in");
  auto got = run(a);
  EXPECT_TRUE(says(got.sleeve_over_ends, "near end: does not pass"));
  EXPECT_TRUE(says(got.sleeve_over_ends, "far end: passes through the sleeve (0.8 in across"));
  EXPECT_NE(step(got, "slip it on now").text.find("may also wait"), std::string::npos);
  a.far_end.widest.reset();
  got = run(a);
  EXPECT_TRUE(says(got.sleeve_over_ends, "far end: not known"));
  EXPECT_NE(step(got, "slip it on now").text.find("or that is not known"), std::string::npos);
  a.sleeve->inside.reset();
  EXPECT_TRUE(says(run(a).sleeve_over_ends, "its widest across and the sleeve's inside diameter"));
}

TEST_F(HoseCut, TheBallComesFromTheBore) {
  auto a = elastomer();
  EXPECT_NE(step(run(a), "Bore check").text.find("not known here"), std::string::npos);
  EXPECT_NE(step(run(a), "Bore check").limit.find("no more than 8 oz"), std::string::npos);
  a.least_bore = typed("0.345 in");
  EXPECT_NE(step(run(a), "Bore check").text.find("a ball of 0.343 to 0.344 in"), std::string::npos);
  a.least_bore.reset();
  a.proof_family = ProofFamily::high_elastomer;
  EXPECT_NE(step(run(a), "Bore check").text.find("0.363 to 0.364 in (least bore 0.365 in, TM"),
            std::string::npos);
}

TEST_F(HoseCut, PartsOfTheWholeChange) {
  HoseCutInput in;
  in.assemblies = {elastomer(), elastomer(), ptfe()};
  in.assemblies[1].name = "return";
  in.assemblies[1].overall = typed("20.50 in");
  in.assemblies[1].far_end.form = EndForm::elbow_90;
  in.assemblies[1].count = 2;
  in.assemblies[2].near_end.fitting = "PTFE end -6";
  in.assemblies[2].far_end.fitting = "PTFE end -6";
  const auto got = run(in);
  ASSERT_NE(part(got, "hose MIL-H-8794 -8"), nullptr);
  EXPECT_NEAR(in_inches(*part(got, "hose MIL-H-8794 -8")->length), 14.62 + 2 * 18.62, 1e-9);
  EXPECT_EQ(part(got, "hose MIL-H-8794 -8")->used_for.size(), 2U);
  EXPECT_NEAR(in_inches(*part(got, "hose PTFE -6")->length), 16.38, 1e-9);
  EXPECT_EQ(part(got, "end fitting -8, MS24587, straight swivel")->count, 4);
  EXPECT_EQ(part(got, "PTFE end -6")->count, 2);
  EXPECT_EQ(part(got, "bands for fire sleeve")->count, 6);
  EXPECT_EQ(part(got, "sleeve ends to seal (dip or wrap)")->count, 6);
  EXPECT_EQ(part(got, "tag bands")->count, 4);
  EXPECT_FALSE(part(got, "hose PTFE -6")->count) << "hose comes by length";
  EXPECT_EQ(part(got, "caps -8")->count, 6);
  EXPECT_EQ(part(got, "caps -6")->count, 2);
  ASSERT_EQ(got.pieces.size(), 3U);
  EXPECT_EQ(got.pieces[1].count, 2);
  EXPECT_NEAR(in_inches(got.pieces[1].length), 18.62, 1e-9);
}

TEST_F(HoseCut, WarnsOfBareElastomerAheadOfTheFirewall) {
  HoseCutInput in;
  in.assemblies = {elastomer()};
  in.assemblies[0].sleeve.reset();
  EXPECT_TRUE(says(run(in).assemblies[0].notes, "MIL-DTL-8794F 6.1"));
  in.ahead_of_firewall = false;
  EXPECT_FALSE(says(run(in).assemblies[0].notes, "MIL-DTL-8794F 6.1"));
}

TEST_F(HoseCut, NamesWhatIsMissingOrContradicts) {
  EXPECT_FALSE(hose_cut({}, context));
  EXPECT_EQ(hose_cut({}, context).error()[0].path, "assemblies");
  AssemblyToMake a;
  a.name = "x";
  EXPECT_EQ(paths(a), "assemblies/0/making assemblies/0/size assemblies/0/overall ");
  a = elastomer();
  a.count = 0;
  EXPECT_EQ(paths(a), "assemblies/0/count ");
  a = elastomer();
  a.flexible = typed("10 in");
  EXPECT_EQ(paths(a), "assemblies/0/flexible ");
  a = elastomer();
  a.near_end.socket.reset();
  a.sleeve->outside.reset();
  EXPECT_EQ(paths(a), "assemblies/0/near_end/socket assemblies/0/sleeve/outside ");
  a.bends.clear();
  a.near_end.socket = typed("1 in");
  EXPECT_EQ(paths(a), "") << "a straight sleeve needs no diameter";
  a = elastomer();
  a.far_end.family.clear();
  EXPECT_EQ(paths(a), "assemblies/0/far_end/cut_off ");
  a.far_end.family = "MS1";
  EXPECT_EQ(paths(a), "assemblies/0/far_end/family ");
  a = elastomer();
  a.overall = typed("1.5 in");
  EXPECT_EQ(paths(a), "assemblies/0/overall assemblies/0/overall ");
}

TEST_F(HoseCut, IsDeclaredWithoutAGap) {
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<HoseCutInput>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<HoseCutAnswer>()), "");
}

}  // namespace
