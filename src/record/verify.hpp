#pragma once
/// Does the record still agree with itself, and with the heads that were printed or signed?
///
/// It says no more than that: a chain shows later change, not original truth.

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "outcome/result.hpp"
#include "record/event.hpp"
#include "record/journal.hpp"

namespace wm::record {

/// One thing that does not agree.
struct Finding {
  std::int64_t sequence{};  ///< the entry it stands in; 0 when it is not in an entry
  std::string column;       ///< "body", "hash", "attachment", ...; empty when it is the file itself
  std::string what;         ///< in words

  friend bool operator==(const Finding&, const Finding&) = default;
};

struct Verification {
  std::int64_t events{};       ///< entries looked at
  std::int64_t attachments{};  ///< attachments looked at
  std::int64_t heads{};        ///< printed or signed heads compared
  std::string head;            ///< hash of the last entry
  std::vector<Finding> findings;

  [[nodiscard]] bool clean() const { return findings.empty(); }
};

/// Read the whole file again: the order and chain of all entries, each column against its mark,
/// each attachment against its hash, the guards against change, and SQLite's own integrity check.
///
/// Damage is a finding, never an error; only a failing machine throws (Broken).
[[nodiscard]] Verification verify(Journal& journal);

/// The same, and also against heads that were printed or signed earlier: tells a tail cut off and
/// a history that was rewritten as a whole, which the chain alone cannot show.
///
/// @param heads  as parse_head gives them; a hash may be shortened to its first 16 digits or more
[[nodiscard]] Verification verify_against(Journal& journal, std::span<const Head> heads);

/// Read "128:9f3c..." as printed on an entry: sequence, colon, 16 to 64 hex digits.
/// @return `Kind::bad_text`.
[[nodiscard]] Result<Head> parse_head(std::string_view text);

/// Write it as it is printed.
[[nodiscard]] std::string format_head(const Head& head);

}  // namespace wm::record
