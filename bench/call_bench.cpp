// Act:  a field of a form is left and its verdict or figure is asked for: JSON in, JSON out.
// Peer: the bare function on an input that is already read, in the same program, turn about.
// Aim:  1 ms a call (our choice, no source): a person notices about 100 ms, and the rest of that
//       belongs to the network and the page.
#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string>

#include "calculation/catalogue.hpp"
#include "calculation/json_face.hpp"
#include "evidence/conformity.hpp"
#include "mechanics/torque.hpp"

namespace {

using namespace wm;
constexpr int k_runs = 5;
constexpr int k_calls = 2000;

[[noreturn]] void stop(const std::string& why) {
  std::fprintf(stderr, "call_bench: %s\n", why.c_str());
  std::exit(3);
}

double microseconds_each(auto&& act) {
  const auto begin = std::chrono::steady_clock::now();
  for (int i = 0; i < k_calls; ++i) act();
  return std::chrono::duration<double, std::micro>(std::chrono::steady_clock::now() - begin)
             .count() /
         k_calls;
}

double median(std::array<double, k_runs> values) {
  std::ranges::sort(values);
  return values[k_runs / 2];
}

/// @param expected  Must stand in the answer, else there is nothing to time.
template <class Input>
void time_one(const char* name, const std::string& expected, auto&& bare) {
  const auto* found = calculation::catalogue().find(name);
  if (found == nullptr) stop(std::string("no calculation ") + name);
  const auto json = calculation::example_json(*found);
  describe::Context context;
  context.today = calculation::k_example_day;
  context.tables = calculation::catalogue().tables();
  const auto answer = calculation::call_json(*found, json, context);
  if (!answer || answer->find(expected) == std::string::npos)
    stop(std::string("wrong answer of ") + name + ": " + (answer ? *answer : "refused"));
  const auto input = calculation::from_json<Input>(json);
  if (!input) stop("the example cannot be read");
  std::size_t kept = 0;
  const auto whole = [&] { kept += calculation::call_json(*found, json, context)->size(); };
  const auto alone = [&] { kept += bare(*input, context) ? 1U : 0U; };
  std::array<double, k_runs> ours{};
  std::array<double, k_runs> peers{};
  for (std::size_t run = 0; run < k_runs; ++run) {
    if (run % 2 == 0) ours[run] = microseconds_each(whole);
    peers[run] = microseconds_each(alone);
    if (run % 2 == 1) ours[run] = microseconds_each(whole);
  }
  if (kept == 0) stop("nothing was computed");
  std::printf(
      "{\"act\":\"%s, JSON to JSON\",\"value\":%.2f,\"unit\":\"us/call\",\"peer\":\"the bare "
      "function\",\"peer_value\":%.3f,\"aim\":\"below 1000 us\",\"note\":\"medians of %d "
      "interleaved runs of %d calls\"}\n",
      name, median(ours), median(peers), k_runs, k_calls);
}

}  // namespace

int main() {
  time_one<mechanics::TorqueSettingInput>(
      "torque-setting", "\"setting\"", [](const auto& input, const auto& context) {
        return mechanics::torque_setting(input, context).has_value();
      });
  time_one<evidence::ConformityInput>("conformity", "\"verdict\"",
                                      [](const auto& input, const auto& context) {
                                        return evidence::conformity(input, context).has_value();
                                      });
  return 0;
}
