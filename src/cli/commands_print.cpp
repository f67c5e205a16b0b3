#include <fmt/core.h>

#include <filesystem>
#include <fstream>

#include "binder/papers.hpp"
#include "binder/trend_paper.hpp"
#include "calculation/catalogue.hpp"
#include "calculation/json_face.hpp"
#include "cli/commands.hpp"
#include "drawing/text_plot.hpp"

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

int run_trend(const std::string& check, Options options) {
  auto binder = open_binder(options, record::Access::read_only);
  if (!binder || !choose_aircraft(*binder, options)) return k_bad_input;
  const auto input =
      fmt::format(R"({{"aircraft":{},"check":{}}})", calculation::json_string(options.aircraft),
                  calculation::json_string(check));
  if (options.json) return show_view(*binder, "check-history", {input}, options);
  const auto reply = binder->view(
      "check-history",
      [&](const describe::Type& type, void* out) {
        return calculation::read_json(input, type, out);
      },
      clock_now(), unit_set(options));
  if (!reply) return show_problems(reply.error(), options);
  const auto& history = *static_cast<const desk::CheckHistory*>(reply->value.get());
  const auto trend = binder::trend_of(history);
  if (!trend) return show_problems({trend.error()}, options);
  constexpr int k_columns = 64;
  constexpr int k_rows = 15;
  const auto plot = drawing::text_plot(*trend, k_columns, k_rows);
  if (!plot) return show_problems({plot.error()}, options);
  fmt::print("{}\n", *plot);
  for (const auto& line : history.trend_lines) fmt::print("{}\n", line);
  for (const auto& line : history.trend_notes) fmt::print("  {}\n", line);
  return k_done;
}

int run_print(const std::string& kind, const std::string& id, const std::string& file,
              const std::string& paper, Options options) {
  auto binder = open_binder(options, record::Access::read_only);
  if (!binder || !choose_aircraft(*binder, options)) return k_bad_input;
  const auto dot = file.rfind('.');
  const auto ending = dot == std::string::npos ? std::string{} : file.substr(dot + 1);
  describe::Context context;
  context.today = clock_now().today;
  context.units = unit_set(options);
  context.tables = calculation::catalogue().tables();
  context.file = [&](std::string_view hash) -> std::optional<std::string> {
    auto content = binder->attachment(hash);
    if (!content) return std::nullopt;
    return std::move(*content);
  };
  const auto bytes =
      binder::record_paper(*binder, {kind, options.aircraft, id, ending, paper}, context);
  if (!bytes) return show_problems(bytes.error(), options);
  return show_written(file, *bytes, options);
}

}  // namespace wm::cli
