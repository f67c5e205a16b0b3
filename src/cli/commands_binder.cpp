#include <fmt/core.h>

#include <algorithm>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "calculation/json_face.hpp"
#include "calculation/text_face.hpp"
#include "calculation/toml_face.hpp"
#include "cli/arguments.hpp"
#include "cli/commands.hpp"
#include "cli/demo.hpp"
#include "desk/views.hpp"
#include "service/server.hpp"

namespace wm::cli {
namespace {

/// The bytes of a file, or a problem that names it.
Result<std::string> file_bytes(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  if (!in || std::filesystem::is_directory(path)) {
    return Fail(
        Problem{Kind::not_found, path, "cannot be read", "a file that may be read", {}, {}, {}});
  }
  std::ostringstream out;
  out << in.rdbuf();
  return std::move(out).str();
}

/// Set by the signal that asks the server to stop.
volatile std::sig_atomic_t g_stop = 0;

std::string media_type(const std::string& name) {
  const auto dot = name.rfind('.');
  const auto end = dot == std::string::npos ? "" : name.substr(dot + 1);
  if (end == "jpg" || end == "jpeg") return "image/jpeg";
  if (end == "png") return "image/png";
  if (end == "pdf") return "application/pdf";
  if (end == "txt") return "text/plain";
  return "application/octet-stream";
}

int show_made(const std::string& binder, std::int64_t events) {
  fmt::print("{{\"binder\":{},\"events\":{}}}\n", calculation::json_string(binder), events);
  return k_done;
}

}  // namespace

int run_new(const Options& options) {
  if (const auto missing = no_binder(options.binder)) return show_problems({*missing}, options);
  auto made = binder::Binder::create(options.binder);
  if (!made) return show_problems({made.error()}, options);
  if (options.json) return show_made(options.binder, 0);
  fmt::print("Made {}: empty. Next: witnessmark import SHEET --into {}\n", options.binder,
             options.binder);
  return k_done;
}

int run_demo(const std::string& folder, const Options& options) {
  auto made = make_demo(folder, clock_now());
  if (!made) return show_problems(made.error(), options);
  if (options.json) return show_made(made->binder.string(), made->events);
  fmt::print("Made {} ({} events; everything in it is invented).\n", made->binder.string(),
             made->events);
  return k_done;
}

int run_import(const std::string& sheet, const Options& options) {
  const auto text = file_bytes(sheet);
  if (!text) return show_problems({text.error()}, options);
  // Read the sheet before a binder is made for it: nothing half imported.
  desk::AircraftSheet trial;
  auto problems = calculation::read_toml(*text, describe::type_of<desk::AircraftSheet>(), &trial);
  if (!problems.empty()) return show_problems(problems, options);
  const bool fresh = !std::filesystem::exists(options.binder);
  std::unique_ptr<binder::Binder> binder;
  if (fresh) {
    auto made = binder::Binder::create(options.binder);
    if (!made) return show_problems({made.error()}, options);
    binder = std::move(*made);
  } else {
    binder = open_binder(options, record::Access::read_write);
  }
  if (!binder) return k_bad_input;
  const auto reader = [&](const describe::Type& type, void* out) {
    return calculation::read_toml(*text, type, out);
  };
  const int status = call_act(*binder, "import-sheet", reader, options, *text);
  if (fresh && (status != k_done || options.try_only)) {
    binder.reset();
    std::error_code ignored;
    std::filesystem::remove(options.binder, ignored);
  }
  return status;
}

int run_export(const std::string& aircraft, Options options) {
  auto binder = open_binder(options, record::Access::read_only);
  if (!binder) return k_bad_input;
  options.aircraft = aircraft;
  if (!choose_aircraft(*binder, options)) return k_bad_input;
  auto quiet = options;
  quiet.json = false;
  int status = k_done;
  const auto value = call_view(*binder, "sheet", {}, quiet, status);
  if (!value) return status;
  binder->look([&](const bay::State& state) {
    fmt::print("{}", desk::sheet_preface(state, options.aircraft));
  });
  fmt::print("{}", calculation::write_toml(describe::type_of<desk::AircraftSheet>(), value.get()));
  return status;
}

int run_due(Options options) {
  auto binder = open_binder(options, record::Access::read_only);
  if (!binder || !choose_aircraft(*binder, options)) return k_bad_input;
  int status = k_done;
  const auto value = call_view(*binder, "due", {}, options, status);
  if (!value) return status;
  const auto& page = *static_cast<const desk::DuePage*>(value.get());
  if (!options.json) {
    fmt::print("{} {}, engine {}\n\n", page.header.name, page.header.registration,
               page.header.engine_hours);
    for (const auto& r : page.rows) {
      fmt::print("{:<12} {:<44} {}\n", r.standing, r.title, r.figure);
      fmt::print("{:<12} due {}{}\n", "", r.due.empty() ? "unknown" : r.due,
                 r.left.empty() ? "" : "; left " + r.left);
      if (!r.how_sure.empty()) fmt::print("{:<12} {}\n", "", r.how_sure);
      if (!r.why_unknown.empty()) fmt::print("{:<12} {}\n", "", r.why_unknown);
      fmt::print("{:<12} {}; {}\n", "", r.detail,
                 r.document.empty() ? r.authority : r.authority + ": " + r.document);
    }
    fmt::print("\n{} past limit, {} unknown, {} in all\n", page.past_limit, page.unknown,
               page.rows.size());
  }
  return page.past_limit > 0 ? k_finding : k_done;
}

int run_bay(Options options) {
  auto binder = open_binder(options, record::Access::read_only);
  if (!binder || !choose_aircraft(*binder, options)) return k_bad_input;
  int status = k_done;
  const auto value = call_view(*binder, "bay", {}, options, status);
  if (!value) return status;
  const auto& page = *static_cast<const desk::BayPage*>(value.get());
  if (!options.json) {
    fmt::print("{} {}, engine {}\n{} past limit, {} doubtful, {} unknown, {} within\n\n",
               page.header.name, page.header.registration, page.header.engine_hours,
               page.past_limit, page.doubtful, page.unknown, page.within);
    for (const auto& m : page.marks) {
      const auto used = m.used ? fmt::format("{:.0f} % used", 100 * *m.used) : std::string("-");
      fmt::print("{:<17} {:<44} {:>10}  {}{}\n", m.standing, m.title, used, m.figure,
                 m.trend.empty() ? "" : "; " + m.trend);
    }
    fmt::print("\nOpen joints: {}. Bungs and tools fitted: {}. Cowl {}.\n", page.open_joints.size(),
               page.bungs.size(), page.header.cowl_closed ? "closed" : "open");
    for (const auto& j : page.open_joints)
      fmt::print("  {} {}: still to be {}\n", j.number, j.name, j.needs);
    for (const auto& d : page.defects) fmt::print("defect: {} ({})\n", d.text, d.decision);
    for (const auto& o : page.oddities) fmt::print("does not fit: {}\n", o);
  }
  return page.past_limit > 0 ? k_finding : k_done;
}

namespace {

/// Whether the words leave open which aircraft is meant, where that must be said.
bool aircraft_is_open(const calculation::Entry& entry, const std::vector<std::string>& words) {
  const bool given = std::any_of(words.begin(), words.end(), [](const std::string& word) {
    return word.starts_with("aircraft=") || word.starts_with("{");
  });
  return !given && describe::find_field(*entry.input, "aircraft") != nullptr;
}

}  // namespace

int run_act(const std::string& name, std::vector<std::string> words, Options options) {
  const auto* entry = find_entry(calculation::Entry::Is::act, name, options);
  if (entry == nullptr) return k_bad_input;
  auto binder = open_binder(options, record::Access::read_write);
  if (!binder) return k_bad_input;
  if (aircraft_is_open(*entry, words) && !choose_aircraft(*binder, options)) return k_bad_input;
  return call_act(*binder, name, from_words(std::move(words), options.aircraft), options);
}

int run_view(const std::string& name, std::vector<std::string> words, Options options) {
  const auto* entry = find_entry(calculation::Entry::Is::view, name, options);
  if (entry == nullptr) return k_bad_input;
  auto binder = open_binder(options, record::Access::read_only);
  if (!binder) return k_bad_input;
  if (name != "history" && aircraft_is_open(*entry, words) && !choose_aircraft(*binder, options))
    return k_bad_input;
  return show_view(*binder, name, std::move(words), options);
}

int run_attach(const std::string& file, std::vector<std::string> words, Options options) {
  auto binder = open_binder(options, record::Access::read_write);
  if (!binder || !choose_aircraft(*binder, options)) return k_bad_input;
  const auto bytes = file_bytes(file);
  if (!bytes) return show_problems({bytes.error()}, options);
  std::size_t at = 0;
  const auto stored = binder->put_attachment([&](std::span<std::byte> out) {
    const auto n = std::min(out.size(), bytes->size() - at);
    std::copy_n(reinterpret_cast<const std::byte*>(bytes->data()) + at, n, out.begin());
    at += n;
    return n;
  });
  if (!stored) return show_problems({stored.error()}, options);
  const auto name = std::filesystem::path(file).filename().string();
  words.push_back("hash=" + stored->hash);
  words.push_back("name=" + name);
  words.push_back("media_type=" + media_type(name));
  words.push_back("bytes=" + std::to_string(stored->size));
  return call_act(*binder, "attach", from_words(std::move(words), options.aircraft), options);
}

int run_correct(const std::string& event, std::vector<std::string> words, const std::string& reason,
                const Options& options) {
  auto binder = open_binder(options, record::Access::read_write);
  if (!binder) return k_bad_input;
  std::string id = event;
  binder->look([&](const bay::State& state) {
    for (const auto& e : state.events) {
      if (std::to_string(e->meta.sequence) == event) id = e->meta.id;
    }
  });
  const auto stored = binder->event(id);
  if (!stored) return show_problems({stored.error()}, options);
  const auto* kind = bay::find_kind(stored->kind);
  if (kind == nullptr)
    return show_problems(
        {{Kind::not_applicable, "EVENT", "this kind of event is not known here", {}, {}, {}, {}}},
        options);
  // The corrected body is the stored one with the given fields put in.
  auto fresh = kind->make();
  const std::vector<std::string_view> views(words.begin(), words.end());
  const auto changed =
      calculation::with_fields(stored->body, *kind->type, bay::body_of(fresh), views);
  if (!changed) return show_problems(changed.error(), options);
  desk::Correction correction{id, *changed, reason};
  const auto reader = [&](const describe::Type&, void* out) {
    *static_cast<desk::Correction*>(out) = correction;
    return Problems{};
  };
  return call_act(*binder, "correct", reader, options);
}

int run_verify(const std::vector<std::string>& heads, const Options& options) {
  if (const auto missing = no_binder(options.binder)) return show_problems({*missing}, options);
  std::vector<record::Head> parsed;
  for (const auto& text : heads) {
    std::vector<std::string> lines{text};
    if (text.starts_with("@")) {
      const auto bytes = file_bytes(text.substr(1));
      if (!bytes) return show_problems({bytes.error()}, options);
      lines.clear();
      std::istringstream in(*bytes);
      for (std::string line; std::getline(in, line);) {
        if (!line.empty()) lines.push_back(line);
      }
    }
    for (const auto& line : lines) {
      const auto head = record::parse_head(line);
      if (!head) return show_problems({head.error()}, options);
      parsed.push_back(*head);
    }
  }
  if (const auto folder = is_a_folder(options.binder)) return show_problems({*folder}, options);
  auto journal = record::Journal::open(options.binder, record::Access::read_only);
  if (!journal) return show_problems({journal.error()}, options);
  auto result = record::verify_against(*journal, parsed);
  if (result.clean()) {
    // Only a file that agrees with itself can be opened and asked for its attachments.
    auto opened = binder::Binder::open(options.binder, record::Access::read_only);
    if (opened) {
      result = (*opened)->verify(parsed);
    } else {
      result.findings.push_back({0, {}, opened.error().what});
    }
  }
  if (options.json) {
    std::string findings;
    for (const auto& f : result.findings) {
      findings += fmt::format(R"({}{{"sequence":{},"column":{},"what":{}}})",
                              findings.empty() ? "" : ",", f.sequence,
                              calculation::json_string(f.column), calculation::json_string(f.what));
    }
    fmt::print(R"({{"events":{},"attachments":{},"heads":{},"head":"{}","findings":[{}]}})"
               "\n",
               result.events, result.attachments, result.heads, result.head, findings);
  } else {
    fmt::print("{} events, {} attachments, {} printed heads compared\nhead {}:{}\n", result.events,
               result.attachments, result.heads, result.events, result.head);
    for (const auto& f : result.findings)
      fmt::print("event {}{}: {}\n", f.sequence, f.column.empty() ? "" : ", " + f.column, f.what);
    fmt::print("{}\n", result.clean()
                           ? "Clean: the file agrees with itself. It says no more than that."
                           : "The file does not agree.");
  }
  return result.clean() ? k_done : k_finding;
}

int run_copy(const std::string& to, const Options& options) {
  if (const auto folder = is_a_folder(options.binder)) return show_problems({*folder}, options);
  auto journal = record::Journal::open(options.binder, record::Access::read_only);
  if (!journal) return show_problems({journal.error()}, options);
  const auto copied = journal->copy_to(to);
  if (!copied) return show_problems({copied.error()}, options);
  if (options.json) {
    fmt::print("{{\"copy\":{}}}\n", calculation::json_string(to));
    return k_done;
  }
  fmt::print("Copied to {}.\n", to);
  return k_done;
}

int run_serve(const Options& options, int port, const std::string& host) {
  auto binder = open_binder(options, record::Access::read_write);
  if (!binder) return k_bad_input;
  service::Settings settings;
  settings.host = host;
  settings.port = port;
  settings.clock = &clock_now;
  settings.units = unit_set(options);
  settings.stop_wanted = [] { return g_stop != 0; };
  (void)std::signal(SIGINT, [](int) { g_stop = 1; });
  (void)std::signal(SIGTERM, [](int) { g_stop = 1; });
  const auto served = service::serve(*binder, settings, [](const std::string& address) {
    fmt::print("Witnessmark is at {}\nStop it with Ctrl-C.\n", address);
    (void)std::fflush(stdout);
  });
  if (!served) return show_problems({served.error()}, options);
  return k_done;
}

}  // namespace wm::cli
