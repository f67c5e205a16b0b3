#include <fmt/core.h>

#include <algorithm>

#include "electrics/detail/figures.hpp"
#include "electrics/detail/start_model.hpp"
#include "quantity/as_typed.hpp"
#include "tables/electrics/cranking_drop_limits.hpp"

namespace wm::electrics {

quantity::Voltage rule_of_thumb(quantity::Current current) {
  const auto& table = tables::cranking_drop_limits;
  const auto row = detail::row_of(table, "whole-circuit").value_or(0);
  return {current.si * detail::figure(table, row, "limit").value_or(0.0) /
          detail::figure(table, row, "per").value_or(1.0)};
}

namespace detail {
namespace {

constexpr double k_least_volts_of_24 = 18.0;

/// Which elements a rule speaks of.
enum class Stretch : std::uint8_t { all, to_contactor, after_contactor };

class Rules {
 public:
  Rules(const StartingInput& in, StartingAnswer& out) : in_(in), out_(out) {
    const auto found =
        std::find_if(in.elements.begin(), in.elements.end(), [](const StartElement& e) {
          return e.kind == StartElementKind::contactor && !e.in_return;
        });
    contactor_ = static_cast<std::size_t>(found - in.elements.begin());
  }

  void run() {
    add("whole-circuit", "whole circuit, for each 100 A", rule_of_thumb(out_.current),
        sum(Stretch::all));
    // With no cable or joint before the contactor there is no such stretch to speak of.
    if (contactor_ > 0 && contactor_ < in_.elements.size()) {
      add("battery-to-contactor", "battery to the first contactor", {}, sum(Stretch::to_contactor));
      if (in_.battery.open_circuit.value.si >= k_least_volts_of_24) {
        add("battery-to-contactor-24", "battery to the first contactor, 24 V", {},
            sum(Stretch::to_contactor));
        add("contactor-to-starter-24", "contactor to starter, 24 V", {},
            sum(Stretch::after_contactor));
      }
    }
    for (std::size_t i = 0; i < in_.elements.size(); ++i) {
      if (in_.elements[i].kind == StartElementKind::contactor) {
        add("contactor", in_.elements[i].name, {}, drop(i));
      }
    }
  }

 private:
  double drop(std::size_t i) const {
    if (!in_.elements[i].beside.empty()) return 0.0;
    const auto& e = out_.elements[i];
    return e.measured ? e.measured->si * out_.current.si : e.computed.si;
  }

  double sum(Stretch stretch) const {
    double volts = 0.0;
    for (std::size_t i = 0; i < in_.elements.size(); ++i) {
      if (stretch != Stretch::all && in_.elements[i].in_return) continue;
      if (stretch == Stretch::to_contactor && i >= contactor_) continue;
      if (stretch == Stretch::after_contactor && i <= contactor_) continue;
      volts += drop(i);
    }
    return volts;
  }

  void add(std::string_view name, std::string what, std::optional<quantity::Voltage> limit,
           double volts) {
    const auto& table = tables::cranking_drop_limits;
    const auto row = row_of(table, name).value_or(0);
    StartRule r;
    r.rule = std::move(what);
    r.scope = std::string(word(table, row, "scope"));
    r.limit = limit ? limit : quantity::Voltage{figure(table, row, "limit").value_or(0.0)};
    r.value = quantity::Voltage{volts};
    r.against = volts > r.limit->si * (1 + 1e-12) ? "over" : "within";
    r.source = fmt::format("{} ({})", word(table, row, "source"),
                           provenance(table, row) == "read" ? "read" : "advice");
    out_.rules.push_back(std::move(r));
  }

  const StartingInput& in_;
  StartingAnswer& out_;
  std::size_t contactor_{};
};

}  // namespace

void show_rules(const StartingInput& in, StartingAnswer& out) { Rules(in, out).run(); }

}  // namespace detail
}  // namespace wm::electrics
