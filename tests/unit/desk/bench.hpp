#pragma once
/// A desk to try acts on: an invented aircraft "bird" in memory, acts given as JSON text, no file.
/// Everything in it is invented.

#include <fmt/core.h>
#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "binder/stored.hpp"
#include "calculation/catalogue.hpp"
#include "calculation/json_face.hpp"
#include "desk/lookup.hpp"
#include "desk/views.hpp"

namespace wm::desk::test {

/// The sheet of the bird: two magnetos, an oil hose, a fuel hose, controls and mounts.
inline constexpr std::string_view k_bird = R"json({
"aircraft":{"id":"bird","name":"Bird","registration":"Q-BRD","serial":"007","part_43_applies":"no"},
"counters":[
 {"id":"engine","name":"Engine hours","kind":"engine-hours","read_on":"2026-01-10","hours":"1000.0 h"},
 {"id":"starts","name":"Starts","kind":"starts","read_on":"2026-01-10","count":800}],
"positions":[
 {"id":"oil-hose","name":"Oil hose","system":"oil","chapter":"7920"},
 {"id":"fuel-hose","name":"Fuel hose","system":"fuel","chapter":"2820"},
 {"id":"left-magneto","name":"Left magneto","system":"ignition","redundant_with":"right-magneto"},
 {"id":"right-magneto","name":"Right magneto","system":"ignition","redundant_with":"left-magneto"},
 {"id":"mounts","name":"Engine mounts","system":"mounts"},
 {"id":"throttle","name":"Throttle control","system":"controls"}],
"joints":[
 {"id":"oil-nut","name":"Oil hose at the engine","position":"oil-hose","kind":"hose-swivel-nut",
  "torque_least":"230 in-lb","torque_most":"260 in-lb","torque_table":"maker's sheet, invented"},
 {"id":"fuel-nut","name":"Fuel hose at the pump","position":"fuel-hose","kind":"hose-swivel-nut",
  "torque_least":"110 in-lb","torque_most":"130 in-lb","torque_table":"maker's sheet, invented",
  "locking":"lock wire","needs_second_person":true},
 {"id":"lead-nut","name":"Lead at plug 1","position":"left-magneto"}],
"parts":[
 {"id":"hose-1","type":"hose","serial":"S-1","position":"oil-hose","fitted":"2021-03-01"},
 {"id":"hose-2","type":"hose","serial":"S-2"}],
"limits":[
 {"id":"oil-change","title":"Oil change","counter":"engine","every_hours":"50 h"},
 {"id":"mount-look","title":"Mounts looked at","position":"mounts","every_months":12}],
"checks":[
 {"id":"lead-1","title":"Left lead 1","position":"left-magneto","kind":"lead-resistance",
  "group":"left-harness","lowest":"3.0 kohm","highest":"8.0 kohm","unit":"kohm",
  "document":"maker's sheet, invented"},
 {"id":"lead-2","title":"Left lead 2","position":"left-magneto","kind":"lead-resistance",
  "group":"left-harness","lowest":"3.0 kohm","highest":"8.0 kohm","unit":"kohm",
  "document":"maker's sheet, invented"},
 {"id":"looseness","title":"Throttle play","position":"throttle"}]})json";

inline constexpr std::string_view k_meter = R"json({"id":"meter","name":"Bench meter","ranges":[
 {"name":"20 kohm","full_scale":"20 kohm","resolution":"0.01 kohm","of_reading":"1 %","counts":2}]})json";

/// All problems on one line, for a failing test to show.
inline std::string told(const Problems& problems) {
  std::string out;
  for (const auto& p : problems) out += fmt::format("[{}: {} {}] ", p.path, p.what, p.expected);
  return out;
}
inline std::string joined(const std::vector<std::string>& list) {
  std::string out;
  for (const auto& one : list) out += (out.empty() ? "" : " | ") + one;
  return out;
}

class Bench {
 public:
  bay::State state;
  std::string day{"2026-11-25"};
  std::string author{"anna"};
  std::string today{};  ///< the day on which it is entered, where that is not `day`

  /// An act with its fields ("\"stage\":\"one\""); the bird is put in where an aircraft is asked.
  /// Its events are taken in as the binder would. @return the problems, none when it was done.
  Problems act(std::string_view name, const std::string& fields) {
    const auto* found = find_act(name);
    if (found == nullptr) return {{Kind::not_found, {}, "no such act", {}, {}, {}, {}}};
    const auto input = found->make_input();
    auto problems =
        calculation::read_json(whole(*found->input, fields), *found->input, input.get());
    if (problems.empty()) problems = check_references(*found->input, input.get(), state);
    if (!problems.empty()) return problems;
    const auto context = this->context();
    const Desk desk{
        state, context, day, author, &binder::read_payload_strictly, &calculation::write_input};
    auto outcome = found->run(input.get(), desk);
    if (!outcome) return outcome.error();
    answer_ = outcome->answer;
    record(outcome->events);
    return {};
  }
  /// The same, and the test fails when it is refused. @return what was said.
  Said done(std::string_view name, const std::string& fields) {
    const auto problems = act(name, fields);
    EXPECT_TRUE(problems.empty()) << name << ": " << told(problems);
    const auto* type = find_act(name)->output;
    if (!problems.empty() || type != &describe::type_of<Said>()) return {};
    return *static_cast<const Said*>(answer_.get());
  }
  template <class Answer>
  [[nodiscard]] const Answer& answer() const {
    return *static_cast<const Answer*>(answer_.get());
  }
  template <class Page>
  Page view(std::string_view name, const std::string& fields = {}) {
    const auto* found = find_view(name);
    const auto input = found->make_input();
    const auto problems =
        calculation::read_json(whole(*found->input, fields), *found->input, input.get());
    EXPECT_TRUE(problems.empty()) << name << ": " << told(problems);
    if (!problems.empty()) return {};
    const auto page = found->run(input.get(), state, context());
    EXPECT_TRUE(page) << name << ": " << (page ? "" : told(page.error()));
    return page ? *static_cast<const Page*>(page->get()) : Page{};
  }
  [[nodiscard]] const bay::Aircraft& bird() const { return state.aircraft.at("bird"); }
  [[nodiscard]] std::string last_event() const { return state.events.back()->meta.id; }
  [[nodiscard]] describe::Context context() const {
    describe::Context out;
    out.today = *quantity::parse_date(today.empty() ? day : today);
    out.tables = calculation::catalogue().tables();
    return out;
  }

