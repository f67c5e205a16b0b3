#pragma once
/// Counters, limits, what is due when, and forecasts of the day an hours limit falls.
///
/// This header: one counter of use (engine hours, landings, starts) as the series of what its
/// instrument showed. A replaced instrument is an event with its offset, not a counter that
/// runs backwards.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "outcome/result.hpp"
#include "quantity/date.hpp"

namespace wm::life {

/// What a counter counts. Values are plain numbers in this unit: hours for a clock, whole
/// numbers for the others.
enum class CountUnit : std::uint8_t { hours, landings, starts };

/// "1140.0 h", "212 landings".
[[nodiscard]] std::string say(double value, CountUnit unit);

struct CounterEvent {
  quantity::Date on{};
  std::int64_t order{};  ///< among events of one day: the smaller one happened first
  double shown{};        ///< what the instrument shows; the new one's, where it was replaced
  bool replaced{};
  /// Of a replacement: what the old instrument showed last; nothing when nobody noted it.
  std::optional<double> old_shown{};
};

/// What is known about the total at the end of a day.
struct TotalAt {
  double lowest{};                   ///< last total on or before the day
  std::optional<double> highest{};   ///< next total after it; nothing after the last reading
  std::optional<double> straight{};  ///< on the straight line between the two
  bool exact{};                      ///< read on that very day
  bool at_least{};                   ///< an old instrument's last reading is unknown: maybe more
};

/// The events of one counter in the order in which things happened, not in which they were
/// entered, so that old logbooks can be typed in later.
class CounterSeries {
 public:
  explicit CounterSeries(CountUnit unit = CountUnit::hours) : unit_(unit) {}

  /// Would this event fit between its neighbours?
  /// @return conflict: a counter that runs backwards without a replacement beside it.
  ///         out_of_bounds: a negative or not finite value, a date that is none.
  [[nodiscard]] Result<Done> check(const CounterEvent& event) const;
  /// Puts the event in its place; changes nothing when check() refuses. Constant time at the
  /// end of the series.
  Result<Done> add(const CounterEvent& event);

  /// Total use at the end of a day; nothing before the first reading.
  [[nodiscard]] std::optional<TotalAt> total_at(quantity::Date day) const;
  /// Total at the last event; nothing for an empty series.
  [[nodiscard]] std::optional<double> total() const;
  [[nodiscard]] std::optional<quantity::Date> last_day() const;
  /// Total that belongs to what the present instrument would show.
  [[nodiscard]] double offset() const { return points_.empty() ? 0.0 : points_.back().offset; }
  [[nodiscard]] CountUnit unit() const { return unit_; }

  /// An event and what has to be added to what the instrument shows.
  struct Point {
    CounterEvent event;
    double offset{};
    bool at_least{};
    [[nodiscard]] double total() const { return event.shown + offset; }
  };
  [[nodiscard]] const std::vector<Point>& points() const { return points_; }

 private:
  [[nodiscard]] std::size_t place_of(const CounterEvent& event) const;
  void carry_offsets(std::size_t from);
  CountUnit unit_;
  std::vector<Point> points_;
};

}  // namespace wm::life
