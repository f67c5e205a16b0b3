#include "desk/due_list.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "desk/lookup.hpp"

namespace wm::desk {
namespace {

std::string standing_word(life::Standing s) {
  switch (s) {
    case life::Standing::valid:
      return "valid";
    case life::Standing::in_tolerance:
      return "in-tolerance";
    case life::Standing::past_limit:
      return "past-limit";
    case life::Standing::unknown:
      return "unknown";
    case life::Standing::on_condition:
      return "on-condition";
  }
  return "unknown";
}

const bay::Part* part_in(const bay::State& state, const bay::Aircraft& aircraft,
                         const std::string& position) {
  const auto fitted = aircraft.fitted.find(position);
  if (fitted == aircraft.fitted.end()) return nullptr;
  const auto part = state.parts.find(fitted->second);
  return part == state.parts.end() ? nullptr : &part->second;
}

/// Totals at the start such that earlier times of the same part in other places count too.
std::vector<life::CounterValue> start_totals(const bay::Part& part,
                                             const bay::Installation& current) {
  std::vector<life::CounterValue> out;
  for (const auto& [counter, from] : current.from_counters) {
    double earlier = 0;
    for (const auto& i : part.installations) {
      if (&i == &current || !i.to) continue;
      const auto begin = i.from_counters.find(counter);
      const auto end = i.to_counters.find(counter);
      if (begin != i.from_counters.end() && end != i.to_counters.end())
        earlier += end->second - begin->second;
    }
    out.push_back({counter, from - earlier});
  }
  return out;
}

std::vector<life::CounterValue> values(const std::map<std::string, double>& totals) {
  std::vector<life::CounterValue> out;
  for (const auto& [counter, total] : totals) out.push_back({counter, total});
  return out;
}

void fill_totals(life::Mark& mark, const bay::Aircraft& aircraft) {
  if (!mark.on) return;
  for (const auto& [id, counter] : aircraft.counters) {
    if (mark.total(id)) continue;
    if (const auto total = counter.on(*mark.on)) mark.counters.push_back({id, *total});
  }
}

std::string counter_figure(const life::UseLimit& use, double amount) {
  return life::say(amount, use.unit);
}

std::string bare(double value, life::CountUnit unit) {
  return unit == life::CountUnit::hours ? fmt::format("{:.1f}", value)
                                        : fmt::format("{:.0f}", value);
}

/// "64 of 60 months": what is used and what is allowed, of the parameter that governs.
std::string figure_of(const life::Limit& limit, const life::ParameterStatus& p,
                      const life::Mark& start, const life::Mark& now) {
  switch (p.by) {
    case life::By::use: {
      const auto& use = limit.uses[p.use];
      if (!p.use_left) return fmt::format("unknown of {}", counter_figure(use, use.every()));
      return fmt::format("{} of {}", bare(use.every() - *p.use_left, use.unit),
                         counter_figure(use, use.every()));
    }
    case life::By::months: {
      if (!start.on) return fmt::format("unknown of {} months", limit.months->months);
      const int days = quantity::days_between(*start.on, *now.on);
      return fmt::format("{:.0f} of {} months", std::floor(days / 30.436875), limit.months->months);
    }
    case life::By::days: {
      if (!start.on) return fmt::format("unknown of {} days", *limit.days);
      return fmt::format("{} of {} days", quantity::days_between(*start.on, *now.on), *limit.days);
    }
  }
  return {};
}

std::string due_words(const life::Limit& limit, const life::Status& status) {
  std::string out;
  for (const auto& p : status.each) {
    std::string one;
    if (p.by == life::By::use && p.due_total) one = counter_figure(limit.uses[p.use], *p.due_total);
    if (p.by != life::By::use && p.due_on) one = quantity::print_date(*p.due_on);
    if (one.empty()) continue;
    out += (out.empty() ? "" : " or ") + one;
  }
  if (status.each.size() > 1 && !out.empty()) {
    out += limit.combine == life::Combine::whichever_first ? ", whichever comes first"
                                                           : ", whichever comes later";
  }
  return out;
}

std::string left_words(const life::Limit& limit, const life::ParameterStatus& p) {
  if (p.by == life::By::use && p.use_left) {
    return *p.use_left < 0 ? counter_figure(limit.uses[p.use], -*p.use_left) + " past"
                           : counter_figure(limit.uses[p.use], *p.use_left);
  }
  if (p.by != life::By::use && p.days_left) {
    return *p.days_left < 0 ? fmt::format("{} days past", -*p.days_left)
                            : fmt::format("{} days", *p.days_left);
  }
  return {};
}

std::string detail_of(const bay::LimitRecord& record, const bay::Part* part,
                      const life::Mark& start) {
  const auto day = start.on ? quantity::print_date(*start.on) : std::string("unknown");
  if (!record.done.empty() && record.about.start == bay::StartFrom::last_done) {
    return "last done " + quantity::print_date(record.done.back().day);
  }
  if (record.about.since) return "counts from " + day;
  switch (record.about.start) {
    case bay::StartFrom::cure_date:
      return part ? "cured " + day : "no part fitted";
    case bay::StartFrom::assembly_date:
      return part ? "assembled " + day : "no part fitted";
    case bay::StartFrom::fitted:
      return part ? "fitted " + day : "no part fitted";
    default:
      return "last done " + day;
  }
}

std::string why_unknown(const life::Limit& limit, const life::Status& status,
                        const life::Mark& start) {
  if (status.standing != life::Standing::unknown) return {};
  if (!start.on && start.counters.empty())
    return "Where it counts from is not known: enter it, or find it out.";
  for (const auto& p : status.each) {
    if (p.standing != life::Standing::unknown) continue;
    if (p.by == life::By::use)
      return fmt::format("The reading of {} at the start or today is not known.",
                         limit.uses[p.use].counter);
    return "The date it counts from is not known.";
  }
  return "Not known.";
}

void add_forecast(DueRow& row, const life::Limit& limit, const life::Status& status,
                  const life::Mark& now, const std::optional<life::Flying>& flying,
                  const bay::Aircraft& aircraft) {
  std::optional<double> hours_left;
  for (const auto& p : status.each) {
    if (p.by != life::By::use || !p.use_left) continue;
    const auto counter = aircraft.counters.find(limit.uses[p.use].counter);
    const bool engine =
        counter != aircraft.counters.end() && bay::counts_hours(counter->second.about.kind);
    if (engine) hours_left = p.use_left;
  }
  const auto calendar = status.due_on();
  if (!hours_left) {
    row.expected = calendar;
    if (calendar) row.how_sure = "a fixed date";
    return;
  }
  if (!flying) {
    row.expected = calendar;
    row.how_sure = "too few flights on record to say when the hours run out";
    return;
  }
  auto when = life::forecast(*flying, std::max(0.0, *hours_left), *now.on);
  if (calendar)
    when = life::with_calendar(when, *calendar, limit.combine == life::Combine::whichever_first);
  row.expected = when.middle;
  row.early = when.early;
  row.late = when.late;
  row.how_sure = fmt::format("8 in 10 that it falls between {} and {}, flying as so far",
                             quantity::print_date(when.early), quantity::print_date(when.late));
}

int rank(const std::string& standing) {
  if (standing == "past-limit") return 0;
  if (standing == "in-tolerance") return 1;
  return standing == "unknown" ? 2 : 3;
}

/// Past ones first, then unknown, then by share used; equal ones as they came. Rows are heavy:
/// their keys are sorted, then each row is moved once.
void put_in_order(std::vector<DueRow>& rows) {
  struct Key {
    int rank;
    double used;
    std::size_t at;
  };
  std::vector<Key> keys;
  keys.reserve(rows.size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double used = rows[i].used.value_or(0);
    keys.push_back({rank(rows[i].standing), std::isnan(used) ? 0.0 : used, i});
  }
  std::sort(keys.begin(), keys.end(), [](const Key& a, const Key& b) {
    if (a.rank != b.rank) return a.rank < b.rank;
    if (a.used != b.used) return a.used > b.used;
    return a.at < b.at;
  });
  for (std::size_t start = 0; start < rows.size(); ++start) {
    if (keys[start].at == start) continue;
    auto held = std::move(rows[start]);
    std::size_t hole = start;
    while (keys[hole].at != start) {
      const auto from = std::exchange(keys[hole].at, hole);
      rows[hole] = std::move(rows[from]);
      hole = from;
    }
    rows[hole] = std::move(held);
    keys[hole].at = hole;
  }
}

}  // namespace

std::optional<life::Flying> flying_of(const bay::Aircraft& aircraft, quantity::Date today) {
  const auto* counter = aircraft.engine_hours();
  if (counter == nullptr) return std::nullopt;
  std::vector<life::Flown> flown;
  const auto& points = counter->series.points();
  for (std::size_t i = 1; i < points.size(); ++i) {
    const double hours = points[i].total() - points[i - 1].total();
    if (hours > 0) flown.push_back({points[i].event.on, hours});
  }
  const auto learned = life::learn(flown, today);
  if (!learned) return std::nullopt;
  return *learned;
}

life::Limit as_life(const bay::Aircraft& aircraft, const bay::LimitSet& in) {
  life::Limit out;
  out.name = in.title;
  if (in.every_hours || in.every_count) {
    life::UseLimit use;
    use.counter = in.counter;
    const auto counter = aircraft.counters.find(in.counter);
    use.unit = counter == aircraft.counters.end()
                   ? (in.every_hours ? life::CountUnit::hours : life::CountUnit::starts)
                   : bay::unit_of(counter->second.about.kind);
    use.hours = in.every_hours;
    use.count = in.every_count;
    use.tolerance_hours = in.tolerance_hours;
    out.uses.push_back(std::move(use));
  }
  if (in.every_months) out.months = life::MonthLimit{*in.every_months, in.month_rule};
  out.days = in.every_days;
  out.combine = in.which;
  out.repeats = in.repeating;
  out.next = in.carry;
  out.tolerance_days = in.tolerance_days.value_or(0);
  out.on_condition = in.on_condition;
  out.authority = in.authority;
  out.document = in.document;
  out.revision = in.revision;
  out.start = in.start;
  return out;
}

life::Mark start_of(const bay::State& state, const bay::Aircraft& aircraft,
                    const bay::LimitRecord& record, const life::Limit& limit) {
  const auto& about = record.about;
  life::Mark start;
  const auto* part = part_in(state, aircraft, about.position);
  const auto* current = part ? part->current() : nullptr;
  if (about.since || about.since_counter) {
    start.on = about.since;
    if (about.since_counter && about.since_counter->hours) {
      start.counters.push_back(
          {about.since_counter->counter, about.since_counter->hours->value.si / 3600.0});
    } else if (about.since_counter && about.since_counter->count) {
      start.counters.push_back(
          {about.since_counter->counter, static_cast<double>(*about.since_counter->count)});
    }
    fill_totals(start, aircraft);
  } else if (current != nullptr && about.start != bay::StartFrom::last_done) {
    start.counters = start_totals(*part, *current);
    if (about.start == bay::StartFrom::fitted && current->day_known) start.on = current->from;
    if (about.start == bay::StartFrom::cure_date) start.on = part->about.cured;
    if (about.start == bay::StartFrom::assembly_date) start.on = part->about.assembled;
  }
  if (about.start != bay::StartFrom::last_done) return start;
  for (const auto& done : record.done) {
    const life::Mark mark{done.day, values(done.counters)};
    start = start.on || !start.counters.empty() ? life::next_start(limit, start, mark) : mark;
  }
  return start;
}

life::Mark now_of(const bay::Aircraft& aircraft, quantity::Date today) {
  life::Mark now{today, {}};
  for (const auto& [id, counter] : aircraft.counters) {
    if (const auto total = counter.now()) now.counters.push_back({id, *total});
  }
  return now;
}

DueRow due_row(const bay::State& state, const bay::Aircraft& aircraft,
               const bay::LimitRecord& record, const life::Mark& now,
               const std::optional<life::Flying>& flying) {
  const auto& about = record.about;
  const auto limit = as_life(aircraft, about);
  const auto start = start_of(state, aircraft, record, limit);
  const bool one_off_done = !about.repeating && !record.done.empty();
  const auto status = life::judge(limit, start, now);
  DueRow row;
  row.id = about.id;
  row.title = about.title;
  row.position = about.position;
  const auto position = aircraft.positions.find(about.position);
  if (position != aircraft.positions.end()) row.position_name = position->second.name;
  const auto* part = part_in(state, aircraft, about.position);
  if (part != nullptr) row.part = part->about.id;
  row.standing = one_off_done ? "valid" : standing_word(status.standing);
  row.authority = bay::label(about.authority);
  row.document = about.document + (about.revision.empty() ? "" : ", " + about.revision);
  row.binding =
      about.authority == bay::Authority::law || about.authority == bay::Authority::maker_mandatory;
  row.detail = detail_of(record, part, start);
  if (one_off_done) {
    row.figure = "done once, does not come again";
    return row;
  }
  row.used = status.used;
  row.due = due_words(limit, status);
  row.due_on = status.due_on();
  row.why_unknown = why_unknown(limit, status, start);
  if (status.governs) {
    row.figure = figure_of(limit, status.each[*status.governs], start, now);
    row.left = left_words(limit, status.each[*status.governs]);
  } else if (!status.each.empty()) {
    row.figure = figure_of(limit, status.each.front(), start, now);
  } else {
    row.figure = "on condition";
  }
  add_forecast(row, limit, status, now, flying, aircraft);
  return row;
}

std::vector<DueRow> due_rows(const bay::State& state, const bay::Aircraft& aircraft,
                             const describe::Context& context) {
  const auto now = now_of(aircraft, context.today);
  const auto flying = flying_of(aircraft, context.today);
  std::vector<DueRow> rows;
  rows.reserve(aircraft.limits.size());
  for (const auto& [id, record] : aircraft.limits)
    rows.push_back(due_row(state, aircraft, record, now, flying));
  put_in_order(rows);
  return rows;
}

std::string_view describe(describe::Fields<DueRow>& f) {
  f.has<&DueRow::id>("id", "Limit");
  f.has<&DueRow::title>("title", "Title");
  f.has<&DueRow::position>("position", "Position");
  f.has<&DueRow::position_name>("position_name", "Position's name");
  f.has<&DueRow::part>("part", "Part");
  f.has<&DueRow::standing>("standing", "Standing");
  f.has<&DueRow::used>("used", "Allowance used");
  f.has<&DueRow::figure>("figure", "Used of allowed");
  f.has<&DueRow::detail>("detail", "Counts from");
  f.has<&DueRow::due>("due", "Due");
  f.has<&DueRow::left>("left", "Left");
  f.has<&DueRow::due_on>("due_on", "Due by the calendar");
  f.has<&DueRow::expected>("expected", "Expected");
  f.has<&DueRow::early>("early", "Early, 1 in 10");
  f.has<&DueRow::late>("late", "Late, 1 in 10");
  f.has<&DueRow::how_sure>("how_sure", "How sure");
  f.has<&DueRow::authority>("authority", "Authority");
  f.has<&DueRow::document>("document", "Document");
  f.has<&DueRow::binding>("binding", "Binding");
  f.has<&DueRow::why_unknown>("why_unknown", "Why unknown");
  return "due-row";
}

}  // namespace wm::desk
