// The unit table of docs/method/quantity.md is the one in the code.
#include <fmt/core.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string>

#include "quantity/detail/rows.hpp"
#include "quantity/kinds.hpp"

namespace wm::quantity {
namespace {

std::string cell(std::string_view spellings) {
  std::string out;
  for (const char c : spellings) {
    if (c == '|') {
      out += ", ";
    } else {
      out += c;
    }
  }
  return out;
}

std::string row(std::string_view kind, std::string_view symbol, std::string_view spellings,
                double factor, double offset, std::string_view source) {
  const std::string plus = offset == 0 ? "" : fmt::format(" (+ {:.10g})", offset);
  return fmt::format("| {} | {} | {} | {:.10g}{} | {} |\n", kind, symbol, cell(spellings), factor,
                     plus, source);
}

std::string unit_table() {
  std::string out = "| kind (inside) | unit | also typed | factor | source |\n";
  out += "| --- | --- | --- | --- | --- |\n";
  for (const KindInfo& k : all_kinds()) {
    const std::string kind = fmt::format("{} ({})", k.name, k.si_unit);
    for (const detail::Row& r : detail::k_rows) {
      if (r.kind == k.kind) out += row(kind, r.symbol, r.spellings, r.factor, r.offset, r.source);
    }
    if (k.kind != KindOf::pressure_gauge) continue;
    for (const detail::PressureRow& p : detail::k_pressure_rows) {
      out += row("pressure (Pa)", p.symbol, p.spellings, p.factor, 0, p.source);
    }
  }
  return out;
}

TEST(UnitTable, InTheManualIsTheOneInTheCode) {
  const std::string path = std::string(WM_SOURCE_DIR) + "/docs/method/quantity.md";
  std::ostringstream bytes;
  bytes << std::ifstream(path).rdbuf();
  const std::string page = bytes.str();
  const std::string begin = "<!-- units -->\n";
  const std::size_t from = page.find(begin);
  const std::size_t to = page.find("<!-- end of units -->");
  ASSERT_NE(from, std::string::npos);
  ASSERT_NE(to, std::string::npos);
  const std::size_t start = from + begin.size();
  if (std::getenv("WM_WRITE_DOCS") != nullptr) {
    std::ofstream(path) << page.substr(0, start) << unit_table() << page.substr(to);
    return;
  }
  EXPECT_EQ(page.substr(start, to - start), unit_table()) << "run again with WM_WRITE_DOCS=1";
}

}  // namespace
}  // namespace wm::quantity
