#include <fmt/core.h>

#include <algorithm>
#include <set>

#include "calculation/catalogue.hpp"
#include "calculation/detail/words.hpp"
#include "calculation/json_face.hpp"
#include "calculation/manual_face.hpp"
#include "quantity/text.hpp"

namespace wm::calculation {
namespace {

using describe::Field;
using describe::Shape;
using describe::Type;

using Complaints = std::vector<std::string>;

bool is_key(std::string_view key) {
  return !key.empty() && key[0] >= 'a' && key[0] <= 'z' &&
         std::all_of(key.begin(), key.end(), [](char c) {
           return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_';
         });
}

class TypeCheck {
 public:
  [[nodiscard]] Complaints take() { return std::move(out_); }

  void look(const Type& type) {
    if (!seen_.insert(&type).second) return;
    if (type.of != nullptr) look(*type.of);
    for (const auto& a : type.alternatives) {
      look(*a.type);
      if (describe::find_field(*a.type, "is") != nullptr) {
        say("{}: the key `is` tells alternatives apart and cannot be a field", a.type->name);
      }
    }
    std::set<std::string_view> words;
    for (const auto& a : type.alternatives) {
      if (!words.insert(a.word).second) say("two alternatives are called `{}`", a.word);
    }
    if (type.shape == Shape::choice) choice(type);
    if (type.shape == Shape::record) record(type);
  }

 private:
  template <class... A>
  void say(fmt::format_string<A...> words, A&&... values) {
    out_.push_back(fmt::format(words, std::forward<A>(values)...));
  }

  void choice(const Type& type) {
    if (type.name.empty() || type.choices.empty()) say("a choice without a name or words");
    std::set<std::string_view> values;
    for (const auto& c : type.choices) {
      if (c.label.empty()) say("{}: `{}` has no label", type.name, c.value);
      if (!values.insert(c.value).second) say("{}: `{}` stands twice", type.name, c.value);
    }
  }

  void record(const Type& type) {
    if (type.name.empty()) say("a record without a name");
    if (const auto gap = describe::undescribed_gap(type); !gap.empty()) {
      say("{}: a member {} is not described", type.name, gap);
    }
    std::set<std::string_view> keys;
    for (const auto& field : type.fields) {
      if (!is_key(field.key)) say("{}: `{}` is no plain key", type.name, field.key);
      if (field.label.empty()) say("{}.{}: no label", type.name, field.key);
      if (!keys.insert(field.key).second) say("{}: `{}` stands twice", type.name, field.key);
      defaults(type, field);
      condition(type, field);
      example(type, field);
      look(*field.type);
    }
  }

  /// A reader cannot empty what a default filled, so an absent list or optional must be empty.
  void defaults(const Type& type, const Field& field) {
    if (type.defaults == nullptr) return;
    const void* value = describe::value_of(field, type.defaults);
    if (field.type->shape == Shape::list && field.type->operations.size(value) != 0) {
      say("{}.{}: a list must be empty by default", type.name, field.key);
    }
    if (field.type->shape == Shape::optional && field.type->operations.get(value) != nullptr) {
      say("{}.{}: an optional must be empty by default", type.name, field.key);
    }
  }

  void condition(const Type& type, const Field& field) {
    if (field.shown_when.empty()) return;
    const auto equals = field.shown_when.find('=');
    const auto key = field.shown_when.substr(0, equals);
    if (equals == std::string::npos || describe::find_field(type, key) == nullptr) {
      say("{}.{}: `{}` names no field", type.name, field.key, field.shown_when);
    }
  }

  void example(const Type& type, const Field& field) {
    const Type& inner = detail::inside(*field.type);
    if (field.lowest && field.highest && *field.lowest > *field.highest) {
      say("{}.{}: the bounds leave nothing between them", type.name, field.key);
    }
    if (field.example.empty() || !inner.kind) return;
    const auto parsed = quantity::parse_measured(field.example, *inner.kind);
    if (!parsed) {
      say("{}.{}: the example `{}` is not {}", type.name, field.key, field.example,
          detail::expectation(inner));
      return;
    }
    const bool low = field.lowest && parsed->value.si < *field.lowest;
    const bool high = field.highest && parsed->value.si > *field.highest;
    if (low || high) {
      say("{}.{}: the example `{}` is out of bounds", type.name, field.key, field.example);
    }
  }

  std::set<const Type*> seen_;
  Complaints out_;
};

void run_example(const describe::Calculation& c, const describe::Catalogue& catalogue,
                 Complaints& out) {
  describe::Context context;
  context.today = k_example_day;
  context.tables = catalogue.tables();
  const auto got = call_json(c, example_json(c), context);
  if (got) return;
  for (const auto& p : got.error()) {
    out.push_back(fmt::format("{}: its example does not run: {}: {}", c.name, p.path, p.what));
  }
}

}  // namespace

std::vector<std::string> complaints(const Type& type) {
  TypeCheck check;
  check.look(type);
  return check.take();
}

std::vector<std::string> complaints(const describe::Catalogue& catalogue,
                                    std::span<const std::string> checked_outside) {
  Complaints out;
  for (const auto& c : catalogue.calculations()) {
    const auto say = [&](std::string_view what) {
      out.push_back(fmt::format("{}: {}", c.name, what));
    };
    if (c.purpose.empty()) say("no purpose");
    if (c.sources.empty()) say("no sources");
    if (c.cautions.empty()) say("no cautions");
    if (c.version < 1) say("no version");
    for (const auto& s : c.sources) {
      if (s.document.empty() || s.place.empty()) say("a source without document or place");
    }
    if (detail::inside(*c.input).shape != Shape::record) say("the input is no record");
    if (describe::find_field(*c.input, "units") != nullptr) {
      say("the key `units` asks for the units of the answer and cannot be an input");
    }
    for (const auto* type : {c.input, c.output}) {
      for (const auto& what : complaints(*type)) say(what);
    }
    run_example(c, catalogue, out);
    if (manual_page(c, catalogue).find("\ngives\n") == std::string::npos) {
      say("its manual page has no worked example");
    }
    if (std::find(checked_outside.begin(), checked_outside.end(), c.name) ==
        checked_outside.end()) {
      say("no reference case outside the project");
    }
  }
  return out;
}

}  // namespace wm::calculation
