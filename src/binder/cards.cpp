#include "binder/cards.hpp"

#include <fmt/core.h>

#include "desk/judge.hpp"
#include "desk/stage_state.hpp"
#include "desk/views.hpp"
#include "drawing/png.hpp"
#include "drawing/svg.hpp"

namespace wm::binder {
namespace {

namespace caution = describe::caution;

/// @param day whose date and hours the card carries: today for work ahead, the day of its
///        signature for an entry, whenever it is printed.
drawing::Card blank(const bay::State& state, const bay::Aircraft& aircraft, quantity::Date day) {
  drawing::Card out;
  out.aircraft = aircraft.about.name;
  out.registration = aircraft.about.registration;
  out.date = quantity::print_date(day);
  out.sequence = state.sequence;
  out.head = state.head;
  if (!aircraft.about.serial.empty()) out.facts.emplace_back("Serial", aircraft.about.serial);
  for (const auto& [id, counter] : aircraft.counters) {
    // What was read last by then, as the signed text says it: no estimate from later readings.
    const auto then = counter.series.total_at(day);
    out.facts.emplace_back(
        counter.about.name,
        then ? life::say(then->lowest, bay::unit_of(counter.about.kind)) : "unknown");
  }
  return out;
}

void add_cautions(drawing::Card& out, std::initializer_list<const describe::Caution*> cautions) {
  for (const auto* c : cautions) out.cautions.emplace_back(c->text);
}

drawing::Step joint_step(const bay::JointRecord& joint) {
  const auto& about = joint.about;
  drawing::Step step;
  step.text = fmt::format("{}: close, torque{}, mark, look.", about.name,
                          about.locking.empty() ? "" : ", lock (" + about.locking + ")");
  if (about.torque_least) step.torque = about.torque_least->text + " to " + about.torque_most->text;
  step.torque_source = about.torque_table;
  step.second_person = about.needs_second_person;
  if (joint.ever_worked) step.state = joint.closed() ? "done" : "open";
  return step;
}

drawing::ReadingField reading_field(const bay::CheckRecord& check, const std::string& stage) {
  const auto line = desk::check_line(check);
  drawing::ReadingField field;
  field.label = line.title;
  field.unit = line.unit;
  if (!line.lowest.empty() && !line.highest.empty())
    field.limit = line.lowest + " to " + line.highest;
  else if (!line.highest.empty())
    field.limit = line.highest + " at most";
  else if (!line.lowest.empty())
    field.limit = line.lowest + " at least";
  field.source = line.limit_source;
  const auto* last = check.latest();
  if (last != nullptr && last->reading.stage == stage) {
    field.value = line.last;
    field.verdict = line.verdict;
  }
  return field;
}

drawing::Section change_section(const bay::Aircraft& aircraft, const bay::Change& change,
                                const std::string& stage) {
  const auto& about = change.about;
  drawing::Section out;
  out.heading = fmt::format("{} ({})", about.title, bay::label(about.grade));
  out.paragraphs.push_back("Data used: " +
                           (about.document.empty() ? std::string("to be named") : about.document));
  if (!about.new_part.empty()) out.paragraphs.push_back("Goes in: " + about.new_part);
  if (about.grade >= bay::Grade::opened_and_refitted) {
    drawing::Step open;
    open.text = "Open the joints; cap both ends; count bungs and tools in.";
    out.steps.push_back(open);
  }
  for (const auto& id : about.joints) {
    const auto joint = aircraft.joints.find(id);
    if (joint != aircraft.joints.end()) out.steps.push_back(joint_step(joint->second));
  }
  drawing::Step proof;
  proof.text = "Proof on the bench, and how:";
  for (const auto& id : aircraft.check_order) {
    const auto& check = aircraft.checks.find(id)->second;
    if (check.about.position == about.position)
      proof.readings.push_back(reading_field(check, stage));
  }
  if (change.result && !change.result->proof.empty()) proof.text += " " + change.result->proof;
  proof.state = change.done ? "done" : "";
  out.steps.push_back(std::move(proof));
  return out;
}

drawing::Section ground_section(const bay::Aircraft& aircraft, const bay::Stage& stage) {
  drawing::Section out;
  out.heading = "On the ground";
  const auto step = [&](bay::StageStep which, std::vector<drawing::ReadingField> fields) {
    drawing::Step s;
    s.text = std::string(bay::label(which));
    const auto* done = stage.latest(which);
    if (done != nullptr) {
      s.state = "done";
      s.text +=
          fmt::format(": {} {}", bay::label(done->about.result), done->happened.substr(0, 10));
    } else {
      s.readings = std::move(fields);
    }
    out.steps.push_back(std::move(s));
  };
  if (desk::disturbs_fluid(aircraft, stage)) {
    step(bay::StageStep::leak_run_static, {});
    step(bay::StageStep::leak_run_engine, {});
  }
  step(bay::StageStep::ground_run,
       {{"Air temperature", "", "recorded with the run", "rules-records, section 9", "", ""},
        {"Air pressure", "", "recorded with the run", "rules-records, section 9", "", ""},
        {"Oil pressure within 30 s", "", "maker's manual", "maker's manual", "", ""},
        {"Ignition drop, left", "rpm", "maker's manual", "maker's manual", "", ""},
        {"Ignition drop, right", "rpm", "maker's manual", "maker's manual", "", ""}});
  drawing::Step cowl;
  cowl.text = "Bungs, tools and rags counted out; cowl closed.";
  out.steps.push_back(std::move(cowl));
  return out;
}

drawing::Card work_card(const bay::State& state, const bay::Aircraft& aircraft,
                        const bay::Stage& stage, quantity::Date today) {
  auto out = blank(state, aircraft, today);
  out.title = "Work card";
  out.subtitle = stage.about.title;
  add_cautions(out, {&caution::propeller, &caution::fuel_vapour, &caution::hot_parts,
                     &caution::eye_protection, &caution::wrong_torque, &caution::proof_with_liquid,
                     &caution::insulation_not_tested});
  for (const auto& id : stage.about.changes) {
    const auto change = aircraft.changes.find(id);
    if (change != aircraft.changes.end() && !change->second.withdrawn)
      out.sections.push_back(change_section(aircraft, change->second, stage.about.id));
  }
  out.sections.push_back(ground_section(aircraft, stage));
  out.signatures.push_back({"Work done as described", {}, {}, {}, false});
  out.signatures.push_back({"Second person, what was looked at", {}, {}, {}, false});
  return out;
}

drawing::Card stage_card(const bay::State& state, const bay::Aircraft& aircraft,
                         const bay::Stage& stage, quantity::Date today) {
  auto out = blank(state, aircraft, today);
  out.title = "Stage card";
  out.subtitle = stage.about.title;
  out.facts.emplace_back("State", std::string(bay::label(stage.state)));
  if (stage.mass)
    out.facts.emplace_back("Empty mass",
                           stage.mass->empty_mass.text + " at " + stage.mass->empty_arm.text);
  add_cautions(out, {&caution::propeller, &caution::look_again, &caution::redundant_pair});
  drawing::Section changes{"Changes under test",
                           {},
                           {},
                           drawing::Table{{"Change", "Grade", "Position"}, {}, {0.5, 0.2, 0.3}}};
  for (const auto& id : stage.about.changes) {
    const auto change = aircraft.changes.find(id);
    if (change == aircraft.changes.end() || change->second.withdrawn) continue;
    const auto& about = change->second.about;
    const auto position = aircraft.positions.find(about.position);
    changes.table->rows.push_back(
        {about.title, std::string(bay::label(about.grade)),
         position == aircraft.positions.end() ? about.position : position->second.name});
  }
  out.sections.push_back(std::move(changes));
  drawing::Section limits{"Come back when", {}, {}, {}};
  if (stage.about.abort_values.empty()) {
    limits.paragraphs.push_back("No abort values entered: write them here before the flight.");
  } else {
    limits.table = drawing::Table{{"Watch", "Come back when"}, {}, {0.5, 0.5}};
    for (const auto& a : stage.about.abort_values) limits.table->rows.push_back({a.what, a.limit});
  }
  out.sections.push_back(std::move(limits));
  drawing::Section before{"Before the flight", {}, {}, {}};
  for (const auto& m : desk::missing_to_open(aircraft, stage)) {
    drawing::Step s;
    s.text = m.what;
    s.state = "open";
    before.steps.push_back(std::move(s));
  }
  if (before.steps.empty()) before.paragraphs.push_back("All asked for is on record.");
  out.sections.push_back(std::move(before));
  drawing::Section flight{"Check flight and second look", {}, {}, {}};
  for (const auto which : {bay::StageStep::check_flight, bay::StageStep::second_look}) {
    drawing::Step s;
    s.text = std::string(bay::label(which));
    if (const auto* done = stage.latest(which)) {
      s.state = "done";
      s.text += ": " + std::string(bay::label(done->about.result));
    } else if (which == bay::StageStep::check_flight) {
      s.readings = {{"Flight time", "", "as planned", "owner", "", ""},
                    {"Oil pressure", "", "maker's manual", "maker's manual", "", ""},
                    {"Oil temperature", "", "maker's manual", "maker's manual", "", ""}};
    }
    flight.steps.push_back(std::move(s));
  }
  out.sections.push_back(std::move(flight));
  out.signatures.push_back({"Pilot: flown, readings as entered", {}, {}, {}, false});
  out.signatures.push_back({"Checks judged, stage closed", {}, {}, {}, false});
  return out;
}

drawing::Card entry_card(const bay::State& state, const bay::Aircraft& aircraft,
                         const bay::Entry& entry) {
  auto out = blank(state, aircraft, entry.day);
  out.title = "Record entry";
  out.subtitle = std::string(bay::label(entry.about.purpose));
  drawing::Section text{"Text as signed", {}, {}, {}};
  std::string line;
  for (const char c : entry.about.text + "\n") {
    if (c != '\n') {
      line += c;
      continue;
    }
    if (!line.empty()) text.paragraphs.push_back(line);
    line.clear();
  }
  if (entry.amended_after_signature) {
    text.paragraphs.push_back(
        "AMENDED AFTER SIGNATURE: matter that this text reports was corrected later; a new entry "
        "is asked for.");
  }
  out.sections.push_back(std::move(text));
  out.signatures.push_back(
      {std::string(bay::label(entry.about.signer)), entry.about.name,
       entry.about.certificate.empty() ? "no certificate number given" : entry.about.certificate,
       quantity::print_date(entry.day), true});
  return out;
}

}  // namespace

Result<CardKind> card_kind(std::string_view word) {
  if (word == "work") return CardKind::work;
  if (word == "stage") return CardKind::stage;
  if (word == "entry") return CardKind::entry;
  return Fail(Kind::unknown_choice, fmt::format("there is no card `{}`", word),
              "work, stage or entry", "work");
}

Result<drawing::Card> card(const bay::State& state, const CardWanted& wanted,
                           quantity::Date today) {
  const auto* aircraft = state.find_aircraft(wanted.aircraft);
  if (aircraft == nullptr)
    return Fail(Kind::not_found, "there is no aircraft `" + wanted.aircraft + "`");
  if (wanted.kind == CardKind::entry) {
    const auto entry = aircraft->entries.find(wanted.id);
    if (entry == aircraft->entries.end())
      return Fail(Kind::not_found, "there is no entry `" + wanted.id + "`");
    return entry_card(state, *aircraft, entry->second);
  }
  const auto stage = aircraft->stages.find(wanted.id);
  if (stage == aircraft->stages.end())
    return Fail(Kind::not_found, "there is no stage `" + wanted.id + "`");
  return wanted.kind == CardKind::work ? work_card(state, *aircraft, stage->second, today)
                                       : stage_card(state, *aircraft, stage->second, today);
}

Result<std::string> print_card(const drawing::Card& wanted, drawing::Paper paper,
                               std::string_view ending) {
  if (ending == "pdf") return drawing::card_pdf(wanted, paper, wanted.date);
  if (ending != "svg" && ending != "png") {
    return Fail(Kind::unknown_choice, fmt::format("cards are not made as `{}`", ending),
                "pdf, svg or png", "pdf");
  }
  const auto pages = drawing::lay_out(wanted, paper);
  if (!pages) return Fail(pages.error());
  if (ending == "svg") return drawing::svg(pages->front());
  return drawing::png(pages->front(), 150);
}

}  // namespace wm::binder
