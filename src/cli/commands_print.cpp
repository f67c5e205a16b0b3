#include <fmt/core.h>

#include <fstream>

#include "binder/cards.hpp"
#include "cli/commands.hpp"

namespace wm::cli {

int run_print(const std::string& kind, const std::string& id, const std::string& file,
              const std::string& paper, Options options) {
  auto binder = open_binder(options, record::Access::read_only);
  if (!binder || !choose_aircraft(*binder, options)) return k_bad_input;
  const auto dot = file.rfind('.');
  const auto ending = dot == std::string::npos ? std::string{} : file.substr(dot + 1);
  const auto card_kind = binder::card_kind(kind);
  if (!card_kind) return show_problems({card_kind.error()}, options);
  std::optional<Problem> problem;
  std::string bytes;
  binder->look([&](const bay::State& state) {
    const auto card = binder::card(state, {*card_kind, options.aircraft, id}, clock_now().today);
    if (!card) {
      problem = card.error();
      return;
    }
    auto printed = binder::print_card(
        *card, paper == "letter" ? drawing::Paper::letter : drawing::Paper::a4, ending);
    if (printed)
      bytes = std::move(*printed);
    else
      problem = printed.error();
  });
  if (problem) return show_problems({*problem}, options);
  std::ofstream out(file, std::ios::binary | std::ios::trunc);
  out << bytes;
  out.flush();
  if (!out) {
    fmt::print(stderr, "Cannot write {}: does the folder exist, is there room?\n", file);
    return k_machine;
  }
  fmt::print("Wrote {} ({} bytes).\n", file, bytes.size());
  return k_done;
}

}  // namespace wm::cli
