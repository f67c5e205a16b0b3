// Act:  an owner moves a fitting and the hose follows; then asks for its window of lengths, and how
//       often it keeps its radius when the engine moves.
// Peer: scipy's solve_bvp on the same hose, to the same 0.1 % of its tightest radius, turn about.
// Aim:  500 times the peer for a hose from nothing; under 0.1 ms, and 10,000 drawn positions under
//       0.5 s, as an indication.
#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <numbers>
#include <string>

#include "hose/chance.hpp"
#include "hose/rod_measure.hpp"
#include "hose/window.hpp"

namespace {

using namespace wm::hose;
constexpr int k_runs = 5;
constexpr double k_radius = 0.230552;  // boundary-value solver outside the project

[[noreturn]] void stop(const std::string& why) {
  std::fprintf(stderr, "hose_bench: %s\n", why.c_str());
  std::exit(3);
}

double seconds_each(int times, auto&& act) {
  const auto begin = std::chrono::steady_clock::now();
  for (int i = 0; i < times; ++i) act(i);
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count() / times;
}

double median(std::array<double, k_runs> values) {
  std::ranges::sort(values);
  return values[k_runs / 2];
}

Rod case_s1() {
  Rod rod;
  rod.end = {0.5, 0.3, 0.4};
  rod.end_direction = {0, 0, 1};
  rod.length = 1;
  return rod;
}

/// Seconds a solve of the peer; nothing where Python or scipy is missing.
double peer_seconds() {
  std::FILE* pipe = popen("/usr/bin/python3 \"" WM_SOURCE_DIR "/bench/hose_peer.py\" 5", "r");
  if (pipe == nullptr) return 0;
  double milliseconds = 0, radius = 0;
  const int got = std::fscanf(pipe, "%lf %lf", &milliseconds, &radius);
  if (pclose(pipe) != 0 || got != 2) return 0;
  if (std::abs(radius / k_radius - 1) > 1e-3) stop("the peer's radius is off");
  return milliseconds / 1e3;
}

void tell(const char* act, double value, const char* unit, const char* aim) {
  std::printf(
      "{\"act\":\"%s\",\"value\":%.4g,\"unit\":\"%s\",\"aim\":\"%s\",\"note\":\"median of %d "
      "runs\"}\n",
      act, value, unit, aim, k_runs);
}

}  // namespace

int main() {
  const Rod rod = case_s1();
  RodSolver solver(64);
  Shape shape, base;
  solver.cold(rod, base);
  if (std::abs(1 / tightest(base).curvature / k_radius - 1) > 1e-3) stop("wrong radius");

  std::array<double, k_runs> cold{}, peer{}, warm{}, window{}, drawn{};
  WindowAsk ask;
  ask.positions = {rod};
  ask.least_radius = 0.2;
  ChanceAsk chances;
  chances.rod = rod;
  chances.motion.shift = {0.03, 0.03, 0.03};
  chances.direction_tolerance = 2 * std::numbers::pi / 180;
  chances.length_tolerance = 0.01;
  chances.least_radius = 0.2;
  for (std::size_t run = 0; run < k_runs; ++run) {
    peer[run] = peer_seconds();
    cold[run] = seconds_each(2000, [&](int) { solver.cold(rod, shape); });
    Rod moving = rod;
    warm[run] = seconds_each(2000, [&](int i) {
      moving.end.x() = 0.5 + 0.002 * (i % 7 - 3);
      solver.warm(moving, base, shape);
    });
    window[run] = seconds_each(20, [&](int) { (void)length_window(ask); });
    drawn[run] = seconds_each(1, [&](int) { (void)chance(chances, {}); });
  }
  const double ours = 1e6 * median(cold), theirs = 1e6 * median(peer);
  if (theirs > 0) {
    std::printf(
        "{\"act\":\"hose from nothing, 64 pieces\",\"value\":%.1f,\"unit\":\"us\",\"peer\":"
        "\"scipy solve_bvp, same hose, 0.1 %% of the radius\",\"peer_value\":%.1f,\"aim\":"
        "\"below 100 us; 1/500 of the peer\",\"note\":\"medians of %d interleaved runs; peer "
        "is %.0f times as long\"}\n",
        ours, theirs, k_runs, theirs / ours);
  } else {
    tell("hose from nothing, 64 pieces (no scipy here)", ours, "us", "below 100 us");
  }
  tell("hose as an end moves, 64 pieces", 1e6 * median(warm), "us", "below 100 us");
  tell("window of lengths, 64 pieces", 1e3 * median(window), "ms", "below 50 ms with its picture");
  tell("10,000 drawn positions", median(drawn), "s", "below 0.5 s");
  return 0;
}
