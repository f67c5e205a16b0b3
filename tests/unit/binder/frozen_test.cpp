// Frozen samples: a stored body of every kind and version can be read for ever, byte for byte.
//
// tests/unit/binder/frozen/<kind>.<version>.json was written once, when that version was new, and
// is never changed. A new version of a kind gets a new file and a lift (binder/stored.cpp); with
// WM_WRITE_FROZEN set, missing files are written from example values.
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>

#include "binder/stored.hpp"
#include "calculation/json_face.hpp"

namespace {

using namespace wm;
namespace fs = std::filesystem;

fs::path folder() { return fs::path(WM_SOURCE_DIR) / "tests/unit/binder/frozen"; }
std::string content(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}
fs::path file_of(const bay::EventKind& kind) {
  return folder() / (std::string(kind.word) + "." + std::to_string(kind.version) + ".json");
}

/// A body with as much in it as the examples of its fields give.
std::string sample(const bay::EventKind& kind) {
  auto payload = kind.make();
  const auto problems = calculation::read_json(calculation::example_json(*kind.type), *kind.type,
                                               bay::body_of(payload));
  EXPECT_TRUE(problems.empty()) << kind.word << calculation::write_problems(problems);
  return binder::encode(payload);
}

TEST(FrozenSamples, ThereIsOneOfEachKindInItsPresentVersion) {
  for (const auto& kind : bay::event_kinds()) {
    const auto path = file_of(kind);
    if (!fs::exists(path) && std::getenv("WM_WRITE_FROZEN") != nullptr)
      std::ofstream(path, std::ios::binary) << sample(kind);
    EXPECT_TRUE(fs::exists(path)) << path.filename();
  }
}

TEST(FrozenSamples, EachIsReadAndWrittenBackTheSame) {
  int seen = 0;
  for (const auto& entry : fs::directory_iterator(folder())) {
    const auto name = entry.path().stem().string();
    const auto dot = name.rfind('.');
    ASSERT_NE(dot, std::string::npos) << name;
    const auto word = name.substr(0, dot);
    const auto version = std::stoi(name.substr(dot + 1));
    const auto* kind = bay::find_kind(word);
    ASSERT_NE(kind, nullptr) << word;
    const auto body = content(entry.path());
    const auto payload = binder::decode_payload(word, version, body);
    ASSERT_TRUE(payload) << name << calculation::write_problems(payload.error());
    if (version == kind->version) {
      EXPECT_EQ(binder::encode(*payload), body) << name;
    }
    ++seen;
  }
  EXPECT_GE(seen, static_cast<int>(bay::event_kinds().size()));
}

TEST(FrozenSamples, AnUnknownKindOrVersionIsSaidToBeNewer) {
  for (const auto& [word, version] : {std::pair{"wings-painted", 1}, {"defect-noted", 99}}) {
    const auto payload = binder::decode_payload(word, version, "{}");
    ASSERT_FALSE(payload);
    EXPECT_EQ(payload.error()[0].kind, Kind::not_applicable);
  }
  EXPECT_FALSE(binder::decode_payload("defect-noted", 0, "{}"));
}

}  // namespace
