#include "hose/order.hpp"

#include <fmt/core.h>

#include <cmath>
#include <numbers>

#include "hose/detail/problem.hpp"
#include "hose/proof.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using detail::problem;

constexpr double k_degree = std::numbers::pi / 180.0;
constexpr double k_eighth_m = 0.0254 / 8.0;

template <class Q>
std::string typed(const quantity::Entered<Q>& v, const describe::Context& context) {
  return v.text.empty() ? quantity::pencil(v.value.si, quantity::typed_unit(v, context.units))
                        : v.text;
}

std::string_view words(FireSleeve sleeve) {
  switch (sleeve) {
    case FireSleeve::not_said:
      return "not said";
    case FireSleeve::none:
      return "none";
    case FireSleeve::integral:
      return "integral with the hose";
    case FireSleeve::over:
      return "slid over, ends sealed and banded";
  }
  return "";
}

std::string_view words(Liner liner) {
  switch (liner) {
    case Liner::not_said:
      return "not said";
    case Liner::elastomer:
      return "elastomer";
    case Liner::ptfe_conductive:
      return "PTFE, inner layer conductive (loaded with carbon)";
    case Liner::ptfe_plain:
      return "PTFE, plain";
  }
  return "";
}

class Sheet {
 public:
  Sheet(const HoseOrderInput& in, const describe::Context& context) : in_(in), context_(context) {}

  Checked<HoseOrderAnswer> run() {
    check();
    if (!problems_.empty()) return Fail(std::move(problems_));
    codes();
    write();
    warn();
    message();
    return std::move(out_);
  }

 private:
  bool two_elbows() const { return is_elbow(in_.near_end.form) && is_elbow(in_.far_end.form); }

  // ------------------------------------------------------------------ what is missing or wrong

  void ask(std::string path, std::string what, std::string expected, std::string example) {
    problems_.push_back(problem(std::move(path), Kind::missing, std::move(what),
                                std::move(expected), std::move(example)));
  }

  void check() {
    if (in_.specification.empty()) {
      ask("specification", "what hose it shall be is not said",
          "the specification, and the maker's series where there is one", "AS1946 class I");
    }
    if (in_.size.empty()) ask("size", "the size is not said", "the dash number", "-8");
    if (in_.liner == Liner::not_said) {
      ask("liner", "the liner is not said", "elastomer, ptfe-conductive or ptfe-plain",
          "ptfe-conductive");
    }
    if (in_.carries == Carries::not_said) {
      ask("carries", "what the line carries is not said", "fuel, oil, ...", "oil");
    }
    if (in_.sleeve == FireSleeve::not_said) {
      ask("sleeve", "whether it has a fire sleeve is not said", "integral, over or none",
          "integral");
    }
    if (in_.quantity < 1) {
      problems_.push_back(
          problem("quantity", Kind::out_of_bounds, "less than one", "1 or more", "1"));
    }
    end(in_.near_end, "near_end");
    end(in_.far_end, "far_end");
    length();
    clocking();
    fluid();
    proof();
  }

  void end(const OrderEnd& e, const std::string& name) {
    if (!e.thread.empty()) return;
    ask(name + "/thread", "thread and seat of this end are not said",
        "thread, seat angle, and nut or male", "3/4-16, 37 degree, swivel nut");
  }

  void length() {
    if (!(in_.overall.value.si > 0.0)) {
      ask("overall", "the overall length is not said", "seat to seat, hose straight", "16 1/2 in");
      return;
    }
    if (!in_.length_tolerance) {
      const auto usual = usual_length_tolerance(context_, in_.overall.value);
      problems_.push_back(problem(
          "length_tolerance", Kind::missing, "no tolerance on the length is said",
          usual ? fmt::format("what the shop keeps, or what the place asks for; usual for cut hose "
                              "of this length (advice, secondary source): +-{} in",
                              quantity::pencil(usual->si / 0.0254))
                : "what the shop keeps, or what the place asks for",
          "0.125 in", "IP-2 hose handbook (2003) table 4-8, as quoted elsewhere"));
      return;
    }
    out_.length_tolerance = *in_.length_tolerance;
    if (in_.length_tolerance->value >= in_.overall.value) {
      problems_.push_back(problem("length_tolerance", Kind::conflict,
                                  "the tolerance is as long as the hose", "much less", "0.125 in"));
    }
  }

