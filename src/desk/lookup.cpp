#include "desk/lookup.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace wm::desk {
namespace {

using describe::Field;
using describe::Shape;
using describe::Type;

/// What may be named, by the word of `refers_to`.
std::vector<std::string> names_of(std::string_view what, const bay::State& state,
                                  const bay::Aircraft* aircraft) {
  std::vector<std::string> names;
  const auto keys = [&](const auto& map) {
    for (const auto& [id, ignored] : map) names.push_back(id);
  };
  if (what == "aircraft") keys(state.aircraft);
  if (what == "part") keys(state.parts);
  if (what == "instrument") keys(state.instruments);
  if (aircraft == nullptr) return names;
  if (what == "counter") keys(aircraft->counters);
  if (what == "position") keys(aircraft->positions);
  if (what == "joint") keys(aircraft->joints);
  if (what == "limit") keys(aircraft->limits);
  if (what == "check") keys(aircraft->checks);
  if (what == "defect") keys(aircraft->defects);
  if (what == "change") keys(aircraft->changes);
  if (what == "stage") keys(aircraft->stages);
  if (what == "entry") keys(aircraft->entries);
  if (what == "hose") keys(aircraft->hoses);
  return names;
}

bool exists(std::string_view what, const std::string& name, const bay::State& state,
            const bay::Aircraft* aircraft) {
  if (what == "aircraft") return state.aircraft.contains(name);
  if (what == "part") return state.parts.contains(name);
  if (what == "instrument") return state.instruments.contains(name);
  if (what == "event") return state.by_id.contains(name);
  if (what == "attachment") return true;  // whoever holds the bytes checks that
  if (aircraft == nullptr) return true;   // the missing aircraft is the problem to name
  if (what == "counter") return aircraft->counters.contains(name);
  if (what == "position") return aircraft->positions.contains(name);
  if (what == "joint") return aircraft->joints.contains(name);
  if (what == "limit") return aircraft->limits.contains(name);
  if (what == "check") return aircraft->checks.contains(name);
  if (what == "defect") return aircraft->defects.contains(name);
  if (what == "change") return aircraft->changes.contains(name);
  if (what == "stage") return aircraft->stages.contains(name);
  if (what == "entry") return aircraft->entries.contains(name);
  if (what == "hose") return aircraft->hoses.contains(name);
  return true;
}

struct Walk {
  const bay::State& state;
  const bay::Aircraft* aircraft;
  Problems problems;

  void text(const Field& field, const std::string& value, const std::string& path) {
    if (value.empty() || exists(field.refers_to, value, state, aircraft)) return;
    const auto names = names_of(field.refers_to, state, aircraft);
    std::string list;
    for (std::size_t i = 0; i < names.size() && i < 8; ++i) list += (i ? ", " : "") + names[i];
    if (names.size() > 8) list += fmt::format(" and {} more", names.size() - 8);
    problems.push_back({Kind::not_found,
                        path,
                        fmt::format("there is no {} `{}`", field.refers_to, value),
                        names.empty() ? "" : "one of: " + list,
                        names.empty() ? "" : names.front(),
                        {},
                        {}});
  }

  void value(const Field& field, const Type& type, const void* at, const std::string& path) {
    switch (type.shape) {
      case Shape::text:
        if (!field.refers_to.empty()) text(field, *static_cast<const std::string*>(at), path);
        break;
      case Shape::record:
        record(type, at, path + "/");
        break;
      case Shape::list:
        for (std::size_t i = 0; i < type.operations.size(at); ++i) {
          value(field, *type.of, type.operations.at(at, i), fmt::format("{}/{}", path, i));
        }
        break;
      case Shape::optional:
        if (const void* inside = type.operations.get(at)) value(field, *type.of, inside, path);
        break;
      case Shape::one_of:
        record(*type.alternatives[type.operations.index(at)].type, type.operations.get(at),
               path + "/");
        break;
      default:
        break;
    }
  }

  void record(const Type& type, const void* at, const std::string& prefix) {
    for (const auto& field : type.fields) {
      value(field, *field.type, describe::value_of(field, at), prefix + field.key);
    }
  }
};

bool is_space(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

/// The name trimmed, its inner blanks one each, ASCII letters small.
std::string folded(std::string_view name) {
  std::string out;
  bool gap = false;
  for (const char c : name) {
    if (is_space(c)) {
      gap = !out.empty();
      continue;
    }
    if (gap) out += ' ';
    gap = false;
    out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return out;
}

}  // namespace

bool is_same_person(std::string_view one, std::string_view other) {
  return folded(one) == folded(other);
}
bool is_blank(std::string_view text) { return std::all_of(text.begin(), text.end(), is_space); }

Problems check_references(const Type& type, const void* value, const bay::State& state) {
  const bay::Aircraft* aircraft = nullptr;
  if (const auto* field = describe::find_field(type, "aircraft");
      field != nullptr && field->type->shape == Shape::text) {
    aircraft =
        state.find_aircraft(*static_cast<const std::string*>(describe::value_of(*field, value)));
  }
  Walk walk{state, aircraft, {}};
  walk.record(type, value, "");
  return std::move(walk.problems);
}

const bay::Aircraft& aircraft_of(const bay::State& state, std::string_view id) {
  return state.aircraft.find(id)->second;
}

Problem problem(Kind kind, std::string path, std::string what, std::string do_next,
                std::string source) {
  return {kind, std::move(path), std::move(what), {}, {}, std::move(do_next), std::move(source)};
}

bool is_short_name(std::string_view text) {
  if (text.empty() || text.size() > 60) return false;
  return std::all_of(text.begin(), text.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
  });
}

std::string say_total(double total, bay::CounterKind kind) {
  return life::say(total, bay::unit_of(kind));
}

Problems check_counters(const bay::Aircraft& aircraft, const std::vector<bay::CounterReading>& at,
                        quantity::Date day, const std::string& path) {
  Problems problems;
  for (std::size_t i = 0; i < at.size(); ++i) {
    const auto where = fmt::format("{}/{}", path, i);
    const auto found = aircraft.counters.find(at[i].counter);
    if (found == aircraft.counters.end()) continue;  // the missing counter is named elsewhere
    const auto& counter = found->second;
    const bool wants_hours = bay::counts_hours(counter.about.kind);
    if (wants_hours != at[i].hours.has_value() || wants_hours == at[i].count.has_value()) {
      problems.push_back({Kind::missing,
                          where + (wants_hours ? "/hours" : "/count"),
                          fmt::format("{} is read {}", counter.about.name,
                                      wants_hours ? "in hours" : "as a count"),
                          wants_hours ? "hours, and no count" : "a count, and no hours",
                          wants_hours ? "1140.6 h" : "812",
                          {},
                          {}});
      continue;
    }
    const double shown =
        wants_hours ? at[i].hours->value.si / 3600.0 : static_cast<double>(*at[i].count);
    // After everything else of that day: a sequence number that no event has yet.
    const auto fits =
        counter.series.check({day, std::numeric_limits<std::int64_t>::max(), shown, false, {}});
    if (fits) continue;
    auto p = fits.error();
    p.path = where + (wants_hours ? "/hours" : "/count");
    if (p.do_next.empty()) {
      p.do_next =
          "If the meter was exchanged, record that first; if a reading was mistyped, correct it.";
    }
    problems.push_back(std::move(p));
  }
  return problems;
}

}  // namespace wm::desk
