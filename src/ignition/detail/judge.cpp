#include "ignition/detail/judge.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "evidence/meter_uncertainty.hpp"
#include "ignition/detail/problem.hpp"
#include "ignition/detail/rows.hpp"

namespace wm::ignition::detail {

using describe::AnyQuantity;
using evidence::MeterRange;

namespace {

std::string names_of(const std::vector<MeterRange>& ranges) {
  std::string all;
  for (const MeterRange& r : ranges) all += (all.empty() ? "" : ", ") + r.name;
  return all;
}

bool measures(const MeterRange& range, const AnyQuantity& reading) {
  if (range.full_scale) return range.full_scale->kind == reading.kind;
  if (range.resolution) return range.resolution->kind == reading.kind;
  return true;
}

/// Problems of `conformity` carry its own paths.
Problems moved(Problems problems, const WhatRead& read) {
  for (Problem& p : problems) {
    if (p.path == "lower" || p.path == "upper") {
      p.path = read.limits_path;
    } else if (p.path.starts_with("reading") || p.path == "over_range") {
      p.path = read.path;
    }
  }
  return problems;
}

/// Probes, test leads and ranges belong to an electrical reading; a gap, an angle or a drop of
/// speed has none.
bool makes_sense(evidence::NextStep step, const std::optional<AnyQuantity>& reading) {
  using enum evidence::NextStep;
  using quantity::KindOf;
  if (!reading) return true;
  const bool electrical = reading->kind == KindOf::resistance || reading->kind == KindOf::voltage ||
                          reading->kind == KindOf::current ||
                          reading->kind == KindOf::capacitance ||
                          reading->kind == KindOf::resistance_per_length;
  if (electrical) return true;
  return step == swap_with_sibling || step == other_instrument || step == hold;
}

PartVerdict without_limit(const WhatRead& read) {
  PartVerdict out;
  out.what = read.what;
  out.in_words = std::string(words(out.verdict));
  const bool anything = read.reading || read.over_range;
  out.reason = anything ? std::string(k_no_limit_entered) : "nothing was read";
  out.limit_source = "no limit entered";
  return out;
}

}  // namespace

Result<std::optional<MeterRange>> range_for(const std::vector<MeterRange>& ranges,
                                            std::string_view named,
                                            const std::optional<AnyQuantity>& reading) {
  using Found = std::optional<MeterRange>;
  if (!named.empty()) {
    const auto at = std::find_if(ranges.begin(), ranges.end(),
                                 [&](const MeterRange& r) { return r.name == named; });
    if (at != ranges.end()) return Found{*at};
    return Fail(Kind::not_found, fmt::format("there is no range `{}`", named),
                ranges.empty() ? "ranges to be entered" : names_of(ranges));
  }
  if (ranges.size() == 1 && (!reading || measures(ranges.front(), *reading))) {
    return Found{ranges.front()};
  }
  if (ranges.empty()) return Found{};
  if (!reading) {
    return Fail(Kind::missing, "over-range, but on which of the meter's ranges?", names_of(ranges));
  }
  Found best;
  for (const MeterRange& r : ranges) {
    if (!r.full_scale || !measures(r, *reading)) continue;
    if (r.full_scale->si < std::abs(reading->si) * (1.0 - 1e-9)) continue;
    if (!best || r.full_scale->si < best->full_scale->si) best = r;
  }
  return best;
}

double worst_case(const AnyQuantity& reading, const std::optional<MeterRange>& meter) {
  evidence::MeterUncertaintyInput in;
  in.reading = reading;
  in.meter = meter;
  in.leads = evidence::TestLeads::nulled;
  if (const auto got = evidence::meter_uncertainty(in, {})) return got->worst_case.si;
  return reading.expanded_si.value_or(reading.resolution_si);
}

Checked<PartVerdict> judge(const WhatRead& read, const evidence::Limit& limit, const HowRead& how,
                           const describe::Context& context) {
  if (read.over_range && read.reading) {
    return Fail(Problems{problem(read.path, Kind::conflict, "over-range and a reading as well",
                                 "one of the two: over-range shows no figure")});
  }
  if (!limit.any()) return without_limit(read);
  evidence::ConformityInput c;
  c.reading = read.reading;
  c.over_range = read.over_range;
  c.meter = how.meter;
  c.leads = how.leads;
  c.lead_resistance = how.lead_resistance;
  c.lower = limit.lowest();
  c.upper = limit.highest();
  c.limit_source = limit.source();
  c.guard_from = how.guard_from;
  const auto got = evidence::conformity(c, context);
  if (!got) return Fail(moved(got.error(), read));
  PartVerdict out;
  out.what = read.what;
  out.verdict = got->verdict;
  out.in_words = got->in_words;
  out.reason = got->reason;
  out.limit_source = limit.source().empty() ? "limit entered, source not given" : limit.source();
  for (const evidence::NextStep step : got->do_next) {
    if (makes_sense(step, read.reading)) out.do_next.emplace_back(words(step));
  }
  return out;
}

namespace {

std::string range_in_words(std::string_view low, std::string_view high, std::string_view unit) {
  if (low.empty()) return fmt::format("at most {} {}", high, unit);
  if (high.empty()) return fmt::format("at least {} {}", low, unit);
  if (low == high) return fmt::format("{} {}", low, unit);
  return fmt::format("{} to {} {}", low, high, unit);
}

std::string stands(const std::optional<AnyQuantity>& reading, bool over_range,
                   const Rows::Span& span) {
  if (over_range) return span.high ? "above: over-range" : "over-range";
  if (!reading) return {};
  if (span.low && reading->si < *span.low * (1.0 - 1e-9)) return "below";
  if (span.high && reading->si > *span.high * (1.0 + 1e-9)) return "above";
  return "inside";
}

std::string known_in_words(std::string_view provenance) {
  if (provenance == "memory") return "from memory, unconfirmed";
  if (provenance == "common-practice") return "common practice, no source";
  return std::string(provenance);
}

}  // namespace

std::vector<Figure> figures(const describe::Table* table, std::string_view about,
                            const std::optional<AnyQuantity>& reading, bool over_range) {
  std::vector<Figure> out;
  const Rows rows(table);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows.word(i, "about") != about) continue;
    out.push_back({std::string(rows.word(i, "what")),
                   range_in_words(rows.word(i, "low"), rows.word(i, "high"), rows.word(i, "unit")),
                   stands(reading, over_range, rows.span(i)), known_in_words(rows.provenance(i)),
                   std::string(rows.word(i, "source"))});
  }
  return out;
}

}  // namespace wm::ignition::detail
