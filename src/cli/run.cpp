#include "cli/run.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <utility>

#include "cli/arguments.hpp"
#include "cli/commands.hpp"

// Only wiring: what a command takes. What it does stands in the commands_*.cpp files.
namespace wm::cli {
namespace {

struct Wanted {
  Options options;
  std::string text, more, reason, file, paper{"a4"}, host{"127.0.0.1"};
  std::vector<std::string> words;
  std::vector<std::string> heads;
  CalcWanted calc;
  int port{8480};
  bool flag{};
};

void json(CLI::App* app, Wanted& w) { app->add_flag("--json", w.options.json, "Answer as JSON"); }
void common(CLI::App* app, Wanted& w) {
  json(app, w);
  app->add_option("--units", w.options.units, "Show US customary (us) or metric (si) units")
      ->check(CLI::IsMember({"us", "si"}));
}
/// Not `required()`: --describe and --list need none, and we say ourselves what is missing.
void binder_alone(CLI::App* app, Wanted& w) {
  app->add_option("BINDER", w.options.binder, "The binder: one data file");
}
void binder(CLI::App* app, Wanted& w) {
  binder_alone(app, w);
  app->add_option("--aircraft", w.options.aircraft, "Which aircraft, where there are several");
  common(app, w);
}
void describes(CLI::App* app, Wanted& w) {
  app->add_flag("--describe", w.options.describe, "Show what it takes and gives; needs no binder");
}
void acting(CLI::App* app, Wanted& w) {
  binder(app, w);
  app->add_option("--on", w.options.on,
                  "When it happened: 2026-11-25, or 2026-11-25T09:12:00Z; today unless said");
  app->add_option("--by", w.options.by, "Who says so");
  app->add_option("--id", w.options.id, "Id of this act: the same id again is harmless");
  app->add_flag("--try", w.options.try_only, "Work it out, record nothing");
}
void words(CLI::App* app, Wanted& w) {
  app->add_option("WORDS", w.words, "key=value words, or one JSON object")->allow_extra_args();
}

using Is = calculation::Entry::Is;

constexpr ShortCommand k_short_commands[] = {
    {"", "measure", "measure", "Enter a reading, get the verdict: check=... value=\"7.9 kohm\""},
    {"", "defect", "note-defect", "Something seen, heard, smelt: text=\"...\""},
    {"", "quick", "quick-job", "A quick job: what=oil-change text=\"...\""},
    {"", "read", "read-counter", "Read counters: at/0/counter=engine at/0/hours=\"1140.6 h\""},
    {"", "joint", "work-joint", "Work a joint: joint=... state=torqued torque=\"245 in-lb\""},
    {"plan", "change", "plan-change", "Plan a change"},
    {"plan", "stage", "plan-stage", "Put changes into a stage; objections are told"},
    {"plan", "answer", "answer-objection", "Answer an objection"},
    {"plan", "done", "change-done", "A change is made"},
    {"stage", "open", "open-stage", "Sign it open: check flight due"},
    {"stage", "close", "close-stage", "Sign it closed after its checks"},
    {"stage", "hold", "hold-stage", "Hold it, with the reason"},
    {"stage", "resume", "resume-stage", "Go on with a held stage"},
    {"stage", "step", "stage-step", "Leak run, ground run, check flight, second look"}};

void act_command(CLI::App* parent, Wanted& w, const ShortCommand& command, int& status) {
  auto* app = parent->add_subcommand(std::string(command.name), std::string(command.what));
  acting(app, w);
  words(app, w);
  describes(app, w);
  const std::string act(command.act);
  app->footer("What it takes, field by field: --describe. It is the act `" + act + "`.");
  app->callback([&w, act, &status] {
    status = w.options.describe ? run_describe(Is::act, act, w.options)
                                : run_act(act, w.words, w.options);
  });
}

/// `act` and `view`: anything by name, a list, or a description; the last two need no binder.
int run_any(Is kind, Wanted& w) {
  if (w.options.list) return run_list(kind, w.options);
  if (w.options.describe) {
    return run_describe(kind, w.text.empty() ? w.options.binder : w.text, w.options);
  }
  // A lone word is rather the name than the binder.
  if (w.text.empty() && calculation::find_entry(kind, w.options.binder) != nullptr) {
    w.text = std::exchange(w.options.binder, {});
  }
  return kind == Is::act ? run_act(w.text, w.words, w.options)
                         : run_view(w.text, w.words, w.options);
}

void any_command(CLI::App* app, Wanted& w, Is kind, int& status) {
  const std::string name(word(kind));
  app->add_option("NAME", w.text, "Its name, as in --list");
  words(app, w);
  app->add_flag("--list", w.options.list, "List all " + name + "s; needs no binder");
  describes(app, w);
  app->footer("witnessmark " + name + " --list; witnessmark " + name + " NAME --describe");
  app->callback([&w, kind, &status] { status = run_any(kind, w); });
}

void add_calc(CLI::App& app, Wanted& w, int& status) {
  auto* calc = app.add_subcommand("calc", "Any calculation alone: calc NAME key=value ...");
  calc->add_option("NAME", w.calc.name, "Its name");
  calc->add_option("WORDS", w.calc.words, "key=value words, or one JSON object")
      ->allow_extra_args();
  calc->add_flag("--list", w.calc.list, "List all calculations");
  calc->add_flag("--describe", w.calc.describe, "Show what it takes and gives");
  calc->add_option(
      "--to", w.calc.file,
      "hose-sheet, hose-cut: on paper, as FILE.pdf, .svg or .png; centreline as FILE.csv "
      "or .dxf");
  calc->add_option("--paper", w.calc.paper, "Paper of the drawing: a4 (unless said) or letter");
  common(calc, w);
  calc->callback([&] { status = run_calc(w.calc, w.options); });
  calc->footer(
      "witnessmark calc --list; witnessmark calc NAME --describe\n"
      "Another unit for an answer: units/FIELD=kohm");
  auto* manual =
      app.add_subcommand("manual", "Write the manual pages and the description of the API");
  manual->add_option("--into", w.file, "Folder; made when it is not there")->required();
  manual->callback([&] { status = run_manual(w.file); });
}

void add_binder(CLI::App& app, Wanted& w, int& status) {
  auto* demo = app.add_subcommand("demo", "Make the demo binder (invented aircraft)");
  demo->add_option("DIR", w.file, "Folder")->required();
  json(demo, w);
  demo->callback([&] { status = run_demo(w.file, w.options); });
  auto* fresh = app.add_subcommand("new", "Make an empty binder");
  binder_alone(fresh, w);
  json(fresh, w);
  fresh->callback([&] { status = run_new(w.options); });
  auto* import = app.add_subcommand("import", "Take an aircraft sheet in: all of it or nothing");
  import->add_option("SHEET", w.file, "The sheet (TOML)")->required();
  import->add_option("--into", w.options.binder, "Binder; made when it is not there")->required();
  import->add_option("--on", w.options.on, "When it happened");
  import->add_option("--by", w.options.by, "Who says so");
  import->add_option("--id", w.options.id, "Id of this act");
  import->add_flag("--try", w.options.try_only, "Show what would change, record nothing");
  common(import, w);
  import->callback([&] { status = run_import(w.file, w.options); });
  auto* exported = app.add_subcommand("export", "Write the aircraft sheet");
  binder(exported, w);
  exported->callback([&] { status = run_export(w.options.aircraft, w.options); });
  auto* verify = app.add_subcommand(
      "verify", "Does the file still agree with itself, and with printed heads?");
  binder_alone(verify, w);
  verify->add_option("--against", w.heads, "A printed head, 128:9f3c...; or @FILE with one a line");
  json(verify, w);
  verify->callback([&] { status = run_verify(w.heads, w.options); });
  auto* copy = app.add_subcommand("copy", "Make a whole copy, also while it is in use");
  copy->add_option("BINDER", w.options.binder, "The binder: one data file")->required();
  copy->add_option("TO", w.file, "The copy")->required();
  json(copy, w);
  copy->callback([&] { status = run_copy(w.file, w.options); });
  auto* serve =
      app.add_subcommand("serve", "The web page, on this machine only unless told otherwise");
  binder_alone(serve, w);
  serve->add_option("--port", w.port, "Port; 0 takes any free one")->check(CLI::Range(0, 65535));
  serve->add_option("--host", w.host, "Address to listen on; 127.0.0.1 serves this machine alone");
  common(serve, w);
  serve->callback([&] { status = run_serve(w.options, w.port, w.host); });
}

void add_looks(CLI::App& app, Wanted& w, int& status) {
  auto* due = app.add_subcommand("due", "What is due, by when, and how sure");
  binder(due, w);
  due->callback([&] { status = run_due(w.options); });
  auto* bay = app.add_subcommand("bay", "What is installed, most used first; open joints; defects");
  binder(bay, w);
  bay->callback([&] { status = run_bay(w.options); });
  auto* view = app.add_subcommand("view", "Any view: view BINDER NAME key=value ...");
  binder(view, w);
  any_command(view, w, Is::view, status);
  auto* trend = app.add_subcommand("trend", "One check over time, as a plot of letters");
  binder(trend, w);
  trend->add_option("CHECK", w.text, "The check")->required();
  trend->callback([&] { status = run_trend(w.text, w.options); });
  auto* print = app.add_subcommand(
      "print", "On paper: work STAGE, stage STAGE, entry ENTRY, hose HOSE, tag HOSE, trend CHECK");
  binder(print, w);
  print->add_option("CARD", w.text, "work, stage, entry, hose, tag or trend")
      ->required()
      ->check(CLI::IsMember({"work", "stage", "entry", "hose", "tag", "trend"}));
  print->add_option("ID", w.more, "Stage, entry, hose or check")->required();
  print->add_option("--to", w.file, "File (.pdf, .svg or .png)")->required();
  print->add_option("--paper", w.paper, "a4 or letter")->check(CLI::IsMember({"a4", "letter"}));
  print->callback([&] { status = run_print(w.text, w.more, w.file, w.paper, w.options); });
}

void add_acts(CLI::App& app, Wanted& w, int& status) {
  auto* any = app.add_subcommand("act", "Any act: act BINDER NAME key=value ...");
  acting(any, w);
  any_command(any, w, Is::act, status);
  auto* plan = app.add_subcommand("plan", "Changes and stages");
  plan->require_subcommand(1);
  auto* stage = app.add_subcommand("stage", "Open, close or hold a stage; enter its steps");
  stage->require_subcommand(1);
  for (const auto& command : k_short_commands) {
    CLI::App* parent = command.group == "plan" ? plan : command.group == "stage" ? stage : &app;
    act_command(parent, w, command, status);
  }
  auto* attach = app.add_subcommand("attach", "Attach a photo or paper");
  acting(attach, w);
  attach->add_option("FILE", w.file, "The file")->required();
  words(attach, w);
  attach->callback([&] { status = run_attach(w.file, w.words, w.options); });
  auto* correct = app.add_subcommand(
      "correct", "Correct an earlier event: correct BINDER EVENT --why TEXT key=value ...");
  acting(correct, w);
  correct->add_option("EVENT", w.text, "Id or sequence number of the event")->required();
  correct->add_option("--why", w.reason, "Reason")->required();
  words(correct, w);
  correct->callback([&] { status = run_correct(w.text, w.words, w.reason, w.options); });
}

/// The order of the day: one heading a kind of work.
void group(const CLI::App& app) {
  const std::pair<const char*, std::vector<const char*>> k_groups[] = {
      {"Begin", {"demo", "new", "import", "serve"}},
      {"Look", {"bay", "due", "view"}},
      {"Enter", {"measure", "defect", "quick", "read", "joint", "attach", "correct", "act"}},
      {"Plan and fly", {"plan", "stage", "print"}},
      {"Compute", {"calc"}},
      {"Keep", {"verify", "copy", "export"}},
      {"Read", {"manual"}}};
  for (const auto& [heading, names] : k_groups) {
    for (const auto* name : names) app.get_subcommand(name)->group(heading);
  }
}

/// What was typed wrong, with the nearest word that there is.
Problem problem_of(const CLI::App& app, const CLI::ParseError& error) {
  const CLI::App* at = &app;
  std::string command = "witnessmark";
  while (!at->get_subcommands().empty()) {
    at = at->get_subcommands().front();
    command += " " + at->get_name();
  }
  const auto rest = app.remaining(true);
  std::vector<std::string> owned;
  const bool option = !rest.empty() && rest.front().starts_with('-');
  if (option) {
    for (const auto* o : at->get_options()) {
      for (const auto& name : o->get_lnames()) owned.push_back("--" + name);
    }
  } else {
    for (const auto* s : at->get_subcommands([](const CLI::App*) { return true; }))
      owned.push_back(s->get_name());
  }
  const std::vector<std::string_view> names(owned.begin(), owned.end());
  if (option) return calculation::no_such_name("option", command, rest.front(), names);
  if (!owned.empty())
    return calculation::no_such_name("command", command, rest.empty() ? "" : rest.front(), names);
  const std::string what = error.what();
  // "CARD is required"
  if (const auto end = what.find(" is required"); end != std::string::npos) {
    const auto* missing = at->get_option_no_throw(what.substr(0, end));
    return {Kind::missing,
            what.substr(0, end),
            "is missing",
            missing == nullptr ? "" : missing->get_description(),
            {},
            command + " --help says what it takes",
            {}};
  }
  const auto colon = what.find(": ");
  const bool named = colon != std::string::npos && what.find(' ') > colon;
  return {Kind::bad_text,
          named ? what.substr(0, colon) : command,
          rest.empty() ? what.substr(named ? colon + 2 : 0)
                       : "`" + rest.front() + "` is one word too many",
          {},
          {},
          command + " --help says what it takes",
          {}};
}

}  // namespace

std::span<const ShortCommand> short_commands() { return k_short_commands; }

int run(int argc, char** argv) {
  CLI::App app(
      "Witnessmark: the record of your own engine bay. It computes, cites and warns; a person "
      "signs.",
      "witnessmark");
  app.set_version_flag("--version", std::string("witnessmark ") + WM_VERSION);
  app.require_subcommand(1);
  app.footer(
      "witnessmark COMMAND --help says what a command takes; act, view and calc NAME --describe "
      "say it field by field.\n"
      "Exit status: 0 done, 1 a finding (out of limits, overdue, altered), 2 bad input, 3 a fault "
      "of the machine.");
  Wanted wanted;
  int status = k_done;
  add_binder(app, wanted, status);
  add_looks(app, wanted, status);
  add_acts(app, wanted, status);
  add_calc(app, wanted, status);
  group(app);
  const std::span<char* const> typed(argv, static_cast<std::size_t>(argc));
  if (const auto problem = not_text(typed)) return show_problems({*problem}, wanted.options);
  if (typed.size() < 2) {
    fmt::print(stderr, "{}", app.help());
    return k_bad_input;
  }
  if (std::string_view(typed[1]) == "help") {
    const std::string wanted_command = typed.size() > 2 ? typed[2] : "";
    const auto found =
        app.get_subcommands([&](const CLI::App* sub) { return sub->get_name() == wanted_command; });
    fmt::print("{}", found.empty() ? app.help() : found.front()->help());
    return k_done;
  }
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& e) {
    if (e.get_exit_code() == 0) return app.exit(e);
    // The flag may stand behind what could not be read.
    wanted.options.json = std::any_of(typed.begin(), typed.end(), [](const char* word) {
      return std::string_view(word) == "--json";
    });
    return show_problems({problem_of(app, e)}, wanted.options);
  }
  return status;
}

}  // namespace wm::cli