  void clocking() {
    if (!two_elbows()) {
      for (const auto& [given, path] :
           {std::pair{in_.clocking.has_value(), "clocking"},
            std::pair{in_.clocking_tolerance.has_value(), "clocking_tolerance"}}) {
        if (!given) continue;
        problems_.push_back(problem(path, Kind::conflict,
                                    "clocking is the angle between two elbows, and at least one "
                                    "end is straight",
                                    "elbows at both ends, or no clocking"));
      }
      return;
    }
    if (!in_.clocking) {
      ask("clocking", "two elbows without a clocking",
          "near elbow at six o'clock: the angle counter-clockwise to the far elbow, seen from the "
          "near end",
          "50 deg");
      return;
    }
    out_.clocking_tolerance = in_.clocking_tolerance
                                  ? in_.clocking_tolerance->value
                                  : clocking_tolerance(in_.overall.value, MadeIn::factory);
  }

  void fluid() {
    if (is_fuel(in_.carries) && in_.liner == Liner::ptfe_plain && in_.remarks.empty()) {
      problems_.push_back(
          problem("liner", Kind::conflict,
                  "fuel charges a plain PTFE liner until it sparks through to the braid and leaks",
                  "a conductive liner for fuel; or, in the remarks, what its maker states for fuel",
                  "ptfe-conductive", "a vehicle standard, as reported (secondary)"));
    }
    if (in_.carries == Carries::hydraulic_phosphate && in_.liner == Liner::elastomer &&
        in_.remarks.empty()) {
      ask("remarks", "phosphate ester attacks most elastomers",
          "the elastomer by name, as its maker states it for this fluid", "EPDM liner");
    }
    if (in_.carries == Carries::fuel_with_alcohol && in_.liner == Liner::elastomer &&
        in_.remarks.empty()) {
      ask("remarks", "fuel with alcohol and an elastomer that is not named",
          "the liner by name, as its maker states it for this fuel", "fluoroelastomer liner");
    }
  }

  void proof() {
    const auto limit =
        proof_limit(context_, {in_.family, in_.size, in_.makers_proof, in_.makers_source});
    if (!limit) {
      if (in_.proof_pressure && !in_.proof_source.empty()) {
        // A figure with its source is what is asked for; there is no table to compare it with.
        out_.proof_pressure = *in_.proof_pressure;
        out_.proof_source = in_.proof_source;
        return;
      }
      if (!(in_.size.empty() && limit.error().path == "size")) problems_.push_back(limit.error());
      return;
    }
    if (!in_.proof_pressure) {
      out_.proof_pressure = {limit->proof, 0.0, limit->text};
      out_.proof_source = limit->source;
      return above_working();
    }
    out_.proof_pressure = *in_.proof_pressure;
    out_.proof_source = in_.proof_source.empty() ? "entered" : in_.proof_source;
    if (in_.proof_pressure->value.si > limit->proof.si * (1.0 + 1e-9)) {
      problems_.push_back(problem("proof_pressure", Kind::refused,
                                  fmt::format("{} is above the proof pressure of this hose, {}: "
                                              "that is a maximum",
                                              typed(*in_.proof_pressure, context_), limit->text),
                                  limit->text + " or less", limit->text, limit->source));
    }
    above_working();
  }

  void above_working() {
    if (!in_.working_pressure || in_.working_pressure->value < out_.proof_pressure.value) return;
    problems_.push_back(problem("working_pressure", Kind::conflict,
                                "the working pressure is not below the proof pressure",
                                "less than " + typed(out_.proof_pressure, context_)));
  }

  // ------------------------------------------------------------------ the sheet

