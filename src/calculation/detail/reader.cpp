#include "calculation/detail/reader.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <set>

#include "calculation/detail/reader_class.hpp"
#include "calculation/detail/words.hpp"

namespace wm::calculation::detail {

using describe::Shape;

namespace {
/// A key that an entry of this type has, for an example.
std::string first_key(const Type& type) {
  if (type.shape == Shape::one_of) return "is";
  for (const auto& field : type.fields) {
    if (is_needed(field)) return field.key;
  }
  return type.fields.empty() ? "key" : type.fields.front().key;
}
}  // namespace

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
  if (n.is == Node::Is::text && in_words()) return list_in_words(n, type, field, out);
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

/// "joints=a,b". Only where a comma cannot belong to an entry: it can to free text, and it may be
/// somebody's decimal point in a figure. What has no comma at all is one entry.
void Reader::list_in_words(const Node& n, const Type& type, const Field* field, void* out) {
  const Type& of = *type.of;
  const bool single = of.shape <= Shape::date;
  const bool comma_parts =
      of.shape == Shape::choice || of.shape == Shape::date || of.shape == Shape::yes_no ||
      (of.shape == Shape::text && field != nullptr && !field->refers_to.empty());
  const bool has_comma = n.text.find(',') != std::string_view::npos;
  if (!single || (has_comma && !comma_parts)) {
    const std::string key = steps_.empty() ? "entries" : path();
    const auto inner = single ? std::string{} : "/" + first_key(of);
    const auto one = single ? example_for(of, field) : std::string("...");
    return add(n, {Kind::bad_text,
                   {},
                   fmt::format("`{}` is no list that can be split", shown(n.text)),
                   fmt::format("one word an entry: {0}/0{1}=... {0}/1{1}=...", key, inner),
                   fmt::format("{}/0{}={}", key, inner, one.empty() ? "..." : one),
                   "put words with spaces into quotes",
                   {}});
  }
  std::vector<std::string_view> parts;
  for (std::string_view rest = n.text;;) {
    const auto comma = rest.find(',');
    parts.push_back(trimmed(rest.substr(0, comma)));
    if (comma == std::string_view::npos) break;
    rest.remove_prefix(comma + 1);
  }
  bounds(n, static_cast<double>(parts.size()), type, field, fmt::format("{} entries", parts.size()),
         nullptr);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    steps_.push_back({{}, i});
    Node entry = n;
    entry.text = parts[i];
    if (parts[i].empty()) {
      add(entry,
          {Kind::missing, {}, "nothing stands between two commas", expectation(of), {}, {}, {}});
    } else {
      scalar(entry, of, nullptr, out == nullptr ? nullptr : type.operations.append(out));
    }
    steps_.pop_back();
  }
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

/// What a single node says.
void Reader::scalar(const Node& n, const Type& type, const Field* field, void* out) {
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
      return quantity_text(n, type, field, out);
    case Shape::choice:
      return choice(n, type, field, out);
    case Shape::date:
      return date(n, type, field, out);
    default:
      return wrong_type(n, type, field);
  }
}

void Reader::value(std::uint32_t at, const Type& type, const Field* field, void* out) {
  const Node& n = node(at);
  switch (type.shape) {
    case Shape::record:
      return record(at, type, out, false);
    case Shape::list:
      return list(at, type, field, out);
    case Shape::optional:
      if (n.is == Node::Is::null) return;
      return value(at, *type.of, field, out == nullptr ? nullptr : type.operations.emplace(out, 0));
    case Shape::one_of:
      return one_of(at, type, field, out);
    case Shape::quantity:
    case Shape::measured:
    case Shape::any_quantity:
      if (n.is == Node::Is::object && from_journal()) {
        return quantity_object(at, type, field, out);
      }
      return scalar(n, type, field, out);
    default:
      return scalar(n, type, field, out);
  }
}

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