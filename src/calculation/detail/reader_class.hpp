#pragma once
/// The walk of the reader, for its own sources: single values in reader_values.cpp, what holds
/// others in reader.cpp.

#include "calculation/detail/reader.hpp"
#include "quantity/kinds.hpp"

namespace wm::calculation::detail {

using describe::Field;
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
  void list_in_words(const Node& n, const Type& type, const Field* field, void* out);
  void scalar(const Node& n, const Type& type, const Field* field, void* out);
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

}  // namespace wm::calculation::detail
