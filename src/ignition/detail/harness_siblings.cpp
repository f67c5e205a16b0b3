#include "ignition/detail/harness_siblings.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

#include "evidence/siblings.hpp"
#include "ignition/detail/judge.hpp"
#include "ignition/detail/rows.hpp"
#include "quantity/as_typed.hpp"
#include "statistics/robust.hpp"
#include "statistics/trend.hpp"

namespace wm::ignition::detail {
namespace {

using evidence::Standing;
using quantity::pencil;

/// With four leads one odd one spoils half of all slopes.
constexpr std::size_t k_fewest_for_a_line = 5;
constexpr std::size_t k_fewest_lengths = 3;

struct Point {
  std::size_t lead{};
  double length{};  ///< 0: not known
  double ohm{};
  double u{};         ///< standard uncertainty of the reading
  double u_length{};  ///< of the length
};

struct Line {
  double slope{};
  double ends{};
};

std::vector<Point> points_of(const HarnessCheckInput& in) {
  std::vector<Point> points;
  for (std::size_t i = 0; i < in.leads.size(); ++i) {
    const HarnessLead& lead = in.leads[i];
    if (!lead.reading) continue;
    Point p;
    p.lead = i;
    p.ohm = lead.reading->value.si;
    const auto reading = any(*lead.reading);
    const auto meter = range_for(in.ranges, lead.range, reading);
    p.u = worst_case(reading, meter ? *meter : std::optional<evidence::MeterRange>{}) /
          std::numbers::sqrt3;
    if (lead.length) {
      p.length = lead.length->value.si;
      p.u_length = lead.length->expanded_si.value_or(0.0) / 2.0;
    }
    points.push_back(p);
  }
  return points;
}

std::optional<Line> line_through(const std::vector<Point>& points) {
  std::set<double> lengths;
  std::vector<double> x;
  std::vector<double> y;
  for (const Point& p : points) {
    lengths.insert(p.length);
    x.push_back(p.length);
    y.push_back(p.ohm);
  }
  if (points.size() < k_fewest_for_a_line || lengths.size() < k_fewest_lengths) return std::nullopt;
  const auto line = statistics::theil_sen(x, y);
  if (!line || !(line->slope > 0.0) || line->intercept < 0.0) return std::nullopt;
  return Line{line->slope, line->intercept};
}

class Siblings {
 public:
  Siblings(const HarnessCheckInput& in, const describe::Context& context, HarnessCheckAnswer& out)
      : in_(in), context_(context), out_(out), points_(points_of(in)) {}

  void run() {
    if (points_.empty()) return;
    const bool lengths =
        std::all_of(points_.begin(), points_.end(), [](const Point& p) { return p.length > 0.0; });
    if (!lengths) {
      each([](const Point& p) { return p.ohm; }, [](const Point& p) { return p.u; },
           "as read, lengths not all known");
      return;
    }
    const auto line = line_through(points_);
    if (line) own_line(*line);
    if (in_.terminals || !line) {
      by_length(in_.terminals ? in_.terminals->value.si : 0.0);
    } else {
      by_line(*line);
    }
  }

 private:
  const quantity::Unit& length_unit() const {
    return quantity::typed_unit(*in_.leads[points_.front().lead].length, context_.units);
  }
  const quantity::Unit& ohm_unit() const {
    return quantity::typed_unit(*in_.leads[points_.front().lead].reading, context_.units);
  }
  std::string per_length_words(double ohm_per_metre) const {
    const auto& unit =
        quantity::default_unit(quantity::KindOf::resistance_per_length, context_.units);
    return quantity::print(ohm_per_metre, unit, 0.0);
  }

  void own_line(const Line& line) {
    out_.own_per_length = quantity::ResistancePerLength{line.slope};
    out_.own_ends = quantity::Resistance{line.ends};
    out_.own_in_words =
        fmt::format("by its own {} leads: {}, and {} for the two ends of a lead", points_.size(),
                    per_length_words(line.slope), quantity::print(line.ends, ohm_unit(), 0.0));
  }

