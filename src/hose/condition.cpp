#include "hose/condition.hpp"

#include <fmt/core.h>

#include <algorithm>

#include "hose/detail/problem.hpp"

namespace wm::hose {
namespace {

using evidence::Verdict;

constexpr const char* k_al = "AL0907 page 54";
constexpr const char* k_al_h30 = "AL0907 page 54; FAA-H-8083-30 page 7-18";
constexpr const char* k_n14018 = "NAVEDTRA 14018 page 5-26";
constexpr const char* k_n14315 = "NAVEDTRA 14315 page 10-19 region";
/// The figures for wires are given for hose from here on.
constexpr quantity::PressureGauge k_wires_from = quantity::psi_gauge(500);

class Check {
 public:
  explicit Check(const HoseConditionInput& in) : in_(in), ptfe_(in.kind == HoseKind::ptfe) {}

  HoseConditionAnswer run() {
    leak();
    wires();
    elastomer_only("cover or braid parted from the tube", in_.cover_parted, k_al_h30);
    elastomer_only("cracks, hardening or stiffness", in_.cracked, k_al_h30);
    elastomer_only("cold flow: a deep lasting dent or crack at a clamp", in_.cold_flow, k_al_h30);
    elastomer_only("weather check deep or wide enough to show fabric", in_.fabric_shows, k_al);
    add(must_not_be("abrasion, kink, bulge or sharp bend", in_.abraded_or_kinked, k_al));
    add(must_not_be("blisters, bubbles, flared or frayed braid", in_.blistered, k_n14018));
    add(must_not_be("rust through the braid", in_.rust, k_n14018));
    sleeve();
    twist();
    add(must_not_be("end fitting moved off its mark", in_.end_moved,
                    "hoses notes, sections 7.3 and 10; TM 1-1500-204-23-2 fig. 4-50A step 10"));
    add(must_not_be("swaged end failed: the whole assembly is replaced", in_.swage_failed,
                    "FAA-H-8083-30 page 7-18"));
    nut();
    finish();
    return std::move(out_);
  }

 private:
  void add(Criterion c) { out_.criteria.push_back(std::move(c)); }
  void line(std::string what, Verdict verdict, std::string reason, std::string source) {
    add({std::move(what), verdict, std::move(reason), std::move(source), true});
  }
  void not_looked(std::string what, std::string source) {
    line(std::move(what), Verdict::not_tested, "nobody has looked", std::move(source));
  }

  void leak() {
    const char* const what = "leak, standing still";
    if (!in_.drops_per_hour) return not_looked(what, k_al);
    const double most = ptfe_ ? k_drops_per_hour_ptfe : 0.0;
    const double drops = *in_.drops_per_hour;
    line(what, drops > most ? Verdict::does_not_conform : Verdict::conforms,
         fmt::format("{:.6g} drops an hour; {}", drops,
                     ptfe_ ? "reject over 1" : "reject any leak of an elastomer hose"),
         k_al);
  }

  void count(const char* what, const std::optional<std::int64_t>& wires, std::int64_t reject) {
    if (!wires) return not_looked(what, k_al);
    line(what, *wires >= reject ? Verdict::does_not_conform : Verdict::conforms,
         fmt::format("{} broken; reject {} or more", *wires, reject), k_al);
  }

  void wires() {
    count("broken wires in one plait", in_.wires_in_one_plait, k_wires_in_plait);
    count("broken wires in one foot", in_.wires_per_foot,
          ptfe_ ? k_wires_per_foot_ptfe : k_wires_per_foot_elastomer);
    add(must_not_be(ptfe_ ? "any broken wire where the hose is kinked"
                          : "any broken wire where a kink is suspected",
                    in_.wire_where_kink, k_al));
    if (!in_.operating || in_.operating->value < k_wires_from) {
      out_.notes.emplace_back(
          "the figures for broken wires are given for hose of 500 psi operating pressure and over; "
          "below that, or where it is not known, they are used here all the same");
    }
  }

  /// The source names it for elastomer hose only; seen on PTFE hose it is for the maker to judge.
  void elastomer_only(std::string what, Seen seen, const char* source) {
    if (!ptfe_) return add(must_not_be(std::move(what), seen, source));
    if (seen != Seen::yes) return;
    line(what, Verdict::undecided, "seen; the source names it for elastomer hose only", source);
    out_.do_next.push_back(fmt::format("ask the maker about: {}", what));
  }

