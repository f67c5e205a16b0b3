// The table itself: complete, consistent, and every spelling leads to one unit.
#include "quantity/kinds.hpp"

#include <gtest/gtest.h>

#include <set>
#include <string>

#include "quantity/detail/table.hpp"
#include "quantity/text.hpp"

namespace wm::quantity {
namespace {

TEST(Kinds, AreAllThereUnderTheirNames) {
  ASSERT_EQ(all_kinds().size(), static_cast<std::size_t>(k_kind_count));
  std::set<std::string_view> names;
  for (const KindInfo& k : all_kinds()) {
    EXPECT_TRUE(names.insert(k.name).second) << k.name;
    EXPECT_EQ(kind_by_name(k.name), &k);
    EXPECT_EQ(&info(k.kind), &k);
    EXPECT_FALSE(units_of(k.kind).empty()) << k.name;
    EXPECT_TRUE(parse(k.example, k.kind)) << k.example;
    EXPECT_EQ(default_unit(k.kind, UnitSet::us_customary).symbol, k.us);
    EXPECT_EQ(default_unit(k.kind, UnitSet::si).symbol, k.metric);
  }
  EXPECT_EQ(kind_by_name("luck"), nullptr);
}

TEST(Kinds, EveryUnitHasAFactorAndASource) {
  for (const KindInfo& k : all_kinds()) {
    for (const Unit& u : units_of(k.kind)) {
      EXPECT_EQ(u.kind, k.kind) << u.symbol;
      EXPECT_GT(u.factor, 0) << u.symbol;
      EXPECT_FALSE(u.source.empty()) << u.symbol;
      EXPECT_EQ(find_unit(k.kind, u.symbol), &u) << k.name << ' ' << u.symbol;
    }
  }
}

TEST(Kinds, TheSiUnitHasTheFactorOne) {
  for (const KindInfo& k : all_kinds()) {
    const Unit* u = find_unit(k.kind, k.si_unit);
    if (k.kind == KindOf::fraction) continue;  // the unit one has no symbol to type
    ASSERT_NE(u, nullptr) << k.name;
    EXPECT_EQ(u->factor, 1.0) << k.name;
    EXPECT_EQ(u->offset, 0.0) << k.name;
  }
}

TEST(Kinds, EverySpellingLeadsToItsOwnUnit) {
  for (const KindInfo& k : all_kinds()) {
    for (const detail::Spelling& s : detail::table_of(k.kind).spellings) {
      EXPECT_EQ(detail::match(k.kind, s.text), s.unit) << k.name << ": " << s.text;
      EXPECT_EQ(find_unit(k.kind, s.text), s.unit) << k.name << ": " << s.text;
    }
  }
}

TEST(Kinds, ReadTheManySignsForOhmAndMicro) {
  for (const char* ohm : {"ohm", "\u03a9", "\u2126", "Ohm", "ohms"}) {
    ASSERT_NE(find_unit(KindOf::resistance, ohm), nullptr) << ohm;
    EXPECT_EQ(find_unit(KindOf::resistance, ohm)->symbol, "ohm");
  }
  for (const char* uf : {"uF", "\u00b5F", "\u03bcF"}) {
    ASSERT_NE(find_unit(KindOf::capacitance, uf), nullptr) << uf;
    EXPECT_EQ(find_unit(KindOf::capacitance, uf)->symbol, "uF");
  }
}

TEST(Kinds, APressureUnitWithTheWrongMarkIsNoUnit) {
  EXPECT_EQ(find_unit(KindOf::pressure_gauge, "psia"), nullptr);
  EXPECT_EQ(find_unit(KindOf::pressure_absolute, "psig"), nullptr);
  EXPECT_EQ(find_unit(KindOf::pressure_gauge, ""), nullptr);
}

}  // namespace
}  // namespace wm::quantity
