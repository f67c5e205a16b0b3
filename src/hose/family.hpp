#pragma once
/// A hose family: what the tables know of it, each figure with its source and how it is known.

#include <cstdint>
#include <optional>
#include <string>

#include "describe/catalogue.hpp"
#include "quantity/text.hpp"

namespace wm::hose {

/// What the fluid touches.
enum class Lining : std::uint8_t { not_said, elastomer, ptfe_smooth, ptfe_convoluted };
[[nodiscard]] constexpr bool is_ptfe(Lining lining) {
  return lining == Lining::ptfe_smooth || lining == Lining::ptfe_convoluted;
}

/// A figure with its papers. Only what was read in the document may refuse by itself.
template <class Q>
struct SourcedFigure {
  Q value{};
  std::string text;    ///< as printed or typed, with its unit
  std::string source;  ///< document, table, page; or who entered it
  std::string known;   ///< provenance word, or "entered"
  [[nodiscard]] bool may_refuse() const { return known == "read" || known == "entered"; }
};
using TemperatureFigure = SourcedFigure<quantity::Temperature>;
using PressureFigure = SourcedFigure<quantity::PressureGauge>;
using LengthFigure = SourcedFigure<quantity::Length>;

struct FamilyFigures {
  std::string family;
  std::string size;
  Lining lining{Lining::not_said};
  std::optional<TemperatureFigure> lowest;
  std::optional<TemperatureFigure> highest;
  std::optional<PressureFigure> operating;
  std::optional<PressureFigure> operating_most;  ///< of the strongest size
  std::optional<PressureFigure> proof;           ///< where the operating pressure is not known
  std::optional<LengthFigure> inside;            ///< of the hose
  std::optional<LengthFigure> bore;              ///< of its end fitting
  std::string carries;                           ///< "fuel oil hydraulic"; empty: not known
  std::string carries_known;
  bool not_both_maxima{};  ///< its table forbids highest temperature with highest pressure
  std::string source;
  std::string note;
};

/// @return not_found ("family" or "size") with what there is
[[nodiscard]] Result<FamilyFigures> family_figures(const describe::Context& context,
                                                   std::string_view family, std::string_view size);

/// What the family's hose is lined with, whatever its size. @return not_found
[[nodiscard]] Result<Lining> family_lining(const describe::Context& context,
                                           std::string_view family);

/// Burst pressure hot over burst pressure at room temperature, of convoluted PTFE.
///
///   k = 19,300 / 27,600 = 0.70 at 204 degC
///
/// @return  nothing without the table
/// @source  derived from MA620 table 1, DN06
[[nodiscard]] std::optional<quantity::Fraction> convoluted_hot_ratio(
    const describe::Context& context);

}  // namespace wm::hose
