#pragma once
/// Seeded draws whose digits are equal on every machine and in every library.

#include <cstdint>
#include <random>

namespace wm::statistics {

/// A stream of random numbers. The engine is fixed by the C++ standard; the conversions
/// are our own, because the standard's distributions differ between libraries.
///
/// One stream is used by one thread. Equal seed and equal order of calls give equal numbers.
class Draws {
 public:
  explicit Draws(std::uint64_t seed) : engine_(seed) {}

  /// [0, 1), 53 bits.
  [[nodiscard]] double uniform();
  /// [low, high).
  [[nodiscard]] double uniform(double low, double high);
  /// Mean 0, standard deviation 1 (polar method of Marsaglia).
  [[nodiscard]] double normal();
  [[nodiscard]] double normal(double mean, double sd) { return mean + sd * normal(); }
  /// Mean shape / rate (method of Marsaglia and Tsang, 2000). @pre shape > 0, rate > 0
  [[nodiscard]] double gamma(double shape, double rate);
  /// Mean 1 / rate. @pre rate > 0
  [[nodiscard]] double exponential(double rate);
  /// Isosceles triangle over [low, high].
  [[nodiscard]] double triangular(double low, double high);
  /// Arcsine (U-shaped) over [low, high]: a temperature that cycles between the two.
  [[nodiscard]] double arcsine(double low, double high);
  /// Student's t, nu degrees of freedom. @pre nu > 0
  [[nodiscard]] double student_t(double nu);
  /// Whole number in [0, n), without bias. @pre n > 0
  [[nodiscard]] std::uint64_t index(std::uint64_t n);

 private:
  std::mt19937_64 engine_;
  double spare_{};
  bool has_spare_{false};
};

}  // namespace wm::statistics
