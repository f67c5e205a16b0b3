#pragma once
/// A day of work on a binder, drawn from a seed, with a plain list as the truth beside it.

#include <cstdint>
#include <filesystem>
#include <map>
#include <random>
#include <set>
#include <string>
#include <vector>

#include "e2e/power_cut/forgetful_disk.hpp"
#include "record/detail/store.hpp"
#include "record/journal.hpp"

namespace wm::record::test {

/// What was confirmed, and what was on its way when the power went.
struct Truth {
  bool created{};
  std::vector<NewEvent> confirmed;
  std::vector<NewEvent> on_its_way;
  std::map<std::string, std::string> attachments;  ///< hash -> content, confirmed
  std::map<std::string, std::int64_t> copies;      ///< file name -> events in it, confirmed
  std::set<std::string> attempted_copies;
  int failures{};  ///< refusals that were met and retried
};

struct Work {
  std::uint64_t seed{};
  int steps{20};
  detail::Sync sync{detail::Sync::extra};
};

inline constexpr const char* k_binder_name = "cut.binder";

/// Do the work until it is done or the power goes. A refusal of the disk is met by trying again,
/// as a person would. Fails the test when something else goes wrong.
void do_work(ForgetfulDisk& disk, const std::filesystem::path& folder, const Work& work,
             Truth& truth);

/// Look at what the cut left in a real folder, through SQLite's own file layer.
/// @return  what was lost or is in disorder; empty when nothing is.
[[nodiscard]] std::string what_was_lost(const std::filesystem::path& folder, const Truth& truth);

/// Number from the environment, or a default.
[[nodiscard]] int count_from_environment(const char* name, int otherwise);

}  // namespace wm::record::test
