#include "binder/hose_paper.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <utility>

#include "binder/cards.hpp"
#include "binder/cut_paper.hpp"
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
constexpr std::string_view k_hose_cut = "hose-cut";
constexpr double k_dots_an_inch = 150;

constexpr std::array<std::pair<std::string_view, std::string_view>, 5> k_types{
    {{"pdf", "application/pdf"},
     {"svg", "image/svg+xml"},
     {"png", "image/png"},
     {"csv", "text/csv; charset=utf-8; header=present"},
     {"dxf", "image/vnd.dxf"}}};

/// nullptr for no form that we make.
const std::string_view* type_of(std::string_view as) {
  const auto* found =
      std::ranges::find(k_types, as, &std::pair<std::string_view, std::string_view>::first);
  return found == k_types.end() ? nullptr : &found->second;
}

drawing::Paper paper_named(std::string_view word) {
  return word == "letter" ? drawing::Paper::letter : drawing::Paper::a4;
}

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

/// Forms that a card has: it has no centreline.
bool is_page(std::string_view as) { return as == "pdf" || as == "svg" || as == "png"; }

Problems wrong_wishes(const PaperWanted& wanted) {
  Problems problems;
  const bool card = wanted.calculation == k_hose_cut;
  const bool known = card ? is_page(wanted.as) : type_of(wanted.as) != nullptr;
  if (!known)
    problems.push_back(problem("as", Kind::unknown_choice,
                               wanted.as.empty() ? std::string("the form of the file is not said")
                                                 : fmt::format("`{}` is no form of it", wanted.as),
                               card ? "one of: pdf, svg, png" : "one of: pdf, svg, png, csv, dxf",
                               "pdf"));
  if (!wanted.paper.empty() && wanted.paper != "a4" && wanted.paper != "letter")
    problems.push_back(problem("paper", Kind::unknown_choice,
                               fmt::format("`{}` is no paper", wanted.paper), "one of: a4, letter",
                               "a4"));
  return problems;
}

Checked<PaperMade> hose_drawn(const PaperWanted& wanted, const describe::Calculation& calculation,
                              const hose::HoseSheetInput& in, const hose::HoseSheetAnswer& answer,
                              const describe::Context& context) {
  PaperMade out{{}, std::string(*type_of(wanted.as)), file_name(in.title, wanted.as)};
  if (wanted.as == "csv" || wanted.as == "dxf") {
    out.bytes = wanted.as == "csv" ? drawing::centreline_csv(in, answer, context.units)
                                   : drawing::centreline_dxf(in, answer, context.units);
    return out;
  }
  const auto page =
      drawing::lay_out_hose(in, answer, about(calculation, in, context), paper_named(wanted.paper));
  if (!page) return Fail(Problems{page.error()});
  auto bytes = sheet_as(wanted.as, *page, in, context);
  if (!bytes) return Fail(Problems{bytes.error()});
  out.bytes = std::move(*bytes);
  return out;
}

Checked<PaperMade> cut_drawn(const PaperWanted& wanted, const describe::Calculation& calculation,
                             const hose::HoseCutAnswer& answer, const describe::Context& context) {
  const auto card = cut_card(answer, calculation, context.today);
  auto bytes = print_card(card, paper_named(wanted.paper), wanted.as);
  if (!bytes) return Fail(Problems{bytes.error()});
  return PaperMade{std::move(*bytes), std::string(*type_of(wanted.as)),
                   file_name(card.subtitle, wanted.as)};
}

}  // namespace

bool is_drawn(std::string_view calculation) {
  return calculation == k_hose_sheet || calculation == k_hose_cut;
}

Checked<PaperMade> paper_of(const PaperWanted& wanted, const InputReader& input,
                            const describe::Context& context) {
  const auto* calculation =
      is_drawn(wanted.calculation) ? calculation::catalogue().find(wanted.calculation) : nullptr;
  if (calculation == nullptr)
    return Fail(Problems{problem({}, Kind::not_found,
                                 fmt::format("`{}` is not drawn on paper", wanted.calculation),
                                 "one of: hose-sheet, hose-cut", "hose-sheet")});
  auto problems = wrong_wishes(wanted);
  const auto in = calculation->make_input();
  const auto unread = input(*calculation->input, in.get());
  problems.insert(problems.end(), unread.begin(), unread.end());
  if (!problems.empty()) return Fail(std::move(problems));
  const auto ran = calculation->run(in.get(), context);
  if (!ran) return Fail(ran.error());
  return wanted.calculation == k_hose_cut
             ? cut_drawn(wanted, *calculation, *static_cast<const hose::HoseCutAnswer*>(ran->get()),
                         context)
             : hose_drawn(wanted, *calculation, *static_cast<const hose::HoseSheetInput*>(in.get()),
                          *static_cast<const hose::HoseSheetAnswer*>(ran->get()), context);
}

}  // namespace wm::binder
