#pragma once
/// How a struct is described, beside itself:
///
///   struct Lead { std::string name; Entered<Length> length; Measured<Resistance> reading; };
///   std::string_view describe(describe::Fields<Lead>& f) {
///     f.has<&Lead::name>("name", "Which lead").needed("3 top").unique();
///     f.has<&Lead::length>("length", "From end to end").needed("38 in")
///         .between(inches(2), feet(20));
///     f.has<&Lead::reading>("reading", "Resistance").needed("85.2 ohm +- 0.7 ohm");
///     return "lead";
///   }
///   enum class Grade { looked_at, renewed };
///   std::string_view describe(describe::Choices<Grade>& c) {
///     c.has(Grade::looked_at, "looked-at", "looked at");  ...
///     return "grade";
///   }
///
/// `type_of<Lead>()` gives the description tree. Defaults are the struct's own initialisers.
/// A struct needs a default constructor; a member left out is found by the meta-test.

#include <concepts>
#include <type_traits>
#include <variant>

#include "describe/type.hpp"
#include "quantity/text.hpp"

namespace wm::describe {

/// Refines the field that `has` has just added.
class FieldBuilder {
 public:
  FieldBuilder(std::vector<Field>& fields, std::size_t index) : fields_(&fields), index_(index) {}
  /// Must be given; the example also goes into the calculation's own example.
  FieldBuilder& needed(std::string_view example = {}) {
    field().needed = true;
    field().example = std::string(example);
    return *this;
  }
  /// An example for a field that may stay empty.
  FieldBuilder& example(std::string_view text) {
    field().example = std::string(text);
    return *this;
  }
  FieldBuilder& help(std::string_view text) {
    field().help = std::string(text);
    return *this;
  }
  FieldBuilder& unique() {
    field().unique = true;
    return *this;
  }
  FieldBuilder& refers_to(std::string_view what) {
    field().refers_to = std::string(what);
    return *this;
  }
  FieldBuilder& shown_when(std::string_view condition) {
    field().shown_when = std::string(condition);
    return *this;
  }
  template <quantity::KindOf K>
  FieldBuilder& between(quantity::Quantity<K> lowest, quantity::Quantity<K> highest) {
    return bounds(lowest.si, highest.si);
  }
  FieldBuilder& between(double lowest, double highest) { return bounds(lowest, highest); }
  template <quantity::KindOf K>
  FieldBuilder& at_least(quantity::Quantity<K> lowest) {
    field().lowest = lowest.si;
    return *this;
  }
  FieldBuilder& at_least(double lowest) {
    field().lowest = lowest;
    return *this;
  }
  template <quantity::KindOf K>
  FieldBuilder& at_most(quantity::Quantity<K> highest) {
    field().highest = highest.si;
    return *this;
  }
  FieldBuilder& at_most(double highest) {
    field().highest = highest;
    return *this;
  }
  /// More than, not equal.
  template <quantity::KindOf K>
  FieldBuilder& above(quantity::Quantity<K> lowest) {
    field().above = true;
    return at_least(lowest);
  }
  FieldBuilder& above(double lowest) {
    field().above = true;
    return at_least(lowest);
  }

 private:
  FieldBuilder& bounds(double lowest, double highest) {
    field().lowest = lowest;
    field().highest = highest;
    return *this;
  }
  Field& field() { return (*fields_)[index_]; }
  std::vector<Field>* fields_;
  std::size_t index_;
};

template <class T>
const Type& type_of();

template <class T>
class Fields {
 public:
  explicit Fields(std::vector<Field>& fields, const T& sample)
      : fields_(&fields), sample_(&sample) {}
  /// Describe the member. `key` is its name everywhere; `label` is what a person reads.
  template <auto Member>
  FieldBuilder has(std::string_view key, std::string_view label) {
    using Value = std::remove_cvref_t<decltype(std::declval<T&>().*Member)>;
    Field field;
    field.key = std::string(key);
    field.label = std::string(label);
    field.type = &type_of<Value>();
    field.offset =
        static_cast<std::size_t>(reinterpret_cast<const std::byte*>(&(sample_->*Member)) -
                                 reinterpret_cast<const std::byte*>(sample_));
    fields_->push_back(std::move(field));
    return {*fields_, fields_->size() - 1};
  }

 private:
  std::vector<Field>* fields_;
  const T* sample_;
};

template <class E>
class Choices {
 public:
  explicit Choices(std::vector<Choice>& choices) : choices_(&choices) {}
  Choices& has(E number, std::string_view value, std::string_view label) {
    choices_->push_back(
        {std::string(value), std::string(label), static_cast<std::int64_t>(number)});
    return *this;
  }

