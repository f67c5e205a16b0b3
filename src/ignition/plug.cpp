#include "ignition/plug.hpp"

#include <fmt/core.h>

#include <algorithm>

#include "ignition/detail/judge.hpp"
#include "ignition/detail/problem.hpp"
#include "ignition/lead_map.hpp"

namespace wm::ignition {
namespace {

using detail::problem;
using evidence::Verdict;

constexpr std::string_view k_look_source = "AC 43.13-1B CHG 1, par. 8-17 and figs. 8-6, 8-7";

struct Seen {
  Verdict verdict{Verdict::not_tested};
  std::string_view reason;
  std::string_view do_next;
};

Seen rejected(std::string_view reason) {
  return {Verdict::does_not_conform, reason, "renew the plug"};
}

/// What a look means. Rejected is only what the AC names as a reason to reject.
Seen meaning(PlugLook look) {
  switch (look) {
    case PlugLook::not_looked:
      return {Verdict::not_tested, "nobody has looked at it", "look at nose, well, threads, seat"};
    case PlugLook::normal:
      return {Verdict::conforms, "nothing of what is rejected was seen", {}};
    case PlugLook::dry_soot:
      return {Verdict::undecided, "black and dry: rich, or weak use at idle",
              "clean it, look at the mixture, look again after the next flights"};
    case PlugLook::wet_oil:
      return {Verdict::undecided, "black and wet: oil past rings or guides",
              "clean it, look at its cylinder's compression, look again"};
    case PlugLook::lead_beads:
      return {Verdict::undecided, "beads of lead",
              "clean it and read it again; lean at idle as the engine's manual allows"};
    case PlugLook::worn_electrodes:
      return rejected("worn electrodes");
    case PlugLook::cracked_ceramic:
      return rejected("cracked or chipped ceramic");
    case PlugLook::damaged_thread:
      return rejected("damaged threads or barrel");
    case PlugLook::corroded_seat:
      return rejected("corroded seat");
    case PlugLook::well_flashover:
      return rejected("flashover in the well");
  }
  return {};
}

PartVerdict looked_at(const PlugReading& plug) {
  const Seen seen = meaning(plug.look);
  PartVerdict v;
  v.what = plug.name + ", look";
  v.verdict = seen.verdict;
  v.in_words = std::string(words(seen.verdict));
  v.reason = std::string(seen.reason);
  v.limit_source = std::string(k_look_source);
  if (!seen.do_next.empty()) v.do_next.emplace_back(seen.do_next);
  // Advice of the trade: it can hold a plug back, it is no limit.
  const auto hold = [&](const char* why) {
    if (v.verdict == Verdict::conforms || v.verdict == Verdict::not_tested) {
      v.verdict = Verdict::undecided;
      v.in_words = std::string(words(v.verdict));
      v.reason = why;
      v.limit_source = "maintenance texts, secondary source: advice";
    }
    v.do_next.emplace_back(why);
  };
  if (plug.dropped) hold("dropped: treated as cracked by the trade (secondary source)");
  if (plug.half_worn) {
    hold("an electrode at half its original size: renewed by the trade (secondary source)");
  }
  return v;
}

class Plugs {
 public:
  Plugs(const PlugCheckInput& in, const describe::Context& context) : in_(in), context_(context) {}

  Checked<PlugCheckAnswer> run() {
    if (in_.plugs.empty() && in_.firing_order.empty()) {
      problems_.push_back(problem("plugs", Kind::missing, "no plug",
                                  "at least one plug, or the "
                                  "firing order for a rotation"));
    }
    for (std::size_t i = 0; i < in_.plugs.size(); ++i) plug(i);
    rotate();
    if (!problems_.empty()) return Fail(std::move(problems_));
    conclude();
    return std::move(out_);
  }

 private:
  static std::string path(std::size_t i, std::string_view field) {
    return fmt::format("plugs/{}/{}", i, field);
  }

