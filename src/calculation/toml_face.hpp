#pragma once
/// The TOML face: the aircraft sheet, a plain text that an owner reads, edits and keeps.

#include <string>
#include <string_view>

#include "describe/type.hpp"
#include "outcome/result.hpp"

namespace wm::calculation {

/// Read a sheet.
///
/// @param out  A default-constructed value of `type`. It is written only when nothing is wrong.
/// @return     Every problem at once, each with its path and, in `what`, its place: "line 12,
///             column 5: ...". A sheet that is no TOML gives the one problem that stopped it.
[[nodiscard]] Problems read_toml(std::string_view sheet, const describe::Type& type, void* out);

/// Put "line 12, column 5: " before what is wrong, where a problem's path stands in the sheet:
/// for what the desk found after the sheet was read.
void add_places(std::string_view sheet, Problems& problems);

/// Write the canonical sheet: fields in the order of the description, single values first, then
/// tables; quantities as they were typed; empty optionals and empty lists left out.
///
/// Reading it back gives the same value (a computed quantity becomes a typed one), and writing a
/// sheet that was read from canonical text gives the same bytes.
/// @pre The type is a record.
[[nodiscard]] std::string write_toml(const describe::Type& type, const void* value);

}  // namespace wm::calculation
