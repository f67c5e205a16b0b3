#include "life/forecast.hpp"

#include <algorithm>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>

#include "life/months.hpp"
#include "statistics/distributions.hpp"
#include "statistics/numeric.hpp"

namespace wm::life {

namespace ch = std::chrono;

namespace {

// Weights below this are left out; it keeps the error of a quantile far below a day.
constexpr double k_negligible = 1e-11;
// Months are pulled towards the average as if so many flights had been flown evenly: two or
// three years are too few to believe that January never flies. Our choice, no source.
constexpr double k_even_flights = 2.0;
constexpr double k_smallest_shape = 0.3;
constexpr double k_largest_shape = 400.0;

using Policy = boost::math::policies::policy<boost::math::policies::promote_double<false>>;

double log_gamma(double x) { return boost::math::lgamma(x, Policy()); }

std::size_t month_index(quantity::Date date) { return static_cast<unsigned>(date.month()) - 1U; }

quantity::Date last_of_month(quantity::Date date) {
  return {ch::year_month_day_last{date.year(), ch::month_day_last{date.month()}}};
}

/// Shape and scale of the flights' duration, by their mean and spread.
void learn_durations(std::span<const Flown> flights, Flying& flying) {
  double sum = 0.0;
  for (const Flown& flight : flights) sum += flight.hours;
  const double mean = sum / static_cast<double>(flights.size());
  double squares = 0.0;
  for (const Flown& flight : flights) squares += (flight.hours - mean) * (flight.hours - mean);
  const double variance = squares / static_cast<double>(flights.size() - 1);
  flying.shape = variance > 0.0
                     ? std::clamp(mean * mean / variance, k_smallest_shape, k_largest_shape)
                     : k_largest_shape;
  flying.scale = mean / flying.shape;
}

/// Flights a month against those expected if all months were alike.
MonthProfile learn_months(std::span<const Flown> flights, quantity::Date from,
                          quantity::Date today) {
  std::array<double, 12> seen{};
  std::array<double, 12> days{};
  for (const Flown& flight : flights) seen[month_index(flight.on)] += 1.0;
  for (quantity::Date day = from; day < today;) {
    const quantity::Date next = std::min(last_of_month(add_days(day, 1)), today);
    days[month_index(next)] += quantity::days_between(day, next);
    day = next;
  }
  const double rate = static_cast<double>(flights.size()) / quantity::days_between(from, today);
  MonthProfile profile;
  constexpr std::array<double, 12> k_length{31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  double year = 0.0;
  for (std::size_t m = 0; m < 12; ++m) {
    profile.of_month[m] = (seen[m] + k_even_flights) / (rate * days[m] + k_even_flights);
    year += profile.of_month[m] * k_length[m];
  }
  for (double& share : profile.of_month) share *= 365.25 / year;
  return profile;
}

}  // namespace

double MonthProfile::busy_days(quantity::Date from, quantity::Date to) const {
  double sum = 0.0;
  while (from < to) {
    const quantity::Date next = std::min(last_of_month(add_days(from, 1)), to);
    sum += of_month[month_index(next)] * quantity::days_between(from, next);
    from = next;
  }
  return sum;
}

quantity::Date MonthProfile::after(quantity::Date from, double busy_days) const {
  const quantity::Date end{ch::year{2200}, ch::December, ch::day{31}};
  while (from < end) {
    const quantity::Date next = std::min(last_of_month(add_days(from, 1)), end);
    const double share = of_month[month_index(next)];
    const double here = share * quantity::days_between(from, next);
    if (here >= busy_days) return add_days(from, static_cast<int>(std::ceil(busy_days / share)));
    busy_days -= here;
    from = next;
  }
  return end;
}

Result<Flying> learn(std::span<const Flown> flown, quantity::Date today) {
  const quantity::Date oldest = add_days(today, -k_history_days);
  std::vector<Flown> flights;
  bool older = false;
  for (const Flown& one : flown) {
    if (one.on <= oldest) older = true;
    if (one.hours > 0.0 && one.on > oldest && one.on <= today) flights.push_back(one);
  }
  std::sort(flights.begin(), flights.end(),
            [](const Flown& a, const Flown& b) { return a.on < b.on; });
  // Where the record starts with a flight, that flight only starts the clock.
  const quantity::Date from = older || flights.empty() ? oldest : flights.front().on;
  const double counted = static_cast<double>(flights.size()) - (older ? 0.0 : 1.0);
  if (flights.size() < static_cast<std::size_t>(k_fewest_flights) || from >= today) {
    return Fail(Kind::not_applicable, "too few flights on record to say when the hours are used up",
                "5 flights or more, on different days");
  }
  Flying flying;
  flying.flights = counted;
  learn_durations(flights, flying);
  flying.seasonal = quantity::days_between(from, today) > 365;
  if (flying.seasonal) flying.months = learn_months(flights, from, today);
  flying.busy_days = flying.months.busy_days(from, today);
  return flying;
}

DaysUntil::DaysUntil(const Flying& flying, double hours) : flying_(flying) {
  const double mean = flying.shape * flying.scale;
  const double middle = hours / mean;
  const double spread = std::sqrt(middle / flying.shape) + 1.0;
  first_ = std::max(1, static_cast<int>(middle - 8.0 * spread));
  const auto crossed_by = [&](int m) {
    return 1.0 - statistics::gamma_cdf(hours, m * flying.shape, 1.0 / flying.scale);
  };
  double before = first_ == 1 ? 0.0 : crossed_by(first_ - 1);
  if (before < k_negligible) before = 0.0;
  for (int m = first_; before < 1.0 - k_negligible; ++m) {
    const double now = crossed_by(m);
    weights_.push_back(now - before);
    before = now;
  }
  weights_.back() += 1.0 - before;
  typical_days_ = middle * flying.busy_days / flying.flights;
}

double DaysUntil::by(double days) const {
  if (!(days > 0.0)) return 0.0;
  // G(m) = P(m flights within `days`) falls with m, and neighbours differ by one easy term;
  // going down only adds positive terms, so nothing cancels.
  const int last = first_ + static_cast<int>(weights_.size()) - 1;
  const double b = flying_.flights + 0.5;
  const double x = days / (days + flying_.busy_days);
  const double expected = flying_.flights / flying_.busy_days * days;
  double reached = flying_.rate_known ? statistics::gamma_cdf(expected, last, 1.0)
                                      : statistics::beta_cdf(x, last, b);
  const double log_start = flying_.rate_known
                               ? last * std::log(expected) - expected - log_gamma(last + 1.0)
                               : last * std::log(x) + b * std::log1p(-x) + log_gamma(last + b) -
                                     log_gamma(last + 1.0) - log_gamma(b);
  // A term too small for a double is nothing; its logarithm is carried until it is something.
  constexpr double k_smallest = -700.0;
  double log_term = log_start;  // of G(last) - G(last + 1)
  double term = log_term > k_smallest ? std::exp(log_term) : 0.0;
  double sum = weights_.back() * reached;
  for (int m = last - 1; m >= first_; --m) {
    // From the term of m + 1 to the term of m.
    const double ratio = flying_.rate_known ? (m + 1.0) / expected : (m + 1.0) / (x * (m + b));
    if (term > 0.0) {
      term *= ratio;
    } else {
      log_term += std::log(ratio);
      if (log_term > k_smallest) term = std::exp(log_term);
    }
    reached += term;
    sum += weights_[static_cast<std::size_t>(m - first_)] * reached;
  }
  return std::min(sum, 1.0);
}

double DaysUntil::quantile(double p) const {
  double high = typical_days_;
  for (int i = 0; by(high) < p && i < 200; ++i) high *= 2.0;
  double low = high / 2.0;
  for (int i = 0; by(low) > p && i < 200; ++i) {
    high = low;
    low /= 2.0;
  }
  const auto found = statistics::crossing([&](double days) { return by(days) - p; }, low, high);
  return found ? *found : high;
}

double days_for_flights(int flights_needed, double flights_seen, double days_seen, double p) {
  const double x = statistics::beta_quantile(p, flights_needed, flights_seen + 0.5);
  return days_seen * x / (1.0 - x);
}

DateForecast forecast(const Flying& flying, double hours_left, quantity::Date today) {
  if (hours_left <= 0.0) return {today, today, today};
  const DaysUntil until(flying, hours_left);
  const auto day = [&](double p) { return flying.months.after(today, until.quantile(p)); };
  return {day(0.1), day(0.5), day(0.9)};
}

DateForecast with_calendar(DateForecast by_hours, quantity::Date by_calendar,
                           bool whichever_first) {
  for (quantity::Date* one : {&by_hours.early, &by_hours.middle, &by_hours.late}) {
    *one = whichever_first ? std::min(*one, by_calendar) : std::max(*one, by_calendar);
  }
  return by_hours;
}

}  // namespace wm::life
