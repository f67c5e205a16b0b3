/// make_tables ROOM OUT_DIR TABLE.json...
///
/// Validates the reference tables of one room and writes them as constant arrays, so that
/// pure rooms need no file. A bad table stops the build with the file, the place in it and
/// what was expected. The format is described in docs/decisions/0012-reference-tables.md.
///
/// Writes OUT_DIR/tables/<room>/<table>.hpp and .cpp for each table, and all.hpp, all.cpp.

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace {

// ordered_json keeps the order of the file, so that the output does too.
using Json = nlohmann::ordered_json;

struct Complaint {
  std::string place;
  std::string what;
};

/// What is wrong with one file; all of it, not only the first.
class Complaints {
 public:
  explicit Complaints(std::string file) : file_(std::move(file)) {}
  void add(const std::string& place, const std::string& what) { list_.push_back({place, what}); }
  [[nodiscard]] bool none() const { return list_.empty(); }
  void print() const {
    for (const Complaint& c : list_) {
      std::cerr << file_ << ": error: " << (c.place.empty() ? "" : c.place + ": ") << c.what
                << '\n';
    }
  }

 private:
  std::string file_;
  std::vector<Complaint> list_;
};

struct Column {
  std::string key;
  std::string meaning;
  std::string unit;
};

struct Table {
  std::string name, title, document, edition, place, provenance, how_read, between_rows, outside;
  std::vector<Column> columns;
  std::vector<std::vector<std::string>> rows;
  std::vector<std::string> row_provenance;  ///< empty, or one a row
  std::vector<std::string> row_notes;       ///< empty, or one a row
  std::vector<std::string> errata;
};

constexpr std::array<std::string_view, 6> k_provenances{"read",     "secondary", "derived",
                                                        "computed", "memory",    "common-practice"};

bool is_one_of(std::string_view word, std::span<const std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

std::string listed(std::span<const std::string_view> words) {
  std::string out;
  for (const std::string_view word : words) out += (out.empty() ? "" : ", ") + std::string(word);
  return out;
}

bool is_lower_or_digit(char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'); }

/// Lower-case words joined by hyphens; the first begins with a letter.
bool is_name(std::string_view text) {
  if (text.empty() || text.front() < 'a' || text.front() > 'z' || text.back() == '-') return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '-' ? text[i - 1] == '-' : !is_lower_or_digit(text[i])) return false;
  }
  return true;
}

std::size_t digits_at(std::string_view text, std::size_t from) {
  std::size_t n = 0;
  while (from + n < text.size() && text[from + n] >= '0' && text[from + n] <= '9') ++n;
  return n;
}

/// 12, 0.50, .366, -4.5, 1.2e-3; no plus sign, no comma, no unit.
bool is_decimal(std::string_view text) {
  std::size_t at = !text.empty() && text[0] == '-' ? 1 : 0;
  std::size_t digits = digits_at(text, at);
  at += digits;
  if (at < text.size() && text[at] == '.') {
    const std::size_t more = digits_at(text, at + 1);
    digits += more;
    at += 1 + more;
  }
  if (digits == 0) return false;
  if (at < text.size() && (text[at] == 'e' || text[at] == 'E')) {
    ++at;
    if (at < text.size() && (text[at] == '-' || text[at] == '+')) ++at;
    const std::size_t exponent = digits_at(text, at);
    if (exponent == 0) return false;
    at += exponent;
  }
  return at == text.size();
}

/// 3/8 or 1 1/2, as handbooks print sizes.
bool is_fraction(std::string_view text) {
  std::size_t at = digits_at(text, 0);
  if (at == 0) return false;
  if (at < text.size() && text[at] == ' ') {
    const std::size_t numerator = digits_at(text, at + 1);
    if (numerator == 0) return false;
    at += 1 + numerator;
  }
  if (at >= text.size() || text[at] != '/') return false;
  const std::size_t denominator = digits_at(text, at + 1);
  return denominator > 0 && text[at + 1] != '0' && at + 1 + denominator == text.size();
}

/// An empty cell of a column with a unit: the source gives no figure there.
bool is_figure(std::string_view text) {
  return text.empty() || is_decimal(text) || is_fraction(text);
}

std::string text_of(const Json& object, const std::string& key, const std::string& place,
                    bool needed, Complaints& complaints) {
  if (!object.contains(key)) {
    if (needed) complaints.add(place, fmt::format("\"{}\" is missing; expected a text", key));
    return {};
  }
  const Json& value = object.at(key);
  if (!value.is_string() || (needed && value.get<std::string>().empty())) {
    complaints.add(
        place, fmt::format("\"{}\" is {}; expected a text that is not empty", key, value.dump()));
    return {};
  }
  std::string text = value.get<std::string>();
  if (std::any_of(text.begin(), text.end(),
                  [](char c) { return static_cast<unsigned char>(c) < 0x20; })) {
    complaints.add(place, fmt::format("\"{}\" has a line break or a tab; expected one line", key));
  }
  return text;
}

void only_these_keys(const Json& object, const std::string& place,
                     std::span<const std::string_view> keys, Complaints& complaints) {
  for (const auto& [key, value] : object.items()) {
    if (!is_one_of(key, keys)) {
      complaints.add(place,
                     fmt::format("\"{}\" is not known; expected one of {}", key, listed(keys)));
    }
  }
}

void read_source(const Json& file, Table& table, Complaints& complaints) {
  if (!file.contains("source") || !file.at("source").is_object()) {
    complaints.add("", R"("source" is missing; expected {"document", "edition", "place"})");
    return;
  }
  const Json& source = file.at("source");
  constexpr std::array<std::string_view, 3> keys{"document", "edition", "place"};
  only_these_keys(source, "source", keys, complaints);
  table.document = text_of(source, "document", "source", true, complaints);
  table.edition = text_of(source, "edition", "source", true, complaints);
  table.place = text_of(source, "place", "source", true, complaints);
}

void read_columns(const Json& file, Table& table, Complaints& complaints) {
  if (!file.contains("columns") || !file.at("columns").is_array() || file.at("columns").empty()) {
    complaints.add("", R"("columns" is missing; expected a list of {"key", "meaning", "unit"})");
    return;
  }
  constexpr std::array<std::string_view, 3> keys{"key", "meaning", "unit"};
  std::set<std::string> seen;
  for (const Json& entry : file.at("columns")) {
    const std::string place = fmt::format("column {}", table.columns.size() + 1);
    if (!entry.is_object()) {
      complaints.add(place, R"(expected {"key", "meaning", "unit"})");
      table.columns.emplace_back();
      continue;
    }
    only_these_keys(entry, place, keys, complaints);
    Column column{text_of(entry, "key", place, true, complaints),
                  text_of(entry, "meaning", place, true, complaints),
                  text_of(entry, "unit", place, false, complaints)};
    if (!column.key.empty() && !is_name(column.key)) {
      complaints.add(place, fmt::format("key \"{}\"; expected lower-case words joined by hyphens",
                                        column.key));
    }
    if (!seen.insert(column.key).second) {
      complaints.add(place, fmt::format("key \"{}\" is there twice", column.key));
    }
    table.columns.push_back(std::move(column));
  }
}

void read_row(const Json& entry, Table& table, Complaints& complaints) {
  const std::size_t number = table.rows.size() + 1;
  std::vector<std::string> row;
  const std::string place = fmt::format("row {}", number);
  if (!entry.is_array() || entry.size() != table.columns.size()) {
    complaints.add(
        place, fmt::format("has {}; expected a list of {} texts, one a column",
                           entry.is_array() ? fmt::format("{} cells", entry.size()) : entry.dump(),
                           table.columns.size()));
    table.rows.push_back(std::move(row));
    return;
  }
  for (std::size_t i = 0; i < entry.size(); ++i) {
    const Column& column = table.columns[i];
    const std::string where = fmt::format("row {}, column \"{}\"", number, column.key);
    if (!entry[i].is_string()) {
      complaints.add(where, fmt::format("{} has no quotes; expected a text, \"{}\", with the "
                                        "digits as printed",
                                        entry[i].dump(), entry[i].dump()));
      row.emplace_back();
      continue;
    }
    std::string cell = entry[i].get<std::string>();
    if (!column.unit.empty() && !is_figure(cell)) {
      complaints.add(where,
                     fmt::format("\"{}\" is no figure; the column is in {}: expected such as "
                                 "\"12\", \"0.50\" or \"3/8\", or \"\" where the source gives "
                                 "none",
                                 cell, column.unit));
    }
    row.push_back(std::move(cell));
  }
  if (std::find(table.rows.begin(), table.rows.end(), row) != table.rows.end()) {
    complaints.add(place, "is the same as an earlier row");
  }
  table.rows.push_back(std::move(row));
}

/// A row is named by its first cell, or, where several begin alike, by "row N" from 1.
std::size_t row_named(const std::string& name, const Table& table, const std::string& place,
                      Complaints& complaints) {
  constexpr auto none = static_cast<std::size_t>(-1);
  std::size_t found = none;
  std::size_t count = 0;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    if (name == fmt::format("row {}", i + 1)) return i;
    if (!table.rows[i].empty() && table.rows[i].front() == name) {
      found = i;
      ++count;
    }
  }
  if (count == 1) return found;
  complaints.add(place, fmt::format("\"{}\" names {} rows; expected the first cell of one row, or "
                                    "\"row N\" counted from 1",
                                    name, count));
  return none;
}

