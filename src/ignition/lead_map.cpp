#include "ignition/lead_map.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>

#include "ignition/detail/problem.hpp"

namespace wm::ignition {
namespace {

using detail::problem;
using evidence::Verdict;

constexpr std::size_t k_most_cylinders = 12;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Lower case without blanks: "3 Top" and "3 top" are one plug.
std::string folded(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c != ' ') out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return out;
}

/// The number that a text begins with: "3 top" is 3.
std::optional<int> leading_number(std::string_view text) {
  int value = 0;
  const auto first = text.find_first_not_of(' ');
  if (first == std::string_view::npos) return std::nullopt;
  const auto* begin = text.data() + first;
  const auto* end = text.data() + text.size();
  if (std::from_chars(begin, end, value).ec != std::errc{}) return std::nullopt;
  return value;
}

class Trace {
 public:
  Trace(const std::vector<TowerTrace>& towers, const std::string& order)
      : towers_(towers), order_text_(order) {}

  Checked<LeadMapAnswer> run() {
    read_order();
    for (std::size_t i = 0; i < towers_.size(); ++i) find_target(i);
    if (problems_.empty()) find_doubles();
    if (!problems_.empty()) return Fail(std::move(problems_));
    for (std::size_t i = 0; i < towers_.size(); ++i) out_.towers.push_back(found(i));
    name_crossed();
    conclude();
    return std::move(out_);
  }

 private:
  struct Target {
    std::string words;  ///< as shown
    std::string key;    ///< as compared
    bool by_order{};
  };

  void read_order() {
    if (order_text_.empty()) return;
    auto order = firing_order(order_text_);
    if (order) {
      order_ = std::move(*order);
      return;
    }
    Problem p = order.error();
    p.path = "firing_order";
    problems_.push_back(std::move(p));
  }

  static std::string path(std::size_t i, std::string_view field) {
    return fmt::format("towers/{}/{}", i, field);
  }

  void find_target(std::size_t i) {
    const TowerTrace& t = towers_[i];
    Target target;
    if (!t.should_reach.empty()) {
      target = {t.should_reach, folded(t.should_reach), false};
    } else if (order_.empty()) {
      if (order_text_.empty()) {
        problems_.push_back(problem(path(i, "should_reach"), Kind::missing,
                                    "where this tower's lead should go is not known",
                                    "the plug it should reach, or the firing order", "3 top"));
      }
    } else {
      const auto number = leading_number(t.tower);
      const bool there = number && *number >= 1 && *number <= static_cast<int>(order_.size());
      if (there) {
        const int cylinder = order_[static_cast<std::size_t>(*number - 1)];
        target = {fmt::format("cylinder {}", cylinder), std::to_string(cylinder), true};
      } else {
        problems_.push_back(
            problem(path(i, "tower"), Kind::conflict,
                    fmt::format("tower `{}` is not in the firing order", t.tower),
                    fmt::format("1 to {}, or where it should reach", order_.size())));
      }
    }
    targets_.push_back(std::move(target));
  }

  void find_doubles() {
    for (std::size_t i = 0; i < targets_.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        if (targets_[i].key != targets_[j].key) continue;
        problems_.push_back(
            problem(path(i, "should_reach"), Kind::conflict,
                    fmt::format("towers {} and {} should both reach {}", towers_[j].tower,
                                towers_[i].tower, targets_[i].words),
                    "each plug once"));
      }
    }
  }

  bool reaches(std::size_t tower, std::size_t target) const {
    const std::string& reached = towers_[tower].reached;
    if (reached.empty()) return false;
    if (!targets_[target].by_order) return folded(reached) == targets_[target].key;
    const auto number = leading_number(reached);
    return number && std::to_string(*number) == targets_[target].key;
  }

  std::optional<std::size_t> owner_of(std::size_t tower) const {
    for (std::size_t j = 0; j < targets_.size(); ++j) {
      if (reaches(tower, j)) return j;
    }
    return std::nullopt;
  }

  TowerFound found(std::size_t i) const {
    TowerFound f;
    f.tower = towers_[i].tower;
    f.should_reach = targets_[i].words;
    f.reached = towers_[i].reached;
    if (f.reached.empty()) {
      f.in_words = "not tested: not traced";
    } else if (reaches(i, i)) {
      f.verdict = Verdict::conforms;
      f.in_words = fmt::format("conforms: reaches {}", f.reached);
    } else {
      f.verdict = Verdict::does_not_conform;
      const auto owner = owner_of(i);
      f.in_words =
          fmt::format("does not conform: reaches {}, {}", f.reached,
                      owner ? fmt::format("which belongs to tower {}", towers_[*owner].tower)
                            : std::string("which belongs to no tower of this map"));
    }
    return f;
  }

