#include "desk/check_kinds.hpp"

#include <algorithm>
#include <array>

#include "quantity/kinds.hpp"

namespace wm::desk {
namespace {

using bay::CheckKind;
using quantity::KindOf;

constexpr std::array k_resistance{KindOf::resistance};
constexpr std::array k_voltage{KindOf::voltage};
// A drop is judged in millivolts, or turned into milliohms by the current.
constexpr std::array k_drop{KindOf::voltage, KindOf::resistance};
constexpr std::array k_pressure{KindOf::pressure_gauge, KindOf::pressure_absolute,
                                KindOf::pressure_difference};
constexpr std::array k_temperature{KindOf::temperature, KindOf::temperature_difference};
constexpr std::array k_speed{KindOf::rotation_speed};
constexpr std::array k_length{KindOf::length};
constexpr std::array k_angle{KindOf::angle};
constexpr std::array k_capacitance{KindOf::capacitance};

// What a reading leaves open follows from what it measures (electrical-ignition.md); the words
// are ours.
constexpr std::array k_notes{
    CheckKindNote{CheckKind::lead_resistance, k_resistance,
                  "Insulation: not tested. Leads can be crossed: check tower to cylinder.",
                  "harness-check"},
    CheckKindNote{CheckKind::resistance, k_resistance, "", ""},
    CheckKindNote{CheckKind::insulation, k_resistance, "Conductor: not tested.", ""},
    CheckKindNote{CheckKind::voltage_drop, k_drop, "", "joint-drop"},
    CheckKindNote{CheckKind::voltage, k_voltage, "", ""},
    CheckKindNote{CheckKind::pressure, k_pressure, "", ""},
    CheckKindNote{CheckKind::temperature, k_temperature, "", ""},
    CheckKindNote{CheckKind::speed, k_speed, "", ""},
    CheckKindNote{CheckKind::gap, k_length, "", ""},
    CheckKindNote{CheckKind::coil_primary, k_resistance,
                  "Insulation and shorted turns: not tested. A few shorted turns hardly change "
                  "the resistance.",
                  "coil-check"},
    CheckKindNote{CheckKind::coil_secondary, k_resistance,
                  "Insulation under high tension: not tested.", "coil-check"},
    CheckKindNote{CheckKind::coil_double_ended, k_resistance,
                  "Insulation under high tension: not tested.", "coil-check"},
    CheckKindNote{CheckKind::condenser, k_capacitance,
                  "Leakage and series resistance: not tested by the capacitance.",
                  "condenser-check"},
    CheckKindNote{CheckKind::point_gap, k_length, "Timing: not tested. It moves with the gap.",
                  "points-timing"},
    CheckKindNote{CheckKind::magneto_timing, k_angle, "Internal timing of the magneto: not tested.",
                  "points-timing"},
    CheckKindNote{CheckKind::speed_drop, k_speed,
                  "Grounding of the other magneto's switch lead: not tested. A magneto whose lead "
                  "is open is live.",
                  "rpm-drop"},
    CheckKindNote{CheckKind::plug_gap, k_length, "Resistor and insulator: not tested.",
                  "plug-check"},
    CheckKindNote{CheckKind::plug_resistor, k_resistance, "Gap and insulator: not tested.",
                  "plug-check"},
    CheckKindNote{CheckKind::compression, k_pressure,
                  "Where it leaks: listen at exhaust, intake and breather.", ""},
    CheckKindNote{CheckKind::contactor_coil, k_resistance, "Contacts: not tested.",
                  "contactor-check"},
    CheckKindNote{CheckKind::contactor_contacts, k_drop, "Coil and release: not tested.",
                  "contactor-check"},
    CheckKindNote{CheckKind::bond, k_drop, "", "bonding-check"},
    CheckKindNote{CheckKind::other, {}, "", ""}};

}  // namespace

const CheckKindNote& note_of(bay::CheckKind kind) {
  const auto* at = std::ranges::find(k_notes, kind, &CheckKindNote::kind);
  return at == k_notes.end() ? k_notes.back() : *at;
}

const describe::Caution* caution_of(const bay::CheckDescribed& check) {
  if (check.kind == CheckKind::compression) return &describe::caution::compression;
  const auto cranks = [](std::string_view text) {
    return text.find("cranking") != std::string_view::npos;
  };
  const bool by_words = cranks(check.title) || cranks(check.probes) || cranks(check.procedure);
  const bool by_kind = check.kind == CheckKind::contactor_contacts;
  return by_words || by_kind ? &describe::caution::cranking : nullptr;
}

bool is_drop(bay::CheckKind kind) {
  return kind == CheckKind::voltage_drop || kind == CheckKind::contactor_contacts ||
         kind == CheckKind::bond;
}

bool reads_in(bay::CheckKind kind, std::string_view unit) {
  const auto& note = note_of(kind);
  return unit.empty() || note.reads.empty() || std::ranges::any_of(note.reads, [&](KindOf k) {
           return quantity::find_unit(k, unit) != nullptr;
         });
}

}  // namespace wm::desk
