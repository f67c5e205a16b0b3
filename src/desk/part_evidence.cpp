#include "desk/part_evidence.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "desk/due_list.hpp"
#include "desk/judge.hpp"
#include "desk/lookup.hpp"
#include "desk/trend_of.hpp"
#include "desk/views.hpp"
#include "reliability/life_estimate.hpp"
#include "tables/staging/consequence.hpp"

namespace wm::desk {
namespace {

using bay::PartDecision;

// Where a limit begins to be worth watching: ours, docs/decisions/0019.
constexpr double k_watch_from = 0.9;
constexpr double k_watch_from_grave = 0.75;
constexpr double k_crossing_days = 365.0;
constexpr double k_next_hours = 100.0;

/// A row of the table of consequences.
struct Consequence {
  bool grave{};
  std::string_view follows;
};

Consequence consequence_of(bay::System system) {
  const auto wanted = bay::word(system);
  for (const auto& row : tables::consequence.rows) {
    if (row[0] == wanted) return {row[1] == "yes", row[2]};
  }
  return {};
}

/// One position while its lines are gathered.
struct Gathering {
  const bay::State& state;
  const bay::Aircraft& aircraft;
  const bay::PositionAdded& position;
  const describe::Context& context;
  const bay::Part* part{};
  PartEvidence out{};

