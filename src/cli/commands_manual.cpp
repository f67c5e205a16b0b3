#include <fmt/core.h>

#include <filesystem>
#include <fstream>

#include "calculation/catalogue.hpp"
#include "calculation/manual_face.hpp"
#include "calculation/text_face.hpp"
#include "cli/commands.hpp"
#include "service/api.hpp"

// What describes itself: lists, descriptions, and the pages of the manual.
namespace wm::cli {
namespace {

using calculation::Entry;

/// "measure BINDER" for an act that has a command of its own.
std::string short_for(const Entry& entry) {
  if (entry.kind != Entry::Is::act) return {};
  for (const auto& s : short_commands()) {
    if (s.act != entry.name) continue;
    return fmt::format("{}{}{} BINDER", s.group, s.group.empty() ? "" : " ", s.name);
  }
  return {};
}

}  // namespace

int run_list(Entry::Is kind, const Options& options) {
  if (options.json) {
    fmt::print("{}\n", calculation::list_json(kind));
    return k_done;
  }
  for (const auto& e : calculation::entries()) {
    if (e.kind == kind) fmt::print("{:<22} {}\n", e.name, e.purpose);
  }
  return k_done;
}

const Entry* find_entry(Entry::Is kind, const std::string& name, const Options& options) {
  const auto* found = calculation::find_entry(kind, name);
  if (found != nullptr) return found;
  std::vector<std::string_view> names;
  for (const auto& e : calculation::entries()) {
    if (e.kind == kind) names.push_back(e.name);
  }
  auto problem = calculation::no_such_name(word(kind), "NAME", name, names);
  if (name.find('=') != std::string::npos) {
    problem.what = fmt::format("`{}` stands where the name of the {} is needed", name, word(kind));
    problem.do_next = fmt::format("write: witnessmark {} BINDER NAME key=value ...", word(kind));
  }
  show_problems({problem}, options);
  return nullptr;
}

int run_describe(Entry::Is kind, const std::string& name, const Options& options) {
  const auto* found = find_entry(kind, name, options);
  if (found == nullptr) return k_bad_input;
  fmt::print("{}\n", options.json ? calculation::describe_json(*found)
                                  : calculation::describe_text(*found));
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
  bool good =
      write("manual/index.md", calculation::manual_index(catalogue, calculation::entries()));
  for (const auto& c : catalogue.calculations())
    good = write("manual/" + c.name + ".md", calculation::manual_page(c, catalogue)) && good;
  for (const auto& e : calculation::entries()) {
    good =
        write("manual/" + calculation::manual_file(e), calculation::manual_page(e, short_for(e))) &&
        good;
  }
  good = write("openapi.json", service::openapi_text() + "\n") && good;
  if (!good) {
    fmt::print(stderr, "Cannot write into {}: does the folder exist, and may it be written?\n",
               folder);
    return k_machine;
  }
  return k_done;
}

}  // namespace wm::cli
