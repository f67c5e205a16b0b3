#pragma once
/// On which day an hours limit falls, and how sure that is, from irregular flying.
///
/// Model: flights come at random (a Poisson process whose rate is known only from the flights
/// there were), each takes a gamma-distributed time; with more than a year of history the months
/// of the year differ, and days are counted in "busy days" of the average month.
///
///   P(due <= t) = sum over m of P(flight m crosses the limit) * P(m flights within t)
///   m flights within t, of n flights seen in D days: t/D ~ BetaPrime(m, n + 1/2)
///   m flights within t, rate known nu:               gamma(m, nu)
///
/// The limit is charged on the flight that crosses it: to stay under it, the work is due before
/// that flight.

#include <array>
#include <span>
#include <vector>

#include "outcome/result.hpp"
#include "quantity/date.hpp"

namespace wm::life {

/// Hours flown, dated: one flight, or one day's flying.
struct Flown {
  quantity::Date on{};
  double hours{};
};

/// How busy each month of the year is against the average; the mean over a year is 1.
struct MonthProfile {
  std::array<double, 12> of_month{1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1};
  /// Days from a to b, each counted by its month.
  [[nodiscard]] double busy_days(quantity::Date from, quantity::Date to) const;
  /// The day on which so many busy days after `from` are over.
  [[nodiscard]] quantity::Date after(quantity::Date from, double busy_days) const;
};

/// What the history says about the flying to come.
struct Flying {
  double flights{};    ///< seen, n
  double busy_days{};  ///< in so many days, D
  bool rate_known{};   ///< true: flights / busy_days is the rate, no doubt about it
  double shape{4.0};   ///< of a flight's duration, k
  double scale{0.25};  ///< theta, hours; mean k theta
  bool seasonal{};
  MonthProfile months{};
  [[nodiscard]] double hours_a_day() const { return flights / busy_days * shape * scale; }
};

/// Flights older than this say little about next year. Our choice, no source.
inline constexpr int k_history_days = 1096;
/// Fewer than this give no interval worth printing. Our choice, no source.
inline constexpr int k_fewest_flights = 5;

/// @param flown  In any order; entries after `today` or of no hours are left out.
/// @param today  Where the history ends.
/// @return       not_applicable with fewer than k_fewest_flights flights.
[[nodiscard]] Result<Flying> learn(std::span<const Flown> flown, quantity::Date today);

/// The distribution of the (busy) days until so many hours are flown.
class DaysUntil {
 public:
  /// @pre hours > 0, the numbers in `flying` > 0
  DaysUntil(const Flying& flying, double hours);
  /// P(due within t days).
  [[nodiscard]] double by(double days) const;
  /// @pre 0 < p < 1
  [[nodiscard]] double quantile(double p) const;

 private:
  Flying flying_;
  int first_{1};                 ///< flight of weights_[0]
  std::vector<double> weights_;  ///< chance that this flight crosses the limit
  double typical_days_{};
};

/// Days until m more flights have been made, the rate known from n flights in D days.
/// @pre 0 < p < 1, flights_needed >= 1
[[nodiscard]] double days_for_flights(int flights_needed, double flights_seen, double days_seen,
                                      double p);

/// One chance in ten before `early`, one in ten after `late`.
struct DateForecast {
  quantity::Date early{};
  quantity::Date middle{};
  quantity::Date late{};
};

/// @param hours_left  0 or less: it falls today.
[[nodiscard]] DateForecast forecast(const Flying& flying, double hours_left, quantity::Date today);

/// Hours and calendar together: the earlier of the two (or the later).
[[nodiscard]] DateForecast with_calendar(DateForecast by_hours, quantity::Date by_calendar,
                                         bool whichever_first);

}  // namespace wm::life
