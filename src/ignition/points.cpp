#include "ignition/points.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <numbers>

#include "ignition/detail/judge.hpp"
#include "ignition/detail/problem.hpp"
#include "ignition/detail/rows.hpp"
#include "quantity/as_typed.hpp"

namespace wm::ignition {
namespace {

using describe::AnyQuantity;
using detail::problem;
using evidence::Limit;
using quantity::pencil;

double degrees_of(double radians) { return radians * 180.0 / std::numbers::pi; }

class Points {
 public:
  Points(const PointsTimingInput& in, const describe::Context& context)
      : in_(in), context_(context), table_(context.table("points-figures")) {}

  Checked<PointsTimingAnswer> run() {
    clearances();
    if (in_.e_gap) {
      put({"E-gap", detail::any(in_.e_gap), false, "e_gap", "e_gap_lowest"},
          detail::entered(in_.e_gap_lowest, in_.e_gap_highest, in_.limit_source));
      show("e-gap", detail::any(in_.e_gap));
    }
    timing();
    starting();
    if (problems_.empty() && out_.parts.empty() && !out_.crank_lag) {
      problems_.push_back(problem("clearances", Kind::missing, "nothing was read",
                                  "a point clearance, an E-gap, a timing or a lag", "0.018 in"));
    }
    if (!problems_.empty()) return Fail(std::move(problems_));
    out_.verdict = worst(out_.parts);
    out_.in_words = std::string(words(out_.verdict));
    out_.notes.emplace_back(
        "last motion in the normal direction of rotation; with an impulse coupling turn past top "
        "centre until it clicks, back to before the position, then forward");
    return std::move(out_);
  }

 private:
  void put(const detail::WhatRead& read, const Limit& limit) {
    auto got = detail::judge(read, limit, {}, context_);
    if (got) {
      out_.parts.push_back(std::move(*got));
      return;
    }
    for (const Problem& p : got.error()) {
      if (std::find(problems_.begin(), problems_.end(), p) == problems_.end()) {
        problems_.push_back(p);
      }
    }
  }

  void show(std::string_view about, const std::optional<AnyQuantity>& reading) {
    const auto more = detail::figures(table_, about, reading);
    out_.figures.insert(out_.figures.end(), more.begin(), more.end());
  }

  /// The maker's figure, entered, goes first; the handbook's is for its own model only.
  Limit clearance_limit() const {
    const bool entered = in_.clearance_lowest || in_.clearance_highest;
    if (!entered && in_.handbook_model && table_ != nullptr) {
      const detail::Rows rows(table_);
      for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows.word(i, "about") != "handbook model clearance") continue;
        const auto limit = Limit::of_row(*table_, i, {"low", "high", "unit"});
        if (limit) {
          return Limit::entered(limit->lowest(), limit->highest(),
                                std::string(rows.word(i, "source")) + ", that model only");
        }
      }
    }
    return detail::entered(in_.clearance_lowest, in_.clearance_highest, in_.limit_source);
  }

  void clearances() {
    const Limit limit = clearance_limit();
    for (std::size_t i = 0; i < in_.clearances.size(); ++i) {
      const auto reading = detail::any(in_.clearances[i]);
      put({fmt::format("point clearance {}", i + 1), reading, false,
           fmt::format("clearances/{}", i), "clearance_lowest"},
          limit);
      show("handbook model clearance", reading);
    }
    if (!in_.clearances.empty()) {
      out_.notes.emplace_back(
          "never open the points further than needed: the spring is weakened "
          "(AC 43.13-1B par. 8-19)");
    }
  }

  void timing() {
    if (!in_.left && !in_.right) return;
    if (in_.data_plate && !in_.tolerance) {
      problems_.push_back(problem("tolerance", Kind::missing, "the data plate alone gives no band",
                                  "the maker's tolerance", "1 deg"));
      return;
    }
    std::optional<AnyQuantity> low;
    std::optional<AnyQuantity> high;
    if (in_.data_plate) {
      const auto& unit = quantity::typed_unit(*in_.data_plate, context_.units);
      const auto end = [&](double by) {
        auto q = detail::any(*in_.data_plate);
        q.si += by * in_.tolerance->value.si;
        q.text = pencil(q.si, unit);
        return q;
      };
      low = end(-1.0);
      high = end(1.0);
    }
    const auto limit = Limit::entered(low, high, in_.limit_source);
    const auto side = [&](const char* what, const std::optional<MeasuredAngle>& angle,
                          const char* path) {
      if (!angle) return;
      put({what, detail::any(angle), false, path, "data_plate"}, limit);
    };
    side("left magneto to the engine", in_.left, "left");
    side("right magneto to the engine", in_.right, "right");
    show("tolerance", std::nullopt);
    if (in_.left && in_.right) {
      out_.difference = in_.left->value - in_.right->value;
      out_.working.push_back(
          fmt::format("left - right = {} deg", pencil(degrees_of(out_.difference->si))));
      out_.notes.emplace_back("both sets of points should open together, by timing light");
    }
  }

