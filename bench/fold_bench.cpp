// Act: a binder with some fifty years of record is opened: its bodies are read and folded into the
//      aircraft.
// Aim: 150,000 events a second through the fold (our choice, no source): the demo's three years
//      take a few milliseconds, and a record of a lifetime stays below a second.
// Peer of the whole opening: the same bodies read by nlohmann::json alone, which knows neither
//      units nor rules; turn about with ours, medians of five. The fold alone has no peer.
//
// fold_bench [EVENTS]   The mix of kinds is that of the demo: half readings with their verdicts,
// a fifth counter readings, the rest joints, jobs, tasks and defects. All invented.
#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "bay/state.hpp"
#include "binder/stored.hpp"
#include "quantity/date.hpp"
#include "record/event.hpp"

namespace {

using wm::record::StoredEvent;
using Clock = std::chrono::steady_clock;
constexpr int k_runs = 5;
constexpr int k_checks = 40;
constexpr int k_joints = 60;

[[noreturn]] void stop(const std::string& why) {
  std::fprintf(stderr, "fold_bench: %s\n", why.c_str());
  std::exit(3);
}

double seconds_of(auto&& act) {
  const auto begin = Clock::now();
  act();
  return std::chrono::duration<double>(Clock::now() - begin).count();
}

double median(std::array<double, k_runs> values) {
  std::ranges::sort(values);
  return values[k_runs / 2];
}

std::string text(const char* form, auto... values) {
  std::array<char, 700> out{};
  std::snprintf(out.data(), out.size(), form, values...);
  return out.data();
}

/// A record of so many events, as the journal would hand it over.
class Scribe {
 public:
  explicit Scribe(int events) {
    aircraft();
    while (static_cast<int>(stored_.size()) < events) one_more();
    stored_.resize(static_cast<std::size_t>(events));
  }
  [[nodiscard]] const std::vector<StoredEvent>& stored() const { return stored_; }

 private:
  void put(const char* kind, std::string body, std::string refers_to = {}) {
    StoredEvent event;
    event.sequence = static_cast<std::int64_t>(stored_.size()) + 1;
    event.id = "e-" + std::to_string(event.sequence);
    event.kind = kind;
    event.version = 1;
    event.happened = day_;
    event.recorded = day_ + "T12:00:00Z";
    event.author = "owner (invented)";
    event.device = "bench";
    event.refers_to = std::move(refers_to);
    event.body = std::move(body);
    stored_.push_back(std::move(event));
  }

  void aircraft() {
    put("aircraft-described",
        R"({"id":"pebblewing","name":"Pebblewing","registration":"Q-PEB","engine":"invented"})");
    put("counter-defined",
        R"({"aircraft":"pebblewing","id":"engine","name":"Engine hours","kind":"engine-hours"})");
    for (int i = 0; i < k_checks; ++i) {
      put("position-added",
          text(R"({"aircraft":"pebblewing","id":"place-%d","name":"Place %d","system":"ignition"})",
               i, i));
      put("limit-set", text(R"({"aircraft":"pebblewing","id":"limit-%d","title":"Limit %d",)"
                            R"("position":"place-%d","counter":"engine","every_hours":"100 h"})",
                            i, i, i));
      put("check-described",
          text(R"({"aircraft":"pebblewing","id":"check-%d","title":"Check %d","position":)"
               R"("place-%d","kind":"lead-resistance","lowest":"3.0 kohm","highest":"8.0 kohm"})",
               i, i, i));
    }
    for (int i = 0; i < k_joints; ++i) {
      put("joint-added", text(R"({"aircraft":"pebblewing","id":"joint-%d","name":"Joint %d",)"
                              R"("position":"place-%d","kind":"nut"})",
                              i, i, i % k_checks));
    }
  }

  void reading() {
    const int check = round_ % k_checks;
    const double kohm = 4 + 0.01 * (round_ % 300);
    put("reading-taken",
        text(R"({"aircraft":"pebblewing","check":"check-%d","value":"%.2f kohm","instrument":)"
             R"("bench-meter","range":"60 kohm","leads":"nulled"})",
             check, kohm));
    const auto id = stored_.back().id;
    put("verdict-given",
        text(R"({"aircraft":"pebblewing","check":"check-%d","verdict":"conforms","words":)"
             R"("conforms","next":"","value":"%.2f kohm +- 0.08 kohm","lowest":"3.0 kohm",)"
             R"("highest":"8.0 kohm","allowance_used":0.52,"probability_within":1,"rule":)"
             R"("guarded acceptance, w = U","calculation":"conformity","version":1})",
             check, kohm),
        id);
  }

