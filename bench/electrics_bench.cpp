// Act:  an owner changes one load and the whole load analysis, 60 cables, is sized anew; then the
//       starting circuits of the netlists are solved.
// Peer: ngspice as a process on the same netlists (its start included: that is what another
//       program would cost the owner), turn about with ours.
// Aim:  60 cables below 1 ms, an indication; circuits 1/100 of the peer.
#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "electrics/cable_size.hpp"
#include "electrics/circuit.hpp"

namespace {

using namespace wm;
using namespace wm::electrics;
constexpr int k_runs = 5;
constexpr int k_cables = 60;

[[noreturn]] void stop(const std::string& why) {
  std::fprintf(stderr, "electrics_bench: %s\n", why.c_str());
  std::exit(3);
}

double seconds(auto&& act) {
  const auto begin = std::chrono::steady_clock::now();
  act();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

double median(std::array<double, k_runs> values) {
  std::ranges::sort(values);
  return values[k_runs / 2];
}

std::vector<CableSizeInput> load_analysis() {
  std::vector<CableSizeInput> all;
  for (int i = 0; i < k_cables; ++i) {
    CableSizeInput in;
    in.length = {quantity::feet(3 + i % 17), 0.01, {}};
    in.current = {quantity::amperes(0.5 + i % 13), 0.1, {}};
    in.nominal = NominalVoltage::v28;
    Surroundings where;
    where.ambient = {quantity::celsius(50), 1, {}};
    where.rating = {quantity::celsius(150), 1, {}};
    where.wires = 1 + i % 12;
    where.loading = quantity::per_cent(40);
    in.surroundings = where;
    all.push_back(in);
  }
  return all;
}

std::vector<CircuitElement> read_netlist(const std::filesystem::path& file) {
  std::ifstream in(file);
  std::string line;
  std::getline(in, line);  // title
  std::vector<CircuitElement> out;
  while (std::getline(in, line) && line != ".end") {
    std::istringstream words(line);
    CircuitElement e;
    words >> e.name >> e.from >> e.to >> e.value;
    e.kind = e.name[0] == 'R'
                 ? Branch::resistor
                 : (e.name[0] == 'V' ? Branch::voltage_source : Branch::current_source);
    out.push_back(e);
  }
  return out;
}

std::string quoted(const std::filesystem::path& file) { return "'" + file.string() + "'"; }

/// Copies that ask for the operating point, as the peer wants it asked.
std::vector<std::filesystem::path> for_peer(const std::vector<std::filesystem::path>& files,
                                            const std::filesystem::path& folder) {
  std::filesystem::create_directories(folder);
  std::vector<std::filesystem::path> made;
  for (const auto& file : files) {
    std::ifstream in(file);
    std::ofstream out(folder / file.filename());
    std::string line;
    while (std::getline(in, line) && line != ".end") out << line << '\n';
    out << ".control\nset numdgt=14\nop\nprint all\n.endc\n.end\n";
    made.push_back(folder / file.filename());
  }
  return made;
}

}  // namespace

int main() {
  const auto cables = load_analysis();
  for (const auto& c : cables) {
    if (!cable_size(c, {})) stop("a cable of the load analysis has no size");
  }
  // AC 43.13-1B page 11-26, example 1: No. 8.
  CableSizeInput example;
  example.length = {quantity::feet(50), 1, {}};
  example.current = {quantity::amperes(20), 1, {}};
  example.nominal = NominalVoltage::v28;
  if (cable_size(example, {})->size != "8") stop("wrong size");

  std::vector<std::filesystem::path> files;
  const std::filesystem::path netlists = WM_SOURCE_DIR "/tests/reference/electrics/netlists";
  for (const auto& file : std::filesystem::directory_iterator(netlists)) {
    if (file.path().extension() == ".cir") files.push_back(file.path());
  }
  std::vector<std::vector<CircuitElement>> circuits;
  for (const auto& file : files) circuits.push_back(read_netlist(file));
  for (const auto& c : circuits) {
    if (!solve(c, "0")) stop("a circuit is not solved");
  }
  const bool peer_there = std::system("command -v ngspice >/dev/null 2>&1") == 0;
  const auto folder = std::filesystem::temp_directory_path() / "wm-electrics-bench";
  const auto asked = for_peer(files, folder);

  std::array<double, k_runs> sizing{}, ours{}, theirs{};
  constexpr int k_times = 200;
  for (std::size_t run = 0; run < k_runs; ++run) {
    sizing[run] = seconds([&] {
      for (const auto& c : cables) (void)cable_size(c, {}).has_value();
    });
    ours[run] = seconds([&] {
                  for (int i = 0; i < k_times; ++i) {
                    for (const auto& c : circuits) (void)solve(c, "0").has_value();
                  }
                }) /
                k_times;
    if (!peer_there) continue;
    theirs[run] = seconds([&] {
      for (const auto& file : asked) {
        const std::string command = "ngspice -b " + quoted(file) + " >/dev/null 2>&1 </dev/null";
        if (std::system(command.c_str()) == -1) stop("the peer cannot be started");
      }
    });
  }
  std::filesystem::remove_all(folder);
  std::printf(
      "{\"act\":\"load analysis of %d cables sized anew\",\"value\":%.3f,\"unit\":\"ms\","
      "\"aim\":\"below 1 ms, an indication\",\"note\":\"median of %d runs\"}\n",
      k_cables, 1e3 * median(sizing), k_runs);
  if (peer_there) {
    std::printf(
        "{\"act\":\"%zu circuits solved\",\"value\":%.1f,\"unit\":\"us\",\"peer\":\"ngspice as a "
        "process, same netlists\",\"peer_value\":%.1f,\"aim\":\"1/100 of the peer\",\"note\":"
        "\"medians of %d interleaved runs; the peer's start is in its time\"}\n",
        circuits.size(), 1e6 * median(ours), 1e6 * median(theirs), k_runs);
  } else {
    std::printf(
        "{\"act\":\"%zu circuits solved (no ngspice here)\",\"value\":%.1f,\"unit\":\"us\","
        "\"aim\":\"1/100 of the peer\",\"note\":\"median of %d runs\"}\n",
        circuits.size(), 1e6 * median(ours), k_runs);
  }
  return 0;
}