  void sleeve() {
    const char* const what = "fire sleeve worn through, torn, cut or oil soaked";
    switch (in_.sleeve) {
      case SleeveState::not_looked:
        return not_looked(what, k_n14315);
      case SleeveState::no_sleeve:
        add({what, Verdict::not_tested, "there is none", k_n14315, false});
        out_.notes.emplace_back(
            "no fire sleeve: elastomer hose ahead of the firewall needs one (MIL-DTL-8794F 6.1)");
        return;
      case SleeveState::whole:
        return line(what, Verdict::conforms, "whole and dry", k_n14315);
      case SleeveState::worn_through:
        return reject_sleeve(what, "worn through");
      case SleeveState::torn:
        return reject_sleeve(what, "torn");
      case SleeveState::cut:
        return reject_sleeve(what, "cut");
      case SleeveState::oil_soaked:
        return reject_sleeve(what, "oil soaked");
    }
  }
  void reject_sleeve(const char* what, const char* state) {
    line(what, Verdict::does_not_conform, fmt::format("{}: replace", state), k_n14315);
  }

  void twist() {
    const char* const what = "twist";
    if (in_.twisted == Seen::not_looked) return not_looked(what, k_n14315);
    if (in_.twisted == Seen::no) return line(what, Verdict::conforms, "none", k_n14315);
    if (in_.abraded_or_kinked == Seen::yes) {
      return line(what, Verdict::does_not_conform, "twisted and kinked: replace", k_n14315);
    }
    line(what, Verdict::undecided, "twisted", k_n14315);
    out_.do_next.emplace_back(
        "relieve the twist, then look again for kinks and broken wires; kinked: replace");
  }

  void nut() {
    const char* const what = "leak at a swivel nut";
    switch (in_.nut) {
      case NutLeak::not_looked:
        return not_looked(what, k_n14315);
      case NutLeak::dry:
        return line(what, Verdict::conforms, "dry", k_n14315);
      case NutLeak::leaks:
        line(what, Verdict::undecided, "leaks, not yet put right", k_n14315);
        out_.do_next.emplace_back(
            "with no pressure in the line check the torque, clean the seat, torque again, look "
            "again; still leaks: replace");
        return;
      case NutLeak::still_leaks:
        return line(what, Verdict::does_not_conform,
                    "still leaks after its seat was cleaned and torqued: replace", k_n14315);
    }
  }

  void finish() {
    out_.verdict = over_all(out_.criteria);
    std::string rejected;
    bool looked = false;
    for (const Criterion& c : out_.criteria) {
      looked = looked || (c.counts && c.verdict != Verdict::not_tested);
      if (c.counts && c.verdict == Verdict::not_tested) out_.not_looked_at.push_back(c.what);
      if (c.verdict == Verdict::does_not_conform) {
        rejected += fmt::format("{}{} ({})", rejected.empty() ? "" : "; ", c.what, c.source);
      }
    }
    switch (out_.verdict) {
      case Verdict::does_not_conform:
        out_.in_words = "reject: " + rejected;
        break;
      case Verdict::undecided:
        out_.in_words = "undecided: see what to do next";
        break;
      case Verdict::conforms:
        out_.in_words = "everything was looked at, and nothing speaks for rejecting it";
        break;
      case Verdict::not_tested:
        out_.in_words = looked ? "not tested: what was looked at speaks against nothing, but not "
                                 "everything was looked at"
                               : "not tested: nothing was looked at";
        break;
    }
    if (!out_.not_looked_at.empty()) {
      out_.in_words += fmt::format("; {} of {} not looked at", out_.not_looked_at.size(),
                                   std::count_if(out_.criteria.begin(), out_.criteria.end(),
                                                 [](const Criterion& c) { return c.counts; }));
    }
    if (ptfe_) {
      out_.notes.emplace_back(
          "a PTFE liner dented inwards hides under its braid: when the hose is off, look through "
          "the bore (common practice, no source)");
    }
  }

  const HoseConditionInput& in_;
  bool ptfe_;
  HoseConditionAnswer out_;
};

}  // namespace

Checked<HoseConditionAnswer> hose_condition(const HoseConditionInput& in,
                                            const describe::Context& /*context*/) {
  if (in.kind == HoseKind::not_said) {
    return Fail(Problems{detail::problem("kind", Kind::missing,
                                         "whether it is rubber or PTFE lined is not said",
                                         "elastomer or ptfe", "elastomer")});
  }
  return Check(in).run();
}

}  // namespace wm::hose
