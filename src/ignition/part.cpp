#include "ignition/part.hpp"

#include <algorithm>

namespace wm::ignition {

evidence::Verdict worst(const std::vector<PartVerdict>& parts) {
  using evidence::Verdict;
  const auto has = [&](Verdict v) {
    return std::any_of(parts.begin(), parts.end(),
                       [&](const PartVerdict& p) { return p.verdict == v; });
  };
  if (has(Verdict::does_not_conform)) return Verdict::does_not_conform;
  if (has(Verdict::undecided)) return Verdict::undecided;
  if (parts.empty() || has(Verdict::not_tested)) return Verdict::not_tested;
  return Verdict::conforms;
}

std::string_view describe(describe::Fields<PartVerdict>& f) {
  f.has<&PartVerdict::what>("what", "What");
  f.has<&PartVerdict::verdict>("verdict", "Verdict");
  f.has<&PartVerdict::in_words>("in_words", "In words");
  f.has<&PartVerdict::reason>("reason", "Why");
  f.has<&PartVerdict::limit_source>("limit_source", "Where the limit is written");
  f.has<&PartVerdict::do_next>("do_next", "What to do next");
  return "part-verdict";
}

std::string_view describe(describe::Fields<Figure>& f) {
  f.has<&Figure::what>("what", "Whose figure");
  f.has<&Figure::figure>("figure", "Figure");
  f.has<&Figure::stands>("stands", "The reading stands");
  f.has<&Figure::known>("known", "How it is known");
  f.has<&Figure::source>("source", "Source");
  return "figure-of-the-trade";
}

}  // namespace wm::ignition