  /// Ten days: five readings, two counter readings, three others.
  void one_more() {
    ++round_;
    next_day();
    reading();
    put("counter-read", text(R"({"aircraft":"pebblewing","at":[{"counter":"engine","hours":)"
                             R"("%.1f h"}]})",
                             1.2 * round_));
    reading();
    switch (round_ % 3) {
      case 0:
        put("joint-worked", text(R"({"aircraft":"pebblewing","joint":"joint-%d","state":)"
                                 R"("torqued","torque":"120 in-lb","by":"owner"
    })",
                                 round_ % k_joints));
        break;
      case 1:
        put("task-done",
            text(R"({"aircraft":"pebblewing","limit":"limit-%d","text":"done and looked over"})",
                 round_ % k_checks));
        break;
      default:
        put("defect-noted",
            text(R"({"aircraft":"pebblewing","id":"defect-%d","text":"oil film below place %d"})",
                 round_, round_ % k_checks));
        put("defect-closed",
            text(R"({"aircraft":"pebblewing","defect":"defect-%d","how":"wiped, did not return"})",
                 round_));
    }
  }

  void next_day() {
    using namespace std::chrono;
    day_ = wm::quantity::print_date(year_month_day{sys_days{year{1976} / 1 / 1} + days{round_}});
  }

  std::vector<StoredEvent> stored_;
  std::string day_{"1976-01-01"};
  int round_{};
};

using Events = std::vector<std::shared_ptr<const wm::bay::Event>>;

Events decoded(const std::vector<StoredEvent>& stored) {
  Events out;
  out.reserve(stored.size());
  for (const auto& one : stored) {
    auto event = wm::binder::decode(one);
    if (!event) stop(one.kind + ": " + event.error().path + " " + event.error().what);
    out.push_back(std::make_shared<const wm::bay::Event>(std::move(*event)));
  }
  return out;
}

void be_right(const wm::bay::State& state, const std::vector<StoredEvent>& stored) {
  const auto* aircraft = state.find_aircraft("pebblewing");
  if (aircraft == nullptr) stop("wrong answer: no aircraft");
  std::size_t readings = 0;
  for (const auto& [id, check] : aircraft->checks) {
    for (const auto& reading : check.readings)
      if (reading.verdict) ++readings;
  }
  std::size_t asked = 0;
  for (const auto& one : stored) asked += one.kind == "verdict-given" ? 1U : 0U;
  if (readings != asked || state.sequence != static_cast<std::int64_t>(stored.size()) ||
      !state.oddities.empty()) {
    stop("wrong answer: " + std::to_string(readings) + " judged readings of " +
         std::to_string(asked) + ", " + std::to_string(state.oddities.size()) + " oddities" +
         (state.oddities.empty() ? "" : ": " + state.oddities.front().words));
  }
}

}  // namespace

int main(int count, char** words) {
  const int asked = count > 1 ? std::atoi(words[1]) : 0;
  const int number = asked > 0 ? asked : 100'000;
  const Scribe scribe(number);
  const auto& stored = scribe.stored();
  const Events events = decoded(stored);
  be_right(wm::bay::fold(events), stored);
  std::array<double, k_runs> folds{};
  std::array<double, k_runs> opens{};
  std::array<double, k_runs> parses{};
  for (std::size_t run = 0; run < k_runs; ++run) {
    folds[run] = seconds_of([&] { (void)wm::bay::fold(events); });
    const auto ours = [&] {
      opens[run] = seconds_of([&] { (void)wm::bay::fold(decoded(stored)); });
    };
    if (run % 2 == 0) ours();
    std::size_t seen = 0;
    parses[run] = seconds_of([&] {
      for (const auto& one : stored) seen += nlohmann::json::parse(one.body).size();
    });
    if (run % 2 == 1) ours();
    if (seen == 0) stop("the peer read nothing");
  }
  std::printf(
      "{\"act\":\"fold %d events in memory\",\"value\":%.0f,\"unit\":\"events/s\",\"aim\":"
      "\"150,000 a second\",\"note\":\"median of %d runs\"}\n",
      number, number / median(folds), k_runs);
  std::printf(
      "{\"act\":\"decode and fold %d stored events\",\"value\":%.3f,\"unit\":\"us/event\",\"peer\":"
      "\"nlohmann::json reads the same bodies\",\"peer_value\":%.3f,\"note\":\"medians of %d "
      "interleaved runs; ours also checks fields and units\"}\n",
      number, 1e6 * median(opens) / number, 1e6 * median(parses) / number, k_runs);
  return 0;
}
