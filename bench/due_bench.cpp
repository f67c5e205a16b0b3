// Act: the due list of a whole fleet's worth of positions, with every word that is shown.
// Aim: 450,000 positions with a limit each in 2 s, in memory (an indication; our choice, no
//      source). One aircraft has about 45; the figure shows how far the list is from being felt.
//
// due_bench [POSITIONS]   Two limits in three count hours, one months; all invented.
#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

#include "bay/state.hpp"
#include "desk/due_list.hpp"
#include "life/due.hpp"
#include "quantity/date.hpp"

namespace {

using namespace wm;
constexpr int k_runs = 5;
const quantity::Date k_today{std::chrono::year{2026}, std::chrono::month{11}, std::chrono::day{25}};

[[noreturn]] void stop(const std::string& why) {
  std::fprintf(stderr, "due_bench: %s\n", why.c_str());
  std::exit(3);
}

double seconds_of(auto&& act) {
  const auto begin = std::chrono::steady_clock::now();
  act();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

double median(std::array<double, k_runs> values) {
  std::ranges::sort(values);
  return values[k_runs / 2];
}

/// Takes in one event that happened on a day.
class Story {
 public:
  void put(const char* day, bay::Payload payload) {
    bay::Event event;
    event.meta.sequence = state.sequence + 1;
    event.meta.id = "e-" + std::to_string(event.meta.sequence);
    event.meta.happened = day;
    event.meta.recorded = "2026-11-25T12:00:00Z";
    event.payload = std::move(payload);
    bay::apply(state, std::make_shared<const bay::Event>(std::move(event)));
  }
  bay::State state;
};

bay::CounterRead hours(double value) {
  bay::CounterRead read;
  read.aircraft = "fleet";
  bay::CounterReading at;
  at.counter = "engine";
  at.hours = quantity::Entered<quantity::Duration>{};
  at.hours->value.si = 3600 * value;
  read.at.push_back(at);
  return read;
}

bay::State fleet(int positions) {
  Story story;
  bay::AircraftDescribed about;
  about.id = about.name = "fleet";
  story.put("2020-01-01", about);
  bay::CounterDefined engine;
  engine.aircraft = "fleet";
  engine.id = "engine";
  engine.name = "Engine hours";
  story.put("2020-01-01", engine);
  story.put("2020-01-01", hours(100));
  for (int i = 0; i < positions; ++i) {
    bay::PositionAdded place;
    place.aircraft = "fleet";
    place.id = fmt::format("place-{:06}", i);
    place.name = "Place";
    story.put("2020-01-01", place);
    bay::LimitSet limit;
    limit.aircraft = "fleet";
    limit.id = fmt::format("limit-{:06}", i);
    limit.title = "Look at it";
    limit.position = place.id;
    if (i % 3 == 0) {
      limit.every_months = 12 + i % 240;
    } else {
      limit.counter = "engine";
      limit.every_hours = quantity::Entered<quantity::Duration>{};
      limit.every_hours->value.si = 3600.0 * (50 + i % 2000);
    }
    limit.since =
        quantity::Date{std::chrono::year{2020}, std::chrono::month{1}, std::chrono::day{1}};
    story.put("2020-01-01", limit);
  }
  story.put("2026-11-20", hours(1140.6));
  return std::move(story.state);
}

/// Counted by hand: past after 1040.6 h, or when 12 months and more from 2020-01-01 are over.
std::size_t past_by_hand(int positions) {
  std::size_t past = 0;
  for (int i = 0; i < positions; ++i) {
    // 82 months end on 2026-11-01, 83 on 2026-12-01.
    const bool over = i % 3 == 0 ? 12 + i % 240 <= 82 : 50 + i % 2000 < 1040.6;
    past += over ? 1U : 0U;
  }
  return past;
}

}  // namespace

int main(int count, char** words) {
  const int asked = count > 1 ? std::atoi(words[1]) : 0;
  const int positions = asked > 0 ? asked : 450'000;
  const auto state = fleet(positions);
  const auto* aircraft = state.find_aircraft("fleet");
  describe::Context context;
  context.today = k_today;
  std::array<double, k_runs> lists{};
  std::array<double, k_runs> judged{};
  std::size_t past = 0;
  for (std::size_t run = 0; run < k_runs; ++run) {
    std::vector<desk::DueRow> rows;
    lists[run] = seconds_of([&] { rows = desk::due_rows(state, *aircraft, context); });
    past = static_cast<std::size_t>(
        std::ranges::count(rows, std::string("past-limit"), &desk::DueRow::standing));
    if (rows.size() != static_cast<std::size_t>(positions) || past != past_by_hand(positions))
      stop(fmt::format("wrong answer: {} rows, {} past, by hand {}", rows.size(), past,
                       past_by_hand(positions)));
    std::size_t over = 0;
    const auto now = desk::now_of(*aircraft, k_today);
    judged[run] = seconds_of([&] {
      for (const auto& [id, record] : aircraft->limits) {
        const auto limit = desk::as_life(*aircraft, record.about);
        const auto start = desk::start_of(state, *aircraft, record, limit);
        over += life::judge(limit, start, now).standing == life::Standing::past_limit ? 1U : 0U;
      }
    });
    if (over != past) stop("the bare judging disagrees with the list");
  }
  fmt::print(
      "{{\"act\":\"due list of {} positions, words and order\",\"value\":{:.3f},\"unit\":\"s\","
      "\"aim\":\"2 s (an indication)\",\"note\":\"median of {} runs; {} past\"}}\n",
      positions, median(lists), k_runs, past);
  fmt::print(
      "{{\"act\":\"{} limits judged, no words\",\"value\":{:.3f},\"unit\":\"s\",\"note\":\"median "
      "of {} runs\"}}\n",
      positions, median(judged), k_runs);
  return 0;
}
