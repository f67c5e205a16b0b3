#include <fmt/core.h>

#include "desk/acts.hpp"
#include "desk/lookup.hpp"

namespace wm::desk {

Simple read_counter(const bay::CounterRead& in, const Desk& desk) {
  auto problems = check_counters(aircraft_of(desk.state, in.aircraft), in.at, desk.day(), "at");
  if (!problems.empty()) return Fail(std::move(problems));
  return Outcome<Said>{{{in, {}}}, {"Counter read.", {}, {}}};
}

Simple replace_counter(const bay::CounterReplaced& in, const Desk& desk) {
  const auto& counter = aircraft_of(desk.state, in.aircraft).counters.find(in.counter)->second;
  const bool hours = bay::counts_hours(counter.about.kind);
  Problems problems;
  const auto need = [&](bool given, const char* path, const char* what) {
    if (!given) problems.push_back(problem(Kind::missing, path, what));
  };
  if (hours) {
    need(in.new_first_hours.has_value(), "new_first_hours",
         "where the new meter started is needed");
  } else {
    need(in.new_first_count.has_value(), "new_first_count",
         "where the new counter started is needed");
  }
  if (problems.empty()) {
    life::CounterEvent event{desk.day(), std::numeric_limits<std::int64_t>::max(), 0, true, {}};
    event.shown =
        hours ? in.new_first_hours->value.si / 3600.0 : static_cast<double>(*in.new_first_count);
    if (in.old_last_hours) event.old_shown = in.old_last_hours->value.si / 3600.0;
    if (in.old_last_count) event.old_shown = static_cast<double>(*in.old_last_count);
    if (const auto fits = counter.series.check(event); !fits) {
      auto p = fits.error();
      p.path = hours ? "old_last_hours" : "old_last_count";
      problems.push_back(std::move(p));
    }
  }
  if (!problems.empty()) return Fail(std::move(problems));
  Said said{counter.about.name + ": meter exchanged.", in.counter, {}};
  if (!in.old_last_hours && !in.old_last_count) {
    said.notes.push_back(
        "The old meter's last reading is unknown: totals from here on are \"at least\".");
  }
  return Outcome<Said>{{{in, {}}}, std::move(said)};
}

Simple task_done(const bay::TaskDone& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  auto problems = check_counters(aircraft, in.at, desk.day(), "at");
  if (!problems.empty()) return Fail(std::move(problems));
  return Outcome<Said>{
      {{in, {}}}, {aircraft.limits.find(in.limit)->second.about.title + ": done.", in.limit, {}}};
}

Simple quick_job(const bay::QuickJobDone& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  auto problems = check_counters(aircraft, in.at, desk.day(), "at");
  const auto name =
      name_for(aircraft.quick_jobs, in.id,
               fmt::format("{}-{}", bay::word(in.what), quantity::print_date(desk.day())));
  if (!name) problems.push_back(name.error());
  if (!problems.empty()) return Fail(std::move(problems));
  bay::QuickJobDone job = in;
  job.id = *name;
  Said said{fmt::format("{} recorded.", bay::label(in.what)), job.id, {}};
  for (const auto& limit : in.limits) {
    said.notes.push_back(aircraft.limits.find(limit)->second.about.title +
                         ": counts anew from here.");
  }
  said.notes.push_back("Sign the entry when you have read it.");
  return Outcome<Said>{{{std::move(job), {}}}, std::move(said)};
}

}  // namespace wm::desk
