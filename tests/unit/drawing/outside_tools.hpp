#pragma once
/// Programs that judge our output from outside; tests skip with a reason without them.

#include <stdlib.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>

namespace wm::drawing::test {

inline bool have(const std::string& program) {
  return std::system(("command -v " + program + " >/dev/null 2>&1").c_str()) == 0;  // NOLINT
}

/// A file that goes when the test ends.
class TemporaryFile {
 public:
  TemporaryFile(const std::string& ending, const std::string& bytes) {
    std::string pattern = (std::filesystem::temp_directory_path() / "wm-drawing-XXXXXX").string();
    pattern += ending;
    const int handle = mkstemps(pattern.data(), static_cast<int>(ending.size()));
    if (handle >= 0) close(handle);
    path_ = pattern;
    std::ofstream{path_, std::ios::binary} << bytes;
  }
  ~TemporaryFile() {
    std::error_code ignored;
    std::filesystem::remove(path_, ignored);
  }
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;
  [[nodiscard]] const std::string& path() const { return path_; }

 private:
  std::string path_;
};

struct Ran {
  int status{-1};
  std::string output;
};

inline Ran run(const std::string& command) {
  Ran out;
  FILE* pipe = popen((command + " 2>&1").c_str(), "r");  // NOLINT
  if (pipe == nullptr) return out;
  std::array<char, 4096> buffer{};
  for (std::size_t n = 0; (n = fread(buffer.data(), 1, buffer.size(), pipe)) > 0;)
    out.output.append(buffer.data(), n);
  out.status = pclose(pipe);
  return out;
}

/// Runs of white space become one space.
inline std::string words_of(const std::string& text) {
  std::string out;
  for (char c : text) {
    const bool space = c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == '\f';
    if (!space)
      out += c;
    else if (!out.empty() && out.back() != ' ')
      out += ' ';
  }
  return out;
}

}  // namespace wm::drawing::test
