// Laws over seeded inputs: what is printed is read back, in every unit there is.
#include <fmt/core.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <sstream>
#include <string>

#include "quantity/text.hpp"

namespace wm::quantity {
namespace {

/// A fixed seed, so that a failure can be replayed.
template <class Law>
void holds(Law&& law) {
  rc::detail::TestParams params;
  params.seed = 811;
  params.maxSuccess = 300;
  const auto result =
      rc::detail::checkTestable(std::forward<Law>(law), rc::detail::TestMetadata(), params);
  if (!result.template is<rc::detail::SuccessResult>()) {
    std::ostringstream why;
    rc::detail::printResultMessage(result, why);
    ADD_FAILURE() << why.str();
  }
}

/// An integer times a power of ten, as digits on a page are: 0 to 6 decimals.
struct Digits {
  int whole;
  int decimals;
  double value() const { return whole / std::pow(10.0, decimals); }
  double step() const { return std::pow(10.0, -decimals); }
  std::string text() const { return fmt::format("{:.{}f}", value(), decimals); }
};
Digits some_digits(bool positive) {
  return {*rc::gen::inRange(positive ? 1 : -999999, 1000000), *rc::gen::inRange(0, 7)};
}

bool from_zero(KindOf kind) {
  return kind == KindOf::temperature || kind == KindOf::pressure_absolute;
}

TEST(RoundTrip, TypedDigitsComeBackInTheSameUnit) {
  holds([] {
    for (const KindInfo& k : all_kinds()) {
      for (const Unit& u : units_of(k.kind)) {
        const Digits d = some_digits(from_zero(k.kind));
        const std::string typed = fmt::format("{} {}", d.text(), u.symbol);
        const auto read = parse(typed, k.kind);
        RC_ASSERT(bool(read));
        const std::string shown = print(read->si, u, read->resolution_si);
        RC_ASSERT(shown ==
                  (d.whole == 0 ? fmt::format("{:.{}f} {}", 0.0, d.decimals, u.symbol) : typed));
      }
    }
  });
}

TEST(RoundTrip, ShownInAnyOtherUnitIsReadBackWithinTheResolution) {
  holds([] {
    for (const KindInfo& k : all_kinds()) {
      const auto units = units_of(k.kind);
      const Unit& typed_in = units[*rc::gen::inRange<std::size_t>(0, units.size())];
      const Digits d = some_digits(from_zero(k.kind));
      const auto read = parse(fmt::format("{} {}", d.text(), typed_in.symbol), k.kind);
      RC_ASSERT(bool(read));
      for (const Unit& other : units) {
        const auto back = parse(print(read->si, other, read->resolution_si), k.kind);
        RC_ASSERT(bool(back));
        const double noise = 1e-12 * (std::abs(read->si) + std::abs(other.offset));
        RC_ASSERT(std::abs(back->si - read->si) <= read->resolution_si / 2 + noise);
      }
    }
  });
}

TEST(RoundTrip, FractionsOfAnInchAreExact) {
  holds([] {
    const int whole = *rc::gen::inRange(0, 200);
    const int under = 1 << *rc::gen::inRange(1, 7);
    const int over = *rc::gen::inRange(1, under);
    const std::string typed = whole == 0 ? fmt::format("{}/{} in", over, under)
                                         : fmt::format("{} {}/{} in", whole, over, under);
    const auto read = parse(typed, KindOf::length);
    RC_ASSERT(bool(read));
    RC_ASSERT(read->si == (whole + static_cast<double>(over) / under) * 0.0254);
    RC_ASSERT(read->resolution_si == 0.0254 / under);
  });
}

TEST(RoundTrip, FeetAndInchesAddUp) {
  holds([] {
    const int ft = *rc::gen::inRange(0, 100);
    const int in = *rc::gen::inRange(0, 12);
    const auto both = parse(fmt::format("{} ft {} in", ft, in), KindOf::length);
    const auto one = parse(fmt::format("{} in", ft * 12 + in), KindOf::length);
    RC_ASSERT(bool(both) && bool(one));
    RC_ASSERT(std::abs(both->si - one->si) <= 1e-14);
  });
}

TEST(RoundTrip, AMeasuredValueIsReadBack) {
  holds([] {
    const Unit& ohm = *find_unit(KindOf::resistance, "ohm");
    const double value = some_digits(true).value();
    const double expanded = some_digits(true).value();
    const auto read =
        parse_measured(print_with_uncertainty(value, expanded, ohm), KindOf::resistance);
    RC_ASSERT(bool(read) && read->expanded.has_value());
    // Two digits of U: half a step is at most 5 % of it, and the value has the same step.
    RC_ASSERT(std::abs(read->expanded->si - expanded) <= 0.0501 * expanded);
    RC_ASSERT(std::abs(read->value.si - value) <= 0.0501 * expanded);
  });
}

TEST(Parse, AnyTextIsAnsweredAndNeverInfinite) {
  holds([] {
    const auto text = *rc::gen::container<std::string>(
        rc::gen::elementOf(std::string("0123456789 .,+-/'\"eEinftlbpsgaoh%()\xc2\xb1\xce\xa9")));
    for (const KindInfo& k : all_kinds()) {
      const auto read = parse(text, k.kind);
      const bool answered =
          read ? std::isfinite(read->si) && read->resolution_si > 0 : !read.error().what.empty();
      RC_ASSERT(answered);
    }
  });
}

}  // namespace
}  // namespace wm::quantity
