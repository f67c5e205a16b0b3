// Cards filled from the record: they lay out, and carry sequence number and head.
#include "binder/cards.hpp"

#include "unit/binder/support.hpp"

namespace {

using namespace wm;
using namespace wm::binder::test;
using binder::CardKind;
using binder::CardWanted;

class Cards : public testing::Test {
 protected:
  void SetUp() override {
    binder_ = with_bird(folder_ / "a.binder");
    const auto done = [&](const char* name, const std::string& id, const std::string& input) {
      const auto reply = act(*binder_, name, id, input);
      ASSERT_TRUE(reply) << name << told(reply);
    };
    done(
        "add-joint", "joint",
        R"({"aircraft":"bird","id":"nut","name":"Hose nut","position":"hose","torque_least":"230 in-lb",
             "torque_most":"260 in-lb","torque_table":"sheet, invented","needs_second_person":true
    })");
    done("plan-change", "change",
         R"({"aircraft":"bird","id":"new-hose","title":"New oil hose","position":"hose",
             "grade":"renewed","joints":["nut"],"document":"manual, invented"
    })");
    done("plan-stage", "stage",
         R"({"aircraft":"bird","id":"one","title":"Oil hose","changes":["new-hose"],
             "abort_values":[{"what":"oil pressure","limit":"below 25 psi"}]})");
    done("sign-entry", "entry",
         R"({"aircraft":"bird","id":"first","text":"Oil hose looked at.","name":"Anna Example",
             "signer":"owner"})");
  }
  drawing::Card card_of(CardKind kind, const std::string& id) {
    drawing::Card out;
    binder_->look([&](const bay::State& state) {
      auto made = binder::card(state, {kind, "bird", id}, k_now.today);
      EXPECT_TRUE(made);
      if (made) out = std::move(*made);
    });
    return out;
  }
  static std::string words(const drawing::Card& card) {
    std::string out = card.title + " " + card.subtitle;
    for (const auto& s : card.sections) {
      out += " | " + s.heading;
      for (const auto& p : s.paragraphs) out += " " + p;
      for (const auto& step : s.steps) out += " " + step.text + " " + step.torque;
      if (s.table)
        for (const auto& row : s.table->rows)
          for (const auto& cell : row) out += " " + cell;
    }
    return out;
  }
  [[nodiscard]] binder::Binder& binder() { return *binder_; }

 private:
  Folder folder_;
  std::unique_ptr<binder::Binder> binder_;
};

TEST_F(Cards, EachCarriesWhereTheRecordStood) {
  for (const auto& [kind, id] :
       {std::pair{CardKind::work, "one"}, {CardKind::stage, "one"}, {CardKind::entry, "first"}}) {
    const auto card = card_of(kind, id);
    EXPECT_EQ(card.sequence, binder().last().sequence);
    EXPECT_EQ(card.head, binder().last().hash);
    EXPECT_EQ(drawing::record_mark(card),
              fmt::format("WM1 {} {}", binder().last().sequence, binder().last().hash));
    EXPECT_EQ(card.registration, "Q-BRD");
  }
}

TEST_F(Cards, EachIsMadeAsPdfSvgAndPng) {
  for (const auto& [kind, id] :
       {std::pair{CardKind::work, "one"}, {CardKind::stage, "one"}, {CardKind::entry, "first"}}) {
    const auto card = card_of(kind, id);
    const auto pdf = binder::print_card(card, drawing::Paper::a4, "pdf");
    ASSERT_TRUE(pdf) << pdf.error().what;
    EXPECT_TRUE(pdf->starts_with("%PDF"));
    const auto svg = binder::print_card(card, drawing::Paper::letter, "svg");
    ASSERT_TRUE(svg);
    EXPECT_NE(svg->find("<svg"), std::string::npos);
    const auto png = binder::print_card(card, drawing::Paper::a4, "png");
    ASSERT_TRUE(png);
    EXPECT_EQ(png->substr(1, 3), "PNG");
  }
}

