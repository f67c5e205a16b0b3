#include "ignition/insulation.hpp"

#include <fmt/core.h>

#include "ignition/detail/judge.hpp"
#include "ignition/detail/problem.hpp"
#include "ignition/detail/rows.hpp"
#include "quantity/as_typed.hpp"

namespace wm::ignition {

using evidence::Verdict;

namespace {

/// A figure for a higher voltage says nothing about a test with less.
void tested_with_less(const describe::Table* table, std::string_view about, double volts,
                      std::vector<Figure>& figures) {
  const detail::Rows rows(table);
  std::size_t at = 0;
  for (std::size_t i = 0; i < rows.size() && at < figures.size(); ++i) {
    if (rows.word(i, "about") != about) continue;
    Figure& figure = figures[at++];
    const auto least = quantity::parse_number(rows.word(i, "test-volts"));
    if (least && volts < *least * (1.0 - 1e-9))
      figure.stands =
          fmt::format("tested with less than {} V: says nothing", quantity::pencil(*least));
  }
}

}  // namespace

Checked<InsulationAnswer> judge_insulation(const InsulationReading& in, std::string_view path,
                                           std::string_view about,
                                           const describe::Context& context) {
  detail::WhatRead read;
  read.what = fmt::format("{}: insulation", in.part);
  read.reading = detail::any(in.reading);
  read.over_range = in.over_range;
  read.path = fmt::format("{}/reading", path);
  read.limits_path = fmt::format("{}/least", path);
  detail::HowRead how;
  how.meter = in.meter;
  how.leads = evidence::TestLeads::nulled;
  auto judged = detail::judge(
      read, detail::entered<quantity::Resistance>(in.least, std::nullopt, in.source), how, context);
  if (!judged) return Fail(judged.error());
  InsulationAnswer out;
  out.judged = std::move(*judged);
  if (in.reading && in.reading->value.si > 0.0) {
    out.leaks = quantity::amperes(in.test_voltage.value.si / in.reading->value.si);
  }
  out.figures =
      detail::figures(context.table("insulation-figures"), about, read.reading, in.over_range);
  tested_with_less(context.table("insulation-figures"), about, in.test_voltage.value.si,
                   out.figures);
  PartVerdict& v = out.judged;
  const bool too_low =
      in.test_with && in.test_voltage.value.si < in.test_with->value.si * (1.0 - 1e-9);
  if (too_low && v.verdict == Verdict::conforms) {
    v.verdict = Verdict::not_tested;
    v.in_words = std::string(words(v.verdict));
    v.reason = fmt::format(
        "tested with {}, the maker asks for {}: nothing is shown for the "
        "higher voltage",
        in.test_voltage.text, in.test_with->text);
    v.do_next.emplace_back("repeat at the maker's test voltage");
  }
  if (v.verdict == Verdict::does_not_conform) {
    v.in_words = "does not conform (insulation)";
    v.do_next.emplace_back(
        "find out whether the lead or the distributor block leaks: lift the lead and test both "
        "alone");
  }
  v.do_next.emplace_back("take the charge off the part before it is touched");
  return out;
}

std::string_view describe(describe::Fields<InsulationReading>& f) {
  using In = InsulationReading;
  f.has<&In::part>("part", "Which lead").needed("1 top").unique();
  f.has<&In::test_voltage>("test_voltage", "Test voltage")
      .needed("10 kV")
      .between(quantity::volts(1), quantity::volts(50000));
  f.has<&In::reading>("reading", "Insulation read")
      .example("450 Mohm")
      .between(quantity::ohms(0), quantity::ohms(1e15));
  f.has<&In::over_range>("over_range", "The display showed over-range");
  f.has<&In::least>("least", "Least that the maker allows")
      .between(quantity::ohms(0), quantity::ohms(1e15));
  f.has<&In::test_with>("test_with", "Test voltage that the maker asks for")
      .between(quantity::volts(1), quantity::volts(50000));
  f.has<&In::source>("source", "Where the maker's figures are written");
  f.has<&In::meter>("meter", "Range of the tester and its accuracy");
  return "insulation-reading";
}

std::string_view describe(describe::Fields<InsulationAnswer>& f) {
  f.has<&InsulationAnswer::judged>("judged", "Judged");
  f.has<&InsulationAnswer::leaks>("leaks", "Current that leaks");
  f.has<&InsulationAnswer::figures>("figures", "Figures of the trade: advice");
  return "insulation-answer";
}

}  // namespace wm::ignition
