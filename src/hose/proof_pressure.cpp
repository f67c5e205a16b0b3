#include "hose/proof_pressure.hpp"

#include <fmt/core.h>

#include "hose/detail/problem.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using detail::problem;

struct Place {
  std::string_view table;
  std::string_view ends;  ///< which ends, where the table has several
};

Place place_of(ProofFamily family) {
  switch (family) {
    case ProofFamily::medium_elastomer:
      return {"hose-medium-elastomer", {}};
    case ProofFamily::high_elastomer:
      return {"hose-high-elastomer", {}};
    case ProofFamily::ptfe_swivel:
      return {"hose-ptfe-proof", "swivel"};
    case ProofFamily::ptfe_flanged:
      return {"hose-ptfe-proof", "flanged"};
    default:
      return {};
  }
}

bool holds(std::string_view text, std::string_view part) {
  return text.find(part) != std::string_view::npos;
}

/// The one column whose key speaks of all of these.
std::optional<std::size_t> column(const describe::Table& table, std::string_view first,
                                  std::string_view second) {
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    if (holds(table.columns[i].key, first) && holds(table.columns[i].key, second)) return i;
  }
  return std::nullopt;
}

Problem ask_the_maker(std::string what) {
  return problem("makers_proof", Kind::missing, std::move(what),
                 "the maker's proof pressure for this hose, from its data sheet or tag",
                 "3000 psi");
}

}  // namespace

Result<ProofLimit> proof_limit(const describe::Context& context, const ProofQuestion& question) {
  if (question.makers) {
    const auto& m = *question.makers;
    return ProofLimit{m.value,
                      m.text.empty()
                          ? quantity::pencil(m.value.si, quantity::typed_unit(m, context.units))
                          : m.text,
                      question.makers_source.empty() ? "the maker's figure, entered"
                                                     : "entered: " + question.makers_source};
  }
  const Place place = place_of(question.family);
  if (place.table.empty()) {
    return Fail(
        ask_the_maker("no table is named for this hose and its maker's figure is not there"));
  }
  const describe::Table* table = context.table(place.table);
  const auto size = table == nullptr ? std::nullopt : column(*table, "size", "");
  const auto proof = table == nullptr ? std::nullopt : column(*table, "proof", place.ends);
  if (!size || !proof) {
    return Fail(problem("family", Kind::not_found,
                        fmt::format("the table \"{}\" is not there", place.table),
                        "the tables of the room hose"));
  }
  std::string there;
  for (const auto& row : table->rows) {
    const auto psi = quantity::parse_number(row[*proof]);
    if (!psi) continue;  // "-": no such hose
    if (row[*size] == question.size) {
      return ProofLimit{quantity::psi_gauge(*psi), std::string(row[*proof]) + " psi",
                        fmt::format("{}, {}", table->document, table->place)};
    }
    there += (there.empty() ? "" : ", ") + std::string(row[*size]);
  }
  return Fail(problem("size", question.size.empty() ? Kind::missing : Kind::not_found,
                      question.size.empty()
                          ? "the size is not said"
                          : fmt::format("{} has no \"{}\"", place.table, question.size),
                      there, "-8"));
}

}  // namespace wm::hose
