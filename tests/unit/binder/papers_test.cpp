// What is printed from the record beside cards: the hose as it was drawn, and its tag.
#include "binder/papers.hpp"

#include "binder/hose_paper.hpp"
#include "calculation/catalogue.hpp"
#include "unit/binder/support.hpp"

namespace {

using namespace wm;
using namespace wm::binder::test;

constexpr const char* k_hose =
    R"({"aircraft":"bird","id":"oil","sheet":{"title":"oil cooler, pressure side",
 "near_end":{"seat":{"x":"0 in","y":"0 in","z":"0 in"},"leaves":{"x":1},"rigid":"1.5 in"},
 "far_end":{"seat":{"x":"14 in","y":"13 in","z":"4 in"},"leaves":{"y":-1},"rigid":"1.5 in"},
 "size":"-8","outside_diameter":"0.77 in","least_radius":"4.63 in"}})";
constexpr const char* k_proof =
    R"({"aircraft":"bird","hose":"oil","assembled":"2026-11-20","test":{"family":"medium-elastomer","size":"-8",
 "bore":"13/32 in","length":"24 in","carries":"oil","findings":{"leak":"yes"}}})";

class Papers : public testing::Test {
 protected:
  void SetUp() override {
    binder_ = with_bird(folder_ / "a.binder");
    ASSERT_TRUE(act(*binder_, "draw-hose", "drawn", k_hose));
  }
  [[nodiscard]] Checked<std::string> paper(const std::string& kind, const std::string& id,
                                           const std::string& as = "svg") const {
    describe::Context context;
    context.today = k_now.today;
    context.tables = calculation::catalogue().tables();
    return binder::record_paper(*binder_, {kind, "bird", id, as, "a4"}, context);
  }
  [[nodiscard]] std::string words(const std::string& kind) const {
    const auto made = paper(kind, "oil");
    EXPECT_TRUE(made) << told(made);
    // The words alone, a line behind the other.
    std::string out;
    bool in_tag = false;
    for (const char c : made ? *made : std::string{}) {
      const bool blank = in_tag || c == '<' || c == ' ' || c == '\n';
      if (c == '<' || c == '>') in_tag = c == '<';
      if (!blank && c != '>')
        out += c;
      else if (!out.empty() && out.back() != ' ')
        out += ' ';
    }
    return out;
  }
  [[nodiscard]] binder::Binder& binder() const { return *binder_; }

 private:
  template <class T>
  static std::string told(const Checked<T>& made) {
    return made ? std::string{} : calculation::write_problems(made.error());
  }
  Folder folder_;
  std::unique_ptr<binder::Binder> binder_;
};

TEST_F(Papers, AHoseIsPrintedAsItWasDrawn) {
  EXPECT_NE(words("hose").find("oil cooler, pressure side"), std::string::npos);
  const auto pdf = paper("hose", "oil", "pdf");
  ASSERT_TRUE(pdf);
  EXPECT_TRUE(pdf->starts_with("%PDF"));
  const auto png = paper("hose", "oil", "png");
  ASSERT_TRUE(png);
  EXPECT_EQ(png->substr(1, 3), "PNG");
}

TEST_F(Papers, ATagTellsOfItsProofAndWhereTheRecordStood) {
  auto svg = words("tag");
  EXPECT_NE(svg.find("NOT PROVED. No proof test is on record."), std::string::npos);
  EXPECT_NE(svg.find("record at entry"), std::string::npos);
  ASSERT_TRUE(act(binder(), "prove-hose", "failed", k_proof));
  svg = words("tag");
  EXPECT_NE(svg.find("does not conform"), std::string::npos) << "a failed test is told as such";
  EXPECT_NE(svg.find("NOT PROVED."), std::string::npos);
  EXPECT_NE(svg.find("4Q26 (2026-11-20)"), std::string::npos);
  EXPECT_TRUE(paper("tag", "oil", "pdf"));
}

TEST_F(Papers, WhatIsNotThereIsToldInWords) {
  const auto first = [&](const std::string& kind, const std::string& id, const std::string& as) {
    const auto made = paper(kind, id, as);
    EXPECT_FALSE(made);
    return made ? Problem{} : made.error().front();
  };
  EXPECT_EQ(first("tag", "none", "pdf").kind, Kind::not_found);
  EXPECT_EQ(first("hose", "none", "pdf").kind, Kind::not_found);
  EXPECT_EQ(first("poster", "oil", "pdf").kind, Kind::unknown_choice);
  EXPECT_EQ(first("tag", "oil", "doc").kind, Kind::unknown_choice);
}

TEST(MakingCard, HoldsEachStepAndWhatToFetch) {
  const auto* calculation = calculation::catalogue().find("hose-cut");
  ASSERT_NE(calculation, nullptr);
  describe::Context context;
  context.today = k_now.today;
  context.tables = calculation::catalogue().tables();
  const auto made = binder::paper_of({"hose-cut", "svg", "a4"},
                                     json(calculation::example_json(*calculation)), context);
  ASSERT_TRUE(made) << calculation::write_problems(made.error());
  EXPECT_NE(made->bytes.find("Making card"), std::string::npos);
  EXPECT_NE(made->bytes.find("not tied to the record"), std::string::npos);
  const auto wrong = binder::paper_of({"hose-cut", "dxf", "a4"},
                                      json(calculation::example_json(*calculation)), context);
  ASSERT_FALSE(wrong);
  EXPECT_EQ(wrong.error().front().path, "as");
}

}  // namespace