  void add(const Problems& problems) {
    for (const Problem& p : problems) {
      if (std::find(problems_.begin(), problems_.end(), p) == problems_.end()) {
        problems_.push_back(p);
      }
    }
  }

  void plug(std::size_t i) {
    const PlugReading& p = in_.plugs[i];
    PlugAnswer a;
    a.name = p.name;
    a.gap = gap(i, a.figures);
    a.resistor = ohms(i, {"resistor", &p.resistor, p.resistor_over_range, &p.resistor_range},
                      {std::nullopt, in_.resistor_highest});
    if (p.resistor_over_range && !in_.resistor_highest) open(a.resistor);
    a.insulation =
        ohms(i, {"insulation", &p.insulation, p.insulation_over_range, &p.insulation_range},
             {in_.insulation_least, std::nullopt});
    say_insulation(p, a.insulation);
    a.look = looked_at(p);
    const auto more = detail::figures(context_.table("plug-figures"), "resistor",
                                      detail::any(p.resistor), p.resistor_over_range);
    a.figures.insert(a.figures.end(), more.begin(), more.end());
    out_.plugs.push_back(std::move(a));
  }

  /// Each gap is judged; the worst one counts.
  PartVerdict gap(std::size_t i, std::vector<Figure>& figures) {
    const PlugReading& p = in_.plugs[i];
    const auto limit = detail::entered(in_.gap_lowest, in_.gap_highest, in_.limit_source);
    std::vector<PartVerdict> all;
    for (std::size_t g = 0; g < p.gaps.size(); ++g) {
      auto reading = detail::any(p.gaps[g]);
      // A wire that enters and the next that does not: half the step between them.
      if (in_.gauge_step && !reading.expanded_si) {
        reading.expanded_si = in_.gauge_step->value.si / 2.0;
      }
      detail::WhatRead read{p.name + ", gap", reading, false, fmt::format("plugs/{}/gaps/{}", i, g),
                            "gap_lowest"};
      auto got = detail::judge(read, limit, {}, context_);
      if (!got) {
        add(got.error());
        continue;
      }
      all.push_back(std::move(*got));
      const auto more = detail::figures(context_.table("plug-figures"), "gap", reading);
      figures.insert(figures.end(), more.begin(), more.end());
      const auto bench = detail::figures(context_.table("plug-figures"), "bench test", reading);
      for (const Figure& f : bench) {
        if (f.stands == "above") figures.push_back(f);
      }
    }
    const auto at = std::find_if(all.begin(), all.end(),
                                 [&](const PartVerdict& v) { return v.verdict == worst(all); });
    if (at != all.end()) return *at;
    PartVerdict none;
    none.what = p.name + ", gap";
    none.in_words = std::string(words(none.verdict));
    none.reason = "no gap was read";
    return none;
  }

  struct OhmReading {
    std::string_view key;
    const std::optional<MeasuredResistance>* reading{};
    bool over_range{};
    const std::string* range{};
  };
  struct OhmLimits {
    std::optional<EnteredResistance> lowest, highest;
  };

  PartVerdict ohms(std::size_t i, const OhmReading& r, const OhmLimits& limits) {
    detail::HowRead how;
    how.leads = in_.test_leads;
    how.lead_resistance = detail::any(in_.test_lead_resistance);
    if (*r.reading || r.over_range) {
      auto meter = detail::range_for(in_.ranges, *r.range, detail::any(*r.reading));
      if (!meter) {
        Problem p = meter.error();
        p.path = path(i, std::string(r.key) + "_range");
        add({std::move(p)});
        return {};
      }
      how.meter = *meter;
    }
    detail::WhatRead read{fmt::format("{}, {}", in_.plugs[i].name, r.key), detail::any(*r.reading),
                          r.over_range, path(i, r.key),
                          r.key == "resistor" ? "resistor_highest" : "insulation_least"};
    auto got = detail::judge(read, detail::entered(limits.lowest, limits.highest, in_.limit_source),
                             how, context_);
    if (got) return std::move(*got);
    add(got.error());
    return {};
  }

