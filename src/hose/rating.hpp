#pragma once
/// Which of several hoses may do a job: each accepted, refused, or something must be asked first,
/// with every reason, its figure and its source; then ranked.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "describe/catalogue.hpp"
#include "hose/length.hpp"
#include "quantity/text.hpp"

namespace wm::hose {

using EnteredPressure = quantity::Entered<quantity::PressureGauge>;
using EnteredDifference = quantity::Entered<quantity::PressureDifference>;
using EnteredTemperature = quantity::Entered<quantity::Temperature>;

enum class LineFluid : std::uint8_t {
  not_said,
  avgas,
  petrol,
  petrol_with_alcohol,
  mineral_engine_oil,
  hydraulic_mineral,
  phosphate_ester,
  water,
  other
};

enum class EndMetal : std::uint8_t { not_said, steel, aluminium };

enum class LinerCompound : std::uint8_t {
  not_said,
  nitrile,
  neoprene,
  chlorinated_polyethylene,
  butyl,
  epdm,
  other_elastomer,
  ptfe_smooth,
  ptfe_convoluted
};

enum class SleeveFitted : std::uint8_t { not_said, none, over, integral };

/// Class of the whole assembly, as tested with fluid in it.
enum class FireTested : std::uint8_t { not_known, none, class_a, class_b };

enum class Known : std::uint8_t { not_known, yes, no };

struct HoseCandidate {
  std::string name;
  std::string family;  ///< row of "hose-families"; empty: the entered limits alone
  std::string size;
  EndMetal ends{EndMetal::not_said};
  LinerCompound liner{LinerCompound::not_said};
  Known carbon_loaded{Known::not_known};
  SleeveFitted sleeve{SleeveFitted::not_said};
  FireTested fire_class{FireTested::not_known};
  std::string cure;                   ///< date code or day
  std::string assembly;               ///< the same
  std::string proof;                  ///< date of the last proof test, the same
  std::optional<EnteredLength> bore;  ///< of the fitting, its narrowest place
  // What the owner or the maker says: it wins over every table.
  std::optional<EnteredPressure> operating;
  std::optional<EnteredTemperature> operating_to;  ///< the operating pressure holds up to here
  std::optional<EnteredTemperature> highest;
  std::optional<EnteredTemperature> lowest;
  std::optional<EnteredDifference> suction_limit;  ///< below the surroundings
  Known fluid_stated{Known::not_known};            ///< the maker names it for this fluid
  Known alcohol_stated{Known::not_known};          ///< and for petrol with alcohol
  std::string limits_source;
};

struct HoseDemand {
  LineFluid fluid{LineFluid::not_said};
  EnteredPressure working_pressure;
  EnteredDifference surge;  ///< on top of it
  EnteredTemperature fluid_highest;
  EnteredTemperature surrounding_highest;
  EnteredTemperature lowest;
  /// A difference, not an absolute pressure: what collapses a hose is outside less inside, and
  /// the surroundings thin out with height.
  std::optional<EnteredDifference> suction;
  bool ahead_of_firewall{};
  std::optional<EnteredLength> least_bore;
  std::optional<EnteredLength> length;
  std::optional<quantity::Date> fitting;  ///< default: today
};

struct HoseRatingInput {
  HoseDemand demand;
  std::vector<HoseCandidate> candidates;
};

enum class CandidateStands : std::uint8_t {
  accepted,  ///< nothing in what was looked at speaks against it
  asks,      ///< something must be asked or done first
  refused
};

enum class ReasonStands : std::uint8_t { met, advises, asks, refuses };

struct RatingReason {
  std::string about;  ///< "pressure", "highest temperature", ...
  ReasonStands stands{ReasonStands::met};
  std::string text;    ///< demand, figure, limit
  std::string source;  ///< document, table, page; or who entered it
  std::string known;   ///< how the limit is known: read, secondary, derived, entered, ...
};

struct RatedHose {
  std::int64_t place{};   ///< 1 first
  std::int64_t number{};  ///< as entered, 1 first
  std::string name;
  CandidateStands stands{CandidateStands::asks};
  std::optional<quantity::Fraction> margin;  ///< least share left
  std::string margin_of;
  std::optional<EnteredPressure> allowed;  ///< k(T) x operating pressure
  std::vector<RatingReason> reasons;       ///< what refuses first, then what asks
};

struct HoseRatingAnswer {
  std::vector<RatedHose> ranked;
  std::string ranked_by;
  std::string in_words;
  EnteredPressure system_pressure;
  EnteredTemperature hottest;
  quantity::Date fitting{};
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// "Room temperature", up to which a burst or operating pressure without a temperature is taken
/// to hold: common practice, no source.
inline constexpr quantity::Temperature k_room = quantity::celsius(27);
/// Hot burst of convoluted PTFE was tested here (MA620 table 1).
inline constexpr quantity::Temperature k_hot_burst = quantity::celsius(204);
/// Aluminium end fittings hold a PTFE assembly to 275 degF (AS1946F 1.2.1).
inline constexpr quantity::Temperature k_aluminium_ends{(275.0 - 32.0) / 1.8 + 273.15};
/// "At both maxima" is asked about from here on: common practice, no source.
inline constexpr double k_near_pressure = 0.9;
inline constexpr quantity::TemperatureDifference k_near_temperature{25.0 / 1.8};
/// Push-on hose tends to collapse if longer (MIL-DTL-6000D 6.1).
inline constexpr quantity::Length k_push_on_longest = quantity::inches(18);

/// Judge every candidate against the demand and rank them.
///
///   working pressure + surge <= k(T) x operating pressure,  T = the hotter of fluid and
///   surroundings; k = 1 only as far as the data say, 0.70 for convoluted PTFE above room
///   temperature, otherwise the maker is asked
///
/// Only a figure that was read in its document, or that the owner entered, refuses by itself; any
/// other is advice or a question. What the owner entered wins over every table.
///
/// @return missing (fluid; fitting date where today is not known; no candidate), not_found
///         (family, size), conflict (liner against family; temperatures upside down; dates in the
///         wrong order), duplicate (names), bad_text (dates)
/// @source AC 43.13-1B table 9-3; AS1946F; MIL-DTL-8794F; FAA-H-8083-30 p. 7-17; the families'
///         own documents as the tables name them (docs/method/hose-rating.md)
[[nodiscard]] Checked<HoseRatingAnswer> hose_rating(const HoseRatingInput& input,
                                                    const describe::Context& context);

std::string_view describe(describe::Choices<LineFluid>& c);
std::string_view describe(describe::Choices<EndMetal>& c);
std::string_view describe(describe::Choices<LinerCompound>& c);
std::string_view describe(describe::Choices<SleeveFitted>& c);
std::string_view describe(describe::Choices<FireTested>& c);
std::string_view describe(describe::Choices<Known>& c);
std::string_view describe(describe::Choices<CandidateStands>& c);
std::string_view describe(describe::Choices<ReasonStands>& c);
std::string_view describe(describe::Fields<HoseCandidate>& f);
std::string_view describe(describe::Fields<HoseDemand>& f);
std::string_view describe(describe::Fields<HoseRatingInput>& f);
std::string_view describe(describe::Fields<RatingReason>& f);
std::string_view describe(describe::Fields<RatedHose>& f);
std::string_view describe(describe::Fields<HoseRatingAnswer>& f);

}  // namespace wm::hose
