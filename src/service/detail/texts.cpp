#include "service/detail/texts.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "calculation/catalogue.hpp"
#include "calculation/json_face.hpp"

namespace wm::service::detail {
namespace {

using Json = nlohmann::ordered_json;
using calculation::json_string;

std::string dumped(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

/// The record's own text where it is JSON, which it is unless somebody tampered with it.
std::string body_text(std::string_view body) {
  return nlohmann::json::accept(body) ? std::string(body) : json_string(body);
}

}  // namespace

std::string catalogue_json() {
  using calculation::Entry;
  Json out = Json::object();
  for (const auto& list :
       {calculation::list_json(calculation::catalogue()), calculation::list_json(Entry::Is::act),
        calculation::list_json(Entry::Is::view)}) {
    out.update(Json::parse(list));
  }
  return dumped(out);
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
