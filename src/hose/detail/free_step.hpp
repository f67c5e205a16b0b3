#pragma once
/// One step of Newton's method for a minimum under equations, in the directions they leave free.
/// Dense: for what is asked once, not while an end is moved.

#include <Eigen/Core>

namespace wm::hose::detail {

struct FreeStep {
  bool good{};
  Eigen::VectorXd step;         ///< of the unknowns
  Eigen::VectorXd multipliers;  ///< what to add to those of the equations
  double shift{};               ///< 0 where the energy has a minimum in the free directions
  Eigen::VectorXd slip;         ///< asked for and no minimum: the way down, greatest entry 1
};

/// @param matrix  second derivatives of the Lagrangian, symmetric
/// @param slope   its first derivatives
/// @param rows    derivatives of the equations, one a column
/// @param misfit  what the equations lack
/// @param first_shift  smallest addition to the diagonal worth trying
[[nodiscard]] FreeStep free_step(const Eigen::MatrixXd& matrix, const Eigen::VectorXd& slope,
                                 const Eigen::MatrixXd& rows, const Eigen::VectorXd& misfit,
                                 double first_shift, bool ask_slip);

}  // namespace wm::hose::detail
