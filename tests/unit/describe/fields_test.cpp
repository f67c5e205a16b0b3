#include "describe/fields.hpp"

#include <gtest/gtest.h>

namespace wm::sample {

using describe::AnyQuantity;
using quantity::Entered;
using quantity::feet;
using quantity::inches;
using quantity::Length;
using quantity::Measured;
using quantity::Resistance;

enum class Grade { looked_at, renewed };
std::string_view describe(describe::Choices<Grade>& c) {
  c.has(Grade::looked_at, "looked-at", "looked at").has(Grade::renewed, "renewed", "renewed");
  return "grade";
}

struct Lead {
  std::string name;
  Entered<Length> length;
  Measured<Resistance> reading;
  std::optional<Length> slack;
  Grade grade{Grade::renewed};
};
std::string_view describe(describe::Fields<Lead>& f) {
  f.has<&Lead::name>("name", "Which lead").needed("3 top").unique();
  f.has<&Lead::length>("length", "From end to end").needed("38 in").between(inches(2), feet(20));
  f.has<&Lead::reading>("reading", "Resistance").needed("85.2 ohm +- 0.7 ohm");
  f.has<&Lead::slack>("slack", "Slack");
  f.has<&Lead::grade>("grade", "Grade");
  return "lead";
}

struct Other {
  AnyQuantity value;
};
std::string_view describe(describe::Fields<Other>& f) {
  f.has<&Other::value>("value", "Value");
  return "other";
}

struct Harness {
  std::vector<Lead> leads;
  std::variant<Lead, Other> either;
  bool bench{};
  std::int64_t cylinders{4};
};
std::string_view describe(describe::Fields<Harness>& f) {
  f.has<&Harness::leads>("leads", "Leads").at_least(1);
  f.has<&Harness::either>("either", "Either");
  f.has<&Harness::bench>("bench", "On the bench");
  f.has<&Harness::cylinders>("cylinders", "Cylinders");
  return "harness";
}

struct Forgetful {
  std::string told;
  std::string forgotten;
  bool flag{};
};
std::string_view describe(describe::Fields<Forgetful>& f) {
  f.has<&Forgetful::told>("told", "Told");
  f.has<&Forgetful::flag>("flag", "Flag");
  return "forgetful";
}

}  // namespace wm::sample

using namespace wm;

TEST(Describe, BuildsTheTreeOfNestedStructs) {
  const auto& type = describe::type_of<sample::Harness>();
  ASSERT_EQ(type.fields.size(), 4U);
  const auto& lead = *type.fields[0].type->of;
  EXPECT_EQ(lead.name, "lead");
  EXPECT_TRUE(lead.fields[0].unique);
  EXPECT_EQ(lead.fields[1].type->kind, quantity::KindOf::length);
  EXPECT_DOUBLE_EQ(*lead.fields[1].lowest, 0.0508);
  EXPECT_EQ(type.fields[1].type->alternatives.at(1).word, "other");
}

TEST(Describe, ReachesMembersThroughTheTree) {
  const auto& type = describe::type_of<sample::Harness>();
  sample::Harness h;
  const auto& list = type.fields[0];
  void* slot = list.type->operations.append(describe::value_of(list, &h));
  const auto& reading = *describe::find_field(*list.type->of, "reading");
  reading.type->operations.set_number(describe::value_of(reading, slot),
                                      {quantity::KindOf::resistance, 85.2, 0.1, 0.7, "85.2 ohm"});
  ASSERT_EQ(h.leads.size(), 1U);
  EXPECT_EQ(h.leads[0].reading.expanded_si, 0.7);
  const auto& grade = *describe::find_field(*list.type->of, "grade");
  EXPECT_EQ(grade.type->operations.get_choice(describe::value_of(grade, slot)), 1);
  const auto& either = type.fields[1];
  either.type->operations.emplace(describe::value_of(either, &h), 1);
  EXPECT_EQ(h.either.index(), 1U);
  const auto& slack = *describe::find_field(*list.type->of, "slack");
  EXPECT_EQ(slack.type->operations.get(describe::value_of(slack, slot)), nullptr);
}

TEST(Describe, FindsAMemberThatIsLeftOut) {
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<sample::Lead>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<sample::Harness>()), "");
  EXPECT_EQ(describe::undescribed_gap(describe::type_of<sample::Forgetful>()),
            "between `told` and `flag`");
}