/// "row_notes" and "row_provenance": {"first cell": "text"}.
std::vector<std::string> read_row_texts(const Json& file, const std::string& key,
                                        const std::string& otherwise, const Table& table,
                                        Complaints& complaints) {
  if (!file.contains(key)) return {};
  if (!file.at(key).is_object()) {
    complaints.add(key, R"(expected {"first cell of the row": "text"})");
    return {};
  }
  std::vector<std::string> texts(table.rows.size(), otherwise);
  for (const auto& [name, value] : file.at(key).items()) {
    const std::size_t row = row_named(name, table, key, complaints);
    if (!value.is_string()) {
      complaints.add(key, fmt::format("\"{}\" is {}; expected a text", name, value.dump()));
    } else if (row < texts.size()) {
      texts[row] = value.get<std::string>();
    }
  }
  return texts;
}

void check_choices(const Table& table, Complaints& complaints) {
  if (!table.provenance.empty() && !is_one_of(table.provenance, k_provenances)) {
    complaints.add("", fmt::format("\"provenance\" is \"{}\"; expected one of {}", table.provenance,
                                   listed(k_provenances)));
  }
  for (const std::string& word : table.row_provenance) {
    if (!is_one_of(word, k_provenances)) {
      complaints.add("row_provenance",
                     fmt::format("\"{}\"; expected one of {}", word, listed(k_provenances)));
    }
  }
  constexpr std::array<std::string_view, 2> between{"refuse", "interpolate"};
  if (!table.between_rows.empty() && !is_one_of(table.between_rows, between)) {
    complaints.add("", fmt::format("\"between_rows\" is \"{}\"; expected one of {}",
                                   table.between_rows, listed(between)));
  }
  if (!table.outside.empty() && table.outside != "refuse") {
    complaints.add("", fmt::format("\"outside\" is \"{}\"; expected refuse", table.outside));
  }
}

