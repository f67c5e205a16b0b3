#pragma once
/// A problem of a field, in one line.

#include <string>

#include "outcome/result.hpp"

namespace wm::staging::detail {

[[nodiscard]] inline Problem problem(std::string path, Kind kind, std::string what,
                                     std::string expected = {}, std::string example = {}) {
  Problem p;
  p.kind = kind;
  p.path = std::move(path);
  p.what = std::move(what);
  p.expected = std::move(expected);
  p.example = std::move(example);
  return p;
}

}  // namespace wm::staging::detail