 private:
  std::vector<Choice>* choices_;
};

namespace lookup {
// Hides the namespace wm::describe, so that the name is looked up beside the argument's type.
void describe();
template <class Builder>
auto call(Builder& builder) -> decltype(describe(builder)) {
  return describe(builder);
}
}  // namespace lookup

template <class T>
concept DescribedRecord = std::is_class_v<T> && requires(Fields<T>& f) {
  { lookup::call(f) } -> std::convertible_to<std::string_view>;
};
template <class E>
concept DescribedChoice = std::is_enum_v<E> && requires(Choices<E>& c) {
  { lookup::call(c) } -> std::convertible_to<std::string_view>;
};

namespace detail {

template <class T>
struct Maker {
  static_assert(DescribedRecord<T> || DescribedChoice<T>,
                "this type has no describe(Fields<T>&) or describe(Choices<T>&) beside it");
  static void make(Type& type) {
    if constexpr (DescribedChoice<T>) {
      type.shape = Shape::choice;
      Choices<T> choices(type.choices);
      type.name = std::string(lookup::call(choices));
      type.operations.get_choice = [](const void* p) {
        return static_cast<std::int64_t>(*static_cast<const T*>(p));
      };
      type.operations.set_choice = [](void* p, std::int64_t v) {
        *static_cast<T*>(p) = static_cast<T>(v);
      };
    } else {
      static const T sample{};
      type.shape = Shape::record;
      type.defaults = &sample;
      Fields<T> fields(type.fields, sample);
      type.name = std::string(lookup::call(fields));
    }
  }
};

template <>
struct Maker<std::string> {
  static void make(Type& type) { type.shape = Shape::text; }
};
template <>
struct Maker<bool> {
  static void make(Type& type) { type.shape = Shape::yes_no; }
};
template <>
struct Maker<std::int64_t> {
  static void make(Type& type) { type.shape = Shape::count; }
};
template <>
struct Maker<double> {
  static void make(Type& type) { type.shape = Shape::number; }
};
template <>
struct Maker<quantity::Date> {
  static void make(Type& type) { type.shape = Shape::date; }
};

template <quantity::KindOf K>
struct Maker<quantity::Quantity<K>> {
  using Q = quantity::Quantity<K>;
  static void make(Type& type) {
    type.shape = Shape::quantity;
    type.kind = K;
    type.operations.get_number = [](const void* p) {
      return NumberValue{K, static_cast<const Q*>(p)->si, 0, {}, {}};
    };
    type.operations.set_number = [](void* p, const NumberValue& v) {
      static_cast<Q*>(p)->si = v.si;
    };
  }
};
template <class Q>
struct Maker<quantity::Entered<Q>> {
  using V = quantity::Entered<Q>;
  static void make(Type& type) {
    type.shape = Shape::quantity;
    type.kind = Q::kind;
    type.keeps_text = true;
    type.operations.get_number = [](const void* p) {
      const auto& v = *static_cast<const V*>(p);
      return NumberValue{Q::kind, v.value.si, v.resolution_si, {}, v.text};
    };
    type.operations.set_number = [](void* p, const NumberValue& v) {
      *static_cast<V*>(p) = V{Q{v.si}, v.resolution_si, v.text};
    };
  }
};
template <class Q>
struct Maker<quantity::Measured<Q>> {
  using V = quantity::Measured<Q>;
  static void make(Type& type) {
    type.shape = Shape::measured;
    type.kind = Q::kind;
    type.keeps_text = true;
    type.operations.get_number = [](const void* p) {
      const auto& v = *static_cast<const V*>(p);
      return NumberValue{Q::kind, v.value.si, v.resolution_si, v.expanded_si, v.text};
    };
    type.operations.set_number = [](void* p, const NumberValue& v) {
      *static_cast<V*>(p) = V{Q{v.si}, v.expanded_si, v.resolution_si, v.text};
    };
  }
};
template <>
struct Maker<AnyQuantity> {
  static void make(Type& type) {
    type.shape = Shape::any_quantity;
    type.keeps_text = true;
    type.operations.get_number = [](const void* p) {
      const auto& v = *static_cast<const AnyQuantity*>(p);
      return NumberValue{v.kind, v.si, v.resolution_si, v.expanded_si, v.text};
    };
    type.operations.set_number = [](void* p, const NumberValue& v) {
      *static_cast<AnyQuantity*>(p) =
          AnyQuantity{v.kind, v.si, v.resolution_si, v.expanded_si, v.text};
    };
  }
};

template <class T>
struct Maker<std::vector<T>> {
  using V = std::vector<T>;
  static void make(Type& type) {
    type.shape = Shape::list;
    type.of = &type_of<T>();
    type.operations.size = [](const void* p) { return static_cast<const V*>(p)->size(); };
    type.operations.at = [](const void* p, std::size_t i) -> const void* {
      return &(*static_cast<const V*>(p))[i];
    };
    type.operations.append = [](void* p) -> void* { return &static_cast<V*>(p)->emplace_back(); };
  }
};
template <class T>
struct Maker<std::optional<T>> {
  using V = std::optional<T>;
  static void make(Type& type) {
    type.shape = Shape::optional;
    type.of = &type_of<T>();
    type.operations.get = [](const void* p) -> const void* {
      const auto& v = *static_cast<const V*>(p);
      return v ? &*v : nullptr;
    };
    type.operations.emplace = [](void* p, std::size_t) -> void* {
      return &static_cast<V*>(p)->emplace();
    };
  }
};
template <class... T>
struct Maker<std::variant<T...>> {
  using V = std::variant<T...>;
  template <std::size_t I>
  static void* emplace_one(V& v) {
    return &v.template emplace<I>();
  }
  static void make(Type& type) {
    type.shape = Shape::one_of;
    (type.alternatives.push_back({type_of<T>().name, &type_of<T>()}), ...);
    type.operations.index = [](const void* p) { return static_cast<const V*>(p)->index(); };
    type.operations.get = [](const void* p) -> const void* {
      return std::visit([](const auto& one) -> const void* { return &one; },
                        *static_cast<const V*>(p));
    };
    type.operations.emplace = [](void* p, std::size_t wanted) -> void* {
      auto& v = *static_cast<V*>(p);
      void* result = nullptr;
      [&]<std::size_t... I>(std::index_sequence<I...>) {
        ((I == wanted ? void(result = emplace_one<I>(v)) : void()), ...);
      }(std::index_sequence_for<T...>{});
      return result;
    };
  }
};

template <class T>
Type make_type() {
  Type type;
  type.size = sizeof(T);
  type.alignment = alignof(T);
  Maker<T>::make(type);
  return type;
}

}  // namespace detail

/// The description tree of T, built on first use.
template <class T>
const Type& type_of() {
  static const Type type = detail::make_type<T>();
  return type;
}

}  // namespace wm::describe
