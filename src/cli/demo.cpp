#include "cli/demo.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cstdlib>
#include <cstring>
#include <nlohmann/json.hpp>
#include <span>
#include <string>
#include <string_view>
#include <system_error>
#include <utility>

#include "calculation/json_face.hpp"
#include "calculation/toml_face.hpp"

// Put into the program at build time by demo.cmake.
extern "C" {
extern const char wm_demo_pebblewing_toml[], wm_demo_pebblewing_toml_end[];
extern const char wm_demo_thornback_toml[], wm_demo_thornback_toml_end[];
extern const char wm_demo_stripe_png[], wm_demo_stripe_png_end[];
extern const char wm_demo_history_jsonl[], wm_demo_history_jsonl_end[];
}

namespace wm::cli {
namespace {

using Json = nlohmann::json;
namespace fs = std::filesystem;

constexpr const char* k_name = "pebblewing.binder";
/// Memory as a folder, where the system has it.
constexpr const char* k_memory = "/dev/shm";

std::string_view bytes(const char* begin, const char* end) {
  return {begin, static_cast<std::size_t>(end - begin)};
}

/// A file of demo/, empty for a name that is none.
std::string_view demo_file(std::string_view name) {
  if (name == "pebblewing.toml") return bytes(wm_demo_pebblewing_toml, wm_demo_pebblewing_toml_end);
  if (name == "thornback.toml") return bytes(wm_demo_thornback_toml, wm_demo_thornback_toml_end);
  if (name == "stripe.png") return bytes(wm_demo_stripe_png, wm_demo_stripe_png_end);
  if (name == "history.jsonl") return bytes(wm_demo_history_jsonl, wm_demo_history_jsonl_end);
  return {};
}

Problem problem(Kind kind, std::string path, std::string what, std::string expected = {},
                std::string do_next = {}) {
  return {kind, std::move(path), std::move(what), std::move(expected), {}, std::move(do_next), {}};
}

std::string text_of(const Json& line, const char* key) {
  const auto found = line.find(key);
  return found != line.end() && found->is_string() ? found->get<std::string>() : std::string{};
}

Result<record::Attachment> store(binder::Binder& binder, std::string_view content) {
  return binder.put_attachment([content](std::span<std::byte> to) mutable {
    const auto n = std::min(to.size(), content.size());
    std::memcpy(to.data(), content.data(), n);
    content.remove_prefix(n);
    return n;
  });
}

/// One line of the script: an act, its input written out, or taken from a file beside it.
Problems replay(binder::Binder& binder, Json line, const binder::Now& now) {
  binder::ActCall call;
  call.name = text_of(line, "act");
  call.id = text_of(line, "id");
  call.happened = text_of(line, "happened");
  call.author = text_of(line, "author");
  binder::Now then = now;
  const auto day = quantity::parse_date(call.happened.substr(0, 10));
  if (!day) return {day.error()};
  then.today = *day;
  Json input = line.contains("input") ? std::move(line["input"]) : Json::object();
  if (const auto name = text_of(line, "attach"); !name.empty()) {
    const auto content = demo_file(name);
    const auto stored = store(binder, content);
    if (!stored) return {stored.error()};
    input["hash"] = stored->hash;
    input["bytes"] = stored->size;
  }
  const auto sheet = text_of(line, "sheet");
  const auto written = input.dump();
  const auto reader = [&](const describe::Type& type, void* out) {
    return sheet.empty() ? calculation::read_json(written, type, out)
                         : calculation::read_toml(demo_file(sheet), type, out);
  };
  const auto reply = binder.act(call, reader, then, quantity::UnitSet::us_customary);
  return reply ? Problems{} : reply.error();
}

/// The whole script; a problem names its line.
Checked<std::int64_t> replay_all(binder::Binder& binder, const binder::Now& now) {
  std::int64_t acts = 0;
  std::string_view rest = demo_file("history.jsonl");
  for (int number = 1; !rest.empty(); ++number) {
    const auto end = std::min(rest.find('\n'), rest.size());
    const auto text = rest.substr(0, end);
    rest.remove_prefix(std::min(end + 1, rest.size()));
    auto line = Json::parse(text, nullptr, false);
    const auto where = fmt::format("history.jsonl/{}", number);
    if (!line.is_object()) {
      return Fail(Problems{problem(Kind::damaged, where, "this line of the demo cannot be read")});
    }
    if (!line.contains("act")) continue;  // a comment
    auto problems = replay(binder, std::move(line), now);
    for (auto& p : problems) p.path = p.path.empty() ? where : where + "/" + p.path;
    if (!problems.empty()) return Fail(std::move(problems));
    ++acts;
  }
  return acts;
}

/// A folder for the making, gone with it. Four hundred acts, each synchronised, would keep a slow
/// disk busy for a quarter of a minute, and nobody needs half a demo after a power cut: it is made
/// in memory and reaches the disk as one durable copy. Without such memory it is made beside it.
class Workshop {
 public:
  explicit Workshop(const fs::path& beside) {
    for (const auto& parent : {fs::path(k_memory), beside}) {
      auto name = (parent / "unfinished-demo-XXXXXX").string();
      if (::mkdtemp(name.data()) == nullptr) continue;
      folder_ = name;
      return;
    }
  }
  ~Workshop() {
    std::error_code ignored;
    if (!folder_.empty()) fs::remove_all(folder_, ignored);
  }
  Workshop(const Workshop&) = delete;
  Workshop& operator=(const Workshop&) = delete;

  [[nodiscard]] bool usable() const { return !folder_.empty(); }
  [[nodiscard]] fs::path binder() const { return folder_ / k_name; }

 private:
  fs::path folder_;
};

}  // namespace

Checked<DemoMade> make_demo(const fs::path& folder, const binder::Now& now) {
  std::error_code error;
  fs::create_directories(folder, error);
  if (error) {
    return Fail(Problems{problem(Kind::refused, folder.string(),
                                 "the folder cannot be made: " + error.message(),
                                 "a folder that may be written")});
  }
  const auto path = folder / k_name;
  if (fs::exists(path, error)) {
    return Fail(Problems{problem(
        Kind::duplicate, path.string(), "a demo binder is there already; it is left as it is",
        "a folder without " + std::string(k_name), "Open it, or give another folder.")});
  }
  const Workshop workshop(folder);
  if (!workshop.usable()) {
    return Fail(Problems{problem(Kind::refused, folder.string(), "nothing can be written here",
                                 "a folder that may be written")});
  }
  auto binder = binder::Binder::create(workshop.binder());
  if (!binder) return Fail(Problems{binder.error()});
  auto acts = replay_all(**binder, now);
  if (!acts) return Fail(acts.error());
  const DemoMade made{path, *acts, (*binder)->last().sequence};
  if (auto copied = (*binder)->copy_to(path); !copied) return Fail(Problems{copied.error()});
  return made;
}

}  // namespace wm::cli