  void say(std::string topic, std::string words, std::optional<PartDecision> leans = {},
           std::string source = {}) {
    out.lines.push_back({std::move(topic), std::move(words), std::move(source), leans});
  }
  /// Its failure is grave and no other part can do its work.
  [[nodiscard]] bool stands_alone() const { return out.grave && position.redundant_with.empty(); }
  [[nodiscard]] double watch_from() const {
    return stands_alone() ? k_watch_from_grave : k_watch_from;
  }
};

/// A limit on the part's own life; any other asks for a task, which renewing does not do.
bool is_life(const bay::LimitSet& limit) { return limit.start != bay::StartFrom::last_done; }

void past(const Gathering& g, const bay::LimitSet& limit, const DueRow& row, EvidenceLine& line) {
  line.leans = PartDecision::watch;
  if (!is_life(limit)) {
    line.words += ", past: do what it asks";
  } else if (row.binding) {
    line.leans = PartDecision::renew;
    line.words += ", past a limit that binds";
  } else if (g.stands_alone() && limit.authority != bay::Authority::owners_choice) {
    line.leans = PartDecision::renew;
    line.words += ", past, its failure is grave and nothing stands in for it";
  } else {
    line.words += ", past a limit that does not bind";
  }
}

void add_limits(Gathering& g) {
  const auto now = now_of(g.aircraft, g.context.today);
  const auto flying = flying_of(g.aircraft, g.context.today);
  for (const auto& [id, limit] : g.aircraft.limits) {
    if (limit.about.position != g.position.id) continue;
    const auto row = due_row(g.state, g.aircraft, limit, now, flying);
    EvidenceLine line{"limit", fmt::format("{}: {}", row.title, row.figure), {}, {}};
    if (row.standing == "past-limit") {
      past(g, limit.about, row, line);
    } else if (row.standing == "unknown") {
      line.leans = PartDecision::watch;
      line.words = fmt::format("{}: not known. {}", row.title, row.why_unknown);
    } else if (row.standing == "in-tolerance") {
      line.leans = PartDecision::watch;
      line.words += ", inside its tolerance";
    } else if (row.used && *row.used >= g.watch_from() && is_life(limit.about)) {
      line.leans = PartDecision::watch;
      line.words += fmt::format(", {:.0f} % used", 100.0 * *row.used);
    }
    if (!row.due.empty() && row.standing == "valid") line.words += fmt::format("; due {}", row.due);
    line.source =
        row.document.empty() ? row.authority : fmt::format("{} ({})", row.document, row.authority);
    g.out.lines.push_back(std::move(line));
  }
}

void add_age(Gathering& g) {
  const auto& about = g.part->about;
  std::string words;
  const auto add = [&](std::string_view what, const std::optional<quantity::Date>& day) {
    if (!day) return;
    words += fmt::format(
        "{}{} {}, {:.1f} years ago", words.empty() ? "" : "; ", what, quantity::print_date(*day),
        static_cast<double>(quantity::days_between(*day, g.context.today)) / 365.25);
  };
  add("cured", about.cured);
  add("assembled", about.assembled);
  const auto* fitted = g.part->current();
  if (fitted != nullptr && fitted->day_known) add("fitted", fitted->from);
  if (fitted != nullptr) {
    if (const auto hours = hours_served(g.aircraft, *fitted))
      words += fmt::format("{}{:.1f} h since", words.empty() ? "" : "; ", *hours);
  }
  g.say("age", words.empty() ? "no date is on record" : words);
}

void add_trend(Gathering& g, const bay::CheckRecord& check) {
  const auto told = trend_of(check, g.context);
  if (!told || told->lines.empty()) return;
  const double soon = told->over == "hours" ? k_next_hours : k_crossing_days;
  const bool watch = told->limit_met && told->limit_met->ahead <= soon;
  g.say("trend", fmt::format("{}: {}", check.about.title, told->lines.front()),
        watch ? std::optional(PartDecision::watch) : std::nullopt);
}

void add_readings(Gathering& g) {
  for (const auto& id : g.aircraft.check_order) {
    const auto& check = g.aircraft.checks.find(id)->second;
    if (check.about.position != g.position.id) continue;
    const auto line = check_line(check);
    std::optional<PartDecision> leans;
    if (line.verdict == "does-not-conform") leans = PartDecision::renew;
    if (line.verdict == "undecided" || line.verdict == "not-tested") leans = PartDecision::watch;
    if (line.used && *line.used >= g.watch_from() && !leans) leans = PartDecision::watch;
    g.say("reading",
          line.last.empty() ? fmt::format("{}: never read", line.title)
                            : fmt::format("{}: {} on {}, {}", line.title, line.last, line.last_when,
                                          line.last_words.empty() ? line.verdict : line.last_words),
          leans, line.limit_source);
    add_trend(g, check);
  }
}

/// Parts of the same type in this binder: how long they served, and why they were taken out.
void add_service(Gathering& g) {
  std::vector<double> served;
  std::int64_t taken_out = 0;
  std::string reasons;
  double now_here = 0.0;
  for (const auto& [id, part] : g.state.parts) {
    if (part.about.type != g.part->about.type) continue;
    for (const auto& i : part.installations) {
      const auto aircraft = g.state.aircraft.find(i.aircraft);
      if (aircraft == g.state.aircraft.end()) continue;
      const auto hours = hours_served(aircraft->second, i);
      if (!hours || *hours <= 0.0) continue;
      served.push_back(*hours);
      if (id == g.part->about.id && !i.to) now_here = *hours;
      if (!i.to) continue;
      ++taken_out;
      reasons += fmt::format("{}after {:.0f} h{}", reasons.empty() ? "" : "; ", *hours,
                             i.why_removed.empty() ? "" : fmt::format(" ({})", i.why_removed));
    }
  }
  if (served.empty()) {
    g.say("service", "hours of this part are not on record");
    return;
  }
  if (taken_out > 0)
    g.say("service", fmt::format("{} of {} of this type taken out before: {}", taken_out,
                                 served.size(), reasons));
  // A removal need not be a failure, so the bound that it gives is on the careful side.
  reliability::ZeroFailureInput in;
  for (const double hours : served)
    in.parts.push_back({{}, reliability::Ending::running, quantity::hours(hours), {}, {}});
  in.failures = taken_out;
  in.confidence = quantity::ratio(0.9);
  const auto bound = reliability::zero_failure_bound(in, g.context);
  if (!bound) return;
  const double least = std::exp(-k_next_hours * 3600.0 / bound->scale_low.si);
  g.say(
      "service",
      fmt::format("{} of this type served {:.0f} h in this binder, {} taken out: at least {:.0f} % "
                  "serve the next {:.0f} h, with 90 % confidence, if age played no part; {}",
                  served.size(), std::accumulate(served.begin(), served.end(), 0.0),
                  taken_out == 0 ? "none" : std::to_string(taken_out), 100.0 * least, k_next_hours,
                  now_here > 0.0 ? fmt::format("this one has {:.0f} h so far", now_here)
                                 : std::string("the hours of this one are not on record")),
      {}, "counts of this binder; survival-next goes further");
}

void add_consequence(Gathering& g) {
  const auto follows = consequence_of(g.position.system);
  std::string words(follows.follows);
  if (!g.position.redundant_with.empty()) {
    const auto other = g.aircraft.positions.find(g.position.redundant_with);
    words += fmt::format("; {} can do its work", other == g.aircraft.positions.end()
                                                     ? g.position.redundant_with
                                                     : other->second.name);
  }
  g.say("consequence", words, {}, "common practice, no source");
}

bool is_unfinished(const bay::Stage& stage) { return stage.state != bay::StageState::closed; }

void add_work(Gathering& g) {
  for (const auto& id : g.aircraft.change_order) {
    const auto& change = g.aircraft.changes.find(id)->second;
    if (change.withdrawn || change.done) continue;
    if (change.about.position != g.position.id) continue;
    g.say("work",
          fmt::format("planned already: {}{}", change.about.title,
                      change.stage.empty() ? "" : fmt::format(", in stage {}", change.stage)));
    if (!change.stage.empty()) g.out.stage = change.stage;
  }
  for (const auto& id : g.aircraft.stage_order) {
    const auto& stage = g.aircraft.stages.find(id)->second;
    if (!is_unfinished(stage) || stage.state == bay::StageState::planned) continue;
    const bool same_system = std::ranges::any_of(stage.about.changes, [&](const auto& c) {
      const auto change = g.aircraft.changes.find(c);
      if (change == g.aircraft.changes.end()) return false;
      const auto at = g.aircraft.positions.find(change->second.about.position);
      return at != g.aircraft.positions.end() && at->second.system == g.position.system;
    });
    if (same_system)
      g.say("work", fmt::format("{} is not closed and is in the same system: one more change now, "
                                "and a fault points to both",
                                stage.about.title));
  }
  for (const auto& [id, defect] : g.aircraft.defects) {
    if (defect.closed || defect.about.position != g.position.id) continue;
    g.say("work", fmt::format("open defect: {}", defect.about.text), PartDecision::watch);
  }
}

void add_decision(Gathering& g) {
  const auto found = g.aircraft.decisions.find(g.position.id);
  if (found == g.aircraft.decisions.end()) return;
  const auto& last = found->second.back();
  if (last.about.part != g.out.part) return;
  g.out.decided = bay::word(last.about.decision);
  g.out.decided_on = quantity::print_date(last.day);
  g.out.decided_why = last.about.reason;
  g.out.look_again_due = last.about.look_again && *last.about.look_again <= g.context.today;
  g.say("decision",
        fmt::format(
            "{} on {}: {}{}", bay::label(last.about.decision), g.out.decided_on, last.about.reason,
            last.about.look_again
                ? fmt::format("; look again on {}", quantity::print_date(*last.about.look_again))
                : ""),
        g.out.look_again_due ? std::optional(PartDecision::watch) : std::nullopt);
}

void conclude(PartEvidence& out) {
  const EvidenceLine* furthest = nullptr;
  for (const auto& line : out.lines) {
    if (!line.leans || *line.leans == PartDecision::leave) continue;
    // The decisions are declared from renew to leave.
    if (furthest == nullptr || *line.leans < *furthest->leans) furthest = &line;
  }
  out.leans = furthest == nullptr ? PartDecision::leave : *furthest->leans;
  out.because = furthest == nullptr ? "nothing on record asks for more" : furthest->words;
}

}  // namespace

std::optional<double> hours_served(const bay::Aircraft& aircraft,
                                   const bay::Installation& installation) {
  const auto* engine = aircraft.engine_hours();
  if (engine == nullptr) return std::nullopt;
  const auto from = installation.from_counters.find(engine->about.id);
  if (from == installation.from_counters.end()) return std::nullopt;
  if (!installation.to) {
    const auto now = engine->now();
    return now ? std::optional(*now - from->second) : std::nullopt;
  }
  const auto until = installation.to_counters.find(engine->about.id);
  if (until == installation.to_counters.end()) return std::nullopt;
  return until->second - from->second;
}

PartEvidence part_evidence(const bay::State& state, const bay::Aircraft& aircraft,
                           const bay::PositionAdded& position, const describe::Context& context) {
  Gathering g{state, aircraft, position, context};
  g.out.position = position.id;
  g.out.position_name = position.name;
  g.out.system = bay::label(position.system);
  g.out.grave = consequence_of(position.system).grave;
  const auto fitted = aircraft.fitted.find(position.id);
  if (fitted != aircraft.fitted.end()) {
    const auto part = state.parts.find(fitted->second);
    if (part != state.parts.end()) g.part = &part->second;
  }
  add_limits(g);
  if (g.part != nullptr) {
    g.out.part = g.part->about.id;
    g.out.description =
        g.part->about.description.empty() ? g.part->about.type : g.part->about.description;
    add_age(g);
  }
  add_readings(g);
  if (g.part != nullptr) add_service(g);
  add_consequence(g);
  add_work(g);
  add_decision(g);
  conclude(g.out);
  return std::move(g.out);
}

std::string_view describe(describe::Fields<EvidenceLine>& f) {
  using L = EvidenceLine;
  f.has<&L::topic>("topic", "About");
  f.has<&L::words>("words", "What the record says");
  f.has<&L::source>("source", "Source");
  f.has<&L::leans>("leans", "Leans to");
  return "evidence-line";
}

std::string_view describe(describe::Fields<PartEvidence>& f) {
  using E = PartEvidence;
  f.has<&E::position>("position", "Position");
  f.has<&E::position_name>("position_name", "Where");
  f.has<&E::system>("system", "System");
  f.has<&E::part>("part", "Part");
  f.has<&E::description>("description", "What it is");
  f.has<&E::grave>("grave", "Fire, loss of power or of control may follow");
  f.has<&E::leans>("leans", "The record leans to");
  f.has<&E::because>("because", "Because");
  f.has<&E::lines>("lines", "Evidence");
  f.has<&E::decided>("decided", "Decided");
  f.has<&E::decided_on>("decided_on", "On");
  f.has<&E::decided_why>("decided_why", "Why");
  f.has<&E::look_again_due>("look_again_due", "The day to look again has come");
  f.has<&E::stage>("stage", "Unfinished stage that changes it");
  return "part-evidence";
}

}  // namespace wm::desk
