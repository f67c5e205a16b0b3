#include "describe/stands_first.hpp"

// The usual cautions of the trade; each is shown wherever it applies and always defers to the
// maker's manual, local rules and licensed practice. Basis: rules-records of the project's
// reference notes (FAA-H-8083-32 ignition checks for the live magneto; the rest common
// practice, no source, unless a room names one).
namespace wm::describe::caution {

const Caution propeller{
    "propeller",
    "Treat the propeller as live at all times. A magneto needs no battery: an open ground lead "
    "makes it hot. Lift the plug leads before the propeller is turned by hand."};
const Caution cranking{
    "cranking",
    "Cranking test: fuel off, ignition proven dead, somebody at the switch, nobody near the "
    "propeller, and keep to the starter's duty limit."};
const Caution compression{
    "compression",
    "Air pressure in a cylinder turns the propeller. Two people; the one at the propeller "
    "commands."};
const Caution fuel_vapour{
    "fuel-vapour",
    "Fuel, vapour and static: bond container and aircraft, no source of ignition, ventilate, "
    "battery off, extinguisher at hand."};
const Caution proof_with_liquid{
    "proof-with-liquid",
    "Proof test with liquid and never with air. Bleed all air first, stand clear of the ends, "
    "take the pressure off before you touch anything."};
const Caution high_tension{"high-tension",
                           "Ignition high tension exceeds ten thousand volts and can kill."};
const Caution hot_parts{"hot-parts", "Exhaust and cylinders burn: let them cool first."};
const Caution eye_protection{
    "eye-protection", "Eye protection: wire ends, braid, springs and liquids under pressure."};
const Caution battery{
    "battery",
    "Battery: ground off first and on last, rings off, terminals covered, hydrogen vented, the "
    "charger that its chemistry needs."};
const Caution insulation_not_tested{
    "insulation-not-tested",
    "Conductor only: insulation is not tested by this reading, and leads can be crossed. A "
    "harness whose conductor conforms is not thereby insulated."};
const Caution redundant_pair{
    "redundant-pair",
    "Never both halves of a redundant system renewed by the same hands in one stage without a "
    "recorded independent inspection or a written override."};
const Caution look_again{
    "look-again",
    "Look again after the ground run, after the check flight and after the flight that follows."};
const Caution wrong_torque{
    "wrong-torque",
    "Check the unit on the wrench and its calibration. Never tighten past the maximum to align a "
    "hole, never under pressure. The maker's torque goes before any table."};
const Caution defer{
    "defer",
    "The maker's manual, the local authority and licensed practice decide. This program computes "
    "and cites; a person signs."};
const Caution mass_and_balance{
    "mass-and-balance",
    "Mass and balance count only with the aircraft's own weighing report, datum and limits; the "
    "person who signs checks them."};
const Caution dates_are_yours{
    "dates-are-yours",
    "Which rule a limit follows (calendar months or anniversary) stands in its own document; "
    "enter it as written there."};

bool stands_first(const Caution& caution) {
  return caution.id == cranking.id || caution.id == compression.id;
}

}  // namespace wm::describe::caution
