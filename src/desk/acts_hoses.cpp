#include "desk/acts_hoses.hpp"

#include <fmt/core.h>

#include <cmath>

#include "desk/lookup.hpp"
#include "hose/test_medium.hpp"

namespace wm::desk {
namespace {

Problems below(Problems problems, const std::string& where) {
  for (auto& p : problems) p.path = p.path.empty() ? where : where + "/" + p.path;
  return problems;
}

template <class Q>
quantity::Entered<Q> figure(Q value, const Desk& desk, double resolution_si) {
  return {value, resolution_si,
          quantity::print(value.si, Q::kind, desk.context.units, resolution_si)};
}

/// A hundredth of an inch: what the sheet prints.
constexpr double k_sheet_m = 0.000254;
/// A length to make is in eighths of an inch: three decimals.
constexpr double k_length_m = 0.0000254;

/// Where it goes: as said, or where its change is.
std::string place_of(const DrawHose& in, const bay::Aircraft& aircraft) {
  if (!in.position.empty()) return in.position;
  const auto change = aircraft.changes.find(in.change);
  return change == aircraft.changes.end() ? std::string{} : change->second.about.position;
}

bay::HoseDrawn as_drawn(const DrawHose& in, const hose::HoseSheetAnswer& answer, const Desk& desk) {
  const auto& shape = answer.shape;
  bay::HoseDrawn out;
  out.aircraft = in.aircraft;
  out.title = in.sheet.title;
  out.change = in.change;
  out.family = in.sheet.family;
  out.size = in.sheet.size;
  out.near_at = in.sheet.near_at;
  out.far_at = in.sheet.far_at;
  out.overall = figure(shape.overall, desk, k_length_m);
  if (in.sheet.overall && !in.sheet.overall->text.empty()) out.overall = *in.sheet.overall;
  out.tightest_radius = figure(shape.tightest_radius, desk, k_sheet_m);
  out.least_radius = figure(answer.length.least_radius, desk, k_sheet_m);
  if (shape.clocking) {
    out.clocking = figure(*shape.clocking, desk, quantity::degrees(1).si);
    out.clocking_read = shape.clocking_read;
  }
  out.binding = answer.length.binding;
  out.lines = answer.lines;
  out.working_pressure = in.sheet.working_pressure;
  out.proof_pressure = in.sheet.proof_pressure;
  out.sheet = desk.write(describe::type_of<hose::HoseSheetInput>(), &in.sheet);
  out.calculation = "hose-sheet";
  out.note = in.note;
  return out;
}

std::string criterion_words(const hose::Criterion& c) {
  return fmt::format("{}: {}{}", c.what, evidence::word(c.verdict),
                     c.reason.empty() ? std::string{} : " (" + c.reason + ")");
}

/// What of the test does not fit the drawing.
std::vector<std::string> differences(const bay::HoseDrawn& drawn,
                                     const hose::ProofTestInput& test) {
  std::vector<std::string> out;
  constexpr double k_eighth_m = 0.003175;
  if (std::abs(drawn.overall.value.si - test.length.value.si) > k_eighth_m) {
    out.push_back(fmt::format("Drawn with an overall length of {}, tested as {}: is it this hose?",
                              drawn.overall.text, test.length.text));
  }
  if (!drawn.size.empty() && !test.size.empty() && drawn.size != test.size) {
    out.push_back(
        fmt::format("Drawn as size {}, tested as {}: is it this hose?", drawn.size, test.size));
  }
  return out;
}

}  // namespace

Simple draw_hose(const DrawHose& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  Problems problems;
  const auto existing = aircraft.hoses.find(in.id);
  const bool anew = existing != aircraft.hoses.end();
  const auto name =
      anew ? Result<std::string>(in.id) : name_for(aircraft.hoses, in.id, in.sheet.title);
  if (!name) problems.push_back(name.error());
  const auto change = aircraft.changes.find(in.change);
  if (change != aircraft.changes.end() && change->second.withdrawn)
    problems.push_back(problem(Kind::refused, "change", "this change was withdrawn",
                               "Draw it for another change, or for none."));
  const auto answer = hose::hose_sheet(in.sheet, desk.context);
  if (!answer) {
    auto refused = below(answer.error(), "sheet");
    problems.insert(problems.end(), refused.begin(), refused.end());
  }
  if (!problems.empty()) return Fail(std::move(problems));
  auto drawn = as_drawn(in, *answer, desk);
  drawn.id = *name;
  drawn.position = place_of(in, aircraft);
  Said said{fmt::format("Hose {}: {}, overall {}.", anew ? "drawn anew" : "drawn", drawn.title,
                        drawn.overall.text),
            drawn.id, answer->lines};
  if (anew && !existing->second.proofs.empty())
    said.notes.emplace_back("Its proof test was of the drawing before: prove it again.");
  return Outcome<Said>{{{std::move(drawn), {}}}, std::move(said)};
}

Checked<Outcome<Proved>> prove_hose(const ProveHose& in, const Desk& desk) {
  const auto& aircraft = aircraft_of(desk.state, in.aircraft);
  const auto& drawn = aircraft.hoses.find(in.hose)->second.about;
  Problems problems;
  if (in.assembled && *in.assembled > desk.day())
    problems.push_back({Kind::out_of_bounds,
                        "assembled",
                        "that day is after the proof test",
                        "the day of the test or earlier",
                        quantity::print_date(desk.day()),
                        {},
                        {}});
  const auto answer = hose::proof_test(in.test, desk.context);
  if (!answer) {
    auto refused = below(answer.error(), "test");
    problems.insert(problems.end(), refused.begin(), refused.end());
  }
  if (!problems.empty()) return Fail(std::move(problems));
  bay::HoseProved proved;
  proved.aircraft = in.aircraft;
  proved.hose = in.hose;
  proved.part = in.part;
  proved.assembled = in.assembled;
  proved.verdict = answer->verdict;
  proved.words = answer->in_words;
  proved.test_pressure = answer->test_pressure;
  proved.pressure_from = answer->pressure_from;
  proved.held = answer->hold_time;
  proved.medium = hose::words(in.test.medium);
  for (const auto& c : answer->criteria) proved.criteria.push_back(criterion_words(c));
  proved.test = desk.write(describe::type_of<hose::ProofTestInput>(), &in.test);
  proved.calculation = "proof-test";
  proved.by = in.by.empty() ? desk.author : in.by;
  proved.note = in.note;
  Proved told{answer->verdict, fmt::format("Proof test of {} kept: {}.", drawn.title, proved.words),
              in.hose, differences(drawn, in.test)};
  told.notes.insert(told.notes.end(), answer->do_next.begin(), answer->do_next.end());
  return Outcome<Proved>{{{std::move(proved), {}}}, std::move(told)};
}

std::string_view describe(describe::Fields<DrawHose>& f) {
  f.has<&DrawHose::aircraft>("aircraft", "Aircraft").needed("pebblewing").refers_to("aircraft");
  f.has<&DrawHose::id>("id", "Short name").help("Made for you when left empty");
  f.has<&DrawHose::position>("position", "Position")
      .example("oil-hose-upper")
      .refers_to("position")
      .help("Left empty: that of its change.");
  f.has<&DrawHose::change>("change", "For this change").example("change-1").refers_to("change");
  f.has<&DrawHose::sheet>("sheet", "The hose sheet")
      .needed(
          R"({"title": "oil cooler, pressure side", "near_end": {"seat": {"x": "0 in", "y": "0 in", "z": "0 in"}, "leaves": {"x": 1}, "rigid": "1.5 in"}, "far_end": {"seat": {"x": "14 in", "y": "13 in", "z": "4 in"}, "leaves": {"y": -1}, "rigid": "1.5 in"}, "outside_diameter": "0.77 in", "least_radius": "4.63 in"})");
  f.has<&DrawHose::note>("note", "Note");
  return "draw-hose";
}

std::string_view describe(describe::Fields<ProveHose>& f) {
  f.has<&ProveHose::aircraft>("aircraft", "Aircraft").needed("pebblewing").refers_to("aircraft");
  f.has<&ProveHose::hose>("hose", "Hose").needed("hose-1").refers_to("hose");
  f.has<&ProveHose::part>("part", "Registered as").refers_to("part");
  f.has<&ProveHose::assembled>("assembled", "Assembled on").example("2026-11-20");
  f.has<&ProveHose::test>("test", "The proof test")
      .needed(
          R"({"family": "medium-elastomer", "size": "-8", "bore": "13/32 in", "length": "24 in"})");
  f.has<&ProveHose::by>("by", "By").help("Left empty: who enters it.");
  f.has<&ProveHose::note>("note", "Note");
  return "prove-hose";
}

std::string_view describe(describe::Fields<Proved>& f) {
  f.has<&Proved::verdict>("verdict", "Verdict");
  f.has<&Proved::words>("words", "In words");
  f.has<&Proved::id>("id", "Hose");
  f.has<&Proved::notes>("notes", "What to know besides");
  return "proved";
}

}  // namespace wm::desk
