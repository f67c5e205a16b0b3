#pragma once
/// "trouble-causes": a symptom of starting, ignition or wiring, its usual causes, and for each the
/// check that tells it apart. A reviewed table; no probabilities.

#include <cstdint>
#include <string>
#include <vector>

#include "describe/catalogue.hpp"

namespace wm::staging {

struct TroubleInput {
  std::string symptom;  ///< its key, or words of it
};

struct TroubleCause {
  std::int64_t order{};
  std::string cause;
  std::string check;
  std::string calculation;  ///< that judges the check; empty: by eye
  std::string source;
};

struct TroubleAnswer {
  std::string symptom;
  std::string words;
  std::vector<std::string> first;  ///< what must be so before anything is tried
  std::vector<TroubleCause> causes;
  std::vector<std::string> others;  ///< symptoms of the table, "key: words"
  std::vector<std::string> notes;
};

/// The row whose key is given; else the only symptom whose words hold all words given. What must
/// be so first (cranking: fuel off, ignition proven dead, someone at the switch) stands ahead of
/// the causes.
/// @return not_found with the symptoms there are; missing table
/// @source data/staging/trouble.json, a source in each row
[[nodiscard]] Checked<TroubleAnswer> trouble_causes(const TroubleInput& in,
                                                    const describe::Context& context);

std::string_view describe(describe::Fields<TroubleInput>& f);
std::string_view describe(describe::Fields<TroubleCause>& f);
std::string_view describe(describe::Fields<TroubleAnswer>& f);

}  // namespace wm::staging
