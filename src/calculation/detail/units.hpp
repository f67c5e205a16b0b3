#pragma once
/// The units that somebody asks an answer in: "units": {"drop": "mV"}.

#include <map>
#include <string>

#include "calculation/detail/tree.hpp"
#include "describe/type.hpp"
#include "outcome/result.hpp"

namespace wm::calculation::detail {

/// Take "units" out of the input and into `wanted`; refuses fields that the answer does not have
/// and units that they cannot have.
[[nodiscard]] Problems take_units(Tree& tree, const describe::Type& answer,
                                  std::map<std::string, std::string>& wanted);

/// Units that no value of the answer could be shown in: a field of whatever kind shows its kind
/// only in the answer.
[[nodiscard]] Problems unfit_units(const describe::Type& type, const void* answer,
                                   const std::map<std::string, std::string>& wanted);

}  // namespace wm::calculation::detail
