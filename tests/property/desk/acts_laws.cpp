// Laws of the desk, over random sequences of acts, accepted or refused: the state is what its
// events tell, a refused act changes nothing, and no stage is open over an open joint.
//
// No outside source: these are the laws that the desk sets itself (docs/house.md).
#include <array>
#include <random>

#include "binder/stored.hpp"
#include "unit/desk/bench.hpp"

namespace {

using namespace wm;
using desk::test::Bench;

constexpr unsigned k_sequences = 12;
constexpr int k_acts = 120;

struct Draw {
  std::mt19937 random;
  template <std::size_t N>
  std::string of(const std::array<const char*, N>& list) {
    return list[random() % N];
  }
  int below(int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); }
};

struct Try {
  std::string act, fields;
};

constexpr std::array k_joints{"oil-nut", "fuel-nut", "lead-nut"};
constexpr std::array k_positions{"oil-hose", "fuel-hose", "left-magneto", "throttle"};
constexpr std::array k_parts{"hose-1", "hose-2", "hose-3"};
constexpr std::array k_changes{"c1", "c2", "c3"};
constexpr std::array k_stages{"one", "two"};
constexpr std::array k_people{"anna", " Anna ", "ben"};
constexpr std::array k_states{"open", "assembled", "torqued", "locked", "marked", "seen"};
constexpr std::array k_torques{"245 in-lb", "120 in-lb", "300 in-lb"};
constexpr std::array k_steps{"leak-run-static", "leak-run-engine", "ground-run", "check-flight",
                             "second-look"};
constexpr std::array k_results{"satisfactory", "satisfactory", "satisfactory", "unsatisfactory"};
constexpr std::array k_days{"2016-01-01", "2019-01-01", "2022-01-01", "2026-11-25"};

std::string pair(const char* key, const std::string& value) {
  return fmt::format(R"("{}":"{}")", key, value);
}

Try one_joint(Draw& draw) {
  const auto state = draw.of(k_states);
  auto fields = pair("joint", draw.of(k_joints)) + "," + pair("state", state) + "," +
                pair("by", draw.of(k_people));
  if (state == "torqued") {
    fields += "," + pair("torque", draw.of(k_torques)) + "," + pair("torque_table", "invented");
    if (draw.below(3) == 0) fields += "," + pair("reason_outside_band", "letter of the maker");
  }
  return {"work-joint", fields};
}

Try one_part(Draw& draw) {
  const auto part = pair("part", draw.of(k_parts));
  if (draw.below(3) == 0) return {"remove-part", part + R"(,"reason":"worn")"};
  auto fields = part + "," + pair("position", draw.of(k_positions));
  if (draw.below(2) == 0)
    fields += "," + pair("until_day", draw.of(k_days)) + R"(,"reason":"worn")";
  return {"install-part", fields};
}

/// The acts of one joint or run in the order of the work, so that some stages come to be open.
std::vector<Try> good_run(Draw& draw) {
  const auto stage = draw.of(k_stages);
  std::vector<Try> out;
  for (const auto* change : k_changes)
    out.push_back({"change-done", pair("change", change) + R"(,"text":"done","by":"anna")"});
  for (const auto* joint : k_joints) {
    for (const auto* state : {"torqued", "locked", "marked", "seen"}) {
      const std::string torque = std::string(joint) == "oil-nut" ? "245 in-lb" : "120 in-lb";
      const std::string more = std::string(state) == "torqued"
                                   ? "," + pair("torque", torque) + R"(,"torque_table":"invented")"
                                   : std::string{};
      out.push_back({"work-joint", pair("joint", joint) + "," + pair("state", state) + "," +
                                       pair("by", std::string(state) == "seen" ? "ben" : "anna") +
                                       more});
    }
  }
  out.push_back(
      {"revise-mass",
       pair("stage", stage) + R"(,"empty_mass":"1000 lb","empty_arm":"10 in","document":"x")"});
  for (const auto* step : {"leak-run-static", "leak-run-engine", "ground-run"}) {
    out.push_back({"stage-step", pair("stage", stage) + "," + pair("step", step) +
                                     R"(,"result":"satisfactory","ambient_temperature":"41 degF",)"
                                     R"("ambient_pressure":"29.92 inHg")"});
  }
  out.push_back({"move-cowl", R"("closed":true)"});
  out.push_back({"open-stage", pair("stage", stage) + R"(,"name":"Anna","signer":"owner")"});
  return out;
}

