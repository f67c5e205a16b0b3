#include "hose/incoming.hpp"

#include <fmt/core.h>

#include <cmath>
#include <numbers>

#include "hose/detail/problem.hpp"
#include "hose/proof.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using detail::problem;
using evidence::Verdict;
using quantity::pencil;
using quantity::significant;

constexpr double k_degree = std::numbers::pi / 180.0;
constexpr double k_liner_current_a = 6e-6;
constexpr double k_sleeve_advice_m = 0.0254 / 8.0;
constexpr std::string_view k_order = "the order";
constexpr std::string_view k_liner_source =
    "6 uA at 1000 V d.c. on 18 in: secondary, unconfirmed; advice only";

class Check {
 public:
  Check(const HoseIncomingInput& in, const HoseOrderAnswer& order, const describe::Context& context)
      : in_(in), order_(order), context_(context) {}

  HoseIncomingAnswer run() {
    length();
    clocking();
    see();
    tag();
    sleeve();
    liner();
    over();
    return std::move(out_);
  }

 private:
  void add(Criterion c) { out_.lines.push_back(std::move(c)); }
  void add_seen(std::string what, Seen seen, std::string_view source) {
    add(must_be(std::move(what), seen, std::string(source)));
  }

  void doubt(const BenchReading& r, const char* tool) {
    if (r.stated) return;
    out_.notes.push_back(
        fmt::format("the {}'s uncertainty was not given: only its last digit is counted, and the "
                    "true doubt is larger",
                    tool));
  }

  void length() {
    Criterion c;
    c.what = "overall length";
    c.source = k_order;
    const auto& unit = quantity::typed_unit(in_.ordered.overall, context_.units);
    const double want = in_.ordered.overall.value.si;
    const double tolerance = order_.length_tolerance.value.si;
    if (!in_.overall) {
      c.reason = fmt::format("not measured; ordered {} +- {}", pencil(want, unit),
                             pencil(tolerance, unit));
      return add(std::move(c));
    }
    const BenchReading r = reading_of(*in_.overall);
    doubt(r, "tape");
    c.verdict = guarded(r, {want - tolerance, want + tolerance});
    c.reason = fmt::format("{} +- {}; ordered {} +- {}", pencil(r.value, unit),
                           significant(quantity::in_unit(r.expanded(), unit), 2),
                           pencil(want, unit), pencil(tolerance, unit));
    out_.working.push_back(
        fmt::format("length conforms from {} to {}: the tolerance, less U of the tape at both ends",
                    pencil(want - tolerance + r.expanded(), unit),
                    pencil(want + tolerance - r.expanded(), unit)));
    if (c.verdict == Verdict::undecided) next("measure the length again with a finer tape");
    add(std::move(c));
  }

  void clocking() {
    if (!in_.ordered.clocking) return;
    Criterion c;
    c.what = "clocking";
    c.source = k_order;
    const double want = in_.ordered.clocking->value.si;
    const double tolerance = order_.clocking_tolerance->si;
    if (!in_.clocking) {
      c.reason = fmt::format("not measured; ordered {} +- {} degrees", pencil(want / k_degree),
                             pencil(tolerance / k_degree));
      return add(std::move(c));
    }
    BenchReading r = reading_of(*in_.clocking);
    doubt(r, "protractor");
    const double read = r.value;
    r.value = turned(want, read);
    c.verdict = guarded(r, {-tolerance, tolerance});
    c.reason = fmt::format("{} +- {} degrees; ordered {} +- {}", pencil(read / k_degree),
                           significant(r.expanded() / k_degree, 2), pencil(want / k_degree),
                           pencil(tolerance / k_degree));
    out_.working.push_back(
        fmt::format("clocking off by {} degrees (round the circle, the short way)",
                    pencil(r.value / k_degree)));
    if (c.verdict == Verdict::does_not_conform && mirrored(read, r, tolerance)) {
      out_.notes.emplace_back(
          "the angle would agree read the other way round: look from the near end, near elbow at "
          "six "
          "o'clock, counter-clockwise; if it stays so, it was made the wrong way round");
    }
    if (c.verdict == Verdict::undecided) next("measure the clocking again with a finer protractor");
    add(std::move(c));
  }

  bool mirrored(double read, const BenchReading& r, double tolerance) const {
    return std::abs(turned(in_.ordered.clocking->value.si, -read)) <= tolerance + r.expanded();
  }

