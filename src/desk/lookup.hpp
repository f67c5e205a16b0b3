#pragma once
/// Finding things in the state, and saying what is there when they are not.

#include "desk/act.hpp"

namespace wm::desk {

/// Every reference of a described input that leads nowhere: a text field that `refers_to`
/// "position", "part", ... must name one that exists (for most, on the input's own aircraft).
/// Empty texts are left to the field's own rules.
[[nodiscard]] Problems check_references(const describe::Type& type, const void* value,
                                        const bay::State& state);

/// Whether two names as written are one person's: blanks at the ends, how many blanks stand
/// between, and the case of ASCII letters do not matter ("J. Ford" and " j.  ford ").
/// What it can't see: that an initial and a full first name are one person, a nickname, a
/// mistyped letter, accented letters of another case, or that two people bear one name. It helps
/// an honest owner; it does not catch a dishonest one.
[[nodiscard]] bool is_same_person(std::string_view one, std::string_view other);
[[nodiscard]] bool is_blank(std::string_view text);

/// @pre the reference was checked
[[nodiscard]] const bay::Aircraft& aircraft_of(const bay::State& state, std::string_view id);

[[nodiscard]] Problem problem(Kind kind, std::string path, std::string what,
                              std::string do_next = {}, std::string source = {});

/// `base`, or `base-2`, `base-3`, ... until it is free.
template <class Map>
[[nodiscard]] std::string free_name(const Map& taken, const std::string& base) {
  if (!taken.contains(base)) return base;
  for (int n = 2;; ++n) {
    auto candidate = base + "-" + std::to_string(n);
    if (!taken.contains(candidate)) return candidate;
  }
}

/// The name given, or one made from the title; a Problem when the given one is taken or not a
/// short name (letters, digits, dashes).
template <class Map>
[[nodiscard]] Result<std::string> name_for(const Map& taken, const std::string& given,
                                           std::string_view title);
[[nodiscard]] bool is_short_name(std::string_view text);

template <class Map>
Result<std::string> name_for(const Map& taken, const std::string& given, std::string_view title) {
  if (given.empty()) return free_name(taken, bay::short_name(title));
  if (!is_short_name(given)) {
    return Fail(Problem{Kind::bad_text,
                        "id",
                        "`" + given + "` is not a short name",
                        "lower-case letters, digits and dashes, at most 60",
                        "oil-hose-upper",
                        {},
                        {}});
  }
  if (taken.contains(given)) {
    return Fail(Problem{Kind::duplicate,
                        "id",
                        "`" + given + "` is already taken",
                        "a name that is free",
                        free_name(taken, given),
                        {},
                        {}});
  }
  return given;
}

/// "1 140.6 h": hours with one decimal; counts whole.
[[nodiscard]] std::string say_total(double total, bay::CounterKind kind);
/// Whether counter readings fit the series, each with its path; judged in the order in which
/// things happened, so that old logbooks can be entered.
[[nodiscard]] Problems check_counters(const bay::Aircraft& aircraft,
                                      const std::vector<bay::CounterReading>& at,
                                      quantity::Date day, const std::string& path);

}  // namespace wm::desk
