#include "drawing/card.hpp"

#include <gtest/gtest.h>

#include <thread>

#include "drawing/png.hpp"
#include "drawing/svg.hpp"
#include "outside_tools.hpp"
#include "sample_card.hpp"
#include "sheet_checks.hpp"

namespace wm::drawing {
namespace {

using test::all_text;
using test::count_of;
using test::expect_tidy;
using test::sample_card;

constexpr double k_margin = 15.9;

void expect_all_tidy(const std::vector<Page>& pages) {
  const TextMeasurer measurer;
  for (const Page& page : pages) expect_tidy(page, measurer, k_margin);
}

/// Everything above the footer stays above its rule.
void expect_body_ends_above_footer(const std::vector<Page>& pages) {
  for (const Page& page : pages) {
    double rule = page.height;
    std::size_t footer = 0;
    for (std::size_t i = 0; i < page.items.size(); ++i)
      if (const auto* l = std::get_if<Line>(&page.items[i]);
          l != nullptr && l->from.y == page.height - 27 && l->to.y == l->from.y)
        rule = l->from.y, footer = i;
    ASSERT_LT(rule, page.height) << "no footer rule";
    for (std::size_t i = 0; i < footer; ++i) {
      if (const auto* t = std::get_if<Text>(&page.items[i])) {
        EXPECT_LT(t->at.y, rule) << t->text;
      }
      if (const auto* r = std::get_if<Rect>(&page.items[i])) {
        EXPECT_LT(r->at.y + r->height, rule + 1e-6);
      }
    }
  }
}

std::vector<Page> laid_out(const Card& card, Paper paper = Paper::a4) {
  auto pages = lay_out(card, paper);
  EXPECT_TRUE(pages) << (pages ? "" : pages.error().path + ": " + pages.error().what);
  return pages ? *pages : std::vector<Page>{};
}

TEST(Card, TheSampleIsTidyOnBothPapers) {
  for (Paper paper : {Paper::a4, Paper::letter}) {
    const auto pages = laid_out(sample_card(), paper);
    ASSERT_GE(pages.size(), 2U);
    EXPECT_EQ(pages[0].width, paper == Paper::a4 ? 210 : 215.9);
    EXPECT_EQ(pages[0].height, paper == Paper::a4 ? 297 : 279.4);
    expect_all_tidy(pages);
    expect_body_ends_above_footer(pages);
  }
}

TEST(Card, EachPageHasItsNumberTheRecordAndACode) {
  const Card card = sample_card();
  const auto pages = laid_out(card);
  for (std::size_t i = 0; i < pages.size(); ++i) {
    const std::string text = all_text({pages[i]});
    EXPECT_NE(text.find("page " + std::to_string(i + 1) + " of " + std::to_string(pages.size())),
              std::string::npos);
    EXPECT_NE(text.find("record at entry 412, head 9f3a c01d 77b2 e456 …"), std::string::npos);
    EXPECT_NE(text.find("Q-PEB"), std::string::npos);
    const auto* code = std::get_if<QrCode>(&pages[i].items.back());
    ASSERT_NE(code, nullptr);
    EXPECT_EQ(code->text, std::string{"WM1 412 "} + test::k_head);
  }
}

TEST(Card, ACardWithoutARecordSaysSo) {
  Card card = sample_card();
  card.head.clear();
  for (const Page& page : laid_out(card)) {
    EXPECT_NE(all_text({page}).find("not tied to the record"), std::string::npos);
    for (const Item& item : page.items) EXPECT_FALSE(std::holds_alternative<QrCode>(item));
  }
}

TEST(Card, StepsHaveBoxesReadingsLimitsSourcesAndPlacesToSign) {
  const std::string text = all_text(laid_out(sample_card()));
  for (const char* part :
       {"does not", "undecided", "limit: 3.0 kΩ to 8.0 kΩ", "source not given", "no limit given",
        "225 in·lb ± 10 in·lb", "second person", "initials", "Cautions", "signed in the record",
        "Work done as described", "clocking 45° from the top"})
    EXPECT_NE(text.find(part), std::string::npos) << part;
  EXPECT_EQ(count_of(text, "second person "), 4U + 1U);  // four steps and one signature
}

TEST(Card, OneTickBoxAStepAndOneForTheSecondPerson) {
  std::size_t boxes = 0;
  std::size_t ticks = 0;
  for (const Page& page : laid_out(sample_card()))
    for (const Item& item : page.items) {
      if (const auto* r = std::get_if<Rect>(&item)) boxes += r->width == 4.6 && r->height == 4.6;
      if (const auto* p = std::get_if<Path>(&item)) ticks += p->points.size() == 3;
    }
  EXPECT_EQ(boxes, 12U + 4U);
  EXPECT_EQ(ticks, 1U) << "only the step that is done";
}

TEST(Card, AlwaysEndsByDeferring) {
  Card card = sample_card();
  const auto last_words = [](const Card& c) { return test::words_of(all_text(laid_out(c))); };
  EXPECT_NE(last_words(card).find("licensed practice decide"), std::string::npos);
  card.defer_line = "Follow the maker's manual and the local rules.";
  EXPECT_NE(last_words(card).find(card.defer_line), std::string::npos);
  Card bare;
  bare.title = "Bare";
  EXPECT_NE(last_words(bare).find("licensed practice decide"), std::string::npos);
}

TEST(Card, AnEmptyCardStillHasATitleBlock) {
  Card bare;
  bare.title = "Bare";
  const auto pages = laid_out(bare);
  ASSERT_EQ(pages.size(), 1U);
  expect_all_tidy(pages);
}

TEST(Card, HugeTablesRepeatTheirHeadAndLoseNoRow) {
  Card card;
  card.title = "Cut list";
  Table table{{"number", "what", "length"}, {}, {1, 3, 1}};
  for (int i = 0; i < 400; ++i)
    table.rows.push_back({"row" + std::to_string(i) + ";",
                          i % 7 == 0 ? "a longer description that needs more than one line in its "
                                       "cell because it goes on and on"
                                     : "short",
                          "38 in"});
  card.sections = {{"Pieces", {}, {}, table}};
  for (Paper paper : {Paper::a4, Paper::letter}) {
    const auto pages = laid_out(card, paper);
    EXPECT_GT(pages.size(), 8U);
    for (const Page& page : pages) {
      if (&page == &pages.back() && all_text({page}).find("row") == std::string::npos) continue;
      EXPECT_EQ(count_of(all_text({page}), "number what length"), 1U);
    }
    const std::string text = all_text(pages);
    for (int i = 0; i < 400; ++i)
      EXPECT_EQ(count_of(text, "row" + std::to_string(i) + ";"), 1U) << i;
    expect_all_tidy(pages);
    expect_body_ends_above_footer(pages);
  }
}

/// Words w0 w1 ... to be counted again.
std::string many_words(int count) {
  std::string out;
  for (int i = 0; i < count; ++i) out += "w" + std::to_string(i) + "; ";
  return out;
}
void expect_many_words(const std::string& text, int count, std::size_t times) {
  for (int i = 0; i < count; ++i)
    ASSERT_EQ(count_of(text, "w" + std::to_string(i) + ";"), times) << i;
}

TEST(Card, TextLongerThanAPageFlowsOnInEveryField) {
  constexpr int n = 2500;  // a body text of this many words fills more than a page
  const std::string text = many_words(n);
  std::vector<Card> cards(9, sample_card());
  cards[0].subtitle = text;
  cards[1].facts[0].second = text;
  cards[2].cautions[1] = text;
  cards[3].sections[0].paragraphs = {text};
  cards[4].sections[0].steps[0].text = text;
  cards[5].sections[0].steps[0].readings[0].source = text;
  cards[6].sections[2].table->rows[0][1] = text;
  cards[7].signatures[1].name = text;
  cards[8].defer_line = text;
  for (std::size_t i = 0; i < cards.size(); ++i) {
    SCOPED_TRACE(i);
    const auto pages = laid_out(cards[i]);
    EXPECT_GT(pages.size(), 2U);
    expect_many_words(all_text(pages), n, 1);
    expect_body_ends_above_footer(pages);
    if (i != 6) expect_all_tidy(pages);
  }
}

TEST(Card, LongTextInValuesAndSmallFieldsIsNotCutEither) {
  Card card = sample_card();
  const std::string text = many_words(60);
  ReadingField& field = card.sections[0].steps[0].readings[0];
  field.value = text;
  field.verdict = text;
  field.unit = text;
  field.label = text;
  field.limit = text;
  card.sections[0].steps[0].state = text;
  card.sections[1].steps[1].torque = text;
  card.sections[1].steps[1].state = text;
  card.registration = text;
  card.signatures[0].role = text;
  const auto pages = laid_out(card);
  // The registration is also in the running lines, shortened there.
  const std::string all = all_text(pages);
  EXPECT_GE(count_of(all, "w59;"), 10U);
  expect_all_tidy(pages);
  expect_body_ends_above_footer(pages);
}

TEST(Card, HostileTextComesOutAsText) {
  const std::string hostile = "<script>alert(1)</script> \x1B[2J \xFF & ]]> \u202Eevil";
  Card card = sample_card();
  card.title = hostile;
  card.registration = hostile;
  card.cautions = {hostile};
  card.sections[0].steps[0].text = hostile;
  card.sections[0].steps[0].readings[0].value = hostile;
  card.sections[0].steps[0].readings[0].unit = hostile;
  card.sections[2].table->rows[0][0] = hostile;
  const auto pages = laid_out(card);
  expect_all_tidy(pages);
  for (const Page& page : pages) {
    const auto drawn = svg(page);
    ASSERT_TRUE(drawn);
    EXPECT_EQ(drawn->find("<script"), std::string::npos);
    if (!test::have("xmllint")) continue;
    const test::TemporaryFile file{".svg", *drawn};
    EXPECT_EQ(test::run("xmllint --noout " + file.path()).status, 0);
  }
  EXPECT_TRUE(card_pdf(card, Paper::a4, "2026-11-25"));
}

TEST(Card, EveryWordCanBeSelectedInThePdf) {
  if (!test::have("pdftotext")) GTEST_SKIP() << "pdftotext (package poppler-utils) not installed";
  const Card card = sample_card();
  const auto bytes = card_pdf(card, Paper::a4, "2026-11-25");
  ASSERT_TRUE(bytes);
  const test::TemporaryFile file{".pdf", *bytes};
  const std::string text =
      test::words_of(test::run("pdftotext -layout " + file.path() + " -").output) + " ";
  for (const Page& page : laid_out(card))
    for (const Item& item : page.items)
      if (const auto* t = std::get_if<Text>(&item)) {
        EXPECT_NE(text.find(t->text), std::string::npos) << t->text;
      }
}

TEST(Card, TheCodeOfAPrintedPageIsRead) {
  if (!test::have("zbarimg")) GTEST_SKIP() << "zbarimg (package zbar-tools) is not installed";
  const auto pages = laid_out(sample_card());
  const auto picture = png(pages[1], 150);
  ASSERT_TRUE(picture);
  const test::TemporaryFile file{".png", *picture};
  const auto ran = test::run("zbarimg --raw -q " + file.path());
  EXPECT_NE(ran.output.find(record_mark(sample_card())), std::string::npos) << ran.output;
}

TEST(Card, PrintedTwiceItIsTheSamePaper) {
  EXPECT_EQ(laid_out(sample_card()), laid_out(sample_card()));
  EXPECT_EQ(*card_pdf(sample_card(), Paper::letter, "2026-11-25"),
            *card_pdf(sample_card(), Paper::letter, "2026-11-25"));
}

TEST(Card, SeveralThreadsMayPrintAtOnce) {
  const std::string alone = *card_pdf(sample_card(), Paper::a4, "2026-11-25");
  std::vector<std::string> got(4);
  std::vector<std::thread> threads;
  for (std::string& bytes : got)
    threads.emplace_back([&bytes] { bytes = *card_pdf(sample_card(), Paper::a4, "2026-11-25"); });
  for (std::thread& thread : threads) thread.join();
  for (const std::string& bytes : got) EXPECT_EQ(bytes, alone);
}

TEST(Card, AStepLongerThanAPageStartsWhereItIs) {
  Card card;
  card.title = "Card";
  Step step;
  step.text = many_words(2500);
  card.sections = {{"Steps", {}, {{"short", {}, "", "", false, ""}, step}, {}}};
  const std::string first = all_text({laid_out(card).front()});
  EXPECT_NE(first.find("w0;"), std::string::npos);
}

struct Wrong {
  const char* path;
  Kind kind;
  void (*spoil)(Card&);
};

TEST(Card, RefusesWhatCannotBePrintedAndNamesTheField) {
  const Wrong cases[] = {
      {"title", Kind::missing, [](Card& c) { c.title = " "; }},
      {"head", Kind::bad_text, [](Card& c) { c.head = "not a hash"; }},
      {"head", Kind::bad_text, [](Card& c) { c.head = "abc"; }},
      {"head", Kind::bad_text, [](Card& c) { c.head = std::string(129, 'a'); }},
      {"sequence", Kind::out_of_bounds, [](Card& c) { c.sequence = -1; }},
      {"sections/0/steps/0/text", Kind::out_of_bounds,
       [](Card& c) { c.sections[0].steps[0].text.assign(200'001, 'x'); }},
      {"sections/0/steps/0/readings/0", Kind::out_of_bounds,
       [](Card& c) { c.sections[0].steps[0].readings[0].source.assign(200'001, 'x'); }},
      {"sections/2/table/shares", Kind::out_of_bounds,
       [](Card& c) { c.sections[2].table->shares = {1}; }},
      {"sections/2/table/shares", Kind::out_of_bounds,
       [](Card& c) { c.sections[2].table->shares[1] = -1; }},
      {"sections/2/table/rows/1", Kind::out_of_bounds,
       [](Card& c) { c.sections[2].table->rows[1].resize(6); }},
      {"sections/2/table", Kind::out_of_bounds,
       [](Card& c) { c.sections[2].table = Table{std::vector<std::string>(40, "x"), {}, {}}; }}};
  for (const Wrong& wrong : cases) {
    Card card = sample_card();
    wrong.spoil(card);
    const auto got = lay_out(card, Paper::a4);
    ASSERT_FALSE(got) << wrong.path;
    EXPECT_EQ(got.error().path, wrong.path);
    EXPECT_EQ(got.error().kind, wrong.kind) << wrong.path;
    EXPECT_FALSE(got.error().what.empty());
    EXPECT_FALSE(got.error().expected.empty());
  }
}

TEST(Card, ATableMayHaveNoHeadNoRowsOrShortRows) {
  Card card = sample_card();
  card.sections[2].table = Table{{}, {{"a", "b"}, {"c"}, {}}, {}};
  expect_all_tidy(laid_out(card));
  card.sections[2].table = Table{};
  expect_all_tidy(laid_out(card));
  card.sections[2].table = Table{{"only", "a head"}, {}, {}};
  expect_all_tidy(laid_out(card));
}

TEST(Card, AHeadingIsNeverTheLastThingOnAPage) {
  // A filler of growing height pushes the heading over every place on the page.
  for (int lines = 30; lines < 60; ++lines) {
    Card card;
    card.title = "Card";
    Section filler{"Filler", {}, {}, {}};
    for (int i = 0; i < lines; ++i) filler.paragraphs.emplace_back("line");
    Section next{"HEADING", {}, {}, {}};
    next.steps = {{"STEP", {}, "", "", false, ""}};
    card.sections = {filler, next};
    for (const Page& page : laid_out(card)) {
      const std::string text = all_text({page});
      EXPECT_EQ(text.find("HEADING") == std::string::npos, text.find("STEP") == std::string::npos);
    }
  }
}

TEST(Card, FarTooMuchIsRefusedBeforeItIsLaidOut) {
  Card card;
  card.title = "Card";
  card.sections = {{"All", {}, {}, Table{{}, {}, {}}}};
  card.sections[0].table->rows.assign(1'000'000, {"x"});
  EXPECT_EQ(lay_out(card, Paper::a4).error().kind, Kind::out_of_bounds);
  card.sections[0].table.reset();
  card.sections[0].paragraphs.assign(30, std::string(150'000, 'x'));
  EXPECT_EQ(lay_out(card, Paper::a4).error().kind, Kind::out_of_bounds);
}

TEST(Card, TooManyPagesAreRefused) {
  Card card;
  card.title = "Card";
  Section section{"All", {}, {}, {}};
  section.paragraphs.assign(45'000, "one line");
  card.sections = {section};
  const auto got = lay_out(card, Paper::a4);
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error().kind, Kind::out_of_bounds);
}

}  // namespace
}  // namespace wm::drawing
