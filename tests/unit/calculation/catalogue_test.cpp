// The meta-test: every calculation there is has all that a stranger needs to rely on it.
#include "calculation/catalogue.hpp"

#include <fmt/core.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>

#include "calculation/json_face.hpp"
#include "calculation/manual_face.hpp"
#include "calculation/openapi_face.hpp"
#include "unit/calculation/sample.hpp"

namespace {

using namespace wm;

/// Calculations that a reference test names: those tests write docs/validation.md.
std::vector<std::string> checked_outside() {
  std::string all;
  for (const auto& file : std::filesystem::recursive_directory_iterator(
           std::filesystem::path(WM_SOURCE_DIR) / "tests" / "reference")) {
    if (file.path().extension() != ".cpp") continue;
    std::ifstream in(file.path());
    all.append(std::istreambuf_iterator<char>(in), {});
  }
  std::vector<std::string> out;
  for (const auto& c : calculation::catalogue().calculations()) {
    if (all.find('"' + c.name + '"') != std::string::npos) out.push_back(c.name);
  }
  return out;
}

TEST(Catalogue, HasNothingToComplainAbout) {
  const auto checked = checked_outside();
  for (const auto& what : calculation::complaints(calculation::catalogue(), checked)) {
    ADD_FAILURE() << what;
  }
}

TEST(Catalogue, HoldsTheFirstSevenCalculations) {
  for (const auto* name : {"meter-uncertainty", "conformity", "torque-setting", "length-allowance",
                           "mass-balance", "due-date", "lead-check"}) {
    EXPECT_NE(calculation::catalogue().find(name), nullptr) << name;
  }
}

TEST(Catalogue, EveryCalculationHasAPageThatIsListed) {
  const auto index = calculation::manual_index(calculation::catalogue(), calculation::entries());
  for (const auto& c : calculation::catalogue().calculations()) {
    EXPECT_NE(index.find(fmt::format("[{}]({}.md)", c.name, c.name)), std::string::npos);
    EXPECT_FALSE(calculation::describe_json(c).empty());
  }
  EXPECT_GT(calculation::entries().size(), 50U);
  for (const auto& e : calculation::entries()) {
    EXPECT_NE(index.find(fmt::format("[{}]({})", e.name, calculation::manual_file(e))),
              std::string::npos);
    const auto page = calculation::manual_page(e);
    for (const auto* part :
         {"\n## Inputs\n", "\n## Answer\n", "\n## Command line\n", "\n## HTTP\n"})
      EXPECT_NE(page.find(part), std::string::npos) << e.name;
    if (e.kind == calculation::Entry::Is::act) {
      EXPECT_NE(page.find("\n## Cautions\n"), std::string::npos) << e.name;
    }
    if (e.input->fields.empty()) continue;
    for (const auto& what : calculation::complaints(*e.input))
      ADD_FAILURE() << e.name << ": " << what;
  }
}

struct Careless {
  std::string told;
  std::string forgotten;
  std::vector<std::string> filled{"a"};
  quantity::Length length;
};
std::string_view describe(describe::Fields<Careless>& f) {
  f.has<&Careless::told>("Told!", "").shown_when("nobody=home");
  f.has<&Careless::filled>("filled", "Filled");
  f.has<&Careless::length>("length", "Length")
      .needed("1 psi")
      .between(quantity::metres(2), quantity::metres(1));
  return "careless";
}
Checked<sample::Answer> careless(const Careless& /*in*/, const describe::Context& /*context*/) {
  return sample::Answer{};
}

TEST(Complaints, FindWhatIsCareless) {
  describe::Catalogue made;
  made.add(describe::calculation<&careless>("careless", "", {}, {}));
  const auto found = calculation::complaints(made, {});
  const auto has = [&](std::string_view part) {
    return std::any_of(found.begin(), found.end(),
                       [&](const std::string& f) { return f.find(part) != std::string::npos; });
  };
  for (const auto* part :
       {"no purpose", "no sources", "no cautions", "is no plain key", "no label",
        "a list must be empty by default", "names no field", "leave nothing between",
        "the example `1 psi` is not a length", "its example does not run", "no worked example",
        "no reference case", "is not described"}) {
    EXPECT_TRUE(has(part)) << part;
  }
}

TEST(Complaints, FindNothingInACarefulSample) {
  describe::Catalogue made;
  made.add(sample::per_length_calculation());
  EXPECT_EQ(calculation::complaints(made, std::vector<std::string>{"per-length"}),
            std::vector<std::string>{});
}

TEST(OpenApi, DescribesCalculationsActsAndViews) {
  describe::Catalogue made;
  made.add(sample::per_length_calculation());
  const calculation::Entry entries[] = {{calculation::Entry::Is::act, "measure", "Enter a reading",
                                         &describe::type_of<sample::Everything>(), nullptr},
                                        {calculation::Entry::Is::view, "lead", "One lead", nullptr,
                                         &describe::type_of<sample::Lead>()}};
  const auto json =
      calculation::openapi_json(made, entries, describe::type_of<sample::Meter>(), "1.2.3");
  for (const auto* part :
       {R"("openapi": "3.1.0")", R"("/api/calc/per-length": {)", R"("/api/act/measure": {)",
        R"("/api/view/lead": {)", R"("$ref": "#/components/schemas/quantity-text")",
        R"("lead-answer": {)", R"("x-kind": "length")", R"("const": "meter")", R"("maxLength": 20)",
        R"("exclusiveMinimum": 0.0)", R"("format": "date")"}) {
    EXPECT_NE(json.find(part), std::string::npos) << part;
  }
}

// Acts and views were described by their bare input and answer, without what is around them.
TEST(OpenApi, PutsActsAndAnswersIntoTheirEnvelopes) {
  describe::Catalogue none;
  const calculation::Entry act[] = {{calculation::Entry::Is::act, "mark", "Mark it",
                                     &describe::type_of<sample::Lead>(),
                                     &describe::type_of<sample::Lead>()}};
  const auto json = calculation::openapi_json(none, act, describe::type_of<sample::Meter>(), "1");
  for (const auto* part :
       {R"("$ref": "#/components/schemas/meter")", R"("input": {)", R"("was_there_already": {)",
        R"("recorded": {)", R"("cautions": {)", R"("409": {)", R"("name": "X-Witnessmark")"}) {
    EXPECT_NE(json.find(part), std::string::npos) << part;
  }
}

TEST(NoSuchName, TellsTheNearest) {
  const std::string_view names[] = {"measure", "correct"};
  const auto problem = calculation::no_such_name("act", "NAME", "mesure", names);
  EXPECT_EQ(problem.what, "there is no act `mesure`");
  EXPECT_EQ(problem.do_next, "did you mean `measure`?");
  EXPECT_EQ(problem.expected, "one of: measure, correct");
  EXPECT_EQ(calculation::no_such_name("act", "NAME", "", names).what, "which act?");
}

TEST(Manual, PageOfAnActTellsHowToCallIt) {
  const describe::Caution cautions[] = {describe::caution::high_tension};
  const calculation::Entry act{calculation::Entry::Is::act,
                               "mark",
                               "Mark it",
                               &describe::type_of<sample::Everything>(),
                               &describe::type_of<sample::Answer>(),
                               cautions,
                               true};
  const auto page = calculation::manual_page(act, "mark BINDER");
  for (const auto* part :
       {"# mark\n", "An act that changes plans", "## Cautions",
        "| `position` | Position | text, naming a position |", "witnessmark act BINDER mark",
        "leads/0/length='38 in'", "`POST /api/act/mark`", R"("id": "a3f9-1")", R"("seen": )",
        "Shorter on the command line: `witnessmark mark BINDER ...`"}) {
    EXPECT_NE(page.find(part), std::string::npos) << part << "\n" << page;
  }
}

TEST(OpenApi, LeavesNoReferenceOpen) {
  const auto json = calculation::openapi_json(calculation::catalogue(), calculation::entries(),
                                              describe::type_of<sample::Meter>(), "0");
  const std::string mark = "\"#/components/schemas/";
  for (auto at = json.find(mark); at != std::string::npos; at = json.find(mark, at + 1)) {
    const auto start = at + mark.size();
    const auto name = json.substr(start, json.find('"', start) - start);
    EXPECT_NE(json.find('"' + name + "\": {"), std::string::npos) << name;
  }
}

TEST(Manual, ShowsInputsAnswerExampleAndSources) {
  describe::Catalogue made;
  made.add(sample::per_length_calculation());
  const auto page = calculation::manual_page(*made.find("per-length"), made);
  for (const auto* part : {"# per-length\n", "- Conductor only",
                           "| `run` | Length of the run | a length with its unit | "
                           "more than 0 in | `38 in` | yes |",
                           "gives\n\n```text\nResistance of each length  26.91 ohm/ft",
                           "- derived, Ohm's law (derived)"}) {
    EXPECT_NE(page.find(part), std::string::npos) << part << "\n" << page;
  }
}

}  // namespace
