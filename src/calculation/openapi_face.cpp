#include "calculation/openapi_face.hpp"

#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include <map>

#include "calculation/detail/to_json.hpp"
#include "calculation/detail/words.hpp"

namespace wm::calculation {
namespace {

using describe::Field;
using describe::Shape;
using describe::Type;
using detail::Json;

/// Types on their way in or out, each named once under components.
class Schemas {
 public:
  explicit Schemas(bool out) : out_(out) {}

  Json of(const Type& outer, const Field* field = nullptr) {
    const Type& type = detail::inside(outer);
    Json schema = Json::object();
    switch (type.shape) {
      case Shape::text:
        schema["type"] = "string";
        if (field != nullptr && field->lowest) schema["minLength"] = count(*field->lowest);
        if (!out_) {
          schema["maxLength"] = field != nullptr && field->highest
                                    ? count(*field->highest)
                                    : Json(detail::k_longest_text_field);
        }
        return schema;
      case Shape::yes_no:
        schema["type"] = "boolean";
        return schema;
      case Shape::count:
        schema["type"] = "integer";
        put_bounds(field, true, schema);
        return schema;
      case Shape::number:
        schema["type"] = out_ ? Json("number") : Json({"number", "string"});
        put_bounds(field, false, schema);
        return schema;
      case Shape::quantity:
      case Shape::measured:
      case Shape::any_quantity:
        return quantity(type, field);
      case Shape::date:
        schema["type"] = "string";
        schema["format"] = "date";
        return schema;
      case Shape::list:
        schema["type"] = "array";
        schema["items"] = of(*type.of);
        if (field != nullptr && field->lowest) schema["minItems"] = count(*field->lowest);
        if (field != nullptr && field->highest) schema["maxItems"] = count(*field->highest);
        return schema;
      case Shape::choice:
      case Shape::record:
        return reference(type);
      case Shape::one_of: {
        auto alternatives = Json::array();
        for (const auto& a : type.alternatives) alternatives.push_back(alternative(a));
        schema["oneOf"] = std::move(alternatives);
        return schema;
      }
      case Shape::optional:
        break;
    }
    return schema;
  }

  [[nodiscard]] const Json& made() const { return made_; }

 private:
  static Json count(double value) { return static_cast<std::int64_t>(value); }

  void put_bounds(const Field* field, bool whole, Json& schema) const {
    if (field == nullptr || out_) return;
    const auto number = [&](double v) { return whole ? count(v) : Json(v); };
    if (field->lowest) {
      schema[field->above ? "exclusiveMinimum" : "minimum"] = number(*field->lowest);
    }
    if (field->highest) schema["maximum"] = number(*field->highest);
  }

  Json quantity(const Type& type, const Field* field) {
    const std::string name = out_ ? "quantity-answer" : "quantity-text";
    if (!made_.contains(name)) made_[name] = out_ ? answer_schema() : text_schema();
    Json schema = Json::object();
    schema["$ref"] = "#/components/schemas/" + name;
    if (type.kind) schema["x-kind"] = quantity::info(*type.kind).name;
    if (!out_) schema["examples"] = Json::array({detail::example_for(type, field)});
    return schema;
  }

  static Json text_schema() {
    return {{"type", "string"},
            {"maxLength", 120},
            {"description",
             "A value with its unit as people write it: \"38 in\", \"3 ft 4 1/2 in\", \"85.2 ohm "
             "+- 0.7 ohm\". A bare number is refused."}};
  }
  static Json answer_schema() {
    Json out = Json::parse(R"({"type":"object","required":["value","unit","text"],"properties":{
      "value":{"type":["number","null"],"description":"In `unit`, to twelve digits."},
      "unit":{"type":"string"},
      "text":{"type":"string","description":"What to show: no more digits than were earned."},
      "u":{"type":"number","description":"Standard uncertainty, U / k."},
      "U":{"type":"number","description":"Expanded uncertainty."},
      "k":{"type":"number","description":"Coverage factor."},
      "as_typed":{"type":"string"}}})");
    return out;
  }

  Json alternative(const describe::Alternative& a) {
    Json schema = Json::object();
    schema["allOf"] = Json::array({reference(*a.type)});
    schema["type"] = "object";
    schema["properties"]["is"]["const"] = a.word;
    schema["required"] = Json::array({"is"});
    return schema;
  }

  Json reference(const Type& type) {
    Json schema = Json::object();
    schema["$ref"] = "#/components/schemas/" + name_of(type);
    return schema;
  }

  /// Two rooms may use one name: the second gets a number.
  std::string name_of(const Type& type) {
    if (const auto found = names_.find(&type); found != names_.end()) return found->second;
    const std::string base = type.name + (out_ ? "-answer" : "");
    std::string name = base;
    for (int i = 2; made_.contains(name); ++i) name = fmt::format("{}-{}", base, i);
    names_[&type] = name;
    made_[name] = nullptr;  // holds the place while the inner types are made
    auto schema = type.shape == Shape::choice ? choice(type) : record(type);
    made_[name] = std::move(schema);
    return name;
  }

