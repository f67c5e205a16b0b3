#include "quantity/detail/terms.hpp"

#include <fmt/core.h>

#include <cmath>

#include "quantity/detail/fold.hpp"
#include "quantity/detail/number.hpp"
#include "quantity/detail/table.hpp"

namespace wm::quantity::detail {
namespace {

/// May a unit end before position `at`? At a blank, before the digits of the next part, or after
/// a foot or inch mark.
bool may_end(std::string_view text, std::size_t at) {
  if (at >= text.size()) return true;
  const char next = text[at];
  const char last = text[at - 1];
  if (last == '\'' || last == '"') return true;
  if (next == ' ') return true;
  return is_digit(next) && !is_digit(last) && last != '/' && last != '^';
}

/// After a unit: the end, or something that looks like another number.
bool next_part_starts(std::string_view text, std::size_t at) {
  while (at < text.size() && text[at] == ' ') ++at;
  return at == text.size() || is_digit(text[at]) || text[at] == '.' || text[at] == '-' ||
         text[at] == '+';
}

struct UnitSpan {
  const Unit* unit{};
  std::size_t used{};
};
/// The longest text at the front that is a unit of this kind.
UnitSpan scan_unit(std::string_view text, KindOf kind) {
  for (std::size_t end = text.size(); end > 0; --end) {
    if (!may_end(text, end) || text[end - 1] == ' ') continue;
    if (const Unit* unit = match(kind, fold_unit(text.substr(0, end)))) return {unit, end};
  }
  return {};
}

/// Up to the number of the next part: what was meant as a unit.
std::string_view unit_run(std::string_view text) {
  std::size_t end = 0;
  while (end < text.size() && !(text[end] == ' ' && end + 1 < text.size() &&
                                (is_digit(text[end + 1]) || text[end + 1] == '.'))) {
    ++end;
  }
  return text.substr(0, end);
}

/// "1/s" and "1/min" start with a digit and are units.
bool starts_reciprocal(std::string_view text) {
  return text.size() > 2 && text.starts_with("1/") && !is_digit(text[2]) && text[2] != ' ';
}

Problem bad(std::string what) { return {Kind::bad_text, {}, std::move(what), {}, {}, {}, {}}; }

struct Term {
  Number number;
  const Unit* unit{};
  std::string_view unit_text;
};

/// Why `next` may not follow `last`; empty when it may.
Problem sequence_problem(const Term& last, const Term& next, std::string_view quoted) {
  const ChainPlace a = chain_place(*last.unit);
  const ChainPlace b = chain_place(*next.unit);
  if (a.chain == 0 || a.chain != b.chain) {
    return bad(fmt::format("`{}`: {} and {} do not go together in one value; use one unit", quoted,
                           last.unit->symbol, next.unit->symbol));
  }
  if (b.place <= a.place) {
    return bad(fmt::format("`{}`: the larger unit comes first, as in `3 ft 4 in`", quoted));
  }
  if (!last.number.whole) {
    return bad(fmt::format("`{}`: only the last part may have a fraction", quoted));
  }
  if (next.number.value * next.unit->factor > last.unit->factor * (1 - 1e-12)) {
    return bad(fmt::format("`{}`: {:g} {} is 1 {} or more; carry it over", quoted,
                           next.number.value, next.unit->symbol, last.unit->symbol));
  }
  return {};
}

Result<Term> read_term(std::string_view rest, std::size_t& at, KindOf kind,
                       std::string_view quoted) {
  if (at > 0 && (rest[at] == '-' || rest[at] == '+')) {
    return Fail(bad(fmt::format("`{}`: a sign may stand only in front", quoted)));
  }
  const auto number = scan_number(rest.substr(at), quoted);
  if (!number) return Fail(number.error());
  const std::string_view digits = rest.substr(at, number->used);
  at += number->used;
  while (at < rest.size() && rest[at] == ' ') ++at;
  if (at == rest.size()) {
    return Fail(bare_number(digits, kind));
  }
  const std::string_view tail = rest.substr(at);
  if (is_digit(tail[0]) && !starts_reciprocal(tail)) {
    return Fail(
        bad(fmt::format("`{}`: a unit must follow `{}`; write numbers without a gap "
                        "between the digits",
                        quoted, digits)));
  }
  const UnitSpan span = scan_unit(tail, kind);
  // "28 psi abs" in a gauge field: psi alone would fit, what was written does not.
  if (span.unit == nullptr || !next_part_starts(tail, span.used)) {
    return Fail(foreign_unit(unit_run(tail), kind, quoted));
  }
  at += span.used;
  return Term{*number, span.unit, tail.substr(0, span.used)};
}

void skip_to_next(std::string_view rest, std::size_t& at) {
  // Drawings write 3'-4 1/2".
  if (at < rest.size() && rest[at] == '-' && rest[at - 1] == '\'') ++at;
  while (at < rest.size() && rest[at] == ' ') ++at;
}

/// Limits that physics sets for every field.
Problem bounds_problem(double& si, KindOf kind, std::string_view quoted) {
  const bool from_zero = kind == KindOf::temperature || kind == KindOf::pressure_absolute;
  if (!std::isfinite(si)) return {Kind::out_of_bounds, {}, "this is too large", {}, {}, {}, {}};
  if (!from_zero || si >= 0) return {};
  if (kind == KindOf::temperature) {
    if (si > -1e-9) {
      si = 0;  // -459.67 degF, after rounding
      return {};
    }
    return {Kind::out_of_bounds,
            {},
            fmt::format("`{}` is below absolute zero", quoted),
            "-273.15 degC (-459.67 degF) or more",
            {},
            {},
            {}};
  }
  return {Kind::out_of_bounds,
          {},
          fmt::format("`{}` is below zero, which an absolute pressure cannot be", quoted),
          "zero or more",
          {},
          "if this is a gauge reading, add the ambient pressure",
          {}};
}

}  // namespace

Result<Parsed> read_terms(std::string_view folded, KindOf kind, std::string_view quoted) {
  if (Problem p = separator_problem(folded, quoted); !p.what.empty()) {
    return Fail(with_example(std::move(p), kind));
  }
  std::string_view rest = folded;
  const bool minus = rest.starts_with('-');
  if (minus || rest.starts_with('+')) rest.remove_prefix(1);
  while (rest.starts_with(' ')) rest.remove_prefix(1);

  double si = 0;
  Parsed out;
  Term last;
  for (std::size_t at = 0; at < rest.size() || last.unit == nullptr;) {
    auto term = read_term(rest, at, kind, quoted);
    if (!term) return Fail(with_example(term.error(), kind));
    if (last.unit != nullptr) {
      if (Problem p = sequence_problem(last, *term, quoted); !p.what.empty()) {
        return Fail(with_example(std::move(p), kind));
      }
    } else {
      out.unit = term->unit->symbol;
    }
    last = *term;
    si += last.number.value * last.unit->factor;
    out.resolution_si = last.number.resolution * last.unit->factor;
    skip_to_next(rest, at);
  }
  out.si = (minus ? -si : si) + last.unit->offset;
  if (Problem p = bounds_problem(out.si, kind, quoted); !p.what.empty()) {
    return Fail(with_example(std::move(p), kind));
  }
  return out;
}

}  // namespace wm::quantity::detail
