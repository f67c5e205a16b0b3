// The work card of a hose that is made on the bench, in the order of the trade.
#include <fmt/core.h>

#include "hose/cut.hpp"
#include "hose/order.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using quantity::inches;
using quantity::pencil;

constexpr std::string_view k_practice = "common practice, no source";

class Card {
 public:
  Card(const AssemblyToMake& make, const HoseCutInput& all, const AssemblyCut& cut,
       const describe::Context& context)
      : make_(make),
        all_(all),
        cut_(cut),
        context_(context),
        unit_(quantity::typed_unit(cut.overall, context.units)),
        ptfe_(make.making == Making::ptfe_sleeved) {}

  std::vector<WorkStep> run() {
    before();
    cutting();
    end("near end");
    sleeve_on();
    end("far end");
    if (both_elbows()) angle();
    inside();
    clean("before the test");
    proof();
    again();
    clean("after the test");
    sleeve_off_to_on();
    finish();
    return std::move(steps_);
  }

 private:
  void step(std::string text, std::string limit, std::string_view source, std::string box) {
    steps_.push_back({std::move(text), std::move(limit), std::string(source), std::move(box)});
  }
  std::string say(const EnteredLength& l) const { return pencil(l.value.si, unit_); }
  bool both_elbows() const { return is_elbow(make_.near_end.form) && is_elbow(make_.far_end.form); }

  void before() {
    if (ptfe_) {
      step(
          "Hose is new (fittings never on used PTFE hose) and hose and fittings are of one "
          "specification",
          "", "TM 1-1500-204-23-2", "initials");
    } else {
      step("Hose is within its age: read the cure date. Nipples and sockets are of one maker",
           "age: hose-age", "NAVEDTRA 14018 page 5-4; TM 1-1500-204-23-2", "cure date");
    }
  }

  void cutting() {
    std::string advice;
    for (const std::string& note : cut_.notes) {
      if (note.starts_with("advice: hose of this length")) advice = note.substr(8);
    }
    step(fmt::format("Measure and mark the cut length: {}", say(cut_.cut_length)), advice,
         "cut length = overall - cut-off of each end (NAVEDTRA 14018 page 5-12)",
         fmt::format("cut length, {}", unit_.symbol));
    step(ptfe_ ? "Tape at the cut, cut square, tape off after"
               : "Cut square with a fine saw or wheel; tape at the cut on a wire-braid cover",
         "out of square, hose of 3/4 in and less inside: 0.063 in; of more: 0.125 in (advice)",
         "NAVEDTRA 14018 page 5-12; TM 1-1500-204-23-2; squareness: IP-2 hose handbook (2003), "
         "secondary",
         "out of square");
    step("Deburr: no loose wire or thread, no nick in the tube", "", k_practice, "initials");
    step("Blow out with filtered air", "", "NAVEDTRA 14315 page 10-11; TM 1-1500-204-23-2",
         "initials");
    if (ptfe_) {
      step(
          "Slip both sockets on the hose, work the braid apart, size the tube on the nipple, put "
          "the small sleeve on the tube",
          "", "TM 1-1500-204-23-2", "initials");
    }
  }

  void end(const std::string& which) {
    if (!ptfe_) {
      step(fmt::format("{}: screw the hose into the socket counter-clockwise till it bottoms, back "
                       "off 1/4 turn",
                       which),
           "", "NAVEDTRA 14315 page 10-11; TM 1-1500-204-23-2", "initials");
    }
    step(fmt::format("{}: draw a line on the hose at the socket's mouth, before the nipple goes in",
                     which),
         "", "TM 1-1500-204-23-2 fig. 4-50A step 3", "initials");
    if (ptfe_) {
      step(fmt::format("{}: nipple in and tightened; by hand no mandrel is needed", which), "",
           "TM 1-1500-204-23-2", "initials");
    } else {
      step(fmt::format(
               "{}: oil bore and threads (hydraulic fluid or SAE 30), nipple on a mandrel or "
               "a mating adapter, drive it in clockwise",
               which),
           "", "NAVEDTRA 14315 page 10-11; TM 1-1500-204-23-2", "initials");
    }
    if (both_elbows()) {
      step(fmt::format("{}: stop short of the last tightening, the angle is set first", which),
           ptfe_ ? "" : "gap 0.040 in at this point",
           ptfe_ ? "TM 1-1500-204-23-2 page 4-64" : "TM 1-1500-204-23-2 fig. 4-50A step 11",
           "initials");
    } else {
      gap(which);
      push_off(which);
    }
  }

