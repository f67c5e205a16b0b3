#include "staging/detail/noisy_or.hpp"

#include <cstddef>

namespace wm::staging::detail {
namespace {

/// One number for each set of seen symptoms.
using OverSets = std::vector<double>;

constexpr std::size_t bit(int i) { return std::size_t{1} << i; }

/// Sets without symptom `j` and the same sets with it lie `half` apart, in runs of that length:
/// straight loops, which the compiler turns into wide ones.
template <class Step>
void over_pairs(OverSets& mass, int j, Step step) {
  const std::size_t half = bit(j);
  double* const all = mass.data();
  for (std::size_t run = 0; run < mass.size(); run += 2 * half) {
    double* const without = all + run;
    double* const with = without + half;
    for (std::size_t k = 0; k < half; ++k) step(without[k], with[k]);
  }
}

/// The symptom comes about with its chance, whatever did so before.
void bring_about(OverSets& mass, const ShowsAs& by) {
  over_pairs(mass, by.seen, [chance = by.chance](double& without, double& with) {
    with += chance * without;
    without *= 1.0 - chance;
  });
}

/// The same seen from behind: chance of the rest, before this symptom was decided.
void undecide(OverSets& rest, const ShowsAs& by) {
  over_pairs(rest, by.seen, [chance = by.chance](double& without, const double& with) {
    without = chance * with + (1.0 - chance) * without;
  });
}

OverSets with_leaks(const std::vector<double>& leaks) {
  OverSets mass(bit(static_cast<int>(leaks.size())), 0.0);
  mass[0] = 1.0;
  for (std::size_t j = 0; j < leaks.size(); ++j) {
    bring_about(mass, {static_cast<int>(j), leaks[j]});
  }
  return mass;
}

/// @param go_back  false: present only forwards, true: `mass` is the rest behind the cause
OverSets present_part(OverSets mass, const Cause& cause, bool go_back) {
  for (const ShowsAs& s : cause.shows_as) {
    if (go_back) {
      undecide(mass, s);
    } else {
      bring_about(mass, s);
    }
  }
  for (double& m : mass) m *= cause.present;
  return mass;
}

OverSets passed(const OverSets& mass, const Cause& cause, bool go_back) {
  OverSets out = present_part(mass, cause, go_back);
  for (std::size_t set = 0; set < mass.size(); ++set) out[set] += cause.absent * mass[set];
  return out;
}

}  // namespace

double evidence(const std::vector<Cause>& causes, const std::vector<double>& leaks) {
  OverSets mass = with_leaks(leaks);
  double factor = 1.0;
  for (const Cause& c : causes) {
    if (c.shows_as.empty()) {
      factor *= c.absent + c.present;
    } else {
      mass = passed(mass, c, false);
    }
  }
  return mass.back() * factor;
}

Explained explain(const std::vector<Cause>& causes, const std::vector<double>& leaks) {
  Explained out;
  out.at_fault.assign(causes.size(), 0.0);
  double factor = 1.0;
  std::vector<std::size_t> linked;
  std::vector<OverSets> before{with_leaks(leaks)};
  for (std::size_t i = 0; i < causes.size(); ++i) {
    const Cause& c = causes[i];
    if (c.shows_as.empty()) {
      // Nothing seen speaks for or against it: its own weights decide.
      factor *= c.absent + c.present;
      out.at_fault[i] = c.absent + c.present > 0.0 ? c.present / (c.absent + c.present) : 0.0;
      continue;
    }
    linked.push_back(i);
    before.push_back(passed(before.back(), c, false));
  }
  const double total = before.back().back();
  out.evidence = total * factor;
  if (!(out.evidence > 0.0)) return out;
  OverSets rest(before.front().size(), 0.0);
  rest.back() = 1.0;
  for (std::size_t k = linked.size(); k-- > 0;) {
    const Cause& c = causes[linked[k]];
    const OverSets here = present_part(rest, c, true);
    double joint = 0.0;
    for (std::size_t set = 0; set < here.size(); ++set) joint += before[k][set] * here[set];
    out.at_fault[linked[k]] = joint / total;
    rest = passed(rest, c, true);
  }
  return out;
}

}  // namespace wm::staging::detail
