#pragma once
/// The catalogue of calculations: each a named pure function with declared inputs,
/// outputs, units, sources and cautions.
///
///   catalogue.add(calculation<&torque_setting>(
///       "torque-setting", "What to set on the wrench when an extension is fitted",
///       {read("AC 43.13-1B CHG 1", "par. 7-40")}, {caution::wrong_torque}));

#include <functional>
#include <memory>
#include <optional>
#include <span>

#include "describe/fields.hpp"
#include "describe/table.hpp"

namespace wm::describe {

/// How a fact was come by; only `read` may become a built-in acceptance limit.
enum class Provenance : std::uint8_t {
  read,
  secondary,
  derived,
  computed,
  memory,
  common_practice
};
[[nodiscard]] std::string_view word(Provenance provenance);

struct Source {
  std::string document;  ///< with its edition
  std::string place;     ///< paragraph, table or page
  Provenance provenance{Provenance::read};
};
[[nodiscard]] Source read(std::string_view document, std::string_view place);
[[nodiscard]] Source secondary(std::string_view document, std::string_view place);
[[nodiscard]] Source derived(std::string_view how);
[[nodiscard]] Source from_memory(std::string_view document, std::string_view place);
[[nodiscard]] Source common_practice(std::string_view what);

struct Caution {
  std::string_view id;
  std::string_view text;
};
/// The cautions of the trade that the tool always shows where they apply.
namespace caution {
extern const Caution propeller, cranking, compression, fuel_vapour, proof_with_liquid, high_tension,
    hot_parts, eye_protection, battery, insulation_not_tested, redundant_pair, look_again,
    wrong_torque, defer, mass_and_balance, dates_are_yours;
}

/// What a calculation may know besides its input.
struct Context {
  quantity::Date today{};  ///< unset (year 0) where the caller gives none
  std::uint64_t seed{1};
  quantity::UnitSet units{quantity::UnitSet::us_customary};
  std::span<const Table* const> tables{};
  /// Told how far a long calculation has come (0 to 1); false means: stop.
  std::function<bool(double share)> progress{};
  /// Bytes of a file that the input names: an attachment of the binder, or a file beside the
  /// command line. Nothing where there is none.
  std::function<std::optional<std::string>(std::string_view name)> file{};
  [[nodiscard]] const Table* table(std::string_view name) const;
  /// @return false when the user wants the calculation to stop.
  [[nodiscard]] bool go_on(double share) const { return !progress || progress(share); }
};

struct Calculation {
  std::string name;
  std::string purpose;
  int version{1};
  std::vector<Source> sources;
  std::vector<Caution> cautions;
  const Type* input{};
  const Type* output{};
  std::function<std::shared_ptr<void>()> make_input;
  /// Runs on a value of `input`; gives a value of `output` or every problem.
  std::function<Checked<std::shared_ptr<void>>(const void* input, const Context&)> run;
};

namespace detail {
template <class F>
struct Signature;
template <class Out, class In>
struct Signature<Checked<Out> (*)(const In&, const Context&)> {
  using Input = In;
  using Output = Out;
};
}  // namespace detail

/// @tparam Function  `Checked<Out> f(const In&, const Context&)`, pure.
template <auto Function>
Calculation calculation(std::string_view name, std::string_view purpose,
                        std::vector<Source> sources, std::vector<Caution> cautions,
                        int version = 1) {
  using In = typename detail::Signature<decltype(Function)>::Input;
  using Out = typename detail::Signature<decltype(Function)>::Output;
  Calculation made;
  made.name = std::string(name);
  made.purpose = std::string(purpose);
  made.version = version;
  made.sources = std::move(sources);
  made.cautions = std::move(cautions);
  made.input = &type_of<In>();
  made.output = &type_of<Out>();
  made.make_input = [] { return std::static_pointer_cast<void>(std::make_shared<In>()); };
  made.run = [](const void* input, const Context& context) -> Checked<std::shared_ptr<void>> {
    auto answer = Function(*static_cast<const In*>(input), context);
    if (!answer) return Fail(answer.error());
    return std::static_pointer_cast<void>(std::make_shared<Out>(std::move(*answer)));
  };
  return made;
}

class Catalogue {
 public:
  /// @pre No calculation of this name is there yet.
  void add(Calculation calculation);
  void add(const Table& table) { tables_.push_back(&table); }
  [[nodiscard]] const std::vector<Calculation>& calculations() const { return calculations_; }
  [[nodiscard]] const Calculation* find(std::string_view name) const;
  [[nodiscard]] std::span<const Table* const> tables() const { return tables_; }

 private:
  std::vector<Calculation> calculations_;
  std::vector<const Table*> tables_;
};

}  // namespace wm::describe
