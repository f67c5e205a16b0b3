#include "desk/views.hpp"

// Descriptions of the pages' answers: keys as the members, labels in plain words.
namespace wm::desk {

std::string_view describe(describe::Fields<Nothing>& f) {
  (void)f;
  return "nothing";
}

std::string_view describe(describe::Fields<OfAircraft>& f) {
  f.has<&OfAircraft::aircraft>("aircraft", "Aircraft").needed("pebblewing").refers_to("aircraft");
  return "of-aircraft";
}

std::string_view describe(describe::Fields<AircraftLine>& f) {
  f.has<&AircraftLine::id>("id", "Id");
  f.has<&AircraftLine::name>("name", "Name");
  f.has<&AircraftLine::registration>("registration", "Registration");
  f.has<&AircraftLine::engine_hours>("engine_hours", "Engine hours");
  return "aircraft-line";
}

std::string_view describe(describe::Fields<AircraftList>& f) {
  f.has<&AircraftList::aircraft>("aircraft", "Aircraft");
  return "aircraft-list";
}

std::string_view describe(describe::Fields<Header>& f) {
  f.has<&Header::aircraft>("aircraft", "Aircraft");
  f.has<&Header::name>("name", "Name");
  f.has<&Header::registration>("registration", "Registration");
  f.has<&Header::engine_hours>("engine_hours", "Engine hours");
  f.has<&Header::cowl_closed>("cowl_closed", "Cowl closed");
  f.has<&Header::open_joints>("open_joints", "Open joints");
  f.has<&Header::bungs>("bungs", "Bungs");
  f.has<&Header::open_defects>("open_defects", "Open defects");
  f.has<&Header::grounding_defects>("grounding_defects", "Grounding defects");
  f.has<&Header::flight_due>("flight_due", "Flight due");
  return "header";
}

std::string_view describe(describe::Fields<Mark>& f) {
  f.has<&Mark::id>("id", "Id");
  f.has<&Mark::title>("title", "Title");
  f.has<&Mark::position>("position", "Position");
  f.has<&Mark::of>("of", "Of");
  f.has<&Mark::standing>("standing", "Standing");
  f.has<&Mark::used>("used", "Used");
  f.has<&Mark::uncertainty>("uncertainty", "Uncertainty");
  f.has<&Mark::figure>("figure", "Figure");
  f.has<&Mark::detail>("detail", "Detail");
  f.has<&Mark::trend>("trend", "Trend");
  f.has<&Mark::limit>("limit", "Limit");
  return "mark";
}

std::string_view describe(describe::Fields<PlanSpot>& f) {
  f.has<&PlanSpot::position>("position", "Position");
  f.has<&PlanSpot::name>("name", "Name");
  f.has<&PlanSpot::system>("system", "System");
  f.has<&PlanSpot::x>("x", "X");
  f.has<&PlanSpot::y>("y", "Y");
  f.has<&PlanSpot::part>("part", "Part");
  f.has<&PlanSpot::standing>("standing", "Standing");
  f.has<&PlanSpot::used>("used", "Used");
  return "plan-spot";
}

std::string_view describe(describe::Fields<JointLine>& f) {
  f.has<&JointLine::id>("id", "Id");
  f.has<&JointLine::name>("name", "Name");
  f.has<&JointLine::position>("position", "Position");
  f.has<&JointLine::kind>("kind", "Kind");
  f.has<&JointLine::state>("state", "State");
  f.has<&JointLine::number>("number", "Number");
  f.has<&JointLine::closed>("closed", "Closed");
  f.has<&JointLine::torque>("torque", "Torque");
  f.has<&JointLine::torque_limits>("torque_limits", "Torque limits");
  f.has<&JointLine::torque_table>("torque_table", "Torque table");
  f.has<&JointLine::by>("by", "By");
  f.has<&JointLine::since>("since", "Since");
  f.has<&JointLine::needs>("needs", "Needs");
  return "joint-line";
}

std::string_view describe(describe::Fields<DefectLine>& f) {
  f.has<&DefectLine::id>("id", "Id");
  f.has<&DefectLine::text>("text", "Text");
  f.has<&DefectLine::position>("position", "Position");
  f.has<&DefectLine::happened>("happened", "Happened");
  f.has<&DefectLine::decision>("decision", "Decision");
  f.has<&DefectLine::reason>("reason", "Reason");
  f.has<&DefectLine::until>("until", "Until");
  f.has<&DefectLine::closed>("closed", "Closed");
  f.has<&DefectLine::how>("how", "How");
  f.has<&DefectLine::photos>("photos", "Photos");
  return "defect-line";
}

std::string_view describe(describe::Fields<BungLine>& f) {
  f.has<&BungLine::id>("id", "Id");
  f.has<&BungLine::where>("where", "Where");
  f.has<&BungLine::since>("since", "Since");
  return "bung-line";
}

std::string_view describe(describe::Fields<BayPage>& f) {
  f.has<&BayPage::header>("header", "Header");
  f.has<&BayPage::past_limit>("past_limit", "Past limit");
  f.has<&BayPage::doubtful>("doubtful", "Doubtful");
  f.has<&BayPage::unknown>("unknown", "Unknown");
  f.has<&BayPage::within>("within", "Within");
  f.has<&BayPage::marks>("marks", "Marks");
  f.has<&BayPage::plan>("plan", "Plan");
  f.has<&BayPage::ahead>("ahead", "Ahead");
  f.has<&BayPage::open_joints>("open_joints", "Open joints");
  f.has<&BayPage::bungs>("bungs", "Bungs");
  f.has<&BayPage::defects>("defects", "Defects");
  f.has<&BayPage::oddities>("oddities", "Oddities");
  return "bay-page";
}

std::string_view describe(describe::Fields<DuePage>& f) {
  f.has<&DuePage::header>("header", "Header");
  f.has<&DuePage::rows>("rows", "Rows");
  f.has<&DuePage::past_limit>("past_limit", "Past limit");
  f.has<&DuePage::unknown>("unknown", "Unknown");
  return "due-page";
}

std::string_view describe(describe::Fields<ChangeLine>& f) {
  f.has<&ChangeLine::id>("id", "Id");
  f.has<&ChangeLine::title>("title", "Title");
  f.has<&ChangeLine::position>("position", "Position");
  f.has<&ChangeLine::position_name>("position_name", "Position name");
  f.has<&ChangeLine::system>("system", "System");
  f.has<&ChangeLine::grade>("grade", "Grade");
  f.has<&ChangeLine::kind>("kind", "Kind");
  f.has<&ChangeLine::stage>("stage", "Stage");
  f.has<&ChangeLine::state>("state", "State");
  f.has<&ChangeLine::new_part>("new_part", "New part");
  f.has<&ChangeLine::document>("document", "Document");
  f.has<&ChangeLine::note>("note", "Note");
  f.has<&ChangeLine::joints>("joints", "Joints");
  f.has<&ChangeLine::after>("after", "After");
  f.has<&ChangeLine::together>("together", "Together");
  return "change-line";
}

std::string_view describe(describe::Fields<StepLine>& f) {
  f.has<&StepLine::stage>("stage", "Stage");
  f.has<&StepLine::step>("step", "Step");
  f.has<&StepLine::label>("label", "Label");
  f.has<&StepLine::result>("result", "Result");
  f.has<&StepLine::happened>("happened", "Happened");
  f.has<&StepLine::text>("text", "Text");
  f.has<&StepLine::by>("by", "By");
  f.has<&StepLine::air>("air", "Air");
  f.has<&StepLine::flight_time>("flight_time", "Flight time");
  f.has<&StepLine::readings>("readings", "Readings");
  f.has<&StepLine::event>("event", "Event");
  return "step-line";
}

std::string_view describe(describe::Fields<StageLine>& f) {
  f.has<&StageLine::id>("id", "Id");
  f.has<&StageLine::title>("title", "Title");
  f.has<&StageLine::state>("state", "State");
  f.has<&StageLine::state_label>("state_label", "State label");
  f.has<&StageLine::reason>("reason", "Reason");
  f.has<&StageLine::ground_only>("ground_only", "Ground only");
  f.has<&StageLine::changes>("changes", "Changes");
  f.has<&StageLine::objections>("objections", "Objections");
  f.has<&StageLine::missing_to_open>("missing_to_open", "Missing to open");
  f.has<&StageLine::missing_to_close>("missing_to_close", "Missing to close");
  f.has<&StageLine::steps>("steps", "Steps");
  f.has<&StageLine::abort_values>("abort_values", "Abort values");
  f.has<&StageLine::entries>("entries", "Entries");
  f.has<&StageLine::mass>("mass", "Mass");
  f.has<&StageLine::next>("next", "Next");
  return "stage-line";
}

std::string_view describe(describe::Fields<WorkPage>& f) {
  f.has<&WorkPage::header>("header", "Header");
  f.has<&WorkPage::changes>("changes", "Changes");
  f.has<&WorkPage::stages>("stages", "Stages");
  f.has<&WorkPage::joints>("joints", "Joints");
  f.has<&WorkPage::bungs>("bungs", "Bungs");
  f.has<&WorkPage::hoses>("hoses", "Hoses");
  return "work-page";
}

std::string_view describe(describe::Fields<CheckLine>& f) {
  f.has<&CheckLine::id>("id", "Id");
  f.has<&CheckLine::title>("title", "Title");
  f.has<&CheckLine::position>("position", "Position");
  f.has<&CheckLine::kind>("kind", "Kind");
  f.has<&CheckLine::unit>("unit", "Unit");
  f.has<&CheckLine::probes>("probes", "Probes");
  f.has<&CheckLine::procedure>("procedure", "Procedure");
  f.has<&CheckLine::lowest>("lowest", "Lowest");
  f.has<&CheckLine::highest>("highest", "Highest");
  f.has<&CheckLine::limit_source>("limit_source", "Limit source");
  f.has<&CheckLine::last>("last", "Last");
  f.has<&CheckLine::last_when>("last_when", "Last when");
  f.has<&CheckLine::last_words>("last_words", "Last words");
  f.has<&CheckLine::last_event>("last_event", "Last event");
  f.has<&CheckLine::verdict>("verdict", "Verdict");
  f.has<&CheckLine::used>("used", "Used");
  f.has<&CheckLine::lowest_number>("lowest_number", "Lowest number");
  f.has<&CheckLine::highest_number>("highest_number", "Highest number");
  f.has<&CheckLine::last_number>("last_number", "Last number");
  f.has<&CheckLine::among>("among", "Among its siblings");
  f.has<&CheckLine::stands_out>("stands_out", "Stands out");
  f.has<&CheckLine::not_tested>("not_tested", "What a reading leaves open");
  f.has<&CheckLine::calculation>("calculation", "Calculation that goes further");
  f.has<&CheckLine::caution>("caution", "To be read before it is begun");
  return "check-line";
}

std::string_view describe(describe::Fields<CheckGroup>& f) {
  f.has<&CheckGroup::id>("id", "Id");
  f.has<&CheckGroup::title>("title", "Title");
  f.has<&CheckGroup::checks>("checks", "Checks");
  return "check-group";
}

std::string_view describe(describe::Fields<InstrumentLine>& f) {
  f.has<&InstrumentLine::id>("id", "Id");
  f.has<&InstrumentLine::name>("name", "Name");
  f.has<&InstrumentLine::serial>("serial", "Serial");
  f.has<&InstrumentLine::calibrated>("calibrated", "Calibrated");
  f.has<&InstrumentLine::calibration_due>("calibration_due", "Calibration due");
  f.has<&InstrumentLine::state>("state", "State");
  f.has<&InstrumentLine::found_bad>("found_bad", "Found bad");
  f.has<&InstrumentLine::ranges>("ranges", "Ranges");
  f.has<&InstrumentLine::range_accuracy>("range_accuracy", "Range accuracy");
  return "instrument-line";
}

std::string_view describe(describe::Fields<MeasurePage>& f) {
  f.has<&MeasurePage::header>("header", "Header");
  f.has<&MeasurePage::groups>("groups", "Groups");
  f.has<&MeasurePage::instruments>("instruments", "Instruments");
  return "measure-page";
}

std::string_view describe(describe::Fields<FrontPage>& f) {
  f.has<&FrontPage::aircraft>("aircraft", "Aircraft");
  f.has<&FrontPage::today>("today", "Today");
  return "front-page";
}

std::string_view describe(describe::Fields<ChoicesWanted>& f) {
  f.has<&ChoicesWanted::of>("of", "What is named").needed("position");
  f.has<&ChoicesWanted::aircraft>("aircraft", "Aircraft").refers_to("aircraft");
  return "choices-wanted";
}

std::string_view describe(describe::Fields<NamedChoice>& f) {
  f.has<&NamedChoice::value>("value", "Value");
  f.has<&NamedChoice::label>("label", "Label");
  f.has<&NamedChoice::note>("note", "Note");
  return "named-choice";
}

std::string_view describe(describe::Fields<NamedChoices>& f) {
  f.has<&NamedChoices::choices>("choices", "Choices");
  return "named-choices";
}

std::string_view describe(describe::Fields<OfCheck>& f) {
  f.has<&OfCheck::aircraft>("aircraft", "Aircraft").needed("pebblewing").refers_to("aircraft");
  f.has<&OfCheck::check>("check", "Check").needed("left-lead-2-bottom").refers_to("check");
  return "of-check";
}

std::string_view describe(describe::Fields<ReadingPoint>& f) {
  f.has<&ReadingPoint::event>("event", "Event");
  f.has<&ReadingPoint::day>("day", "Day");
  f.has<&ReadingPoint::part>("part", "Part");
  f.has<&ReadingPoint::value>("value", "Value");
  f.has<&ReadingPoint::verdict>("verdict", "Verdict");
  f.has<&ReadingPoint::words>("words", "Words");
  f.has<&ReadingPoint::instrument>("instrument", "Instrument");
  f.has<&ReadingPoint::range>("range", "Range");
  f.has<&ReadingPoint::number>("number", "Number");
  f.has<&ReadingPoint::uncertainty>("uncertainty", "Uncertainty");
  f.has<&ReadingPoint::engine_hours>("engine_hours", "Engine hours");
  f.has<&ReadingPoint::corrected>("corrected", "Corrected");
  return "reading-point";
}

std::string_view describe(describe::Fields<CheckHistory>& f) {
  f.has<&CheckHistory::check>("check", "Check");
  f.has<&CheckHistory::lowest>("lowest", "Lowest");
  f.has<&CheckHistory::highest>("highest", "Highest");
  f.has<&CheckHistory::points>("points", "Points");
  f.has<&CheckHistory::trend>("trend", "Trend");
  f.has<&CheckHistory::trend_lines>("trend_lines", "Trend, line by line");
  f.has<&CheckHistory::trend_notes>("trend_notes", "Besides");
  f.has<&CheckHistory::line>("line", "Line through the readings");
  return "check-history";
}

std::string_view describe(describe::Fields<JointsPage>& f) {
  f.has<&JointsPage::header>("header", "Header");
  f.has<&JointsPage::joints>("joints", "Joints");
  f.has<&JointsPage::bungs>("bungs", "Bungs");
  return "joints-page";
}

std::string_view describe(describe::Fields<RunsPage>& f) {
  f.has<&RunsPage::header>("header", "Header");
  f.has<&RunsPage::stages>("stages", "Stages");
  return "runs-page";
}

std::string_view describe(describe::Fields<EntryLine>& f) {
  f.has<&EntryLine::id>("id", "Id");
  f.has<&EntryLine::about>("about", "About");
  f.has<&EntryLine::purpose>("purpose", "Purpose");
  f.has<&EntryLine::text>("text", "Text");
  f.has<&EntryLine::name>("name", "Name");
  f.has<&EntryLine::signer>("signer", "Signer");
  f.has<&EntryLine::certificate>("certificate", "Certificate");
  f.has<&EntryLine::happened>("happened", "Happened");
  f.has<&EntryLine::event>("event", "Event");
  f.has<&EntryLine::sequence>("sequence", "Sequence");
  f.has<&EntryLine::amended_after_signature>("amended_after_signature", "Amended after signature");
  return "entry-line";
}

std::string_view describe(describe::Fields<EntriesPage>& f) {
  f.has<&EntriesPage::header>("header", "Header");
  f.has<&EntriesPage::entries>("entries", "Entries");
  return "entries-page";
}

std::string_view describe(describe::Fields<DraftWanted>& f) {
  f.has<&DraftWanted::aircraft>("aircraft", "Aircraft").needed("pebblewing").refers_to("aircraft");
  f.has<&DraftWanted::about>("about", "About").needed("stage-1");
  f.has<&DraftWanted::purpose>("purpose", "Purpose");
  return "draft-wanted";
}

std::string_view describe(describe::Fields<Draft>& f) {
  f.has<&Draft::text>("text", "Text");
  f.has<&Draft::missing>("missing", "Missing");
  f.has<&Draft::unsigned_notes>("unsigned_notes", "Unsigned notes");
  return "draft";
}

std::string_view describe(describe::Fields<HistoryWanted>& f) {
  f.has<&HistoryWanted::aircraft>("aircraft", "Aircraft").refers_to("aircraft");
  f.has<&HistoryWanted::about>("about", "About");
  f.has<&HistoryWanted::before>("before", "Before").at_least(1);
  f.has<&HistoryWanted::most>("most", "Most").between(1, 1000);
  return "history-wanted";
}

std::string_view describe(describe::Fields<HistoryLine>& f) {
  f.has<&HistoryLine::sequence>("sequence", "Sequence");
  f.has<&HistoryLine::event>("event", "Event");
  f.has<&HistoryLine::kind>("kind", "Kind");
  f.has<&HistoryLine::kind_label>("kind_label", "Kind label");
  f.has<&HistoryLine::happened>("happened", "Happened");
  f.has<&HistoryLine::recorded>("recorded", "Recorded");
  f.has<&HistoryLine::author>("author", "Author");
  f.has<&HistoryLine::words>("words", "Words");
  f.has<&HistoryLine::refers_to>("refers_to", "Refers to");
  f.has<&HistoryLine::corrected>("corrected", "Corrected");
  f.has<&HistoryLine::corrected_words>("corrected_words", "Corrected words");
  f.has<&HistoryLine::correction_reason>("correction_reason", "Correction reason");
  return "history-line";
}

std::string_view describe(describe::Fields<HistoryPage>& f) {
  f.has<&HistoryPage::lines>("lines", "Lines");
  f.has<&HistoryPage::more>("more", "More");
  return "history-page";
}

std::string_view describe(describe::Fields<OfPosition>& f) {
  f.has<&OfPosition::aircraft>("aircraft", "Aircraft").needed("pebblewing").refers_to("aircraft");
  f.has<&OfPosition::position>("position", "Position")
      .needed("oil-hose-upper")
      .refers_to("position");
  return "of-position";
}

std::string_view describe(describe::Fields<InstallationLine>& f) {
  f.has<&InstallationLine::part>("part", "Part");
  f.has<&InstallationLine::description>("description", "Description");
  f.has<&InstallationLine::serial>("serial", "Serial");
  f.has<&InstallationLine::cured>("cured", "Cured");
  f.has<&InstallationLine::assembled>("assembled", "Assembled");
  f.has<&InstallationLine::from>("from", "From");
  f.has<&InstallationLine::to>("to", "To");
  f.has<&InstallationLine::hours>("hours", "Hours");
  f.has<&InstallationLine::why_removed>("why_removed", "Why removed");
  return "installation-line";
}

std::string_view describe(describe::Fields<PositionPage>& f) {
  f.has<&PositionPage::id>("id", "Id");
  f.has<&PositionPage::name>("name", "Name");
  f.has<&PositionPage::system>("system", "System");
  f.has<&PositionPage::chapter>("chapter", "Chapter");
  f.has<&PositionPage::area>("area", "Area");
  f.has<&PositionPage::redundant_with>("redundant_with", "Redundant with");
  f.has<&PositionPage::note>("note", "Note");
  f.has<&PositionPage::installations>("installations", "Installations");
  f.has<&PositionPage::limits>("limits", "Limits");
  f.has<&PositionPage::checks>("checks", "Checks");
  f.has<&PositionPage::joints>("joints", "Joints");
  f.has<&PositionPage::defects>("defects", "Defects");
  return "position-page";
}

std::string_view describe(describe::Fields<InstrumentsPage>& f) {
  f.has<&InstrumentsPage::instruments>("instruments", "Instruments");
  return "instruments-page";
}

}  // namespace wm::desk