  static Json choice(const Type& type) {
    Json schema = Json::object();
    schema["type"] = "string";
    auto words = Json::array();
    for (const auto& c : type.choices) words.push_back(c.value);
    schema["enum"] = std::move(words);
    return schema;
  }

  Json record(const Type& type) {
    Json schema = Json::object();
    schema["type"] = "object";
    auto properties = Json::object();
    auto required = Json::array();
    for (const auto& field : type.fields) {
      auto one = of(*field.type, &field);
      one["title"] = field.label;
      if (!field.help.empty()) one["description"] = field.help;
      properties[field.key] = std::move(one);
      // A needed field that is sometimes hidden may sometimes stay out.
      const bool always =
          out_ ? field.type->shape != Shape::optional && field.type->shape != Shape::date
               : detail::is_needed(field) && field.shown_when.empty();
      if (always) required.push_back(field.key);
    }
    schema["properties"] = std::move(properties);
    if (!required.empty()) schema["required"] = std::move(required);
    return schema;
  }

  bool out_;
  Json made_ = Json::object();
  std::map<const Type*, std::string> names_;
};

Json content(Json schema) {
  Json out = Json::object();
  out["content"]["application/json"]["schema"] = std::move(schema);
  return out;
}

Json operation(std::string_view kind, std::string_view name, std::string_view purpose, Json input,
               Json output) {
  Json out = Json::object();
  out["operationId"] = fmt::format("{}-{}", kind, name);
  out["summary"] = purpose;
  out["tags"] = Json::array({kind});
  out["parameters"] = Json::array({{{"$ref", "#/components/parameters/own-page"}}});
  out["requestBody"] = content(std::move(input));
  // An empty body is an empty input; the id of an act cannot be left out.
  out["requestBody"]["required"] = kind == "act";
  auto good = content(std::move(output));
  good["description"] = "The answer";
  auto& responses = out["responses"];
  responses["200"] = std::move(good);
  responses["403"]["$ref"] = "#/components/responses/refused";
  if (kind == "act") responses["409"]["$ref"] = "#/components/responses/conflict";
  responses["413"]["$ref"] = "#/components/responses/too-large";
  responses["422"]["$ref"] = "#/components/responses/problems";
  if (kind != "calc") responses["503"]["$ref"] = "#/components/responses/fault";
  Json post = Json::object();
  post["post"] = std::move(out);
  return post;
}

Json responses() {
  const auto problems = Json::parse(R"({"$ref":"#/components/schemas/problems"})");
  const auto one = [&](std::string_view words, Json schema) {
    auto out = content(std::move(schema));
    out["description"] = words;
    return out;
  };
  Json out = Json::object();
  out["problems"] = one("Every problem of the input at once; nothing was done", problems);
  out["conflict"] =
      one("The record says otherwise, or moved on meanwhile; nothing was done", problems);
  out["refused"] = one("Asked by a page that is not ours; nothing was done", problems);
  out["too-large"] = one("More than is read at once; nothing was done", problems);
  out["fault"] = one(
      "The machine failed: nothing was acknowledged, and the same act with the same id may be sent "
      "again",
      Json::parse(R"({"type":"object","required":["fault"],"properties":{"fault":{"type":"object",
        "required":["what","do_next"],
        "properties":{"what":{"type":"string"},"do_next":{"type":"string"}}}}})"));
  return out;
}

Json envelope_schemas() {
  return Json::parse(R"({
    "problems":{"type":"object","required":["problems"],"properties":{
      "problems":{"type":"array","minItems":1,"items":{"$ref":"#/components/schemas/problem"}}}},
    "problem":{"type":"object","required":["path","kind","what"],"properties":{
      "path":{"type":"string","description":"The field: leads/2/reading; empty for the whole."},
      "kind":{"type":"string"},"what":{"type":"string"},"expected":{"type":"string"},
      "example":{"type":"string"},"do_next":{"type":"string"},"source":{"type":"string"}}},
    "caution":{"type":"object","required":["id","text"],"properties":{
      "id":{"type":"string"},"text":{"type":"string"},
      "first":{"type":"boolean","description":"Must be so before anybody begins: read it first."}}},
    "source":{"type":"object","required":["document","place","provenance"],"properties":{
      "document":{"type":"string"},"place":{"type":"string"},"provenance":{"type":"string",
        "enum":["read","secondary","derived","computed","memory","common-practice"]}}},
    "recorded":{"type":"object","required":["sequence","id","kind"],"properties":{
      "sequence":{"type":"integer"},"id":{"type":"string"},"kind":{"type":"string"}}},
    "sequence":{"type":"integer","minimum":0,
      "description":"Sequence number of the last event in the record; 0 in an empty one."},
    "head":{"type":"string","description":"Hash of that event, in hex."}})");
}

