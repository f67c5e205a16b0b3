#pragma once
/// How a function says that it worked, or why it did not.
///
/// One portable type: no std::expected, so that the pure rooms also compile where
/// the standard library lacks it (docs/decisions/0002-own-result.md).

#include <cassert>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace wm {

/// What sort of thing went wrong; faces map it to words and exit status.
enum class Kind {
  bad_text,         ///< the text cannot be read as what is asked
  wrong_dimension,  ///< a length where a pressure is needed, gauge for absolute
  out_of_bounds,    ///< readable, but outside what the field allows
  missing,          ///< a needed field is not there
  unknown_field,    ///< a key that the description does not know
  unknown_choice,   ///< not one of the listed words
  duplicate,        ///< an identity that is already taken
  not_found,        ///< refers to something that does not exist
  conflict,         ///< contradicts the record, or the record moved on meanwhile
  not_applicable,   ///< the method does not hold here
  refused,          ///< a rule of the work forbids it (with the reason)
  stopped,          ///< the user stopped a long calculation
  damaged           ///< stored bytes do not agree with themselves
};

/// One thing that is wrong, in words that a mechanic can act on.
struct Problem {
  Kind kind{Kind::bad_text};
  std::string path;      ///< field, e.g. "leads/2/reading"; empty for the whole
  std::string what;      ///< what is wrong, with figures and units
  std::string expected;  ///< what was expected instead
  std::string example;   ///< one that would be accepted
  std::string do_next;   ///< what to do about it
  std::string source;    ///< where the limit or rule comes from

  friend bool operator==(const Problem&, const Problem&) = default;
};

using Problems = std::vector<Problem>;

namespace detail {
template <class E>
struct Failure {
  E error;
};
}  // namespace detail

/// `return Fail(problem);`
[[nodiscard]] inline detail::Failure<Problem> Fail(Problem problem) { return {std::move(problem)}; }
[[nodiscard]] inline detail::Failure<Problem> Fail(Kind kind, std::string what,
                                                   std::string expected = {},
                                                   std::string example = {}) {
  return {Problem{kind, {}, std::move(what), std::move(expected), std::move(example), {}, {}}};
}
/// `return Fail(problems);`
[[nodiscard]] inline detail::Failure<Problems> Fail(Problems problems) {
  return {std::move(problems)};
}

namespace detail {
/// A value or what went wrong. `E` is Problem (Result) or Problems (Checked).
template <class T, class E>
class [[nodiscard]] Outcome {
 public:
  // NOLINTNEXTLINE(google-explicit-constructor): `return value;` must read naturally
  Outcome(T value) : state_(std::in_place_index<0>, std::move(value)) {}
  // NOLINTNEXTLINE(google-explicit-constructor): `return Fail(...);` likewise
  Outcome(Failure<E> failure) : state_(std::in_place_index<1>, std::move(failure.error)) {}

  [[nodiscard]] bool has_value() const { return state_.index() == 0; }
  explicit operator bool() const { return has_value(); }

  /// @pre has_value()
  [[nodiscard]] T& value() & {
    assert(has_value());
    return *std::get_if<0>(&state_);
  }
  [[nodiscard]] const T& value() const& {
    assert(has_value());
    return *std::get_if<0>(&state_);
  }
  [[nodiscard]] T&& value() && {
    assert(has_value());
    return std::move(*std::get_if<0>(&state_));
  }
  [[nodiscard]] T& operator*() & { return value(); }
  [[nodiscard]] const T& operator*() const& { return value(); }
  [[nodiscard]] T&& operator*() && { return std::move(*this).value(); }
  [[nodiscard]] T* operator->() { return &value(); }
  [[nodiscard]] const T* operator->() const { return &value(); }

  /// @pre !has_value()
  [[nodiscard]] const E& error() const& {
    assert(!has_value());
    return *std::get_if<1>(&state_);
  }
  [[nodiscard]] E&& error() && {
    assert(!has_value());
    return std::move(*std::get_if<1>(&state_));
  }

 private:
  std::variant<T, E> state_;
};
}  // namespace detail

/// A value, or the one thing that is wrong.
template <class T>
using Result = detail::Outcome<T, Problem>;

/// A value, or everything that is wrong, each with its path.
template <class T>
using Checked = detail::Outcome<T, Problems>;

/// For functions that give nothing back but may refuse.
struct Done {
  friend bool operator==(Done, Done) = default;
};

}  // namespace wm
