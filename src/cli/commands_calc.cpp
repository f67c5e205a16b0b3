#include <fmt/core.h>

#include <unistd.h>
#include <chrono>
#include <filesystem>
#include <fstream>

#include "calculation/catalogue.hpp"
#include "calculation/manual_face.hpp"
#include "calculation/openapi_face.hpp"
#include "calculation/text_face.hpp"
#include "cli/commands.hpp"

namespace wm::cli {
namespace {

int list_all(const Options& options) {
  std::string json;
  for (const auto& c : calculation::catalogue().calculations()) {
    if (options.json) {
      json += fmt::format(R"({}{{"name":"{}","purpose":"{}","version":{}}})",
                          json.empty() ? "" : ",", c.name, c.purpose, c.version);
    } else {
      fmt::print("{:<20} {}\n", c.name, c.purpose);
    }
  }
  if (options.json) fmt::print("{{\"calculations\":[{}]}}\n", json);
  return k_done;
}

/// Progress of long work, only on a terminal and only once it takes a while.
std::function<bool(double)> progress() {
  if (isatty(STDERR_FILENO) == 0) return {};
  const auto start = std::chrono::steady_clock::now();
  return [start](double share) {
    if (std::chrono::steady_clock::now() - start > std::chrono::milliseconds(500)) {
      fmt::print(stderr, "\r{:3.0f} %{}", 100 * share, share >= 1 ? "\n" : "");
    }
    return true;
  };
}

}  // namespace

int run_calc(const CalcWanted& wanted, const Options& options) {
  if (wanted.list) return list_all(options);
  const auto* found = calculation::catalogue().find(wanted.name);
  if (found == nullptr) {
    std::string names;
    for (const auto& c : calculation::catalogue().calculations())
      names += (names.empty() ? "" : ", ") + c.name;
    return show_problems({{Kind::not_found,
                           "NAME",
                           "there is no calculation `" + wanted.name + "`",
                           "one of: " + names,
                           "calc --list",
                           {},
                           {}}},
                         options);
  }
  if (wanted.describe) {
    fmt::print("{}\n", options.json ? calculation::describe_json(*found)
                                    : calculation::describe_text(*found));
    return k_done;
  }
  describe::Context context;
  context.today = clock_now().today;
  context.units = unit_set(options);
  context.tables = calculation::catalogue().tables();
  context.progress = progress();
  const std::vector<std::string_view> words(wanted.words.begin(), wanted.words.end());
  const auto answer =
      calculation::call_words(*found, words, context, {unit_set(options), {}, false}, options.json);
  if (!answer) return show_problems(answer.error(), options);
  fmt::print("{}{}", *answer, answer->ends_with('\n') ? "" : "\n");
  return k_done;
}

int run_manual(const std::string& folder) {
  std::error_code error;
  std::filesystem::create_directories(std::filesystem::path(folder) / "manual", error);
  const auto write = [&](const std::string& name, const std::string& text) {
    std::ofstream out(std::filesystem::path(folder) / name, std::ios::binary);
    if (name.ends_with(".md"))
      out << "<!-- Made by `witnessmark manual`; change the declaration, not this page. -->\n\n";
    out << text;
    return static_cast<bool>(out);
  };
  const auto& catalogue = calculation::catalogue();
  bool good = write("manual/index.md", calculation::manual_index(catalogue));
  for (const auto& c : catalogue.calculations())
    good = write("manual/" + c.name + ".md", calculation::manual_page(c, catalogue)) && good;
  std::vector<calculation::Entry> entries;
  for (const auto& a : desk::acts())
    entries.push_back({calculation::Entry::Is::act, a.name, a.purpose, a.input, a.output});
  for (const auto& v : desk::views())
    entries.push_back({calculation::Entry::Is::view, v.name, v.purpose, v.input, v.output});
  good = write("openapi.json", calculation::openapi_json(catalogue, entries, WM_VERSION) + "\n") &&
         good;
  if (!good) {
    fmt::print(stderr, "Cannot write into {}: does the folder exist, and may it be written?\n",
               folder);
    return k_machine;
  }
  return k_done;
}

}  // namespace wm::cli
