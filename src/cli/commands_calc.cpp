#include <fmt/core.h>

#include <unistd.h>
#include <chrono>
#include <filesystem>
#include <fstream>

#include "binder/hose_paper.hpp"
#include "calculation/catalogue.hpp"
#include "calculation/text_face.hpp"
#include "cli/commands.hpp"
#include "record/attachment.hpp"

namespace wm::cli {
namespace {

int list_all(const Options& options) {
  const auto& catalogue = calculation::catalogue();
  if (options.json) {
    fmt::print("{}\n", calculation::list_json(catalogue));
    return k_done;
  }
  for (const auto& c : catalogue.calculations()) fmt::print("{:<20} {}\n", c.name, c.purpose);
  return k_done;
}

/// Progress of long work, only on a terminal and only once it takes a while.
std::function<bool(double)> progress() {
  if (isatty(STDERR_FILENO) == 0) return {};
  const auto start = std::chrono::steady_clock::now();
  return [start](double share) {
    if (std::chrono::steady_clock::now() - start > std::chrono::milliseconds(500)) {
      fmt::print(stderr, "\r{:3.0f} %{}", 100 * share, share >= 1 ? "\n" : "");
    }
    return true;
  };
}

/// A file beside the command line, as an input names it; no larger than an attachment may be.
std::optional<std::string> file_bytes(std::string_view name) {
  const std::filesystem::path path{std::string(name)};
  std::error_code error;
  const auto size = std::filesystem::file_size(path, error);
  if (error || !std::filesystem::is_regular_file(path, error) ||
      size > static_cast<std::uintmax_t>(record::k_attachment_limit))
    return std::nullopt;
  std::ifstream in(path, std::ios::binary);
  std::string out(size, '\0');
  in.read(out.data(), static_cast<std::streamsize>(size));
  if (!in) return std::nullopt;
  return out;
}

describe::Context context_of(const Options& options) {
  describe::Context context;
  context.today = clock_now().today;
  context.units = unit_set(options);
  context.tables = calculation::catalogue().tables();
  context.progress = progress();
  context.file = file_bytes;
  return context;
}

/// What it gives, drawn into a file whose ending says how.
int draw(const CalcWanted& wanted, const Options& options) {
  const auto dot = wanted.file.rfind('.');
  const auto ending = dot == std::string::npos ? std::string{} : wanted.file.substr(dot + 1);
  const auto made = binder::paper_of({wanted.name, ending, wanted.paper},
                                     from_words(wanted.words, {}), context_of(options));
  return made ? show_written(wanted.file, made->bytes, options)
              : show_problems(made.error(), options);
}

}  // namespace

int run_calc(const CalcWanted& wanted, const Options& options) {
  if (wanted.list) return list_all(options);
  const auto* found = calculation::catalogue().find(wanted.name);
  if (found == nullptr) {
    std::vector<std::string_view> names;
    for (const auto& c : calculation::catalogue().calculations()) names.emplace_back(c.name);
    return show_problems({calculation::no_such_name("calculation", "NAME", wanted.name, names)},
                         options);
  }
  if (wanted.describe) {
    fmt::print("{}\n", options.json ? calculation::describe_json(*found)
                                    : calculation::describe_text(*found));
    return k_done;
  }
  if (!wanted.file.empty()) return draw(wanted, options);
  const auto context = context_of(options);
  const std::vector<std::string_view> words(wanted.words.begin(), wanted.words.end());
  const auto answer =
      calculation::call_words(*found, words, context, {unit_set(options), {}, false}, options.json);
  if (!answer) return show_problems(answer.error(), options);
  fmt::print("{}{}", answer->text, answer->text.ends_with('\n') ? "" : "\n");
  return answer->finding ? k_finding : k_done;
}

}  // namespace wm::cli
