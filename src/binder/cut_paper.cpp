#include "binder/cut_paper.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <iterator>

namespace wm::binder {
namespace {

std::string text_of(const std::optional<hose::EnteredLength>& length) {
  if (!length) return {};
  return length->text.empty()
             ? quantity::print(length->value.si, quantity::Length::kind,
                               quantity::UnitSet::us_customary, length->resolution_si)
             : length->text;
}

drawing::Step step_of(const hose::WorkStep& step) {
  drawing::Step out;
  out.text = step.text;
  if (!step.box.empty() || !step.limit.empty())
    out.readings.push_back(
        {step.box.empty() ? "Seen" : step.box, {}, step.limit, step.source, {}, {}});
  else if (!step.source.empty())
    out.text += fmt::format(" ({})", step.source);
  return out;
}

drawing::Section section_of(const hose::AssemblyCut& cut) {
  drawing::Section out;
  out.heading = cut.name;
  out.paragraphs.push_back(fmt::format("Overall {}; cut the hose to {}.", text_of(cut.overall),
                                       text_of(cut.cut_length)));
  if (const auto sleeve = text_of(cut.sleeve_length); !sleeve.empty())
    out.paragraphs.push_back(fmt::format("Cut the fire sleeve to {}.", sleeve));
  for (const auto* lines : {&cut.measured, &cut.sleeve_over_ends, &cut.notes})
    out.paragraphs.insert(out.paragraphs.end(), lines->begin(), lines->end());
  std::ranges::transform(cut.card, std::back_inserter(out.steps), &step_of);
  return out;
}

drawing::Section parts_section(const std::vector<hose::PartNeeded>& parts) {
  drawing::Table table{{"What", "How much", "For"}, {}, {0.45, 0.2, 0.35}};
  for (const auto& part : parts) {
    std::string used;
    for (const auto& one : part.used_for) used += (used.empty() ? "" : ", ") + one;
    const auto much = part.count ? std::to_string(*part.count) : text_of(part.length);
    table.rows.push_back({part.what, much, used});
  }
  return {"To fetch", {}, {}, std::move(table)};
}

}  // namespace

drawing::Card cut_card(const hose::HoseCutAnswer& answer, const describe::Calculation& calculation,
                       quantity::Date today) {
  drawing::Card out;
  out.title = "Making card";
  out.subtitle = answer.assemblies.size() == 1
                     ? answer.assemblies.front().name
                     : fmt::format("{} hose assemblies", answer.assemblies.size());
  out.date = today.ok() ? quantity::print_date(today) : std::string{};
  for (const auto& c : calculation.cautions) out.cautions.emplace_back(c.text);
  std::ranges::transform(answer.assemblies, std::back_inserter(out.sections), &section_of);
  if (!answer.parts.empty()) out.sections.push_back(parts_section(answer.parts));
  if (!answer.notes.empty()) out.sections.push_back({"Besides", answer.notes, {}, std::nullopt});
  out.signatures.push_back({"Made and checked as written", {}, {}, {}, false});
  return out;
}

}  // namespace wm::binder
