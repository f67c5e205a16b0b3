#pragma once
/// The pressure of a proof test: by the table of the hose, never by a fixed ratio.

#include <optional>
#include <string>
#include <vector>

#include "describe/catalogue.hpp"
#include "quantity/text.hpp"

namespace wm::hose {

using EnteredPressure = quantity::Entered<quantity::PressureGauge>;

/// Which table the proof pressure comes from.
enum class ProofFamily : std::uint8_t {
  not_said,
  medium_elastomer,  ///< one wire braid, fabric cover
  high_elastomer,
  ptfe_swivel,   ///< PTFE, swivel nut ends
  ptfe_flanged,  ///< PTFE, flanged ends
  other          ///< the maker's figure is asked for
};

struct ProofQuestion {
  ProofFamily family{ProofFamily::not_said};
  std::string size;
  std::optional<EnteredPressure> makers;  ///< wins over the table
  std::string makers_source;
};

struct ProofLimit {
  quantity::PressureGauge proof;  ///< a maximum
  std::string text;               ///< as printed or typed, with its unit
  std::string source;
};

/// The greatest pressure this hose may be proof tested at.
/// @return missing ("makers_proof": no family and no figure), not_found ("size")
/// @source AC 43.13-1B table 9-3; TM 1-1500-204-23-2 tables 4-15 and 4-23
[[nodiscard]] Result<ProofLimit> proof_limit(const describe::Context& context,
                                             const ProofQuestion& question);

std::string_view describe(describe::Choices<ProofFamily>& c);

}  // namespace wm::hose