Table read_table(const Json& file, const std::string& stem, Complaints& complaints) {
  Table table;
  if (!file.is_object()) {
    complaints.add("", "expected one JSON object");
    return table;
  }
  constexpr std::array<std::string_view, 12> keys{
      "table",   "title",   "source", "provenance", "read",           "between_rows",
      "outside", "columns", "rows",   "row_notes",  "row_provenance", "errata"};
  only_these_keys(file, "", keys, complaints);
  table.name = text_of(file, "table", "", true, complaints);
  if (!table.name.empty() && (table.name != stem || !is_name(table.name))) {
    complaints.add("", fmt::format("\"table\" is \"{}\"; expected the name of the file, \"{}\", in "
                                   "lower-case words joined by hyphens",
                                   table.name, stem));
  }
  table.title = text_of(file, "title", "", true, complaints);
  read_source(file, table, complaints);
  table.provenance = text_of(file, "provenance", "", true, complaints);
  table.how_read = text_of(file, "read", "", true, complaints);
  table.between_rows = text_of(file, "between_rows", "", true, complaints);
  table.outside = text_of(file, "outside", "", true, complaints);
  read_columns(file, table, complaints);
  if (!file.contains("rows") || !file.at("rows").is_array() || file.at("rows").empty()) {
    complaints.add("", "\"rows\" is missing or empty; expected a list of lists of texts");
  } else {
    for (const Json& entry : file.at("rows")) read_row(entry, table, complaints);
  }
  table.row_notes = read_row_texts(file, "row_notes", "", table, complaints);
  table.row_provenance =
      read_row_texts(file, "row_provenance", table.provenance, table, complaints);
  if (file.contains("errata")) {
    if (!file.at("errata").is_array()) complaints.add("errata", "expected a list of texts");
    for (const Json& entry : file.at("errata")) {
      if (entry.is_string()) {
        table.errata.push_back(entry.get<std::string>());
      } else {
        complaints.add("errata", fmt::format("{}; expected a text", entry.dump()));
      }
    }
  }
  check_choices(table, complaints);
  return table;
}

