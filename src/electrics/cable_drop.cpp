#include "electrics/cable_drop.hpp"

#include <fmt/core.h>

#include <algorithm>

#include "quantity/as_typed.hpp"

namespace wm::electrics {
namespace {

using quantity::KindOf;
using quantity::pencil;

constexpr double k_reference_celsius = 20.0;

const quantity::Unit& unit(KindOf kind, const char* symbol) {
  return *quantity::find_unit(kind, symbol);
}

double nominal_volts(NominalVoltage nominal) {
  switch (nominal) {
    case NominalVoltage::v14:
      return 14;
    case NominalVoltage::v28:
      return 28;
    case NominalVoltage::v115:
      return 115;
    case NominalVoltage::v200:
      break;
  }
  return 200;
}

class Drop {
 public:
  Drop(const CableDropInput& in, const describe::Context& context) : in_(in), context_(context) {}

  Checked<CableDropAnswer> run() {
    Problems problems;
    const auto wire = figures_of(in_.conductor, "conductor");
    if (!wire) problems.push_back(wire.error());
    const auto limit =
        drop_limit({in_.nominal, in_.duty, in_.role, in_.regulated, in_.limit, in_.limit_source});
    if (!limit) problems.push_back(limit.error());
    if (!problems.empty()) return Fail(std::move(problems));
    find_drop(*wire);
    judge(*limit, *wire);
    notes(*wire);
    return std::move(out_);
  }

 private:
  /// A pencil wants length and resistance for a length in the same unit: feet or metres.
  bool metres() const {
    const auto symbol = quantity::typed_unit(in_.length, context_.units).symbol;
    return symbol == "m" || symbol == "cm" || symbol == "mm" || symbol == "km";
  }
  const quantity::Unit& length_unit() const { return unit(KindOf::length, metres() ? "m" : "ft"); }
  const quantity::Unit& each_unit() const {
    return unit(KindOf::resistance_per_length, metres() ? "ohm/m" : "ohm/ft");
  }

  void find_drop(const ConductorFigures& wire) {
    const double celsius = in_.temperature ? in_.temperature->value.si - k_zero_celsius : 20.0;
    const double warm = std::max(1.0, warm_factor(wire.metal, celsius));
    ohm_per_metre_ = wire.ohm_per_metre * warm;
    run_m_ = in_.length.value.si + (in_.return_length ? in_.return_length->value.si : 0.0);
    out_.conductor = wire.in_words;
    out_.resistance = {ohm_per_metre_ * run_m_};
    out_.drop = {out_.resistance.si * in_.current.value.si};
    out_.lost = {out_.drop.si * in_.current.value.si};
    out_.of_nominal = {out_.drop.si / nominal_volts(in_.nominal)};
    out_.working.push_back(fmt::format("{}: {} at 20 degC ({})", wire.in_words,
                                       pencil(wire.ohm_per_metre, each_unit()), wire.source));
    if (warm > 1.0) {
      out_.working.push_back(fmt::format("at {} degC: x {} = {}", pencil(celsius), pencil(warm),
                                         pencil(ohm_per_metre_, each_unit())));
    }
    if (in_.return_length) {
      out_.working.push_back(fmt::format(
          "length with its ground wire: {} + {} = {}", pencil(in_.length.value.si, length_unit()),
          pencil(in_.return_length->value.si, length_unit()), pencil(run_m_, length_unit())));
    }
    out_.working.push_back(fmt::format(
        "drop = {} x {} x {} A = {} V", pencil(ohm_per_metre_, each_unit()),
        pencil(run_m_, length_unit()), pencil(in_.current.value.si), pencil(out_.drop.si)));
  }

  void judge(const DropLimit& limit, const ConductorFigures& wire) {
    out_.limit = quantity::Voltage{limit.volts};
    out_.limit_from = limit.source;
    out_.standing = against(out_.drop.si, limit.volts, limit.advice);
    if (!wire.read) {
      // Firm words need a figure that was read at both ends.
      out_.standing = against(out_.drop.si, limit.volts, true);
    }
    out_.longest_run = quantity::Length{limit.volts / (ohm_per_metre_ * in_.current.value.si)};
    out_.in_words =
        fmt::format("loses {} V at {} A, against {} V: {}", quantity::significant(out_.drop.si, 3),
                    pencil(in_.current.value.si), pencil(limit.volts), words(out_.standing));
    out_.working.push_back(fmt::format("longest run = {} V / ({} x {} A) = {}", pencil(limit.volts),
                                       pencil(ohm_per_metre_, each_unit()),
                                       pencil(in_.current.value.si),
                                       pencil(out_.longest_run->si, length_unit())));
    if (out_.standing == Against::over || out_.standing == Against::advice_over) {
      out_.do_next.push_back(
          fmt::format("shorten the run to {} or less, or take a larger cable: "
                      "cable-size finds it",
                      pencil(out_.longest_run->si, length_unit())));
    }
  }

  void notes(const ConductorFigures& wire) {
    if (!in_.return_length) {
      out_.notes.emplace_back(
          "The return through structure counts as nothing, which holds only where its bonding is "
          "sound (bonding-check). Where a ground wire is run, add its length.");
    }
    if (in_.temperature && in_.temperature->value.si < k_zero_celsius + k_reference_celsius) {
      out_.notes.emplace_back(
          "No credit is given below 20 degC: a cold engine bay does not stay "
          "cold.");
    }
    if (!wire.read) {
      out_.notes.emplace_back(
          "The resistance comes from public extracts of the standard: advice. "
          "Enter the maker's resistance for a length to judge by it.");
    }
    if (wire.metal == Metal::aluminium) {
      out_.notes.emplace_back(
          "Aluminium: not smaller than No. 8 (AC 43.13-1B page 11-23), not on engine-mounted "
          "accessories nor where it vibrates, corrodes or is often disconnected (FAA handbook "
          "text, second hand).");
    }
    if (in_.role == CircuitRole::equipment) {
      out_.notes.emplace_back(
          "The limit counts from the bus to the equipment. Starter circuits "
          "are judged by starting-circuit.");
    }
  }

  const CableDropInput& in_;
  const describe::Context& context_;
  double ohm_per_metre_{};
  double run_m_{};
  CableDropAnswer out_;
};

}  // namespace

Checked<CableDropAnswer> cable_drop(const CableDropInput& input, const describe::Context& context) {
  return Drop(input, context).run();
}

}  // namespace wm::electrics
