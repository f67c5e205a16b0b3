#include "statistics/draws.hpp"

#include <cassert>
#include <cmath>
#include <limits>

#include "statistics/detail/portable_math.hpp"

namespace wm::statistics {

using detail::portable_exp;
using detail::portable_log;

double Draws::uniform() { return static_cast<double>(engine_() >> 11) * 0x1.0p-53; }

double Draws::uniform(double low, double high) { return low + (high - low) * uniform(); }

double Draws::normal() {
  if (has_spare_) {
    has_spare_ = false;
    return spare_;
  }
  double x = 0.0;
  double y = 0.0;
  double r2 = 0.0;
  do {
    x = uniform(-1.0, 1.0);
    y = uniform(-1.0, 1.0);
    r2 = x * x + y * y;
  } while (r2 >= 1.0 || r2 == 0.0);
  const double scale = std::sqrt(-2.0 * portable_log(r2) / r2);  // sqrt is exact in IEEE 754
  spare_ = y * scale;
  has_spare_ = true;
  return x * scale;
}

double Draws::gamma(double shape, double rate) {
  assert(shape > 0.0 && rate > 0.0);
  if (shape < 1.0) {
    // Gamma(a) = Gamma(a + 1) U^(1/a); a tiny U with a tiny shape is simply 0.
    const double bigger = gamma(shape + 1.0, rate);
    const double power = portable_log(uniform() + 0x1.0p-54) / shape;
    return power < -690.0 ? 0.0 : bigger * portable_exp(power);
  }
  const double d = shape - 1.0 / 3.0;
  const double c = 1.0 / std::sqrt(9.0 * d);
  while (true) {
    const double x = normal();
    const double root = 1.0 + c * x;
    if (root <= 0.0) continue;
    const double v = root * root * root;
    const double u = uniform() + 0x1.0p-54;  // never 0
    if (portable_log(u) < 0.5 * x * x + d - d * v + d * portable_log(v)) return d * v / rate;
  }
}

double Draws::exponential(double rate) {
  assert(rate > 0.0);
  return -portable_log(uniform() + 0x1.0p-54) / rate;
}

double Draws::triangular(double low, double high) {
  return low + (high - low) * 0.5 * (uniform() + uniform());
}

double Draws::arcsine(double low, double high) {
  // cos(2 a) of a random direction a, from a random point in the unit disc: no sine needed.
  double x = 0.0;
  double y = 0.0;
  double r2 = 0.0;
  do {
    x = uniform(-1.0, 1.0);
    y = uniform(-1.0, 1.0);
    r2 = x * x + y * y;
  } while (r2 >= 1.0 || r2 == 0.0);
  const double cosine = (x * x - y * y) / r2;
  return 0.5 * (low + high) + 0.5 * (high - low) * cosine;
}

double Draws::student_t(double nu) {
  assert(nu > 0.0);
  if (std::isinf(nu)) return normal();
  const double z = normal();
  return z / std::sqrt(gamma(0.5 * nu, 0.5) / nu);
}

std::uint64_t Draws::index(std::uint64_t n) {
  assert(n > 0);
  const std::uint64_t most = std::numeric_limits<std::uint64_t>::max();
  const std::uint64_t limit = most - most % n;
  std::uint64_t draw = engine_();
  while (draw >= limit) draw = engine_();
  return draw % n;
}

}  // namespace wm::statistics
