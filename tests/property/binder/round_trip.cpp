// Whatever a payload holds, encoding and decoding give it back to the last bit.
#include <gtest/gtest.h>

#include <random>

#include "binder/stored.hpp"
#include "calculation/json_face.hpp"

namespace {

using namespace wm;
using describe::Shape;

/// Fills a described value with odd things: quotes, umlauts, tiny and huge figures.
class Filler {
 public:
  explicit Filler(std::uint64_t seed) : draw_(seed) {}
  void fill(const describe::Type& type, void* at) {
    switch (type.shape) {
      case Shape::text:
        *static_cast<std::string*>(at) = text();
        break;
      case Shape::yes_no:
        *static_cast<bool*>(at) = below(2) == 0;
        break;
      case Shape::count:
        *static_cast<std::int64_t*>(at) = static_cast<std::int64_t>(draw_()) >> below(60);
        break;
      case Shape::number:
        *static_cast<double*>(at) = figure();
        break;
      case Shape::choice:
        type.operations.set_choice(at, type.choices[below(type.choices.size())].number);
        break;
      case Shape::record:
        for (const auto& f : type.fields) fill(*f.type, describe::value_of(f, at));
        break;
      case Shape::list:
        for (auto i = below(4); i > 0; --i) fill(*type.of, type.operations.append(at));
        break;
      case Shape::optional:
        if (below(2) == 0) fill(*type.of, type.operations.emplace(at, 0));
        break;
      case Shape::date:
        *static_cast<quantity::Date*>(at) = *quantity::parse_date("2024-02-29");
        break;
      case Shape::quantity:
        type.operations.set_number(at, {type.kind.value(), figure(), std::abs(figure()), {}, {}});
        break;
      case Shape::measured:
        type.operations.set_number(
            at, {type.kind.value(), figure(), std::abs(figure()), std::abs(figure()), {}});
        break;
      case Shape::any_quantity:
        type.operations.set_number(
            at,
            {quantity::KindOf::resistance, figure(), std::abs(figure()), std::abs(figure()), {}});
        break;
      default:
        break;
    }
  }

 private:
  std::size_t below(std::size_t n) { return static_cast<std::size_t>(draw_() % n); }
  double figure() {
    const double unit = static_cast<double>(draw_() >> 11) * 0x1.0p-53;
    const double scales[] = {1e-12, 1e-3, 1, 1e3, 1e9};
    return (unit - 0.5) * scales[below(5)];
  }
  std::string text() {
    const char* const some[] = {"",          "x",     "a \"quote\"",  "back\\slash", "line\nbreak",
                                "\xC3\xB6l", "tab\t", "\xE2\x84\xA6", "{}",          "null"};
    return some[below(10)];
  }
  std::mt19937_64 draw_;
};

TEST(StoredProperty, DecodingAnEncodedPayloadGivesItBack) {
  Filler filler(42);
  for (int round = 0; round < 40; ++round) {
    for (const auto& kind : bay::event_kinds()) {
      auto payload = kind.make();
      filler.fill(*kind.type, bay::body_of(payload));
      const auto body = binder::encode(payload);
      const auto back = binder::decode_payload(kind.word, kind.version, body);
      ASSERT_TRUE(back) << kind.word << " " << body << calculation::write_problems(back.error());
      ASSERT_TRUE(describe::equal(*kind.type, bay::body_of(payload), bay::body_of(*back)))
          << kind.word << " " << body;
      ASSERT_EQ(binder::encode(*back), body) << kind.word;
    }
  }
}

}  // namespace