/// A C++ literal. Three octal digits end an escape, so that the next letter is never eaten.
std::string literal(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (byte < 0x20 || byte >= 0x7f || c == '?') {
      out += fmt::format("\\{:03o}", byte);
    } else {
      out += c;
    }
  }
  return out + '"';
}

std::string identifier(std::string name) {
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
}

std::string texts_array(const std::string& name, const std::vector<std::string>& texts) {
  if (texts.empty()) return {};
  std::string out =
      fmt::format("constexpr std::array<std::string_view, {}> {}{{{{\n", texts.size(), name);
  for (const std::string& text : texts) out += fmt::format("    {},\n", literal(text));
  return out + "}};\n";
}

std::string header_of(const Table& table, const std::string& room) {
  return fmt::format(
      "#pragma once\n// Made from data/{}/{}.json by tools/make_tables.cpp; change that file.\n"
      "#include \"describe/table.hpp\"\n\nnamespace wm::tables {{\n"
      "/// {}\n/// Source: {}, {}, {}\nextern const describe::Table {};\n}}  // namespace "
      "wm::tables\n",
      room, table.name, table.title, table.document, table.edition, table.place,
      identifier(table.name));
}

std::string source_of(const Table& table, const std::string& room) {
  const std::string id = identifier(table.name);
  std::string out = fmt::format(
      "// Made from data/{}/{}.json by tools/make_tables.cpp; change that file.\n"
      "#include \"tables/{}/{}.hpp\"\n\n#include <array>\n\nnamespace wm::tables {{\nnamespace "
      "{{\n",
      room, table.name, room, id);
  out += fmt::format("constexpr std::array<describe::TableColumn, {}> columns{{{{\n",
                     table.columns.size());
  for (const Column& c : table.columns) {
    out +=
        fmt::format("    {{{}, {}, {}}},\n", literal(c.key), literal(c.meaning), literal(c.unit));
  }
  out += "}};\n";
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    out += texts_array(fmt::format("row_{}", i + 1), table.rows[i]);
  }
  out += fmt::format("constexpr std::array<std::span<const std::string_view>, {}> rows{{{{\n",
                     table.rows.size());
  for (std::size_t i = 0; i < table.rows.size(); ++i) out += fmt::format("    row_{},\n", i + 1);
  out += "}};\n";
  out += texts_array("provenances", table.row_provenance);
  out += texts_array("notes", table.row_notes);
  out += texts_array("errata", table.errata);
  out += "}  // namespace\n\n";
  const auto span_or_none = [](const char* name, const std::vector<std::string>& texts) {
    return std::string(texts.empty() ? "{}" : name);
  };
  out += fmt::format(
      "constinit const describe::Table {}{{\n    .name = {},\n    .title = {},\n"
      "    .document = {},\n    .edition = {},\n    .place = {},\n    .provenance = {},\n"
      "    .how_read = {},\n    .between_rows = {},\n    .outside = {},\n    .columns = columns,\n"
      "    .rows = rows,\n    .row_provenance = {},\n    .errata = {},\n    .row_notes = {}}};\n"
      "}}  // namespace wm::tables\n",
      id, literal(table.name), literal(table.title), literal(table.document),
      literal(table.edition), literal(table.place), literal(table.provenance),
      literal(table.how_read), literal(table.between_rows), literal(table.outside),
      span_or_none("provenances", table.row_provenance), span_or_none("errata", table.errata),
      span_or_none("notes", table.row_notes));
  return out;
}

