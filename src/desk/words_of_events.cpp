#include <fmt/core.h>

#include "desk/views.hpp"

// One sentence an event, for the history and for printed lists.
namespace wm::desk {
namespace {

std::string readings(const std::vector<bay::CounterReading>& at) {
  std::string out;
  for (const auto& r : at) {
    out += fmt::format("{}{} {}", out.empty() ? "" : ", ", r.counter,
                       r.hours ? r.hours->text : (r.count ? std::to_string(*r.count) : "?"));
  }
  return out;
}
std::string with(const std::string& text, const char* before) {
  return text.empty() ? "" : before + text;
}

struct Words {
  std::string operator()(const bay::AircraftDescribed& e) const {
    return fmt::format("{} ({}) described", e.name, e.registration);
  }
  std::string operator()(const bay::CounterDefined& e) const {
    return fmt::format("Counter defined: {}", e.name);
  }
  std::string operator()(const bay::CounterRead& e) const {
    return "Counters read: " + readings(e.at);
  }
  std::string operator()(const bay::CounterReplaced& e) const {
    return fmt::format("Meter of {} exchanged: {}", e.counter, e.reason);
  }
  std::string operator()(const bay::PositionAdded& e) const {
    return fmt::format("Position added: {}", e.name);
  }
  std::string operator()(const bay::JointAdded& e) const {
    return fmt::format("Joint added: {}", e.name);
  }
  std::string operator()(const bay::PartRegistered& e) const {
    return fmt::format("Part registered: {} {}", e.id,
                       e.description.empty() ? e.type : e.description);
  }
  std::string operator()(const bay::PartInstalled& e) const {
    return fmt::format("Part {} installed in {}{}", e.part, e.position,
                       e.day_known ? "" : " (day unknown)");
  }
  std::string operator()(const bay::PartRemoved& e) const {
    return fmt::format("Part {} removed: {}", e.part, e.reason);
  }
  std::string operator()(const bay::LimitSet& e) const {
    return fmt::format("Limit set: {}", e.title);
  }
  std::string operator()(const bay::TaskDone& e) const {
    return fmt::format("Done: {}{}", e.limit, with(e.text, ": "));
  }
  std::string operator()(const bay::InstrumentRegistered& e) const {
    return fmt::format("Instrument registered: {}", e.name);
  }
  std::string operator()(const bay::InstrumentFoundBad& e) const {
    return fmt::format("Instrument found bad: {}: {}", e.instrument, e.why);
  }
  std::string operator()(const bay::CheckDescribed& e) const {
    return fmt::format("Check described: {}", e.title);
  }
  std::string operator()(const bay::ReadingTaken& e) const {
    return fmt::format("Reading: {}: {}", e.check,
                       e.value        ? e.value->text
                       : e.over_range ? "over range"
                                      : "none");
  }
  std::string operator()(const bay::VerdictGiven& e) const {
    return fmt::format("Verdict: {}: {}", e.check, e.words);
  }
  std::string operator()(const bay::DefectNoted& e) const {
    return fmt::format("Defect noted: {}", e.text);
  }
  std::string operator()(const bay::DefectDecided& e) const {
    return fmt::format("Defect {}: {}: {}", e.defect, bay::label(e.decision), e.reason);
  }
  std::string operator()(const bay::DefectClosed& e) const {
    return fmt::format("Defect {} closed: {}", e.defect, e.how);
  }
  std::string operator()(const bay::ChangePlanned& e) const {
    return fmt::format("Change planned: {} ({})", e.title, bay::label(e.grade));
  }
  std::string operator()(const bay::ChangeDone& e) const {
    return fmt::format("Change done: {}: {}", e.change, e.text);
  }
  std::string operator()(const bay::ChangeWithdrawn& e) const {
    return fmt::format("Change withdrawn: {}: {}", e.change, e.reason);
  }
  std::string operator()(const bay::StagePlanned& e) const {
    return fmt::format("Stage planned: {}, {} changes", e.title, e.changes.size());
  }
  std::string operator()(const bay::StageRuleAnswered& e) const {
    return fmt::format("{} for {} by {}: {}", bay::label(e.answer), e.rule, e.by, e.text);
  }
  std::string operator()(const bay::JointWorked& e) const {
    return fmt::format("Joint {}: {}{}{}{}", e.joint, bay::label(e.state),
                       e.torque ? " " + e.torque->text : "", with(e.by, ", by "),
                       with(e.reason_outside_band, "; outside its limits: "));
  }
  std::string operator()(const bay::BungCounted& e) const {
    return fmt::format("{} {}", e.id, e.fitted ? "fitted" : "taken out");
  }
  std::string operator()(const bay::CowlMoved& e) const {
    return e.closed ? "Cowl closed" : "Cowl open";
  }
  std::string operator()(const bay::MassRevised& e) const {
    return fmt::format("Mass and balance: {} at {}", e.empty_mass.text, e.empty_arm.text);
  }
  std::string operator()(const bay::StageStepDone& e) const {
    return fmt::format("{} of {}: {}{}", bay::label(e.step), e.stage, bay::label(e.result),
                       with(e.text, ": "));
  }
  std::string operator()(const bay::EntrySigned& e) const {
    return fmt::format("Entry signed by {} ({}): {}", e.name, bay::label(e.signer),
                       bay::label(e.purpose));
  }
  std::string operator()(const bay::StageMoved& e) const {
    return fmt::format("Stage {}: {}{}", e.stage, bay::label(e.to), with(e.reason, ": "));
  }
  std::string operator()(const bay::QuickJobDone& e) const {
    return fmt::format("{}{}", bay::label(e.what), with(e.text, ": "));
  }
  std::string operator()(const bay::HoseDrawn& e) const {
    return fmt::format("Hose drawn: {}, overall {}, tightest bend {}", e.title, e.overall.text,
                       e.tightest_radius.text);
  }
  std::string operator()(const bay::HoseProved& e) const {
    return fmt::format("Hose {} proved at {} for {}: {}", e.hose, e.test_pressure.text, e.held.text,
                       e.words);
  }
  std::string operator()(const bay::PartDecided& e) const {
    return fmt::format("Decided for {}: {}{}", e.position, bay::label(e.decision),
                       with(e.reason, ": "));
  }
  std::string operator()(const bay::AttachmentAdded& e) const {
    return fmt::format("Attached: {}{}", e.name, with(e.caption, ": "));
  }
  std::string operator()(const bay::EventCorrected& e) const {
    return fmt::format("Correction of a {}: {}", e.kind, e.reason);
  }
  std::string operator()(const bay::SheetImported& e) const {
    return fmt::format("Aircraft sheet taken in: {} positions, {} joints, {} limits", e.positions,
                       e.joints, e.limits);
  }
};

}  // namespace

std::string in_words(const bay::Payload& payload) { return std::visit(Words{}, payload); }

}  // namespace wm::desk