  void sleeve_on() {
    if (!make_.sleeve) return;
    const auto passes = [&](const EndToMake& e) {
      return e.widest && make_.sleeve->inside && e.widest->value <= make_.sleeve->inside->value;
    };
    const bool either = passes(make_.near_end) || passes(make_.far_end);
    step(fmt::format("Cut the fire sleeve to {} and slip it on now, before the far end{}",
                     quantity::print(cut_.sleeve_length->value.si, unit_, 0.01 * unit_.factor),
                     either ? " (an end passes through it, so it may also wait)"
                            : ": it does not go on afterwards, or that is not known"),
         "",
         "sleeve length: derived, hoses notes section 8; its place in the order: common practice",
         fmt::format("sleeve length, {}", unit_.symbol));
  }

  void angle() {
    step(
        fmt::format("Set the clocking: {}. Near elbow at six o'clock, counter-clockwise to the far "
                    "elbow, seen from the near end; then finish tightening{}",
                    make_.clocking ? make_.clocking->text.empty()
                                         ? fmt::format("{:.0f} deg", degrees_of(*make_.clocking))
                                         : make_.clocking->text
                                   : std::string("not entered"),
                    ptfe_ ? "" : "; do not back off to the angle"),
        "field made: within 5 deg up to 36 in, 10 deg above",
        ptfe_ ? "TM 1-1500-204-23-2 page 4-64; tolerance fig. 4-50A step 11(c)"
              : "TM 1-1500-204-23-2 fig. 4-50A step 11; MIL-DTL-83796/5 fig. 3 notes 1 and 5",
        "clocking, deg");
    gap("both ends");
    push_off("both ends");
  }
  static double degrees_of(const quantity::Entered<quantity::Angle>& a) {
    return a.value / quantity::degrees(1);
  }

  void gap(const std::string& which) {
    if (ptfe_) {
      step(fmt::format("{}: gap between nut or hex and socket; less: back the socket off till it "
                       "turns and do it again",
                       which),
           "not under 0.025 in; the most is not in the source: the maker's figure",
           "TM 1-1500-204-23-2 page 4-64", fmt::format("gap {}, in", which));
    } else {
      step(fmt::format("{}: gap between nut or hex and socket; the nut turns freely", which),
           "0.005 to 0.031 in; another document: 0.000 to 0.031 in; high-pressure hose up to 1/16 "
           "in",
           "NAVEDTRA 14315 page 10-11; TM 1-1500-204-23-2 fig. 4-50A; page 4-44",
           fmt::format("gap {}, in", which));
    }
  }

  void push_off(const std::string& which) {
    std::string limit = "none";
    std::string source = "common practice, no source";
    if (!ptfe_) {
      source = "TM 1-1500-204-23-2 fig. 4-50A step 10";
      const std::string& s = make_.size;
      if (s == "-12" || s == "-16" || s == "-20" || s == "-24" || s == "-32") {
        limit = "up to 1/32 in";
      } else if (s != "-3" && s != "-4" && s != "-5" && s != "-6" && s != "-8" && s != "-10") {
        limit = "none for -3 to -10, up to 1/32 in for -12 to -32; this size is not listed";
      }
    }
    step(fmt::format("{}: the hose has not been pushed out of the socket: look at the line", which),
         limit, source, fmt::format("pushed out {}, in", which));
  }

  void inside() {
    step("Look through the bore: no cut, bulge or bridged tube; each nut swivels", "none",
         "TM 1-1500-204-23-2 page 4-44", "initials");
    std::optional<double> bore;
    std::string from = "entered";
    if (make_.least_bore) {
      bore = make_.least_bore->value / inches(1);
    } else if (make_.proof_family == ProofFamily::high_elastomer) {
      bore = table_bore();
      from = "TM 1-1500-204-23-2 table 4-15";
    }
    std::string limit = "falls through by itself";
    if (make_.size.size() > 1 && make_.size.front() == '-') {
      limit += fmt::format("; no more than {} oz", std::string_view(make_.size).substr(1));
    }
    step(bore ? fmt::format("Bore check: a ball of {:.3f} to {:.3f} in (least bore {:.3f} in, {})",
                            *bore - 0.002, *bore - 0.001, *bore, from)
              : std::string("Bore check: a ball 0.001 to 0.002 in under the least bore of the end "
                            "fittings; that bore is not known here: the maker's sheet, or measure"),
         limit, "MIL-DTL-8789F 4.9.2", "ball, in; fell through");
  }
  std::optional<double> table_bore() const {
    const describe::Table* table = context_.table("hose-high-elastomer");
    if (table == nullptr) return std::nullopt;
    const std::size_t last = table->columns.size() - 1;
    if (table->columns[last].key != "bore") return std::nullopt;
    for (const auto& row : table->rows) {
      if (row[0] != make_.size) continue;
      const auto number = quantity::parse_number(row[last]);
      if (number) return *number;
    }
    return std::nullopt;
  }

