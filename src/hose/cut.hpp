#pragma once
/// "hose-cut": what to cut and what to fetch for all hoses of a change that are made on the bench,
/// and the work card of each, in the order of the trade.
///
///   cut length    = overall - cut-off of each end                       (length.hpp)
///   sleeve length = (cut length + visible socket of each end + 2 x past the socket
///                    + sum of bends x sleeve outside diameter / 2) x (1 + extra)

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "describe/catalogue.hpp"
#include "hose/length.hpp"
#include "hose/plan.hpp"
#include "hose/proof_pressure.hpp"

namespace wm::hose {

/// How the ends are put on.
enum class Making : std::uint8_t {
  not_said,
  elastomer_screwed,  ///< socket screwed onto the hose, nipple screwed into it
  ptfe_sleeved        ///< a small sleeve on the tube inside the braid
};

struct EndToMake {
  EndForm form{EndForm::straight};
  std::string fitting;                   ///< as it is called in the parts list
  std::optional<EnteredLength> rigid;    ///< from its seat to where the hose can bend
  std::optional<EnteredLength> cut_off;  ///< overall length less hose, for this end
  std::string family;                    ///< row of the table "hose-cut-off"
  std::optional<EnteredLength> socket;   ///< of the socket that the sleeve shall cover
  std::optional<EnteredLength> widest;   ///< widest across, as it would go through the sleeve
};

struct SleeveToMake {
  std::string name;
  std::optional<EnteredLength> inside;
  std::optional<EnteredLength> outside;
};

struct AssemblyToMake {
  std::string name;
  Making making{Making::not_said};
  std::string family;
  std::string size;
  std::int64_t count{1};
  std::optional<EnteredLength> overall;
  std::optional<EnteredLength> flexible;  ///< hose that can bend, instead of the overall length
  EndToMake near_end;
  EndToMake far_end;
  std::string pair_form;  ///< row of "hose-cut-off-pair"
  std::optional<quantity::Entered<quantity::Angle>> clocking;
  std::vector<quantity::Entered<quantity::Angle>> bends;  ///< that the hose makes when fitted
  std::optional<SleeveToMake> sleeve;
  ProofFamily proof_family{ProofFamily::not_said};
  std::optional<EnteredPressure> makers_proof;
  std::string makers_source;
  std::optional<EnteredLength> least_bore;  ///< of its end fittings, for the ball
};

struct HoseCutInput {
  std::vector<AssemblyToMake> assemblies;
  quantity::Entered<quantity::Length> sleeve_past_socket{quantity::inches(0.125), 0.0, "1/8 in"};
  quantity::Fraction sleeve_extra{0.02};
  bool ahead_of_firewall{true};
};

struct WorkStep {
  std::string text;
  std::string limit;  ///< empty: none
  std::string source;
  std::string box;  ///< what is written down: "gap near end, in", "initials"
};

struct AssemblyCut {
  std::string name;
  EnteredLength overall;
  EnteredLength cut_length;
  std::vector<std::string> measured;
  std::optional<EnteredLength> sleeve_length;
  std::vector<std::string> sleeve_over_ends;  ///< does an end pass through the sleeve
  std::vector<WorkStep> card;
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

struct PartNeeded {
  std::string what;
  std::optional<std::int64_t> count;    ///< of what comes in pieces
  std::optional<EnteredLength> length;  ///< all of it, without kerf, trim and waste
  std::vector<std::string> used_for;
};

struct HoseCutAnswer {
  std::vector<AssemblyCut> assemblies;
  std::vector<PartNeeded> parts;
  std::vector<PieceToCut> pieces;  ///< for "cut-plan"
  std::vector<std::string> notes;
};

/// Hose fire sleeve to cut.
/// @param sockets  visible socket of both ends together
/// @param bends    sum of the bends, radians
/// @source hoses notes, section 8, derived there; past the socket 1/8 in: a hose shop's page
///         (secondary); 1 to 2 % extra: common practice, no source
[[nodiscard]] quantity::Length sleeve_length(quantity::Length cut, quantity::Length sockets,
                                             quantity::Length past_socket, double bends,
                                             quantity::Length outside, quantity::Fraction extra);

/// The work card: steps, figures, limits, sources.
/// @pre `cut` has its lengths
[[nodiscard]] std::vector<WorkStep> work_card(const AssemblyToMake& make, const HoseCutInput& all,
                                              const AssemblyCut& cut,
                                              const describe::Context& context);

/// @return missing (assemblies, how the ends are put on, size, a length, a cut-off, sockets and
///         diameter of a sleeve, clocking of two elbows), not_found (tables), conflict (both
///         lengths; those of length-allowance), out_of_bounds (a count)
[[nodiscard]] Checked<HoseCutAnswer> hose_cut(const HoseCutInput& input,
                                              const describe::Context& context);

std::string_view describe(describe::Choices<Making>& c);
std::string_view describe(describe::Fields<EndToMake>& f);
std::string_view describe(describe::Fields<SleeveToMake>& f);
std::string_view describe(describe::Fields<AssemblyToMake>& f);
std::string_view describe(describe::Fields<HoseCutInput>& f);
std::string_view describe(describe::Fields<WorkStep>& f);
std::string_view describe(describe::Fields<AssemblyCut>& f);
std::string_view describe(describe::Fields<PartNeeded>& f);
std::string_view describe(describe::Fields<HoseCutAnswer>& f);

}  // namespace wm::hose
