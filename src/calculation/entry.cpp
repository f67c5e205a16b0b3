#include "calculation/entry.hpp"

#include <fmt/core.h>

#include <algorithm>

#include "calculation/detail/words.hpp"
#include "desk/act.hpp"

namespace wm::calculation {
namespace {

/// Those that the declaration names, where it can.
template <class Face>
std::span<const describe::Caution> cautions_of(const Face& face) {
  if constexpr (requires { face.cautions; }) {
    return face.cautions;
  } else {
    return {};
  }
}

}  // namespace

std::string_view word(Entry::Is kind) { return kind == Entry::Is::act ? "act" : "view"; }

const std::vector<Entry>& entries() {
  static const std::vector<Entry> all = [] {
    std::vector<Entry> made;
    for (const auto& a : desk::acts()) {
      made.push_back(
          {Entry::Is::act, a.name, a.purpose, a.input, a.output, cautions_of(a), a.changes_plans});
    }
    for (const auto& v : desk::views()) {
      made.push_back(
          {Entry::Is::view, v.name, v.purpose, v.input, v.output, cautions_of(v), false});
    }
    return made;
  }();
  return all;
}

const Entry* find_entry(Entry::Is kind, std::string_view name) {
  const auto found = std::find_if(entries().begin(), entries().end(),
                                  [&](const Entry& e) { return e.kind == kind && e.name == name; });
  return found == entries().end() ? nullptr : &*found;
}

Problem no_such_name(std::string_view what, std::string_view path, std::string_view name,
                     std::span<const std::string_view> names) {
  const auto near = detail::nearest(name, names);
  std::string list;
  for (const auto one : names) list += (list.empty() ? "" : ", ") + std::string(one);
  return {Kind::not_found,
          std::string(path),
          name.empty() ? fmt::format("which {}?", what)
                       : fmt::format("there is no {} `{}`", what, detail::shown(name)),
          "one of: " + list,
          std::string(near),
          near.empty() ? "" : fmt::format("did you mean `{}`?", near),
          {}};
}

}  // namespace wm::calculation
