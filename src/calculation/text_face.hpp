#pragma once
/// The text face: `key=value` words in, an aligned answer out, and problems in words that a
/// mechanic can act on.

#include <span>
#include <string>
#include <string_view>

#include "calculation/json_face.hpp"

namespace wm::calculation {

/// Read "wrench=12 in", "items/0/mass=9 lb", "words=[\"a\",\"b\"]" (JSON after the sign), or a
/// whole JSON object in braces.
///
/// Values are text: "4", "yes" and "true" are understood where a count or a yes-no is needed.
/// @param out  A default-constructed value of `type`. It is written only when nothing is wrong.
[[nodiscard]] Problems read_key_values(std::span<const std::string_view> pairs,
                                       const describe::Type& type, void* out);

/// A stored payload with some fields given anew, as a payload again: a correction from the
/// command line. Every rule of the fields is asked.
[[nodiscard]] Checked<std::string> with_fields(std::string_view payload, const describe::Type& type,
                                               void* fresh,
                                               std::span<const std::string_view> pairs);

/// A readable answer for the terminal: one line a field, labels aligned, parts indented.
[[nodiscard]] std::string write_text(const describe::Type& type, const void* value,
                                     const WriteOptions& options = {});

/// An answer for the terminal, and whether it is a finding.
struct Worded {
  std::string text;
  bool finding{};
};

/// A calculation as text: the answer, then sources and cautions.
///
/// @param json  The same answer as JSON instead.
[[nodiscard]] Checked<Worded> call_words(const describe::Calculation& calculation,
                                         std::span<const std::string_view> pairs,
                                         const describe::Context& context,
                                         const WriteOptions& options = {}, bool json = false);

/// Whether an answer is a finding (exit status 1): one of its own fields is a verdict that is not
/// shown to conform (`does-not-conform`, or `undecided`: the meter cannot tell), or a standing
/// past its limit. Nothing tested is nothing found.
[[nodiscard]] bool is_finding(const describe::Type& type, const void* answer);

/// What the terminal shows for `--describe`.
[[nodiscard]] std::string describe_text(const describe::Calculation& calculation);
[[nodiscard]] std::string describe_text(const Entry& entry);

/// Every problem: where and what on the first line, then expected, example, what to do, source.
[[nodiscard]] std::string problems_text(const Problems& problems);

}  // namespace wm::calculation