  void name_crossed() {
    for (std::size_t i = 0; i < towers_.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        if (reaches(i, j) && reaches(j, i)) {
          out_.crossed.push_back(
              fmt::format("towers {} and {} are crossed: {} reaches {}, {} "
                          "reaches {}",
                          towers_[j].tower, towers_[i].tower, towers_[j].tower, towers_[j].reached,
                          towers_[i].tower, towers_[i].reached));
        } else if (!towers_[i].reached.empty() &&
                   folded(towers_[i].reached) == folded(towers_[j].reached)) {
          out_.crossed.push_back(
              fmt::format("towers {} and {} were both traced to {}: trace them "
                          "again",
                          towers_[j].tower, towers_[i].tower, towers_[i].reached));
        }
      }
    }
  }

  void conclude() {
    const auto count = [&](Verdict v) {
      return std::count_if(out_.towers.begin(), out_.towers.end(),
                           [&](const TowerFound& t) { return t.verdict == v; });
    };
    const auto wrong = count(Verdict::does_not_conform);
    const auto open = count(Verdict::not_tested);
    if (wrong > 0) {
      out_.verdict = Verdict::does_not_conform;
      out_.in_words = fmt::format("does not conform (crossed): {} of {} leads reach a wrong plug",
                                  wrong, out_.towers.size());
      out_.do_next.emplace_back(
          "put each lead on its own tower, trace all of them again, and have a second person "
          "look; a cylinder that fires out of its turn can kick the propeller back");
    } else if (open > 0 || out_.towers.empty()) {
      out_.in_words =
          fmt::format("not tested: {} of {} leads not traced", open, out_.towers.size());
      out_.do_next.emplace_back("trace each lead from tower to plug with a buzzer, both ends off");
    } else {
      out_.verdict = Verdict::conforms;
      out_.in_words = fmt::format("conforms: all {} leads reach the plug that the map names",
                                  out_.towers.size());
    }
  }

  const std::vector<TowerTrace>& towers_;
  const std::string& order_text_;
  std::vector<int> order_;
  std::vector<Target> targets_;
  Problems problems_;
  LeadMapAnswer out_;
};

}  // namespace

Result<std::vector<int>> firing_order(std::string_view text) {
  std::vector<int> order;
  std::string digits;
  const auto take = [&] {
    if (!digits.empty()) order.push_back(digits.size() > 2 ? 99 : std::stoi(digits));
    digits.clear();
  };
  for (const char c : text) {
    if (is_digit(c)) {
      digits += c;
    } else if (c == '-' || c == ',' || c == ' ') {
      take();
    } else {
      return Fail(Kind::bad_text, fmt::format("`{}` does not belong in a firing order", c),
                  "numbers of cylinders with dashes between", "1-3-2-4");
    }
  }
  take();
  if (order.size() < 2 || order.size() > k_most_cylinders) {
    return Fail(Kind::out_of_bounds, fmt::format("a firing order of {} cylinders", order.size()),
                "2 to 12 cylinders", "1-3-2-4");
  }
  std::vector<int> sorted = order;
  std::sort(sorted.begin(), sorted.end());
  for (std::size_t i = 0; i < sorted.size(); ++i) {
    if (sorted[i] != static_cast<int>(i) + 1) {
      return Fail(Kind::conflict, "not each cylinder once",
                  fmt::format("each of 1 to {} once", order.size()), "1-3-2-4");
    }
  }
  return order;
}

Checked<LeadMapAnswer> trace_leads(const std::vector<TowerTrace>& towers,
                                   const std::string& order) {
  return Trace(towers, order).run();
}

std::string_view describe(describe::Fields<TowerTrace>& f) {
  f.has<&TowerTrace::tower>("tower", "Tower, as marked").needed("1").unique();
  f.has<&TowerTrace::should_reach>("should_reach", "Plug it should reach")
      .help("Left out: the cylinder of the firing order with this tower's number.");
  f.has<&TowerTrace::reached>("reached", "Plug it was traced to").example("1");
  return "tower-trace";
}

std::string_view describe(describe::Fields<TowerFound>& f) {
  f.has<&TowerFound::tower>("tower", "Tower");
  f.has<&TowerFound::should_reach>("should_reach", "Should reach");
  f.has<&TowerFound::reached>("reached", "Traced to");
  f.has<&TowerFound::verdict>("verdict", "Verdict");
  f.has<&TowerFound::in_words>("in_words", "In words");
  return "tower-found";
}

std::string_view describe(describe::Fields<LeadMapAnswer>& f) {
  f.has<&LeadMapAnswer::verdict>("verdict", "Verdict");
  f.has<&LeadMapAnswer::in_words>("in_words", "In words");
  f.has<&LeadMapAnswer::crossed>("crossed", "Crossed");
  f.has<&LeadMapAnswer::towers>("towers", "Each tower");
  f.has<&LeadMapAnswer::do_next>("do_next", "What to do next");
  return "lead-map-answer";
}

}  // namespace wm::ignition
