#pragma once
/// A card to print: plain fields, filled from the record by another room, laid out here.
///
/// Texts are shown as given: numbers come rounded and with their unit. Nothing here
/// judges; an empty value is a box to fill in by pencil.

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "drawing/display_list.hpp"
#include "drawing/pdf.hpp"

namespace wm::drawing {

enum class Paper { a4, letter };

struct ReadingField {
  std::string label, unit;
  std::string limit;    ///< with its unit, "0.20 V at most"; empty prints "no limit given"
  std::string source;   ///< where the limit comes from; empty prints "source not given"
  std::string value;    ///< empty: to be filled in by pencil
  std::string verdict;  ///< empty: a line to fill in
};

struct Step {
  std::string text;
  std::vector<ReadingField> readings;
  std::string torque;  ///< with unit
  std::string torque_source;
  bool second_person{};  ///< a second person looks and puts their initials
  std::string state;     ///< "", "done", "open"
};

struct SignBlock {
  std::string role;  ///< what is signed, "Work done as described"
  std::string name, certificate, date;
  bool signed_already{};  ///< signed in the record: no empty line to sign
};

struct Table {
  std::vector<std::string> heads;
  std::vector<std::vector<std::string>> rows;
  std::vector<double> shares;  ///< of the width, one a column; empty: all alike
};

struct Section {
  std::string heading;
  std::vector<std::string> paragraphs;
  std::vector<Step> steps;  ///< numbered through the whole card
  std::optional<Table> table;
};

struct Card {
  std::string title, subtitle, aircraft, registration, date;
  std::vector<std::pair<std::string, std::string>> facts;
  std::vector<std::string> cautions;
  std::vector<Section> sections;
  std::vector<SignBlock> signatures;
  std::int64_t sequence{};  ///< of the record when the card was made
  std::string head;         ///< full head hash of the record; empty: not tied to the record
  std::string defer_line;   ///< empty: the standing sentence
};

/// The sentence that closes every card.
[[nodiscard]] const std::string& standing_defer_line();

/// What the QR code of a card holds: "WM1 <sequence> <head>".
[[nodiscard]] std::string record_mark(const Card& card);

/// The pages of a card, in order. Nothing is cut off: long text flows on to the next page.
///
/// @return  The pages, or
///          `Kind::missing`        no title (path "title"),
///          `Kind::bad_text`       a head that is not 8 to 128 letters and digits,
///          `Kind::out_of_bounds`  a negative sequence, a text above 200 kB, a table with
///                                 shares or cells that do not match its heads or with
///                                 columns narrower than 8 mm, a card above 1000 pages, 4 MB
///                                 or 50000 rows, steps and paragraphs.
///          Each with the path of the field.
[[nodiscard]] Result<std::vector<Page>> lay_out(const Card& card, Paper paper);

/// The card as one PDF file.
/// @param created  see `PdfInfo::created`.
[[nodiscard]] Result<std::string> card_pdf(const Card& card, Paper paper,
                                           const std::string& created);

}  // namespace wm::drawing
