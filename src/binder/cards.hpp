#pragma once
/// Cards filled from the record: work card, stage card, record entry.

#include "bay/state.hpp"
#include "drawing/card.hpp"

namespace wm::binder {

enum class CardKind { work, stage, entry };
/// "work", "stage", "entry". @return unknown_choice
[[nodiscard]] Result<CardKind> card_kind(std::string_view word);

struct CardWanted {
  CardKind kind{CardKind::work};
  std::string aircraft;
  std::string id;  ///< of the stage, or of the entry
};

/// The card as the record stands. @return not_found.
[[nodiscard]] Result<drawing::Card> card(const bay::State& state, const CardWanted& wanted,
                                         quantity::Date today);

/// "pdf", "svg" (first page) or "png" (first page). @return unknown_choice for another ending.
[[nodiscard]] Result<std::string> print_card(const drawing::Card& card, drawing::Paper paper,
                                             std::string_view ending);

}  // namespace wm::binder