  void line(std::string label, std::string text) {
    if (!text.empty()) out_.lines.push_back({std::move(label), std::move(text)});
  }

  std::string end_words(const OrderEnd& e) const {
    std::string text = fmt::format("{}; {}", words(e.form), e.thread);
    if (!e.metal.empty()) text += "; " + e.metal;
    if (!e.part_number.empty()) text += "; part no. " + e.part_number;
    return text;
  }

  void codes() {
    out_.length_code = length_code(in_.overall.value);
    if (in_.clocking) out_.clocking_code = clocking_code(in_.clocking->value);
  }

  std::string length_words() const {
    std::string text = fmt::format("{} +- {}", typed(in_.overall, context_),
                                   typed(*in_.length_tolerance, context_));
    if (out_.length_code) text += fmt::format(" (length code {})", *out_.length_code);
    return text;
  }

  std::string clocking_words() const {
    if (!in_.clocking) return {};
    std::string text = fmt::format(
        "{} +- {} deg: near elbow at six o'clock, counter-clockwise to the far elbow, seen from "
        "the "
        "near end",
        typed(*in_.clocking, context_), quantity::pencil(out_.clocking_tolerance->si / k_degree));
    if (out_.clocking_code) text += fmt::format(" (code {})", *out_.clocking_code);
    return text;
  }

  std::string sleeve_words() const {
    std::string text(words(in_.sleeve));
    if (in_.sleeve == FireSleeve::none) return text;
    text +=
        in_.sleeve_past_socket
            ? fmt::format("; it reaches {} past the socket at both ends and does not touch the nut",
                          typed(*in_.sleeve_past_socket, context_))
            : "; it covers the sockets at both ends and does not touch the nuts";
    return text;
  }

  std::string tag_words() const {
    if (!in_.tag_text.empty()) return in_.tag_text;
    std::string text = fmt::format("{} {}; ", in_.specification, in_.size);
    if (in_.working_pressure) {
      text += fmt::format("operating {}; ", typed(*in_.working_pressure, context_));
    }
    return text + fmt::format("proof tested {}, date and by whom; hose cure date; assembly date",
                              typed(out_.proof_pressure, context_));
  }

  void write() {
    line("For", in_.position);
    line("Quantity", fmt::format("{}", in_.quantity));
    line("Hose", in_.specification);
    line("Size", in_.size);
    line("Liner", std::string(words(in_.liner)));
    line("Carries", std::string(words(in_.carries)));
    line("Near end", end_words(in_.near_end));
    line("Far end", end_words(in_.far_end));
    line("Overall length", length_words());
    line("Measured at the near end", std::string(measured_from(in_.near_end.form)));
    line("Measured at the far end", std::string(measured_from(in_.far_end.form)));
    line("Clocking", clocking_words());
    line("Fire sleeve", sleeve_words());
    line("Operating pressure",
         in_.working_pressure ? typed(*in_.working_pressure, context_) : std::string());
    line("Proof test", fmt::format("{} with liquid, all air bled out, no more than that ({})",
                                   typed(out_.proof_pressure, context_), out_.proof_source));
    line("Tag", tag_words());
    line("Delivered", "clean, dry, both ends capped, with the test record");
    line("Remarks", in_.remarks);
  }

  // ------------------------------------------------------------------ warnings

