#include "binder/binder.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <chrono>
#include <thread>
#include <utility>

#include "calculation/catalogue.hpp"
#include "calculation/json_face.hpp"
#include "desk/lookup.hpp"
#include "desk/views.hpp"

namespace wm::binder {
namespace {

/// About a second of waiting in all (pauses of 1 to 10 ms): two busy writers must not starve each
/// other, and nobody waits for ever.
constexpr int k_tries_against_other_writers = 120;

/// The first event of an act has the act's id. Those of further events end in a dash, which no
/// act's id does, so that no act is mistaken for a further event of another.
std::string event_id(const std::string& act_id, std::size_t index) {
  return index == 0 ? act_id : fmt::format("{}-{}-", act_id, index + 1);
}

/// Ids of a client leave room for the numbers of further events.
bool is_act_id(std::string_view id) {
  if (id.empty() || id.size() > 56 || id.back() == '-') return false;
  for (const char c : id) {
    const bool good = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                      c == '-' || c == '_';
    if (!good) return false;
  }
  return true;
}

Problems check_call(const ActCall& call) {
  Problems problems;
  if (!is_act_id(call.id)) {
    problems.push_back({Kind::bad_text,
                        "id",
                        "the act's id is not usable",
                        "1 to 56 letters, digits, - or _, with no - at the end",
                        "a3f9-1",
                        {},
                        {}});
  }
  if (!call.happened.empty()) {
    const auto as_date = quantity::parse_date(call.happened);
    const auto as_instant = quantity::parse_instant(call.happened);
    if (!as_date && !as_instant) {
      auto p = call.happened.size() <= 10 ? as_date.error() : as_instant.error();
      p.path = "happened";
      problems.push_back(std::move(p));
    }
  }
  return problems;
}

std::string aircraft_in(const describe::Type& type, const void* input) {
  const auto* field = describe::find_field(type, "aircraft");
  if (field == nullptr || field->type->shape != describe::Shape::text) return {};
  return *static_cast<const std::string*>(describe::value_of(*field, input));
}

/// Kinds that change plans: two people must not overwrite each other there.
bool is_plan(const bay::Payload& payload) {
  return std::holds_alternative<bay::ChangePlanned>(payload) ||
         std::holds_alternative<bay::ChangeWithdrawn>(payload) ||
         std::holds_alternative<bay::StagePlanned>(payload) ||
         std::holds_alternative<bay::StageRuleAnswered>(payload) ||
         std::holds_alternative<bay::StageMoved>(payload) ||
         std::holds_alternative<bay::LimitSet>(payload) ||
         std::holds_alternative<bay::HoseDrawn>(payload) ||
         std::holds_alternative<bay::CheckDescribed>(payload) ||
         std::holds_alternative<bay::AircraftDescribed>(payload);
}

std::vector<record::NewEvent> to_store(const ActCall& call, const std::string& happened,
                                       const Now& now, const std::vector<desk::NewEvent>& events) {
  std::vector<record::NewEvent> out;
  out.reserve(events.size());
  for (std::size_t i = 0; i < events.size(); ++i) {
    const auto& e = events[i];
    const auto& kind = bay::kind_of(e.payload);
    record::NewEvent stored;
    stored.id = event_id(call.id, i);
    stored.kind = kind.word;
    stored.version = kind.version;
    stored.happened = e.happened.empty() ? happened : e.happened;
    stored.recorded = now.instant;
    stored.author = call.author;
    stored.device = call.device;
    stored.refers_to = e.refers_to == "#0" ? call.id : e.refers_to;
    stored.body = encode(e.payload);
    out.push_back(std::move(stored));
  }
  return out;
}

}  // namespace

Result<std::unique_ptr<Binder>> Binder::create(const std::filesystem::path& path) {
  auto journal = record::Journal::create(path);
  if (!journal) return Fail(journal.error());
  return std::unique_ptr<Binder>(new Binder(std::move(*journal)));
}

Result<std::unique_ptr<Binder>> Binder::open(const std::filesystem::path& path,
                                             record::Access access) {
  auto journal = record::Journal::open(path, access);
  if (!journal) return Fail(journal.error());
  std::unique_ptr<Binder> binder(new Binder(std::move(*journal)));
  if (access == record::Access::read_only)
    binder->read_only_ = "the binder was opened for reading only";
  auto loaded = binder->load();
  if (!loaded) return Fail(loaded.error());
  return binder;
}

Result<Done> Binder::load() {
  std::vector<std::shared_ptr<const bay::Event>> events;
  std::optional<Problem> problem;
  const auto read = journal_.read_each(0, [&](const record::StoredEvent& stored) {
    auto event = decode(stored);
    if (event) {
      state_.head = stored.hash;
      events.push_back(std::make_shared<const bay::Event>(std::move(*event)));
      return true;
    }
    if (event.error().kind == Kind::not_applicable) {
      // Written by a newer program: show what is known, write nothing.
      read_only_ = event.error().what;
      newer_program_ = true;
      return true;
    }
    problem = event.error();
    return false;
  });
  if (!read) return Fail(read.error());
  if (problem) return Fail(std::move(*problem));
  auto head = std::move(state_.head);
  state_ = bay::fold(std::move(events));
  state_.head = std::move(head);
  return Done{};
}

Result<Done> Binder::catch_up() {
  const auto last = journal_.last();
  if (last.sequence == state_.sequence || newer_program_) return Done{};
  std::optional<Problem> problem;
  const auto read = journal_.read_each(state_.sequence, [&](const record::StoredEvent& stored) {
    auto event = decode(stored);
    if (!event) {
      newer_program_ = event.error().kind == Kind::not_applicable;
      if (!newer_program_) problem = event.error();
      read_only_ = event.error().what;
      return false;
    }
    bay::apply(state_, std::make_shared<const bay::Event>(std::move(*event)));
    state_.head = stored.hash;
    return true;
  });
  if (!read) return Fail(read.error());
  if (problem) return Fail(std::move(*problem));
  return Done{};
}

describe::Context Binder::context(const Now& now, quantity::UnitSet units) const {
  describe::Context out;
  out.today = now.today;
  out.units = units;
  out.tables = calculation::catalogue().tables();
  return out;
}

std::optional<Reply> Binder::stored_reply(const ActCall& call) {
  const auto first = state_.by_id.find(call.id);
  if (first == state_.by_id.end()) return std::nullopt;
  Reply reply;
  reply.was_there_already = true;
  reply.sequence = state_.sequence;
  reply.head = state_.head;
  for (std::size_t i = 0;; ++i) {
    const auto found = state_.by_id.find(event_id(call.id, i));
    if (found == state_.by_id.end()) break;
    const auto& event = *state_.events[found->second];
    reply.recorded.push_back(
        {event.meta.sequence, event.meta.id, std::string(bay::kind_of(event.payload).word)});
  }
  reply.type = &describe::type_of<desk::Said>();
  reply.value = std::make_shared<desk::Said>(desk::Said{
      "Already recorded: " + desk::in_words(state_.events[first->second]->payload), {}, {}});
  return reply;
}

Problems Binder::plans_changed(const ActCall& call, const desk::Act& act,
                               const std::string& aircraft) const {
  if (!act.changes_plans || !call.seen || *call.seen >= state_.sequence) return {};
  Problems problems;
  for (std::size_t i = state_.events.size(); i-- > 0;) {
    const auto& event = *state_.events[i];
    if (event.meta.sequence <= *call.seen) break;
    if (!is_plan(event.payload) || bay::aircraft_of(event.payload) != aircraft) continue;
    problems.push_back(
        {Kind::conflict,
         "seen",
         fmt::format("meanwhile, event {}: {}{}", event.meta.sequence,
                     desk::in_words(event.payload),
                     event.meta.author.empty() ? "" : " (" + event.meta.author + ")"),
         {},
         {},
         "Look at it again, then do it once more.",
         {}});
  }
  return problems;
}

Problems Binder::missing_attachments(const describe::Type& type, const void* value) {
  Problems problems;
  for (const auto& field : type.fields) {
    if (field.refers_to != "attachment") continue;
    std::vector<std::pair<std::string, std::string>> hashes;
    const auto* at = describe::value_of(field, value);
    if (field.type->shape == describe::Shape::text)
      hashes.emplace_back(field.key, *static_cast<const std::string*>(at));
    if (field.type->shape == describe::Shape::list) {
      for (std::size_t i = 0; i < field.type->operations.size(at); ++i) {
        hashes.emplace_back(fmt::format("{}/{}", field.key, i),
                            *static_cast<const std::string*>(field.type->operations.at(at, i)));
      }
    }
    for (const auto& [path, hash] : hashes) {
      if (hash.empty() || journal_.find_attachment(hash)) continue;
      problems.push_back({Kind::not_found,
                          path,
                          "no attachment with this content is in the binder",
                          "the hash that storing it gave",
                          {},
                          "Store the file first.",
                          {}});
    }
  }
  return problems;
}

Checked<Reply> Binder::act(const ActCall& call, const InputReader& reader, const Now& now,
                           quantity::UnitSet units) {
  const std::lock_guard lock(mutex_);
  const auto* act = desk::find_act(call.name);
  if (act == nullptr) {
    return Fail(
        Problems{{Kind::not_found, {}, "there is no act `" + call.name + "`", {}, {}, {}, {}}});
  }
  auto problems = check_call(call);
  if (!problems.empty()) return Fail(std::move(problems));
  const auto input = act->make_input();
  const std::string happened =
      call.happened.empty() ? quantity::print_date(now.today) : call.happened;
  auto ctx = context(now, units);
  // A file that a drawing names is an attachment of this binder. The lock is held already.
  ctx.file = [this](std::string_view hash) -> std::optional<std::string> {
    auto content = journal_.get_attachment(hash);
    if (!content) return std::nullopt;
    return std::move(*content);
  };
  for (int attempt = 0; attempt < k_tries_against_other_writers; ++attempt) {
    if (auto current = catch_up(); !current) return Fail(Problems{current.error()});
    if (auto stored = stored_reply(call)) return std::move(*stored);
    if (!read_only_.empty()) {
      return Fail(Problems{{Kind::refused,
                            {},
                            "nothing can be written: " + read_only_,
                            {},
                            {},
                            "Use the newer program, or a copy that may be written.",
                            {}}});
    }
    const auto fresh = act->make_input();
    problems = reader(*act->input, fresh.get());
    if (problems.empty()) problems = desk::check_references(*act->input, fresh.get(), state_);
    if (problems.empty()) problems = missing_attachments(*act->input, fresh.get());
    if (problems.empty())
      problems = plans_changed(call, *act, aircraft_in(*act->input, fresh.get()));
    if (!problems.empty()) return Fail(std::move(problems));
    const desk::Desk desk{
        state_, ctx, happened, call.author, &read_payload_strictly, &calculation::write_input};
    auto outcome = act->run(fresh.get(), desk);
    if (!outcome) return Fail(outcome.error());
    Reply reply{act->output, outcome->answer, act->cautions, state_.sequence, state_.head, {},
                false};
    if (call.try_only || outcome->events.empty()) return reply;
    const auto to_append = to_store(call, happened, now, outcome->events);
    auto appended = journal_.append(to_append, state_.sequence);
    if (!appended) {
      // Another process wrote in between: take that in and judge again.
      if (appended.error().kind == Kind::conflict && journal_.last_sequence() != state_.sequence) {
        std::this_thread::sleep_for(std::chrono::milliseconds(std::min(attempt + 1, 10)));
        continue;
      }
      return Fail(Problems{appended.error()});
    }
    for (const auto& stored : appended->events) {
      auto event = decode(stored);
      if (!event) return Fail(Problems{event.error()});
      bay::apply(state_, std::make_shared<const bay::Event>(std::move(*event)));
      state_.head = stored.hash;
      reply.recorded.push_back({stored.sequence, stored.id, stored.kind});
    }
    reply.sequence = state_.sequence;
    reply.head = state_.head;
    return reply;
  }
  return Fail(Problems{{Kind::conflict,
                        {},
                        "other programs keep writing to this binder",
                        {},
                        {},
                        "Try again.",
                        {}}});
}

Checked<Reply> Binder::view(const std::string& name, const InputReader& reader, const Now& now,
                            quantity::UnitSet units) {
  const std::lock_guard lock(mutex_);
  const auto* view = desk::find_view(name);
  if (view == nullptr) {
    return Fail(Problems{{Kind::not_found, {}, "there is no view `" + name + "`", {}, {}, {}, {}}});
  }
  if (auto current = catch_up(); !current) return Fail(Problems{current.error()});
  const auto input = view->make_input();
  auto problems = reader(*view->input, input.get());
  if (problems.empty()) problems = desk::check_references(*view->input, input.get(), state_);
  if (!problems.empty()) return Fail(std::move(problems));
  auto answer = view->run(input.get(), state_, context(now, units));
  if (!answer) return Fail(answer.error());
  return Reply{view->output, std::move(*answer), {}, state_.sequence, state_.head, {}, false};
}

Result<record::StoredEvent> Binder::event(std::string_view id) {
  const std::lock_guard lock(mutex_);
  auto stored = journal_.find(id);
  if (!stored) return stored;
  const auto corrections = state_.corrections.find(std::string(id));
  if (corrections != state_.corrections.end()) {
    const auto& last = *state_.events[corrections->second.back()];
    stored->body = std::get<bay::EventCorrected>(last.payload).body;
  }
  return stored;
}

void Binder::look(const std::function<void(const bay::State&)>& at) {
  const std::lock_guard lock(mutex_);
  (void)catch_up().has_value();
  at(state_);
}

Result<record::Attachment> Binder::put_attachment(const record::ChunkSource& source) {
  const std::lock_guard lock(mutex_);
  return journal_.put_attachment(source);
}
Result<std::string> Binder::attachment(std::string_view hash) {
  const std::lock_guard lock(mutex_);
  return journal_.get_attachment(hash);
}
record::Verification Binder::verify(std::span<const record::Head> heads) {
  const std::lock_guard lock(mutex_);
  auto out = record::verify_against(journal_, heads);
  // The journal knows no kinds: whether what an event names is still there is asked here.
  for (const auto& event : state_.events) {
    const auto* added = std::get_if<bay::AttachmentAdded>(&event->payload);
    if (added == nullptr || journal_.find_attachment(added->hash)) continue;
    out.findings.push_back({event->meta.sequence, "attachment",
                            "the attachment \"" + added->name + "\" is not in the file any more"});
  }
  return out;
}
Result<Done> Binder::copy_to(const std::filesystem::path& path) {
  const std::lock_guard lock(mutex_);
  return journal_.copy_to(path);
}
record::Head Binder::last() {
  const std::lock_guard lock(mutex_);
  (void)catch_up().has_value();
  return {state_.sequence, state_.head};
}
std::string Binder::read_only_because() {
  const std::lock_guard lock(mutex_);
  return read_only_;
}
std::filesystem::path Binder::path() const { return journal_.path(); }

}  // namespace wm::binder
