#pragma once
/// R and its packages survival and boot as a second opinion on lives of parts: writes the lives
/// to a file, runs survival.R on them, reads what it prints.

#include <fmt/core.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <functional>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "reliability/weibull_fit.hpp"

namespace wm::reliability::testing_support {

using Samples = std::map<std::string, std::vector<Life>>;

struct TheirFit {
  bool converged{};
  double shape{}, scale{}, log_likelihood{};
};
struct TheirOpinion {
  std::map<std::string, TheirFit> weibull, exponential;
  std::map<std::string, std::vector<SurvivalStep>> curves;
  Samples records;  ///< published ones, of package boot: fitted as well
};

inline bool r_there() {
  return std::system(
             "command -v Rscript >/dev/null 2>&1 && Rscript --vanilla -e "
             "'library(survival); library(boot)' >/dev/null 2>&1") == 0;
}

inline void write_lives(const std::filesystem::path& file, const Samples& samples) {
  const char* const endings[] = {"failed", "running", "failed_before", "failed_between"};
  std::ofstream out(file);
  out << "sample,ending,age,until,entered\n";
  for (const auto& [name, lives] : samples) {
    for (const Life& l : lives) {
      out << fmt::format("{},{},{},{},{}\n", name, endings[static_cast<int>(l.ending)], l.age,
                         l.until, l.entered);
    }
  }
}

inline void read_line(const std::string& line, TheirOpinion& out) {
  std::istringstream words(line);
  std::string what, name;
  words >> what >> name;
  if (what == "record") {
    for (double age = 0; words >> age;) {
      out.records[name].push_back({Ending::failed, age, 0, 0});
    }
  } else if (what == "fit") {
    // strtod, since a stream does not read "-Inf".
    std::string law, converged, shape, scale, value;
    words >> law >> converged >> shape >> scale >> value;
    const auto number = [](const std::string& s) { return std::strtod(s.c_str(), nullptr); };
    (law == "weibull" ? out.weibull : out.exponential)[name] = {converged == "1", number(shape),
                                                                number(scale), number(value)};
  } else if (what == "step") {
    SurvivalStep s;
    words >> s.age >> s.at_risk >> s.failed >> s.survival >> s.deviation >> s.hazard_sum;
    out.curves[name].push_back(s);
  }
}

/// Empty when the run failed.
inline TheirOpinion ask_r(const Samples& samples) {
  const auto folder = std::filesystem::temp_directory_path() /
                      fmt::format("wm-lives-{}", std::hash<std::string>{}(WM_SOURCE_DIR));
  std::filesystem::create_directories(folder);
  write_lives(folder / "lives.csv", samples);
  const std::string command =
      fmt::format("Rscript --vanilla '{}/tests/reference/reliability/survival.R' '{}' </dev/null",
                  WM_SOURCE_DIR, (folder / "lives.csv").string());
  TheirOpinion out;
  if (std::FILE* pipe = popen(command.c_str(), "r")) {
    std::string line;
    for (int c = 0; (c = std::fgetc(pipe)) != EOF;) {
      if (c != '\n') {
        line += static_cast<char>(c);
        continue;
      }
      read_line(line, out);
      line.clear();
    }
    if (pclose(pipe) != 0) out = {};
  }
  std::filesystem::remove_all(folder);
  return out;
}

}  // namespace wm::reliability::testing_support
