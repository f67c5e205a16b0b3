#pragma once
/// What every command shares: the clock, the binder, one way to call and one way to answer.

#include <memory>
#include <string>
#include <vector>

#include "binder/binder.hpp"

namespace wm::cli {

/// Exit status of a command.
enum Exit { k_done = 0, k_finding = 1, k_bad_input = 2, k_machine = 3 };

/// The options that most commands take.
struct Options {
  std::string binder;
  std::string aircraft;
  std::string on;     ///< when it happened
  std::string by;     ///< who says so
  std::string id;     ///< of the act: the same id again is harmless
  std::string units;  ///< "us" or "si"
  bool json{};
  bool try_only{};
  bool list{}, describe{};  ///< of acts and views: say what there is instead
};

/// The clock of this machine; read in the doors only.
[[nodiscard]] binder::Now clock_now();
/// A new id for an act: 32 hex digits from the system's random numbers.
[[nodiscard]] std::string new_id();
[[nodiscard]] quantity::UnitSet unit_set(const Options& options);

/// Show problems (JSON on standard output, words on standard error) and give the exit status.
int show_problems(const Problems& problems, const Options& options);

/// Open the binder or show why not.
[[nodiscard]] std::unique_ptr<binder::Binder> open_binder(const Options& options,
                                                          record::Access access);
/// The aircraft meant: as given, or the only one in the binder; "" and a message otherwise.
[[nodiscard]] bool choose_aircraft(binder::Binder& binder, Options& options);

/// `key=value` words as an input reader; `aircraft` is put in where the input has that field.
[[nodiscard]] binder::InputReader from_words(std::vector<std::string> words, std::string aircraft);

/// Call an act and show its answer; gives the exit status. With the sheet that the input came
/// from, problems name its lines.
int call_act(binder::Binder& binder, const std::string& name, const binder::InputReader& input,
             const Options& options, std::string_view sheet = {});
/// Call a view; nothing and the status in `status` when it failed.
[[nodiscard]] std::shared_ptr<void> call_view(binder::Binder& binder, const std::string& name,
                                              std::vector<std::string> words,
                                              const Options& options, int& status);
int show_view(binder::Binder& binder, const std::string& name, std::vector<std::string> words,
              const Options& options);

}  // namespace wm::cli
