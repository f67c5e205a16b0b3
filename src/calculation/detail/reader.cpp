#include "calculation/detail/reader.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <set>

#include "calculation/detail/words.hpp"
#include "quantity/text.hpp"

namespace wm::calculation::detail {
namespace {

using describe::Field;
using describe::NumberValue;
using describe::Shape;
using describe::Type;

/// One step of a path: a key, or the index in a list.
struct Step {
  std::string_view key;
  std::size_t index;
};

class Reader {
 public:
  Reader(const Tree& tree, Source source) : tree_(&tree), source_(source) {}

  void value(std::uint32_t at, const Type& type, const Field* field, void* out);
  [[nodiscard]] Problems take();

 private:
  [[nodiscard]] const Node& node(std::uint32_t at) const { return (*tree_)[at]; }
  [[nodiscard]] bool strict() const { return source_ != Source::payload; }
  [[nodiscard]] bool in_words() const {
    return source_ == Source::words || source_ == Source::amended;
  }
  [[nodiscard]] bool from_journal() const {
    return source_ == Source::payload || source_ == Source::amended;
  }

  void text(const Node& n, const Type& type, const Field* field, void* out);
  void yes_no(const Node& n, const Type& type, const Field* field, void* out);
  void count(const Node& n, const Type& type, const Field* field, void* out);
  void number(const Node& n, const Type& type, const Field* field, void* out);
  void quantity_text(const Node& n, const Type& type, const Field* field, void* out);
  void quantity_object(std::uint32_t at, const Type& type, const Field* field, void* out);
  void choice(const Node& n, const Type& type, const Field* field, void* out);
  void date(const Node& n, const Type& type, const Field* field, void* out);
  void record(std::uint32_t at, const Type& type, void* out, bool has_word);
  void list(std::uint32_t at, const Type& type, const Field* field, void* out);
  void one_of(std::uint32_t at, const Type& type, const Field* field, void* out);
  void uniqueness(std::uint32_t list, const Type& of);
  void unknown(std::uint32_t at, const Type& type, bool has_word);
  void absent(const Field& field, const Node& record);
  [[nodiscard]] bool counts_as_absent(const Node& n, const Field& field) const;
  [[nodiscard]] bool applies(std::uint32_t object, const Type& type, const Field& field) const;

  void wrong_type(const Node& n, const Type& type, const Field* field);
  void bounds(const Node& n, double got, const Type& type, const Field* field,
              std::string_view as_given, const quantity::Unit* unit);
  void add(const Node& n, Problem problem);
  [[nodiscard]] std::string path() const;

