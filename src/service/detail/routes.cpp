#include "service/detail/routes.hpp"

#include <fmt/core.h>

#include "binder/hose_paper.hpp"
#include "binder/papers.hpp"
#include "calculation/catalogue.hpp"
#include "calculation/json_face.hpp"
#include "calculation/toml_face.hpp"
#include "desk/sheet.hpp"
#include "service/api.hpp"
#include "service/detail/assets.hpp"
#include "service/detail/envelope.hpp"
#include "service/detail/media.hpp"
#include "service/detail/texts.hpp"

namespace wm::service::detail {
namespace {

std::vector<std::string_view> split(std::string_view path) {
  std::vector<std::string_view> out;
  while (path.starts_with('/')) {
    path.remove_prefix(1);
    const auto next = path.find('/');
    out.push_back(path.substr(0, next));
    path = next == std::string_view::npos ? std::string_view{} : path.substr(next);
  }
  return out;
}

Answer json(std::string body) {
  Answer answer;
  answer.body = std::move(body);
  return answer;
}

Answer no_such(std::string_view what, std::string_view name) {
  return refusal(404, Kind::not_found, fmt::format("there is no {} named `{}`", what, name),
                 "GET /api/catalogue lists what there is.");
}

binder::InputReader from_json(std::string_view text) {
  return [text](const describe::Type& type, void* out) {
    return calculation::read_json(text, type, out);
  };
}

std::string query(const Ask& ask, const std::string& key) {
  const auto found = ask.query.find(key);
  return found == ask.query.end() ? std::string{} : found->second;
}

std::string_view or_empty(const std::string& body) {
  return body.find_first_not_of(" \t\r\n") == std::string::npos ? std::string_view("{}") : body;
}

Answer describe_one(std::string_view face, std::string_view name) {
  if (face == "calc") {
    const auto* found = calculation::catalogue().find(name);
    return found == nullptr ? no_such("calculation", name)
                            : json(calculation::describe_json(*found));
  }
  const auto kind = face == "act" ? calculation::Entry::Is::act : calculation::Entry::Is::view;
  const auto* found = calculation::find_entry(kind, name);
  return found == nullptr ? no_such(face, name) : json(calculation::describe_json(*found));
}

bool is_face(std::string_view word) { return word == "calc" || word == "act" || word == "view"; }

}  // namespace

Answer Routes::get(const Ask& ask) {
  const auto parts = split(ask.path);
  if (parts.empty() || parts[0] != "api") return serve_asset(ask);
  auto answer = get_api(ask, parts);
  if (answer.headers.empty()) answer.headers.emplace_back("Cache-Control", "no-store");
  return answer;
}

Answer Routes::get_api(const Ask& ask, const Parts& parts) {
  if (parts.size() == 2) {
    if (parts[1] == "catalogue") return json(catalogue_json());
    if (parts[1] == "openapi.json") return json(openapi_text());
    if (parts[1] == "verify") return verify(ask);
  }
  if (parts.size() == 3) {
    if (is_face(parts[1])) return describe_one(parts[1], parts[2]);
    if (parts[1] == "attachment") return attachment(ask, parts[2]);
    if (parts[1] == "sheet") return sheet(parts[2]);
    if (parts[1] == "event") {
      const auto event = binder_.event(parts[2]);
      if (event) return json(event_json(*event));
      return event.error().kind == Kind::not_found ? not_here("there is no event of this id")
                                                   : problems_answer({event.error()});
    }
  }
  if (parts.size() == 4 && parts[1] == "print") return print(ask, parts[2], parts[3]);
  return refusal(404, Kind::not_found, "there is nothing at this address",
                 "GET /api/openapi.json lists what there is.");
}

Answer Routes::verify(const Ask& ask) {
  std::vector<record::Head> heads;
  Problems problems;
  const auto [from, to] = ask.query.equal_range("against");
  for (auto at = from; at != to; ++at) {
    auto head = record::parse_head(at->second);
    if (head) {
      heads.push_back(std::move(*head));
    } else {
      problems.push_back(head.error());
      problems.back().path = "against";
    }
  }
  if (!problems.empty()) return problems_answer(problems);
  const auto found = binder_.verify(heads);
  return json(verification_json(found, binder_.last()));
}

Answer Routes::attachment(const Ask& ask, std::string_view hash) {
  auto content = binder_.attachment(hash);
  if (!content) {
    return content.error().kind == Kind::not_found
               ? not_here("no attachment with this content is in the binder")
               : problems_answer({content.error()});
  }
  Media media;
  binder_.look([&](const bay::State& state) { media = media_of(state, hash, *content); });
  Answer answer;
  const auto tag = fmt::format("\"{}\"", hash);
  answer.type = media.type;
  answer.headers = {{"Cache-Control", "private, max-age=31536000, immutable"},
                    {"ETag", tag},
                    {"Content-Disposition", disposition(media.shown, media.name)}};
  if (media.type != "application/pdf") {
    // Whatever it turns out to be, it runs nothing here. A browser's own PDF reader would not
    // start in a sandbox.
    answer.headers.emplace_back("Content-Security-Policy", "default-src 'none'; sandbox");
  }
  if (has_tag(ask.header("If-None-Match"), tag)) {
    answer.status = 304;
    return answer;
  }
  answer.body = std::move(*content);
  return answer;
}

Answer Routes::sheet(std::string_view file) {
  constexpr std::string_view k_ending = ".toml";
  if (!file.ends_with(k_ending)) return not_here("an aircraft sheet is named AIRCRAFT.toml");
  const auto aircraft = file.substr(0, file.size() - k_ending.size());
  const auto input = fmt::format(R"({{"aircraft":{}}})", calculation::json_string(aircraft));
  const auto reply = binder_.view("sheet", from_json(input), settings_.clock(), settings_.units);
  if (!reply) {
    for (const auto& p : reply.error()) {
      if (p.kind == Kind::not_found) return not_here(p.what);
    }
    return problems_answer(reply.error());
  }
  Answer answer;
  answer.type = "application/toml; charset=utf-8";
  binder_.look([&](const bay::State& state) {
    answer.body = desk::sheet_preface(state, std::string(aircraft));
  });
  answer.body += calculation::write_toml(*reply->type, reply->value.get());
  answer.headers = {{"Cache-Control", "no-store"},
                    {"Content-Disposition", disposition(false, file)}};
  return answer;
}

Answer Routes::print(const Ask& ask, std::string_view kind, std::string_view file) {
  const auto dot = file.rfind('.');
  if (dot == std::string_view::npos) return not_here("a card is named ID.pdf or ID.svg");
  const auto ending = file.substr(dot + 1);
  if (ending != "pdf" && ending != "svg") return not_here("cards are printed as pdf or svg");
  const auto paper = query(ask, "paper");
  if (!paper.empty() && paper != "a4" && paper != "letter") {
    return problems_answer({{Kind::unknown_choice,
                             "paper",
                             fmt::format("`{}` is no paper", paper),
                             "one of: a4, letter",
                             "a4",
                             {},
                             {}}});
  }
  const binder::RecordPaper wanted{std::string(kind), query(ask, "aircraft"),
                                   std::string(file.substr(0, dot)), std::string(ending),
                                   std::string(paper)};
  auto printed = binder::record_paper(binder_, wanted, calculation_context());
  if (!printed) {
    const auto& problem = printed.error().front();
    const bool nothing = problem.kind == Kind::not_found || problem.path == "kind";
    return nothing ? not_here(problem.what) : problems_answer(printed.error());
  }
  Answer answer;
  answer.type = ending == "pdf" ? "application/pdf" : "image/svg+xml";
  answer.body = std::move(*printed);
  answer.headers = {{"Cache-Control", "no-store"},
                    {"Content-Disposition", disposition(true, file)}};
  if (ending == "svg") {
    answer.headers.emplace_back("Content-Security-Policy",
                                "default-src 'none'; style-src 'unsafe-inline'; sandbox");
  }
  return answer;
}

Answer Routes::post(const Ask& ask) {
  const auto parts = split(ask.path);
  const bool draws = parts.size() == 3 && parts[0] == "api" && parts[1] == "sheet";
  if (!draws && (parts.size() != 3 || parts[0] != "api" || !is_face(parts[1]))) {
    return refusal(404, Kind::not_found, "nothing can be sent to this address",
                   "GET /api/openapi.json lists what there is.");
  }
  const std::string name(parts[2]);
  Answer answer = draws                ? drawn(name, ask)
                  : parts[1] == "calc" ? calculate(name, ask.body)
                  : parts[1] == "act"  ? act(name, ask.body)
                                       : look(name, ask.body);
  answer.headers.emplace_back("Cache-Control", "no-store");
  return answer;
}

describe::Context Routes::calculation_context() const {
  describe::Context context;
  context.today = settings_.clock().today;
  context.units = settings_.units;
  context.tables = calculation::catalogue().tables();
  // A file that a calculation names is an attachment of this binder, by its hash.
  context.file = [this](std::string_view name) -> std::optional<std::string> {
    auto content = binder_.attachment(name);
    if (!content) return std::nullopt;
    return std::move(*content);
  };
  return context;
}

Answer Routes::drawn(const std::string& name, const Ask& ask) {
  if (!binder::is_drawn(name)) return no_such("drawn calculation", name);
  auto made = binder::paper_of({name, query(ask, "as"), query(ask, "paper")},
                               from_json(or_empty(ask.body)), calculation_context());
  if (!made) return problems_answer(made.error());
  Answer answer;
  answer.type = made->type;
  answer.body = std::move(made->bytes);
  answer.headers = {{"Content-Disposition", disposition(made->type == "application/pdf" ||
                                                            made->type.starts_with("image/svg") ||
                                                            made->type == "image/png",
                                                        made->name)}};
  if (made->type.starts_with("image/svg")) {
    answer.headers.emplace_back("Content-Security-Policy",
                                "default-src 'none'; style-src 'unsafe-inline'; sandbox");
  }
  return answer;
}

Answer Routes::calculate(const std::string& name, const std::string& body) {
  const auto* found = calculation::catalogue().find(name);
  if (found == nullptr) return no_such("calculation", name);
  const auto context = calculation_context();
  calculation::WriteOptions options;
  options.units = settings_.units;
  auto answer = calculation::call_json(*found, or_empty(body), context, options);
  return answer ? json(std::move(*answer)) : problems_answer(answer.error());
}

Answer Routes::look(const std::string& name, const std::string& body) {
  const auto* found = calculation::find_entry(calculation::Entry::Is::view, name);
  if (found == nullptr) return no_such("view", name);
  const auto reply =
      binder_.view(name, from_json(or_empty(body)), settings_.clock(), settings_.units);
  return reply ? json(view_json(*reply, found->cautions, settings_.units))
               : problems_answer(reply.error());
}

Answer Routes::act(const std::string& name, const std::string& body) {
  const auto* found = desk::find_act(name);
  if (found == nullptr) return no_such("act", name);
  auto opened = open_envelope(or_empty(body));
  if (!opened.problems.empty()) {
    // Everything at once: what is wrong inside is told in the same answer.
    const auto input = found->make_input();
    const auto inside = calculation::read_json(opened.input, *found->input, input.get());
    opened.problems.insert(opened.problems.end(), inside.begin(), inside.end());
    return problems_answer(opened.problems);
  }
  const auto& envelope = opened.envelope;
  const binder::ActCall call{
      name,          envelope.id,      envelope.happened, envelope.author, envelope.device,
      envelope.seen, envelope.try_only};
  const auto reply = binder_.act(call, from_json(opened.input), settings_.clock(), settings_.units);
  if (!reply) return problems_answer(reply.error());
  changes_.note({reply->sequence, reply->head});
  return json(act_json(*reply, settings_.units));
}

Answer Routes::attach(const record::ChunkSource& source) {
  const auto stored = binder_.put_attachment(source);
  if (!stored) {
    auto answer = problems_answer({stored.error()});
    if (stored.error().kind == Kind::out_of_bounds) answer.status = 413;
    return answer;
  }
  return json(fmt::format(R"({{"hash":{},"size":{}}})", calculation::json_string(stored->hash),
                          stored->size));
}

}  // namespace wm::service::detail
