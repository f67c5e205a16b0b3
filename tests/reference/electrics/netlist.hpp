#pragma once
/// Netlists of tests/reference/electrics/netlists in the common format of circuit simulators
/// (R, V and I lines), and the simulator ngspice as a second opinion.

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

#include "electrics/circuit.hpp"

namespace wm::electrics::testing_support {

inline std::vector<CircuitElement> read_netlist(const std::filesystem::path& file) {
  std::ifstream in(file);
  std::string line;
  std::getline(in, line);  // the first line is a title
  std::vector<CircuitElement> out;
  while (std::getline(in, line)) {
    if (line.empty() || line[0] == '.' || line[0] == '*') continue;
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

inline std::vector<std::filesystem::path> netlists() {
  std::vector<std::filesystem::path> all;
  for (const auto& file :
       std::filesystem::directory_iterator(std::filesystem::path(WM_SOURCE_DIR) / "tests" /
                                           "reference" / "electrics" / "netlists")) {
    if (file.path().extension() == ".cir") all.push_back(file.path());
  }
  std::sort(all.begin(), all.end());
  return all;
}

inline bool simulator_there() { return std::system("command -v ngspice >/dev/null 2>&1") == 0; }

/// "n1" -> volts, "v1#branch" -> amperes into the plus pole; nothing when the run failed.
inline std::map<std::string, double> simulate(const std::filesystem::path& netlist) {
  const auto folder = std::filesystem::temp_directory_path() /
                      ("wm-netlist-" + std::to_string(std::hash<std::string>{}(netlist.string())));
  std::filesystem::create_directories(folder);
  {
    std::ifstream in(netlist);
    std::ofstream out(folder / "run.cir");
    std::string line;
    while (std::getline(in, line)) {
      if (line != ".end") out << line << '\n';
    }
    out << ".control\nset numdgt=14\nop\nprint all\n.endc\n.end\n";
  }
  const std::string command =
      "ngspice -b '" + (folder / "run.cir").string() + "' 2>/dev/null </dev/null";
  std::map<std::string, double> values;
  if (std::FILE* pipe = popen(command.c_str(), "r")) {
    char line[512];
    while (std::fgets(line, sizeof line, pipe) != nullptr) {
      char name[256];
      double value = 0;
      if (std::sscanf(line, "%255s = %lf", name, &value) == 2) values[name] = value;
    }
    pclose(pipe);
  }
  std::filesystem::remove_all(folder);
  return values;
}

}  // namespace wm::electrics::testing_support
