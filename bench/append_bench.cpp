// Act: one entry after the other is recorded, each confirmed only when it is on the disk.
// Peer: a plain SQLite insert loop with the same columns and the same durability settings
//       (journal_mode DELETE, synchronous EXTRA), without chain, marks, guards or checks.
// Aim:  1.3 times the peer's time at most: what an owner pays for a record that cannot be changed
//       unseen must stay below what they would notice (our choice, no source).
//
// Five interleaved runs of both; medians and their ratio as one line of JSON.
// append_bench [EVENTS] [FOLDER]; the folder must be on a real disk for the figures to mean much.
#include <sqlite3.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "record/journal.hpp"
#include "record/verify.hpp"

namespace {

namespace fs = std::filesystem;
using wm::record::Journal;
using wm::record::NewEvent;

constexpr int k_runs = 5;

[[noreturn]] void stop(const std::string& why) {
  std::fprintf(stderr, "append_bench: %s\n", why.c_str());
  std::exit(3);
}

NewEvent event_of(int number) {
  return {"ev-" + std::to_string(number),
          "reading-taken",
          1,
          "2026-11-25",
          "2026-11-25T18:04:31Z",
          "M. Example",
          "bench laptop",
          "",
          R"({"position":"left harness, lead 3 top","reading":"6.72 kohm","instrument":"meter-1",)"
          R"("range":"20 kohm","temperature":"18 degC","limit":"6.5 kohm","verdict":)"
          R"("does-not-conform","calculation":"lead-check 1","number":)" +
              std::to_string(number) + "}"};
}

double seconds_of(auto&& act) {
  const auto begin = std::chrono::steady_clock::now();
  act();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

double with_journal(const fs::path& path, const std::vector<NewEvent>& events) {
  auto journal = Journal::create(path);
  if (!journal) stop(journal.error().what);
  const double seconds = seconds_of([&] {
    for (const NewEvent& event : events) {
      if (!journal->append(event)) stop("an event was not accepted");
    }
  });
  const auto verification = wm::record::verify(*journal);
  if (!verification.clean() || verification.events != static_cast<std::int64_t>(events.size())) {
    stop("wrong answer: nothing to time");
  }
  return seconds;
}

void execute(sqlite3* database, const char* sql) {
  if (sqlite3_exec(database, sql, nullptr, nullptr, nullptr) != SQLITE_OK) {
    stop(sqlite3_errmsg(database));
  }
}

double with_plain_sqlite(const fs::path& path, const std::vector<NewEvent>& events) {
  sqlite3* database = nullptr;
  if (sqlite3_open(path.c_str(), &database) != SQLITE_OK) stop("cannot make the peer's file");
  execute(database, "PRAGMA journal_mode = DELETE; PRAGMA synchronous = EXTRA");
  execute(database,
          "CREATE TABLE entry (sequence INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, kind TEXT, "
          "version INTEGER, happened TEXT, recorded TEXT, author TEXT, device TEXT, refers_to "
          "TEXT, body TEXT)");
  sqlite3_stmt* insert = nullptr;
  sqlite3_prepare_v2(database,
                     "INSERT INTO entry (id, kind, version, happened, recorded, author, device, "
                     "refers_to, body) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)",
                     -1, &insert, nullptr);
  const auto text = [&](int place, const std::string& value) {
    sqlite3_bind_text(insert, place, value.data(), static_cast<int>(value.size()), SQLITE_STATIC);
  };
  const double seconds = seconds_of([&] {
    for (const NewEvent& event : events) {
      text(1, event.id);
      text(2, event.kind);
      sqlite3_bind_int(insert, 3, event.version);
      text(4, event.happened);
      text(5, event.recorded);
      text(6, event.author);
      text(7, event.device);
      text(8, event.refers_to);
      text(9, event.body);
      if (sqlite3_step(insert) != SQLITE_DONE) stop(sqlite3_errmsg(database));
      sqlite3_reset(insert);
    }
  });
  sqlite3_finalize(insert);
  sqlite3_close(database);
  return seconds;
}

double median(std::array<double, k_runs> values) {
  std::ranges::sort(values);
  return values[k_runs / 2];
}

}  // namespace

int main(int count, char** words) {
  // bench/run hands the options of Google Benchmark to every program: they mean nothing here.
  if (count > 1 && std::string_view(words[1]).starts_with("--")) count = 1;
  const int events_each = count > 1 ? std::atoi(words[1]) : 1000;
  const fs::path above = count > 2 ? fs::path(words[2]) : fs::temp_directory_path();
  if (events_each < 1) stop("the number of events must be 1 or more");
  const fs::path folder = above / ("wm-append-bench-" + std::to_string(::getpid()));
  fs::create_directories(folder);
  std::vector<NewEvent> events;
  for (int i = 0; i < events_each; ++i) events.push_back(event_of(i));
  std::array<double, k_runs> ours{};
  std::array<double, k_runs> peers{};
  std::array<double, k_runs> ratios{};
  for (std::size_t run = 0; run < k_runs; ++run) {
    // Taking turns at going first, so that neither always finds the disk busy with the other.
    const auto name = [&](const char* who) { return folder / (who + std::to_string(run)); };
    if (run % 2 == 0) ours[run] = with_journal(name("ours"), events);
    peers[run] = with_plain_sqlite(name("peer"), events);
    if (run % 2 == 1) ours[run] = with_journal(name("ours"), events);
    ratios[run] = ours[run] / peers[run];
  }
  fs::remove_all(folder);
  std::printf(
      "{\"act\":\"record %d entries one by one, durable\",\"value\":%.4f,\"unit\":\"ms/entry\","
      "\"peer\":\"plain SQLite insert loop, same durability\",\"peer_value\":%.4f,"
      "\"ratio\":%.3f,\"aim\":\"1.3x of the peer\",\"note\":\"medians of %d interleaved runs; "
      "SQLite %s, journal_mode DELETE, synchronous EXTRA\"}\n",
      events_each, 1e3 * median(ours) / events_each, 1e3 * median(peers) / events_each,
      median(ratios), k_runs, sqlite3_libversion());
  return 0;
}
