// The reading rules, one by one. Messages are checked word for word where a person reads them.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include "calculation/json_face.hpp"
#include "unit/calculation/sample.hpp"

namespace {

using namespace wm;
using calculation::from_json;
using sample::Everything;
using sample::Lead;

const std::string k_lead = R"({"name":"3 top","length":"38 in","reading":"85.2 ohm +- 0.7 ohm"})";

std::string lead_with(std::string_view key, std::string_view value) {
  std::string out = "{";
  const std::pair<std::string_view, std::string_view> usual[] = {
      {"name", R"("3 top")"}, {"length", R"("38 in")"}, {"reading", R"("85.2 ohm")"}};
  for (const auto& [k, v] : usual) {
    if (k != key) out += fmt::format(R"("{}":{},)", k, v);
  }
  return out + fmt::format(R"("{}":{}}})", key, value);
}

Problem only_problem(std::string_view json) {
  const auto got = from_json<Lead>(json);
  if (got) {
    ADD_FAILURE() << "accepted: " << json;
    return {};
  }
  EXPECT_EQ(got.error().size(), 1U) << calculation::write_problems(got.error());
  return got.error().front();
}

TEST(ReadJson, ReadsARecordAndKeepsWhatWasTyped) {
  const auto got = from_json<Lead>(k_lead);
  ASSERT_TRUE(got) << calculation::write_problems(got.error());
  EXPECT_EQ(got->name, "3 top");
  EXPECT_DOUBLE_EQ(got->length.value.si, 0.9652);
  EXPECT_EQ(got->length.text, "38 in");
  EXPECT_DOUBLE_EQ(got->reading.expanded_si.value_or(0), 0.7);
  EXPECT_FALSE(got->slack);
  EXPECT_EQ(got->grade, sample::Grade::looked_at);
}

TEST(ReadJson, TellsEveryProblemAtOnceWithItsPath) {
  const auto got = from_json<Everything>(
      R"({"title":"x","cylinders":0,"leads":[)" + k_lead +
      R"(,{"name":"4 top","length":"1 in"},{"name":"3 top","length":"38 psi","reading":85}]})");
  ASSERT_FALSE(got);
  std::vector<std::string> paths;
  for (const auto& p : got.error()) paths.push_back(p.path);
  EXPECT_EQ(paths, (std::vector<std::string>{"cylinders", "leads/1/length", "leads/1/reading",
                                             "leads/2/length", "leads/2/reading", "leads/2/name"}));
  EXPECT_EQ(got.error()[0].what, "`0`: at least 1 is needed");
  EXPECT_EQ(got.error()[1].what, "`1 in`: at least 2 in is needed");
  EXPECT_EQ(got.error()[2].kind, Kind::missing);
  EXPECT_EQ(got.error()[2].example, "85.2 ohm +- 0.7 ohm");
  EXPECT_EQ(got.error()[3].kind, Kind::wrong_dimension);
  EXPECT_EQ(got.error()[4].what, "`85`: a unit is needed, e.g. \"85.2 ohm +- 0.7 ohm\"");
  EXPECT_EQ(got.error()[5].kind, Kind::duplicate);
}

TEST(ReadJson, WritesNothingWhenSomethingIsWrong) {
  Lead lead;
  lead.name = "before";
  EXPECT_FALSE(calculation::read_json(R"({"name":"after","length":"38 in","reading":"1"})",
                                      describe::type_of<Lead>(), &lead)
                   .empty());
  EXPECT_EQ(lead.name, "before");
}

TEST(ReadJson, SuggestsTheNearestKey) {
  const auto p =
      only_problem(R"({"name":"a","lenght":"38 in","length":"38 in","reading":"8 ohm"})");
  EXPECT_EQ(p.kind, Kind::unknown_field);
  EXPECT_EQ(p.path, "lenght");
  EXPECT_EQ(p.do_next, "did you mean `length`?");
}

TEST(ReadJson, RefusesADuplicateKey) {
  const auto p = only_problem(R"({"name":"a","name":"b","length":"38 in","reading":"8 ohm"})");
  EXPECT_EQ(p.kind, Kind::duplicate);
  EXPECT_EQ(p.path, "name");
}

TEST(ReadJson, SaysWhatWasExpectedInsteadOfTheWrongType) {
  EXPECT_EQ(only_problem(lead_with("name", "7")).expected, "text");
  EXPECT_EQ(only_problem(lead_with("length", "[]")).what, "a list was given");
  EXPECT_EQ(only_problem(lead_with("length", "[]")).expected, "a length with its unit");
  EXPECT_EQ(only_problem(lead_with("grade", "true")).expected,
            "one of: looked-at, adjusted, renewed");
  EXPECT_EQ(only_problem("[]").expected, "an object with the fields of lead");
  EXPECT_EQ(only_problem("[]").path, "");
}

TEST(ReadJson, RefusesABareNumberWhereAUnitIsNeeded) {
  EXPECT_EQ(only_problem(lead_with("length", "38")).what, "`38`: a unit is needed, e.g. \"38 in\"");
  EXPECT_EQ(only_problem(lead_with("length", "\"38\"")).kind, Kind::bad_text);
  EXPECT_EQ(only_problem(lead_with("length", "38.5")).what,
            "`38.5`: a unit is needed, e.g. \"38 in\"");
}

TEST(ReadJson, KeepsBoundsInTheUnitThatWasTyped) {
  EXPECT_EQ(only_problem(lead_with("length", "\"1 cm\"")).what,
            "`1 cm`: at least 5.08 cm is needed");
  EXPECT_EQ(only_problem(lead_with("length", "\"21 ft\"")).what,
            "`21 ft`: at most 20 ft is needed");
  EXPECT_TRUE(from_json<Lead>(lead_with("length", "\"20 ft\"")));
  EXPECT_TRUE(from_json<Lead>(lead_with("length", "\"240 in\"")));
  EXPECT_TRUE(from_json<Lead>(lead_with("length", "\"5.08 cm\"")));
  EXPECT_EQ(only_problem(lead_with("slack", "\"0 in\"")).what, "`0 in`: more than 0 in is needed");
}

TEST(ReadJson, ListsTheWordsOfAChoiceAndTheNearest) {
  const auto p = only_problem(lead_with("grade", "\"renewd\""));
  EXPECT_EQ(p.kind, Kind::unknown_choice);
  EXPECT_EQ(p.expected, "one of: looked-at, adjusted, renewed");
  EXPECT_EQ(p.example, "renewed");
}

TEST(ReadJson, TakesAnEmptyTextForAnAbsentField) {
  const auto got = from_json<Lead>(lead_with("slack", "\"\""));
  ASSERT_TRUE(got);
  EXPECT_FALSE(got->slack);
  EXPECT_TRUE(from_json<Lead>(lead_with("note", "null")));
  EXPECT_TRUE(from_json<Lead>(lead_with("grade", "\" \"")));
  EXPECT_EQ(only_problem(lead_with("length", "\"\"")).kind, Kind::missing);
  EXPECT_EQ(only_problem(lead_with("name", "\"  \"")).kind, Kind::missing);
  EXPECT_EQ(only_problem(lead_with("name", "null")).path, "name");
}

TEST(ReadJson, LimitsTheLengthOfText) {
  EXPECT_EQ(only_problem(lead_with("name", "\"123456789012345678901\"")).expected,
            "at most 20 characters");
  EXPECT_TRUE(from_json<Lead>(lead_with("name",
                                        "\"\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9"
                                        "\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\"")));
  EXPECT_EQ(only_problem(lead_with("note", '"' + std::string(4001, 'x') + '"')).expected,
            "at most 4000 characters");
}

TEST(ReadJson, RefusesControlCharactersAndInvalidUtf8) {
  EXPECT_EQ(only_problem(lead_with("name", R"("a\u0000b")")).what,
            "the text holds a control character");
  EXPECT_TRUE(from_json<Lead>(lead_with("note", R"("two\nlines\tand a tab")")));
  EXPECT_EQ(only_problem(lead_with("name", "\"\xff\"")).kind, Kind::bad_text);
  EXPECT_EQ(only_problem(lead_with("name", R"("\ud800")")).kind, Kind::bad_text);
}

TEST(ReadJson, ReadsCountsAndNumbersStrictly) {
  const auto with = [](std::string_view part) {
    return from_json<Everything>(fmt::format(R"({{"title":"x","leads":[{}],{}}})", k_lead, part));
  };
  EXPECT_TRUE(with(R"("cylinders":6)"));
  EXPECT_EQ(with(R"("cylinders":6.5)").error()[0].expected, "a whole number");
  EXPECT_EQ(with(R"("cylinders":"6")").error()[0].expected, "a whole number");
  EXPECT_EQ(with(R"("cylinders":99999999999999999999)").error()[0].kind, Kind::bad_text);
  EXPECT_EQ(with(R"("cylinders":18446744073709551615)").error()[0].what, "the number is too large");
  EXPECT_DOUBLE_EQ(with(R"("ratio":2)")->ratio, 2);
  EXPECT_DOUBLE_EQ(with(R"("ratio":"2.25")")->ratio, 2.25);
  EXPECT_EQ(with(R"("ratio":"2,25")").error()[0].path, "ratio");
  EXPECT_EQ(with(R"("ratio":0)").error()[0].what, "`0`: more than 0 is needed");
  EXPECT_EQ(with(R"("ratio":1e999)").error()[0].kind, Kind::bad_text);
  EXPECT_EQ(with(R"("bench":1)").error()[0].expected, "yes or no: true or false");
}

TEST(ReadJson, ReadsDatesAndRefusesDaysThatDoNotExist) {
  const auto with = [](std::string_view date) {
    return from_json<Everything>(
        fmt::format(R"({{"title":"x","leads":[{}],"seen_on":"{}"}})", k_lead, date));
  };
  EXPECT_EQ(with("2024-02-29")->seen_on,
            quantity::Date(std::chrono::year{2024}, std::chrono::month{2}, std::chrono::day{29}));
  EXPECT_EQ(with("2026-02-30").error()[0].path, "seen_on");
  EXPECT_EQ(with("30.2.2026").error()[0].kind, Kind::bad_text);
  EXPECT_EQ(with("1999-12-31").error()[0].what, "`1999-12-31`: at least 2000-01-01 is needed");
}

TEST(ReadJson, CountsTheEntriesOfAList) {
  const auto none = from_json<Everything>(R"({"title":"x"})");
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error()[0].path, "leads");
  EXPECT_EQ(none.error()[0].kind, Kind::missing);
  const auto empty = from_json<Everything>(R"({"title":"x","leads":[]})");
  EXPECT_EQ(empty.error()[0].what, "`0 entries`: at least 1 is needed");
  const auto hole = from_json<Everything>(R"({"title":"x","leads":[null]})");
  EXPECT_EQ(hole.error()[0].path, "leads/0");
}

