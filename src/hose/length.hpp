#pragma once
/// Hoses: length of an assembly and of the hose to cut for it.
///
/// Overall length is measured from sealing seat to sealing seat, the hose laid straight. The
/// metal end fittings do not bend and are no part of the flexible length.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "describe/catalogue.hpp"
#include "quantity/text.hpp"

namespace wm::hose {

using EnteredLength = quantity::Entered<quantity::Length>;

enum class EndForm : std::uint8_t { straight, elbow_45, elbow_90, male_thread };

/// "5 to 8 % slack" is read in two ways; the first is a little longer.
enum class SlackRule : std::uint8_t {
  of_total,  ///< of the hose's total length: hose = gap / (1 - s)
  of_gap     ///< longer than the gap:        hose = gap (1 + s)
};

struct EndFitting {
  EndForm form{EndForm::straight};
  std::optional<EnteredLength> rigid;    ///< from its seat to where the hose can bend
  std::optional<EnteredLength> cut_off;  ///< overall length less hose, for this end
  std::string family;                    ///< row of the table "hose-cut-off"
};

struct LengthAllowanceInput {
  std::optional<EnteredLength> between_seats;
  std::optional<EnteredLength> overall;
  SlackRule slack_rule{SlackRule::of_total};
  quantity::Fraction slack_from{0.05};
  quantity::Fraction slack_to{0.08};
  std::string size;
  EndFitting near_end;
  EndFitting far_end;
  std::string pair_form;  ///< row of "hose-cut-off-pair": both ends alike, PTFE assembly
  std::optional<EnteredLength> outside_diameter;
};

struct LengthAllowanceAnswer {
  EnteredLength overall;  ///< to make: seat to seat
  std::optional<EnteredLength> overall_shortest;
  std::optional<EnteredLength> overall_longest;
  std::optional<EnteredLength> cut_length;
  std::optional<EnteredLength> flexible;  ///< hose that can bend, in the length to make
  std::optional<EnteredLength> flexible_shortest;
  std::optional<EnteredLength> flexible_longest;
  std::optional<EnteredLength> lengthens;  ///< under pressure, at most
  std::optional<EnteredLength> shortens;   ///< under pressure, at most
  std::optional<EnteredLength> in_hand;    ///< left when it has shortened; negative: it pulls
  std::optional<quantity::Fraction> slack;
  std::optional<EnteredLength> straight_at_ends;
  std::vector<std::string> measured;  ///< from where to where, for each end
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

inline constexpr double k_lengthens = 0.02;  ///< AC 43.13-1B fig. 9-9
inline constexpr double k_shortens = 0.04;   ///< AC 43.13-1B fig. 9-9
inline constexpr double k_straight_diameters = 2.0;

/// Hose that can bend for a gap between rigid parts.
/// @source FAA-H-8083-30 p. 7-19 and NAVEDTRA 14105 p. 5-11: slack 5 to 8 % of total length.
[[nodiscard]] quantity::Length flexible_length(quantity::Length gap, quantity::Fraction slack,
                                               SlackRule rule);

/// Cut-off of one end from the table. @return not_found with what there is.
[[nodiscard]] Result<quantity::Length> cut_off(const describe::Context& context,
                                               std::string_view family, std::string_view size);
/// Cut-off of both ends of a PTFE assembly together.
[[nodiscard]] Result<quantity::Length> cut_off_pair(const describe::Context& context,
                                                    std::string_view size, std::string_view form);

///   overall = flexible + rigid near + rigid far;  cut length = overall - cut-off of each end
///
/// @return missing (nothing to start from, rigid length of an end), not_found (table), conflict
///         (rigid parts longer than the gap, slack upside down).
[[nodiscard]] Checked<LengthAllowanceAnswer> length_allowance(const LengthAllowanceInput& input,
                                                              const describe::Context& context);

/// From where the length of an assembly is measured at such an end.
[[nodiscard]] std::string_view measured_from(EndForm form);

std::string_view describe(describe::Choices<EndForm>& c);
std::string_view describe(describe::Choices<SlackRule>& c);
std::string_view describe(describe::Fields<EndFitting>& f);
std::string_view describe(describe::Fields<LengthAllowanceInput>& f);
std::string_view describe(describe::Fields<LengthAllowanceAnswer>& f);

}  // namespace wm::hose
