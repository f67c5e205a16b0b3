#pragma once
/// The tables of a binder, version by version, and the way from one to the next.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "record/detail/database.hpp"

namespace wm::record::detail {

/// "WMrk", stored in the file's header so that other tools can tell a binder.
inline constexpr int k_application_id = 0x574d726b;

/// SQL that leads from version n to n + 1; the first makes version 1 out of an empty file. A step
/// is never changed once a version that has it went out: binders in the field hold its result.
[[nodiscard]] std::span<const std::string_view> schema_steps();
[[nodiscard]] int current_schema();
/// From this version on there are tables for attachments.
inline constexpr int k_schema_with_attachments = 2;

/// Run the steps after `version` in one transaction: all or none.
void bring_up_to_date(const Database& database);

/// One object of a schema, for comparison.
struct SchemaObject {
  std::string type, name, sql;
  friend bool operator==(const SchemaObject&, const SchemaObject&) = default;
};
[[nodiscard]] std::vector<SchemaObject> schema_found(const Database& database);
/// What a file of that version must hold.
[[nodiscard]] std::vector<SchemaObject> schema_expected(int version);

}  // namespace wm::record::detail