TEST(ReadJson, TellsOneOfSeveralByItsWord) {
  const auto with = [](std::string_view either) {
    return from_json<Everything>(
        fmt::format(R"({{"title":"x","leads":[{}],"either":{}}})", k_lead, either));
  };
  const auto meter = with(R"({"is":"meter","shows":"28 psi"})");
  ASSERT_TRUE(meter);
  EXPECT_EQ(std::get<sample::Meter>(meter->either).shows.kind, quantity::KindOf::pressure_gauge);
  EXPECT_EQ(with(R"({"shows":"28 psi"})").error()[0].path, "either/is");
  EXPECT_EQ(with(R"({"is":"metre"})").error()[0].example, "meter");
  EXPECT_EQ(with(R"({"is":"meter"})").error()[0].path, "either/shows");
  EXPECT_EQ(with(R"({"is":7})").error()[0].kind, Kind::unknown_choice);
  EXPECT_EQ(with(R"({"is":"hose","size":99})").error()[0].path, "either/size");
}

TEST(ReadJson, RefusesWhatIsTooDeepTooLargeOrNoJson) {
  EXPECT_NE(only_problem("{\"name\": tru}").what.find("line 1, column 13"), std::string::npos)
      << only_problem("{\"name\": tru}").what;
  EXPECT_EQ(only_problem("").kind, Kind::bad_text);
  EXPECT_EQ(only_problem(std::string(40, '[') + std::string(40, ']')).kind, Kind::out_of_bounds);
  EXPECT_EQ(only_problem(std::string(2'000'000, '[')).kind, Kind::out_of_bounds);
  EXPECT_EQ(only_problem(std::string(calculation::k_largest_text + 1, ' ')).kind,
            Kind::out_of_bounds);
  std::string many = "[";
  for (int i = 0; i < 600'000; ++i) many += "1,";
  EXPECT_EQ(only_problem(many + "1]").kind, Kind::out_of_bounds);
}

TEST(ReadJson, CountsTheRestAfterAHundredProblems) {
  std::string json = R"({"title":"x","words":[)";
  for (int i = 0; i < 150; ++i) json += "1,";
  const auto got = from_json<Everything>(json + "1]}");
  ASSERT_FALSE(got);
  EXPECT_EQ(got.error().size(), 101U);
  EXPECT_EQ(got.error().back().what, "and 52 more problems");
}

}  // namespace