/// Left alone when it would be the same, so that nothing is compiled again for it.
bool write_if_changed(const std::filesystem::path& path, const std::string& text) {
  std::error_code ignored;
  std::filesystem::create_directories(path.parent_path(), ignored);
  {
    std::ifstream old(path, std::ios::binary);
    const std::string before{std::istreambuf_iterator<char>(old), std::istreambuf_iterator<char>()};
    if (old && before == text) return true;
  }
  std::ofstream out(path, std::ios::binary | std::ios::trunc);
  out << text;
  out.close();
  if (!out) std::cerr << path.string() << ": error: cannot be written\n";
  return static_cast<bool>(out);
}

bool write_all(const std::vector<Table>& tables, const std::string& room,
               const std::filesystem::path& dir) {
  bool good = write_if_changed(
      dir / "all.hpp",
      fmt::format("#pragma once\n// Made from data/{0}/ by tools/make_tables.cpp.\n"
                  "#include \"describe/table.hpp\"\n\nnamespace wm::tables {{\n"
                  "/// Every reference table of the room.\n"
                  "[[nodiscard]] std::span<const describe::Table* const> all_of_{0}();\n"
                  "}}  // namespace wm::tables\n",
                  room));
  std::string source = fmt::format("#include \"tables/{}/all.hpp\"\n\n#include <array>\n\n", room);
  std::string list;
  for (const Table& table : tables) {
    source += fmt::format("#include \"tables/{}/{}.hpp\"\n", room, identifier(table.name));
    list += fmt::format("      &{},\n", identifier(table.name));
    good &= write_if_changed(dir / (identifier(table.name) + ".hpp"), header_of(table, room));
    good &= write_if_changed(dir / (identifier(table.name) + ".cpp"), source_of(table, room));
  }
  source += fmt::format(
      "\nnamespace wm::tables {{\nstd::span<const describe::Table* const> all_of_{}() {{\n"
      "  static constexpr std::array<const describe::Table*, {}> list{{{{\n{}  }}}};\n"
      "  return list;\n}}\n}}  // namespace wm::tables\n",
      room, tables.size(), list);
  return write_if_changed(dir / "all.cpp", source) && good;
}

int make(int argc, char** argv) {
  if (argc < 3) {
    std::cerr << "usage: make_tables ROOM OUT_DIR TABLE.json...\n";
    return 2;
  }
  const std::string room = argv[1];
  std::vector<Table> tables;
  bool good = true;
  for (int i = 3; i < argc; ++i) {
    const std::filesystem::path path = argv[i];
    Complaints complaints(path.string());
    std::ifstream in(path, std::ios::binary);
    if (!in) {
      complaints.add("", "cannot be opened");
    } else {
      try {
        tables.push_back(read_table(Json::parse(in), path.stem().string(), complaints));
      } catch (const Json::parse_error& e) {
        complaints.add(fmt::format("byte {}", e.byte), "is no JSON: " + std::string(e.what()));
      }
    }
    complaints.print();
    good &= complaints.none();
  }
  if (!good) return 1;
  const std::filesystem::path dir = std::filesystem::path(argv[2]) / "tables" / room;
  return write_all(tables, room, dir) ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) {
  try {
    return make(argc, argv);
  } catch (const std::exception& e) {
    std::cerr << "make_tables: error: " << e.what() << '\n';
    return 1;
  }
}
