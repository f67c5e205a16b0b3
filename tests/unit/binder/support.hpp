#pragma once
/// What the tests of the binder share: a folder that goes away again, and acts given as JSON text.

#include <fmt/core.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <stdexcept>
#include <string>

#include "binder/binder.hpp"
#include "calculation/json_face.hpp"
#include "desk/views.hpp"

namespace wm::binder::test {

inline const Now k_now{"2026-11-25T09:12:00Z", *quantity::parse_date("2026-11-25")};

class Folder {
 public:
  Folder() {
    // In memory where there is such a place: nothing here asks what a power cut would leave.
    const std::filesystem::path memory = "/dev/shm";
    const bool usable = ::access(memory.c_str(), W_OK | X_OK) == 0;
    auto pattern =
        ((usable ? memory : std::filesystem::temp_directory_path()) / "wm-binder-XXXXXX").string();
    if (::mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("no temporary folder");
    path_ = pattern;
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  [[nodiscard]] std::filesystem::path operator/(std::string_view name) const {
    return path_ / name;
  }

 private:
  std::filesystem::path path_;
};

inline InputReader json(std::string text) {
  return [text = std::move(text)](const describe::Type& type, void* out) {
    return calculation::read_json(text, type, out);
  };
}
inline Checked<Reply> act(Binder& binder, const std::string& name, const std::string& id,
                          const std::string& input) {
  return binder.act({name, id, {}, "anna", "laptop", {}, false}, json(input), k_now,
                    quantity::UnitSet::us_customary);
}
template <class Page>
Page look(Binder& binder, const std::string& name, const std::string& input) {
  const auto reply = binder.view(name, json(input), k_now, quantity::UnitSet::us_customary);
  EXPECT_TRUE(reply) << calculation::write_problems(reply ? Problems{} : reply.error());
  return reply ? *static_cast<const Page*>(reply->value.get()) : Page{};
}
inline std::string told(const Checked<Reply>& reply) {
  return reply ? "" : calculation::write_problems(reply.error());
}

inline constexpr const char* k_describe = R"({"id":"bird","name":"Bird","registration":"Q-BRD"})";
inline constexpr const char* k_defect =
    R"({"aircraft":"bird","id":"film","text":"oil film below cylinder 4"})";

/// A binder in a folder with one described aircraft and one position.
inline std::unique_ptr<Binder> with_bird(const std::filesystem::path& path) {
  auto made = Binder::create(path);
  EXPECT_TRUE(made);
  auto binder = std::move(*made);
  EXPECT_TRUE(act(*binder, "describe-aircraft", "begin", k_describe));
  EXPECT_TRUE(act(*binder, "add-position", "place",
                  R"({"aircraft":"bird","id":"hose","name":"Oil hose","system":"oil"})"));
  return binder;
}

}  // namespace wm::binder::test
