#include "staging/trouble.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <charconv>

namespace wm::staging {
namespace {

using Row = std::span<const std::string_view>;

/// Places of the columns, in the order of the file.
enum Column : std::size_t {
  k_symptom,
  k_words,
  k_order,
  k_cause,
  k_check,
  k_calculation,
  k_caution,
  k_source
};

char small(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

std::string folded(std::string_view text) {
  std::string out(text);
  std::ranges::transform(out, out.begin(), small);
  return out;
}

/// Whether every word of `asked` stands in `words`.
bool holds_all(const std::string& words, std::string_view asked) {
  std::size_t at = 0;
  bool any = false;
  while (at < asked.size()) {
    const auto end = std::min(asked.find_first_of(" ,.-", at), asked.size());
    if (end > at) {
      any = true;
      if (words.find(asked.substr(at, end - at)) == std::string::npos) return false;
    }
    at = end + 1;
  }
  return any;
}

std::vector<std::string> first_of(std::string_view caution) {
  if (caution == "cranking")
    return {"Fuel off, ignition proven dead, someone at the switch, propeller arc clear.",
            "The starter's own duty limit, from its maker; without one, rest it between tries."};
  if (caution == "propeller")
    return {"Treat the propeller as live; ignition off proves nothing until it was tested."};
  if (caution == "high-tension")
    return {"High tension: hands off leads and coils while anything turns or is powered.",
            "Treat the propeller as live."};
  return {"Battery off before a joint is opened; current makes joints hot."};
}

Problem not_there(const TroubleInput& in, std::string what, const std::vector<std::string>& list) {
  std::string all;
  for (const auto& one : list) all += (all.empty() ? "" : "; ") + one;
  return {Kind::not_found,
          "symptom",
          std::move(what),
          "one of: " + all,
          in.symptom.empty() ? "" : "click-only",
          {},
          {}};
}

struct Symptoms {
  std::vector<std::string_view> keys;
  std::vector<std::string> list;  ///< "key: words"
};

Symptoms symptoms_of(std::span<const Row> rows) {
  Symptoms out;
  for (const auto& row : rows) {
    if (std::ranges::find(out.keys, row[k_symptom]) != out.keys.end()) continue;
    out.keys.push_back(row[k_symptom]);
    out.list.push_back(fmt::format("{}: {}", row[k_symptom], row[k_words]));
  }
  return out;
}

/// Keys that are meant: the one given, or all whose words hold the words given.
std::vector<std::string_view> meant(const TroubleInput& in, std::span<const Row> rows) {
  std::vector<std::string_view> out;
  const auto asked = folded(in.symptom);
  for (const auto& row : rows) {
    const auto& key = row[k_symptom];
    if (key == asked) return {key};
    if (std::ranges::find(out, key) == out.end() && holds_all(folded(row[k_words]), asked))
      out.push_back(key);
  }
  return out;
}

}  // namespace

Checked<TroubleAnswer> trouble_causes(const TroubleInput& in, const describe::Context& context) {
  const auto* table = context.table("trouble");
  if (table == nullptr)
    return Fail(Problems{{Kind::missing,
                          {},
                          "the table of troubles is not there",
                          "the table `trouble`",
                          {},
                          {},
                          {}}});
  const std::span<const Row> rows(table->rows);
  const auto known = symptoms_of(rows);
  const auto keys = meant(in, rows);
  if (keys.size() != 1) {
    const auto what = keys.empty() ? fmt::format("no symptom of the table fits `{}`", in.symptom)
                                   : fmt::format("`{}` fits {} symptoms", in.symptom, keys.size());
    std::vector<std::string> fitting;
    std::ranges::copy_if(known.list, std::back_inserter(fitting), [&](const std::string& line) {
      return std::ranges::any_of(
          keys, [&](std::string_view key) { return line.starts_with(std::string(key) + ":"); });
    });
    return Fail(Problems{not_there(in, what, fitting.empty() ? known.list : fitting)});
  }
  TroubleAnswer out;
  for (const auto& row : rows) {
    if (row[k_symptom] != keys.front()) continue;
    out.symptom = row[k_symptom];
    out.words = row[k_words];
    if (out.first.empty()) out.first = first_of(row[k_caution]);
    TroubleCause cause;
    std::from_chars(row[k_order].data(), row[k_order].data() + row[k_order].size(), cause.order);
    cause.cause = row[k_cause];
    cause.check = row[k_check];
    cause.calculation = row[k_calculation];
    cause.source = row[k_source];
    out.causes.push_back(std::move(cause));
  }
  std::ranges::copy_if(known.list, std::back_inserter(out.others), [&](const std::string& line) {
    return !line.starts_with(out.symptom + ":");
  });
  out.notes.emplace_back(
      "The order is the usual one, no probability. What was changed last comes first: see the "
      "open stage and its changes.");
  return out;
}

std::string_view describe(describe::Fields<TroubleInput>& f) {
  f.has<&TroubleInput::symptom>("symptom", "What is seen, heard or felt")
      .needed("click-only")
      .help("A key of the table, or a few words: an unknown one is answered with the list.");
  return "trouble-input";
}

std::string_view describe(describe::Fields<TroubleCause>& f) {
  f.has<&TroubleCause::order>("order", "Usual order");
  f.has<&TroubleCause::cause>("cause", "Cause");
  f.has<&TroubleCause::check>("check", "What tells it apart");
  f.has<&TroubleCause::calculation>("calculation", "Judged by");
  f.has<&TroubleCause::source>("source", "Source");
  return "trouble-cause";
}

std::string_view describe(describe::Fields<TroubleAnswer>& f) {
  using A = TroubleAnswer;
  f.has<&A::symptom>("symptom", "Symptom");
  f.has<&A::words>("words", "In words");
  f.has<&A::first>("first", "Before anything is tried");
  f.has<&A::causes>("causes", "Causes and their checks");
  f.has<&A::others>("others", "Other symptoms of the table");
  f.has<&A::notes>("notes", "Besides");
  return "trouble-answer";
}

}  // namespace wm::staging