  void see() {
    add_seen("near end: form, thread and seat as ordered", in_.near_end_as_ordered, k_order);
    add_seen("far end: form, thread and seat as ordered", in_.far_end_as_ordered, k_order);
    add_seen("bore ball falls through", in_.ball_passes, "MIL-DTL-8789F 4.9.2");
    add_seen("no dent, kink, cut or loose braid", in_.undamaged, "AL0907 page 54");
    add_seen("lay line straight", in_.layline_straight, "AL0907 page 58");
    add_seen("both ends capped", in_.capped, "TM 1-1500-204-23-2 page 4-47");
    add_seen("cure and assembly date there", in_.cure_and_assembly_date,
             "NAVEDTRA 14018 pages 5-3, 5-10");
  }

  void tag() {
    add_seen("tag there", in_.tag_there, "TM 1-1500-204-23-2");
    add_seen("tag: date of the proof test", in_.tag_test_date, "TM 1-1500-204-23-2");
    Criterion c;
    c.what = "tag: proof pressure";
    c.source = k_order;
    const auto& unit = quantity::typed_unit(order_.proof_pressure, context_.units);
    const double want = order_.proof_pressure.value.si;
    if (!in_.tag_proof) {
      c.reason = fmt::format("not read; ordered {}", pencil(want, unit));
      return add(std::move(c));
    }
    const double got = in_.tag_proof->value.si;
    const bool same = std::abs(got - want) <= 1e-6 * want + in_.tag_proof->resolution_si / 2.0;
    c.verdict = same ? Verdict::conforms : Verdict::does_not_conform;
    c.reason = fmt::format("{}; ordered {}{}", pencil(got, unit), pencil(want, unit),
                           same         ? ""
                           : got > want ? ": more than asked for; ask whether it was within the "
                                          "hose's proof pressure, which is a maximum"
                                        : ": less than asked for");
    add(std::move(c));
  }

  void sleeve() {
    if (in_.ordered.sleeve == FireSleeve::none) return;
    sleeve_at("near", in_.sleeve_near);
    sleeve_at("far", in_.sleeve_far);
  }

  void sleeve_at(const char* which,
                 const std::optional<quantity::Measured<quantity::Length>>& measured) {
    Criterion c;
    c.what = fmt::format("sleeve past the socket, {} end", which);
    const auto& ordered = in_.ordered.sleeve_past_socket;
    c.counts = ordered.has_value();
    c.source = ordered ? std::string(k_order) : "about 1/8 in: secondary; advice only";
    const double least = ordered ? ordered->value.si : k_sleeve_advice_m;
    const auto& unit = measured  ? quantity::typed_unit(*measured, context_.units)
                       : ordered ? quantity::typed_unit(*ordered, context_.units)
                                 : quantity::default_unit(quantity::KindOf::length, context_.units);
    if (!measured) {
      c.reason = fmt::format("not measured; at least {}", pencil(least, unit));
      return add(std::move(c));
    }
    const BenchReading r = reading_of(*measured);
    c.verdict = guarded(r, {least, std::nullopt});
    c.reason =
        fmt::format("{} +- {}; at least {}", pencil(r.value, unit),
                    significant(quantity::in_unit(r.expanded(), unit), 2), pencil(least, unit));
    add(std::move(c));
  }

  void liner() {
    if (!in_.liner_current) {
      if (in_.ordered.liner == Liner::ptfe_conductive && is_fuel(in_.ordered.carries)) {
        out_.notes.emplace_back(
            "that the liner conducts was not measured: ask the maker for it in writing");
      }
      return;
    }
    Criterion c;
    c.what = "liner conducts";
    c.counts = false;
    c.source = k_liner_source;
    const BenchReading r = reading_of(*in_.liner_current);
    c.verdict = guarded(r, {k_liner_current_a, std::nullopt});
    c.reason = fmt::format("{} +- {} uA, at least 6 uA", significant(r.value * 1e6, 3),
                           significant(r.expanded() * 1e6, 2));
    add(std::move(c));
  }

  void next(std::string text) { out_.do_next.push_back(std::move(text)); }

  void over() {
    out_.verdict = over_all(out_.lines);
    out_.in_words = std::string(evidence::words(out_.verdict));
    std::string open;
    std::string wrong;
    for (const Criterion& c : out_.lines) {
      if (!c.counts) continue;
      std::string* list = c.verdict == Verdict::not_tested         ? &open
                          : c.verdict == Verdict::does_not_conform ? &wrong
                                                                   : nullptr;
      if (list != nullptr) *list += (list->empty() ? "" : "; ") + c.what;
    }
    if (!wrong.empty()) {
      out_.do_next.insert(out_.do_next.begin(),
                          "do not fit it; tell the shop, or correct the order: " + wrong);
    }
    if (!open.empty()) next("still to be looked at: " + open);
    out_.notes.emplace_back(
        "it is proof tested again before it is fitted, a factory-made one too (AL0907 page 58)");
  }

