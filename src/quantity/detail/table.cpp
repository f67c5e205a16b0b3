#include "quantity/detail/table.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cctype>
#include <cstddef>

#include "quantity/detail/fold.hpp"
#include "quantity/detail/rows.hpp"

namespace wm::quantity::detail {
namespace {

using Tables = std::array<KindTable, k_kind_count>;

std::vector<std::string_view> split(std::string_view text) {
  std::vector<std::string_view> out;
  while (!text.empty()) {
    const std::size_t bar = text.find('|');
    out.push_back(text.substr(0, bar));
    if (bar == std::string_view::npos) break;
    text.remove_prefix(bar + 1);
  }
  return out;
}

/// What may follow a pressure unit to say which pressure is meant.
std::vector<std::string_view> marks_of(KindOf kind) {
  switch (kind) {
    case KindOf::pressure_gauge:
      return {"g", "(g)", "-g", "-(g)", "-gauge", "-(gauge)", "-gage"};
    case KindOf::pressure_absolute:
      return {"a", "(a)", "-a", "-(a)", "-abs", "-(abs)", "-absolute"};
    case KindOf::pressure_difference:
      return {"d", "(d)", "-d", "-(d)", "-diff", "-differential"};
    default:
      return {};
  }
}

void add_unit(KindTable& table, const Row& row) {
  table.units.push_back({row.symbol, row.kind, row.factor, row.offset, row.source});
}

void add_spellings(KindTable& table, std::size_t index, const Row& row) {
  const Unit* unit = &table.units[index];
  auto spellings = split(row.spellings);
  spellings.insert(spellings.begin(), row.symbol);
  for (const std::string_view spelling : spellings) {
    const std::string base = fold_unit(fold(spelling));
    table.spellings.push_back({base, row.any_case, unit});
    for (const std::string_view mark : marks_of(row.kind)) {
      table.spellings.push_back({base + std::string(mark), row.any_case, unit});
    }
  }
}

Tables build() {
  std::array<std::vector<Row>, k_kind_count> rows;
  for (const Row& row : k_rows) rows[static_cast<std::size_t>(row.kind)].push_back(row);
  for (const KindOf kind :
       {KindOf::pressure_gauge, KindOf::pressure_absolute, KindOf::pressure_difference}) {
    for (const PressureRow& p : k_pressure_rows) {
      rows[static_cast<std::size_t>(kind)].push_back(
          {kind, p.symbol, p.spellings, p.any_case, p.factor, 0, p.source});
    }
  }
  Tables tables;
  for (std::size_t k = 0; k < tables.size(); ++k) {
    // All units first: spellings point at them, so the vector must not grow afterwards.
    for (const Row& row : rows[k]) add_unit(tables[k], row);
    for (std::size_t i = 0; i < rows[k].size(); ++i) add_spellings(tables[k], i, rows[k][i]);
  }
  return tables;
}

char lower(char c) { return (c >= 'A' && c <= 'Z') ? static_cast<char>(c - 'A' + 'a') : c; }

/// Equal, where a '-' of the spelling may be missing in what was typed.
bool agrees(std::string_view typed, std::string_view spelling, bool any_case) {
  std::size_t t = 0;
  for (const char s : spelling) {
    const bool here = t < typed.size();
    if (s == '-') {
      if (here && typed[t] == '-') ++t;
      continue;
    }
    if (!here || (any_case ? lower(typed[t]) != lower(s) : typed[t] != s)) return false;
    ++t;
  }
  return t == typed.size();
}

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t above = row[j];
      const std::size_t swap = diagonal + (lower(a[i - 1]) == lower(b[j - 1]) ? 0U : 1U);
      row[j] = std::min({swap, above + 1, row[j - 1] + 1});
      diagonal = above;
    }
  }
  return row[b.size()];
}

}  // namespace

const KindTable& table_of(KindOf kind) {
  static const Tables tables = build();
  const auto index = static_cast<std::size_t>(kind);
  assert(index < tables.size());
  return tables[index];
}

ChainPlace chain_place(const Unit& unit) {
  struct Link {
    KindOf kind{};
    int chain{};
    std::array<std::string_view, 4> symbols;
  };
  static constexpr std::array<Link, 6> k_links{{
      {KindOf::length, 1, {"yd", "ft", "in", ""}},
      {KindOf::length, 2, {"m", "cm", "mm", ""}},
      {KindOf::mass, 1, {"lb", "oz", "", ""}},
      {KindOf::mass, 2, {"kg", "g", "", ""}},
      {KindOf::time, 1, {"day", "h", "min", "s"}},
      {KindOf::volume, 1, {"gal", "qt", "pt", "fl oz"}},
  }};
  for (const Link& link : k_links) {
    if (link.kind != unit.kind) continue;
    for (std::size_t i = 0; i < link.symbols.size(); ++i) {
      if (link.symbols[i] == unit.symbol) return {link.chain, static_cast<int>(i) + 1};
    }
  }
  return {};
}

const Unit* match(KindOf kind, std::string_view folded) {
  if (folded.empty()) return nullptr;
  for (const bool loosely : {false, true}) {
    for (const Spelling& s : table_of(kind).spellings) {
      if (loosely && !s.any_case) continue;
      if (agrees(folded, s.text, loosely)) return s.unit;
    }
  }
  return nullptr;
}

const Unit* nearest(KindOf kind, std::string_view folded) {
  if (folded.size() > 24) return nullptr;
  const Unit* best = nullptr;
  // A guess must share more than half of the letters.
  std::size_t limit = std::min<std::size_t>(2, folded.size() / 2);
  for (const Spelling& s : table_of(kind).spellings) {
    const std::size_t distance = edit_distance(folded, s.text);
    if (distance < limit || (distance == limit && best == nullptr)) {
      best = s.unit;
      limit = distance;
    }
  }
  return best;
}

std::string symbols_of(KindOf kind) {
  std::string out;
  for (const Unit& unit : table_of(kind).units) {
    if (!out.empty()) out += ", ";
    out += unit.symbol;
  }
  return out;
}

}  // namespace wm::quantity::detail
