// What to say about a unit that does not belong to the field.
#include <fmt/core.h>

#include "quantity/detail/fold.hpp"
#include "quantity/detail/number.hpp"
#include "quantity/detail/table.hpp"
#include "quantity/detail/terms.hpp"

namespace wm::quantity::detail {
namespace {

bool is_pressure(KindOf kind) {
  return kind == KindOf::pressure_gauge || kind == KindOf::pressure_absolute ||
         kind == KindOf::pressure_difference;
}

/// What a mechanic calls a value with this unit. Several kinds may share it: plain psi is "a
/// pressure", only psig and psia say which.
std::string_view what_it_is(KindOf first, std::string_view unit) {
  const bool any_pressure = match(KindOf::pressure_gauge, unit) != nullptr &&
                            match(KindOf::pressure_absolute, unit) != nullptr;
  return any_pressure ? "a pressure" : info(first).words;
}

std::string_view pressure_advice(KindOf needed) {
  switch (needed) {
    case KindOf::pressure_gauge:
      return "take the ambient pressure off (gauge = absolute - ambient), or write the reading of "
             "the gauge";
    case KindOf::pressure_absolute:
      return "add the ambient pressure (absolute = gauge + ambient)";
    default:
      return "write the difference of two pressures without a, abs, g or gauge behind the unit";
  }
}

std::string_view general_advice(std::string_view folded) {
  if (folded.find(':') != std::string_view::npos) return "write 2 h 30 min, not 2:30 h";
  return "";
}

}  // namespace

Problem with_example(Problem problem, KindOf kind) {
  const KindInfo& k = info(kind);
  if (problem.expected.empty()) {
    problem.expected = fmt::format("{} in one of: {}", k.words, symbols_of(kind));
  }
  if (problem.example.empty()) problem.example = k.example;
  return problem;
}

Problem bare_number(std::string_view number, KindOf kind) {
  const KindInfo& k = info(kind);
  return with_example(
      {Kind::bad_text,
       {},
       fmt::format("`{}` has no unit; {} is needed, e.g. `{}`", number, k.words, k.example),
       {},
       {},
       {},
       {}},
      kind);
}

Problem foreign_unit(std::string_view unit_text, KindOf kind, std::string_view quoted) {
  const std::string unit = fold_unit(unit_text);
  const KindInfo& needed = info(kind);
  for (const KindInfo& other : all_kinds()) {
    if (other.kind == kind || match(other.kind, unit) == nullptr) continue;
    Problem p{
        Kind::wrong_dimension,
        {},
        fmt::format("`{}` is {}, {} is needed", quoted, what_it_is(other.kind, unit), needed.words),
        {},
        {},
        {},
        {}};
    if (is_pressure(other.kind) && is_pressure(kind)) p.do_next = pressure_advice(kind);
    return with_example(std::move(p), kind);
  }
  Problem p{Kind::bad_text, {}, {}, {}, {}, std::string(general_advice(unit)), {}};
  if (unit.empty()) {
    p.what = fmt::format("`{}` has no unit that can be read; {} is needed, e.g. `{}`", quoted,
                         needed.words, needed.example);
  } else if (const Unit* guess = nearest(kind, unit); guess != nullptr) {
    p.what = fmt::format("`{}`: `{}` is not a unit known here; the nearest is `{}`", quoted,
                         trim(unit_text), guess->symbol);
  } else {
    p.what = fmt::format("`{}`: `{}` is not a unit known here; {} may be in {}", quoted,
                         trim(unit_text), needed.words, symbols_of(kind));
  }
  return with_example(std::move(p), kind);
}

}  // namespace wm::quantity::detail
