#pragma once
/// Lines of a bench check: what was looked at, what may be said of it, and of all together.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "describe/fields.hpp"
#include "evidence/decision.hpp"
#include "evidence/verdict.hpp"

namespace wm::hose {

/// What was seen of something that is either there or not. Nothing said is "not looked".
enum class Seen : std::uint8_t { not_looked, yes, no };

struct Criterion {
  std::string what;  ///< "leak during or after the hold"
  evidence::Verdict verdict{evidence::Verdict::not_tested};
  std::string reason;  ///< one sentence, with figures
  std::string source;  ///< where the limit or the rule comes from
  bool counts{true};   ///< false: advice, or for information; no part of the verdict over all
};

/// A finding that must not be there: seen, it does not conform.
[[nodiscard]] Criterion must_not_be(std::string what, Seen seen, std::string source);
/// A finding that must be there.
[[nodiscard]] Criterion must_be(std::string what, Seen seen, std::string source);

/// A value as it was read: with its stated uncertainty, or with its last digit alone.
struct BenchReading {
  double value{};
  double u{};
  bool stated{};  ///< an uncertainty was given
  [[nodiscard]] double expanded() const { return 2.0 * u; }
};
/// u = U / 2 where U is stated, otherwise d / sqrt(12) of the last digit d.
template <class Q>
[[nodiscard]] BenchReading reading_of(const quantity::Measured<Q>& m) {
  constexpr double k_root_12 = 3.4641016151377544;
  if (m.expanded_si) return {m.value.si, *m.expanded_si / 2.0, true};
  return {m.value.si, m.resolution_si / k_root_12, false};
}

/// Guarded acceptance (JCGM 106): guard band U = 2 u.
/// @pre a limit is there and the lower is not above the upper
[[nodiscard]] evidence::Verdict guarded(const BenchReading& reading,
                                        const evidence::Limits& limits);

/// Of all lines that count: one that does not conform decides; then one undecided; then one that
/// was not tested. It conforms only when every one of them does, and there is one.
[[nodiscard]] evidence::Verdict over_all(std::span<const Criterion> lines);

std::string_view describe(describe::Choices<Seen>& c);
std::string_view describe(describe::Fields<Criterion>& f);

}  // namespace wm::hose
