// Hoses as drawn and proved, for the Work page and for a page of their own.
#include <fmt/core.h>

#include <algorithm>

#include "desk/lookup.hpp"
#include "desk/views.hpp"

namespace wm::desk {
namespace {

std::string text_of(const auto& entered) { return entered ? entered->text : std::string{}; }

ProofLine proof_line(const bay::HoseRecord::Proof& proof, const bay::HoseRecord& hose) {
  const auto& about = proof.about;
  ProofLine out;
  out.day = quantity::print_date(proof.day);
  out.verdict = evidence::word(about.verdict);
  out.words = about.words;
  out.pressure = about.test_pressure.text;
  out.pressure_from = about.pressure_from;
  out.held = about.held.text;
  out.medium = about.medium;
  out.by = about.by;
  out.part = about.part;
  if (about.assembled) out.assembled = quantity::print_date(*about.assembled);
  out.note = about.note;
  out.criteria = about.criteria;
  out.test = about.test;
  out.of_this_drawing = proof.sequence > hose.sequence;
  return out;
}

}  // namespace

HoseLine hose_line(const bay::HoseRecord& hose) {
  const auto& about = hose.about;
  HoseLine out;
  out.id = about.id;
  out.title = about.title;
  out.position = about.position;
  out.change = about.change;
  out.family = about.family;
  out.size = about.size;
  out.near_at = about.near_at;
  out.far_at = about.far_at;
  out.overall = about.overall.text;
  out.tightest_radius = about.tightest_radius.text;
  out.least_radius = about.least_radius.text;
  out.clocking = text_of(about.clocking);
  out.binding = about.binding;
  out.drawn = quantity::print_date(hose.day);
  out.event = hose.event;
  out.drawn_since = hose.drawn_since();
  const auto* proof = hose.latest();
  out.verdict = proof == nullptr ? std::string("not-tested")
                                 : std::string(evidence::word(proof->about.verdict));
  if (proof != nullptr)
    out.proof =
        fmt::format("{}, {}, {}, {}", proof->about.test_pressure.text, proof->about.held.text,
                    proof->about.medium, quantity::print_date(proof->day));
  return out;
}

Checked<HosePage> hose_page(const OfHose& in, const bay::State& state, const Context&) {
  const auto& aircraft = aircraft_of(state, in.aircraft);
  const auto& hose = aircraft.hoses.find(in.hose)->second;
  HosePage out;
  out.hose = hose_line(hose);
  out.clocking_read = hose.about.clocking_read;
  out.working_pressure = text_of(hose.about.working_pressure);
  out.proof_pressure = text_of(hose.about.proof_pressure);
  out.note = hose.about.note;
  out.lines = hose.about.lines;
  out.sheet = hose.about.sheet;
  std::ranges::transform(hose.proofs, std::back_inserter(out.proofs),
                         [&](const auto& proof) { return proof_line(proof, hose); });
  std::ranges::reverse(out.proofs);
  return out;
}

std::string_view describe(describe::Fields<OfHose>& f) {
  f.has<&OfHose::aircraft>("aircraft", "Aircraft").needed("pebblewing").refers_to("aircraft");
  f.has<&OfHose::hose>("hose", "Hose").needed("hose-1").refers_to("hose");
  return "of-hose";
}

std::string_view describe(describe::Fields<HoseLine>& f) {
  using L = HoseLine;
  f.has<&L::id>("id", "Id");
  f.has<&L::title>("title", "Title");
  f.has<&L::position>("position", "Position");
  f.has<&L::change>("change", "Change");
  f.has<&L::family>("family", "Family");
  f.has<&L::size>("size", "Dash number");
  f.has<&L::near_at>("near_at", "Near end at");
  f.has<&L::far_at>("far_at", "Far end at");
  f.has<&L::overall>("overall", "Overall length");
  f.has<&L::tightest_radius>("tightest_radius", "Tightest radius");
  f.has<&L::least_radius>("least_radius", "Least radius permitted");
  f.has<&L::clocking>("clocking", "Clocking");
  f.has<&L::binding>("binding", "What bounds its length");
  f.has<&L::drawn>("drawn", "Drawn on");
  f.has<&L::verdict>("verdict", "Verdict of the proof test");
  f.has<&L::proof>("proof", "Proof test");
  f.has<&L::drawn_since>("drawn_since", "Drawn anew since");
  f.has<&L::event>("event", "Event");
  return "hose-line";
}

std::string_view describe(describe::Fields<ProofLine>& f) {
  using L = ProofLine;
  f.has<&L::day>("day", "Day");
  f.has<&L::verdict>("verdict", "Verdict");
  f.has<&L::words>("words", "In words");
  f.has<&L::pressure>("pressure", "Test pressure");
  f.has<&L::pressure_from>("pressure_from", "What set it");
  f.has<&L::held>("held", "Held for");
  f.has<&L::medium>("medium", "Tested with");
  f.has<&L::by>("by", "By");
  f.has<&L::part>("part", "Registered as");
  f.has<&L::assembled>("assembled", "Assembled on");
  f.has<&L::note>("note", "Note");
  f.has<&L::criteria>("criteria", "What was judged");
  f.has<&L::test>("test", "What was entered");
  f.has<&L::of_this_drawing>("of_this_drawing", "Of the present drawing");
  return "proof-line";
}

std::string_view describe(describe::Fields<HosePage>& f) {
  using P = HosePage;
  f.has<&P::hose>("hose", "Hose");
  f.has<&P::clocking_read>("clocking_read", "How the clocking is read");
  f.has<&P::working_pressure>("working_pressure", "Working pressure");
  f.has<&P::proof_pressure>("proof_pressure", "Proof pressure");
  f.has<&P::note>("note", "Note");
  f.has<&P::lines>("lines", "In words");
  f.has<&P::sheet>("sheet", "What it was drawn from");
  f.has<&P::proofs>("proofs", "Proof tests");
  return "hose-page";
}

}  // namespace wm::desk
