#pragma once
/// Renew, watch or leave: what the record says about the part in a position, and where it leans.

#include "bay/state.hpp"
#include "describe/catalogue.hpp"

namespace wm::desk {

/// One thing that the record says.
struct EvidenceLine {
  std::string topic;  ///< limit, age, reading, trend, service, consequence, work, decision
  std::string words;
  std::string source;  ///< the authority of a limit, the document of a figure; may be empty
  std::optional<bay::PartDecision> leans;  ///< nothing: it informs, and leans nowhere
};
std::string_view describe(describe::Fields<EvidenceLine>& f);

/// A part where it sits, with the evidence. The record leans; the owner decides.
struct PartEvidence {
  std::string position, position_name, system;
  std::string part, description;
  bool grave{};  ///< fire, loss of power or of control may follow from its failure
  bay::PartDecision leans{bay::PartDecision::leave};
  std::string because;  ///< the line that leans furthest, or that nothing does
  std::vector<EvidenceLine> lines;
  std::string decided;      ///< "watch" as last decided for this part; empty: never
  std::string decided_on;   ///< day
  std::string decided_why;  ///< its reason
  bool look_again_due{};    ///< the day for looking again has come
  std::string stage;        ///< an unfinished stage that already changes it
};
std::string_view describe(describe::Fields<PartEvidence>& f);

/// Hours that a part has served in one installation; nothing where a counter reading lacks.
[[nodiscard]] std::optional<double> hours_served(const bay::Aircraft& aircraft,
                                                 const bay::Installation& installation);

/// What leans, from strongest to weakest. Renew: a limit on its life that is past and binds, or
/// that its maker recommends where the failure is grave and nothing stands in for the part; a
/// reading that does not conform. Watch: any other limit past, in tolerance or unknown, a life
/// nearly used up (9 tenths; 3 quarters where it stands alone like that), a reading undecided or
/// never taken, a drift that meets its limit within a year, an open defect. Else: leave.
/// @source the shares and the year are ours (docs/decisions/0019-renew-watch-leave.md); what may
///         follow from a failure: table consequence, common practice
[[nodiscard]] PartEvidence part_evidence(const bay::State& state, const bay::Aircraft& aircraft,
                                         const bay::PositionAdded& position,
                                         const describe::Context& context);

}  // namespace wm::desk
