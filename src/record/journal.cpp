#include "record/journal.hpp"

#include <utility>

#include <fmt/format.h>

#include "record/detail/checks.hpp"
#include "record/detail/database.hpp"
#include "record/detail/row_hash.hpp"
#include "record/detail/store.hpp"
#include "record/detail/trouble.hpp"

namespace wm::record {
namespace {

using detail::Store;

/// A retry is stamped anew, so `recorded` does not count.
bool same_content(const NewEvent& a, const NewEvent& b) {
  return a.kind == b.kind && a.version == b.version && a.happened == b.happened &&
         a.author == b.author && a.device == b.device && a.refers_to == b.refers_to &&
         a.body == b.body;
}

/// Give an event its place behind `last` and write its row.
StoredEvent write_row(Store& store, const NewEvent& event, const Head& last) {
  StoredEvent stored{event, last.sequence + 1, last.hash, {}};
  const auto sequence = fmt::format_int(stored.sequence);
  const auto version = fmt::format_int(stored.version);
  const detail::HashedText row{stored.previous_hash,
                               {sequence.data(), sequence.size()},
                               stored.id,
                               stored.kind,
                               {version.data(), version.size()},
                               stored.happened,
                               stored.recorded,
                               stored.author,
                               stored.device,
                               stored.refers_to,
                               stored.body};
  stored.hash = detail::row_hash(row);
  const std::string marks = detail::row_marks(row);
  const detail::Reset reset(store.insert);
  store.insert.bind(1, stored.sequence)
      .bind(2, stored.id)
      .bind(3, stored.kind)
      .bind(4, std::int64_t{stored.version})
      .bind(5, stored.happened)
      .bind(6, stored.recorded)
      .bind(7, stored.author)
      .bind(8, stored.device)
      .bind(9, stored.refers_to)
      .bind(10, stored.body)
      .bind(11, stored.previous_hash)
      .bind(12, stored.hash)
      .bind(13, marks)
      .run();
  return stored;
}

std::string place_of(std::size_t index) { return fmt::format("events/{}", index); }

Problem id_taken(const StoredEvent& there, std::size_t index, bool by_this_batch) {
  const std::string path = place_of(index) + "/id";
  if (by_this_batch) {
    return {Kind::duplicate,
            path,
            fmt::format("the id '{}' stands twice in what is to be recorded", there.id),
            "each event with its own id",
            {},
            {},
            {}};
  }
  return {Kind::conflict,
          path,
          fmt::format("the id '{}' belongs to entry {} already, which says something else",
                      there.id, there.sequence),
          "an id that was never used, or the same content for a retry",
          {},
          "record it under a new id; if it corrects that entry, refer to it",
          {}};
}

Problem moved_on(std::int64_t expected, std::int64_t now) {
  return {Kind::conflict,
          "expected_last",
          fmt::format("the record has moved on: the last entry is {} now, {} was expected", now,
                      expected),
          fmt::format("{}", now),
          {},
          "look at the entries since then, then decide again",
          {}};
}

/// The body of append(), inside its transaction.
Result<Appended> append_all(Store& store, std::span<const NewEvent> events,
                            std::optional<std::int64_t> expected_last) {
  const Head start = detail::last_of(store);
  Head last = start;
  Appended appended;
  appended.events.reserve(events.size());
  for (std::size_t index = 0; index < events.size(); ++index) {
    const NewEvent& event = events[index];
    if (auto there = detail::stored_by_id(store, event.id)) {
      const bool by_this_batch = there->sequence > start.sequence;
      if (by_this_batch || !same_content(*there, event)) {
        return Fail(id_taken(*there, index, by_this_batch));
      }
      appended.events.push_back(*std::move(there));
      continue;
    }
    if (expected_last && *expected_last != start.sequence) {
      return Fail(moved_on(*expected_last, start.sequence));
    }
    if (!event.refers_to.empty() && !detail::stored_by_id(store, event.refers_to)) {
      return Fail({Kind::not_found,
                   place_of(index) + "/refers_to",
                   fmt::format("there is no entry with the id '{}'", event.refers_to),
                   "the id of an entry of this record",
                   {},
                   {},
                   {}});
    }
    appended.events.push_back(write_row(store, event, last));
    last = {appended.events.back().sequence, appended.events.back().hash};
  }
  appended.was_there_already = last.sequence == start.sequence;
  return appended;
}

}  // namespace

Journal::Journal(std::unique_ptr<Store> store) : store_(std::move(store)) {}
Journal::~Journal() = default;
Journal::Journal(Journal&&) noexcept = default;
Journal& Journal::operator=(Journal&&) noexcept = default;

const std::filesystem::path& Journal::path() const { return store_->path; }
Access Journal::access() const { return store_->access; }

Result<Journal> Journal::create(const std::filesystem::path& path) {
  return detail::create_journal(path, {});
}

Result<Journal> Journal::open(const std::filesystem::path& path, Access access) {
  return detail::open_journal(path, access, {});
}

Result<Appended> Journal::append(std::span<const NewEvent> events,
                                 std::optional<std::int64_t> expected_last) {
  if (store_->access == Access::read_only) return Fail(detail::opened_read_only(path()));
  for (std::size_t index = 0; index < events.size(); ++index) {
    if (auto problem = detail::wrong_with(events[index], place_of(index))) {
      return Fail(*std::move(problem));
    }
  }
  if (events.empty()) return Appended{};
  return detail::guarded(path(), [&]() -> Result<Appended> {
    detail::Transaction transaction(store_->database);
    auto appended = append_all(*store_, events, expected_last);
    if (appended && !appended->was_there_already) transaction.commit();
    return appended;
  });
}

Head Journal::last() {
  try {
    return detail::last_of(*store_);
  } catch (const detail::Trouble& trouble) {
    throw detail::as_broken(trouble, path());
  }
}

Result<std::vector<StoredEvent>> Journal::read_from(std::int64_t after, std::int64_t limit) {
  return detail::guarded(path(), [&]() -> Result<std::vector<StoredEvent>> {
    std::vector<StoredEvent> events;
    detail::Statement& page = store_->page;
    const detail::Reset reset(page);
    page.bind(1, after).bind(2, limit);
    while (page.step()) events.push_back(detail::event_at(page));
    return events;
  });
}

Result<Done> Journal::read_each(std::int64_t after,
                                const std::function<bool(StoredEvent&&)>& take) {
  constexpr std::int64_t k_page = 512;
  while (true) {
    auto events = read_from(after, k_page);
    if (!events) return Fail(events.error());
    for (StoredEvent& event : *events) {
      after = event.sequence;
      if (!take(std::move(event))) return Done{};
    }
    if (static_cast<std::int64_t>(events->size()) < k_page) return Done{};
  }
}

Result<StoredEvent> Journal::find(std::string_view id) {
  return detail::guarded(path(), [&]() -> Result<StoredEvent> {
    if (auto event = detail::stored_by_id(*store_, id)) return *std::move(event);
    return Fail(Kind::not_found, fmt::format("there is no entry with the id '{}'", id),
                "the id of an entry of this record");
  });
}

}  // namespace wm::record
