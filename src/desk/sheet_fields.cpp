#include "desk/sheet.hpp"

namespace wm::desk {

namespace {
/// A sheet's section has the fields of its payload, in the same words: take them from there.
template <class Payload>
const describe::Field& like(std::string_view key) {
  return *describe::find_field(describe::type_of<Payload>(), key);
}
template <class Payload, auto Member, class T>
void same_field(describe::Fields<T>& f, std::string_view key) {
  const auto& field = like<Payload>(key);
  auto added = f.template has<Member>(key, field.label);
  if (field.needed) added.needed(field.example);
  if (!field.needed && !field.example.empty()) added.example(field.example);
  if (!field.help.empty()) added.help(field.help);
  if (field.unique) added.unique();
  if (field.lowest && field.above) added.above(*field.lowest);
  if (field.lowest && !field.above) added.at_least(*field.lowest);
  if (field.highest) added.at_most(*field.highest);
}
}  // namespace

std::string_view describe(describe::Fields<SheetPosition>& f) {
  using P = bay::PositionAdded;
  same_field<P, &SheetPosition::id>(f, "id");
  same_field<P, &SheetPosition::name>(f, "name");
  same_field<P, &SheetPosition::system>(f, "system");
  same_field<P, &SheetPosition::chapter>(f, "chapter");
  same_field<P, &SheetPosition::area>(f, "area");
  same_field<P, &SheetPosition::redundant_with>(f, "redundant_with");
  same_field<P, &SheetPosition::plan_x>(f, "plan_x");
  same_field<P, &SheetPosition::plan_y>(f, "plan_y");
  same_field<P, &SheetPosition::note>(f, "note");
  return "sheet-position";
}

std::string_view describe(describe::Fields<SheetJoint>& f) {
  using P = bay::JointAdded;
  same_field<P, &SheetJoint::id>(f, "id");
  same_field<P, &SheetJoint::name>(f, "name");
  same_field<P, &SheetJoint::position>(f, "position");
  same_field<P, &SheetJoint::other_position>(f, "other_position");
  same_field<P, &SheetJoint::kind>(f, "kind");
  same_field<P, &SheetJoint::torque_least>(f, "torque_least");
  same_field<P, &SheetJoint::torque_most>(f, "torque_most");
  same_field<P, &SheetJoint::torque_table>(f, "torque_table");
  same_field<P, &SheetJoint::locking>(f, "locking");
  same_field<P, &SheetJoint::needs_second_person>(f, "needs_second_person");
  return "sheet-joint";
}

std::string_view describe(describe::Fields<SheetStay>& f) {
  f.has<&SheetStay::position>("position", "Was in").needed("oil-hose-upper");
  f.has<&SheetStay::fitted>("fitted", "Fitted on").needed("2016-05-01");
  f.has<&SheetStay::at>("at", "Counter readings when fitted");
  f.has<&SheetStay::until_day>("until_day", "Taken out on").needed("2021-03-01");
  f.has<&SheetStay::until>("until", "Counter readings when it was taken out");
  f.has<&SheetStay::reason>("reason", "Why it was taken out").needed("past its limit");
  return "sheet-stay";
}

std::string_view describe(describe::Fields<SheetExchange>& f) {
  using P = bay::CounterReplaced;
  f.has<&SheetExchange::on>("on", "Exchanged on").needed("2024-05-11");
  same_field<P, &SheetExchange::old_last_hours>(f, "old_last_hours");
  same_field<P, &SheetExchange::new_first_hours>(f, "new_first_hours");
  same_field<P, &SheetExchange::old_last_count>(f, "old_last_count");
  same_field<P, &SheetExchange::new_first_count>(f, "new_first_count");
  same_field<P, &SheetExchange::reason>(f, "reason");
  return "sheet-exchange";
}

std::string_view describe(describe::Fields<SheetPart>& f) {
  using P = bay::PartRegistered;
  same_field<P, &SheetPart::id>(f, "id");
  same_field<P, &SheetPart::type>(f, "type");
  same_field<P, &SheetPart::description>(f, "description");
  same_field<P, &SheetPart::serial>(f, "serial");
  same_field<P, &SheetPart::batch>(f, "batch");
  same_field<P, &SheetPart::maker_reference>(f, "maker_reference");
  same_field<P, &SheetPart::cured>(f, "cured");
  same_field<P, &SheetPart::assembled>(f, "assembled");
  same_field<P, &SheetPart::papers>(f, "papers");
  same_field<P, &SheetPart::mass>(f, "mass");
  same_field<P, &SheetPart::note>(f, "note");
  f.has<&SheetPart::position>("position", "Installed in").example("oil-hose-upper");
  f.has<&SheetPart::fitted>("fitted", "Fitted on").help("Left out: unknown").example("2021-10-02");
  f.has<&SheetPart::at>("at", "Counter readings when fitted");
  f.has<&SheetPart::earlier>("earlier", "Where it was before");
  return "sheet-part";
}

std::string_view describe(describe::Fields<SheetCounter>& f) {
  using P = bay::CounterDefined;
  same_field<P, &SheetCounter::id>(f, "id");
  same_field<P, &SheetCounter::name>(f, "name");
  same_field<P, &SheetCounter::kind>(f, "kind");
  same_field<P, &SheetCounter::meter>(f, "meter");
  f.has<&SheetCounter::read_on>("read_on", "Read on").example("2026-11-20");
  f.has<&SheetCounter::hours>("hours", "Reading in hours")
      .example("1140.6 h")
      .at_least(quantity::hours(0));
  f.has<&SheetCounter::count>("count", "Reading as a count").at_least(0);
  f.has<&SheetCounter::exchanges>("exchanges", "Exchanged meters, oldest first");
  return "sheet-counter";
}

std::string_view describe(describe::Fields<SheetLimit>& f) {
  using P = bay::LimitSet;
  same_field<P, &SheetLimit::id>(f, "id");
  same_field<P, &SheetLimit::title>(f, "title");
  same_field<P, &SheetLimit::position>(f, "position");
  same_field<P, &SheetLimit::counter>(f, "counter");
  same_field<P, &SheetLimit::every_hours>(f, "every_hours");
  same_field<P, &SheetLimit::every_count>(f, "every_count");
  same_field<P, &SheetLimit::every_months>(f, "every_months");
  same_field<P, &SheetLimit::month_rule>(f, "month_rule");
  same_field<P, &SheetLimit::every_days>(f, "every_days");
  same_field<P, &SheetLimit::which>(f, "which");
  same_field<P, &SheetLimit::repeating>(f, "repeating");
  same_field<P, &SheetLimit::carry>(f, "carry");
  same_field<P, &SheetLimit::tolerance_hours>(f, "tolerance_hours");
  same_field<P, &SheetLimit::tolerance_days>(f, "tolerance_days");
  same_field<P, &SheetLimit::on_condition>(f, "on_condition");
  same_field<P, &SheetLimit::start>(f, "start");
  same_field<P, &SheetLimit::since>(f, "since");
  same_field<P, &SheetLimit::since_counter>(f, "since_counter");
  same_field<P, &SheetLimit::authority>(f, "authority");
  same_field<P, &SheetLimit::document>(f, "document");
  same_field<P, &SheetLimit::revision>(f, "revision");
  return "sheet-limit";
}

std::string_view describe(describe::Fields<SheetCheck>& f) {
  using P = bay::CheckDescribed;
  same_field<P, &SheetCheck::id>(f, "id");
  same_field<P, &SheetCheck::title>(f, "title");
  same_field<P, &SheetCheck::position>(f, "position");
  same_field<P, &SheetCheck::kind>(f, "kind");
  same_field<P, &SheetCheck::group>(f, "group");
  same_field<P, &SheetCheck::order>(f, "order");
  same_field<P, &SheetCheck::probes>(f, "probes");
  same_field<P, &SheetCheck::procedure>(f, "procedure");
  same_field<P, &SheetCheck::lowest>(f, "lowest");
  same_field<P, &SheetCheck::highest>(f, "highest");
  same_field<P, &SheetCheck::length>(f, "length");
  same_field<P, &SheetCheck::lowest_per_length>(f, "lowest_per_length");
  same_field<P, &SheetCheck::highest_per_length>(f, "highest_per_length");
  same_field<P, &SheetCheck::terminals>(f, "terminals");
  same_field<P, &SheetCheck::unit>(f, "unit");
  same_field<P, &SheetCheck::authority>(f, "authority");
  same_field<P, &SheetCheck::document>(f, "document");
  same_field<P, &SheetCheck::revision>(f, "revision");
  return "sheet-check";
}

std::string_view describe(describe::Fields<SheetMass>& f) {
  using P = bay::MassRevised;
  same_field<P, &SheetMass::empty_mass>(f, "empty_mass");
  same_field<P, &SheetMass::empty_arm>(f, "empty_arm");
  same_field<P, &SheetMass::forward_limit>(f, "forward_limit");
  same_field<P, &SheetMass::aft_limit>(f, "aft_limit");
  same_field<P, &SheetMass::greatest_mass>(f, "greatest_mass");
  same_field<P, &SheetMass::document>(f, "document");
  return "sheet-mass";
}

std::string_view describe(describe::Fields<AircraftSheet>& f) {
  f.has<&AircraftSheet::aircraft>("aircraft", "Aircraft").needed();
  f.has<&AircraftSheet::mass>("mass", "Mass and balance");
  f.has<&AircraftSheet::counters>("counters", "Counters");
  f.has<&AircraftSheet::positions>("positions", "Positions");
  f.has<&AircraftSheet::joints>("joints", "Joints");
  f.has<&AircraftSheet::parts>("parts", "Parts");
  f.has<&AircraftSheet::limits>("limits", "Limits");
  f.has<&AircraftSheet::checks>("checks", "Checks");
  return "aircraft-sheet";
}

std::string_view describe(describe::Fields<ImportAnswer>& f) {
  f.has<&ImportAnswer::words>("words", "In words");
  f.has<&ImportAnswer::aircraft>("aircraft", "Aircraft");
  f.has<&ImportAnswer::added>("added", "Added");
  f.has<&ImportAnswer::changed>("changed", "Changed");
  f.has<&ImportAnswer::same>("same", "As before");
  f.has<&ImportAnswer::changes>("changes", "Changes");
  return "import-answer";
}

}  // namespace wm::desk