  void starting() {
    if (!in_.lag) return;
    out_.speed_ratio = in_.speed_ratio;
    if (!out_.speed_ratio && in_.cylinders && in_.poles) {
      out_.speed_ratio = magneto_speed_ratio(*in_.cylinders, *in_.poles);
      out_.working.push_back(fmt::format("speed ratio = {} / (2 x {}) = {}", *in_.cylinders,
                                         *in_.poles, pencil(*out_.speed_ratio)));
    }
    if (!out_.speed_ratio) {
      problems_.push_back(problem(
          "speed_ratio", Kind::missing, "a lag in magneto degrees needs the speed of the magneto",
          "the ratio of magneto to crankshaft, or cylinders and poles", "1.5"));
      return;
    }
    const double lag = in_.lag->value.si;
    out_.crank_lag = quantity::radians(lag / *out_.speed_ratio);
    out_.working.push_back(fmt::format("crank lag = {} deg / {} = {} deg", pencil(degrees_of(lag)),
                                       pencil(*out_.speed_ratio),
                                       pencil(degrees_of(out_.crank_lag->si))));
    if (!in_.data_plate) return;
    out_.start_after_top = *out_.crank_lag - in_.data_plate->value;
    const double after = degrees_of(out_.start_after_top->si);
    out_.working.push_back(fmt::format("spark while starting = {} - {} = {} deg after top centre",
                                       pencil(degrees_of(out_.crank_lag->si)),
                                       pencil(degrees_of(in_.data_plate->value.si)),
                                       pencil(after)));
    if (after < -1e-6) {
      out_.notes.emplace_back(
          "the starting spark comes before top centre: the engine can kick back; check the lag "
          "marked on the coupling and which magneto is live in START");
    }
  }

  const PointsTimingInput& in_;
  const describe::Context& context_;
  const describe::Table* table_;
  Problems problems_;
  PointsTimingAnswer out_;
};

}  // namespace

double magneto_speed_ratio(std::int64_t cylinders, std::int64_t poles) {
  return static_cast<double>(cylinders) / (2.0 * static_cast<double>(poles));
}

Checked<PointsTimingAnswer> points_timing(const PointsTimingInput& in,
                                          const describe::Context& context) {
  return Points(in, context).run();
}

std::string_view describe(describe::Fields<PointsTimingInput>& f) {
  using In = PointsTimingInput;
  using quantity::degrees;
  using quantity::inches;
  f.has<&In::handbook_model>("handbook_model", "The points are of the handbook's worked model")
      .help("FAA-H-8083-32: 0.018 in, give or take 0.006 in, for that model only.");
  f.has<&In::clearances>("clearances", "Clearance of the points, on the high point of each lobe")
      .example("0.018 in")
      .at_most(16);
  f.has<&In::clearance_lowest>("clearance_lowest", "Clearance, least")
      .example("0.016 in")
      .between(inches(0), inches(0.2));
  f.has<&In::clearance_highest>("clearance_highest", "Clearance, greatest")
      .example("0.020 in")
      .between(inches(0), inches(0.2));
  f.has<&In::e_gap>("e_gap", "E-gap, past neutral").between(degrees(-90), degrees(90));
  f.has<&In::e_gap_lowest>("e_gap_lowest", "E-gap, least").between(degrees(-90), degrees(90));
  f.has<&In::e_gap_highest>("e_gap_highest", "E-gap, greatest").between(degrees(-90), degrees(90));
  f.has<&In::left>("left", "Left magneto opens, before top centre")
      .example("24.5 deg +- 0.3 deg")
      .between(degrees(-60), degrees(90));
  f.has<&In::right>("right", "Right magneto opens, before top centre")
      .example("25.2 deg +- 0.3 deg")
      .between(degrees(-60), degrees(90));
  f.has<&In::data_plate>("data_plate", "Timing on the data plate, before top centre")
      .example("25 deg")
      .between(degrees(-30), degrees(90));
  f.has<&In::tolerance>("tolerance", "Tolerance, either way")
      .example("1 deg")
      .between(degrees(0), degrees(20));
  f.has<&In::limit_source>("limit_source", "Where the limits are written")
      .example("data plate; maintenance manual of the magneto");
  f.has<&In::lag>("lag", "Lag marked on the coupling, magneto degrees")
      .example("25 deg")
      .between(degrees(0), degrees(90));
  f.has<&In::speed_ratio>("speed_ratio", "Magneto revolutions for one of the crankshaft")
      .above(0.0)
      .at_most(5.0);
  f.has<&In::cylinders>("cylinders", "Cylinders").example("4").between(1, 28);
  f.has<&In::poles>("poles", "Poles of the magneto's rotor").example("2").between(1, 16);
  return "points-timing-input";
}

std::string_view describe(describe::Fields<PointsTimingAnswer>& f) {
  using A = PointsTimingAnswer;
  f.has<&A::verdict>("verdict", "Verdict");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::parts>("parts", "Each reading");
  f.has<&A::difference>("difference", "Left less right");
  f.has<&A::speed_ratio>("speed_ratio", "Magneto revolutions for one of the crankshaft");
  f.has<&A::crank_lag>("crank_lag", "Lag in crankshaft degrees");
  f.has<&A::start_after_top>("start_after_top", "Starting spark, after top centre");
  f.has<&A::figures>("figures", "Figures of the trade");
  f.has<&A::notes>("notes", "Notes");
  f.has<&A::working>("working", "The sum, step by step");
  return "points-timing-answer";
}

}  // namespace wm::ignition
