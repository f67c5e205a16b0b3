// Answers, descriptions, problems and calls as JSON.
#include <gtest/gtest.h>

#include "calculation/json_face.hpp"
#include "unit/calculation/sample.hpp"

namespace {

using namespace wm;
using calculation::to_json;

TEST(WriteJson, GivesAQuantityWithItsUnitAndUncertainty) {
  sample::Answer answer;
  answer.each = {{85.2}, 0.7, 0.1, "85.2 ohm +- 0.7 ohm"};
  answer.per_length = {88.2722};
  EXPECT_EQ(to_json(answer),
            R"({"per_length":{"value":26.90536656,"unit":"ohm/ft","text":"26.91 ohm/ft"},)"
            R"("each":{"value":85.2,"unit":"ohm","text":"85.20 ohm +- 0.70 ohm","u":0.35,"U":0.7,)"
            R"("k":2,"as_typed":"85.2 ohm +- 0.7 ohm"},"grade":"looked-at"})");
}

TEST(WriteJson, UsesTheUnitsAskedFor) {
  sample::Answer answer;
  answer.each = {{85.2}, 0.7, 0.1, ""};
  calculation::WriteOptions options;
  options.units = quantity::UnitSet::si;
  options.field_units = {{"each", "kohm"}};
  const auto json = to_json(answer, options);
  EXPECT_NE(json.find(R"("value":0.0852,"unit":"kohm","text":"0.08520 kohm +- 0.00070 kohm")"),
            std::string::npos)
      << json;
  EXPECT_NE(json.find(R"("unit":"ohm/m")"), std::string::npos) << json;
}

TEST(WriteJson, LeavesEmptyOptionalsOut) {
  sample::Lead lead;
  lead.name = "1 \"top\"";
  const auto json = to_json(lead);
  EXPECT_EQ(json.find("slack"), std::string::npos);
  EXPECT_NE(json.find(R"("name":"1 \"top\"")"), std::string::npos);
}

TEST(WriteJson, NamesTheProblemsInFull) {
  EXPECT_EQ(calculation::write_problems({{Kind::out_of_bounds, "leads/2/length", "too short",
                                          "2 in to 20 ft", "38 in", "", ""}}),
            R"({"problems":[{"path":"leads/2/length","kind":"out-of-bounds","what":"too short",)"
            R"("expected":"2 in to 20 ft","example":"38 in"}]})");
}

TEST(DescribeJson, TellsAFormEverythingItNeeds) {
  EXPECT_EQ(
      calculation::describe_type_json(describe::type_of<sample::Hose>()),
      R"({"title":"hose","fields":[{"key":"length","label":"Length","shape":"quantity",)"
      R"("needed":false,"kind":"length","units":)" +
          [] {
            std::string units = "[";
            for (const auto& u : quantity::units_of(quantity::KindOf::length)) {
              units += (units.size() > 1 ? ",\"" : "\"") + std::string(u.symbol) + "\"";
            }
            return units + "]";
          }() +
          R"(,"unit":"in","example":"22 in"},{"key":"size","label":"Dash size","shape":"count",)"
          R"("needed":false,"example":"2","min":"2","max":"32"}]})");
  const auto all = calculation::describe_type_json(describe::type_of<sample::Everything>());
  for (const auto* part :
       {R"("key":"position","label":"Position","shape":"reference")",
        R"("key":"photo","label":"Photo","shape":"attachment","optional":true)",
        R"("min":"2000-01-01","max":"2100-01-01")", R"("shown_when":"grade=renewed")",
        R"("min":"2 in","max":"240 in")", R"("of":{"shape":"text"})",
        R"("alternatives":[{"word":"hose","title":"hose","fields":[)",
        R"("choices":[{"value":"looked-at","label":"looked at"})"}) {
    EXPECT_NE(all.find(part), std::string::npos) << part << "\n" << all;
  }
}

TEST(DescribeJson, MakesAnExampleThatRuns) {
  EXPECT_EQ(calculation::example_json(describe::type_of<sample::Everything>()),
            R"({"title":"left harness","plain":"19 in","leads":[{"name":"3 top","length":"38 in",)"
            R"("reading":"85.2 ohm +- 0.7 ohm","slack":"1 in"}]})");
  const auto calculation = sample::per_length_calculation();
  const auto json = calculation::describe_json(calculation);
  EXPECT_TRUE(json.starts_with(
      R"({"name":"per-length","purpose":"How much resistance a length has","version":1,)"
      R"("kind":"calculation","input":{"title":"ask")"))
      << json;
  EXPECT_TRUE(json.ends_with(R"("example":{"run":"38 in","each":"85.2 ohm +- 0.7 ohm"}})")) << json;
}

TEST(CallJson, AnswersWithSourcesCautionsAndVersion) {
  const auto calculation = sample::per_length_calculation();
  const auto got = calculation::call_json(
      calculation, R"({"run":"1 m","each":"2 kohm","units":{"per_length":"ohm/m"}})", {});
  ASSERT_TRUE(got) << calculation::write_problems(got.error());
  EXPECT_TRUE(got->starts_with(
      R"({"calculation":"per-length","version":1,"answer":{"per_length":{"value":2000.0,)"
      R"("unit":"ohm/m")"))
      << *got;
  EXPECT_NE(got->find(R"("sources":[{"document":"derived","place":"Ohm's law",)"),
            std::string::npos);
  EXPECT_NE(got->find(R"("id":"insulation-not-tested")"), std::string::npos);
}

TEST(CallJson, TellsBadUnitsTogetherWithBadInput) {
  const auto calculation = sample::per_length_calculation();
  const auto got = calculation::call_json(
      calculation, R"({"run":"1 psi","each":"2 kohm","units":{"per_lenght":"ohm/m","each":"m"}})",
      {});
  ASSERT_FALSE(got);
  ASSERT_EQ(got.error().size(), 3U);
  EXPECT_EQ(got.error()[0].path, "units/per_lenght");
  EXPECT_EQ(got.error()[0].do_next, "did you mean `per_length`?");
  EXPECT_EQ(got.error()[1].path, "units/each");
  EXPECT_EQ(got.error()[2].path, "run");
  const auto refused = calculation::call_json(calculation, R"({"run":"6 m","each":"2 kohm"})", {});
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error()[0].kind, Kind::not_applicable);
}

TEST(JsonString, EveryByteBecomesAReadableString) {
  EXPECT_EQ(calculation::json_string("a\"\n\x01"), R"("a\"\n\u0001")");
  EXPECT_EQ(calculation::json_string("\xff"), "\"\xEF\xBF\xBD\"");
}

}  // namespace
