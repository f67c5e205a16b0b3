#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include "calculation/catalogue.hpp"
#include "calculation/detail/answer.hpp"
#include "calculation/detail/parse.hpp"
#include "calculation/detail/reader.hpp"
#include "calculation/detail/to_json.hpp"
#include "calculation/detail/units.hpp"

namespace wm::calculation {

std::string detail::answer_json(const describe::Calculation& calculation, const void* answer,
                                const WriteOptions& options) {
  auto out = Json::object();
  out["calculation"] = calculation.name;
  out["version"] = calculation.version;
  out["answer"] = answer_tree(*calculation.output, answer, options);
  out["sources"] = sources_tree(calculation);
  out["cautions"] = cautions_tree(calculation.cautions);
  return dumped(out, options.pretty);
}

Checked<std::shared_ptr<void>> detail::answer_of(const describe::Calculation& calculation,
                                                 const void* input,
                                                 const describe::Context& context) {
  if (!context.tables.empty()) return calculation.run(input, context);
  auto with_tables = context;
  with_tables.tables = catalogue().tables();
  return calculation.run(input, with_tables);
}

Checked<std::string> call_json(const describe::Calculation& calculation,
                               std::string_view input_json, const describe::Context& context,
                               const WriteOptions& options) {
  detail::Tree tree;
  if (auto problem = detail::parse_json(input_json, tree)) return Fail(Problems{*problem});
  auto wanted = options;
  auto problems = detail::take_units(tree, *calculation.output, wanted.field_units);
  const auto input = calculation.make_input();
  auto more = detail::read_tree(tree, *calculation.input, input.get(), detail::Source::json);
  problems.insert(problems.end(), more.begin(), more.end());
  if (!problems.empty()) return Fail(std::move(problems));

  const auto answer = detail::answer_of(calculation, input.get(), context);
  if (!answer) return Fail(answer.error());
  problems = detail::unfit_units(*calculation.output, answer->get(), wanted.field_units);
  if (!problems.empty()) return Fail(std::move(problems));
  return detail::answer_json(calculation, answer->get(), wanted);
}

}  // namespace wm::calculation
