#pragma once
/// The rules of "hose-rating", one candidate at a time. Each adds its reasons.

#include <optional>
#include <string>
#include <vector>

#include "hose/date_code.hpp"
#include "hose/family.hpp"
#include "hose/rating.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose::detail {

/// Everything the rules may know of one candidate.
struct Looked {
  const HoseDemand* demand{};
  const HoseCandidate* hose{};
  const describe::Context* context{};
  std::optional<FamilyFigures> family;
  Lining lining{Lining::not_said};
  quantity::PressureGauge system{};
  quantity::Temperature hottest{};
  quantity::Date fitting{};
  std::optional<DatedSpan> cure;
  std::optional<DatedSpan> assembly;
  std::optional<DatedSpan> proof;
  // How the limits that bind were settled, owner's first.
  std::optional<PressureFigure> operating;
  std::optional<TemperatureFigure> highest;
  std::optional<TemperatureFigure> lowest;
};

/// What the rules say of it.
struct Said {
  std::vector<RatingReason> reasons;
  std::optional<quantity::PressureGauge> allowed;
  std::optional<quantity::Fraction> margin;
  std::string margin_of;
  std::vector<std::string> working;

  void met(std::string about, std::string text, std::string source, std::string known);
  void advises(std::string about, std::string text, std::string source, std::string known);
  void asks(std::string about, std::string text, std::string source, std::string known);
  void refuses(std::string about, std::string text, std::string source, std::string known);
  /// Keeps the least share that is left.
  void share_left(double share, std::string of);
};

/// The limits that bind, owner's first.
void settle_limits(Looked& looked);

void pressure_rule(const Looked& looked, Said& said);
void both_maxima_rule(const Looked& looked, Said& said);
void temperature_rule(const Looked& looked, Said& said);
void fluid_rule(const Looked& looked, Said& said);
void suction_rule(const Looked& looked, Said& said);
void fire_rule(const Looked& looked, Said& said);
void bore_rule(const Looked& looked, Said& said);
void age_rule(const Looked& looked, Said& said);

[[nodiscard]] bool is_fuel(LineFluid fluid);
[[nodiscard]] std::string_view words(LineFluid fluid);

/// Equal figures typed in two units.
inline constexpr double k_equal = 1e-9;
[[nodiscard]] constexpr bool above(double a, double b) {
  return a > b + k_equal * (1.0 + (b < 0 ? -b : b));
}

/// Where a figure or a word comes from that was entered with the hose.
[[nodiscard]] std::string words_entered(const HoseCandidate& hose);

/// As typed, or in the unit of the owner's set.
template <class Q>
[[nodiscard]] std::string typed(const quantity::Entered<Q>& e, const describe::Context& context) {
  return e.text.empty() ? quantity::pencil(e.value.si, quantity::typed_unit(e, context.units))
                        : e.text;
}

}  // namespace wm::hose::detail
