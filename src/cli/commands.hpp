#pragma once
/// The commands, each a function that gives the exit status.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "calculation/entry.hpp"
#include "cli/session.hpp"

namespace wm::cli {

struct CalcWanted {
  std::string name;
  std::vector<std::string> words;
  bool list{}, describe{};
  std::string file;   ///< to draw into; empty: answer on the terminal
  std::string paper;  ///< "a4", "letter"
};
/// All of it or nothing: an older file of that name stays until the new one is whole.
[[nodiscard]] bool write_whole(const std::string& file, const std::string& bytes);
/// Says what was written, or that it could not be; gives the exit status.
int show_written(const std::string& file, const std::string& bytes, const Options& options);
int run_calc(const CalcWanted& wanted, const Options& options);
int run_manual(const std::string& folder);

/// A command that is one act: `witnessmark measure BINDER ...` for `act BINDER measure ...`.
struct ShortCommand {
  std::string_view group;  ///< the command above it, or none
  std::string_view name, act, what;
};
[[nodiscard]] std::span<const ShortCommand> short_commands();

int run_new(const Options& options);
int run_demo(const std::string& folder, const Options& options);
int run_import(const std::string& sheet, const Options& options);
int run_export(const std::string& aircraft, Options options);
int run_due(Options options);
int run_bay(Options options);
int run_act(const std::string& name, std::vector<std::string> words, Options options);
int run_view(const std::string& name, std::vector<std::string> words, Options options);
int run_list(calculation::Entry::Is kind, const Options& options);
int run_describe(calculation::Entry::Is kind, const std::string& name, const Options& options);
/// The act or view of this name; otherwise says what there is and gives nullptr.
[[nodiscard]] const calculation::Entry* find_entry(calculation::Entry::Is kind,
                                                   const std::string& name, const Options& options);
int run_attach(const std::string& file, std::vector<std::string> words, Options options);
int run_correct(const std::string& event, std::vector<std::string> words, const std::string& reason,
                const Options& options);
int run_verify(const std::vector<std::string>& heads, const Options& options);
int run_copy(const std::string& to, const Options& options);
int run_serve(const Options& options, int port, const std::string& host);
int run_trend(const std::string& check, Options options);
int run_print(const std::string& card, const std::string& id, const std::string& file,
              const std::string& paper, Options options);

}  // namespace wm::cli
