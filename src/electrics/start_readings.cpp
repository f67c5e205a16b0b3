#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "electrics/detail/milliohm.hpp"
#include "electrics/detail/start_model.hpp"
#include "evidence/decision.hpp"

namespace wm::electrics::detail {
namespace {

using quantity::pencil;

// A good stranded wire has 0.88 to 1.0 of its table maximum (from areas and resistivity).
constexpr double k_least_of_maximum = 0.88;

/// Probes the other way round show the same drop with its sign changed.
Known drop_over(const StartElement& e) {
  const Known read = known(*e.drop);
  return {std::abs(read.value), read.doubt};
}

/// The cable as a shunt. Of several, the one that gives the least current: a bad lug on a cable
/// only ever makes it read high.
std::optional<Known> from_cables(const StartingInput& in, const StartModel& model,
                                 std::string& which) {
  std::optional<Known> least;
  for (std::size_t i = 0; i < in.elements.size(); ++i) {
    const StartElement& e = in.elements[i];
    if (!model.elements[i].table_cable || !e.drop || e.drop->value.si == 0.0) continue;
    const Known drop = drop_over(e);
    const double low = drop.value / together(model, i);
    const double high = low / k_least_of_maximum;
    const Known found{(low + high) / 2, (high - low) / 2 + high * drop.doubt / drop.value};
    if (!least || found.value < least->value) {
      least = found;
      which = e.name;
    }
  }
  return least;
}

ElementStanding stands(const Known& r, double expected) {
  switch (evidence::judge_upper(r.value, r.doubt, expected)) {
    case evidence::Verdict::conforms:
      return ElementStanding::as_expected;
    case evidence::Verdict::does_not_conform:
      return ElementStanding::high;
    default:
      return ElementStanding::undecided;
  }
}

std::optional<Known> current_read(const StartingInput& in, const StartModel& model,
                                  StartingAnswer& out) {
  if (in.measured_current) return known(*in.measured_current);
  std::string which;
  const auto found = from_cables(in, model, which);
  if (found && in.current) {
    out.notes.push_back(
        fmt::format("The {} entered are what the starter is expected to draw, not a reading: the "
                    "drops are judged by "
                    "the current that `{}` shows. Enter a clamp reading as the measured current.",
                    in.current->text, which));
  }
  if (found) {
    out.working.push_back(fmt::format(
        "current not read: `{}` serves as shunt, 0.88 to 1.0 of its maximum: {} A +-{} A", which,
        pencil(found->value), pencil(found->doubt)));
    out.notes.push_back(
        fmt::format("The current was not read: it follows from the drop over `{}`, "
                    "whose own fault would hide. Use a clamp meter.",
                    which));
    return found;
  }
  out.notes.emplace_back(
      "The current was not read and no cable can serve as shunt: the drops give "
      "no milliohm, only their share of the whole.");
  return std::nullopt;
}

void shares(const StartingInput& in, StartingAnswer& out) {
  double sum = 0.0;
  for (const auto& e : in.elements) {
    if (e.drop) sum += drop_over(e).value;
  }
  for (const auto& e : in.elements) {
    if (!e.drop || !(sum > 0.0)) continue;
    out.working.push_back(fmt::format("{}: {} V of {} V measured, {} %", e.name,
                                      pencil(drop_over(e).value), pencil(sum),
                                      quantity::significant(100 * drop_over(e).value / sum, 2)));
  }
}

void judge_one(const StartElement& e, double should, const Known& amps, StartElementAnswer& a,
               StartingAnswer& out) {
  const Known r = resistance_of(drop_over(e), amps);
  if (e.drop->value.si < 0.0)
    out.notes.push_back(fmt::format(
        "{}: the reading is negative: the probes were the other way round. Its size counts.",
        e.name));
  a.measured = quantity::Resistance{r.value};
  a.doubt = quantity::Resistance{r.doubt};
  a.excess = quantity::Resistance{r.value - should};
  a.standing = stands(r, should);
  out.working.push_back(fmt::format("{}: {} V / {} A = {} +-{}; should have {} at most", e.name,
                                    pencil(drop_over(e).value), pencil(amps.value),
                                    milliohm(r.value), milliohm(r.doubt), milliohm(should)));
}

}  // namespace

void judge_readings(const StartingInput& in, StartModel& model, StartingAnswer& out) {
  const bool any = std::any_of(in.elements.begin(), in.elements.end(),
                               [](const StartElement& e) { return e.drop.has_value(); });
  if (!any) return;
  const auto amps = current_read(in, model, out);
  if (!amps) {
    shares(in, out);
    return;
  }
  out.read_current = quantity::Current{amps->value};
  for (std::size_t i = 0; i < in.elements.size(); ++i) {
    if (!in.elements[i].drop) continue;
    judge_one(in.elements[i], together(model, i), *amps, out.elements[i], out);
  }
  // Only now: the expectation of one must not shift while another is judged.
  for (std::size_t i = 0; i < in.elements.size(); ++i) {
    if (!out.elements[i].measured) continue;
    // What lies beside a measured head is inside its reading.
    for (std::size_t k = 0; k < in.elements.size(); ++k) {
      if (k != i && model.elements[k].head == i) model.ohms[k] = 1e9;
    }
    model.ohms[i] = std::max(0.0, out.elements[i].measured->si);
  }
}

}  // namespace wm::electrics::detail