  void clean(const std::string& when) {
    step(
        fmt::format("Clean {}: solvent (P-D-680 or MIL-PRF-680 type II) or detergent, nylon brush; "
                    "blow dry with filtered, oil-free air or nitrogen{}",
                    when, ptfe_ ? "; never wire-brush a dry PTFE tube" : ""),
        "brush at least 1/16 in over the bore",
        ptfe_ ? "NAVEDTRA 14018 page 5-15; NAVEDTRA 14315 page 10-12; TM 1-1500-204-23-2 page 4-60"
              : "NAVEDTRA 14018 page 5-15; NAVEDTRA 14315 page 10-12",
        "initials");
  }

  void proof() {
    std::string pressure = "pressure by the table of this hose or its maker: see proof-test";
    std::string source = "FAA-H-8083-30 page 7-18; MIL-DTL-8790F 3.7.2";
    if (make_.proof_family != ProofFamily::not_said || make_.makers_proof) {
      const auto limit = proof_limit(
          context_, {make_.proof_family, make_.size, make_.makers_proof, make_.makers_source});
      if (limit) {
        pressure = fmt::format("{} at most", limit->text);
        source = fmt::format("{}; {}", limit->source, source);
      }
    }
    step(fmt::format(
             "Proof test with liquid, never with air: bleed all air, tie the hose down{}. No "
             "leak, no damage, no push-out, no lasting deformation",
             make_.sleeve ? ", hold the sleeve back so that both sockets and lines are seen" : ""),
         pressure, source, "pressure, hold time, finding");
  }

  void again() {
    step(fmt::format("Gap{} again, as before the test", both_elbows() ? " and clocking" : ""),
         "no change", "TM 1-1500-204-23-2 page 4-47", "gap near, far, in");
    step("The line at each socket has not moved", "no movement", "TM 1-1500-204-23-2 fig. 4-50A",
         "initials");
  }

  void sleeve_off_to_on() {
    step(fmt::format("Overall length, hose straight: {}; {}", say(cut_.overall),
                     cut_.measured.empty()
                         ? std::string()
                         : fmt::format("{}; {}", cut_.measured.front(), cut_.measured.back())),
         "tolerance of the drawing or the maker; MIL-DTL-8790F 3.5.4 refers to sheets not seen",
         "MIL-DTL-83796/5 fig. 2 notes 2 to 4 (elbows)",
         fmt::format("overall length, {}", unit_.symbol));
    if (!make_.sleeve) return;
    step(fmt::format(
             "Sleeve over both sockets and {} past each, not touching the nut; seal both ends "
             "(dip or wrap) and band them, or they wick oil and fuel",
             say(all_.sleeve_past_socket)),
         "clear of the nut", "a hose shop's page, secondary", "initials");
  }

  void finish() {
    step("Cap both ends at once", "", "TM 1-1500-204-23-2 page 4-47 (NAS 815 plugs)", "initials");
    step(
        "Tag: date of the test, part number, operating pressure, who; band of 5052-O, 0.020 x 0.75 "
        "in",
        "", "TM 1-1500-204-23-2", "tag text");
  }

  const AssemblyToMake& make_;
  const HoseCutInput& all_;
  const AssemblyCut& cut_;
  const describe::Context& context_;
  const quantity::Unit& unit_;
  bool ptfe_;
  std::vector<WorkStep> steps_;
};

}  // namespace

std::vector<WorkStep> work_card(const AssemblyToMake& make, const HoseCutInput& all,
                                const AssemblyCut& cut, const describe::Context& context) {
  return Card(make, all, cut, context).run();
}

}  // namespace wm::hose