  const Tree* tree_;
  Source source_;
  std::vector<Step> steps_;
  Problems problems_;
  std::size_t more_{};
};

std::string Reader::path() const {
  std::string out;
  for (const auto& step : steps_) {
    if (!out.empty()) out += '/';
    out += step.key.empty() ? std::to_string(step.index) : shown(step.key);
  }
  return out;
}

void Reader::add(const Node& n, Problem problem) {
  if (problems_.size() >= k_most_problems) {
    ++more_;
    return;
  }
  const auto own = path();
  problem.path =
      problem.path.empty() || own.empty() ? own + problem.path : own + "/" + problem.path;
  if (source_ == Source::sheet && n.line != 0) {
    problem.what = fmt::format("line {}, column {}: {}", n.line, n.column, problem.what);
  }
  problems_.push_back(std::move(problem));
}

Problems Reader::take() {
  if (more_ != 0) {
    problems_.push_back({Kind::bad_text,
                         {},
                         fmt::format("and {} more problems", more_),
                         {},
                         {},
                         "put the first ones right and try again",
                         {}});
  }
  return std::move(problems_);
}

std::string_view what_is(const Node& n) {
  switch (n.is) {
    case Node::Is::null:
      return "nothing (null)";
    case Node::Is::yes_no:
      return n.yes ? "true" : "false";
    case Node::Is::integer:
    case Node::Is::number:
      return "a number";
    case Node::Is::text:
      return "text";
    case Node::Is::list:
      return "a list";
    case Node::Is::object:
      return "an object";
  }
  return "something else";
}

bool is_number(const Node& n) { return n.is == Node::Is::integer || n.is == Node::Is::number; }

void Reader::wrong_type(const Node& n, const Type& type, const Field* field) {
  const Type& t = inside(type);
  const bool has_unit =
      t.shape == Shape::quantity || t.shape == Shape::measured || t.shape == Shape::any_quantity;
  const auto example = example_for(t, field);
  if (has_unit && is_number(n)) {
    const auto given = n.text.empty() ? std::to_string(n.integer) : std::string(n.text);
    return add(n, {Kind::bad_text,
                   {},
                   fmt::format("`{}`: a unit is needed, e.g. \"{}\"", shown(given), example),
                   expectation(t),
                   example,
                   {},
                   {}});
  }
  add(n, {Kind::bad_text,
          {},
          fmt::format("{} was given", n.is == Node::Is::text
                                          ? fmt::format("the text `{}`", shown(n.text))
                                          : std::string(what_is(n))),
          expectation(t),
          example,
          {},
          {}});
}

void Reader::bounds(const Node& n, double got, const Type& type, const Field* field,
                    std::string_view as_given, const quantity::Unit* unit) {
  if (field == nullptr || !strict()) return;
  // A bound typed in another unit may differ from the bound in the code in the last bits.
  const auto slack = [](double bound) { return std::abs(bound) * 1e-12; };
  const auto words = [&](double bound) {
    return unit != nullptr ? bound_text(bound, *unit) : bound_text(type, *field, bound);
  };
  std::string needed;
  if (field->lowest) {
    const double low = *field->lowest;
    if (field->above ? got <= low + slack(low) : got < low - slack(low)) {
      needed = (field->above ? "more than " : "at least ") + words(low);
    }
  }
  if (field->highest && got > *field->highest + slack(*field->highest)) {
    needed = "at most " + words(*field->highest);
  }
  if (needed.empty()) return;
  std::string range = needed;
  if (field->lowest && field->highest) {
    range = fmt::format("{}{} to {}", field->above ? "above " : "", words(*field->lowest),
                        words(*field->highest));
  }
  add(n, {Kind::out_of_bounds,
          {},
          fmt::format("`{}`: {} is needed", shown(as_given), needed),
          range,
          example_for(type, field),
          {},
          {}});
}

void Reader::text(const Node& n, const Type& type, const Field* field, void* out) {
  if (n.is != Node::Is::text) return wrong_type(n, type, field);
  if (strict()) {
    const bool control = std::any_of(n.text.begin(), n.text.end(), [](char c) {
      const auto byte = static_cast<unsigned char>(c);
      return (byte < 0x20 && c != '\n' && c != '\t' && c != '\r') || byte == 0x7F;
    });
    if (control) {
      return add(n, {Kind::bad_text,
                     {},
                     "the text holds a control character",
                     "letters, digits, signs and line breaks",
                     example_for(type, field),
                     "type it again by hand",
                     {}});
    }
    const auto length = characters(n.text);
    const auto longest = field != nullptr && field->highest
                             ? static_cast<std::size_t>(*field->highest)
                             : k_longest_text_field;
    const auto shortest =
        field != nullptr && field->lowest ? static_cast<std::size_t>(*field->lowest) : 0;
    if (length > longest || length < shortest) {
      return add(n, {Kind::out_of_bounds,
                     {},
                     fmt::format("the text is {} characters long", length),
                     length > longest ? fmt::format("at most {} characters", longest)
                                      : fmt::format("at least {} characters", shortest),
                     example_for(type, field),
                     {},
                     {}});
    }
  }
  if (out != nullptr) static_cast<std::string*>(out)->assign(n.text);
}

void Reader::yes_no(const Node& n, const Type& type, const Field* field, void* out) {
  bool yes = n.yes;
  if (in_words() && n.is == Node::Is::text) {
    yes = n.text == "yes" || n.text == "true";
    if (!yes && n.text != "no" && n.text != "false") return wrong_type(n, type, field);
  } else if (n.is != Node::Is::yes_no) {
    return wrong_type(n, type, field);
  }
  if (out != nullptr) *static_cast<bool*>(out) = yes;
}

void Reader::count(const Node& n, const Type& type, const Field* field, void* out) {
  std::int64_t got = n.integer;
  bool too_large = n.too_large;
  if (in_words() && n.is == Node::Is::text) {
    const auto parsed = quantity::parse_number(n.text);
    // 2^53: beyond it a double no longer holds every whole number.
    if (!parsed || *parsed != std::floor(*parsed)) return wrong_type(n, type, field);
    too_large = std::abs(*parsed) > 9007199254740992.0;
    got = too_large ? 0 : static_cast<std::int64_t>(*parsed);
  } else if (n.is != Node::Is::integer) {
    return wrong_type(n, type, field);
  }
  if (too_large) {
    return add(n, {Kind::out_of_bounds,
                   {},
                   "the number is too large",
                   "a smaller whole number",
                   example_for(type, field),
                   {},
                   {}});
  }
  bounds(n, static_cast<double>(got), type, field, std::to_string(got), nullptr);
  if (out != nullptr) *static_cast<std::int64_t*>(out) = got;
}

void Reader::number(const Node& n, const Type& type, const Field* field, void* out) {
  double got = n.number;
  if (n.is == Node::Is::text) {
    const auto parsed = quantity::parse_number(trimmed(n.text));
    if (!parsed) {
      auto problem = parsed.error();
      if (problem.example.empty()) problem.example = example_for(type, field);
      return add(n, std::move(problem));
    }
    got = *parsed;
  } else if (!is_number(n)) {
    return wrong_type(n, type, field);
  }
  bounds(n, got, type, field, n.text.empty() ? fmt::format("{}", got) : std::string(n.text),
         nullptr);
  if (out != nullptr) *static_cast<double*>(out) = got;
}

void Reader::quantity_text(const Node& n, const Type& type, const Field* field, void* out) {
  if (n.is != Node::Is::text) return wrong_type(n, type, field);
  NumberValue got;
  std::string_view unit;
  const auto refuse = [&](Problem problem) {
    if (field != nullptr && !field->example.empty()) problem.example = field->example;
    if (problem.expected.empty()) problem.expected = expectation(type);
    if (problem.example.empty()) problem.example = example_for(type, field);
    add(n, std::move(problem));
  };
  const auto typed = strict() ? trimmed(n.text) : n.text;
  if (type.shape == Shape::any_quantity) {
    auto parsed = describe::read_any(typed);
    if (!parsed) return refuse(parsed.error());
    got = {parsed->kind, parsed->si, parsed->resolution_si, parsed->expanded_si,
           std::string(typed)};
  } else if (type.shape == Shape::measured) {
    const auto parsed = quantity::parse_measured(typed, *type.kind);
    if (!parsed) return refuse(parsed.error());
    got = {*type.kind, parsed->value.si, parsed->value.resolution_si, {}, std::string(typed)};
    if (parsed->expanded) got.expanded_si = parsed->expanded->si;
    unit = parsed->value.unit;
  } else {
    const auto parsed = quantity::parse(typed, *type.kind);
    if (!parsed) return refuse(parsed.error());
    got = {*type.kind, parsed->si, parsed->resolution_si, {}, std::string(typed)};
    unit = parsed->unit;
  }
  // Looking the unit up takes longer than reading the number: only where a bound is asked for.
  if (type.kind && strict() && field != nullptr && (field->lowest || field->highest)) {
    bounds(n, got.si, type, field, typed, quantity::find_unit(*type.kind, unit));
  }
  if (out != nullptr) type.operations.set_number(out, got);
}

/// The journal's form of a value that its text alone would not give back (see write_payload).
void Reader::quantity_object(std::uint32_t at, const Type& type, const Field* field, void* out) {
  NumberValue got;
  if (type.kind) got.kind = *type.kind;
  bool has_value = false;
  for (auto i = node(at).first; i != Node::k_none; i = node(i).next) {
    const Node& n = node(i);
    if (n.key == "si" && is_number(n)) {
      got.si = n.number;
      has_value = true;
    } else if (n.key == "resolution" && is_number(n)) {
      got.resolution_si = n.number;
    } else if (n.key == "U" && is_number(n)) {
      got.expanded_si = n.number;
    } else if (n.key == "text" && n.is == Node::Is::text) {
      got.text = n.text;
    } else if (n.key == "kind" && n.is == Node::Is::text &&
               quantity::kind_by_name(n.text) != nullptr) {
      got.kind = quantity::kind_by_name(n.text)->kind;
    } else if (n.key != "unit") {
      return wrong_type(node(at), type, field);
    }
  }
  if (!has_value || (type.kind && got.kind != *type.kind)) {
    return wrong_type(node(at), type, field);
  }
  if (out != nullptr) type.operations.set_number(out, got);
}

void Reader::choice(const Node& n, const Type& type, const Field* field, void* out) {
  if (n.is != Node::Is::text) return wrong_type(n, type, field);
  for (const auto& c : type.choices) {
    if (c.value != n.text) continue;
    if (out != nullptr) type.operations.set_choice(out, c.number);
    return;
  }
  std::vector<std::string_view> words;
  for (const auto& c : type.choices) words.emplace_back(c.value);
  const auto near = nearest(n.text, words);
  add(n, {Kind::unknown_choice,
          {},
          fmt::format("`{}` is not one of the choices", shown(n.text)),
          expectation(type),
          near.empty() ? example_for(type, field) : std::string(near),
          {},
          {}});
}

void Reader::date(const Node& n, const Type& type, const Field* field, void* out) {
  if (n.is != Node::Is::text) return wrong_type(n, type, field);
  const auto parsed = quantity::parse_date(trimmed(n.text));
  if (!parsed) {
    auto problem = parsed.error();
    if (problem.expected.empty()) problem.expected = expectation(type);
    if (problem.example.empty()) problem.example = example_for(type, field);
    return add(n, std::move(problem));
  }
  const auto days = std::chrono::sys_days{*parsed}.time_since_epoch().count();
  bounds(n, static_cast<double>(days), type, field, n.text, nullptr);
  if (out != nullptr) *static_cast<quantity::Date*>(out) = *parsed;
}

bool Reader::counts_as_absent(const Node& n, const Field& field) const {
  if (n.is == Node::Is::null) return true;
  if (!strict() || n.is != Node::Is::text) return false;
  // What a form sends for a field that nobody filled in.
  const bool blank = trimmed(n.text).empty();
  if (field.type->shape == Shape::text) return blank && field.needed;
  return blank;
}

/// "grade=renewed": whether the form shows the field, going by what the object says.
bool Reader::applies(std::uint32_t object, const Type& type, const Field& field) const {
  const std::string_view rule = field.shown_when;
  const auto equals = rule.find('=');
  if (equals == std::string_view::npos) return true;
  const auto key = rule.substr(0, equals);
  const auto wanted = rule.substr(equals + 1);
  const auto at = tree_->member(object, key);
  if (at != Node::k_none && node(at).is != Node::Is::null) {
    const Node& n = node(at);
    if (n.is == Node::Is::yes_no) return (n.yes ? "true" : "false") == wanted;
    if (n.is == Node::Is::object) {
      const auto word = tree_->member(at, "is");
      return word != Node::k_none && node(word).text == wanted;
    }
    return n.text == wanted;
  }
  // Left out: the default decides.
  const Field* other = describe::find_field(type, key);
  if (other == nullptr || type.defaults == nullptr) return true;
  const void* value = describe::value_of(*other, type.defaults);
  if (other->type->shape == Shape::yes_no) {
    return (*static_cast<const bool*>(value) ? "true" : "false") == wanted;
  }
  if (other->type->shape == Shape::choice) {
    const auto now = other->type->operations.get_choice(value);
    return std::any_of(other->type->choices.begin(), other->type->choices.end(),
                       [&](const auto& c) { return c.number == now && c.value == wanted; });
  }
  return false;
}

void Reader::absent(const Field& field, const Node& record) {
  add(record, {Kind::missing,
               field.key,
               fmt::format("`{}` ({}) is missing", field.key, field.label),
               expectation(*field.type),
               example_for(*field.type, &field),
               {},
               {}});
}

void Reader::unknown(std::uint32_t at, const Type& type, bool has_word) {
  const Node& n = node(at);
  std::vector<std::string_view> keys;
  if (has_word) keys.emplace_back("is");
  for (const auto& f : type.fields) keys.emplace_back(f.key);
  const auto near = nearest(n.key, keys);
  steps_.push_back({n.key.empty() ? "?" : n.key, 0});
  add(n, {Kind::unknown_field,
          {},
          fmt::format("`{}` is not a field here", shown(n.key)),
          keys.empty() ? "no fields at all" : "one of: " + join(keys),
          std::string(near),
          near.empty() ? "leave it out" : fmt::format("did you mean `{}`?", near),
          {}});
  steps_.pop_back();
}

void Reader::record(std::uint32_t at, const Type& type, void* out, bool has_word) {
  if (node(at).is != Node::Is::object) return wrong_type(node(at), type, nullptr);
  // Fields seen, one bit each; a description of more than 128 fields would be a mistake.
  std::vector<bool> seen(type.fields.size());
  bool word_seen = false;
  std::size_t guess = 0;
  for (auto i = node(at).first; i != Node::k_none; i = node(i).next) {
    const Node& n = node(i);
    if (has_word && n.key == "is" && !word_seen) {
      word_seen = true;
      continue;
    }
    // Members usually come in the order of the description.
    std::size_t index = guess;
    if (index >= type.fields.size() || type.fields[index].key != n.key) {
      index = 0;
      while (index < type.fields.size() && type.fields[index].key != n.key) ++index;
    }
    if (index == type.fields.size()) {
      unknown(i, type, has_word);
      continue;
    }
    guess = index + 1;
    const Field& field = type.fields[index];
    steps_.push_back({field.key, 0});
    if (seen[index]) {
      add(n, {Kind::duplicate,
              {},
              fmt::format("`{}` is given twice", field.key),
              "each field once",
              {},
              "keep one of them",
              {}});
    } else if (!counts_as_absent(n, field)) {
      value(i, *field.type, &field, out == nullptr ? nullptr : describe::value_of(field, out));
    } else if (strict() && is_needed(field) && applies(at, type, field)) {
      steps_.pop_back();
      absent(field, node(at));
      steps_.push_back({field.key, 0});
    }
    seen[index] = true;
    steps_.pop_back();
  }
  if (!strict()) return;
  for (std::size_t i = 0; i < type.fields.size(); ++i) {
    const Field& field = type.fields[i];
    if (!seen[i] && is_needed(field) && applies(at, type, field)) absent(field, node(at));
  }
}

void Reader::uniqueness(std::uint32_t list, const Type& of) {
  std::set<std::pair<std::string_view, std::string>> taken;
  std::size_t index = 0;
  for (auto i = node(list).first; i != Node::k_none; i = node(i).next, ++index) {
    if (node(i).is != Node::Is::object) continue;
    const Type* type = &of;
    if (of.shape == Shape::one_of) {
      const auto word = tree_->member(i, "is");
      const auto found = std::find_if(
          of.alternatives.begin(), of.alternatives.end(),
          [&](const auto& a) { return word != Node::k_none && a.word == node(word).text; });
      if (found == of.alternatives.end()) continue;
      type = found->type;
    }
    for (const auto& field : type->fields) {
      if (!field.unique) continue;
      const auto at = tree_->member(i, field.key);
      if (at == Node::k_none) continue;
      const Node& n = node(at);
      std::string text(trimmed(n.text));
      if (n.is == Node::Is::integer) text = std::to_string(n.integer);
      if (text.empty() || taken.emplace(field.key, text).second) continue;
      steps_.push_back({{}, index});
      steps_.push_back({field.key, 0});
      add(n, {Kind::duplicate,
              {},
              fmt::format("`{}` is already taken by an entry before", shown(text)),
              fmt::format("a different `{}` for each entry", field.key),
              {},
              "give one of them another name",
              {}});
      steps_.pop_back();
      steps_.pop_back();
    }
  }
}

void Reader::list(std::uint32_t at, const Type& type, const Field* field, void* out) {
  const Node& n = node(at);
  if (n.is != Node::Is::list) return wrong_type(n, type, field);
  const auto& of = *type.of;
  // A bound of the list counts its entries; entries have no bounds of their own.
  if (field != nullptr && strict()) {
    bounds(n, n.count, type, field, fmt::format("{} entries", n.count), nullptr);
  }
  std::size_t index = 0;
  for (auto i = n.first; i != Node::k_none; i = node(i).next, ++index) {
    steps_.push_back({{}, index});
    if (node(i).is == Node::Is::null && strict()) {
      wrong_type(node(i), of, nullptr);
    } else {
      value(i, of, nullptr, out == nullptr ? nullptr : type.operations.append(out));
    }
    steps_.pop_back();
  }
  if (strict() && (of.shape == Shape::record || of.shape == Shape::one_of)) uniqueness(at, of);
}

void Reader::one_of(std::uint32_t at, const Type& type, const Field* field, void* out) {
  const Node& n = node(at);
  if (n.is != Node::Is::object) return wrong_type(n, type, field);
  std::vector<std::string_view> words;
  for (const auto& a : type.alternatives) words.emplace_back(a.word);
  const auto word = tree_->member(at, "is");
  if (word == Node::k_none) {
    return add(n, {Kind::missing,
                   "is",
                   "`is` is missing: it says which kind of entry this is",
                   "one of: " + join(words),
                   words.empty() ? "" : std::string(words.front()),
                   {},
                   {}});
  }
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (node(word).is != Node::Is::text || words[i] != node(word).text) continue;
    return record(at, *type.alternatives[i].type,
                  out == nullptr ? nullptr : type.operations.emplace(out, i), true);
  }
  const auto near = nearest(node(word).text, words);
  add(node(word), {Kind::unknown_choice,
                   "is",
                   fmt::format("`{}` is not one of the choices", shown(node(word).text)),
                   "one of: " + join(words),
                   std::string(near.empty() ? words.front() : near),
                   {},
                   {}});
}

void Reader::value(std::uint32_t at, const Type& type, const Field* field, void* out) {
  const Node& n = node(at);
  switch (type.shape) {
    case Shape::text:
      return text(n, type, field, out);
    case Shape::yes_no:
      return yes_no(n, type, field, out);
    case Shape::count:
      return count(n, type, field, out);
    case Shape::number:
      return number(n, type, field, out);
    case Shape::quantity:
    case Shape::measured:
    case Shape::any_quantity:
      if (n.is == Node::Is::object && from_journal()) {
        return quantity_object(at, type, field, out);
      }
      return quantity_text(n, type, field, out);
    case Shape::choice:
      return choice(n, type, field, out);
    case Shape::date:
      return date(n, type, field, out);
    case Shape::record:
      return record(at, type, out, false);
    case Shape::list:
      return list(at, type, field, out);
    case Shape::optional:
      if (n.is == Node::Is::null) return;
      return value(at, *type.of, field, out == nullptr ? nullptr : type.operations.emplace(out, 0));
    case Shape::one_of:
      return one_of(at, type, field, out);
  }
}

}  // namespace

Problems read_tree(const Tree& tree, const Type& type, void* out, Source source) {
  if (source == Source::payload) {
    Reader reader(tree, source);
    reader.value(0, type, nullptr, out);
    return reader.take();
  }
  // First look at everything, then write: nothing is half read.
  Reader look(tree, source);
  look.value(0, type, nullptr, nullptr);
  if (auto problems = look.take(); !problems.empty()) return problems;
  Reader write(tree, source);
  write.value(0, type, nullptr, out);
  return write.take();
}

}  // namespace wm::calculation::detail
