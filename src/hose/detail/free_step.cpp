#include "hose/detail/free_step.hpp"

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <Eigen/QR>

namespace wm::hose::detail {

using Matrix = Eigen::MatrixXd;
using Column = Eigen::VectorXd;

FreeStep free_step(const Matrix& matrix, const Column& slope, const Matrix& rows,
                   const Column& misfit, double first_shift, bool ask_slip) {
  FreeStep out;
  const auto size = matrix.rows(), held_by = rows.cols();
  Matrix open = Matrix::Identity(size, size);
  Matrix held(size, 0), upper;
  Column along = Column::Zero(size);
  if (held_by > 0) {
    const Eigen::HouseholderQR<Matrix> qr(rows);
    const Matrix q = qr.householderQ() * Matrix::Identity(size, size);
    held = q.leftCols(held_by);
    open = q.rightCols(size - held_by);
    upper = qr.matrixQR().topRows(held_by).triangularView<Eigen::Upper>();
    const double least = upper.diagonal().cwiseAbs().minCoeff();
    if (!(least > 1e-12 * upper.diagonal().cwiseAbs().maxCoeff())) return out;
    along = held * upper.transpose().triangularView<Eigen::Lower>().solve(-misfit);
  }
  const Matrix reduced = open.transpose() * matrix * open;
  for (int tries = 0; tries < 40; ++tries) {
    Matrix shifted = reduced;
    shifted.diagonal().array() += out.shift;
    const Eigen::LLT<Matrix> llt(shifted);
    if (llt.info() == Eigen::Success) {
      out.step = along - open * llt.solve(open.transpose() * (slope + matrix * along));
      out.multipliers = held_by == 0 ? Column()
                                     : Column(upper.triangularView<Eigen::Upper>().solve(
                                           held.transpose() * (-slope - matrix * out.step)));
      out.good = out.step.allFinite() && out.multipliers.allFinite();
      break;
    }
    out.shift = out.shift == 0 ? first_shift : 4 * out.shift;
  }
  if (ask_slip && out.shift > 0) {
    const Eigen::SelfAdjointEigenSolver<Matrix> eigen(reduced);
    out.slip = open * eigen.eigenvectors().col(0);
    out.slip /= out.slip.cwiseAbs().maxCoeff();
  }
  return out;
}

}  // namespace wm::hose::detail
