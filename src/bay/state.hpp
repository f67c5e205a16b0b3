#pragma once
/// The aircraft as the record tells it: a pure fold over events, which never fails.

#include <functional>
#include <map>
#include <set>
#include <unordered_map>

#include "bay/event.hpp"
#include "life/counters.hpp"

namespace wm::bay {

/// Where an event is found again: its sequence number in the record.
using Sequence = std::int64_t;

/// Things by their short name.
template <class T>
using Named = std::map<std::string, T, std::less<>>;

struct Counter {
  CounterDefined about;
  life::CounterSeries series;
  /// The latest total; nothing when never read.
  [[nodiscard]] std::optional<double> now() const { return series.total(); }
  /// Total on a day: between two readings by proportion, nothing before the first.
  [[nodiscard]] std::optional<double> on(Date day) const;
};
[[nodiscard]] life::CountUnit unit_of(CounterKind kind);

struct Installation {
  std::string part, aircraft, position;
  Date from{};
  std::optional<Date> to;
  std::map<std::string, double> from_counters, to_counters;  ///< counter -> total
  Sequence fitted{}, removed{};
  std::string why_removed;
  bool day_known{true};
};

struct Part {
  PartRegistered about;
  std::vector<Installation> installations;  ///< in the order in which they happened
  [[nodiscard]] const Installation* current() const;
};

struct LimitRecord {
  LimitSet about;
  Sequence sequence{};
  struct Done {
    Date day{};
    Sequence sequence{};
    std::map<std::string, double> counters;  ///< totals
    std::string text;
  };
  std::vector<Done> done;  ///< in the order in which they happened
};

struct ReadingRecord {
  Sequence sequence{};
  std::string event;
  Date day{};
  std::string happened;
  ReadingTaken reading;
  std::string part;  ///< that was in the position at the time
  std::optional<double> engine_hours;
  std::optional<VerdictGiven> verdict;
  bool corrected{};
};

struct CheckRecord {
  CheckDescribed about;
  std::vector<ReadingRecord> readings;  ///< in the order in which they happened
  [[nodiscard]] const ReadingRecord* latest() const;
};

struct JointRecord {
  JointAdded about;
  JointState state{JointState::seen};  ///< closed long ago unless the record says more
  bool ever_worked{};
  std::int64_t open_number{};  ///< number on the list of open joints, 0 when closed
  Sequence since{};
  std::optional<Entered<Torque>> torque;
  std::string outside_band;  ///< the written reason for a torque outside the band
  std::string torque_table, by, stage;
  std::string worked_by;         ///< who did the last work other than marking and looking
  Sequence disturbed{};          ///< last work other than marking and looking
  std::set<JointState> reached;  ///< since it was last opened
  /// Whether all that this joint asks for has been done since it was opened.
  [[nodiscard]] bool closed() const;
};

struct Defect {
  DefectNoted about;
  Date day{};
  Sequence sequence{};
  std::string happened;
  FlyDecision decision{FlyDecision::undecided};
  std::string reason;
  std::optional<Date> until;
  bool closed{};
  std::string how;
};

struct Change {
  ChangePlanned about;
  Sequence sequence{};
  bool done{}, withdrawn{};
  std::optional<ChangeDone> result;
  Date done_on{};
  Sequence done_sequence{};
  std::string stage;  ///< that holds it
};

struct StepRecord {
  StageStepDone about;
  Sequence sequence{};
  std::string event;
  Date day{};
  std::string happened;
};

struct Stage {
  StagePlanned about;
  Sequence sequence{};
  StageState state{StageState::planned};
  std::string reason;
  std::vector<StepRecord> steps;
  std::vector<StageRuleAnswered> answers;
  std::optional<MassRevised> mass;
  std::vector<std::string> entries;
  [[nodiscard]] const StepRecord* latest(StageStep step) const;
};

/// Whether a new plan of a stage holds a change that the old one does not.
[[nodiscard]] bool brings_more(const StagePlanned& before, const StagePlanned& after);

struct Entry {
  EntrySigned about;
  std::string event;
  Date day{};
  Sequence sequence{};
  std::string happened;
  bool amended_after_signature{};
};

struct HoseRecord {
  HoseDrawn about;
  std::string event;
  Date day{};
  Sequence sequence{};
  struct Proof {
    HoseProved about;
    std::string event;
    Date day{};
    Sequence sequence{};
  };
  std::vector<Proof> proofs;  ///< in the order in which they happened
  [[nodiscard]] const Proof* latest() const;
  /// Whether its last proof was of another drawing.
  [[nodiscard]] bool drawn_since() const;
};

/// One decision about the part in a position.
struct DecisionRecord {
  PartDecided about;
  std::string event;
  Date day{};
  Sequence sequence{};
};

struct QuickJobRecord {
  QuickJobDone about;
  Sequence sequence{};
  Date day{};
};

struct Bung {
  BungCounted about;
  Date day{};
};

struct Aircraft {
  AircraftDescribed about;
  Named<Counter> counters;
  Named<PositionAdded> positions;
  std::vector<std::string> position_order;  ///< as added
  Named<std::string> fitted;                ///< position -> part now in it
  Named<JointRecord> joints;
  std::vector<std::string> joint_order;
  Named<LimitRecord> limits;
  Named<CheckRecord> checks;
  std::vector<std::string> check_order;
  Named<Defect> defects;
  Named<Change> changes;
  std::vector<std::string> change_order;
  Named<Stage> stages;
  std::vector<std::string> stage_order;
  Named<Entry> entries;
  Named<HoseRecord> hoses;
  std::vector<std::string> hose_order;
  Named<std::vector<DecisionRecord>> decisions;  ///< by position, in the order in which they fell
  Named<QuickJobRecord> quick_jobs;
  Named<Bung> bungs;  ///< fitted now
  std::vector<MassRevised> masses;
  bool cowl_closed{true};
  std::int64_t joints_opened{};  ///< the next open joint gets this number plus one
  [[nodiscard]] const Counter* engine_hours() const;
};

struct Instrument {
  InstrumentRegistered about;
  std::optional<InstrumentFoundBad> bad;
  Date found_bad_on{};
};

struct Attachment {
  AttachmentAdded about;
  Sequence sequence{};
  Date day{};
};

/// Something that the record says and that does not fit together: shown, never dropped.
struct Oddity {
  Sequence sequence{};
  std::string words;
};

struct State {
  Named<Aircraft> aircraft;
  Named<Part> parts;
  Named<Instrument> instruments;
  std::vector<Attachment> attachments;
  std::vector<std::shared_ptr<const Event>> events;  ///< as recorded, in sequence
  std::unordered_map<std::string, std::size_t> by_id;
  /// Corrected events: id of the original -> indices of its corrections, in sequence.
  std::map<std::string, std::vector<std::size_t>> corrections;
  std::vector<Oddity> oddities;
  Sequence sequence{};
  std::string head;  ///< set by whoever reads the journal; the fold does not know hashes

  [[nodiscard]] const Aircraft* find_aircraft(std::string_view id) const;
  /// The payload that counts: the last correction, or the original.
  [[nodiscard]] const Payload& effective(std::size_t index) const;
};

/// Take in one more event. A correction rebuilds the state from its events.
void apply(State& state, std::shared_ptr<const Event> event);

/// The state that a whole record tells.
[[nodiscard]] State fold(std::vector<std::shared_ptr<const Event>> events);

/// A text without machine-unfriendly letters that is free in `taken`: "oil-film-below".
[[nodiscard]] std::string short_name(std::string_view text);

}  // namespace wm::bay
