#pragma once
/// A limit that a verdict may rest on, and where it comes from.
///
/// There are two ways to make one, and no third: somebody entered it (the maker's or an
/// authority's figure, or the owner's own), or it stands in a row of a reference table that was
/// `read` in a government or standard text. A row of any other provenance is advice: it is
/// refused here, so that no verdict can ever be made from it.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "describe/table.hpp"
#include "describe/type.hpp"
#include "outcome/result.hpp"

namespace wm::evidence {

/// Provenance of one row: its own, or that of the whole table.
[[nodiscard]] std::string_view provenance_of(const describe::Table& table, std::size_t row);

/// The columns of a table in which the two ends of a limit stand; one may be empty.
struct LimitColumns {
  std::string_view lowest;
  std::string_view highest;
  std::string_view unit;  ///< column of words with the unit of its row; empty: the column's own
};

class Limit {
 public:
  using End = std::optional<describe::AnyQuantity>;

  /// What a person entered; both ends may be missing: then there is no limit.
  [[nodiscard]] static Limit entered(End lowest, End highest, std::string source);

  /// @return refused unless the row is `read`; not_found for a row or column that is not there;
  ///         missing for a row with neither end; bad_text for cells that are no figures.
  [[nodiscard]] static Result<Limit> of_row(const describe::Table& table, std::size_t row,
                                            LimitColumns columns);

  [[nodiscard]] const End& lowest() const { return lowest_; }
  [[nodiscard]] const End& highest() const { return highest_; }
  [[nodiscard]] const std::string& source() const { return source_; }
  [[nodiscard]] bool any() const { return lowest_.has_value() || highest_.has_value(); }

 private:
  Limit(End lowest, End highest, std::string source);
  End lowest_;
  End highest_;
  std::string source_;
};

}  // namespace wm::evidence
