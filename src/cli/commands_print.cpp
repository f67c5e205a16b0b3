#include <fmt/core.h>

#include <filesystem>
#include <fstream>

#include "binder/cards.hpp"
#include "calculation/json_face.hpp"
#include "cli/commands.hpp"

namespace wm::cli {
bool write_whole(const std::string& file, const std::string& bytes) {
  const std::string part = file + ".part";
  std::error_code error;
  {
    std::ofstream out(part, std::ios::binary | std::ios::trunc);
    out << bytes;
    out.flush();
    if (!out) error = std::make_error_code(std::errc::io_error);
  }
  if (!error) std::filesystem::rename(part, file, error);
  if (!error) return true;
  std::error_code ignored;
  std::filesystem::remove(part, ignored);
  return false;
}

int show_written(const std::string& file, const std::string& bytes, const Options& options) {
  if (!write_whole(file, bytes)) {
    fmt::print(stderr, "Cannot write {}: does the folder exist, is there room?\n", file);
    return k_machine;
  }
  if (options.json) {
    fmt::print("{{\"file\":{},\"bytes\":{}}}\n", calculation::json_string(file), bytes.size());
    return k_done;
  }
  fmt::print("Wrote {} ({} bytes).\n", file, bytes.size());
  return k_done;
}

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
  return show_written(file, bytes, options);
}

}  // namespace wm::cli