std::vector<Try> drawn(Draw& draw) {
  const auto stage = pair("stage", draw.of(k_stages));
  switch (draw.below(12)) {
    case 0:
    case 1:
    case 2:
      return {one_joint(draw)};
    case 3:
    case 4:
      return {one_part(draw)};
    case 5: {
      const auto id = draw.of(k_changes);
      return {{"plan-change", pair("id", id) + "," + pair("title", id) + "," +
                                  pair("position", draw.of(k_positions)) +
                                  R"(,"grade":"renewed","joints":["oil-nut"])"}};
    }
    case 6: {
      const auto id = draw.of(k_stages);
      return {{"plan-stage", pair("id", id) + "," + pair("title", id) +
                                 fmt::format(R"(,"changes":["{}"])", draw.of(k_changes))}};
    }
    case 7:
      return {{"stage-step", stage + "," + pair("step", draw.of(k_steps)) + "," +
                                 pair("result", draw.of(k_results)) +
                                 R"(,"text":"seen","ambient_temperature":"41 degF",)"
                                 R"("ambient_pressure":"29.92 inHg")"}};
    case 8:
      return {{draw.below(2) == 0 ? "hold-stage" : "resume-stage", stage + R"(,"reason":"x")"}};
    case 9:
      return {{draw.below(2) == 0 ? "open-stage" : "close-stage",
               stage + R"(,"name":"Anna","signer":"owner")"}};
    case 10:
      return {{"move-cowl", draw.below(2) == 0 ? R"("closed":true)" : R"("closed":false)"}};
    default:
      return good_run(draw);
  }
}

/// All that a person could see of the state, as text.
std::string seen(Bench& bench) {
  std::string out;
  for (const auto& o : bench.state.oddities) out += fmt::format("odd {} {}\n", o.sequence, o.words);
  for (const auto& [id, joint] : bench.bird().joints) {
    const auto line = desk::joint_line(joint, bench.state);
    out += fmt::format("{} {} {} {} {} {}\n", id, line.state, line.number, line.closed, line.torque,
                       line.by);
  }
  for (const auto& [id, part] : bench.state.parts) {
    for (const auto& i : part.installations) {
      out += fmt::format("{} {} {} {}\n", id, i.position, quantity::print_date(i.from),
                         i.to ? quantity::print_date(*i.to) : "");
    }
  }
  for (const auto& [position, part] : bench.bird().fitted)
    out += fmt::format("{} {}\n", position, part);
  for (const auto& [id, stage] : bench.bird().stages)
    out += fmt::format("{} {} {} {} {}\n", id, bay::word(stage.state), stage.steps.size(),
                       stage.entries.size(), stage.about.changes.size());
  return out + fmt::format("{} {}", bench.bird().cowl_closed, bench.state.sequence);
}

Bench rebuilt(const Bench& bench) {
  Bench out;
  std::vector<std::shared_ptr<const bay::Event>> events;
  for (const auto& event : bench.state.events) {
    // Through its stored form: what the fold knows must all be in the bytes.
    const auto& kind = bay::kind_of(event->payload);
    auto body = binder::decode_payload(kind.word, kind.version, binder::encode(event->payload));
    EXPECT_TRUE(body);
    if (!body) continue;
    auto copy = std::make_shared<bay::Event>(*event);
    copy->payload = std::move(*body);
    events.push_back(std::move(copy));
  }
  out.state = bay::fold(std::move(events));
  return out;
}

bool overlap(const bay::Installation& a, const bay::Installation& b) {
  return (!a.to || b.from < *a.to) && (!b.to || a.from < *b.to);
}

void no_two_parts_share_a_place(const Bench& bench) {
  std::vector<const bay::Installation*> all;
  for (const auto& [id, part] : bench.state.parts) {
    for (const auto& i : part.installations) all.push_back(&i);
  }
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k) {
      const bool same = all[i]->position == all[k]->position || all[i]->part == all[k]->part;
      EXPECT_FALSE(same && overlap(*all[i], *all[k])) << all[i]->part << " and " << all[k]->part;
    }
  }
}

TEST(DeskLaws, RandomActsKeepTheStateTrue) {
  int accepted = 0;
  int refused = 0;
  int opened = 0;
  for (unsigned seed = 1; seed <= k_sequences; ++seed) {
    Draw draw{std::mt19937(seed)};
    auto bench = desk::test::bird_bench();
    bench.done("register-part", R"("id":"hose-3","type":"hose")");
    for (int n = 0; n < k_acts; ++n) {
      bench.day = draw.below(4) == 0 ? draw.of(k_days) : "2026-11-25";
      bench.today = "2026-11-25";
      for (const auto& one : drawn(draw)) {
        const auto before = seen(bench);
        const auto problems = bench.act(one.act, one.fields);
        if (!problems.empty()) {
          ++refused;
          ASSERT_EQ(seen(bench), before) << one.act << " was refused and changed something";
          for (const auto& p : problems) EXPECT_FALSE(p.what.empty()) << one.act;
          continue;
        }
        ++accepted;
        if (one.act != "open-stage") continue;
        ++opened;
        for (const auto& [id, joint] : bench.bird().joints)
          EXPECT_TRUE(joint.closed()) << "seed " << seed << ": opened over " << id;
        EXPECT_TRUE(bench.bird().cowl_closed);
      }
    }
    auto again = rebuilt(bench);
    EXPECT_EQ(seen(again), seen(bench)) << "seed " << seed;
    no_two_parts_share_a_place(bench);
  }
  EXPECT_GT(accepted, 300) << "the draws reach something";
  EXPECT_GT(refused, 300);
  EXPECT_GT(opened, 0) << "some stage was signed open";
}

}  // namespace
