#include "hose/family.hpp"

#include <fmt/core.h>

#include "hose/detail/problem.hpp"
#include "hose/detail/rows.hpp"

namespace wm::hose {
namespace {

using detail::problem;
using detail::Rows;

bool lists(std::string_view words, std::string_view word) {
  while (!words.empty()) {
    const auto end = words.find(' ');
    if (words.substr(0, end) == word) return true;
    if (end == std::string_view::npos) break;
    words.remove_prefix(end + 1);
  }
  return false;
}

template <class Q>
std::optional<SourcedFigure<Q>> figure(const Rows& rows, std::size_t row, std::string_view key,
                                       std::string source, std::string_view known) {
  const auto value = rows.value<Q>(row, key);
  if (!value) return std::nullopt;
  return SourcedFigure<Q>{*value, rows.text(row, key), std::move(source), std::string(known)};
}

Lining lining_of(std::string_view word) {
  if (word == "elastomer") return Lining::elastomer;
  if (word == "ptfe-smooth") return Lining::ptfe_smooth;
  return word == "ptfe-convoluted" ? Lining::ptfe_convoluted : Lining::not_said;
}

std::optional<std::size_t> row_of_size(const Rows& rows, std::string_view size) {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows.word(i, "size") == size) return i;
  }
  return std::nullopt;
}

/// What the family's own table has of this size.
void add_size(const describe::Context& context, std::string_view table, FamilyFigures& out) {
  const Rows rows(context.table(table));
  const auto row = row_of_size(rows, out.size);
  if (!row) return;
  const auto known = rows.provenance(*row);
  out.operating = figure<quantity::PressureGauge>(rows, *row, "operating", rows.place(), known);
  out.inside = figure<quantity::Length>(rows, *row, "id", rows.place(), known);
  out.bore = figure<quantity::Length>(rows, *row, "bore", rows.place(), known);
}

void add_proof(const describe::Context& context, FamilyFigures& out) {
  const Rows rows(context.table("hose-ptfe-proof"));
  const auto row = row_of_size(rows, out.size);
  if (!row) return;
  out.proof = figure<quantity::PressureGauge>(rows, *row, "proof-swivel", rows.place(),
                                              rows.provenance(*row));
}

/// Which figure belongs to which size was inferred in that table: it may not refuse.
void add_swivel_bore(const describe::Context& context, FamilyFigures& out) {
  const Rows rows(context.table("hose-swivel-ends"));
  std::string size = out.size;
  if (size.size() == 2 && size[0] == '-') size = fmt::format("-0{}", size[1]);
  if (const auto row = row_of_size(rows, size)) {
    out.bore = figure<quantity::Length>(rows, *row, "bore", rows.place(), "secondary");
  }
}

FamilyFigures figures_of(const describe::Context& context, const Rows& rows, std::size_t row,
                         std::string_view size) {
  FamilyFigures out;
  out.family = std::string(rows.word(row, "family"));
  out.size = std::string(size);
  out.lining = lining_of(rows.word(row, "lining"));
  out.source = std::string(rows.word(row, "source"));
  out.note = std::string(rows.word(row, "note"));
  out.carries = std::string(rows.word(row, "carries"));
  out.carries_known = std::string(rows.word(row, "carries-is"));
  using quantity::PressureGauge;
  using quantity::Temperature;
  out.lowest = figure<Temperature>(rows, row, "lowest", out.source, rows.word(row, "lowest-is"));
  out.highest = figure<Temperature>(rows, row, "highest", out.source, rows.word(row, "highest-is"));
  const auto pressure_is = rows.word(row, "operating-is");
  out.operating_most = figure<PressureGauge>(rows, row, "operating-most", out.source, pressure_is);
  const auto table = rows.word(row, "pressures");
  if (table.empty()) {
    out.operating = figure<PressureGauge>(rows, row, "operating", out.source, pressure_is);
  } else {
    add_size(context, table, out);
  }
  // Both stand in AC 43.13-1B table 9-3, which has the note.
  out.not_both_maxima = table == "hose-medium-elastomer" || table == "hose-high-elastomer";
  if (out.family == "MIL-H-25579") add_proof(context, out);
  if (out.family == "AS620") add_swivel_bore(context, out);
  return out;
}

}  // namespace

Result<FamilyFigures> family_figures(const describe::Context& context, std::string_view family,
                                     std::string_view size) {
  const Rows rows(context.table("hose-families"));
  std::string families;
  std::string sizes;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const auto name = rows.word(i, "family");
    if (name != family) {
      if (!families.ends_with(name)) families += (families.empty() ? "" : ", ") + std::string(name);
      continue;
    }
    const auto listed = rows.word(i, "sizes");
    if (listed.empty() || lists(listed, size)) return figures_of(context, rows, i, size);
    sizes += (sizes.empty() ? "" : " ") + std::string(listed);
  }
  if (!sizes.empty()) {
    return Fail(problem("size", size.empty() ? Kind::missing : Kind::not_found,
                        size.empty() ? fmt::format("{}: the size is not said", family)
                                     : fmt::format("{} has no size \"{}\"", family, size),
                        "one of: " + sizes, sizes.substr(0, sizes.find(' '))));
  }
  return Fail(problem(
      "family", Kind::not_found, fmt::format("there is no hose family \"{}\"", family),
      "one of: " + families + "; or leave it empty and enter the maker's limits", "MIL-H-8794"));
}

Result<Lining> family_lining(const describe::Context& context, std::string_view family) {
  const Rows rows(context.table("hose-families"));
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows.word(i, "family") == family) return lining_of(rows.word(i, "lining"));
  }
  // The same words as for a family with its size.
  return Fail(family_figures(context, family, {}).error());
}

std::optional<quantity::Fraction> convoluted_hot_ratio(const describe::Context& context) {
  const Rows rows(context.table("hose-convoluted-metric"));
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const auto cold = rows.value<quantity::PressureGauge>(i, "burst");
    const auto hot = rows.value<quantity::PressureGauge>(i, "burst-hot");
    if (cold && hot) return quantity::ratio(hot->si / cold->si);
  }
  return std::nullopt;
}

}  // namespace wm::hose
