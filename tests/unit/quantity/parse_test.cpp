#include "quantity/text.hpp"

#include <gtest/gtest.h>
namespace {
TEST(X,Y){ EXPECT_TRUE(wm::quantity::parse("3 ft 4 1/2 in", wm::quantity::KindOf::length)); }
}
