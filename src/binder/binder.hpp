#pragma once
/// A binder opened: its record folded into the aircraft, looked at by views, changed by acts.
/// Here stored bytes (record, which knows no kinds) and the fold (bay, which knows no bytes) meet.

#include <filesystem>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>

#include "binder/stored.hpp"
#include "desk/act.hpp"
#include "record/journal.hpp"
#include "record/verify.hpp"

namespace wm::binder {

/// The clock, read by the door.
struct Now {
  std::string instant;     ///< RFC 3339, UTC: "2026-11-25T09:12:00Z"
  quantity::Date today{};  ///< where the user is
};

/// Reads an input of the described type from wherever it came; gives every problem.
using InputReader = std::function<Problems(const describe::Type&, void*)>;

struct ActCall {
  std::string name;
  std::string id;        ///< made by the client; the same id again is harmless
  std::string happened;  ///< date or instant; empty: now
  std::string author, device;
  std::optional<std::int64_t> seen;  ///< last sequence number the caller had seen
  bool try_only{};                   ///< work it out, record nothing
};

struct Recorded {
  std::int64_t sequence{};
  std::string id, kind;
};

/// An answer of a described type, with where the record stood.
struct Reply {
  const describe::Type* type{};
  std::shared_ptr<void> value;
  std::vector<describe::Caution> cautions;
  std::int64_t sequence{};
  std::string head;
  std::vector<Recorded> recorded;
  bool was_there_already{};
};

/// One open binder. Every function may be called from any thread; they take turns.
class Binder {
 public:
  /// @return as record::Journal::create.
  [[nodiscard]] static Result<std::unique_ptr<Binder>> create(const std::filesystem::path& path);
  /// @return as record::Journal::open; damaged when an event cannot be read.
  [[nodiscard]] static Result<std::unique_ptr<Binder>> open(
      const std::filesystem::path& path, record::Access access = record::Access::read_write);

  /// Run an act: read its input, check what it refers to, ask the desk, record all or nothing.
  /// Throws record::Broken when the machine fails.
  [[nodiscard]] Checked<Reply> act(const ActCall& call, const InputReader& input, const Now& now,
                                   quantity::UnitSet units);
  [[nodiscard]] Checked<Reply> view(const std::string& name, const InputReader& input,
                                    const Now& now, quantity::UnitSet units);
  /// The stored form of one event, as its body stands in the record (or as last corrected).
  [[nodiscard]] Result<record::StoredEvent> event(std::string_view id);

  /// Something that needs the whole state (cards); not kept beyond the call.
  void look(const std::function<void(const bay::State&)>& at);

  [[nodiscard]] Result<record::Attachment> put_attachment(const record::ChunkSource& source);
  [[nodiscard]] Result<std::string> attachment(std::string_view hash);
  [[nodiscard]] record::Verification verify(std::span<const record::Head> heads);
  [[nodiscard]] Result<Done> copy_to(const std::filesystem::path& path);

  /// Where the record stands, after taking in what other processes wrote.
  [[nodiscard]] record::Head last();
  /// Why nothing may be written; empty when it may.
  [[nodiscard]] std::string read_only_because();
  [[nodiscard]] std::filesystem::path path() const;

 private:
  explicit Binder(record::Journal journal) : journal_(std::move(journal)) {}
  [[nodiscard]] Result<Done> load();
  [[nodiscard]] Result<Done> catch_up();
  [[nodiscard]] describe::Context context(const Now& now, quantity::UnitSet units) const;
  [[nodiscard]] std::optional<Reply> stored_reply(const ActCall& call);
  [[nodiscard]] Problems plans_changed(const ActCall& call, const desk::Act& act,
                                       const std::string& aircraft) const;
  [[nodiscard]] Problems missing_attachments(const describe::Type& type, const void* value);

  std::mutex mutex_;
  record::Journal journal_;
  bay::State state_;
  std::string read_only_;
  /// An event that only a newer program knows: nothing after it is taken in.
  bool newer_program_{};
};

}  // namespace wm::binder
