#pragma once
/// How much of a limit is used, what governs, and when it falls due.

#include <string_view>

#include "life/limits.hpp"

namespace wm::life {

/// Unknown never counts as fine: it stands beside "past limit" in every list.
enum class Standing : std::uint8_t { valid, in_tolerance, past_limit, unknown, on_condition };
[[nodiscard]] std::string_view in_words(Standing standing);

/// A total of one counter.
struct CounterValue {
  std::string counter;
  double total{};
};

/// Where a limit starts, or where its work was done: a day and the totals on it. What is not
/// known is left out.
struct Mark {
  std::optional<quantity::Date> on{};
  std::vector<CounterValue> counters{};
  [[nodiscard]] std::optional<double> total(std::string_view counter) const;
};

enum class By : std::uint8_t { use, months, days };

/// One parameter of a limit.
struct ParameterStatus {
  By by{By::use};
  std::size_t use{};  ///< which of limit.uses
  Standing standing{Standing::unknown};
  std::optional<double> due_total{};       ///< of the counter
  std::optional<double> use_left{};        ///< negative when past
  std::optional<quantity::Date> due_on{};  ///< last day within the limit
  std::optional<int> days_left{};          ///< 0 on the last valid day, negative when past
  std::optional<double> used{};            ///< share of the allowance, 1 = all
};

struct Status {
  Standing standing{Standing::unknown};
  std::vector<ParameterStatus> each;
  std::optional<std::size_t> governs{};  ///< index in `each`: first used up, or last
  std::optional<double> used{};          ///< share, of the one that governs
  [[nodiscard]] std::optional<quantity::Date> due_on() const;  ///< by the calendar
};

/// Judge a limit today. The last day and the last hour are still within it.
///
/// Whichever comes first: past when any parameter is past, else unknown when any is unknown.
/// Whichever comes later: valid while any parameter is valid.
///
/// @param start  Where it is counted from; a missing start makes its parameters unknown.
/// @param now    Today and the present totals.
[[nodiscard]] Status judge(const Limit& limit, const Mark& start, const Mark& now);

/// Where the next interval starts after the work was done.
///
/// from_done: at `done`. from_due: at the due point when it was overrun (the excess comes off
/// the next interval); when done early, at `done`, unless early by no more than
/// limit.early_days, which keeps the due date.
[[nodiscard]] Mark next_start(const Limit& limit, const Mark& start, const Mark& done);

/// By how much the work came too late, beyond any tolerance.
struct Overrun {
  By by{By::use};
  std::size_t use{};
  double amount{};  ///< past the limit: in the counter's unit, or days
  bool beyond_tolerance{};
};
[[nodiscard]] std::vector<Overrun> overruns(const Limit& limit, const Mark& start,
                                            const Mark& done);

}  // namespace wm::life