  // ---- the steps of a stage, in the order of the work -------------------------------------

  /// A change of that grade at a position, done or not.
  void plan(const std::string& id, const std::string& position,
            const std::string& grade = "renewed", const std::string& more = {}) {
    done("plan-change", fmt::format(R"("id":"{}","title":"{}","position":"{}","grade":"{}",)"
                                    R"("document":"manual, invented"{})",
                                    id, id, position, grade, more.empty() ? "" : "," + more));
  }
  Said stage(const std::string& id, const std::string& changes, const std::string& more = {}) {
    return done("plan-stage", fmt::format(R"("id":"{}","title":"{}","changes":[{}]{})", id, id,
                                          changes, more.empty() ? "" : "," + more));
  }
  void joint(const std::string& id, const std::string& state_word, const std::string& more = {}) {
    done("work-joint", fmt::format(R"("joint":"{}","state":"{}","by":"anna"{})", id, state_word,
                                   more.empty() ? "" : "," + more));
  }
  void step(const std::string& stage_id, const std::string& which) {
    done("stage-step",
         fmt::format(R"("stage":"{}","step":"{}","result":"satisfactory","by":"anna",)"
                     R"("ambient_temperature":"41 degF","ambient_pressure":"29.92 inHg")",
                     stage_id, which));
  }
  void oil_nut_closed() {
    joint("oil-nut", "torqued", R"("torque":"245 in-lb")");
    joint("oil-nut", "marked");
    joint("oil-nut", "seen");
  }
  /// The oil hose renewed in stage "one", everything done that is asked for before it is signed.
  void ready_to_open() {
    plan("hose", "oil-hose", "renewed", R"("joints":["oil-nut"])");
    stage("one", R"("hose")");
    joint("oil-nut", "open");
    done("change-done", R"("change":"hose","text":"new hose fitted","by":"anna")");
    oil_nut_closed();
    done("revise-mass", R"("stage":"one","empty_mass":"1000 lb","empty_arm":"10 in",)"
                        R"("document":"calculation, invented: unchanged")");
    step("one", "leak-run-static");
    step("one", "leak-run-engine");
    step("one", "ground-run");
    done("move-cowl", R"("closed":true,"by":"anna")");
  }
  Problems sign(std::string_view act_name, const std::string& stage_id) {
    return act(act_name,
               fmt::format(R"("stage":"{}","name":"Anna Example","signer":"owner")", stage_id));
  }

 private:
  static std::string whole(const describe::Type& type, const std::string& fields) {
    if (fields.starts_with('{')) return fields;
    const auto* aircraft = describe::find_field(type, "aircraft");
    const bool asked = aircraft != nullptr && aircraft->type->shape == describe::Shape::text;
    if (!asked || fields.find("\"aircraft\":") != std::string::npos) return "{" + fields + "}";
    return R"({"aircraft":"bird")" + (fields.empty() ? std::string{} : "," + fields) + "}";
  }
  void record(const std::vector<NewEvent>& events) {
    const auto act_id = fmt::format("act-{}", ++acts_);
    for (std::size_t i = 0; i < events.size(); ++i) {
      auto event = std::make_shared<bay::Event>();
      event->meta.id = i == 0 ? act_id : fmt::format("{}.{}", act_id, i + 1);
      event->meta.sequence = state.sequence + 1;
      event->meta.happened = events[i].happened.empty() ? day : events[i].happened;
      event->meta.recorded = "2026-11-25T09:00:00Z";
      event->meta.author = author;
      event->meta.refers_to = events[i].refers_to == "#0" ? act_id : events[i].refers_to;
      event->payload = events[i].payload;
      if (const auto* c = std::get_if<bay::EventCorrected>(&event->payload)) {
        auto body = binder::decode_payload(c->kind, static_cast<int>(c->version), c->body);
        EXPECT_TRUE(body);
        if (body) event->replacement = std::make_shared<const bay::Payload>(std::move(*body));
      }
      bay::apply(state, std::move(event));
    }
  }

  int acts_{};
  std::shared_ptr<void> answer_;
};

/// A bench with the bird and its meter on it.
inline Bench bird_bench() {
  Bench bench;
  bench.done("import-sheet", std::string(k_bird));
  bench.done("register-instrument", std::string(k_meter));
  return bench;
}

/// Whether there is a problem of this kind at this path.
inline testing::AssertionResult refused(const Problems& problems, Kind kind,
                                        const std::string& path) {
  for (const auto& p : problems) {
    if (p.kind == kind && p.path == path) return testing::AssertionSuccess();
  }
  return testing::AssertionFailure() << "wanted a problem at `" << path << "`, got "
                                     << (problems.empty() ? "none" : told(problems));
}
inline testing::AssertionResult says(const std::string& text, const std::string& wanted) {
  if (text.find(wanted) != std::string::npos) return testing::AssertionSuccess();
  return testing::AssertionFailure() << "`" << wanted << "` is not in: " << text;
}

}  // namespace wm::desk::test
