#pragma once
/// A disk that forgets: a SQLite file layer in memory that keeps apart what was written and what
/// was synced, so that a test can cut the power.
///
/// Killing a process cannot show a missing sync, because the operating system still holds the
/// pages. Here a cut throws away a random part of whatever was not synced: sectors of writes (each
/// kept, lost, or left as rubbish), changes of a file's length, and the making and deleting of
/// names in a folder. A sync of a file keeps its content but not its name; names are kept by the
/// sync of the folder, which SQLite asks for with a new safety file and after removing one.

#include <cstdint>
#include <filesystem>
#include <map>
#include <memory>
#include <random>
#include <string>

struct sqlite3_vfs;

namespace wm::record::test {

struct Habits {
  std::size_t sector{512};   ///< smallest piece that is written as a whole: 512 or 4096 bytes
  bool spares_neighbours{};  ///< tell SQLite that a torn write never harms bytes beside it
  bool leaves_rubbish{};     ///< a sector on its way may end up as neither old nor new
};

/// What an operation does instead of its work.
struct Refusal {
  std::int64_t at{-1};  ///< number of the first operation that fails, counted like operations()
  int times{1};         ///< how many operations that change something fail from there on
  int code{};           ///< SQLITE_FULL, SQLITE_IOERR_WRITE, ...
};

class ForgetfulDisk {
 public:
  /// Registers itself as a SQLite file layer under a name of its own.
  explicit ForgetfulDisk(std::uint64_t seed, Habits habits = {});
  ~ForgetfulDisk();
  ForgetfulDisk(const ForgetfulDisk&) = delete;
  ForgetfulDisk& operator=(const ForgetfulDisk&) = delete;

  [[nodiscard]] const std::string& name() const;

  /// Operations so far that change or sync something.
  [[nodiscard]] std::int64_t operations() const;
  /// The power goes off in the middle of that operation; every later one fails.
  void cut_at(std::int64_t operation);
  [[nodiscard]] bool is_cut() const;
  void refuse(Refusal refusal);
  [[nodiscard]] bool has_refused() const;

  /// The power goes off now, if it has not; what is left is written into a real folder.
  void leave_behind(const std::filesystem::path& folder);

  struct State;

 private:
  std::unique_ptr<State> state_;
};

}  // namespace wm::record::test
