#include "evidence/siblings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "evidence/detail/figures.hpp"
#include "statistics/robust.hpp"

namespace wm::evidence {
namespace {

using detail::figure;
constexpr double k_stands_out = 3.5;

bool usable(double u) { return u >= 0.0 && std::isfinite(u); }

std::string siblings_in_words(const SiblingComparison& c, std::size_t n) {
  if (n < 3)
    return fmt::format("{}: {} reading{}, too few to compare", c.label, n, n == 1 ? "" : "s");
  const auto out = std::count_if(c.each.begin(), c.each.end(), [](const SiblingStanding& s) {
    return s.standing == Standing::stands_out;
  });
  if (out == 0)
    return fmt::format(
        "{}: all {} lie within their own scatter about {}. They may all have aged "
        "together.",
        c.label, n, figure(c.median));
  return fmt::format("{}: {} of {} stand{} out from the median {}", c.label, out, n,
                     out == 1 ? "s" : "", figure(c.median));
}

}  // namespace

std::string_view describe(describe::Choices<Standing>& c) {
  c.has(Standing::too_few, "too-few", "too few siblings to compare");
  c.has(Standing::like_others, "like-others", "like its siblings");
  c.has(Standing::stands_out, "stands-out", "stands out from its siblings");
  return "standing";
}

std::string_view describe(describe::Choices<Drift>& c) {
  c.has(Drift::unchanged, "unchanged", "no change that this meter can see");
  c.has(Drift::risen, "risen", "risen since the baseline");
  c.has(Drift::fallen, "fallen", "fallen since the baseline");
  return "drift";
}

Result<SiblingComparison> compare_siblings(std::span<const double> readings, double u,
                                           double least_scale) {
  if (readings.empty())
    return Fail(Kind::missing, "no readings to compare", "a reading of each sibling");
  const bool numbers =
      std::all_of(readings.begin(), readings.end(), [](double v) { return std::isfinite(v); });
  if (!numbers || !usable(u) || !usable(least_scale))
    return Fail(Kind::out_of_bounds, "a reading or its uncertainty is not a usable number",
                "numbers; uncertainty zero or more. Leave an over-range reading out: it is judged "
                "by itself");
  SiblingComparison out;
  out.median = statistics::median(readings);
  out.scale = std::max(
      {statistics::k_mad_to_sd * statistics::median_absolute_deviation(readings), u, least_scale});
  for (const double v : readings) {
    SiblingStanding s;
    s.from_median = v - out.median;
    if (out.scale > 0.0) s.score = s.from_median / out.scale;
    const bool far = out.scale > 0.0 ? std::abs(s.score) > k_stands_out : s.from_median != 0.0;
    if (readings.size() >= 3) s.standing = far ? Standing::stands_out : Standing::like_others;
    out.each.push_back(s);
  }
  out.in_words = siblings_in_words(out, readings.size());
  return out;
}

Result<BaselineComparison> compare_baseline(double now, double u_now, double then, double u_then) {
  if (!std::isfinite(now) || !std::isfinite(then) || !usable(u_now) || !usable(u_then))
    return Fail(Kind::out_of_bounds, "a reading or its uncertainty is not a usable number",
                "numbers; uncertainty zero or more");
  BaselineComparison out;
  out.change = now - then;
  out.u = std::hypot(u_now, u_then);
  out.relative_change = then == 0.0 ? 0.0 : out.change / std::abs(then);
  if (std::abs(out.change) > 2.0 * out.u)
    out.drift = out.change > 0.0 ? Drift::risen : Drift::fallen;
  const char* word = out.drift == Drift::risen    ? "risen by"
                     : out.drift == Drift::fallen ? "fallen by"
                                                  : "no change to be seen:";
  out.in_words =
      fmt::format("{}: {} {} (+-{}, k = 2)", out.label, word,
                  figure(out.drift == Drift::unchanged ? out.change : std::abs(out.change)),
                  figure(2.0 * out.u));
  return out;
}

}  // namespace wm::evidence