  const HoseIncomingInput& in_;
  const HoseOrderAnswer& order_;
  const describe::Context& context_;
  HoseIncomingAnswer out_;
};

}  // namespace

Checked<HoseIncomingAnswer> hose_incoming(const HoseIncomingInput& input,
                                          const describe::Context& context) {
  Problems problems;
  const auto order = hose_order(input.ordered, context);
  if (!order) {
    for (Problem p : order.error()) {
      p.path = "ordered/" + p.path;
      problems.push_back(std::move(p));
    }
  }
  if (input.clocking && !input.ordered.clocking) {
    problems.push_back(problem("clocking", Kind::conflict, "no clocking was ordered",
                               "a clocking in the order, or none here"));
  }
  if (input.ordered.sleeve == FireSleeve::none && (input.sleeve_near || input.sleeve_far)) {
    problems.push_back(problem(input.sleeve_near ? "sleeve_near" : "sleeve_far", Kind::conflict,
                               "no fire sleeve was ordered",
                               "a sleeve in the order, or none here"));
  }
  if (!problems.empty()) return Fail(std::move(problems));
  return Check(input, *order, context).run();
}

std::string_view describe(describe::Fields<HoseIncomingInput>& f) {
  using quantity::degrees;
  using quantity::feet;
  using quantity::inches;
  using I = HoseIncomingInput;
  f.has<&I::ordered>("ordered", "As ordered")
      .needed(R"({"specification": "PTFE, steel braid, MIL-H-25579 assembly",
                  "family": "ptfe-swivel", "size": "-8", "liner": "ptfe-conductive",
                  "carries": "oil",
                  "near_end": {"form": "elbow-90", "thread": "3/4-16, 37 degree, swivel nut"},
                  "far_end": {"form": "elbow-45", "thread": "3/4-16, 37 degree, swivel nut"},
                  "overall": "16 1/2 in", "length_tolerance": "0.188 in", "clocking": "50 deg",
                  "sleeve": "integral", "sleeve_past_socket": "1/8 in"})");
  f.has<&I::overall>("overall", "Overall length, measured")
      .example("16.55 in +- 0.03 in")
      .above(inches(0))
      .at_most(feet(80));
  f.has<&I::clocking>("clocking", "Clocking, measured")
      .example("51.0 deg +- 1.0 deg")
      .between(degrees(-360), degrees(360));
  f.has<&I::near_end_as_ordered>("near_end_as_ordered", "Near end: form, thread, seat as ordered")
      .example("yes");
  f.has<&I::far_end_as_ordered>("far_end_as_ordered", "Far end: form, thread, seat as ordered")
      .example("yes");
  f.has<&I::ball_passes>("ball_passes", "Bore ball falls through by itself")
      .example("yes")
      .help("0.001 to 0.002 in under the least bore, no more ounces than the dash number.");
  f.has<&I::tag_there>("tag_there", "Tag there").example("yes");
  f.has<&I::tag_test_date>("tag_test_date", "Tag: date of the proof test").example("yes");
  f.has<&I::tag_proof>("tag_proof", "Tag: proof pressure")
      .example("3000 psi")
      .above(quantity::psi_gauge(0))
      .at_most(quantity::psi_gauge(30000));
  f.has<&I::cure_and_assembly_date>("cure_and_assembly_date", "Cure and assembly date there")
      .example("yes");
  f.has<&I::capped>("capped", "Both ends capped").example("yes");
  f.has<&I::layline_straight>("layline_straight", "Lay line straight").example("yes");
  f.has<&I::undamaged>("undamaged", "No dent, kink, cut or loose braid").example("yes");
  f.has<&I::sleeve_near>("sleeve_near", "Sleeve past the socket, near end")
      .example("0.16 in +- 0.02 in")
      .between(inches(-6), inches(6));
  f.has<&I::sleeve_far>("sleeve_far", "Sleeve past the socket, far end")
      .example("0.15 in +- 0.02 in")
      .between(inches(-6), inches(6));
  f.has<&I::liner_current>("liner_current", "Current through the liner, 1000 V d.c., 18 in")
      .between(quantity::amperes(0), quantity::amperes(1))
      .help("Only where somebody equipped for high tension has measured it.");
  return "hose-incoming-input";
}

std::string_view describe(describe::Fields<HoseIncomingAnswer>& f) {
  using A = HoseIncomingAnswer;
  f.has<&A::verdict>("verdict", "Verdict");
  f.has<&A::in_words>("in_words", "In words");
  f.has<&A::do_next>("do_next", "What to do next");
  f.has<&A::lines>("lines", "Line by line");
  f.has<&A::notes>("notes", "Mind");
  f.has<&A::working>("working", "The sum, step by step");
  return "hose-incoming-answer";
}

}  // namespace wm::hose