  void by_line(const Line& line) {
    each([&](const Point& p) { return p.ohm - line.slope * p.length - line.ends; },
         [&](const Point& p) { return std::hypot(p.u, line.slope * p.u_length); },
         "for its length, ends taken off");
  }

  void by_length(double ends) {
    const auto scaled = [&](const Point& p) { return (p.ohm - ends) / p.length; };
    std::vector<double> all;
    for (const Point& p : points_) all.push_back(scaled(p));
    if (!out_.own_per_length) {
      out_.own_per_length = quantity::ResistancePerLength{statistics::median(all)};
      out_.own_in_words =
          fmt::format("by its own leads: {}, {}", per_length_words(out_.own_per_length->si),
                      in_.terminals ? "ends taken off" : "the two ends not taken off, so too high");
    }
    each(
        scaled, [&](const Point& p) { return std::hypot(p.u, scaled(p) * p.u_length) / p.length; },
        in_.terminals ? "for its length" : "for its length, the ends not taken off");
  }

  template <class Value, class Doubt>
  void each(Value value, Doubt doubt, std::string_view basis) {
    std::vector<double> readings;
    std::vector<double> doubts;
    for (const Point& p : points_) {
      readings.push_back(value(p));
      doubts.push_back(doubt(p));
    }
    const auto found = evidence::compare_siblings(readings, statistics::median(doubts));
    if (!found) return;
    for (std::size_t i = 0; i < points_.size(); ++i) {
      say(out_.leads[points_[i].lead], found->each[i], basis);
    }
  }

  static void say(HarnessLeadAnswer& lead, const evidence::SiblingStanding& s,
                  std::string_view basis) {
    switch (s.standing) {
      case Standing::too_few:
        lead.siblings = "too few siblings to compare with";
        break;
      case Standing::like_others:
        lead.siblings = fmt::format("like its siblings ({})", basis);
        break;
      case Standing::stands_out:
        lead.siblings = fmt::format("stands out from its siblings: {} than their middle ({})",
                                    s.from_median > 0.0 ? "higher" : "lower", basis);
        lead.do_next.emplace_back("swap it with a sibling and see whether the fault goes with it");
        break;
    }
  }

  const HarnessCheckInput& in_;
  const describe::Context& context_;
  HarnessCheckAnswer& out_;
  std::vector<Point> points_;
};

}  // namespace

void compare_leads(const HarnessCheckInput& in, const describe::Context& context,
                   HarnessCheckAnswer& out) {
  Siblings(in, context, out).run();
}

void what_the_ends_hold(const HarnessCheckInput& in, const describe::Context& context,
                        HarnessCheckAnswer& out) {
  const HarnessLead* shortest = nullptr;
  for (const HarnessLead& lead : in.leads) {
    if (!lead.length || !lead.reading) continue;
    if (shortest == nullptr || lead.length->value < shortest->length->value) shortest = &lead;
  }
  if (shortest == nullptr) return;
  const Rows rows(context.table("lead-figures"));
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const auto span = rows.span(i);
    if (rows.word(i, "about") != "spiral" || !span.low || span.low != span.high) continue;
    const double core = *span.low * shortest->length->value.si;
    const auto& ohm = quantity::typed_unit(*shortest->reading, context.units);
    out.notes.push_back(fmt::format(
        "with {} {} the core of {} ({}) would hold {}; its two ends the rest of {}: {}",
        rows.word(i, "low"), rows.word(i, "unit"), shortest->name,
        pencil(shortest->length->value.si, quantity::typed_unit(*shortest->length, context.units)),
        pencil(core, ohm), pencil(shortest->reading->value.si, ohm),
        pencil(shortest->reading->value.si - core, ohm)));
  }
}

}  // namespace wm::ignition::detail