  void warn() {
    auto& w = out_.warnings;
    if (in_.sleeve == FireSleeve::none && in_.liner == Liner::elastomer && in_.ahead_of_firewall) {
      w.emplace_back("an elastomer hose ahead of the firewall without a fire sleeve");
    } else if (in_.sleeve == FireSleeve::none && in_.ahead_of_firewall) {
      w.emplace_back(
          "no fire sleeve ahead of the firewall: what carries flammable fluid there must be at "
          "least "
          "fire resistant, as an assembly that was tested so");
    }
    if (is_fuel(in_.carries) && in_.liner == Liner::ptfe_plain) {
      w.emplace_back(
          "fuel and a plain PTFE liner: it charges and sparks through to the braid (secondary "
          "source); a conductive liner is usual");
    }
    if (in_.carries == Carries::fuel_with_alcohol) {
      w.emplace_back("fuel with alcohol: ask the maker of the hose for this fuel in writing");
    }
    if (in_.clocking && !out_.clocking_code) {
      w.emplace_back(
          "the clocking is no whole step of 5 degrees: it has no code, and a shop may "
          "round it; ask");
    }
    if (!out_.length_code) {
      w.emplace_back(
          "the length is no whole number of eighths of an inch: it has no code, and a "
          "shop that works in inches may round it; ask");
    }
    if (!in_.working_pressure) {
      w.emplace_back("no operating pressure: the tag cannot say it");
    }
    if (in_.clocking_tolerance && in_.clocking_tolerance->value.si <
                                      clocking_tolerance(in_.overall.value, MadeIn::factory).si) {
      w.emplace_back(
          "the clocking is asked for closer than the standard's tolerance: ask whether "
          "the shop can");
    }
    if (in_.sleeve != FireSleeve::none && !in_.sleeve_past_socket) {
      w.emplace_back(
          "how far the sleeve reaches past the socket is not asked for; usual is about "
          "1/8 in (advice, secondary source)");
    }
    if (const auto usual = usual_length_tolerance(context_, in_.overall.value);
        usual && in_.length_tolerance->value < *usual) {
      w.push_back(
          fmt::format("closer than what is usual for cut hose of this length, +-{} in (advice, "
                      "secondary source): ask whether the shop can",
                      quantity::pencil(usual->si / 0.0254)));
    }
  }

  void message() {
    std::string text = "Please make:\n";
    for (const OrderLine& l : out_.lines) text += fmt::format("  {}: {}\n", l.label, l.text);
    text +=
        "Please tell me before you change any line, and what your own tolerance is where it is "
        "wider.\n";
    out_.message = std::move(text);
  }

  const HoseOrderInput& in_;
  const describe::Context& context_;
  Problems problems_;
  HoseOrderAnswer out_;
};

}  // namespace

bool is_elbow(EndForm form) { return form == EndForm::elbow_45 || form == EndForm::elbow_90; }

std::string_view words(EndForm form) {
  switch (form) {
    case EndForm::straight:
      return "straight swivel";
    case EndForm::elbow_45:
      return "45 degree elbow";
    case EndForm::elbow_90:
      return "90 degree elbow";
    case EndForm::male_thread:
      return "male thread";
  }
  return "";
}

std::optional<std::string> length_code(quantity::Length overall) {
  const double eighths = overall.si / k_eighth_m;
  const double whole = std::round(eighths);
  if (std::abs(eighths - whole) > 1e-6 || whole < 1.0 || whole >= 8000.0) return std::nullopt;
  const int n = static_cast<int>(whole);
  return fmt::format("{:03}{}", n / 8, n % 8);
}

std::optional<std::string> clocking_code(quantity::Angle clocking) {
  const double steps = clocking.si / (5.0 * k_degree);
  const double whole = std::round(steps);
  if (std::abs(steps - whole) > 1e-9 || whole < 0.0 || whole >= 72.0) return std::nullopt;
  return fmt::format("{:02}", static_cast<int>(whole));
}

std::optional<quantity::Length> usual_length_tolerance(const describe::Context& context,
                                                       quantity::Length length) {
  const describe::Table* table = context.table("hose-length-tolerance");
  if (table == nullptr) return std::nullopt;
  const double in = length.si / 0.0254;
  for (const auto& row : table->rows) {
    const auto up_to = quantity::parse_number(row[1]);
    const auto tolerance = quantity::parse_number(row[2]);
    if (up_to && tolerance && in <= *up_to + 1e-9) return quantity::inches(*tolerance);
  }
  return length * 0.01;
}

Checked<HoseOrderAnswer> hose_order(const HoseOrderInput& input, const describe::Context& context) {
  return Sheet(input, context).run();
}

}  // namespace wm::hose
