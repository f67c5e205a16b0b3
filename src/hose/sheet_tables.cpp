#include "hose/sheet_tables.hpp"

#include <fmt/core.h>

#include "hose/detail/problem.hpp"
#include "hose/detail/rows.hpp"
#include "hose/detail/say.hpp"
#include "hose/family.hpp"
#include "hose/proof_pressure.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using detail::problem;
using detail::Rows;

constexpr double k_same = 1e-6;  // a share: rounding of a unit

/// Which of the proof tables speaks of a family. Of PTFE assemblies, those with swivel nuts: the
/// sheet does not know its ends' nuts, and their figure is the greater one.
ProofFamily proof_family(std::string_view family) {
  if (family == "MIL-H-8794") return ProofFamily::medium_elastomer;
  if (family == "MIL-H-8788") return ProofFamily::high_elastomer;
  return family == "MIL-H-25579" ? ProofFamily::ptfe_swivel : ProofFamily::not_said;
}

class Compare {
 public:
  Compare(const HoseSheetInput& in, const describe::Context& context)
      : in_(in), context_(context), hose_(fmt::format("{} {}", in.family, in.size)) {}

  TableWords run() {
    const auto figures = family_figures(context_, in_.family, in_.size);
    if (!figures) {
      if (figures.error().path == "size")
        out_.lines.push_back(fmt::format("Size not compared with the table: {} ({}).",
                                         figures.error().what, figures.error().expected));
      return std::move(out_);
    }
    working(*figures);
    proof();
    radius();
    return std::move(out_);
  }

 private:
  [[nodiscard]] std::string say(const EnteredPressure& p) const {
    return p.text.empty() ? quantity::pencil(p.value.si, quantity::typed_unit(p, context_.units))
                          : p.text;
  }

  void refuse(const char* path, const char* what, const EnteredPressure& entered,
              const std::string& most, const std::string& source) {
    out_.refused.push_back(problem(
        path, Kind::out_of_bounds,
        fmt::format("{} of {} is above the {} of {}", what, say(entered), most, hose_),
        fmt::format("at most {} ({}); or another family or size", most, source), most, source));
  }

  void working(const FamilyFigures& figures) {
    const auto& limit = figures.operating ? figures.operating : figures.operating_most;
    if (!limit || !in_.working_pressure) return;
    if (in_.working_pressure->value.si <= limit->value.si * (1 + k_same)) return;
    if (limit->may_refuse()) {
      refuse("working_pressure", "a working pressure", *in_.working_pressure, limit->text,
             limit->source);
    } else {
      out_.lines.push_back(fmt::format("Working pressure {} is above {} of {} ({}, {}).",
                                       say(*in_.working_pressure), limit->text, hose_,
                                       limit->source, limit->known));
    }
  }

  void proof() {
    const auto family = proof_family(in_.family);
    if (family == ProofFamily::not_said) return;
    const auto limit = proof_limit(context_, {family, in_.size, {}, {}});
    if (!limit) return;
    if (!in_.proof_pressure) {
      out_.has_proof = true;
      out_.lines.push_back(fmt::format(
          "Proof pressure not entered: for {} it is {} at most{} ({}).", hose_, limit->text,
          family == ProofFamily::ptfe_swivel ? " with swivel nuts, less with flanges" : "",
          limit->source));
    } else if (in_.proof_pressure->value.si > limit->proof.si * (1 + k_same)) {
      refuse("proof_pressure", "a proof pressure", *in_.proof_pressure, limit->text, limit->source);
    }
  }

  /// A maker may allow less than the standard of the family: told, not refused.
  void radius() {
    for (const auto* name : {"hose-medium-elastomer", "hose-high-elastomer"}) {
      const bool medium = std::string_view(name) == "hose-medium-elastomer";
      if (proof_family(in_.family) !=
          (medium ? ProofFamily::medium_elastomer : ProofFamily::high_elastomer))
        continue;
      const Rows rows(context_.table(name));
      for (std::size_t i = 0; i < rows.size(); ++i) {
        const auto printed = rows.value<quantity::Length>(i, "bend-radius");
        if (rows.word(i, "size") != in_.size || !printed) continue;
        const double diameter = in_.outside_diameter.value.si;
        const double entered =
            centreline_radius(in_.least_radius.value.si, in_.radius_to, diameter);
        if (entered >= centreline_radius(printed->si, RadiusTo::inside, diameter) * (1 - k_same))
          return;
        const auto& unit = quantity::typed_unit(in_.least_radius, context_.units);
        out_.lines.push_back(fmt::format(
            "Least radius {} {} is smaller than the table's for {}: {} to the inside ({}).",
            detail::say(in_.least_radius.value.si, unit),
            in_.radius_to == RadiusTo::inside ? "to the inside" : "to the centreline", hose_,
            rows.text(i, "bend-radius"), rows.place()));
        return;
      }
    }
  }

  const HoseSheetInput& in_;
  const describe::Context& context_;
  std::string hose_;
  TableWords out_;
};

}  // namespace

TableWords compared_with_tables(const HoseSheetInput& in, const describe::Context& context) {
  return Compare(in, context).run();
}

}  // namespace wm::hose
