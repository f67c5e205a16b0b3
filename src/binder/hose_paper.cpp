#include "binder/hose_paper.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <utility>

#include "calculation/catalogue.hpp"
#include "drawing/centreline.hpp"
#include "drawing/hose_sheet.hpp"
#include "drawing/pdf.hpp"
#include "drawing/png.hpp"
#include "drawing/svg.hpp"
#include "hose/sheet.hpp"
#include "hose/stl.hpp"

namespace wm::binder {
namespace {

constexpr std::string_view k_hose_sheet = "hose-sheet";
constexpr double k_dots_an_inch = 150;

constexpr std::array<std::pair<std::string_view, std::string_view>, 5> k_types{
    {{"pdf", "application/pdf"},
     {"svg", "image/svg+xml"},
     {"png", "image/png"},
     {"csv", "text/csv; charset=utf-8; header=present"},
     {"dxf", "image/vnd.dxf"}}};

Problem problem(std::string path, Kind kind, std::string what, std::string expected,
                std::string example) {
  return {kind, std::move(path), std::move(what), std::move(expected), std::move(example), {}, {}};
}

/// "oil cooler, pressure side" as a file: "oil-cooler-pressure-side".
std::string file_name(std::string_view title, std::string_view ending) {
  std::string out;
  for (const char c : title) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    if (plain)
      out += c;
    else if (!out.empty() && out.back() != '-')
      out += '-';
    if (out.size() >= 60) break;
  }
  while (out.ends_with('-')) out.pop_back();
  return fmt::format("{}.{}", out.empty() ? k_hose_sheet : std::string_view(out), ending);
}

std::string source_words(const describe::Source& source) {
  if (source.provenance == describe::Provenance::derived) return source.place;
  if (source.place.empty()) return source.document;
  return source.document + ", " + source.place;
}

drawing::HoseSheetAbout about(const describe::Calculation& calculation,
                              const hose::HoseSheetInput& in, const describe::Context& context) {
  drawing::HoseSheetAbout out;
  for (const auto& c : calculation.cautions) out.cautions.emplace_back(c.text);
  for (const auto& s : calculation.sources) out.sources.push_back(source_words(s));
  out.units = context.units;
  out.today = context.today;
  for (const auto& thing : in.keep_outs) {
    const auto* mesh = std::get_if<hose::MeshShape>(&thing.shape);
    if (mesh == nullptr || !context.file) continue;
    const auto bytes = context.file(mesh->file);
    if (!bytes) continue;
    const hose::Vector origin =
        mesh->origin ? hose::vector_of(*mesh->origin) : hose::Vector(0, 0, 0);
    const auto triangles = hose::read_stl(*bytes, mesh->one_unit.value.si, origin, {});
    // A file that is amiss was refused by the calculation; here it is only not drawn.
    if (!triangles) continue;
    auto& corners = out.corners[thing.name];
    for (const auto& triangle : *triangles)
      corners.insert(corners.end(), triangle.begin(), triangle.end());
  }
  return out;
}

Result<std::string> sheet_as(std::string_view as, const drawing::Page& page,
                             const hose::HoseSheetInput& in, const describe::Context& context) {
  if (as == "svg") return drawing::svg(page);
  if (as == "png") return drawing::png(page, k_dots_an_inch);
  const auto day = in.drawn_on.value_or(context.today);
  const std::array<drawing::Page, 1> pages{page};
  return drawing::pdf(pages, {in.title, "hose sheet",
                              day.ok() ? quantity::print_date(day) : std::string("1970-01-01")});
}

}  // namespace

bool is_drawn(std::string_view calculation) { return calculation == k_hose_sheet; }

Checked<PaperMade> paper_of(const PaperWanted& wanted, const InputReader& input,
                            const describe::Context& context) {
  const auto* calculation =
      is_drawn(wanted.calculation) ? calculation::catalogue().find(wanted.calculation) : nullptr;
  if (calculation == nullptr)
    return Fail(Problems{problem({}, Kind::not_found,
                                 fmt::format("`{}` is not drawn on a sheet", wanted.calculation),
                                 "one of: hose-sheet", "hose-sheet")});
  Problems problems;
  const auto* type = std::ranges::find(k_types, std::string_view(wanted.as),
                                       &std::pair<std::string_view, std::string_view>::first);
  if (type == k_types.end())
    problems.push_back(problem("as", Kind::unknown_choice,
                               wanted.as.empty() ? std::string("the form of the file is not said")
                                                 : fmt::format("`{}` is no form of it", wanted.as),
                               "one of: pdf, svg, png, csv, dxf", "pdf"));
  if (!wanted.paper.empty() && wanted.paper != "a4" && wanted.paper != "letter")
    problems.push_back(problem("paper", Kind::unknown_choice,
                               fmt::format("`{}` is no paper", wanted.paper), "one of: a4, letter",
                               "a4"));
  hose::HoseSheetInput in;
  const auto unread = input(*calculation->input, &in);
  problems.insert(problems.end(), unread.begin(), unread.end());
  if (!problems.empty()) return Fail(std::move(problems));

  const auto ran = calculation->run(&in, context);
  if (!ran) return Fail(ran.error());
  const auto& answer = *static_cast<const hose::HoseSheetAnswer*>(ran->get());
  PaperMade out{{}, std::string(type->second), file_name(in.title, wanted.as)};
  if (wanted.as == "csv" || wanted.as == "dxf") {
    out.bytes = wanted.as == "csv" ? drawing::centreline_csv(in, answer, context.units)
                                   : drawing::centreline_dxf(in, answer, context.units);
    return out;
  }
  const auto page =
      drawing::lay_out_hose(in, answer, about(*calculation, in, context),
                            wanted.paper == "letter" ? drawing::Paper::letter : drawing::Paper::a4);
  if (!page) return Fail(Problems{page.error()});
  auto bytes = sheet_as(wanted.as, *page, in, context);
  if (!bytes) return Fail(Problems{bytes.error()});
  out.bytes = std::move(*bytes);
  return out;
}

}  // namespace wm::binder