Json list_of(std::string_view schema) {
  return {{"type", "array"}, {"items", {{"$ref", fmt::format("#/components/schemas/{}", schema)}}}};
}

Json calculation_answer(Json answer) {
  auto out = Json::parse(R"({"type":"object",
    "required":["calculation","version","answer","sources","cautions"],
    "properties":{"calculation":{"type":"string"},"version":{"type":"integer"}}})");
  out["properties"]["answer"] = std::move(answer);
  out["properties"]["sources"] = list_of("source");
  out["properties"]["cautions"] = list_of("caution");
  return out;
}

Json entry_answer(const Entry& entry, Schemas& out_schemas) {
  auto out = Json::parse(R"({"type":"object","required":["sequence","head","answer"],"properties":{
    "sequence":{"$ref":"#/components/schemas/sequence"},
    "head":{"$ref":"#/components/schemas/head"}}})");
  out["properties"]["answer"] =
      entry.output == nullptr ? Json::object() : out_schemas.of(*entry.output);
  const auto put = [&](const char* key, Json schema) {
    out["required"].push_back(key);
    out["properties"][key] = std::move(schema);
  };
  put("cautions", list_of("caution"));
  if (entry.kind == Entry::Is::view) return out;
  auto recorded = list_of("recorded");
  recorded["description"] = "The events that the act added; none when it was tried only.";
  put("recorded", std::move(recorded));
  put("was_there_already",
      {{"type", "boolean"}, {"description", "An act of this id was recorded before: a retry."}});
  return out;
}

Json calculation_input(const describe::Calculation& calculation, Schemas& in) {
  Json units = Json::parse(
      R"({"type":"object","properties":{"units":{"type":"object",
          "additionalProperties":{"type":"string"},
          "description":"Units wanted in the answer: {\"field\": \"kohm\"}"}}})");
  Json schema = Json::object();
  schema["allOf"] = Json::array({in.of(*calculation.input), std::move(units)});
  schema["examples"] = Json::array({detail::example_tree(calculation)});
  return schema;
}

/// A view takes its input as it is; an act puts it into an envelope.
Json entry_input(const Entry& entry, const Type& envelope, Schemas& in) {
  auto input = entry.input == nullptr ? Json::object() : in.of(*entry.input);
  auto example = entry.input == nullptr ? Json::object() : detail::example_tree(*entry.input);
  if (entry.kind == Entry::Is::act) {
    auto inside = Json::object();
    inside["type"] = "object";
    inside["required"] = Json::array({"input"});
    inside["properties"]["input"] = std::move(input);
    input = Json::object();
    input["allOf"] = Json::array({in.of(envelope), std::move(inside)});
    example = {{"id", "a3f9-1"}, {"happened", "2026-11-25"}, {"input", std::move(example)}};
  }
  input["examples"] = Json::array({std::move(example)});
  return input;
}

}  // namespace

std::string openapi_json(const describe::Catalogue& catalogue, std::span<const Entry> entries,
                         const Type& envelope, std::string_view version) {
  Schemas in(false);
  Schemas out(true);
  Json paths = Json::object();
  for (const auto& c : catalogue.calculations()) {
    paths["/api/calc/" + c.name] = operation("calc", c.name, c.purpose, calculation_input(c, in),
                                             calculation_answer(out.of(*c.output)));
  }
  for (const auto& e : entries) {
    paths[fmt::format("/api/{}/{}", word(e.kind), e.name)] = operation(
        word(e.kind), e.name, e.purpose, entry_input(e, envelope, in), entry_answer(e, out));
  }
  Json document = Json::object();
  document["openapi"] = "3.1.0";
  document["info"]["title"] = "Witnessmark";
  document["info"]["version"] = version;
  document["info"]["description"] =
      "The record and the calculations of one engine bay. It computes, cites and warns; the "
      "maker's manual, the local authority and licensed practice decide.";
  document["paths"] = std::move(paths);
  auto schemas = envelope_schemas();
  // Answers are named apart from inputs, so that nothing is overwritten here.
  for (const auto* made : {&in.made(), &out.made()}) {
    for (const auto& [name, schema] : made->items()) schemas[name] = schema;
  }
  auto& components = document["components"];
  components["schemas"] = std::move(schemas);
  components["parameters"]["own-page"] = Json::parse(
      R"({"name":"X-Witnessmark","in":"header","required":true,"schema":{"const":"1"},
          "description":"A page of another origin cannot send it."})");
  components["responses"] = responses();
  return detail::dumped(document, true);
}

}  // namespace wm::calculation
