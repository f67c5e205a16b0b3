#pragma once
/// The desk: acts (input + state -> events or problems) and views (state -> answer).
/// What the user does is decided here; neither the command line nor the server decides anything.

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "bay/state.hpp"
#include "describe/catalogue.hpp"

namespace wm::desk {

/// What an act may know besides its input.
struct Desk {
  const bay::State& state;
  const describe::Context& context;  ///< today, unit set, tables
  std::string happened;              ///< when it happened: a date or an instant
  std::string author;
  /// Decodes a stored body; set by whoever knows the stored form (a correction needs it).
  std::function<Checked<bay::Payload>(std::string_view kind, int version, std::string_view body)>
      decode;
  /// A described input as a person would type it (JSON), to be kept; set by the same.
  std::function<std::string(const describe::Type& type, const void* value)> write;
  [[nodiscard]] quantity::Date day() const;
};

/// An event that an act asks to be recorded.
struct NewEvent {
  bay::Payload payload;
  std::string refers_to;   ///< id of an earlier event, or "#0" for the first event of this act
  std::string happened{};  ///< when it happened, where that is not the act's own day
};

/// What an act gives: events to record together, all or none, and an answer to show.
template <class Answer>
struct Outcome {
  std::vector<NewEvent> events;
  Answer answer;
};

/// The plain answer of most acts.
struct Said {
  std::string words;               ///< "Defect 3 noted."
  std::string id;                  ///< short name of the thing made or changed
  std::vector<std::string> notes;  ///< what the owner should know besides
};
std::string_view describe(describe::Fields<Said>& f);

struct Act {
  std::string name;
  std::string purpose;
  std::vector<describe::Caution> cautions;
  const describe::Type* input{};
  const describe::Type* output{};
  /// Changes to plans carry the last sequence seen and are told what changed meanwhile.
  bool changes_plans{};
  std::function<std::shared_ptr<void>()> make_input;
  struct Result {
    std::vector<NewEvent> events;
    std::shared_ptr<void> answer;
  };
  std::function<Checked<Result>(const void* input, const Desk&)> run;
};

struct View {
  std::string name;
  std::string purpose;
  const describe::Type* input{};
  const describe::Type* output{};
  std::function<std::shared_ptr<void>()> make_input;
  std::function<Checked<std::shared_ptr<void>>(const void* input, const bay::State&,
                                               const describe::Context&)>
      run;
};

namespace detail {
template <class F>
struct ActSignature;
template <class In, class Answer>
struct ActSignature<Checked<Outcome<Answer>> (*)(const In&, const Desk&)> {
  using Input = In;
  using Output = Answer;
};
template <class F>
struct ViewSignature;
template <class In, class Out>
struct ViewSignature<Checked<Out> (*)(const In&, const bay::State&, const describe::Context&)> {
  using Input = In;
  using Output = Out;
};
}  // namespace detail

/// @tparam Function  `Checked<Outcome<Answer>> f(const In&, const Desk&)`, pure.
template <auto Function>
Act act(std::string_view name, std::string_view purpose,
        std::vector<describe::Caution> cautions = {}, bool changes_plans = false) {
  using In = typename detail::ActSignature<decltype(Function)>::Input;
  using Out = typename detail::ActSignature<decltype(Function)>::Output;
  Act made;
  made.name = std::string(name);
  made.purpose = std::string(purpose);
  made.cautions = std::move(cautions);
  made.changes_plans = changes_plans;
  made.input = &describe::type_of<In>();
  made.output = &describe::type_of<Out>();
  made.make_input = [] { return std::static_pointer_cast<void>(std::make_shared<In>()); };
  made.run = [](const void* input, const Desk& desk) -> Checked<Act::Result> {
    auto outcome = Function(*static_cast<const In*>(input), desk);
    if (!outcome) return Fail(outcome.error());
    return Act::Result{
        std::move(outcome->events),
        std::static_pointer_cast<void>(std::make_shared<Out>(std::move(outcome->answer)))};
  };
  return made;
}

/// @tparam Function  `Checked<Out> f(const In&, const State&, const Context&)`, pure.
template <auto Function>
View view(std::string_view name, std::string_view purpose) {
  using In = typename detail::ViewSignature<decltype(Function)>::Input;
  using Out = typename detail::ViewSignature<decltype(Function)>::Output;
  View made;
  made.name = std::string(name);
  made.purpose = std::string(purpose);
  made.input = &describe::type_of<In>();
  made.output = &describe::type_of<Out>();
  made.make_input = [] { return std::static_pointer_cast<void>(std::make_shared<In>()); };
  made.run = [](const void* input, const bay::State& state,
                const describe::Context& context) -> Checked<std::shared_ptr<void>> {
    auto answer = Function(*static_cast<const In*>(input), state, context);
    if (!answer) return Fail(answer.error());
    return std::static_pointer_cast<void>(std::make_shared<Out>(std::move(*answer)));
  };
  return made;
}

/// Every act and every view, in the order of the manual.
[[nodiscard]] const std::vector<Act>& acts();
[[nodiscard]] const std::vector<View>& views();
[[nodiscard]] const Act* find_act(std::string_view name);
[[nodiscard]] const View* find_view(std::string_view name);

}  // namespace wm::desk
