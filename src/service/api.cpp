#include "service/api.hpp"

#include <fmt/core.h>

#include "calculation/catalogue.hpp"
#include "calculation/json_face.hpp"
#include "calculation/openapi_face.hpp"
#include "service/detail/envelope.hpp"

namespace wm::service {
namespace {

std::string answer_text(const binder::Reply& reply, quantity::UnitSet units) {
  calculation::WriteOptions options;
  options.units = units;
  return calculation::write_json(*reply.type, reply.value.get(), options);
}

/// A JSON list of what `text` makes of each.
template <class List, class Text>
std::string list_of(const List& list, Text text) {
  std::string out = "[";
  for (const auto& one : list) out += (out.size() > 1 ? "," : "") + text(one);
  return out + "]";
}

std::string cautions_text(std::span<const describe::Caution> cautions) {
  return list_of(cautions, [](const describe::Caution& c) {
    return fmt::format(R"({{"id":{},"text":{}}})", calculation::json_string(c.id),
                       calculation::json_string(c.text));
  });
}

}  // namespace

std::string openapi_text() {
  return calculation::openapi_json(calculation::catalogue(), calculation::entries(),
                                   describe::type_of<detail::ActEnvelope>(), WM_VERSION);
}

std::string act_json(const binder::Reply& reply, quantity::UnitSet units) {
  const auto recorded = list_of(reply.recorded, [](const binder::Recorded& r) {
    return fmt::format(R"({{"sequence":{},"id":{},"kind":{}}})", r.sequence,
                       calculation::json_string(r.id), calculation::json_string(r.kind));
  });
  return fmt::format(
      R"({{"sequence":{},"head":{},"answer":{},"cautions":{},"recorded":{},"was_there_already":{}}})",
      reply.sequence, calculation::json_string(reply.head), answer_text(reply, units),
      cautions_text(reply.cautions), recorded, reply.was_there_already);
}

std::string view_json(const binder::Reply& reply, std::span<const describe::Caution> cautions,
                      quantity::UnitSet units) {
  return fmt::format(R"({{"sequence":{},"head":{},"answer":{},"cautions":{}}})", reply.sequence,
                     calculation::json_string(reply.head), answer_text(reply, units),
                     cautions_text(cautions));
}

}  // namespace wm::service
