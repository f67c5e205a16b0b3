// The demo binder: made by the public acts, whole, and what the walk expects to see in it.
#include "cli/demo.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <string>

#include "calculation/json_face.hpp"
#include "desk/views.hpp"

namespace {

using namespace wm;
namespace fs = std::filesystem;
using std::chrono::day;
using std::chrono::month;
using std::chrono::year;

const binder::Now k_now{"2026-11-25T09:12:00Z", {year{2026}, month{11}, day{25}}};

/// A folder of its own for each test, gone afterwards.
class Demo : public testing::Test {
 protected:
  void SetUp() override {
    std::string name = (fs::temp_directory_path() / "wm-demo-XXXXXX").string();
    ASSERT_NE(mkdtemp(name.data()), nullptr);
    folder_ = name;
  }
  void TearDown() override { fs::remove_all(folder_); }

  [[nodiscard]] const fs::path& folder() const { return folder_; }

 private:
  fs::path folder_;
};

template <class Page>
Page look(binder::Binder& binder, const std::string& view, const std::string& input) {
  const auto reply = binder.view(
      view,
      [&](const describe::Type& type, void* out) {
        return calculation::read_json(input, type, out);
      },
      k_now, quantity::UnitSet::us_customary);
  if (!reply) {
    ADD_FAILURE() << calculation::write_problems(reply.error());
    return {};
  }
  return *static_cast<const Page*>(reply->value.get());
}

constexpr const char* k_pebblewing = R"({"aircraft":"pebblewing"})";

TEST_F(Demo, ShowsWhatTheWalkExpects) {
  const auto made = cli::make_demo(folder(), k_now);
  ASSERT_TRUE(made) << calculation::write_problems(made.error());
  EXPECT_EQ(made->binder, folder() / "pebblewing.binder");
  EXPECT_GE(made->events, 300);

  auto opened = binder::Binder::open(made->binder);
  ASSERT_TRUE(opened) << opened.error().what;
  auto& binder = **opened;
  EXPECT_EQ(binder.read_only_because(), "");
  const auto verified = binder.verify({});
  EXPECT_TRUE(verified.clean());
  EXPECT_EQ(verified.events, made->events);
  EXPECT_EQ(verified.attachments, 1);

  const auto page = look<desk::BayPage>(binder, "bay", k_pebblewing);
  EXPECT_EQ(page.past_limit, 1);
  EXPECT_EQ(page.doubtful, 2);
  EXPECT_EQ(page.unknown, 3);
  EXPECT_TRUE(page.oddities.empty()) << (page.oddities.empty() ? "" : page.oddities.front());
  EXPECT_TRUE(page.open_joints.empty());
  EXPECT_TRUE(page.bungs.empty());
  EXPECT_EQ(page.plan.size(), 47U);
  ASSERT_EQ(page.defects.size(), 1U);
  EXPECT_EQ(page.defects.front().id, "oil-film-cylinder-4");
  ASSERT_GE(page.marks.size(), 6U);
  EXPECT_EQ(page.marks[0].id, "fuel-hose-strainer-age");
  EXPECT_EQ(page.marks[0].standing, "past-limit");
  std::vector<std::string> doubtful{page.marks[1].id, page.marks[2].id};
  std::sort(doubtful.begin(), doubtful.end());
  EXPECT_EQ(doubtful, (std::vector<std::string>{"left-lead-2", "left-lead-3"}));
  EXPECT_EQ(page.marks[1].standing, "undecided");
  EXPECT_EQ(page.marks[2].standing, "undecided");
  const auto drifting = std::find_if(page.marks.begin(), page.marks.end(),
                                     [](const desk::Mark& m) { return m.id == "left-lead-3"; });
  EXPECT_TRUE(drifting->trend.starts_with("drifting: +")) << drifting->trend;
}

TEST_F(Demo, HoldsOneOfEverythingThatTheIssueNames) {
  const auto made = cli::make_demo(folder(), k_now);
  ASSERT_TRUE(made) << calculation::write_problems(made.error());
  auto opened = binder::Binder::open(made->binder);
  ASSERT_TRUE(opened) << opened.error().what;
  auto& binder = **opened;

  const auto due = look<desk::DuePage>(binder, "due", k_pebblewing);
  std::vector<std::string> on_leap_day;
  for (const auto& row : due.rows) {
    if (row.due_on == quantity::Date{year{2028}, month{2}, day{29}}) on_leap_day.push_back(row.id);
  }
  EXPECT_EQ(on_leap_day, std::vector<std::string>{"gauges-compared"});

  binder.look([](const bay::State& state) {
    ASSERT_TRUE(state.aircraft.contains("thornback"));
    const auto& aircraft = state.aircraft.at("pebblewing");
    EXPECT_TRUE(state.oddities.empty());
    ASSERT_EQ(state.corrections.size(), 1U);
    const auto& lead = aircraft.checks.at("right-lead-2");
    const auto corrected = std::find_if(lead.readings.begin(), lead.readings.end(),
                                        [](const auto& r) { return r.corrected; });
    ASSERT_NE(corrected, lead.readings.end());
    EXPECT_EQ(corrected->reading.value->text, "5.61 kohm");
    EXPECT_EQ(corrected->verdict->verdict, evidence::Verdict::conforms);
    ASSERT_EQ(state.attachments.size(), 1U);
    EXPECT_EQ(state.attachments.front().about.name, "stripe.png");
    EXPECT_NEAR(*aircraft.engine_hours()->now(), 1140.6, 1e-6);
    EXPECT_NEAR(*aircraft.counters.at("airframe").now(), 942.4 + 103.7, 1e-6)
        << "an exchanged meter's total goes on";
    EXPECT_EQ(aircraft.stages.at("winter-2026-carburettor-hose").state, bay::StageState::closed);
    EXPECT_TRUE(aircraft.defects.at("rough-right-magneto").closed);
    EXPECT_NE(state.parts.at("battery-03").current(), nullptr);
    EXPECT_EQ(state.parts.at("battery-02").current(), nullptr);
    EXPECT_FALSE(aircraft.changes.at("isolators-2027").done);
    EXPECT_TRUE(aircraft.cowl_closed);
    EXPECT_LT(*state.instruments.at("milliohm-meter").about.calibration_due, k_now.today);
    for (const auto& point : aircraft.engine_hours()->series.points()) {
      EXPECT_NE(point.event.on.month(), month{1}) << "nobody flies in January";
    }
  });
}

TEST_F(Demo, TwiceWithOneClockGivesTheSameRecord) {
  const auto one = cli::make_demo(folder() / "one", k_now);
  const auto two = cli::make_demo(folder() / "two", k_now);
  ASSERT_TRUE(one && two);
  auto first = binder::Binder::open(one->binder, record::Access::read_only);
  auto second = binder::Binder::open(two->binder, record::Access::read_only);
  ASSERT_TRUE(first && second);
  EXPECT_EQ((*first)->last().hash, (*second)->last().hash);
  EXPECT_EQ((*first)->last().sequence, (*second)->last().sequence);
}

TEST_F(Demo, LeavesABinderThatIsThereAlone) {
  const auto path = folder() / "pebblewing.binder";
  std::ofstream(path) << "mine";
  const auto made = cli::make_demo(folder(), k_now);
  ASSERT_FALSE(made);
  EXPECT_EQ(made.error().front().kind, Kind::duplicate);
  EXPECT_EQ(made.error().front().path, path.string());
  std::ifstream in(path);
  std::string kept;
  in >> kept;
  EXPECT_EQ(kept, "mine");
}

TEST_F(Demo, LeavesNothingBesideTheBinder) {
  const auto made = cli::make_demo(folder(), k_now);
  ASSERT_TRUE(made) << calculation::write_problems(made.error());
  std::vector<std::string> names;
  for (const auto& file : fs::directory_iterator(folder()))
    names.push_back(file.path().filename().string());
  EXPECT_EQ(names, std::vector<std::string>{"pebblewing.binder"});
}

TEST_F(Demo, SaysWhenThereCanBeNoFolder) {
  std::ofstream(folder() / "file") << "x";
  const auto made = cli::make_demo(folder() / "file" / "demo", k_now);
  ASSERT_FALSE(made);
  EXPECT_EQ(made.error().front().kind, Kind::refused);
}

TEST(DemoScript, IsWhatItsGeneratorWrites) {
  if (std::system("node --version > /dev/null 2>&1") != 0) GTEST_SKIP() << "no node here";
  EXPECT_EQ(std::system("node '" WM_SOURCE_DIR "/demo/make_history.mjs' --check"), 0);
}

TEST(DemoScript, SaysThatItIsInvented) {
  for (const char* name : {"pebblewing.toml", "thornback.toml", "history.jsonl"}) {
    std::ifstream in(std::string(WM_SOURCE_DIR "/demo/") + name);
    std::string top;
    for (std::string line; top.size() < 300 && std::getline(in, line);) top += line;
    EXPECT_NE(top.find("invented"), std::string::npos) << name;
  }
}

}  // namespace
