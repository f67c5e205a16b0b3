// What a card must keep to before it is laid out.
#include <algorithm>
#include <cctype>
#include <cmath>

#include <fmt/format.h>

#include "drawing/detail/card_pieces.hpp"

namespace wm::drawing::detail {
namespace {

constexpr std::size_t k_longest_text = 200'000;
constexpr std::size_t k_most_bytes = 4'000'000;
constexpr std::size_t k_most_lines = 50'000;

Problem at(Kind kind, std::string path, std::string what, std::string expected) {
  return {kind, std::move(path), std::move(what), std::move(expected), {}, {}, {}};
}

/// Remembers the first thing that is wrong.
class Checker {
 public:
  void text(const std::string& text, const std::string& path) {
    bytes_ += text.size();
    if (text.size() > k_longest_text)
      wrong(at(Kind::out_of_bounds, path, fmt::format("a text of {} bytes", text.size()),
               fmt::format("at most {} bytes for one field of a card", k_longest_text)));
  }
  /// One more thing that takes at least a line.
  void line() { ++lines_; }
  /// Refuse at once what would take minutes to lay out and then too many pages.
  void size() {
    if (bytes_ > k_most_bytes || lines_ > k_most_lines)
      wrong(at(Kind::out_of_bounds, "",
               fmt::format("a card of {} bytes and {} rows, steps or paragraphs", bytes_, lines_),
               fmt::format("at most {} bytes and {} rows, steps or paragraphs; print long lists "
                           "in parts",
                           k_most_bytes, k_most_lines)));
  }
  void wrong(Problem problem) {
    if (!first_) first_ = std::move(problem);
  }
  [[nodiscard]] Result<Done> answer() const {
    if (first_) return Fail(*first_);
    return Done{};
  }

 private:
  std::optional<Problem> first_;
  std::size_t bytes_{};
  std::size_t lines_{};
};

void check_shares(Checker& checker, const Table& table, std::size_t columns,
                  const std::string& path) {
  if (table.shares.empty()) return;
  if (table.shares.size() != columns)
    return checker.wrong(at(Kind::out_of_bounds, path + "/shares",
                            fmt::format("{} shares for {} columns", table.shares.size(), columns),
                            "one share a column, or none"));
  for (double share : table.shares)
    if (!(share > 0 && share < 1e6))
      return checker.wrong(at(Kind::out_of_bounds, path + "/shares",
                              fmt::format("a share of {}", share), "a number above zero"));
}

void check_table(Checker& checker, const Table& table, double width, const std::string& path) {
  std::size_t columns = table.heads.size();
  for (std::size_t r = 0; r < table.rows.size(); ++r) {
    const auto& cells = table.rows[r];
    checker.line();
    if (!table.heads.empty() && cells.size() > table.heads.size())
      checker.wrong(at(Kind::out_of_bounds, fmt::format("{}/rows/{}", path, r),
                       fmt::format("{} cells under {} heads", cells.size(), table.heads.size()),
                       "no more cells than heads"));
    columns = std::max(columns, cells.size());
    for (std::size_t c = 0; c < cells.size(); ++c)
      checker.text(cells[c], fmt::format("{}/rows/{}/{}", path, r, c));
  }
  for (std::size_t c = 0; c < table.heads.size(); ++c)
    checker.text(table.heads[c], fmt::format("{}/heads/{}", path, c));
  check_shares(checker, table, columns, path);
  if (checker.answer())
    for (double w : column_widths(table, width))
      if (w < k_narrowest_column)
        return checker.wrong(at(Kind::out_of_bounds, path, fmt::format("a column of {:.1f} mm", w),
                                fmt::format("columns of at least {} mm", k_narrowest_column)));
}

void check_step(Checker& checker, const Step& step, const std::string& path) {
  checker.line();
  checker.text(step.text, path + "/text");
  checker.text(step.torque, path + "/torque");
  checker.text(step.torque_source, path + "/torque_source");
  checker.text(step.state, path + "/state");
  for (std::size_t r = 0; r < step.readings.size(); ++r) {
    const ReadingField& f = step.readings[r];
    checker.line();
    for (const std::string* t : {&f.label, &f.unit, &f.limit, &f.source, &f.value, &f.verdict})
      checker.text(*t, fmt::format("{}/readings/{}", path, r));
  }
}

void check_record_mark(Checker& checker, const Card& card) {
  if (card.sequence < 0)
    checker.wrong(at(Kind::out_of_bounds, "sequence",
                     fmt::format("record sequence number {}", card.sequence), "zero or more"));
  if (card.head.empty()) return;
  const bool word = std::ranges::all_of(
      card.head, [](char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0; });
  if (!word || card.head.size() < 8 || card.head.size() > 128)
    checker.wrong(at(Kind::bad_text, "head", "the head hash of the record cannot be read",
                     "8 to 128 letters and digits"));
}

}  // namespace

Result<Done> check_card(const Card& card, double width) {
  Checker checker;
  if (card.title.find_first_not_of(" \t\r\n") == std::string::npos)
    checker.wrong(at(Kind::missing, "title", "the card has no title", "what the card is"));
  checker.text(card.title, "title");
  checker.text(card.subtitle, "subtitle");
  checker.text(card.aircraft, "aircraft");
  checker.text(card.registration, "registration");
  checker.text(card.date, "date");
  checker.text(card.defer_line, "defer_line");
  check_record_mark(checker, card);
  for (std::size_t i = 0; i < card.facts.size(); ++i) {
    checker.text(card.facts[i].first, fmt::format("facts/{}", i));
    checker.text(card.facts[i].second, fmt::format("facts/{}", i));
  }
  for (std::size_t i = 0; i < card.cautions.size(); ++i)
    checker.text(card.cautions[i], fmt::format("cautions/{}", i));
  for (std::size_t s = 0; s < card.sections.size(); ++s) {
    const Section& section = card.sections[s];
    const std::string path = fmt::format("sections/{}", s);
    checker.text(section.heading, path + "/heading");
    for (std::size_t i = 0; i < section.paragraphs.size(); ++i) {
      checker.line();
      checker.text(section.paragraphs[i], fmt::format("{}/paragraphs/{}", path, i));
    }
    for (std::size_t i = 0; i < section.steps.size(); ++i)
      check_step(checker, section.steps[i], fmt::format("{}/steps/{}", path, i));
    if (section.table) check_table(checker, *section.table, width, path + "/table");
  }
  for (std::size_t i = 0; i < card.signatures.size(); ++i) {
    const SignBlock& b = card.signatures[i];
    checker.line();
    for (const std::string* t : {&b.role, &b.name, &b.certificate, &b.date})
      checker.text(*t, fmt::format("signatures/{}", i));
  }
  checker.size();
  return checker.answer();
}

}  // namespace wm::drawing::detail
