// key=value words in, readable text out.
#include "calculation/text_face.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "unit/calculation/sample.hpp"

namespace {

using namespace wm;
using sample::Everything;
using Words = std::vector<std::string_view>;

Checked<Everything> read(const Words& words) {
  Everything out;
  if (auto p = calculation::read_key_values(words, describe::type_of<Everything>(), &out);
      !p.empty()) {
    return Fail(std::move(p));
  }
  return out;
}

TEST(KeyValues, ReachIntoListsAndAlternatives) {
  const auto got =
      read({"title=left harness", "bench=yes", "cylinders=6", "ratio=2.5", "leads/0/name=3 top",
            "leads/0/length=38 in", "leads/0/reading=85 ohm", "leads/1/name=3 bottom",
            "leads/1/length=0.6 m", "leads/1/reading=85 ohm +- 1 ohm", "either/is=meter",
            "either/shows=28 psi", R"(words=["a=b","c"])", "seen_on=2026-02-28"});
  ASSERT_TRUE(got) << calculation::problems_text(got.error());
  EXPECT_TRUE(got->bench);
  EXPECT_EQ(got->cylinders, 6);
  EXPECT_EQ(got->leads.size(), 2U);
  EXPECT_EQ(got->words, (std::vector<std::string>{"a=b", "c"}));
  EXPECT_EQ(got->either.index(), 1U);
}

TEST(KeyValues, TakeWholeJsonInBraces) {
  const auto got =
      read({R"({"title":"x","leads":[{"name":"a","length":"38 in","reading":"8 ohm"}]})",
            "cylinders=6", R"(hose={"size":8})"});
  ASSERT_TRUE(got) << calculation::problems_text(got.error());
  EXPECT_EQ(got->hose.size, 8);
  EXPECT_EQ(got->leads.at(0).length.text, "38 in");
}

TEST(KeyValues, TellWhatCannotBeFollowed) {
  EXPECT_EQ(read({"title"}).error()[0].example, "length=38 in");
  EXPECT_EQ(read({"leads/1/name=x"}).error()[0].what, "entry 1 comes before entry 0");
  EXPECT_EQ(read({"title=a", "title=b"}).error()[0].kind, Kind::duplicate);
  EXPECT_EQ(read({"title=a", "title/b=c"}).error()[0].kind, Kind::duplicate);
  EXPECT_EQ(read({"leads//name=x"}).error()[0].kind, Kind::bad_text);
  EXPECT_EQ(read({"hose={"}).error()[0].path, "hose");
  EXPECT_EQ(read({"leads/99999999999999999999999/name=x"}).error()[0].kind, Kind::bad_text);
  std::string deep = "a";
  for (int i = 0; i < 100; ++i) deep += "/a";
  EXPECT_EQ(read({deep + "=1"}).error()[0].kind, Kind::bad_text);
  EXPECT_EQ(read({"cylinders=many"}).error()[0].expected, "a whole number");
  EXPECT_EQ(read({"bench=perhaps"}).error()[0].expected, "yes or no: true or false");
}

// `joints=a,b` was refused with "a list is expected" and no word on how to write one.
TEST(KeyValues, SplitAListAtCommasWhereAnEntryHoldsNone) {
  const auto got = read({"title=x", "leads/0/name=a", "leads/0/length=38 in",
                         "leads/0/reading=8 ohm", "joints=inlet, outlet", "grades=renewed"});
  ASSERT_TRUE(got) << calculation::problems_text(got.error());
  EXPECT_EQ(got->joints, (std::vector<std::string>{"inlet", "outlet"}));
  EXPECT_EQ(got->grades, (std::vector<sample::Grade>{sample::Grade::renewed}));

  const auto wrong = read({"joints=a,,b", "grades=renewed,tight"}).error();
  const auto at = [&](std::string_view path) {
    return std::find_if(wrong.begin(), wrong.end(),
                        [&](const Problem& p) { return p.path == path; });
  };
  ASSERT_NE(at("joints/1"), wrong.end()) << calculation::problems_text(wrong);
  ASSERT_NE(at("grades/1"), wrong.end()) << calculation::problems_text(wrong);
  EXPECT_EQ(at("grades/1")->kind, Kind::unknown_choice);
}

TEST(KeyValues, SayHowToWriteAListThatCannotBeSplit) {
  const auto free_text = read({"words=hose, upper"}).error();
  EXPECT_EQ(free_text[0].path, "words");
  EXPECT_EQ(free_text[0].expected, "one word an entry: words/0=... words/1=...");
  const auto records = read({"leads=a"}).error();
  EXPECT_EQ(records[0].expected, "one word an entry: leads/0/name=... leads/1/name=...");
  const auto one = read(
      {"title=x", "leads/0/name=a", "leads/0/length=38 in", "leads/0/reading=8 ohm", "words=hose"});
  ASSERT_TRUE(one) << calculation::problems_text(one.error());
  EXPECT_EQ(one->words, std::vector<std::string>{"hose"});
}

TEST(WithFields, ReplacesSomeFieldsOfAPayload) {
  Everything value;
  value.title = "left harness";
  // A computed length has no text of its own: the payload holds its figures.
  value.leads = {{"3 top", {{0.1 + 0.2}, 0.001, ""}, {{85}, {}, 1, "85 ohm"}, {}, {}, {}}};
  Everything fresh;
  const auto got = calculation::with_fields(
      calculation::to_payload(value), describe::type_of<Everything>(), &fresh,
      Words{"leads/0/reading=86 ohm", "cylinders=6", "words=[\"a\"]"});
  ASSERT_TRUE(got) << calculation::problems_text(got.error());
  EXPECT_EQ(fresh.leads.at(0).reading.text, "86 ohm");
  EXPECT_EQ(fresh.leads.at(0).length.value.si, 0.1 + 0.2);
  EXPECT_EQ(fresh.cylinders, 6);
  EXPECT_EQ(*got, calculation::to_payload(fresh));
  Everything other;
  EXPECT_FALSE(calculation::with_fields(*got, describe::type_of<Everything>(), &other,
                                        Words{"cylinders=99"}));
}

TEST(WriteText, AlignsLabelsAndIndentsParts) {
  Everything value;
  value.title = "left harness";
  value.words = {"one", "two"};
  value.leads = {{"3 top", {{0.9652}, 0.0254, "38 in"}, {{85.2}, 0.7, 0.1, ""}, {}, {}, {}}};
  EXPECT_EQ(calculation::write_text(describe::type_of<Everything>(), &value),
            R"(Title         left harness
On the bench  no
Cylinders     4
Ratio         1.500
Plain length  19.69 in
Grade         renewed
Hose
  Length     39.37 in
  Dash size  6
Leads
  - Which lead       3 top
    From end to end  38 in
    Resistance       85.20 ohm +- 0.70 ohm
    Grade            looked at
Words         one
              two
Either
  Length     39.37 in
  Dash size  6
)");
}

TEST(CallWords, AnswersWithSourcesAndCautions) {
  const auto calculation = sample::per_length_calculation();
  const auto got = calculation::call_words(
      calculation, Words{"run=1 m", "each=2 kohm", "units/per_length=ohm/m"}, {});
  ASSERT_TRUE(got) << calculation::problems_text(got.error());
  EXPECT_EQ(got->text.substr(0, got->text.find("\n\n")),
            "Resistance of each length  2000 ohm/m\n"
            "Resistance                 2 kohm\n"
            "Grade                      renewed");
  const auto asked =
      calculation::call_words(calculation, Words{"run=1 m", "each=2 kohm", "units/each=ohm"}, {});
  ASSERT_TRUE(asked) << calculation::problems_text(asked.error());
  EXPECT_NE(asked->text.find("2000 ohm  (typed: 2 kohm)\n"), std::string::npos) << asked->text;
  EXPECT_NE(got->text.find("  source   derived, Ohm's law (derived)\n"), std::string::npos)
      << got->text;
  EXPECT_NE(got->text.find("\n  caution  Conductor only: "), std::string::npos);
  const auto json =
      calculation::call_words(calculation, Words{"run=1 m", "each=2 kohm"}, {}, {}, true);
  ASSERT_TRUE(json);
  EXPECT_TRUE(json->text.starts_with(R"({"calculation":"per-length")"));
}

// A verdict of `does-not-conform` left the exit status at 0.
TEST(IsFinding, AVerdictThatIsNotShownToConform) {
  const auto& type = describe::type_of<sample::Judged>();
  const auto found = [&](sample::Verdict verdict) {
    const sample::Judged judged{verdict};
    return calculation::is_finding(type, &judged);
  };
  EXPECT_TRUE(found(sample::Verdict::does_not_conform));
  EXPECT_TRUE(found(sample::Verdict::undecided));
  EXPECT_FALSE(found(sample::Verdict::conforms));
  EXPECT_FALSE(found(sample::Verdict::not_tested));
  const sample::Answer no_verdict{};
  EXPECT_FALSE(calculation::is_finding(describe::type_of<sample::Answer>(), &no_verdict));
}

TEST(ProblemsText, SaysWhatToDo) {
  EXPECT_EQ(calculation::problems_text(
                {{Kind::out_of_bounds, "leads/2/length", "`1 in`: at least 2 in is needed",
                  "2 in to 20 ft", "38 in", "measure again", "entered by you"}}),
            "leads/2/length: `1 in`: at least 2 in is needed\n"
            "  expected 2 in to 20 ft\n"
            "  example  38 in\n"
            "  do       measure again\n"
            "  source   entered by you\n");
}

TEST(DescribeText, DescribesActsAndViews) {
  const describe::Caution cautions[] = {describe::caution::high_tension};
  const calculation::Entry act{calculation::Entry::Is::act,
                               "mark",
                               "Mark it",
                               &describe::type_of<sample::Everything>(),
                               &describe::type_of<sample::Answer>(),
                               cautions,
                               true};
  const auto text = calculation::describe_text(act);
  for (const auto* part : {"mark: Mark it\n", "Position: text; names a position", "  caution  ",
                           "  plans    changes plans"}) {
    EXPECT_NE(text.find(part), std::string::npos) << part << "\n" << text;
  }
}

TEST(DescribeText, ListsEveryField) {
  const auto text = calculation::describe_text(sample::per_length_calculation());
  EXPECT_NE(text.find("  run                      Length of the run: a length with its unit; more "
                      "than 0 in; e.g. 38 in; needed\n"),
            std::string::npos)
      << text;
}

}  // namespace
