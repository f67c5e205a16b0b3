#include "staging/rules.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace wm::staging {
namespace {

constexpr const char* k_dual_source =
    "dual maintenance: 14 CFR 121.374(c)(2), AC 120-42B, carried over to a single engine (derived)";

bool contains(const std::vector<std::string>& list, const std::string& item) {
  return std::find(list.begin(), list.end(), item) != list.end();
}
bool renews(const ChangeFacts& c) { return c.disturbance >= Disturbance::renewed; }
bool disturbs(const ChangeFacts& c) { return c.disturbance >= Disturbance::adjusted; }

bool halves_of_a_pair(const ChangeFacts& a, const ChangeFacts& b) {
  return (!a.redundant_with.empty() && a.redundant_with == b.position) ||
         (!b.redundant_with.empty() && b.redundant_with == a.position);
}

void check_pairs(const StageFacts& stage, std::vector<Objection>& out) {
  for (std::size_t i = 0; i < stage.changes.size(); ++i) {
    for (std::size_t k = i + 1; k < stage.changes.size(); ++k) {
      const auto& a = stage.changes[i];
      const auto& b = stage.changes[k];
      if (!halves_of_a_pair(a, b) || !disturbs(a) || !disturbs(b)) continue;
      if (renews(a) && renews(b)) {
        out.push_back({Rule::pair_renewed,
                       {a.id, b.id},
                       fmt::format("\"{}\" and \"{}\" renew both halves of one redundant pair: the "
                                   "same mistake made twice would take away both.",
                                   a.title, b.title),
                       "Put them into two stages; or record an independent inspection by a second "
                       "person; or override it in writing.",
                       k_dual_source,
                       {true, false, true}});
      } else {
        out.push_back({Rule::pair_opened,
                       {a.id, b.id},
                       fmt::format("\"{}\" and \"{}\" disturb both halves of one redundant pair.",
                                   a.title, b.title),
                       "Prove each half by itself (for ignition: a ground run on each side alone) "
                       "and record it; or record an independent inspection; or override it.",
                       k_dual_source,
                       {true, true, true}});
      }
    }
  }
}

void check_ignition_with_fuel(const StageFacts& stage, std::vector<Objection>& out) {
  const auto find = [&](auto wanted) {
    return std::find_if(stage.changes.begin(), stage.changes.end(), wanted);
  };
  const auto ignition = find([](const ChangeFacts& c) { return c.ignition && renews(c); });
  const auto fuel = find([](const ChangeFacts& c) { return c.fuel && renews(c); });
  if (ignition == stage.changes.end() || fuel == stage.changes.end()) return;
  std::vector<std::string> ids;
  for (const auto& c : stage.changes) {
    if ((c.ignition || c.fuel) && renews(c)) ids.push_back(c.id);
  }
  out.push_back({Rule::ignition_with_fuel,
                 std::move(ids),
                 fmt::format("\"{}\" changes the ignition and \"{}\" the fuel in one stage: rough "
                             "running after it could come from either, and nothing would tell "
                             "them apart.",
                             ignition->title, fuel->title),
                 "Put them into two stages with a flight between; or record an independent "
                 "inspection; or override it in writing.",
                 "symptoms indistinguishable: derived from the dual-maintenance rule",
                 {true, false, true}});
}

void check_order(const StageFacts& stage, std::vector<Objection>& out) {
  const auto in_stage = [&](const std::string& id) {
    return std::any_of(stage.changes.begin(), stage.changes.end(),
                       [&](const ChangeFacts& c) { return c.id == id; });
  };
  for (const auto& c : stage.changes) {
    for (const auto& first : c.after) {
      if (contains(stage.done_before, first) || in_stage(first)) continue;
      out.push_back({Rule::order,
                     {c.id, first},
                     fmt::format("\"{}\" comes after \"{}\", which is in no earlier stage and not "
                                 "done.",
                                 c.title, first),
                     "Put the first one into this stage or an earlier one.",
                     "order given by the owner",
                     {}});
    }
    for (const auto& mate : c.together) {
      if (in_stage(mate)) continue;
      out.push_back({Rule::together,
                     {c.id, mate},
                     fmt::format("\"{}\" must go into the air together with \"{}\", which is not "
                                 "in this stage.",
                                 c.title, mate),
                     "Put both into one stage.",
                     "given by the owner",
                     {}});
    }
  }
}

void check_isolators(const StageFacts& stage, std::vector<Objection>& out) {
  const bool here = std::any_of(stage.changes.begin(), stage.changes.end(),
                                [](const ChangeFacts& c) { return c.mount_isolators; });
  for (const auto& c : stage.changes) {
    if (!c.needs_settled_engine) continue;
    for (const auto& [id, title] : stage.isolators_pending) {
      if (here) continue;
      out.push_back(
          {Rule::isolators_first,
           {c.id, id},
           fmt::format("\"{}\" needs the engine where it will stay, but \"{}\" is still to "
                       "come and the engine will settle on the new isolators.",
                       c.title, title),
           "Renew the isolators first, let the engine settle, then rig and measure.",
           "common practice, no source",
           {}});
    }
  }
}

}  // namespace

std::string word(Rule rule) {
  switch (rule) {
    case Rule::pair_renewed:
      return "pair-renewed";
    case Rule::pair_opened:
      return "pair-opened";
    case Rule::ignition_with_fuel:
      return "ignition-with-fuel";
    case Rule::order:
      return "order";
    case Rule::together:
      return "together";
    case Rule::isolators_first:
      return "isolators-first";
  }
  return "order";
}

std::vector<Objection> check(const StageFacts& stage) {
  std::vector<Objection> out;
  check_pairs(stage, out);
  check_ignition_with_fuel(stage, out);
  check_order(stage, out);
  check_isolators(stage, out);
  return out;
}

}  // namespace wm::staging
