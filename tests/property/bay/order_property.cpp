// A record told in any order: taken in one by one or at once gives the same state, and no crash.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <random>

#include "calculation/json_face.hpp"
#include "desk/sheet.hpp"
#include "desk/views.hpp"
#include "unit/bay/events.hpp"

namespace {

using namespace wm;
using namespace wm::bay;
using bay::test::Story;

/// A story of `length` events about few names, so that they meet, collide and miss each other.
class Teller {
 public:
  explicit Teller(std::uint64_t seed) : draw_(seed) {}

  Story story(int length) {
    Story out;
    std::vector<std::pair<std::string, Payload>> told;
    for (int i = 0; i < length; ++i) {
      out.on(fmt::format("202{}-{:02}-{:02}", below(7), 1 + below(12), 1 + below(28)));
      if (!told.empty() && below(6) == 0) {
        const auto& [id, payload] = told[below(told.size())];
        auto instead = one_of_kind(payload.index());
        out.correct(id, std::move(instead));
      } else {
        auto payload = one_of_kind(below(std::variant_size_v<Payload>));
        if (std::holds_alternative<EventCorrected>(payload)) continue;
        const auto refers = told.empty() ? std::string{} : told[below(told.size())].first;
        told.emplace_back(out.tell(payload, refers), payload);
      }
    }
    return out;
  }

 private:
  std::size_t below(std::size_t n) { return static_cast<std::size_t>(draw_() % n); }
  std::string name() { return std::string(1, static_cast<char>('a' + below(3))); }

  Payload one_of_kind(std::size_t index) {
    auto payload = event_kinds()[index].make();
    fill(*event_kinds()[index].type, body_of(payload));
    return payload;
  }
  /// Fills texts, yes-no, choices, counts and lists by the description; figures stay as they are.
  void fill(const describe::Type& type, void* at) {
    using describe::Shape;
    switch (type.shape) {
      case Shape::text:
        *static_cast<std::string*>(at) = name();
        break;
      case Shape::yes_no:
        *static_cast<bool*>(at) = below(2) == 0;
        break;
      case Shape::count:
        *static_cast<std::int64_t*>(at) = static_cast<std::int64_t>(below(1000));
        break;
      case Shape::choice:
        type.operations.set_choice(at, type.choices[below(type.choices.size())].number);
        break;
      case Shape::record:
        for (const auto& f : type.fields) fill(*f.type, describe::value_of(f, at));
        break;
      case Shape::list:
        for (auto i = below(3); i > 0; --i) fill(*type.of, type.operations.append(at));
        break;
      case Shape::optional:
        if (below(2) == 0) fill(*type.of, type.operations.emplace(at, 0));
        break;
      case Shape::date:
        *static_cast<quantity::Date*>(at) = *quantity::parse_date("2024-02-29");
        break;
      case Shape::quantity:
      case Shape::measured:
        type.operations.set_number(
            at, {type.kind.value(), static_cast<double>(3600 * below(2000)), 1.0, {}, {}});
        break;
      default:
        break;
    }
  }
  std::mt19937_64 draw_;
};

/// Everything that a person could see of it.
std::string seen(const State& state) {
  std::string out =
      fmt::format("{} events, {} parts, {} instruments, {} attachments\n", state.sequence,
                  state.parts.size(), state.instruments.size(), state.attachments.size());
  for (const auto& o : state.oddities) out += fmt::format("{}: {}\n", o.sequence, o.words);
  describe::Context context;
  context.today = *quantity::parse_date("2026-11-25");
  const auto add = [&](const auto& page) {
    if (page) out += calculation::to_json(*page) + "\n";
  };
  for (const auto& [id, aircraft] : state.aircraft) {
    const desk::OfAircraft wanted{id};
    add(desk::bay_page(wanted, state, context));
    add(desk::due_page(wanted, state, context));
    add(desk::work_page(wanted, state, context));
    add(desk::measure_page(wanted, state, context));
    add(desk::joints_page(wanted, state, context));
    add(desk::entries_page(wanted, state, context));
    const auto sheet = desk::sheet_of(state, aircraft);
    out += calculation::to_payload(sheet) + "\n";
    for (const auto& [name, check] : aircraft.checks)
      add(desk::check_history(desk::OfCheck{id, name}, state, context));
    for (const auto& [name, p] : aircraft.positions)
      add(desk::position_page(desk::OfPosition{id, name}, state, context));
  }
  add(desk::history(desk::HistoryWanted{{}, {}, {}, 1000}, state, context));
  return out;
}

TEST(FoldProperty, OneByOneOrAtOnceIsTheSame) {
  for (std::uint64_t seed = 1; seed <= 25; ++seed) {
    const auto story = Teller(seed).story(80);
    ASSERT_EQ(seen(story.folded()), seen(story.applied())) << "seed " << seed;
  }
}

TEST(FoldProperty, ACopyGoesItsOwnWay) {
  const auto story = Teller(7).story(60);
  const auto state = story.folded();
  const auto before = seen(state);
  auto copy = state;
  const auto more = Teller(8).story(60);
  for (const auto& e : more.events()) apply(copy, e);
  EXPECT_EQ(seen(state), before);
}

}  // namespace
