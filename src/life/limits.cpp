#include "life/limits.hpp"

#include <fmt/core.h>

namespace wm::life {
namespace {

constexpr double k_seconds_an_hour = 3600.0;

Problem at(std::string path, Kind kind, std::string what, std::string expected) {
  Problem p;
  p.kind = kind;
  p.path = std::move(path);
  p.what = std::move(what);
  p.expected = std::move(expected);
  return p;
}

bool binding(Authority authority) {
  return authority == Authority::law || authority == Authority::maker_mandatory;
}

void check_use(const UseLimit& use, std::size_t index, Authority authority, Problems& problems) {
  const std::string path = fmt::format("uses/{}", index);
  const bool clock = use.unit == CountUnit::hours;
  if (clock ? !use.hours.has_value() : !use.count.has_value()) {
    problems.push_back(at(path + (clock ? "/hours" : "/count"), Kind::missing,
                          fmt::format("how much of \"{}\" is not said", use.counter),
                          clock ? "hours" : "a whole number"));
  } else if (clock ? use.count.has_value() : use.hours.has_value()) {
    problems.push_back(
        at(path + (clock ? "/count" : "/hours"), Kind::conflict,
           fmt::format("\"{}\" counts {}", use.counter, clock ? "hours" : "whole events"),
           clock ? "hours alone" : "a whole number alone"));
  } else if (use.every() <= 0.0) {
    problems.push_back(at(path + (clock ? "/hours" : "/count"), Kind::out_of_bounds,
                          "a limit of nothing", "more than 0"));
  }
  if (use.tolerance() != 0.0 && binding(authority)) {
    problems.push_back(at(path + (clock ? "/tolerance_hours" : "/tolerance_count"), Kind::refused,
                          "a limit of the law or a mandatory one of the maker has no tolerance "
                          "of the owner's",
                          "no tolerance, or another authority"));
  }
}

}  // namespace

double UseLimit::every() const {
  if (unit == CountUnit::hours) return hours ? hours->value.si / k_seconds_an_hour : 0.0;
  return static_cast<double>(count.value_or(0));
}

double UseLimit::tolerance() const {
  if (unit == CountUnit::hours) {
    return tolerance_hours ? tolerance_hours->value.si / k_seconds_an_hour : 0.0;
  }
  return static_cast<double>(tolerance_count.value_or(0));
}

Checked<Done> check(const Limit& limit) {
  Problems problems;
  for (std::size_t i = 0; i < limit.uses.size(); ++i) {
    check_use(limit.uses[i], i, limit.authority, problems);
  }
  if (limit.months && (limit.months->months < 1 || limit.months->months > 1200)) {
    problems.push_back(at("months/months", Kind::out_of_bounds,
                          fmt::format("{} months", limit.months->months), "1 to 1200 months"));
  }
  if (limit.days && (*limit.days < 1 || *limit.days > 36525)) {
    problems.push_back(
        at("days", Kind::out_of_bounds, fmt::format("{} days", *limit.days), "1 to 36525 days"));
  }
  if (limit.tolerance_days < 0 || limit.tolerance_days > 3660) {
    problems.push_back(at("tolerance_days", Kind::out_of_bounds,
                          fmt::format("{} days", limit.tolerance_days), "0 to 3660 days"));
  } else if (limit.tolerance_days > 0 && binding(limit.authority)) {
    problems.push_back(at("tolerance_days", Kind::refused,
                          "a limit of the law or a mandatory one of the maker has no tolerance of "
                          "the owner's",
                          "0 days, or another authority"));
  }
  if (!limit.on_condition && limit.uses.empty() && !limit.months && !limit.days) {
    problems.push_back(at("", Kind::missing, "nothing is limited",
                          "use of a counter, months, days, or on condition"));
  }
  if (!problems.empty()) return Fail(std::move(problems));
  return Done{};
}

std::string_view in_words(Authority authority) {
  switch (authority) {
    case Authority::law:
      return "law";
    case Authority::maker_mandatory:
      return "maker, mandatory";
    case Authority::maker_recommended:
      return "maker, recommended";
    case Authority::owners_choice:
      return "owner's choice";
  }
  return "";
}

std::string in_words(const Limit& limit) {
  std::vector<std::string> parts;
  for (const UseLimit& use : limit.uses) {
    parts.push_back(use.unit == CountUnit::hours
                        ? fmt::format("{} of {}", say(use.every(), use.unit), use.counter)
                        : fmt::format("{:.0f} {}", use.every(), use.counter));
  }
  if (limit.months) {
    parts.push_back(
        fmt::format("{} {}", limit.months->months,
                    limit.months->rule == MonthRule::end_of_month ? "calendar months" : "months"));
  }
  if (limit.days) parts.push_back(fmt::format("{} days", *limit.days));
  std::string words;
  for (std::size_t i = 0; i < parts.size(); ++i) words += (i == 0 ? "" : " or ") + parts[i];
  if (parts.size() > 1) {
    words += limit.combine == Combine::whichever_first ? ", whichever comes first"
                                                       : ", whichever comes later";
  }
  if (limit.on_condition) words += words.empty() ? "on condition" : ", on condition";
  words += fmt::format(" ({}", in_words(limit.authority));
  if (!limit.document.empty()) words += ": " + limit.document;
  if (!limit.revision.empty()) words += " rev " + limit.revision;
  return words + ")";
}

std::string_view describe(describe::Choices<CountUnit>& c) {
  c.has(CountUnit::hours, "hours", "hours")
      .has(CountUnit::landings, "landings", "landings")
      .has(CountUnit::starts, "starts", "starts");
  return "count-unit";
}

std::string_view describe(describe::Choices<MonthRule>& c) {
  c.has(MonthRule::end_of_month, "end-of-month",
        "calendar months: through the last day of the month")
      .has(MonthRule::anniversary, "anniversary", "months: the same day of the month");
  return "month-rule";
}

std::string_view describe(describe::Choices<Authority>& c) {
  c.has(Authority::law, "law", "law")
      .has(Authority::maker_mandatory, "maker-mandatory", "maker, mandatory")
      .has(Authority::maker_recommended, "maker-recommended", "maker, recommended")
      .has(Authority::owners_choice, "owners-choice", "owner's choice");
  return "authority";
}

std::string_view describe(describe::Choices<Combine>& c) {
  c.has(Combine::whichever_first, "whichever-first", "whichever comes first")
      .has(Combine::whichever_later, "whichever-later", "whichever comes later");
  return "combine";
}

std::string_view describe(describe::Choices<CarryForward>& c) {
  c.has(CarryForward::from_done, "from-done", "counted from when it was done")
      .has(CarryForward::from_due, "from-due", "counted from where it was due");
  return "carry-forward";
}

std::string_view describe(describe::Choices<StartFrom>& c) {
  c.has(StartFrom::last_done, "last-done", "when it was last done")
      .has(StartFrom::fitted, "fitted", "when it was fitted")
      .has(StartFrom::cure_date, "cure-date", "cure date of the rubber")
      .has(StartFrom::assembly_date, "assembly-date", "assembly date")
      .has(StartFrom::made, "made", "when it was made");
  return "start-from";
}

std::string_view describe(describe::Fields<UseLimit>& f) {
  f.has<&UseLimit::counter>("counter", "Which counter").needed("engine hours").refers_to("counter");
  f.has<&UseLimit::unit>("unit", "What it counts");
  f.has<&UseLimit::hours>("hours", "So many hours")
      .example("100 h")
      .above(quantity::hours(0))
      .at_most(quantity::hours(100000))
      .shown_when("unit=hours");
  f.has<&UseLimit::count>("count", "So many landings or starts").example("500").between(1, 1000000);
  f.has<&UseLimit::tolerance_hours>("tolerance_hours", "May be overrun by")
      .between(quantity::hours(0), quantity::hours(1000))
      .shown_when("unit=hours");
  f.has<&UseLimit::tolerance_count>("tolerance_count", "May be overrun by").between(0, 10000);
  return "use-limit";
}

std::string_view describe(describe::Fields<MonthLimit>& f) {
  f.has<&MonthLimit::months>("months", "So many months").needed("12").between(1, 1200);
  f.has<&MonthLimit::rule>("rule", "How months are counted")
      .needed("end-of-month")
      .help("As the limit's own document says it; never guessed.");
  return "month-limit";
}

std::string_view describe(describe::Fields<Limit>& f) {
  f.has<&Limit::name>("name", "What has to be done").example("renew");
  f.has<&Limit::uses>("uses", "By use").at_most(8);
  f.has<&Limit::months>("months", "By months");
  f.has<&Limit::days>("days", "By days").between(1, 36525);
  f.has<&Limit::combine>("combine", "Together");
  f.has<&Limit::repeats>("repeats", "Comes again after it is done");
  f.has<&Limit::next>("next", "Next interval");
  f.has<&Limit::early_days>("early_days", "Done early by so many days, the due date is kept")
      .between(0, 366);
  f.has<&Limit::tolerance_days>("tolerance_days", "May be overrun by so many days")
      .between(0, 3660);
  f.has<&Limit::on_condition>("on_condition", "On condition");
  f.has<&Limit::authority>("authority", "Who says so");
  f.has<&Limit::document>("document", "In which document").example("maintenance manual, table 5-1");
  f.has<&Limit::revision>("revision", "Its revision").example("C");
  f.has<&Limit::start>("start", "Counted from");
  return "limit";
}

}  // namespace wm::life
