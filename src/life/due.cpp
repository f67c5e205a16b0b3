#include "life/due.hpp"

#include <algorithm>

namespace wm::life {
namespace {

// Totals are sums of readings with one or two decimals: 1620.0 typed twice must compare equal.
constexpr double k_rounding = 1e-6;

Standing standing_of(double left, double tolerance) {
  if (left >= -k_rounding) return Standing::valid;
  return left >= -tolerance - k_rounding ? Standing::in_tolerance : Standing::past_limit;
}

ParameterStatus judge_use(const UseLimit& limit, std::size_t index, const Mark& start,
                          const Mark& now) {
  ParameterStatus status;
  status.use = index;
  const auto from = start.total(limit.counter);
  const auto present = now.total(limit.counter);
  if (from) status.due_total = *from + limit.every();
  if (!from || !present) return status;
  status.use_left = *status.due_total - *present;
  status.used = (*present - *from) / limit.every();
  status.standing = standing_of(*status.use_left, limit.tolerance());
  return status;
}

ParameterStatus judge_calendar(By by, const Limit& limit, const Mark& start, const Mark& now) {
  ParameterStatus status;
  status.by = by;
  if (!start.on) return status;
  status.due_on = by == By::months ? add_months(*start.on, static_cast<int>(limit.months->months),
                                                limit.months->rule)
                                   : add_days(*start.on, static_cast<int>(*limit.days));
  if (!now.on) return status;
  status.days_left = quantity::days_between(*now.on, *status.due_on);
  const int whole = quantity::days_between(*start.on, *status.due_on);
  if (whole > 0) status.used = 1.0 - static_cast<double>(*status.days_left) / whole;
  status.standing = standing_of(*status.days_left, static_cast<double>(limit.tolerance_days));
  return status;
}

int rank(Standing standing, Combine combine) {
  // First: the worst one rules. Later: the best one does.
  switch (standing) {
    case Standing::past_limit:
      return combine == Combine::whichever_first ? 4 : 0;
    case Standing::unknown:
      return combine == Combine::whichever_first ? 3 : 1;
    case Standing::in_tolerance:
      return 2;
    case Standing::valid:
      return combine == Combine::whichever_first ? 1 : 4;
    case Standing::on_condition:
      return 0;
  }
  return 0;
}

void combine(const Limit& limit, Status& status) {
  const bool first = limit.combine == Combine::whichever_first;
  std::optional<std::size_t> ruling;
  for (std::size_t i = 0; i < status.each.size(); ++i) {
    const ParameterStatus& one = status.each[i];
    if (!ruling ||
        rank(one.standing, limit.combine) > rank(status.each[*ruling].standing, limit.combine)) {
      ruling = i;
    }
    if (!one.used) continue;
    const bool closer = !status.governs || (first ? *one.used > *status.each[*status.governs].used
                                                  : *one.used < *status.each[*status.governs].used);
    if (closer) status.governs = i;
  }
  if (ruling) status.standing = status.each[*ruling].standing;
  if (status.governs) status.used = status.each[*status.governs].used;
}

}  // namespace

std::string_view in_words(Standing standing) {
  switch (standing) {
    case Standing::valid:
      return "within the limit";
    case Standing::in_tolerance:
      return "past the limit, within its tolerance";
    case Standing::past_limit:
      return "past the limit";
    case Standing::unknown:
      return "unknown";
    case Standing::on_condition:
      return "on condition";
  }
  return "";
}

std::optional<double> Mark::total(std::string_view counter) const {
  for (const CounterValue& value : counters) {
    if (value.counter == counter) return value.total;
  }
  return std::nullopt;
}

std::optional<quantity::Date> Status::due_on() const {
  if (governs && each[*governs].due_on) return each[*governs].due_on;
  std::optional<quantity::Date> earliest;
  for (const ParameterStatus& one : each) {
    if (one.due_on && (!earliest || *one.due_on < *earliest)) earliest = one.due_on;
  }
  return earliest;
}

Status judge(const Limit& limit, const Mark& start, const Mark& now) {
  Status status;
  status.each.reserve(limit.uses.size() + 2);
  for (std::size_t i = 0; i < limit.uses.size(); ++i) {
    status.each.push_back(judge_use(limit.uses[i], i, start, now));
  }
  if (limit.months) status.each.push_back(judge_calendar(By::months, limit, start, now));
  if (limit.days) status.each.push_back(judge_calendar(By::days, limit, start, now));
  combine(limit, status);
  if (status.each.empty() && limit.on_condition) status.standing = Standing::on_condition;
  return status;
}

Mark next_start(const Limit& limit, const Mark& start, const Mark& done) {
  Mark next = done;
  if (limit.next == CarryForward::from_done) return next;
  const Status then = judge(limit, start, done);
  std::optional<quantity::Date> due_on;
  for (const ParameterStatus& one : then.each) {
    if (one.by == By::use) {
      if (!one.use_left || *one.use_left >= 0.0) continue;
      for (CounterValue& value : next.counters) {
        if (value.counter == limit.uses[one.use].counter) value.total = *one.due_total;
      }
    } else if (one.days_left && *one.days_left <= limit.early_days) {
      // Months and days together: the earlier of the two was the one overrun.
      if (!due_on || *one.due_on < *due_on) due_on = one.due_on;
    }
  }
  if (due_on) next.on = due_on;
  return next;
}

std::vector<Overrun> overruns(const Limit& limit, const Mark& start, const Mark& done) {
  std::vector<Overrun> found;
  for (const ParameterStatus& one : judge(limit, start, done).each) {
    if (one.standing != Standing::past_limit && one.standing != Standing::in_tolerance) continue;
    const double amount = one.by == By::use ? -*one.use_left : -*one.days_left;
    found.push_back({one.by, one.use, amount, one.standing == Standing::past_limit});
  }
  return found;
}

}  // namespace wm::life