  static void open(PartVerdict& v) {
    v.verdict = Verdict::does_not_conform;
    v.in_words = "does not conform (open)";
    v.reason = "over-range: the resistor is open. It may still spark by jumping the break";
    v.do_next = {"repeat on the highest range, probe firmly on the well contact; renew the plug"};
  }

  void say_insulation(const PlugReading& p, PartVerdict& v) const {
    if (in_.insulation_least) return;
    if (p.insulation_over_range) {
      v.reason = "over-range, as is expected (common practice, no source)";
    } else if (p.insulation) {
      v.reason =
          "a finite reading from centre to shell: fouled or cracked (common practice, no source)";
      v.do_next.emplace_back("clean and dry it and read it again");
    }
  }

  void rotate() {
    if (in_.firing_order.empty()) return;
    auto moves = plug_rotation(in_.firing_order, in_.spark_from);
    if (!moves) {
      Problem p = moves.error();
      p.path = "firing_order";
      add({std::move(p)});
      return;
    }
    out_.rotation = std::move(*moves);
    const auto order = firing_order(in_.firing_order);
    const bool odd = order && order->size() % 2 == 1;
    out_.rotation_in_words =
        in_.spark_from == SparkFrom::double_ended_coil
            ? "each plug to the other tower's cylinder of its coil, top and bottom changed: the "
              "spark's polarity turns over"
        : odd ? "each plug to the next cylinder in the firing order, top and bottom changed; with "
                "an odd number of cylinders a magneto has no fixed polarity for a cylinder"
              : "each plug to the next cylinder in the firing order, top and bottom changed: the "
                "spark's polarity turns over";
    out_.notes.emplace_back(
        "rotation: common practice, no source; the engine's manual goes first. Keep plugs of "
        "different kinds for top and bottom in their own places, and use a new or annealed gasket");
  }

  void conclude() {
    std::vector<PartVerdict> all;
    for (const PlugAnswer& a : out_.plugs) {
      all.push_back(a.gap);
      all.push_back(a.resistor);
      all.push_back(a.look);
      if (in_.insulation_least) all.push_back(a.insulation);
    }
    out_.verdict = worst(all);
    out_.in_words = fmt::format("{}: gap, resistor and look of {} plugs", words(out_.verdict),
                                out_.plugs.size());
    out_.notes.emplace_back(
        "a plug that reads well can still miss under pressure: a bench test "
        "under pressure is the test of its insulation");
  }

  const PlugCheckInput& in_;
  const describe::Context& context_;
  Problems problems_;
  PlugCheckAnswer out_;
};

}  // namespace

Result<std::vector<PlugMove>> plug_rotation(std::string_view order_text, SparkFrom from) {
  const auto order = firing_order(order_text);
  if (!order) return Fail(order.error());
  const std::size_t n = order->size();
  if (from == SparkFrom::double_ended_coil && n % 2 == 1) {
    return Fail(Kind::not_applicable,
                "double-ended coils pair the cylinders: an odd number has no "
                "pairs",
                "an even number of cylinders", "1-3-2-4");
  }
  const std::size_t step = from == SparkFrom::double_ended_coil ? n / 2 : 1;
  std::vector<PlugMove> moves;
  for (std::size_t i = 0; i < n; ++i) {
    const int here = (*order)[i];
    const int there = (*order)[(i + step) % n];
    moves.push_back({fmt::format("{} top", here), fmt::format("{} bottom", there)});
    moves.push_back({fmt::format("{} bottom", here), fmt::format("{} top", there)});
  }
  return moves;
}

Checked<PlugCheckAnswer> plug_check(const PlugCheckInput& in, const describe::Context& context) {
  return Plugs(in, context).run();
}

}  // namespace wm::ignition
