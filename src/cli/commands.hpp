#pragma once
/// The commands, each a function that gives the exit status.

#include <string>
#include <vector>

#include "cli/session.hpp"

namespace wm::cli {

struct CalcWanted {
  std::string name;
  std::vector<std::string> words;
  bool list{}, describe{};
};
int run_calc(const CalcWanted& wanted, const Options& options);
int run_manual(const std::string& folder);

int run_new(const Options& options);
int run_demo(const std::string& folder, const Options& options);
int run_import(const std::string& sheet, Options options);
int run_export(const std::string& aircraft, Options options);
int run_due(Options options);
int run_bay(Options options);
int run_act(const std::string& name, std::vector<std::string> words, Options options);
int run_view(const std::string& name, std::vector<std::string> words, Options options);
int run_list(bool acts, const Options& options);
int run_attach(const std::string& file, std::vector<std::string> words, Options options);
int run_correct(const std::string& event, std::vector<std::string> words, const std::string& reason,
                Options options);
int run_verify(const std::vector<std::string>& heads, const std::string& heads_file,
               const Options& options);
int run_copy(const std::string& to, const Options& options);
int run_serve(const Options& options, int port, const std::string& host);
int run_print(const std::string& card, const std::string& id, const std::string& file,
              const std::string& paper, Options options);

}  // namespace wm::cli
