#include "hose/criterion.hpp"

namespace wm::hose {

using evidence::Verdict;

namespace {

constexpr double k_rounding = 1e-12;

Criterion looked(std::string what, Seen seen, Seen good, std::string source) {
  Criterion c;
  c.what = std::move(what);
  c.source = std::move(source);
  if (seen == Seen::not_looked) {
    c.reason = "nobody has looked";
    return c;
  }
  c.verdict = seen == good ? Verdict::conforms : Verdict::does_not_conform;
  c.reason = seen == Seen::yes ? "yes" : "no";
  return c;
}

}  // namespace

Criterion must_not_be(std::string what, Seen seen, std::string source) {
  return looked(std::move(what), seen, Seen::no, std::move(source));
}

Criterion must_be(std::string what, Seen seen, std::string source) {
  return looked(std::move(what), seen, Seen::yes, std::move(source));
}

Verdict guarded(const BenchReading& reading, const evidence::Limits& limits) {
  // Limits are inclusive in whatever unit they were typed.
  evidence::Limits l = limits;
  if (l.lower) *l.lower -= k_rounding * (1.0 + (*l.lower < 0 ? -*l.lower : *l.lower));
  if (l.upper) *l.upper += k_rounding * (1.0 + (*l.upper < 0 ? -*l.upper : *l.upper));
  const auto decision = evidence::decide(
      {reading.value, reading.u, reading.expanded(), evidence::Distribution::normal}, l, {});
  return decision ? decision->verdict : Verdict::undecided;
}

Verdict over_all(std::span<const Criterion> lines) {
  bool any = false;
  bool open = false;
  bool untested = false;
  for (const Criterion& line : lines) {
    if (!line.counts) continue;
    if (line.verdict == Verdict::does_not_conform) return Verdict::does_not_conform;
    any = true;
    open = open || line.verdict == Verdict::undecided;
    untested = untested || line.verdict == Verdict::not_tested;
  }
  if (open) return Verdict::undecided;
  return any && !untested ? Verdict::conforms : Verdict::not_tested;
}

std::string_view describe(describe::Choices<Seen>& c) {
  c.has(Seen::not_looked, "not-looked", "not looked")
      .has(Seen::yes, "yes", "yes")
      .has(Seen::no, "no", "no");
  return "seen";
}

std::string_view describe(describe::Fields<Criterion>& f) {
  f.has<&Criterion::what>("what", "What");
  f.has<&Criterion::verdict>("verdict", "Verdict");
  f.has<&Criterion::reason>("reason", "Why");
  f.has<&Criterion::source>("source", "Where the limit comes from");
  f.has<&Criterion::counts>("counts", "Counts for the verdict over all");
  return "criterion";
}

}  // namespace wm::hose
