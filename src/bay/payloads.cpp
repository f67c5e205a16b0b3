#include "bay/payloads.hpp"

namespace wm::bay {

namespace {
using quantity::hours;
using quantity::inches;
using quantity::kilograms;
using quantity::minutes;

/// "Which aircraft" is asked everywhere in the same words.
template <auto Member, class T>
void aircraft_field(describe::Fields<T>& f) {
  f.template has<Member>("aircraft", "Aircraft").needed("pebblewing").refers_to("aircraft");
}
template <auto Member, class T>
void at_field(describe::Fields<T>& f) {
  f.template has<Member>("at", "Counter readings at the time");
}
}  // namespace

std::string_view describe(describe::Fields<CounterReading>& f) {
  f.has<&CounterReading::counter>("counter", "Counter").needed("engine").refers_to("counter");
  f.has<&CounterReading::hours>("hours", "Reading in hours")
      .example("1140.6 h")
      .between(hours(0), hours(200000));
  f.has<&CounterReading::count>("count", "Reading as a count").example("812").between(0, 10000000);
  return "counter-reading";
}

std::string_view describe(describe::Fields<AircraftDescribed>& f) {
  f.has<&AircraftDescribed::id>("id", "Short name, letters and dashes").needed("pebblewing");
  f.has<&AircraftDescribed::name>("name", "Name").needed("Pebblewing");
  f.has<&AircraftDescribed::registration>("registration", "Registration").needed("Q-PEB");
  f.has<&AircraftDescribed::serial>("serial", "Serial number").example("004");
  f.has<&AircraftDescribed::built>("built", "How it was built").example("from plans, by its owner");
  f.has<&AircraftDescribed::engine>("engine", "Engine")
      .example("124 hp, four cylinders, air cooled, carburetted");
  f.has<&AircraftDescribed::engine_serial>("engine_serial", "Engine serial number");
  f.has<&AircraftDescribed::propeller>("propeller", "Propeller").example("fixed pitch, wood");
  f.has<&AircraftDescribed::cylinders>("cylinders", "Cylinders").between(1, 18);
  f.has<&AircraftDescribed::ignition>("ignition", "Ignition");
  f.has<&AircraftDescribed::fuel>("fuel", "Fuel system");
  f.has<&AircraftDescribed::part_43_applies>("part_43_applies",
                                             "Does 14 CFR part 43 apply to this aircraft?")
      .help("Its operating limitations say; unknown is an answer");
  f.has<&AircraftDescribed::note>("note", "Note");
  return "aircraft-described";
}

std::string_view describe(describe::Fields<CounterDefined>& f) {
  aircraft_field<&CounterDefined::aircraft>(f);
  f.has<&CounterDefined::id>("id", "Short name").needed("engine");
  f.has<&CounterDefined::name>("name", "Name").needed("Engine hours");
  f.has<&CounterDefined::kind>("kind", "Kind");
  f.has<&CounterDefined::meter>("meter", "Which meter it is read from").example("hour meter");
  return "counter-defined";
}

std::string_view describe(describe::Fields<CounterRead>& f) {
  aircraft_field<&CounterRead::aircraft>(f);
  f.has<&CounterRead::at>("at", "Counter readings").at_least(1).needed();
  f.has<&CounterRead::note>("note", "Note");
  return "counter-read";
}

std::string_view describe(describe::Fields<CounterReplaced>& f) {
  aircraft_field<&CounterReplaced::aircraft>(f);
  f.has<&CounterReplaced::counter>("counter", "Counter").needed("engine").refers_to("counter");
  f.has<&CounterReplaced::old_last_hours>("old_last_hours", "Old meter stopped at")
      .example("842.1 h")
      .at_least(hours(0));
  f.has<&CounterReplaced::new_first_hours>("new_first_hours", "New meter started at")
      .example("0.0 h")
      .at_least(hours(0));
  f.has<&CounterReplaced::old_last_count>("old_last_count", "Old counter stopped at").at_least(0);
  f.has<&CounterReplaced::new_first_count>("new_first_count", "New counter started at").at_least(0);
  f.has<&CounterReplaced::reason>("reason", "Why").needed("meter failed");
  return "counter-replaced";
}

std::string_view describe(describe::Fields<PositionAdded>& f) {
  aircraft_field<&PositionAdded::aircraft>(f);
  f.has<&PositionAdded::id>("id", "Short name").needed("oil-hose-upper").unique();
  f.has<&PositionAdded::name>("name", "Name").needed("Oil-cooler hose, upper");
  f.has<&PositionAdded::system>("system", "System").needed("oil");
  f.has<&PositionAdded::chapter>("chapter", "System chapter code").example("7920");
  f.has<&PositionAdded::area>("area", "Where it is reached").example("left rear");
  f.has<&PositionAdded::redundant_with>("redundant_with", "Other half of a redundant pair")
      .refers_to("position")
      .example("right-harness");
  f.has<&PositionAdded::plan_x>("plan_x", "Across the plan, 0 (aircraft's right) to 100 (left)")
      .between(0, 100);
  f.has<&PositionAdded::plan_y>("plan_y", "Along the plan, 0 (firewall) to 100 (propeller)")
      .between(0, 100);
  f.has<&PositionAdded::note>("note", "Note");
  return "position-added";
}

std::string_view describe(describe::Fields<JointAdded>& f) {
  aircraft_field<&JointAdded::aircraft>(f);
  f.has<&JointAdded::id>("id", "Short name").needed("oil-hose-upper-engine").unique();
  f.has<&JointAdded::name>("name", "Name").needed("Upper oil hose at the engine");
  f.has<&JointAdded::position>("position", "Position")
      .needed("oil-hose-upper")
      .refers_to("position");
  f.has<&JointAdded::other_position>("other_position", "Joined to").refers_to("position");
  f.has<&JointAdded::kind>("kind", "Kind");
  f.has<&JointAdded::torque_least>("torque_least", "Torque, least").example("230 in-lb");
  f.has<&JointAdded::torque_most>("torque_most", "Torque, most").example("260 in-lb");
  f.has<&JointAdded::torque_table>("torque_table", "Where the torque stands")
      .example("hose swivel nuts, aluminium, dry: NAVEDTRA 14018 table 5-9");
  f.has<&JointAdded::locking>("locking", "How it is locked").example("lock wire 0.032 in");
  f.has<&JointAdded::needs_second_person>("needs_second_person", "A second person must look");
  return "joint-added";
}

std::string_view describe(describe::Fields<PartRegistered>& f) {
  f.has<&PartRegistered::id>("id", "Short name").needed("hose-0412").unique();
  f.has<&PartRegistered::type>("type", "Type").needed("hose assembly");
  f.has<&PartRegistered::description>("description", "Description")
      .example("elastomer, -8, 16.5 in, fire sleeve");
  f.has<&PartRegistered::serial>("serial", "Serial number");
  f.has<&PartRegistered::batch>("batch", "Batch");
  f.has<&PartRegistered::maker_reference>("maker_reference", "Maker's part number");
  f.has<&PartRegistered::cured>("cured", "Cure date").example("2021-07-01");
  f.has<&PartRegistered::assembled>("assembled", "Assembly date").example("2021-09-14");
  f.has<&PartRegistered::papers>("papers", "Papers");
  f.has<&PartRegistered::mass>("mass", "Mass").example("1.2 lb").above(kilograms(0));
  f.has<&PartRegistered::note>("note", "Note");
  return "part-registered";
}

std::string_view describe(describe::Fields<PartInstalled>& f) {
  aircraft_field<&PartInstalled::aircraft>(f);
  f.has<&PartInstalled::part>("part", "Part").needed("hose-0412").refers_to("part");
  f.has<&PartInstalled::position>("position", "Position")
      .needed("oil-hose-upper")
      .refers_to("position");
  at_field<&PartInstalled::at>(f);
  f.has<&PartInstalled::change>("change", "Belongs to change").refers_to("change");
  f.has<&PartInstalled::day_known>("day_known", "The day is known");
  f.has<&PartInstalled::note>("note", "Note");
  return "part-installed";
}

std::string_view describe(describe::Fields<PartRemoved>& f) {
  aircraft_field<&PartRemoved::aircraft>(f);
  f.has<&PartRemoved::part>("part", "Part").needed("hose-0412").refers_to("part");
  f.has<&PartRemoved::reason>("reason", "Why").needed("past its limit");
  at_field<&PartRemoved::at>(f);
  f.has<&PartRemoved::change>("change", "Belongs to change").refers_to("change");
  return "part-removed";
}

std::string_view describe(describe::Fields<LimitSet>& f) {
  aircraft_field<&LimitSet::aircraft>(f);
  f.has<&LimitSet::id>("id", "Short name").needed("oil-hose-upper-age").unique();
  f.has<&LimitSet::title>("title", "What is limited").needed("Oil-cooler hose, upper: age");
  f.has<&LimitSet::position>("position", "Position").refers_to("position");
  f.has<&LimitSet::counter>("counter", "Counter").refers_to("counter").example("engine");
  f.has<&LimitSet::every_hours>("every_hours", "Hours").example("50 h").above(hours(0));
  f.has<&LimitSet::every_count>("every_count", "Count").example("500").between(1, 10000000);
  f.has<&LimitSet::every_months>("every_months", "Months").example("60").between(1, 1200);
  f.has<&LimitSet::month_rule>("month_rule", "How months end");
  f.has<&LimitSet::every_days>("every_days", "Days").example("30").between(1, 40000);
  f.has<&LimitSet::which>("which", "Where there are several");
  f.has<&LimitSet::repeating>("repeating", "Comes again");
  f.has<&LimitSet::carry>("carry", "Next interval");
  f.has<&LimitSet::tolerance_hours>("tolerance_hours", "Tolerance in hours")
      .example("5 h")
      .help("Only for recommendations and the owner's own choice");
  f.has<&LimitSet::tolerance_days>("tolerance_days", "Tolerance in days").between(0, 366);
  f.has<&LimitSet::on_condition>("on_condition", "On condition: judged by a check");
  f.has<&LimitSet::start>("start", "Counts from");
  f.has<&LimitSet::since>("since", "Counts from this date instead").example("2024-02-29");
  f.has<&LimitSet::since_counter>("since_counter", "Counts from this reading instead");
  f.has<&LimitSet::authority>("authority", "Authority");
  f.has<&LimitSet::document>("document", "Document").example("engine maker's manual");
  f.has<&LimitSet::revision>("revision", "Revision").example("rev. C");
  return "limit-set";
}

std::string_view describe(describe::Fields<TaskDone>& f) {
  aircraft_field<&TaskDone::aircraft>(f);
  f.has<&TaskDone::limit>("limit", "Limit").needed("oil-change").refers_to("limit");
  at_field<&TaskDone::at>(f);
  f.has<&TaskDone::text>("text", "What was done")
      .example("oil and filter renewed, element cut open");
  f.has<&TaskDone::document>("document", "Data used");
  return "task-done";
}

std::string_view describe(describe::Fields<InstrumentRegistered>& f) {
  f.has<&InstrumentRegistered::id>("id", "Short name").needed("bench-meter").unique();
  f.has<&InstrumentRegistered::name>("name", "Name").needed("bench multimeter");
  f.has<&InstrumentRegistered::serial>("serial", "Serial number");
  f.has<&InstrumentRegistered::calibrated>("calibrated", "Calibrated on").example("2026-03-02");
  f.has<&InstrumentRegistered::calibration_due>("calibration_due", "Calibration due");
  f.has<&InstrumentRegistered::ranges>("ranges", "Ranges");
  f.has<&InstrumentRegistered::note>("note", "Note");
  return "instrument-registered";
}

std::string_view describe(describe::Fields<InstrumentFoundBad>& f) {
  f.has<&InstrumentFoundBad::instrument>("instrument", "Instrument")
      .needed("bench-meter")
      .refers_to("instrument");
  f.has<&InstrumentFoundBad::last_known_good>("last_known_good", "Last known good");
  f.has<&InstrumentFoundBad::why>("why", "What was found")
      .needed("reads 3 % high on a check resistor");
  return "instrument-found-bad";
}

std::string_view describe(describe::Fields<CheckDescribed>& f) {
  aircraft_field<&CheckDescribed::aircraft>(f);
  f.has<&CheckDescribed::id>("id", "Short name").needed("left-lead-2-bottom").unique();
  f.has<&CheckDescribed::title>("title", "Title").needed("Left magneto, lead 2 bottom");
  f.has<&CheckDescribed::position>("position", "Position")
      .refers_to("position")
      .example("left-harness");
  f.has<&CheckDescribed::kind>("kind", "Kind");
  f.has<&CheckDescribed::group>("group", "Belongs to the siblings").example("left-harness");
  f.has<&CheckDescribed::order>("order", "Order within them").between(0, 1000);
  f.has<&CheckDescribed::probes>("probes", "Where the probes go").example("tower end, plug end");
  f.has<&CheckDescribed::procedure>("procedure", "Procedure");
  f.has<&CheckDescribed::lowest>("lowest", "Lowest").example("3.0 kohm");
  f.has<&CheckDescribed::highest>("highest", "Highest").example("8.0 kohm");
  f.has<&CheckDescribed::length>("length", "Length of the lead").example("38 in").above(inches(0));
  f.has<&CheckDescribed::lowest_per_length>("lowest_per_length", "Lowest resistance per length");
  f.has<&CheckDescribed::highest_per_length>("highest_per_length", "Highest resistance per length");
  f.has<&CheckDescribed::terminals>("terminals", "Allowance for the terminals");
  f.has<&CheckDescribed::unit>("unit", "Read in").example("kohm");
  f.has<&CheckDescribed::authority>("authority", "Authority of the limits");
  f.has<&CheckDescribed::document>("document", "Document").example("harness maker's sheet");
  f.has<&CheckDescribed::revision>("revision", "Revision").example("rev. C");
  return "check-described";
}

std::string_view describe(describe::Fields<ReadingTaken>& f) {
  aircraft_field<&ReadingTaken::aircraft>(f);
  f.has<&ReadingTaken::check>("check", "Check").needed("left-lead-2-bottom").refers_to("check");
  f.has<&ReadingTaken::value>("value", "Reading").example("7.9 kohm");
  f.has<&ReadingTaken::over_range>("over_range", "The display shows over-range");
  f.has<&ReadingTaken::instrument>("instrument", "Instrument").refers_to("instrument");
  f.has<&ReadingTaken::range>("range", "Range used").example("20 kohm");
  f.has<&ReadingTaken::leads>("leads", "Test leads");
  f.has<&ReadingTaken::repeats>("repeats", "Repeated readings");
  f.has<&ReadingTaken::stage>("stage", "For stage").refers_to("stage");
  f.has<&ReadingTaken::note>("note", "Note");
  return "reading-taken";
}

std::string_view describe(describe::Fields<VerdictGiven>& f) {
  aircraft_field<&VerdictGiven::aircraft>(f);
  f.has<&VerdictGiven::check>("check", "Check").needed("left-lead-2-bottom").refers_to("check");
  f.has<&VerdictGiven::part>("part", "Part").refers_to("part");
  f.has<&VerdictGiven::verdict>("verdict", "Verdict");
  f.has<&VerdictGiven::words>("words", "In words");
  f.has<&VerdictGiven::next>("next", "What to do next");
  f.has<&VerdictGiven::value>("value", "Value judged");
  f.has<&VerdictGiven::lowest>("lowest", "Lowest");
  f.has<&VerdictGiven::highest>("highest", "Highest");
  f.has<&VerdictGiven::allowance_used>("allowance_used", "Allowance used");
  f.has<&VerdictGiven::probability_within>("probability_within", "Probability of being within");
  f.has<&VerdictGiven::rule>("rule", "Decision rule");
  f.has<&VerdictGiven::limit_source>("limit_source", "Where the limit comes from");
  f.has<&VerdictGiven::calculation>("calculation", "Calculation");
  f.has<&VerdictGiven::version>("version", "Its version");
  return "verdict-given";
}

std::string_view describe(describe::Fields<DefectNoted>& f) {
  aircraft_field<&DefectNoted::aircraft>(f);
  f.has<&DefectNoted::id>("id", "Short name").help("Made for you when left empty");
  f.has<&DefectNoted::text>("text", "What was seen, heard or smelt")
      .needed("oil film below the left rear cylinder");
  f.has<&DefectNoted::position>("position", "Where").refers_to("position");
  f.has<&DefectNoted::photos>("photos", "Photos").refers_to("attachment");
  f.has<&DefectNoted::decision>("decision", "Fly or stay on the ground");
  f.has<&DefectNoted::reason>("reason", "Why");
  return "defect-noted";
}

std::string_view describe(describe::Fields<DefectDecided>& f) {
  aircraft_field<&DefectDecided::aircraft>(f);
  f.has<&DefectDecided::defect>("defect", "Defect").needed("defect-1").refers_to("defect");
  f.has<&DefectDecided::decision>("decision", "Fly or stay on the ground");
  f.has<&DefectDecided::reason>("reason", "Why").needed("drip is from the breather, watched");
  f.has<&DefectDecided::until>("until", "At the latest until");
  return "defect-decided";
}

std::string_view describe(describe::Fields<DefectClosed>& f) {
  aircraft_field<&DefectClosed::aircraft>(f);
  f.has<&DefectClosed::defect>("defect", "Defect").needed("defect-1").refers_to("defect");
  f.has<&DefectClosed::how>("how", "How it was closed")
      .needed("clamp renewed, dry after two flights");
  f.has<&DefectClosed::change>("change", "By change").refers_to("change");
  return "defect-closed";
}

std::string_view describe(describe::Fields<PartDecided>& f) {
  using E = PartDecided;
  aircraft_field<&E::aircraft>(f);
  f.has<&E::position>("position", "Position").needed("oil-hose-upper").refers_to("position");
  f.has<&E::part>("part", "Part").example("oil-hose-upper-1").refers_to("part");
  f.has<&E::decision>("decision", "What is decided");
  f.has<&E::reason>("reason", "Why")
      .needed("past its years, and it carries oil beside the exhaust");
  f.has<&E::look_again>("look_again", "Look again on").example("2027-05-01");
  f.has<&E::cost>("cost", "What it costs").example("240 for the hose, 4 hours of work");
  f.has<&E::by>("by", "By").example("owner");
  f.has<&E::evidence>("evidence", "The evidence, as shown")
      .example("10-year limit: 128 of 120 months");
  return "part-decided";
}

std::string_view describe(describe::Fields<ChangePlanned>& f) {
  aircraft_field<&ChangePlanned::aircraft>(f);
  f.has<&ChangePlanned::id>("id", "Short name").help("Made for you when left empty");
  f.has<&ChangePlanned::title>("title", "What is changed")
      .needed("Renew the upper oil-cooler hose");
  f.has<&ChangePlanned::position>("position", "Position")
      .needed("oil-hose-upper")
      .refers_to("position");
  f.has<&ChangePlanned::grade>("grade", "How much it disturbs").needed("renewed");
  f.has<&ChangePlanned::kind>("kind", "Kind");
  f.has<&ChangePlanned::new_part>("new_part", "What goes in");
  f.has<&ChangePlanned::document>("document", "Data used, with edition and paragraph");
  f.has<&ChangePlanned::joints>("joints", "Joints to be opened").refers_to("joint");
  f.has<&ChangePlanned::after>("after", "Comes after").refers_to("change");
  f.has<&ChangePlanned::together>("together", "Must go into the air with").refers_to("change");
  f.has<&ChangePlanned::mass_out>("mass_out", "Mass taken out").example("1.1 lb");
  f.has<&ChangePlanned::mass_in>("mass_in", "Mass put in").example("1.3 lb");
  f.has<&ChangePlanned::arm>("arm", "Arm from the datum").example("-30 in");
  f.has<&ChangePlanned::defect>("defect", "Meant to cure").refers_to("defect");
  f.has<&ChangePlanned::note>("note", "Note");
  return "change-planned";
}

std::string_view describe(describe::Fields<ChangeDone>& f) {
  aircraft_field<&ChangeDone::aircraft>(f);
  f.has<&ChangeDone::change>("change", "Change").needed("change-1").refers_to("change");
  f.has<&ChangeDone::text>("text", "What was done").needed("hose made, proved, fitted");
  f.has<&ChangeDone::proof>("proof", "What was proved, and how");
  f.has<&ChangeDone::parts_off>("parts_off", "Parts off");
  f.has<&ChangeDone::parts_on>("parts_on", "Parts on");
  f.has<&ChangeDone::by>("by", "Done by");
  return "change-done";
}

std::string_view describe(describe::Fields<ChangeWithdrawn>& f) {
  aircraft_field<&ChangeWithdrawn::aircraft>(f);
  f.has<&ChangeWithdrawn::change>("change", "Change").needed("change-1").refers_to("change");
  f.has<&ChangeWithdrawn::reason>("reason", "Why").needed("put off to the next winter");
  return "change-withdrawn";
}

std::string_view describe(describe::Fields<AbortValue>& f) {
  f.has<&AbortValue::what>("what", "What to watch").needed("oil pressure");
  f.has<&AbortValue::limit>("limit", "Come back when").needed("below 25 psi");
  return "abort-value";
}

std::string_view describe(describe::Fields<StagePlanned>& f) {
  aircraft_field<&StagePlanned::aircraft>(f);
  f.has<&StagePlanned::id>("id", "Short name").help("Made for you when left empty");
  f.has<&StagePlanned::title>("title", "Title").needed("Stage 1: oil hoses");
  f.has<&StagePlanned::changes>("changes", "Changes")
      .at_least(1)
      .refers_to("change")
      .needed("change-1");
  f.has<&StagePlanned::ground_only>("ground_only", "No flight needed: ends after its run");
  f.has<&StagePlanned::abort_values>("abort_values", "Abort values");
  f.has<&StagePlanned::note>("note", "Note");
  return "stage-planned";
}

std::string_view describe(describe::Fields<StageRuleAnswered>& f) {
  aircraft_field<&StageRuleAnswered::aircraft>(f);
  f.has<&StageRuleAnswered::stage>("stage", "Stage").needed("stage-1").refers_to("stage");
  f.has<&StageRuleAnswered::rule>("rule", "Rule").needed("ignition-with-fuel");
  f.has<&StageRuleAnswered::answer>("answer", "Answer").needed("independent-inspection");
  f.has<&StageRuleAnswered::by>("by", "By").needed("second person's name");
  f.has<&StageRuleAnswered::certificate>("certificate", "Certificate number");
  f.has<&StageRuleAnswered::text>("text", "What was looked at, or why it is overridden")
      .needed("all disturbed joints of both halves seen, locked, range and sense tried");
  return "stage-rule-answered";
}

std::string_view describe(describe::Fields<JointWorked>& f) {
  aircraft_field<&JointWorked::aircraft>(f);
  f.has<&JointWorked::joint>("joint", "Joint").needed("oil-hose-upper-engine").refers_to("joint");
  f.has<&JointWorked::state>("state", "State").needed("torqued");
  f.has<&JointWorked::torque>("torque", "Torque applied").example("245 in-lb");
  f.has<&JointWorked::drag>("drag", "Drag torque measured");
  f.has<&JointWorked::torque_table>("torque_table", "Torque table or manual");
  f.has<&JointWorked::instrument>("instrument", "Wrench").refers_to("instrument");
  f.has<&JointWorked::by>("by", "By");
  f.has<&JointWorked::stage>("stage", "Stage").refers_to("stage");
  f.has<&JointWorked::note>("note", "Note");
  f.has<&JointWorked::reason_outside_band>("reason_outside_band",
                                           "Why a torque outside the joint's limits is allowed")
      .help("Only where the torque lies outside: what the maker's instruction says")
      .example("");
  return "joint-worked";
}

std::string_view describe(describe::Fields<BungCounted>& f) {
  aircraft_field<&BungCounted::aircraft>(f);
  f.has<&BungCounted::id>("id", "Which one").needed("red cap 3");
  f.has<&BungCounted::where>("where", "Where").example("oil-cooler outlet");
  f.has<&BungCounted::fitted>("fitted", "Fitted (no: taken out)");
  return "bung-counted";
}

std::string_view describe(describe::Fields<CowlMoved>& f) {
  aircraft_field<&CowlMoved::aircraft>(f);
  f.has<&CowlMoved::closed>("closed", "Closed");
  f.has<&CowlMoved::by>("by", "By");
  return "cowl-moved";
}

std::string_view describe(describe::Fields<MassItem>& f) {
  f.has<&MassItem::what>("what", "Item").needed("upper oil hose, new");
  f.has<&MassItem::added>("added", "Added (no: taken out)");
  f.has<&MassItem::mass>("mass", "Mass").needed("1.3 lb").above(kilograms(0));
  f.has<&MassItem::arm>("arm", "Arm from the datum").needed("-30 in");
  return "mass-item";
}

std::string_view describe(describe::Fields<MassRevised>& f) {
  aircraft_field<&MassRevised::aircraft>(f);
  f.has<&MassRevised::stage>("stage", "For stage").refers_to("stage");
  f.has<&MassRevised::items>("items", "Items added and taken out");
  f.has<&MassRevised::empty_mass>("empty_mass", "Empty mass").needed("1169 lb").above(kilograms(0));
  f.has<&MassRevised::empty_arm>("empty_arm", "Empty centre of gravity, from the datum")
      .needed("10.6 in");
  f.has<&MassRevised::forward_limit>("forward_limit", "Forward limit").example("8.5 in");
  f.has<&MassRevised::aft_limit>("aft_limit", "Aft limit").example("21.9 in");
  f.has<&MassRevised::greatest_mass>("greatest_mass", "Greatest mass").example("2100 lb");
  f.has<&MassRevised::document>("document", "Weighing report or calculation")
      .needed("weighing of 2024-05-11");
  f.has<&MassRevised::note>("note", "Note");
  return "mass-revised";
}

std::string_view describe(describe::Fields<NamedReading>& f) {
  f.has<&NamedReading::what>("what", "What").needed("oil pressure");
  f.has<&NamedReading::value>("value", "Value").example("62 psi");
  f.has<&NamedReading::words>("words", "In words");
  return "named-reading";
}

std::string_view describe(describe::Fields<StageStepDone>& f) {
  aircraft_field<&StageStepDone::aircraft>(f);
  f.has<&StageStepDone::stage>("stage", "Stage").needed("stage-1").refers_to("stage");
  f.has<&StageStepDone::step>("step", "Step").needed("ground-run");
  f.has<&StageStepDone::result>("result", "Result").needed("satisfactory");
  f.has<&StageStepDone::text>("text", "What was seen").example("dry after ten minutes at idle");
  f.has<&StageStepDone::by>("by", "By");
  f.has<&StageStepDone::ambient_temperature>("ambient_temperature", "Air temperature")
      .example("41 degF");
  f.has<&StageStepDone::ambient_pressure>("ambient_pressure", "Air pressure").example("29.92 inHg");
  f.has<&StageStepDone::readings>("readings", "Readings");
  at_field<&StageStepDone::at>(f);
  f.has<&StageStepDone::flight_time>("flight_time", "Flight time")
      .example("40 min")
      .above(minutes(0));
  return "stage-step-done";
}

std::string_view describe(describe::Fields<EntrySigned>& f) {
  aircraft_field<&EntrySigned::aircraft>(f);
  f.has<&EntrySigned::id>("id", "Short name").help("Made for you when left empty");
  f.has<&EntrySigned::about>("about", "Stage or job").example("stage-1");
  f.has<&EntrySigned::purpose>("purpose", "Purpose");
  f.has<&EntrySigned::text>("text", "Text of the entry").needed("Upper oil hose renewed ...");
  f.has<&EntrySigned::name>("name", "Name").needed("name of the person who signs");
  f.has<&EntrySigned::signer>("signer", "Signs as").needed("owner");
  f.has<&EntrySigned::certificate>("certificate", "Certificate number");
  f.has<&EntrySigned::covers>("covers", "Events that the text reports").refers_to("event");
  return "entry-signed";
}

std::string_view describe(describe::Fields<StageMoved>& f) {
  aircraft_field<&StageMoved::aircraft>(f);
  f.has<&StageMoved::stage>("stage", "Stage").needed("stage-1").refers_to("stage");
  f.has<&StageMoved::to>("to", "To").needed("held");
  f.has<&StageMoved::entry>("entry", "Signed entry").refers_to("entry");
  f.has<&StageMoved::reason>("reason", "Why");
  return "stage-moved";
}

std::string_view describe(describe::Fields<QuickJobDone>& f) {
  aircraft_field<&QuickJobDone::aircraft>(f);
  f.has<&QuickJobDone::id>("id", "Short name").help("Made for you when left empty");
  f.has<&QuickJobDone::what>("what", "Job").needed("oil-change");
  f.has<&QuickJobDone::text>("text", "What was done")
      .example("oil drained warm, filter renewed, element cut open: clean");
  f.has<&QuickJobDone::parts>("parts", "Parts used");
  f.has<&QuickJobDone::quantity>("quantity", "Quantity").example("6 qt");
  f.has<&QuickJobDone::limits>("limits", "Restarts these limits").refers_to("limit");
  at_field<&QuickJobDone::at>(f);
  f.has<&QuickJobDone::by>("by", "By");
  return "quick-job-done";
}

std::string_view describe(describe::Fields<AttachmentAdded>& f) {
  aircraft_field<&AttachmentAdded::aircraft>(f);
  f.has<&AttachmentAdded::hash>("hash", "Content")
      .needed("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855")
      .refers_to("attachment");
  f.has<&AttachmentAdded::name>("name", "File name").needed("stripe.jpg");
  f.has<&AttachmentAdded::media_type>("media_type", "Media type").needed("image/jpeg");
  f.has<&AttachmentAdded::about>("about", "About").example("defect-1");
  f.has<&AttachmentAdded::caption>("caption", "Caption");
  f.has<&AttachmentAdded::bytes>("bytes", "Size in bytes").at_least(0);
  return "attachment-added";
}

std::string_view describe(describe::Fields<EventCorrected>& f) {
  f.has<&EventCorrected::kind>("kind", "Kind of the event").needed("reading-taken");
  f.has<&EventCorrected::version>("version", "Its version").between(1, 1000);
  f.has<&EventCorrected::body>("body", "Corrected body").needed("{}");
  f.has<&EventCorrected::reason>("reason", "Why").needed("mistyped");
  return "event-corrected";
}

std::string_view describe(describe::Fields<SheetImported>& f) {
  aircraft_field<&SheetImported::aircraft>(f);
  f.has<&SheetImported::digest>("digest", "SHA-256 of the sheet");
  f.has<&SheetImported::positions>("positions", "Positions");
  f.has<&SheetImported::joints>("joints", "Joints");
  f.has<&SheetImported::parts>("parts", "Parts");
  f.has<&SheetImported::limits>("limits", "Limits");
  f.has<&SheetImported::checks>("checks", "Checks");
  return "sheet-imported";
}

}  // namespace wm::bay
