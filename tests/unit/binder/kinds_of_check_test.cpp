// A kind of check names the calculation that goes further: it must be in the catalogue.
#include <gtest/gtest.h>

#include "calculation/catalogue.hpp"
#include "desk/check_kinds.hpp"

namespace {

using namespace wm;

TEST(KindsOfCheck, EachNamesACalculationThatIsThere) {
  int named = 0;
  for (int i = 0; i <= static_cast<int>(bay::CheckKind::other); ++i) {
    const auto kind = static_cast<bay::CheckKind>(i);
    const auto& note = desk::note_of(kind);
    EXPECT_EQ(note.kind, kind) << "every kind has its note: " << bay::word(kind);
    if (note.calculation.empty()) continue;
    ++named;
    EXPECT_NE(calculation::catalogue().find(note.calculation), nullptr) << note.calculation;
  }
  EXPECT_GE(named, 14);
}

}  // namespace
