#pragma once
/// An event of the record: its envelope and what happened.

#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <variant>

#include "bay/payloads.hpp"

namespace wm::bay {

using Payload = std::variant<AircraftDescribed, CounterDefined, CounterRead, CounterReplaced,
                             PositionAdded, JointAdded, PartRegistered, PartInstalled, PartRemoved,
                             LimitSet, TaskDone, InstrumentRegistered, InstrumentFoundBad,
                             CheckDescribed, ReadingTaken, VerdictGiven, DefectNoted, DefectDecided,
                             DefectClosed, ChangePlanned, ChangeDone, ChangeWithdrawn, StagePlanned,
                             StageRuleAnswered, JointWorked, BungCounted, CowlMoved, MassRevised,
                             StageStepDone, EntrySigned, StageMoved, QuickJobDone, AttachmentAdded,
                             EventCorrected, SheetImported, HoseDrawn, HoseProved, PartDecided>;

struct Envelope {
  std::string id;
  std::int64_t sequence{};
  std::string happened;  ///< "2026-11-25" or an instant, as given
  std::string recorded;  ///< instant, UTC
  std::string author;
  std::string device;
  std::string refers_to;
  int version{1};
};

struct Event {
  Envelope meta;
  Payload payload;
  /// Of a correction: the corrected body, decoded.
  std::shared_ptr<const Payload> replacement{};
  [[nodiscard]] Date day() const;  ///< the day on which it happened
};

/// A kind of event: its stored word, the version written today, its description.
struct EventKind {
  std::string_view word;  ///< "reading-taken"
  int version{1};
  const describe::Type* type{};
  Payload (*make)(){};
};

/// Every kind, in the order of `Payload`.
[[nodiscard]] std::span<const EventKind> event_kinds();
[[nodiscard]] const EventKind& kind_of(const Payload& payload);
/// nullptr when no such kind is known: then the binder is read-only.
[[nodiscard]] const EventKind* find_kind(std::string_view word);
/// The described struct inside a payload.
[[nodiscard]] const void* body_of(const Payload& payload);
[[nodiscard]] void* body_of(Payload& payload);
/// Which aircraft it is about; empty when none (parts and instruments belong to the binder).
[[nodiscard]] std::string_view aircraft_of(const Payload& payload);

}  // namespace wm::bay
