#include "service/detail/texts.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "calculation/catalogue.hpp"
#include "calculation/json_face.hpp"
#include "calculation/openapi_face.hpp"

namespace wm::service::detail {
namespace {

using Json = nlohmann::ordered_json;

std::string dumped(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

/// Which of the five places of the page a thing belongs to, where its declaration says so.
template <class Face>
void put_place(Json& out, const Face& face) {
  if constexpr (requires { face.place; }) out["place"] = face.place;
}

Json cautions_tree(const std::vector<describe::Caution>& cautions) {
  auto out = Json::array();
  for (const auto& c : cautions) out.push_back({{"id", c.id}, {"text", c.text}});
  return out;
}

template <class Face>
std::string described(const Face& face, std::string_view kind, const Json& more) {
  Json out = Json::object();
  out["name"] = face.name;
  out["purpose"] = face.purpose;
  out["kind"] = kind;
  put_place(out, face);
  out.update(more);
  out["input"] = Json::parse(calculation::describe_type_json(*face.input));
  out["output"] = Json::parse(calculation::describe_type_json(*face.output));
  out["example"] = Json::parse(calculation::example_json(*face.input));
  return dumped(out);
}

std::string answer_text(const binder::Reply& reply, quantity::UnitSet units) {
  calculation::WriteOptions options;
  options.units = units;
  return calculation::write_json(*reply.type, reply.value.get(), options);
}

/// The record's own text where it is JSON, which it is unless somebody tampered with it.
std::string body_text(std::string_view body) {
  return nlohmann::json::accept(body) ? std::string(body) : json_string(body);
}

}  // namespace

std::string json_string(std::string_view text) { return dumped(Json(text)); }

std::string catalogue_json() {
  Json out = Json::object();
  out["calculations"] = out["acts"] = out["views"] = Json::array();
  for (const auto& c : calculation::catalogue().calculations()) {
    out["calculations"].push_back(
        {{"name", c.name}, {"purpose", c.purpose}, {"version", c.version}});
  }
  const auto list = [](const auto& faces, Json& into) {
    for (const auto& face : faces) {
      Json one{{"name", face.name}, {"purpose", face.purpose}};
      put_place(one, face);
      into.push_back(std::move(one));
    }
  };
  list(desk::acts(), out["acts"]);
  list(desk::views(), out["views"]);
  return dumped(out);
}

std::string describe_json(const desk::Act& act) {
  return described(
      act, "act",
      {{"changes_plans", act.changes_plans}, {"cautions", cautions_tree(act.cautions)}});
}
std::string describe_json(const desk::View& view) {
  return described(view, "view", Json::object());
}

std::string openapi_text() {
  using calculation::Entry;
  std::vector<Entry> entries;
  for (const auto& a : desk::acts())
    entries.push_back({Entry::Is::act, a.name, a.purpose, a.input, a.output});
  for (const auto& v : desk::views())
    entries.push_back({Entry::Is::view, v.name, v.purpose, v.input, v.output});
  return calculation::openapi_json(calculation::catalogue(), entries, WM_VERSION);
}

std::string act_json(const binder::Reply& reply, quantity::UnitSet units) {
  auto recorded = Json::array();
  for (const auto& r : reply.recorded)
    recorded.push_back({{"sequence", r.sequence}, {"id", r.id}, {"kind", r.kind}});
  return fmt::format(
      R"({{"sequence":{},"head":{},"answer":{},"recorded":{},"cautions":{},"was_there_already":{}}})",
      reply.sequence, json_string(reply.head), answer_text(reply, units), dumped(recorded),
      dumped(cautions_tree(reply.cautions)), reply.was_there_already);
}

std::string view_json(const binder::Reply& reply, quantity::UnitSet units) {
  return fmt::format(R"({{"sequence":{},"head":{},"answer":{}}})", reply.sequence,
                     json_string(reply.head), answer_text(reply, units));
}

std::string event_json(const record::StoredEvent& e) {
  return fmt::format(
      R"({{"sequence":{},"id":{},"kind":{},"version":{},"happened":{},"recorded":{},"author":{},)"
      R"("device":{},"refers_to":{},"hash":{},"body":{}}})",
      e.sequence, json_string(e.id), json_string(e.kind), e.version, json_string(e.happened),
      json_string(e.recorded), json_string(e.author), json_string(e.device),
      json_string(e.refers_to), json_string(e.hash), body_text(e.body));
}

std::string verification_json(const record::Verification& found, const record::Head& last) {
  auto findings = Json::array();
  for (const auto& f : found.findings)
    findings.push_back({{"sequence", f.sequence}, {"column", f.column}, {"what", f.what}});
  return dumped({{"clean", found.clean()},
                 {"events", found.events},
                 {"attachments", found.attachments},
                 {"heads", found.heads},
                 {"head", found.head},
                 {"printed", record::format_head(last)},
                 {"findings", std::move(findings)}});
}

std::string head_json(const record::Head& head) {
  return fmt::format(R"({{"sequence":{},"head":{}}})", head.sequence, json_string(head.hash));
}

Answer problems_answer(const Problems& problems) {
  const auto any = [&](Kind kind) {
    return std::any_of(problems.begin(), problems.end(),
                       [&](const Problem& p) { return p.kind == kind; });
  };
  Answer answer;
  answer.status = any(Kind::damaged) ? 500 : any(Kind::conflict) ? 409 : 422;
  answer.body = calculation::write_problems(problems);
  return answer;
}

Answer refusal(int status, Kind kind, std::string what, std::string do_next) {
  Answer answer;
  answer.status = status;
  answer.body =
      calculation::write_problems({{kind, {}, std::move(what), {}, {}, std::move(do_next), {}}});
  return answer;
}

Answer not_here(std::string what) { return refusal(404, Kind::not_found, std::move(what)); }

Answer answered(const std::function<Answer()>& route, bool quiet) {
  // No "problems" here: nothing is wrong with what was typed, and the same act with the same id
  // may be sent again once the machine is well.
  const auto fault = [&](int status, std::string_view what, std::string_view do_next) {
    Answer answer;
    answer.status = status;
    answer.body = fmt::format(R"({{"fault":{{"what":{},"do_next":{}}}}})", json_string(what),
                              json_string(do_next));
    return answer;
  };
  const auto tell = [&](std::string_view what) {
    if (!quiet) fmt::print(stderr, "witnessmark: {}\n", what);
  };
  try {
    return route();
  } catch (const record::Broken& broken) {
    tell(broken.what());
    return fault(503, broken.what(), broken.do_next());
  } catch (const std::exception& unforeseen) {
    tell(unforeseen.what());
  } catch (...) {
    tell("a fault without a name");
  }
  return fault(500, "The program met something that it did not foresee.",
               "Try again; what was recorded before is still there.");
}

}  // namespace wm::service::detail
