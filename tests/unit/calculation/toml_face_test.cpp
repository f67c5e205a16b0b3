// The aircraft sheet: places of mistakes, nothing half read, and the canonical text.
#include "calculation/toml_face.hpp"

#include <gtest/gtest.h>

#include "calculation/json_face.hpp"
#include "unit/calculation/sample.hpp"

namespace {

using namespace wm;
using sample::Everything;

Checked<Everything> read(std::string_view sheet) {
  Everything out;
  if (auto p = calculation::read_toml(sheet, describe::type_of<Everything>(), &out); !p.empty()) {
    return Fail(std::move(p));
  }
  return out;
}
std::string write(const Everything& value) {
  return calculation::write_toml(describe::type_of<Everything>(), &value);
}

const std::string k_canonical = R"(title = "left harness"
bench = true
cylinders = 4
ratio = 1.5
plain = "0.5 m"
grade = "renewed"
seen_on = 2026-02-28
words = ["one", "two \"quoted\"\nlines"]
position = "left-magneto"
teeth = 60

[hose]
length = "1 m"
size = 6

[[leads]]
name = "3 top"
length = "38 in"
reading = "85.2 ohm +- 0.7 ohm"
grade = "adjusted"

[[leads]]
name = "3 bottom"
length = "3 ft 4 1/2 in"
reading = "85 ohm"
slack = "0.0254 m"
grade = "looked-at"
note = "chafed"

[either]
is = "meter"
shows = "28 psi"
factor = 2.0

[[mixed]]
is = "hose"
length = "1 m"
size = 8

[[mixed]]
is = "meter"
shows = "13.8 V"
factor = 2.5
)";

TEST(Toml, ReadsEveryShape) {
  const auto got = read(k_canonical);
  ASSERT_TRUE(got) << calculation::write_problems(got.error());
  EXPECT_EQ(got->leads.at(1).note, "chafed");
  EXPECT_EQ(got->words.at(1), "two \"quoted\"\nlines");
  EXPECT_EQ(got->mixed.size(), 2U);
  EXPECT_EQ(std::get<sample::Meter>(got->either).shows.text, "28 psi");
}

TEST(Toml, WritesCanonicalTextByteForByte) {
  const auto got = read(k_canonical);
  ASSERT_TRUE(got) << calculation::write_problems(got.error());
  EXPECT_EQ(write(*got), k_canonical);
}

TEST(Toml, ReadsTheSameFromAnyOrderOrStyle) {
  const auto got = read(
      "leads = [ { reading = '85 ohm', length = '38 in', name = 'a' } ] # a comment\n"
      "seen_on = '2026-02-28'\ntitle = 'x'\nhose.size = 8\n");
  ASSERT_TRUE(got) << calculation::write_problems(got.error());
  EXPECT_EQ(got->hose.size, 8);
  EXPECT_TRUE(got->seen_on);
}

TEST(Toml, TellsTheLineAndColumnOfEachMistake) {
  const auto got = read(
      "title = \"x\"\ncylinders = 40\n[[leads]]\nname = \"3 top\"\nlength = \"38 psi\"\n"
      "reading = \"85 ohm\"\nlenght = 1\n[[leads]]\nname = \"3 top\"\nlength = 38\n");
  ASSERT_FALSE(got);
  ASSERT_EQ(got.error().size(), 6U) << calculation::write_problems(got.error());
  EXPECT_EQ(got.error()[0].path, "cylinders");
  EXPECT_EQ(got.error()[0].what, "line 2, column 13: `40`: at most 12 is needed");
  EXPECT_EQ(got.error()[1].path, "leads/0/length");
  EXPECT_TRUE(got.error()[1].what.starts_with("line 5, column 10: ")) << got.error()[1].what;
  EXPECT_EQ(got.error()[2].path, "leads/0/lenght");
  EXPECT_TRUE(got.error()[2].what.starts_with("line 7, column 10: ")) << got.error()[2].what;
  EXPECT_EQ(got.error()[3].path, "leads/1/length");
  EXPECT_EQ(got.error()[4].path, "leads/1/reading");
  EXPECT_TRUE(got.error()[4].what.starts_with("line 8, column 1: ")) << got.error()[4].what;
  EXPECT_EQ(got.error()[5].kind, Kind::duplicate);
  EXPECT_TRUE(got.error()[5].what.starts_with("line 9, column 8: ")) << got.error()[5].what;
}

TEST(Toml, PlacesWhatWasFoundAfterReading) {
  Problems problems{{Kind::conflict, "leads/1/length", "too long", "", "", "", ""},
                    {Kind::missing, "leads/0/slack", "missing", "", "", "", ""},
                    {Kind::conflict, "", "as a whole", "", "", "", ""}};
  calculation::add_places("[[leads]]\nname = 'a'\n[[leads]]\nlength = '9 ft'\n", problems);
  EXPECT_EQ(problems[0].what, "line 4, column 10: too long");
  EXPECT_EQ(problems[1].what, "line 1, column 1: missing");
  EXPECT_EQ(problems[2].what, "as a whole");
}

TEST(Toml, TellsWhereItIsNoToml) {
  const auto got = read("title = \"x\"\ncylinders = = 4\n");
  ASSERT_FALSE(got);
  ASSERT_EQ(got.error().size(), 1U);
  EXPECT_TRUE(got.error()[0].what.starts_with("line 2, column 13: ")) << got.error()[0].what;
  const auto twice = read("title = \"x\"\ntitle = \"y\"\n");
  ASSERT_FALSE(twice);
  EXPECT_TRUE(twice.error()[0].what.starts_with("line 2, ")) << twice.error()[0].what;
  EXPECT_FALSE(read("title = \"\xff\"\n"));
}

TEST(Toml, RefusesKeysAndListsWithoutEnd) {
  std::string dots = "a";
  for (int i = 0; i < 200'000; ++i) dots += ".a";
  ASSERT_FALSE(read(dots + " = 1\n"));
  EXPECT_FALSE(read("[" + dots + "]\n"));
  EXPECT_FALSE(read("a = " + std::string(200'000, '[')));
  EXPECT_FALSE(read("title = { " + dots + " = 1 }\n"));
  // Dots in a text or a comment are no key.
  EXPECT_TRUE(read("# " + std::string(100, '.') + "\n" + "title = \"" + std::string(100, '.') +
                   "\" # '''\nposition = '''" + std::string(90, '.') + "''' \n" +
                   k_canonical.substr(k_canonical.find("[[leads]]"))));
}

TEST(Toml, TurnsAComputedQuantityIntoATypedOne) {
  Everything value = *read(k_canonical);
  value.leads[0].length = {{0.1 + 0.2}, 0, ""};
  value.leads[0].reading = {{1.0 / 3}, 0.01, 0, ""};
  const auto sheet = write(value);
  const auto got = read(sheet);
  ASSERT_TRUE(got) << calculation::write_problems(got.error());
  EXPECT_EQ(got->leads[0].length.value.si, 0.1 + 0.2);
  EXPECT_EQ(got->leads[0].reading.value.si, 1.0 / 3);
  EXPECT_EQ(got->leads[0].reading.expanded_si, 0.01);
  EXPECT_EQ(write(*got), sheet);
}

}  // namespace
