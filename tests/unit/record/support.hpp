#pragma once
/// What the tests of the journal share: a folder that goes away again, made-up events, and a way
/// to change a file behind the journal's back.
#include <gtest/gtest.h>
#include <sqlite3.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "record/journal.hpp"

namespace wm::record::test {

class TemporaryFolder {
 public:
  TemporaryFolder() {
    // In memory where there is such a place: nothing here asks what a power cut would leave.
    const std::filesystem::path memory = "/dev/shm";
    const bool usable = ::access(memory.c_str(), W_OK | X_OK) == 0;
    const auto above = usable ? memory : std::filesystem::temp_directory_path();
    std::string pattern = (above / "wm-record-XXXXXX").string();
    if (::mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("no temporary folder");
    path_ = pattern;
  }
  ~TemporaryFolder() {
    std::error_code ignored;
    std::filesystem::permissions(path_, std::filesystem::perms::owner_all, ignored);
    std::filesystem::remove_all(path_, ignored);
  }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  [[nodiscard]] std::filesystem::path operator/(std::string_view name) const {
    return path_ / name;
  }
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

inline NewEvent an_event(int number, std::string body = R"({"text":"seen"})") {
  return {"ev-" + std::to_string(number),
          "note",
          1,
          "2026-11-25",
          "2026-11-25T18:04:31Z",
          "M. Example",
          "bench laptop",
          "",
          std::move(body)};
}

template <class T>
T need(Result<T> result) {
  if (!result) throw std::runtime_error(result.error().what + " / " + result.error().path);
  return std::move(result).value();
}

/// The problem of a result that must have failed.
template <class T>
Problem problem_of(const Result<T>& result) {
  if (result) throw std::runtime_error("expected a problem");
  return result.error();
}

inline Journal a_journal(const std::filesystem::path& path, int events = 0) {
  Journal journal = need(Journal::create(path));
  std::vector<NewEvent> all;
  for (int i = 1; i <= events; ++i) {
    all.push_back(an_event(i));
    if (i > 1) all.back().refers_to = "ev-" + std::to_string(i - 1);
  }
  need(journal.append(all));
  return journal;
}

/// Run SQL on the file with plain SQLite. Returns SQLite's message, empty when it worked.
inline std::string plain_sql(const std::filesystem::path& path, const std::string& sql) {
  sqlite3* database = nullptr;
  sqlite3_open(path.c_str(), &database);
  char* message = nullptr;
  sqlite3_exec(database, sql.c_str(), nullptr, nullptr, &message);
  std::string text = message == nullptr ? "" : message;
  sqlite3_free(message);
  sqlite3_close(database);
  return text;
}

/// Drop the guards first, as someone who wants to change history would.
inline void tamper(const std::filesystem::path& path, const std::string& sql) {
  sqlite3* database = nullptr;
  sqlite3_open(path.c_str(), &database);
  sqlite3_exec(database, "PRAGMA synchronous = OFF; BEGIN", nullptr, nullptr, nullptr);
  std::vector<std::pair<std::string, std::string>> guards;
  sqlite3_exec(
      database, "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'",
      [](void* into, int, char** values, char**) {
        static_cast<std::vector<std::pair<std::string, std::string>>*>(into)->emplace_back(
            values[0], values[1]);
        return 0;
      },
      &guards, nullptr);
  for (const auto& guard : guards) {
    sqlite3_exec(database, ("DROP TRIGGER " + guard.first).c_str(), nullptr, nullptr, nullptr);
  }
  char* message = nullptr;
  sqlite3_exec(database, sql.c_str(), nullptr, nullptr, &message);
  EXPECT_EQ(std::string(message == nullptr ? "" : message), "");
  sqlite3_free(message);
  for (const auto& guard : guards) {
    sqlite3_exec(database, guard.second.c_str(), nullptr, nullptr, nullptr);
  }
  sqlite3_exec(database, "COMMIT", nullptr, nullptr, nullptr);
  sqlite3_close(database);
}

inline std::string file_bytes(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

inline void write_file(const std::filesystem::path& path, const std::string& bytes) {
  std::ofstream(path, std::ios::binary)
      .write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
}

}  // namespace wm::record::test
