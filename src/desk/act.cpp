#include "desk/act.hpp"

#include <algorithm>

#include "desk/acts.hpp"
#include "desk/acts_hoses.hpp"
#include "desk/views.hpp"

namespace wm::desk {
namespace caution = describe::caution;

quantity::Date Desk::day() const {
  const auto parsed = quantity::parse_date(std::string_view(happened).substr(0, 10));
  return parsed ? *parsed : context.today;
}

std::string_view describe(describe::Fields<Said>& f) {
  f.has<&Said::words>("words", "In words");
  f.has<&Said::id>("id", "Short name of what was made or changed");
  f.has<&Said::notes>("notes", "What to know besides");
  return "said";
}

const std::vector<Act>& acts() {
  static const std::vector<Act> all{
      act<&note_defect>("note-defect", "Write down something seen, heard or smelt",
                        {caution::defer}),
      act<&decide_defect>("decide-defect",
                          "Fly with a defect or stay on the ground, with the reason",
                          {caution::defer}),
      act<&close_defect>("close-defect", "Close a defect by a change or a finding",
                         {caution::defer}),
      act<&measure>("measure", "Enter a reading and get its verdict",
                    {caution::propeller, caution::high_tension, caution::insulation_not_tested}),
      act<&instrument_found_bad>("instrument-found-bad",
                                 "Mark an instrument as bad and list every reading in doubt",
                                 {caution::defer}),
      act<&quick_job>("quick-job", "A small job on one screen: oil, plugs, battery",
                      {caution::hot_parts, caution::propeller}),
      act<&task_done>("task-done", "Do a task that a limit asks for", {caution::dates_are_yours}),
      act<&read_counter>("read-counter", "Read the counters", {caution::defer}),
      act<&replace_counter>("replace-counter", "Record that a meter was exchanged, with its offset",
                            {caution::defer}),
      act<&decide_part>("decide-part", "Decide to renew, watch or leave a part, with the reason",
                        {caution::defer, caution::dates_are_yours}),
      act<&plan_change>("plan-change", "Plan one thing to be altered, with its grade",
                        {caution::redundant_pair, caution::defer}, true),
      act<&change_done>("change-done", "Record that a change is made and how it was proved",
                        {caution::look_again, caution::proof_with_liquid}),
      act<&withdraw_change>("withdraw-change", "Take a planned change back", {caution::defer},
                            true),
      act<&draw_hose>("draw-hose", "Keep a hose sheet: the hose as drawn, with its figures",
                      {caution::fuel_vapour, caution::hot_parts, caution::defer}, true),
      act<&prove_hose>("prove-hose", "Keep a proof test of a hose with its verdict",
                       {caution::proof_with_liquid, caution::eye_protection, caution::defer}),
      act<&plan_stage>("plan-stage", "Put changes into a stage; its objections are told",
                       {caution::redundant_pair}, true),
      act<&answer_objection>("answer-objection",
                             "Record an independent inspection, a separate proof or an override",
                             {caution::redundant_pair}, true),
      act<&work_joint>("work-joint", "Open, assemble, torque, lock, mark or look at a joint",
                       {caution::wrong_torque, caution::eye_protection}),
      act<&work_joints>("work-joints", "Bring several joints to one state",
                        {caution::wrong_torque, caution::eye_protection}),
      act<&count_bung>("count-bung", "Count a bung, cap, tool or rag in or out",
                       {caution::look_again}),
      act<&move_cowl>("move-cowl", "Record the cowl as open or closed", {caution::look_again}),
      act<&revise_mass>("revise-mass", "Revise mass and balance", {caution::mass_and_balance}),
      act<&stage_step>("stage-step", "Enter a leak run, ground run, check flight or second look",
                       {caution::propeller, caution::fuel_vapour, caution::look_again}),
      act<&open_stage>("open-stage", "Sign the entry that opens a stage: check flight due",
                       {caution::defer, caution::look_again}, true),
      act<&close_stage>("close-stage", "Sign a stage closed after its checks",
                        {caution::defer, caution::look_again}, true),
      act<&hold_stage>("hold-stage", "Hold a stage, with the reason", {caution::defer}, true),
      act<&resume_stage>("resume-stage", "Go on with the work of a held stage", {caution::defer},
                         true),
      act<&sign_entry>("sign-entry", "Sign a record entry of other work", {caution::defer}),
      act<&attach>("attach", "Attach a photo or paper, by its content", {caution::defer}),
      act<&correct>("correct", "Correct an earlier event; both stay visible", {caution::defer}),
      act<&import_sheet>("import-sheet", "Take an aircraft sheet in: all of it or nothing",
                         {caution::defer}),
      act<&describe_aircraft>("describe-aircraft", "Say what the aircraft is", {caution::defer},
                              true),
      act<&define_counter>("define-counter", "Define something that counts use", {caution::defer},
                           true),
      act<&add_position>("add-position", "Add a place where a part sits", {caution::defer}, true),
      act<&add_joint>("add-joint", "Add a joint between two positions", {caution::wrong_torque},
                      true),
      act<&register_part>("register-part", "Register a part with its dates and papers",
                          {caution::defer}, true),
      act<&install_part>("install-part", "Install a part in a position", {caution::look_again}),
      act<&remove_part>("remove-part", "Remove a part from its position", {caution::look_again}),
      act<&set_limit>("set-limit", "Set a limit with its authority and document",
                      {caution::dates_are_yours}, true),
      act<&describe_check>("describe-check", "Describe something to be read, with its limits",
                           {caution::insulation_not_tested}, true),
      act<&register_instrument>("register-instrument", "Register an instrument with its accuracy",
                                {caution::defer}, true)};
  return all;
}

const std::vector<View>& views() {
  static const std::vector<View> all{
      view<&aircraft_list>("aircraft-list", "The aircraft in this binder"),
      view<&front_page>("header", "What stands at the top of every page"),
      view<&named_choices>("choices", "What a field that names something may be filled with"),
      view<&bay_page>("bay", "What is installed, how much of it is used, what lies ahead"),
      view<&due_page>("due", "What is due, by when, and how sure"),
      view<&work_page>("work", "Changes, stages, objections and what is missing"),
      view<&measure_page>("measure", "What there is to be read, with limits and latest verdicts"),
      view<&judge_reading>("judge-reading",
                           "The verdict that a reading would get, nothing recorded"),
      view<&check_history>("check-history", "One check over hours and calendar"),
      view<&joints_page>("joints", "Joints with their states; the open ones first"),
      view<&runs_page>("runs", "Leak runs, ground runs, check flights and second looks"),
      view<&entries_page>("entries", "Signed entries"),
      view<&entry_draft>("entry-draft", "The text that an entry would have, and what is missing"),
      view<&history>("history", "What happened, newest first, corrections beside it"),
      view<&position_page>("position", "Everything about one position"),
      view<&decide_page>("decide", "Renew, watch or leave: every part with its evidence"),
      view<&evidence_of>("part-evidence", "Renew, watch or leave: one part with its evidence"),
      view<&hose_page>("hose", "One hose: its drawing, its proof tests"),
      view<&instruments_page>("instruments", "Own test equipment"),
      view<&export_sheet>("sheet", "The aircraft sheet of what is in the binder")};
  return all;
}

const Act* find_act(std::string_view name) {
  const auto found =
      std::find_if(acts().begin(), acts().end(), [&](const Act& a) { return a.name == name; });
  return found == acts().end() ? nullptr : &*found;
}

const View* find_view(std::string_view name) {
  const auto found =
      std::find_if(views().begin(), views().end(), [&](const View& v) { return v.name == name; });
  return found == views().end() ? nullptr : &*found;
}

}  // namespace wm::desk
