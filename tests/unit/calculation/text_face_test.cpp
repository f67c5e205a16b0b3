// key=value words in, readable text out.
#include "calculation/text_face.hpp"

#include <gtest/gtest.h>

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
  EXPECT_EQ(got->substr(0, got->find("\n\n")),
            "Resistance of each length  2000 ohm/m\n"
            "Resistance                 2 kohm\n"
            "Grade                      renewed");
  const auto asked =
      calculation::call_words(calculation, Words{"run=1 m", "each=2 kohm", "units/each=ohm"}, {});
  ASSERT_TRUE(asked) << calculation::problems_text(asked.error());
  EXPECT_NE(asked->find("2000 ohm  (typed: 2 kohm)\n"), std::string::npos) << *asked;
  EXPECT_NE(got->find("  source   derived, Ohm's law (derived)\n"), std::string::npos) << *got;
  EXPECT_NE(got->find("\n  caution  Conductor only: "), std::string::npos);
  const auto json =
      calculation::call_words(calculation, Words{"run=1 m", "each=2 kohm"}, {}, {}, true);
  ASSERT_TRUE(json);
  EXPECT_TRUE(json->starts_with(R"({"calculation":"per-length")"));
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

TEST(DescribeText, ListsEveryField) {
  const auto text = calculation::describe_text(sample::per_length_calculation());
  EXPECT_NE(text.find("  run                      Length of the run: a length with its unit; more "
                      "than 0 in; e.g. 38 in; needed\n"),
            std::string::npos)
      << text;
}

}  // namespace
