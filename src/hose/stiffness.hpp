#pragma once
/// "hose-stiffness": EI of a hose from the sag test or the two-board test. No document gives it.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "hose/length.hpp"

namespace wm::hose {

/// A spare length, held level in the vice; its free tip drops.
struct SagTest {
  EnteredLength free_length;
  quantity::Entered<quantity::MassPerLength> mass;  ///< in the state tested
  std::vector<EnteredLength> drops;                 ///< with the hose rolled on between them
};

/// A short length bent in a U between two parallel boards, touching each along it.
struct BoardTest {
  EnteredLength apart;  ///< centreline to centreline: between the boards, less the diameter
  quantity::Entered<quantity::Force> push;
};

struct HoseStiffnessInput {
  std::variant<SagTest, BoardTest> test;
};

struct HoseStiffnessAnswer {
  quantity::BendingStiffness stiffness;
  std::optional<quantity::BendingStiffness> from_least, from_most;  ///< by the drops one by one
  std::optional<quantity::Length> drop;                             ///< mean
  std::optional<quantity::Length> tightest_radius;  ///< two boards: of the U, to the centreline
  std::vector<std::string> notes;
  std::vector<std::string> working;
};

/// G = w L^3 / EI of a heavy cantilever held level, from its drop over its length.
/// @return nothing outside 0.001 to 0.9
[[nodiscard]] std::optional<double> sag_number(double drop_over_length);

/// Sag: EI = w L^3 / G. Boards: EI = F D^2 / 2.87108, radius D / 2.39628.
/// @return missing (no drop), out_of_bounds (a drop beyond the free length or hardly there)
/// @source derived: the heavy cantilever and the elastica (docs/method/hose-shape.md)
[[nodiscard]] Checked<HoseStiffnessAnswer> hose_stiffness(const HoseStiffnessInput& in,
                                                          const describe::Context& context);

std::string_view describe(describe::Fields<SagTest>& f);
std::string_view describe(describe::Fields<BoardTest>& f);
std::string_view describe(describe::Fields<HoseStiffnessInput>& f);
std::string_view describe(describe::Fields<HoseStiffnessAnswer>& f);

}  // namespace wm::hose
