#pragma once
/// Instruments and what was read with them.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "describe/fields.hpp"
#include "outcome/result.hpp"
#include "quantity/date.hpp"
#include "quantity/quantity.hpp"

namespace wm::evidence {

/// One range of an instrument with the accuracy its maker gives for it:
/// +-(per cent of reading + counts of the last digit + per cent of full scale).
struct MeterRange {
  std::string name;                                 ///< "60 kohm"
  std::optional<describe::AnyQuantity> full_scale;  ///< largest value it can show
  std::optional<describe::AnyQuantity> resolution;  ///< one count of the last digit
  quantity::Fraction of_reading{};                  ///< 0.009 = 0.9 %
  std::int64_t counts{};                            ///< of the last digit
  quantity::Fraction of_full_scale{};               ///< pointer instruments
  friend bool operator==(const MeterRange&, const MeterRange&) = default;
};
std::string_view describe(describe::Fields<MeterRange>& f);
/// Some accuracy was given at all.
[[nodiscard]] bool accuracy_given(const MeterRange& range);

/// Whether the resistance of the test leads is in the reading.
enum class TestLeads : std::uint8_t {
  not_stated,
  nulled,      ///< taken off by the meter: probes shorted and stored
  not_nulled,  ///< in the reading; taken off here if their resistance is given
  four_wire    ///< not in the reading
};
std::string_view describe(describe::Choices<TestLeads>& c);

struct Instrument {
  std::string id;    ///< as marked on it
  std::string name;  ///< "multimeter"
  std::optional<quantity::Date> calibrated;
  std::optional<quantity::Date> calibration_due;
  std::string certificate;
  std::vector<MeterRange> ranges;
};
std::string_view describe(describe::Fields<Instrument>& f);

/// @return not_found with the names of the ranges there are.
[[nodiscard]] Result<MeterRange> range_of(const Instrument& instrument, std::string_view name);

enum class CalibrationState : std::uint8_t { unknown, in_date, past_due, not_yet };
std::string_view describe(describe::Choices<CalibrationState>& c);
/// On a given day. `unknown` never counts as fine. A due date is the last good day.
[[nodiscard]] CalibrationState calibration_on(const Instrument& instrument, quantity::Date day);

/// One reading as it was taken.
struct Reading {
  std::optional<describe::AnyQuantity> value;  ///< nothing when over-range, or not taken
  bool over_range{};                           ///< the display showed overload or open
  std::vector<describe::AnyQuantity> repeats;  ///< further readings, each taken afresh
  std::string instrument;                      ///< id of the instrument
  std::string range;                           ///< name of its range
  TestLeads leads{TestLeads::not_stated};
  std::optional<quantity::Date> taken_on;
  std::string by;
};
std::string_view describe(describe::Fields<Reading>& f);

/// The least that is needed to find a reading again.
struct TakenReading {
  std::string id;
  std::string instrument;
  std::optional<quantity::Date> taken_on;
};
struct InDoubt {
  std::size_t index{};  ///< into the list given
  std::string why;
};

/// An instrument was found bad: every reading that it spoiled or may have spoiled.
///
/// @param last_known_good  Last day on which the instrument was shown to be good; nothing when
///                         never: then all its readings are in doubt. Readings of that very day
///                         are on the list: nobody knows which came first.
/// @param good_again       Day on which it was put right, where it was; readings of later days
///                         are not on the list.
/// A reading without a date is on the list.
[[nodiscard]] std::vector<InDoubt> readings_in_doubt(std::span<const TakenReading> readings,
                                                     std::string_view instrument,
                                                     std::optional<quantity::Date> last_known_good,
                                                     std::optional<quantity::Date> good_again = {});

}  // namespace wm::evidence
