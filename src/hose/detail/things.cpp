#include "hose/detail/things.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "hose/detail/say.hpp"
#include "hose/supports.hpp"

namespace wm::hose::detail {
namespace {

using quantity::Length;

constexpr int k_clear_steps = 24;              // of the window, when it is searched
constexpr double k_wiring = 6 * 0.0254;        // AC 43.13-1B par. 11-96
constexpr double k_wiring_least = 2 * 0.0254;  // the same, where 6 in is impossible

/// The thing that lacks most of its distance at this length, and how much; 0 or more: all kept.
std::pair<double, std::size_t> lacks(Clearances& clear, const std::vector<Thing>& things,
                                     double length, bool afresh) {
  const auto found = clear.at(length, afresh, false);
  if (found.looked_at == 0) return {-1.0, 0};
  double least = std::numeric_limits<double>::infinity();
  std::size_t which = 0;
  for (std::size_t i = 0; i < things.size(); ++i) {
    const double over = found.least[i].clear - things[i].apart.needed;
    if (over < least) {
      least = over;
      which = i;
    }
  }
  return {least, which};
}

}  // namespace

std::vector<Thing> things_of(const HoseLengthInput& in, const Reach& ends,
                             const describe::Context& context, Problems& problems) {
  std::vector<Thing> out;
  for (std::size_t i = 0; i < in.keep_outs.size(); ++i) {
    const auto& keep = in.keep_outs[i];
    const auto path = fmt::format("keep_outs/{}", i);
    if (!keep.needed && keep.beside != Beside::wiring) {
      problems.push_back({Kind::missing,
                          path + "/needed",
                          fmt::format("no document gives the distance from {}", keep.name),
                          "the distance that the maker's manual or you ask for",
                          {},
                          {},
                          {}});
      continue;
    }
    auto solid = solid_of(keep, path, context, problems);
    if (!solid) continue;
    if (auto around = around_an_end(keep, *solid, ends, in.outside_diameter.value.si, path)) {
      problems.push_back(std::move(*around));
      continue;
    }
    out.push_back({keep.name,
                   keep.beside,
                   {std::move(*solid), keep.needed ? keep.needed->value.si : k_wiring}});
  }
  return out;
}

NearThing told(const Thing& thing, const Clearance& found, std::size_t which,
               const quantity::Unit& unit) {
  NearThing near;
  near.name = thing.name;
  near.needed = Length{thing.apart.needed};
  const Gap& worst = found.least[which];
  const std::string left_out = found.left_out();
  if (found.looked_at == 0) {
    near.words = fmt::format("distance from {}: not judged {}", thing.name, left_out);
    return near;
  }
  near.gap = Length{worst.clear};
  near.at = Length{worst.station};
  const bool keeps = worst.clear >= thing.apart.needed;
  near.words = worst.clear < 0
                   ? fmt::format("runs through {}", thing.name)
                   : fmt::format("{} from {}, {} needed: {}", say(worst.clear, unit), thing.name,
                                 say(thing.apart.needed, unit), keeps ? "kept" : "too near");
  if (!keeps && found.as_drawn[which].clear >= thing.apart.needed)
    near.words += found.any_side ? ", where it bows to another side than drawn"
                                 : ", where it lies in another way than drawn";
  if (!left_out.empty())
    near.words += fmt::format("{}; not judged {}", keeps ? " where looked at" : "", left_out);
  if (!keeps && thing.beside == Beside::wiring && worst.clear >= k_wiring_least)
    near.words +=
        "; under 6 in only where it is not possible otherwise, closely clamped (AC 43.13-1B par. "
        "11-96)";
  return near;
}

Kept keeps_away(Clearances& clear, const std::vector<Thing>& things, double from, double to,
                double best, const describe::Context& context) {
  Kept out;
  std::vector<double> at;
  std::vector<std::pair<double, std::size_t>> over;
  for (int i = 0; i <= k_clear_steps; ++i) {
    if (!context.go_on(static_cast<double>(i) / k_clear_steps)) {
      out.stopped = true;
      return out;
    }
    at.push_back(from + (to - from) * i / k_clear_steps);
    over.push_back(lacks(clear, things, at.back(), true));
  }
  std::optional<std::size_t> start;
  for (std::size_t i = 0; i < at.size(); ++i) {
    if (over[i].first < 0) continue;
    if (!start || std::abs(at[i] - best) < std::abs(at[*start] - best)) start = i;
  }
  if (!start) {
    // One thing may bind the short lengths and another the long ones.
    for (std::size_t i = 0; i < things.size(); ++i) {
      if (std::none_of(over.begin(), over.end(), [i](const auto& o) { return o.second == i; }))
        continue;
      out.binds_long += (out.binds_long.empty() ? "" : " and ") + things[i].name;
    }
    return out;
  }
  out.any = true;
  std::size_t low = *start, high = *start;
  while (low > 0 && over[low - 1].first >= 0) --low;
  while (high + 1 < at.size() && over[high + 1].first >= 0) ++high;
  const auto edge = [&](double kept, double lost) {
    for (int i = 0; i < 20; ++i) {
      const double middle = 0.5 * (kept + lost);
      (lacks(clear, things, middle, false).first >= 0 ? kept : lost) = middle;
    }
    return kept;
  };
  out.shortest = low > 0 ? edge(at[low], at[low - 1]) : from;
  out.longest = high + 1 < at.size() ? edge(at[high], at[high + 1]) : to;
  if (low > 0) out.binds_short = things[over[low - 1].second].name;
  if (high + 1 < at.size()) out.binds_long = things[over[high + 1].second].name;
  return out;
}

}  // namespace wm::hose::detail
