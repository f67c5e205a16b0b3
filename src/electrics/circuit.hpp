#pragma once
/// A small solver for direct-current circuits: resistors, voltage sources with internal
/// resistance, current sources, joined at named nodes.
///
/// Modified nodal analysis: one equation a node (currents add to nothing), and one for each
/// branch whose current is unknown (voltage sources, and resistors of 0 ohm).

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "outcome/result.hpp"

namespace wm::electrics {

enum class Branch : std::uint8_t {
  resistor,
  voltage_source,  ///< `from` is its plus pole
  current_source   ///< drives its current through itself from `from` to `to`
};

struct CircuitElement {
  Branch kind{Branch::resistor};
  std::string name;
  std::string from;
  std::string to;
  double value{};         ///< ohm, V or A
  double internal_ohm{};  ///< of a voltage source, >= 0
};

struct NodeVoltage {
  std::string node;
  double volts{};
};

/// One element of the solved circuit.
struct BranchState {
  std::string name;
  double amperes{};  ///< through the element from `from` to `to`; a battery at work: negative
  double volts{};    ///< v(from) - v(to)
};

struct SolvedCircuit {
  std::vector<NodeVoltage> nodes;     ///< in the order in which they are first named
  std::vector<BranchState> branches;  ///< in the order of the elements
  double residual{};                  ///< largest rest of an equation, against its terms
};

/// Voltages of all nodes against `ground`, and the current of every element.
///
/// @param elements  0 ohm is allowed (a wire); a current source may not end at a node that
///                  nothing else joins.
/// @param ground    The node that counts as 0 V.
/// @return missing: no elements, no name or node (path "elements/2/from");
///         out_of_bounds: a resistance below 0, a figure that is no number;
///         duplicate: two elements of one name; not_found: no element ends at the ground;
///         not_applicable: floating nodes (named), a loop of ideal sources and wires (its
///         elements named), or equations that cannot be solved (values too far apart).
/// @source Modified nodal analysis, textbook method; checked against ngspice.
[[nodiscard]] Result<SolvedCircuit> solve(std::span<const CircuitElement> elements,
                                          std::string_view ground);

/// @return not_found with the nodes there are.
[[nodiscard]] Result<double> voltage_at(const SolvedCircuit& solved, std::string_view node);
/// @return not_found with the elements there are.
[[nodiscard]] Result<BranchState> branch_of(const SolvedCircuit& solved, std::string_view name);

}  // namespace wm::electrics
