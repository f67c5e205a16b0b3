#include "bay/event.hpp"

#include <array>

namespace wm::bay {
namespace {

/// The version that is written today. A new one needs a lift (binder) and a frozen sample.
template <class Body>
constexpr int k_version = 1;
template <>
constexpr int k_version<JointWorked> = 2;  // reason_outside_band

template <std::size_t I>
EventKind kind_at() {
  using Body = std::variant_alternative_t<I, Payload>;
  const auto& type = describe::type_of<Body>();
  return {type.name, k_version<Body>, &type, [] { return Payload{std::in_place_index<I>}; }};
}

template <std::size_t... I>
std::array<EventKind, sizeof...(I)> all_kinds(std::index_sequence<I...>) {
  return {kind_at<I>()...};
}

}  // namespace

Date Event::day() const {
  const auto parsed = quantity::parse_date(std::string_view(meta.happened).substr(0, 10));
  return parsed ? *parsed : Date{};
}

std::span<const EventKind> event_kinds() {
  static const auto kinds = all_kinds(std::make_index_sequence<std::variant_size_v<Payload>>{});
  return kinds;
}

const EventKind& kind_of(const Payload& payload) { return event_kinds()[payload.index()]; }

const EventKind* find_kind(std::string_view word) {
  for (const auto& kind : event_kinds()) {
    if (kind.word == word) return &kind;
  }
  return nullptr;
}

const void* body_of(const Payload& payload) {
  return std::visit([](const auto& body) -> const void* { return &body; }, payload);
}
void* body_of(Payload& payload) {
  return std::visit([](auto& body) -> void* { return &body; }, payload);
}

std::string_view aircraft_of(const Payload& payload) {
  return std::visit(
      [](const auto& body) -> std::string_view {
        if constexpr (std::is_same_v<std::remove_cvref_t<decltype(body)>, AircraftDescribed>) {
          return body.id;
        } else if constexpr (requires { body.aircraft; }) {
          return body.aircraft;
        } else {
          return {};
        }
      },
      payload);
}

}  // namespace wm::bay
