#pragma once
/// A life limit or an interval, as its document words it.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "describe/fields.hpp"
#include "life/counters.hpp"
#include "life/months.hpp"
#include "quantity/text.hpp"

namespace wm::life {

/// Who says so. Only the first two may be shown as "not to be flown past".
enum class Authority : std::uint8_t { law, maker_mandatory, maker_recommended, owners_choice };

/// Limits by use, months and days together: the earliest of them, or the latest.
enum class Combine : std::uint8_t { whichever_first, whichever_later };

/// Where the next interval is counted from.
enum class CarryForward : std::uint8_t {
  from_done,  ///< from when it was done
  from_due    ///< from where it was due: what was overrun comes off the next interval
};

/// What starts the calendar and the counting.
enum class StartFrom : std::uint8_t { last_done, fitted, cure_date, assembly_date, made };

/// So much use of one counter.
struct UseLimit {
  std::string counter{"engine hours"};
  CountUnit unit{CountUnit::hours};
  std::optional<quantity::Entered<quantity::Duration>> hours;  ///< when the unit is hours
  std::optional<std::int64_t> count;                           ///< landings or starts
  /// May be overrun by so much; only for what a maker recommends or the owner chose.
  std::optional<quantity::Entered<quantity::Duration>> tolerance_hours;
  std::optional<std::int64_t> tolerance_count;

  /// In the counter's unit: hours or a number. 0 when neither is given.
  [[nodiscard]] double every() const;
  [[nodiscard]] double tolerance() const;
};

struct MonthLimit {
  std::int64_t months{12};
  MonthRule rule{MonthRule::end_of_month};  ///< must be said: see MonthRule
};

struct Limit {
  std::string name;
  std::vector<UseLimit> uses;
  std::optional<MonthLimit> months;
  std::optional<std::int64_t> days;
  Combine combine{Combine::whichever_first};
  bool repeats{true};
  CarryForward next{CarryForward::from_done};
  /// Done early by so many days or fewer, the old due date is kept all the same.
  std::int64_t early_days{0};
  std::int64_t tolerance_days{0};
  bool on_condition{false};  ///< no fixed end: it stays in as long as its checks conform
  Authority authority{Authority::owners_choice};
  std::string document;
  std::string revision;
  StartFrom start{StartFrom::last_done};
};

/// Every contradiction inside a limit, each with the path of its field: nothing limited at all,
/// hours asked of a landing counter, a tolerance on what law or maker make binding.
[[nodiscard]] Checked<Done> check(const Limit& limit);

/// "100 h or 12 calendar months, whichever comes first (law: AD 2026-01 rev 2)".
[[nodiscard]] std::string in_words(const Limit& limit);
[[nodiscard]] std::string_view in_words(Authority authority);

std::string_view describe(describe::Choices<CountUnit>& c);
std::string_view describe(describe::Choices<MonthRule>& c);
std::string_view describe(describe::Choices<Authority>& c);
std::string_view describe(describe::Choices<Combine>& c);
std::string_view describe(describe::Choices<CarryForward>& c);
std::string_view describe(describe::Choices<StartFrom>& c);
std::string_view describe(describe::Fields<UseLimit>& f);
std::string_view describe(describe::Fields<MonthLimit>& f);
std::string_view describe(describe::Fields<Limit>& f);

}  // namespace wm::life
