// Acts and views are described without a gap, and named once.
#include <set>

#include "unit/desk/bench.hpp"

namespace {

using namespace wm;
using desk::test::joined;

TEST(Described, EveryActIsWholeAndHasItsOwnName) {
  std::set<std::string> names;
  for (const auto& act : desk::acts()) {
    EXPECT_TRUE(names.insert(act.name).second) << act.name;
    EXPECT_FALSE(act.purpose.empty()) << act.name;
    EXPECT_FALSE(act.cautions.empty()) << act.name;
    EXPECT_EQ(desk::find_act(act.name), &act);
    for (const auto* type : {act.input, act.output})
      EXPECT_EQ(joined(calculation::complaints(*type)), "") << act.name;
  }
}

TEST(Described, EveryViewIsWholeAndHasItsOwnName) {
  std::set<std::string> names;
  for (const auto& view : desk::views()) {
    EXPECT_TRUE(names.insert(view.name).second) << view.name;
    EXPECT_FALSE(view.purpose.empty()) << view.name;
    EXPECT_EQ(desk::find_view(view.name), &view);
    for (const auto* type : {view.input, view.output}) {
      if (type == &describe::type_of<desk::Nothing>()) continue;  // a struct without members
      EXPECT_EQ(joined(calculation::complaints(*type)), "") << view.name;
    }
  }
}

TEST(Described, WhatIsNotThereIsNotFound) {
  EXPECT_EQ(desk::find_act("fly"), nullptr);
  EXPECT_EQ(desk::find_view("fly"), nullptr);
}

}  // namespace
