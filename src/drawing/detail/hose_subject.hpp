#pragma once
/// What a hose sheet is drawn from, with its figures in words.

#include <string>

#include "drawing/hose_sheet.hpp"
#include "quantity/as_typed.hpp"

namespace wm::drawing::detail {

struct Subject {
  const hose::HoseSheetInput& in;
  const hose::HoseSheetAnswer& answer;
  const HoseSheetAbout& about;
  const quantity::Unit& unit;  ///< of every length on the sheet

  Subject(const hose::HoseSheetInput& input, const hose::HoseSheetAnswer& got,
          const HoseSheetAbout& more)
      : in(input),
        answer(got),
        about(more),
        unit(quantity::typed_unit(input.outside_diameter, more.units)) {}

  /// "13.72 in"
  [[nodiscard]] std::string say(quantity::Length l) const {
    return quantity::print(l.si, unit, 0.0);
  }
  /// A gap, to what a rule or a feeler shows: 0.01 in, 0.1 mm.
  [[nodiscard]] std::string say_gap(quantity::Length l) const {
    const bool metric = unit.symbol.ends_with('m');
    return quantity::print(l.si, unit, metric ? 0.0001 : 0.01 * 0.0254);
  }
  /// "13.72"
  [[nodiscard]] std::string figure(quantity::Length l, int digits = 4) const {
    return quantity::significant(quantity::in_unit(l.si, unit), digits);
  }
  /// As it was typed, where it was.
  [[nodiscard]] std::string say(const hose::EnteredLength& l) const {
    return l.text.empty() ? say(l.value) : l.text;
  }
  [[nodiscard]] double outside_diameter() const { return in.outside_diameter.value.si; }
  [[nodiscard]] double overall() const { return answer.shape.overall.si; }
};

}  // namespace wm::drawing::detail