TEST_F(Cards, TheWorkCardNamesJointTorqueAndData) {
  const auto text = words(card_of(CardKind::work, "one"));
  for (const auto* wanted :
       {"New oil hose", "Hose nut", "230 in-lb to 260 in-lb", "manual, invented"})
    EXPECT_NE(text.find(wanted), std::string::npos) << wanted << " in " << text;
}

TEST_F(Cards, TheStageCardNamesAbortValuesAndWhatIsMissing) {
  const auto text = words(card_of(CardKind::stage, "one"));
  for (const auto* wanted : {"below 25 psi", "Not done yet: New oil hose", " Oil hose |"})
    EXPECT_NE(text.find(wanted), std::string::npos) << wanted << " in " << text;
}

TEST_F(Cards, TheEntryShowsTheTextAsSignedAndWho) {
  const auto card = card_of(CardKind::entry, "first");
  EXPECT_NE(words(card).find("Oil hose looked at."), std::string::npos);
  ASSERT_EQ(card.signatures.size(), 1U);
  EXPECT_EQ(card.signatures[0].name, "Anna Example");
  EXPECT_EQ(card.signatures[0].certificate, "no certificate number given");
}

// An entry printed later showed the date and hours of the printing beside the older text.
TEST_F(Cards, AnEntryPrintedLaterShowsItsOwnDateAndHours) {
  ASSERT_TRUE(act(binder(), "define-counter", "meter",
                  R"({"aircraft":"bird","id":"engine","name":"Engine","kind":"engine-hours"})"));
  const auto read = [&](const char* id, const char* day, const char* shown) {
    const auto reply = binder().act(
        {"read-counter", id, day, "anna", "laptop", {}, false},
        json(fmt::format(R"({{"aircraft":"bird","at":[{{"counter":"engine","hours":"{} h"}}]}})",
                         shown)),
        k_now, quantity::UnitSet::us_customary);
    ASSERT_TRUE(reply) << told(reply);
  };
  read("r1", "2026-11-20", "100.5");
  read("r2", "2026-11-24", "104.0");
  const binder::Now later{"2027-02-03T10:00:00Z", *quantity::parse_date("2027-02-03")};
  const auto reply =
      binder().act({"read-counter", "r3", {}, "anna", "laptop", {}, false},
                   json(R"({"aircraft":"bird","at":[{"counter":"engine","hours":"131.2 h"}]})"),
                   later, quantity::UnitSet::us_customary);
  ASSERT_TRUE(reply) << told(reply);
  binder().look([&](const bay::State& state) {
    const auto hours = [](const drawing::Card& card) {
      for (const auto& [name, value] : card.facts)
        if (name == "Engine") return value;
      return std::string("none");
    };
    const auto entry = binder::card(state, {CardKind::entry, "bird", "first"}, later.today);
    ASSERT_TRUE(entry);
    EXPECT_EQ(entry->date, "2026-11-25");
    EXPECT_EQ(hours(*entry), "104.0 h");
    const auto work = binder::card(state, {CardKind::work, "bird", "one"}, later.today);
    ASSERT_TRUE(work);
    EXPECT_EQ(work->date, "2027-02-03");
    EXPECT_EQ(hours(*work), "131.2 h");
  });
}

TEST_F(Cards, WhatIsNotThereIsSaid) {
  binder().look([&](const bay::State& state) {
    for (const auto& wanted :
         {CardWanted{CardKind::work, "ghost", "one"}, CardWanted{CardKind::stage, "bird", "two"},
          CardWanted{CardKind::entry, "bird", "second"}}) {
      const auto made = binder::card(state, wanted, k_now.today);
      ASSERT_FALSE(made);
      EXPECT_EQ(made.error().kind, Kind::not_found);
    }
  });
  EXPECT_FALSE(binder::card_kind("tag"));
  EXPECT_EQ(*binder::card_kind("entry"), CardKind::entry);
  EXPECT_FALSE(binder::print_card(card_of(CardKind::work, "one"), drawing::Paper::a4, "doc"));
}

}  // namespace
