#include "cli/run.hpp"

#include <CLI/CLI.hpp>

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

void common(CLI::App* app, Wanted& w) {
  app->add_flag("--json", w.options.json, "Answer as JSON");
  app->add_option("--units", w.options.units, "us or si")->check(CLI::IsMember({"us", "si"}));
}
void binder(CLI::App* app, Wanted& w) {
  app->add_option("BINDER", w.options.binder, "The binder: one data file")->required();
  app->add_option("--aircraft", w.options.aircraft, "Which aircraft, where there are several");
  common(app, w);
}
void acting(CLI::App* app, Wanted& w) {
  binder(app, w);
  app->add_option("--on", w.options.on,
                  "When it happened: 2026-11-25, or an instant; today unless said");
  app->add_option("--by", w.options.by, "Who says so");
  app->add_option("--id", w.options.id, "Id of this act: the same id again is harmless");
  app->add_flag("--try", w.options.try_only, "Work it out, record nothing");
}
void words(CLI::App* app, Wanted& w) {
  app->add_option("WORDS", w.words, "key=value words, or one JSON object")->allow_extra_args();
}

/// A command that is one act: `witnessmark defect BINDER text="..."`.
CLI::App* act_command(CLI::App* parent, Wanted& w, const std::string& name, const std::string& what,
                      const std::string& act, int& status) {
  auto* app = parent->add_subcommand(name, what);
  acting(app, w);
  words(app, w);
  app->callback([&w, act, &status] { status = run_act(act, w.words, w.options); });
  return app;
}

void add_calc(CLI::App& app, Wanted& w, int& status) {
  auto* calc = app.add_subcommand("calc", "Any calculation alone: calc NAME key=value ...");
  calc->add_option("NAME", w.calc.name, "Its name");
  calc->add_option("WORDS", w.calc.words, "key=value words, or one JSON object")
      ->allow_extra_args();
  calc->add_flag("--list", w.calc.list, "List all calculations");
  calc->add_flag("--describe", w.calc.describe, "Show what it takes and gives");
  common(calc, w);
  calc->callback([&] { status = run_calc(w.calc, w.options); });
  auto* manual = app.add_subcommand("manual", "Write the manual pages");
  manual->add_option("--into", w.file, "Folder")->required();
  manual->callback([&] { status = run_manual(w.file); });
}

void add_binder(CLI::App& app, Wanted& w, int& status) {
  auto* demo = app.add_subcommand("demo", "Make the demo binder (invented aircraft)");
  demo->add_option("DIR", w.file, "Folder")->required();
  common(demo, w);
  demo->callback([&] { status = run_demo(w.file, w.options); });
  auto* fresh = app.add_subcommand("new", "Make an empty binder");
  binder(fresh, w);
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
  verify->add_option("BINDER", w.options.binder, "The binder")->required();
  verify->add_option("--against", w.heads, "A printed head, 128:9f3c...; or @FILE with one a line");
  common(verify, w);
  verify->callback([&] { status = run_verify(w.heads, {}, w.options); });
  auto* copy = app.add_subcommand("copy", "Make a whole copy, also while it is in use");
  copy->add_option("BINDER", w.options.binder, "The binder")->required();
  copy->add_option("TO", w.file, "The copy")->required();
  common(copy, w);
  copy->callback([&] { status = run_copy(w.file, w.options); });
  auto* serve =
      app.add_subcommand("serve", "The web page, on this machine only unless told otherwise");
  serve->add_option("BINDER", w.options.binder, "The binder")->required();
  serve->add_option("--port", w.port, "Port")->check(CLI::Range(0, 65535));
  serve->add_option("--host", w.host, "Address to listen on");
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
  view->add_option("NAME", w.text, "Its name")->required();
  words(view, w);
  view->callback([&] { status = run_view(w.text, w.words, w.options); });
  auto* views = app.add_subcommand("views", "List all views");
  common(views, w);
  views->callback([&] { status = run_list(false, w.options); });
  auto* acts = app.add_subcommand("acts", "List all acts");
  common(acts, w);
  acts->callback([&] { status = run_list(true, w.options); });
  auto* print = app.add_subcommand("print", "Cards as PDF: work STAGE, stage STAGE, entry ENTRY");
  binder(print, w);
  print->add_option("CARD", w.text, "work, stage or entry")
      ->required()
      ->check(CLI::IsMember({"work", "stage", "entry"}));
  print->add_option("ID", w.more, "Stage or entry")->required();
  print->add_option("--to", w.file, "File (.pdf, .svg or .png)")->required();
  print->add_option("--paper", w.paper, "a4 or letter")->check(CLI::IsMember({"a4", "letter"}));
  print->callback([&] { status = run_print(w.text, w.more, w.file, w.paper, w.options); });
}

void add_acts(CLI::App& app, Wanted& w, int& status) {
  auto* any = app.add_subcommand("act", "Any act: act BINDER NAME key=value ...");
  acting(any, w);
  any->add_option("NAME", w.text, "Its name")->required();
  words(any, w);
  any->callback([&] { status = run_act(w.text, w.words, w.options); });
  act_command(&app, w, "measure", "Enter a reading, get the verdict: check=... value=\"7.9 kohm\"",
              "measure", status);
  act_command(&app, w, "defect", "Something seen, heard, smelt: text=\"...\"", "note-defect",
              status);
  act_command(&app, w, "quick", "A quick job: what=oil-change text=\"...\"", "quick-job", status);
  act_command(&app, w, "read", "Read counters: at/0/counter=engine at/0/hours=\"1140.6 h\"",
              "read-counter", status);
  act_command(&app, w, "joint", "Work a joint: joint=... state=torqued torque=\"245 in-lb\"",
              "work-joint", status);
  auto* plan = app.add_subcommand("plan", "Changes and stages");
  plan->require_subcommand(1);
  act_command(plan, w, "change", "Plan a change", "plan-change", status);
  act_command(plan, w, "stage", "Put changes into a stage; objections are told", "plan-stage",
              status);
  act_command(plan, w, "answer", "Answer an objection", "answer-objection", status);
  act_command(plan, w, "done", "A change is made", "change-done", status);
  auto* stage = app.add_subcommand("stage", "Open, close or hold a stage; enter its steps");
  stage->require_subcommand(1);
  act_command(stage, w, "open", "Sign it open: check flight due", "open-stage", status);
  act_command(stage, w, "close", "Sign it closed after its checks", "close-stage", status);
  act_command(stage, w, "hold", "Hold it, with the reason", "hold-stage", status);
  act_command(stage, w, "resume", "Go on with a held stage", "resume-stage", status);
  act_command(stage, w, "step", "Leak run, ground run, check flight, second look", "stage-step",
              status);
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

}  // namespace

int run(int argc, char** argv) {
  CLI::App app(
      "Witnessmark: the record of your own engine bay. It computes, cites and warns; a person "
      "signs.",
      "witnessmark");
  app.set_version_flag("--version", std::string("witnessmark ") + WM_VERSION);
  app.require_subcommand(1);
  Wanted wanted;
  int status = k_done;
  add_binder(app, wanted, status);
  add_looks(app, wanted, status);
  add_acts(app, wanted, status);
  add_calc(app, wanted, status);
  if (const auto problem = not_text({argv, static_cast<std::size_t>(argc)})) {
    return show_problems({*problem}, wanted.options);
  }
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& e) {
    const int code = app.exit(e);
    return code == 0 ? k_done : k_bad_input;
  }
  return status;
}

}  // namespace wm::cli
