#include "describe/catalogue.hpp"

#include <algorithm>
#include <cassert>

namespace wm::describe {

std::string_view word(Provenance provenance) {
  switch (provenance) {
    case Provenance::read:
      return "read";
    case Provenance::secondary:
      return "secondary";
    case Provenance::derived:
      return "derived";
    case Provenance::computed:
      return "computed";
    case Provenance::memory:
      return "memory";
    case Provenance::common_practice:
      return "common-practice";
  }
  return "memory";
}

Source read(std::string_view document, std::string_view place) {
  return {std::string(document), std::string(place), Provenance::read};
}
Source secondary(std::string_view document, std::string_view place) {
  return {std::string(document), std::string(place), Provenance::secondary};
}
Source derived(std::string_view how) { return {"derived", std::string(how), Provenance::derived}; }
Source from_memory(std::string_view document, std::string_view place) {
  return {std::string(document), std::string(place), Provenance::memory};
}
Source common_practice(std::string_view what) {
  return {"common practice, no source", std::string(what), Provenance::common_practice};
}

const Table* Context::table(std::string_view name) const {
  const auto found =
      std::find_if(tables.begin(), tables.end(), [&](const Table* t) { return t->name == name; });
  return found == tables.end() ? nullptr : *found;
}

void Catalogue::add(Calculation calculation) {
  assert(find(calculation.name) == nullptr);
  calculations_.push_back(std::move(calculation));
}

const Calculation* Catalogue::find(std::string_view name) const {
  const auto found = std::find_if(calculations_.begin(), calculations_.end(),
                                  [&](const Calculation& c) { return c.name == name; });
  return found == calculations_.end() ? nullptr : &*found;
}

}  // namespace wm::describe
