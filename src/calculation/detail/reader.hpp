#pragma once
/// The reading rules, once for every face: a neutral tree and a description give a value, or
/// every problem at once.

#include "calculation/detail/tree.hpp"
#include "describe/type.hpp"
#include "outcome/result.hpp"

namespace wm::calculation::detail {

enum class Source : std::uint8_t {
  json,     ///< a person or program: every rule holds
  sheet,    ///< the same, with line and column in the words
  words,    ///< `key=value`: everything is text
  amended,  ///< a payload with some fields given anew as words
  payload,  ///< the journal: accepted once, so only what must be readable is asked
};

/// @param out  A default-constructed value; untouched unless nothing is wrong (a payload, read in
///             one pass for speed, may leave it half written after a problem).
[[nodiscard]] Problems read_tree(const Tree& tree, const describe::Type& type, void* out,
                                 Source source);

/// After so many problems the rest is only counted.
inline constexpr std::size_t k_most_problems = 100;

}  // namespace wm::calculation::detail
