#include "life/due_date.hpp"

#include <fmt/core.h>

#include <cmath>

#include "quantity/as_typed.hpp"

namespace wm::life {
namespace {

// Names of the two counters of this form; they are read in the words of the limit.
constexpr std::string_view k_hours = "time in service";
constexpr std::string_view k_count = "landings or starts";
constexpr double k_seconds_an_hour = 3600.0;
/// Mean month of the Gregorian calendar, 365.2425 / 12.
constexpr double k_days_a_month = 30.436875;

using EnteredHours = std::optional<quantity::Entered<quantity::Duration>>;

double hours_of(const EnteredHours& entered) { return entered->value.si / k_seconds_an_hour; }

Problem problem(std::string path, Kind kind, std::string what, std::string expected = {}) {
  Problem p;
  p.kind = kind;
  p.path = std::move(path);
  p.what = std::move(what);
  p.expected = std::move(expected);
  return p;
}

Limit limit_of(const DueDateInput& in) {
  Limit limit;
  if (in.every) {
    UseLimit use{std::string(k_hours), CountUnit::hours, in.every, {}, in.tolerance, {}};
    limit.uses.push_back(use);
  }
  if (in.every_count) {
    limit.uses.push_back({std::string(k_count), CountUnit::landings, {}, in.every_count, {}, {}});
  }
  if (in.months && in.month_rule) limit.months = MonthLimit{*in.months, *in.month_rule};
  limit.days = in.days;
  limit.combine = in.combine;
  limit.next = in.next;
  limit.early_days = in.early_days;
  limit.tolerance_days = in.tolerance_days;
  limit.authority = in.authority;
  limit.document = in.document;
  limit.revision = in.revision;
  return limit;
}

Mark mark(std::optional<quantity::Date> on, const EnteredHours& hours,
          std::optional<std::int64_t> count) {
  Mark made{on, {}};
  if (hours) made.counters.push_back({std::string(k_hours), hours_of(hours)});
  if (count) made.counters.push_back({std::string(k_count), static_cast<double>(*count)});
  return made;
}

/// What the fields say that the limit itself cannot know.
void check_fields(const DueDateInput& in, quantity::Date today, Problems& problems) {
  if (in.months && !in.month_rule) {
    problems.push_back(problem("month_rule", Kind::missing,
                               "how the months are counted is not said; it stands in the limit's "
                               "own document and is never guessed",
                               "end-of-month (\"calendar months\") or anniversary"));
  }
  if (!is_day(today)) {
    problems.push_back(
        problem("today", Kind::missing, "the day to judge on is not given", "a date"));
    return;
  }
  if (in.done && *in.done > today) {
    problems.push_back(
        problem("done", Kind::conflict,
                fmt::format("done on {}, which is after today, {}", quantity::print_date(*in.done),
                            quantity::print_date(today)),
                "a day up to today"));
  }
  if (in.done_at && in.now_at && hours_of(in.now_at) < hours_of(in.done_at)) {
    problems.push_back(problem("now_at", Kind::conflict,
                               fmt::format("the counter stands at {} now, but stood at {} when it "
                                           "was done",
                                           say(hours_of(in.now_at), CountUnit::hours),
                                           say(hours_of(in.done_at), CountUnit::hours)),
                               "totals, with the offset of a replaced counter added"));
  }
  if (in.done_at_count && in.now_at_count && *in.now_at_count < *in.done_at_count) {
    problems.push_back(
        problem("now_at_count", Kind::conflict,
                fmt::format("{} now, but {} when it was done", *in.now_at_count, *in.done_at_count),
                "a number that has not gone down"));
  }
}

/// The start that the carry-forward rule gives, with what came too late.
Mark start_of(const DueDateInput& in, const Limit& limit, DueDateAnswer& answer) {
  Mark start = mark(in.done, in.done_at, in.done_at_count);
  if (!in.was_due && !in.was_due_at) return start;
  const auto late_days = in.was_due && in.done ? quantity::days_between(*in.was_due, *in.done) : 0;
  const double late_hours =
      in.was_due_at && in.done_at ? hours_of(in.done_at) - hours_of(in.was_due_at) : 0.0;
  if (late_days > 0 || late_hours > 1e-9) {
    const bool beyond = late_days > limit.tolerance_days ||
                        late_hours > (in.tolerance ? hours_of(in.tolerance) : 0.0) + 1e-9;
    std::string late;
    if (late_hours > 1e-9) late = say(late_hours, CountUnit::hours);
    if (late_days > 0) late += (late.empty() ? "" : " and ") + fmt::format("{} days", late_days);
    answer.overrun =
        fmt::format("done {} past its due point: {}", late,
                    beyond ? "more than the tolerance allows" : "within the tolerance");
    answer.working.push_back(answer.overrun);
  }
  if (limit.next == CarryForward::from_done) return start;
  if (in.was_due && in.done && -late_days <= limit.early_days) start.on = in.was_due;
  if (late_hours > 1e-9) start.counters.front().total = hours_of(in.was_due_at);
  answer.working.push_back(
      "the next interval is counted from where it was due: what was overrun comes off it");
  return start;
}

void write_working(const Limit& limit, const Mark& start, const Mark& now, const Status& status,
                   std::vector<std::string>& working) {
  for (const ParameterStatus& one : status.each) {
    if (one.by == By::use) {
      const UseLimit& use = limit.uses[one.use];
      const std::string unit = use.unit == CountUnit::hours ? " h" : "";
      const auto say_it = [&](double v) { return quantity::pencil(v) + unit; };
      if (!one.due_total) {
        working.push_back(fmt::format("due by {}: unknown, the start is not known", use.counter));
        continue;
      }
      const double from = *start.total(use.counter);
      working.push_back(fmt::format("due at {} + {} = {}", say_it(from), say_it(use.every()),
                                    say_it(*one.due_total)));
      if (!one.use_left) {
        working.push_back("left: unknown, the present reading is not given");
        continue;
      }
      working.push_back(fmt::format("left: {} - {} = {}", say_it(*one.due_total),
                                    say_it(*now.total(use.counter)), say_it(*one.use_left)));
      continue;
    }
    const bool months = one.by == By::months;
    if (!one.due_on) {
      working.push_back(fmt::format("due by {}: unknown, the date it was done is not known",
                                    months ? "months" : "days"));
      continue;
    }
    const std::string step =
        months ? fmt::format("{} {}", limit.months->months,
                             limit.months->rule == MonthRule::end_of_month
                                 ? "calendar months, through the last day of that month"
                                 : "months, the same day of the month")
               : fmt::format("{} days", *limit.days);
    working.push_back(fmt::format("due on {} + {} = {}", quantity::print_date(*start.on), step,
                                  quantity::print_date(*one.due_on)));
    working.push_back(
        fmt::format("days left from {}: {}", quantity::print_date(*now.on), *one.days_left));
  }
}

/// Copies the parameters into the answer; months and days share the fields of the calendar.
void fill(const DueDateInput& in, const Limit& limit, const Status& status, DueDateAnswer& answer) {
  const bool first = limit.combine == Combine::whichever_first;
  for (const ParameterStatus& one : status.each) {
    if (one.by == By::use && limit.uses[one.use].unit == CountUnit::hours) {
      const double resolution =
          in.done_at ? std::max(in.done_at->resolution_si,
                                in.every->resolution_si > 360.0 ? 360.0 : in.every->resolution_si)
                     : 360.0;
      if (one.due_total) {
        answer.due_at =
            quantity::Entered<quantity::Duration>{quantity::hours(*one.due_total), resolution, {}};
      }
      if (one.use_left) {
        answer.hours_left =
            quantity::Entered<quantity::Duration>{quantity::hours(*one.use_left), resolution, {}};
      }
    } else if (one.by == By::use) {
      if (one.due_total) answer.due_at_count = std::llround(*one.due_total);
      if (one.use_left) answer.count_left = std::llround(*one.use_left);
    } else if (one.due_on && (!answer.due_on || (first ? *one.due_on < *answer.due_on
                                                       : *one.due_on > *answer.due_on))) {
      answer.due_on = one.due_on;
      if (one.days_left) answer.days_left = *one.days_left;
    }
  }
  answer.standing = status.standing;
  if (status.used) answer.allowance_used = quantity::ratio(*status.used);
}

/// When the hours run out, by a steady rate or from the flights there were.
std::optional<DateForecast> hours_run_out(const DueDateInput& in, quantity::Date today,
                                          DueDateAnswer& answer) {
  if (!answer.hours_left) return std::nullopt;
  const double left = answer.hours_left->value.si / k_seconds_an_hour;
  if (!in.flown.empty()) {
    std::vector<Flown> flown;
    flown.reserve(in.flown.size());
    for (const FlownHours& one : in.flown) {
      flown.push_back({one.on, one.hours.si / k_seconds_an_hour});
    }
    const auto flying = learn(flown, today);
    if (flying) {
      answer.working.push_back(fmt::format(
          "flying: {} flights in {} days{}, {} h each on average: about {} h a month",
          quantity::pencil(flying->flights), quantity::pencil(std::round(flying->busy_days)),
          flying->seasonal ? " (months of the year weighed)" : "",
          quantity::pencil(std::round(flying->shape * flying->scale * 100) / 100),
          quantity::pencil(std::round(flying->hours_a_day() * k_days_a_month * 10) / 10)));
      return forecast(*flying, left, today);
    }
    answer.working.push_back(flying.error().what);
  }
  if (in.hours_a_month && in.hours_a_month->value.si > 0.0) {
    const double months = std::max(0.0, left / hours_of(in.hours_a_month));
    const double days = std::min(months * k_days_a_month, 70000.0);
    answer.working.push_back(fmt::format("{} h left / {} h a month = {} months = {} days",
                                         quantity::pencil(left),
                                         quantity::pencil(hours_of(in.hours_a_month)),
                                         quantity::pencil(months), quantity::pencil(days)));
    const auto day = add_days(today, static_cast<int>(days));
    return DateForecast{day, day, day};
  }
  return std::nullopt;
}

void expect(const DueDateInput& in, const Limit& limit, quantity::Date today,
            DueDateAnswer& answer) {
  auto by_hours = hours_run_out(in, today, answer);
  const bool first = limit.combine == Combine::whichever_first;
  if (!by_hours) return;
  const quantity::Date hours_middle = by_hours->middle;
  DateForecast both = *by_hours;
  if (answer.due_on) both = with_calendar(both, *answer.due_on, first);
  answer.expected = both.middle;
  answer.expected_early = both.early;
  answer.expected_late = both.late;
  if (answer.due_on) {
    const bool calendar = first ? *answer.due_on <= hours_middle : *answer.due_on >= hours_middle;
    answer.governs = calendar ? "the calendar" : "the hours";
  }
}

std::string governing(const Limit& limit, const Status& status) {
  if (!status.governs) return "";
  const ParameterStatus& one = status.each[*status.governs];
  if (one.by != By::use) return "the calendar";
  return limit.uses[one.use].unit == CountUnit::hours ? "the hours" : "the count";
}

std::string conclude(const DueDateAnswer& answer) {
  std::string words(in_words(answer.standing));
  if (answer.standing == Standing::unknown) {
    return words + ": a start or a present reading is missing, so it does not count as fine";
  }
  if (!answer.governs.empty()) words += ", " + answer.governs + " govern";
  if (answer.governs == "the calendar" || answer.governs == "the count") words += "s";
  if (answer.due_on) words += "; last day " + quantity::print_date(*answer.due_on);
  if (answer.due_at) {
    words += fmt::format("; last hour {}",
                         say(answer.due_at->value.si / k_seconds_an_hour, CountUnit::hours));
  }
  if (answer.due_at_count) words += fmt::format("; last count {}", *answer.due_at_count);
  return words;
}

}  // namespace

Checked<DueDateAnswer> due_date(const DueDateInput& input, const describe::Context& context) {
  Problems problems;
  const quantity::Date today = input.today.value_or(context.today);
  check_fields(input, today, problems);
  const Limit limit = limit_of(input);
  const auto sound = check(limit);
  if (!sound) {
    for (Problem p : sound.error()) {
      // The limit's own paths, told in the fields of this form.
      if (p.path.starts_with("uses/"))
        p.path = p.path.contains("tolerance") ? "tolerance" : "every";
      if (p.path == "months/months") p.path = "months";
      if (p.path.empty() && input.months) continue;  // only the month rule is missing
      problems.push_back(std::move(p));
    }
  }
  if (!problems.empty()) return Fail(std::move(problems));

  DueDateAnswer answer;
  answer.working.push_back("limit: " + in_words(limit));
  const Mark start = start_of(input, limit, answer);
  const Mark now = mark(today, input.now_at, input.now_at_count);
  const Status status = judge(limit, start, now);
  write_working(limit, start, now, status, answer.working);
  fill(input, limit, status, answer);
  answer.governs = governing(limit, status);
  expect(input, limit, today, answer);
  if (limit.authority != Authority::law && limit.authority != Authority::maker_mandatory &&
      answer.standing == Standing::past_limit) {
    answer.working.push_back(
        "this limit is a recommendation or the owner's own: the document and the owner decide "
        "what follows from it");
  }
  answer.in_words = conclude(answer);
  return answer;
}

}  // namespace wm::life
