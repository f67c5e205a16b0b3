#include <fmt/core.h>

#include <cmath>

#include "quantity/detail/fold.hpp"
#include "quantity/detail/number.hpp"
#include "quantity/detail/terms.hpp"
#include "quantity/text.hpp"

namespace wm::quantity {
namespace {

constexpr std::string_view k_plus_minus = "+-";

/// Folded, with every way of writing "plus or minus" as "+-".
std::string folded_measured(std::string_view text) {
  std::string out = detail::fold(text);
  for (const std::string_view other : {"+/-", "-/+", "+ -"}) {
    for (std::size_t at = out.find(other); at != std::string::npos; at = out.find(other)) {
      out.replace(at, other.size(), k_plus_minus);
    }
  }
  // The standard's own form "(85.2 +- 0.7) ohm" is the one with the unit at the end.
  const std::size_t close = out.find(')');
  const std::size_t sign = out.find(k_plus_minus);
  if (out.starts_with('(') && sign != std::string::npos && close != std::string::npos &&
      close > sign) {
    out = out.substr(1, close - 1) + " " + out.substr(close + 1);
  }
  return std::string(detail::trim(out));
}

/// What follows the first number, e.g. " ohm"; empty for a bare number.
std::string_view after_number(std::string_view folded) {
  if (folded.starts_with('-') || folded.starts_with('+')) folded.remove_prefix(1);
  folded = detail::trim(folded);
  const auto number = detail::scan_number(folded, folded);
  if (!number) return folded;
  return detail::trim(folded.substr(number->used));
}

KindOf kind_of_uncertainty(KindOf kind) {
  switch (kind) {
    case KindOf::temperature:
      return KindOf::temperature_difference;
    case KindOf::pressure_gauge:
    case KindOf::pressure_absolute:
      return KindOf::pressure_difference;
    default:
      return kind;
  }
}

/// "0.5 psi", but also "0.5 psig" beside a gauge pressure.
Result<Parsed> read_uncertainty(std::string_view text, KindOf kind, std::string_view quoted) {
  auto read = detail::read_terms(text, kind_of_uncertainty(kind), quoted);
  if (read || kind == KindOf::temperature) return read;
  auto same = detail::read_terms(text, kind, quoted);
  return same ? same : read;
}

bool is_relative(std::string_view right, KindOf kind) {
  return kind != KindOf::fraction && right.ends_with('%');
}

Result<Parsed> relative_uncertainty(std::string_view right, const Parsed& value, KindOf kind,
                                    std::string_view quoted) {
  if (kind == KindOf::temperature) {
    return Fail(detail::with_example(
        {Kind::bad_text,
         {},
         fmt::format("`{}`: a temperature has no uncertainty in per cent; write it in degrees",
                     quoted),
         {},
         "15 degC +- 2 degC",
         {},
         {}},
        kind));
  }
  const auto share = detail::read_terms(right, KindOf::fraction, quoted);
  if (!share) return Fail(share.error());
  const double size = std::abs(value.si);
  return Parsed{share->si * size, share->resolution_si * size, value.unit};
}

}  // namespace

Result<Parsed> parse(std::string_view text, KindOf kind) {
  const auto shown = detail::presentable(text);
  if (!shown) return Fail(detail::with_example(shown.error(), kind));
  const std::string folded = folded_measured(*shown);
  if (folded.find(k_plus_minus) != std::string::npos) {
    return Fail(detail::with_example(
        {Kind::bad_text,
         {},
         fmt::format("`{}` has an uncertainty; this field takes a value alone", *shown),
         {},
         {},
         {},
         {}},
        kind));
  }
  return detail::read_terms(folded, kind, *shown);
}

Result<ParsedMeasured> parse_measured(std::string_view text, KindOf kind) {
  const auto shown = detail::presentable(text);
  if (!shown) return Fail(detail::with_example(shown.error(), kind));
  const std::string_view quoted = *shown;
  const std::string folded = folded_measured(quoted);
  const std::size_t sign = folded.find(k_plus_minus);
  if (sign == std::string::npos) {
    auto value = detail::read_terms(folded, kind, quoted);
    if (!value) return Fail(value.error());
    return ParsedMeasured{*value, std::nullopt};
  }
  const auto refuse = [&](Kind what_kind, std::string_view why) {
    return Fail(detail::with_example(
        {what_kind, {}, fmt::format("`{}`: {}", quoted, why), {}, {}, {}, {}}, kind));
  };
  if (Problem p = detail::separator_problem(folded, quoted); !p.what.empty()) {
    return Fail(detail::with_example(std::move(p), kind));
  }
  std::string left(detail::trim(std::string_view(folded).substr(0, sign)));
  const std::string_view right =
      detail::trim(std::string_view(folded).substr(sign + k_plus_minus.size()));
  if (right.find(k_plus_minus) != std::string_view::npos) {
    return refuse(Kind::bad_text, "only one +- may stand in a value");
  }
  if (left.empty()) return refuse(Kind::bad_text, "a value must stand before +-");
  if (right.empty()) return refuse(Kind::bad_text, "an uncertainty must follow +-");
  if (right.starts_with('-') || right.starts_with('+')) {
    return refuse(Kind::bad_text, "an uncertainty has no sign of its own");
  }
  const bool relative = is_relative(right, kind);
  if (!relative && after_number(left).empty()) {
    left += ' ';
    left += after_number(right);
  }
  const auto value = detail::read_terms(left, kind, quoted);
  if (!value) return Fail(value.error());
  const auto expanded = relative ? relative_uncertainty(right, *value, kind, quoted)
                                 : read_uncertainty(right, kind, quoted);
  if (!expanded) return Fail(expanded.error());
  if (!(expanded->si > 0)) {
    return refuse(Kind::out_of_bounds,
                  "an uncertainty must be more than zero; leave it out where it is not known");
  }
  return ParsedMeasured{*value, *expanded};
}

}  // namespace wm::quantity
