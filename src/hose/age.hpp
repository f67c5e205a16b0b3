#pragma once
/// How old a hose is, on two clocks: on the shelf from its cure to its fitting, in service from its
/// fitting; and every figure that documents and custom give for it, side by side.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "describe/catalogue.hpp"
#include "hose/rating.hpp"

namespace wm::hose {

enum class HoseKind : std::uint8_t { not_said, elastomer, ptfe };

enum class AgeClock : std::uint8_t { shelf, service };
/// The day an age is counted from; cure counts from the end of its quarter.
enum class AgeFrom : std::uint8_t { cure, assembly, proof, fitting };

/// A limit of the maker, an authority or the owner: it wins over every figure of the table.
struct OwnAgeLimit {
  AgeClock clock{AgeClock::service};
  AgeFrom from{AgeFrom::fitting};
  std::int64_t months{};
  std::string source;
};

struct HoseAgeInput {
  std::string family;  ///< row of "hose-families"; says the kind
  HoseKind kind{HoseKind::not_said};
  LinerCompound liner{LinerCompound::not_said};
  std::string cure;      ///< date code or day
  std::string assembly;  ///< the same
  std::string proof;     ///< date of the last proof test, the same
  std::optional<quantity::Date> delivery;
  std::optional<quantity::Date> fitting;  ///< nothing: still on the shelf
  std::optional<quantity::Date> on;       ///< default: today
  std::vector<OwnAgeLimit> own_limits;
};

enum class AgeStands : std::uint8_t {
  not_dated,  ///< the figure has no date, or what it counts from is not known
  within,
  past
};

struct AgeFigure {
  std::string what;
  std::string clock;                  ///< "shelf", "storage", "service", "superseded"
  std::string counted;                ///< "from the end of 2Q2018 to the day of fitting"
  std::string limit;                  ///< "32 quarters"; empty: none
  std::optional<quantity::Date> due;  ///< last day that is within
  std::string due_quarter;            ///< "2Q2026"
  AgeStands stands{AgeStands::not_dated};
  bool decides{};  ///< entered by the owner
  std::string source;
  std::string known;
  std::string note;
};

struct AgeReading {
  std::string clock;
  std::optional<quantity::Date> from;
  std::optional<quantity::Date> to;
  std::optional<std::int64_t> quarters;  ///< whole ones
  std::string in_words;
};

/// By the limits that the owner entered, and only by them.
enum class AgeStanding : std::uint8_t { no_limit_entered, not_known, within_limit, past_limit };

struct HoseAgeAnswer {
  AgeStanding standing{AgeStanding::no_limit_entered};
  std::string in_words;
  std::vector<AgeReading> clocks;
  std::vector<AgeFigure> figures;  ///< the entered ones first
  std::vector<std::string> missing;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// @return missing (kind; today), not_found (family), conflict (kind against family; dates in the
///         wrong order), bad_text (dates)
/// @source hoses notes 7.1 and 7.2, each figure with its own; NAVEDTRA 14018 pp. 5-3, 5-10 (date
///         codes); cure counted from the end of its quarter: seal makers' summaries of ARP5316
///         (secondary)
[[nodiscard]] Checked<HoseAgeAnswer> hose_age(const HoseAgeInput& input,
                                              const describe::Context& context);

std::string_view describe(describe::Choices<HoseKind>& c);
std::string_view describe(describe::Choices<AgeClock>& c);
std::string_view describe(describe::Choices<AgeFrom>& c);
std::string_view describe(describe::Choices<AgeStands>& c);
std::string_view describe(describe::Choices<AgeStanding>& c);
std::string_view describe(describe::Fields<OwnAgeLimit>& f);
std::string_view describe(describe::Fields<HoseAgeInput>& f);
std::string_view describe(describe::Fields<AgeFigure>& f);
std::string_view describe(describe::Fields<AgeReading>& f);
std::string_view describe(describe::Fields<HoseAgeAnswer>& f);

}  // namespace wm::hose
