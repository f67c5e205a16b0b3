// What docs/method/journal.md promises a stranger: the lines printed there check a binder.
#include <array>
#include <cstdio>

#include "record/verify.hpp"
#include "support.hpp"

namespace wm::record::test {
namespace {

/// The Python between the fences of the method note.
std::string printed_script() {
  const std::string page =
      file_bytes(std::filesystem::path(WM_SOURCE_DIR) / "docs" / "method" / "journal.md");
  const std::string fence = "```python\n";
  const auto begin = page.find(fence) + fence.size();
  return page.substr(begin, page.find("```", begin) - begin);
}

struct Ran {
  int status{};
  std::string said;
};

Ran run(const std::filesystem::path& script, const std::filesystem::path& binder) {
  Ran ran;
  const std::string command = "python3 '" + script.string() + "' '" + binder.string() + "' 2>&1";
  FILE* pipe = ::popen(command.c_str(), "r");
  std::array<char, 256> buffer{};
  while (std::fgets(buffer.data(), buffer.size(), pipe) != nullptr) ran.said += buffer.data();
  ran.status = ::pclose(pipe);
  return ran;
}

TEST(Stranger, ChecksABinderWithThePrintedLines) {
  if (std::system("python3 -c 'import sqlite3' 2>/dev/null") != 0) {
    GTEST_SKIP() << "no python3 with sqlite3 on this machine";
  }
  TemporaryFolder folder;
  const auto script = folder / "check.py";
  const auto path = folder / "a.binder";
  write_file(script, printed_script());
  Head last;
  {
    Journal journal = a_journal(path, 20);
    need(journal.append(an_event(21, "{\"text\":\"\xc2\xb5 \xe2\x84\xa6\", \"n\": 1.50 }")));
    last = journal.last();
  }
  const Ran clean = run(script, path);
  EXPECT_EQ(clean.status, 0) << clean.said;
  EXPECT_EQ(clean.said, format_head(last) + "\n");
  tamper(path, "UPDATE journal SET author = 'N. Example' WHERE sequence = 5");
  const Ran altered = run(script, path);
  EXPECT_NE(altered.status, 0);
  EXPECT_EQ(altered.said, "entry 5 does not agree\n");
}

}  // namespace
}  // namespace wm::record::test
