#include "describe/type.hpp"

#include <algorithm>
#include <array>

#include "quantity/text.hpp"

namespace wm::describe {

const Field* find_field(const Type& record, std::string_view key) {
  const auto found = std::find_if(record.fields.begin(), record.fields.end(),
                                  [&](const Field& f) { return f.key == key; });
  return found == record.fields.end() ? nullptr : &*found;
}

std::string undescribed_gap(const Type& record) {
  auto fields = record.fields;
  std::sort(fields.begin(), fields.end(),
            [](const Field& a, const Field& b) { return a.offset < b.offset; });
  const auto rounded_up = [](std::size_t at, std::size_t alignment) {
    return (at + alignment - 1) / alignment * alignment;
  };
  std::size_t end = 0;
  std::string before = "the start";
  for (const auto& field : fields) {
    if (field.offset != rounded_up(end, field.type->alignment)) {
      return "between " + before + " and `" + field.key + "`";
    }
    end = field.offset + field.type->size;
    before = "`" + field.key + "`";
  }
  if (rounded_up(end, record.alignment) != record.size) return "after " + before;
  return {};
}

namespace {

bool equal_numbers(const NumberValue& a, const NumberValue& b) {
  return a.kind == b.kind && a.si == b.si && a.expanded_si == b.expanded_si && a.text == b.text;
}

bool equal_records(const Type& type, const void* a, const void* b) {
  return std::all_of(type.fields.begin(), type.fields.end(), [&](const Field& f) {
    return equal(*f.type, value_of(f, a), value_of(f, b));
  });
}

bool equal_lists(const Type& type, const void* a, const void* b) {
  const auto size = type.operations.size(a);
  if (size != type.operations.size(b)) return false;
  for (std::size_t i = 0; i < size; ++i) {
    if (!equal(*type.of, type.operations.at(a, i), type.operations.at(b, i))) return false;
  }
  return true;
}

bool equal_optionals(const Type& type, const void* a, const void* b) {
  const auto* in_a = type.operations.get(a);
  const auto* in_b = type.operations.get(b);
  if (in_a == nullptr || in_b == nullptr) return in_a == in_b;
  return equal(*type.of, in_a, in_b);
}

template <class T>
bool same(const void* a, const void* b) {
  return *static_cast<const T*>(a) == *static_cast<const T*>(b);
}

}  // namespace

bool equal(const Type& type, const void* a, const void* b) {
  switch (type.shape) {
    case Shape::text:
      return same<std::string>(a, b);
    case Shape::yes_no:
      return same<bool>(a, b);
    case Shape::count:
      return same<std::int64_t>(a, b);
    case Shape::number:
      return same<double>(a, b);
    case Shape::date:
      return same<quantity::Date>(a, b);
    case Shape::quantity:
    case Shape::measured:
    case Shape::any_quantity:
      return equal_numbers(type.operations.get_number(a), type.operations.get_number(b));
    case Shape::choice:
      return type.operations.get_choice(a) == type.operations.get_choice(b);
    case Shape::record:
      return equal_records(type, a, b);
    case Shape::list:
      return equal_lists(type, a, b);
    case Shape::optional:
      return equal_optionals(type, a, b);
    case Shape::one_of: {
      const auto index = type.operations.index(a);
      return index == type.operations.index(b) &&
             equal(*type.alternatives[index].type, type.operations.get(a), type.operations.get(b));
    }
  }
  return false;
}

Result<AnyQuantity> read_any(std::string_view text) {
  using quantity::KindOf;
  // The everyday meaning of a unit that serves two kinds comes first.
  static constexpr std::array first{KindOf::resistance,     KindOf::voltage, KindOf::current,
                                    KindOf::pressure_gauge, KindOf::length,  KindOf::torque,
                                    KindOf::temperature,    KindOf::mass,    KindOf::time,
                                    KindOf::rotation_speed};
  std::optional<Problem> problem;
  const auto attempt = [&](KindOf kind) -> std::optional<AnyQuantity> {
    const auto parsed = quantity::parse_measured(text, kind);
    if (!parsed) {
      // "No such unit" is the least helpful answer: keep a better one.
      if (!problem || parsed.error().kind == wm::Kind::out_of_bounds) problem = parsed.error();
      return std::nullopt;
    }
    AnyQuantity out{kind, parsed->value.si, parsed->value.resolution_si, {}, std::string(text)};
    if (parsed->expanded) out.expanded_si = parsed->expanded->si;
    return out;
  };
  for (const auto kind : first) {
    if (auto got = attempt(kind)) return *got;
  }
  for (int k = 0; k < quantity::k_kind_count; ++k) {
    if (auto got = attempt(static_cast<KindOf>(k))) return *got;
  }
  if (problem->kind == wm::Kind::wrong_dimension) {
    return Fail(wm::Kind::bad_text, "`" + std::string(text) + "` is not a value with a unit",
                "a number with its unit", "85.2 ohm");
  }
  return Fail(*problem);
}

}  // namespace wm::describe
