#include "staging/detail/plan_input.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "staging/detail/problem.hpp"

namespace wm::staging::detail {
namespace {

constexpr double k_hour = 3600.0;
constexpr std::size_t k_most_changes = 30;
constexpr std::size_t k_most_bits = 30;
constexpr int k_most_hours = 400;

double hours_of(const EnteredHours& h) { return h.value.si / k_hour; }

/// Words to bits, in the order in which they are met.
class Bits {
 public:
  std::optional<Set> of(const std::vector<std::string>& words) {
    Set out = 0;
    for (const auto& w : words) {
      const auto found = std::find(words_.begin(), words_.end(), w);
      if (found == words_.end()) {
        if (words_.size() == k_most_bits) return {};
        words_.push_back(w);
        out |= Set{1} << (words_.size() - 1);
      } else {
        out |= Set{1} << (found - words_.begin());
      }
    }
    return out;
  }
  [[nodiscard]] const std::vector<std::string>& words() const { return words_; }

 private:
  std::vector<std::string> words_;
};

class Reader {
 public:
  explicit Reader(const StagePlanInput& in) : in_(in) {}

  Checked<PlanTask> run() {
    if (in_.changes.empty()) {
      say("changes", Kind::missing, "there is no change to plan", "at least one change");
    }
    if (in_.changes.size() > k_most_changes) {
      say("changes", Kind::out_of_bounds, fmt::format("{} changes", in_.changes.size()),
          fmt::format("{} or fewer: make one of changes that belong together", k_most_changes));
    }
    if (!problems_.empty()) return Fail(std::move(problems_));
    globals();
    names();
    if (!problems_.empty()) return Fail(std::move(problems_));
    for (std::size_t i = 0; i < in_.changes.size(); ++i) change(i);
    others();
    pairs();
    caps();
    hours();
    if (problems_.empty()) contradictions();
    if (!problems_.empty()) return Fail(std::move(problems_));
    return std::move(task_);
  }

 private:
  void say(std::string path, Kind kind, std::string what, std::string expected = {},
           std::string example = {}) {
    problems_.push_back(
        problem(std::move(path), kind, std::move(what), std::move(expected), std::move(example)));
  }

  void globals() {
    CostModel& m = task_.model;
    m.changes = static_cast<int>(in_.changes.size());
    m.stage_cost = in_.stage_cost;
    m.hour_cost = in_.hour_cost;
    m.ground_hour_cost = in_.ground_hour_cost;
    m.confirmation_cost = in_.hour_cost * hours_of(in_.confirmation);
    m.escape_cost = in_.escape_cost;
    m.ground_stages = in_.ground_stages;
  }

  void names() {
    for (std::size_t i = 0; i < in_.changes.size(); ++i) {
      const auto& name = in_.changes[i].name;
      const auto path = fmt::format("changes/{}/name", i);
      if (name.empty())
        say(path, Kind::missing, "a change without a name", "its name", "fuel hose");
      if (std::find(task_.names.begin(), task_.names.end(), name) != task_.names.end()) {
        say(path, Kind::duplicate, fmt::format("two changes are called `{}`", name),
            "a name of its own");
      }
      task_.names.push_back(name);
    }
  }

  int find(const std::string& name, const std::string& path) {
    const auto found =
        std::find(task_.names.begin(), task_.names.begin() + task_.model.changes, name);
    if (found != task_.names.begin() + task_.model.changes) {
      return static_cast<int>(found - task_.names.begin());
    }
    say(path, Kind::not_found, fmt::format("no change is called `{}`", name),
        "the name of a change in this plan", task_.names.front());
    return -1;
  }

  Set bits(Bits& bits, const std::vector<std::string>& words, const std::string& path) {
    const auto found = bits.of(words);
    if (found) return *found;
    say(path, Kind::out_of_bounds, fmt::format("more than {} different ones", k_most_bits),
        fmt::format("{} or fewer", k_most_bits));
    return 0;
  }

  void change(std::size_t i) {
    const PlannedChange& c = in_.changes[i];
    const auto path = [&](const char* field) { return fmt::format("changes/{}/{}", i, field); };
    Suspect s;
    s.chance = c.fault_chance.si;
    s.check_cost = c.check_cost;
    s.found_per_hour = c.found_per_hour.value_or(-1.0);
    s.hours = c.hours ? hours_of(*c.hours) : 0.0;
    s.ground_hours = c.ground_hours ? hours_of(*c.ground_hours) : -1.0;
    s.symptoms = bits(symptoms_, c.symptoms, path("symptoms"));
    s.areas = bits(areas_, c.areas, path("areas"));
    s.waiting = c.waiting_cost;
    task_.model.suspects.push_back(s);
    if (!c.hours && in_.test_hours == TestHours::longest_of_its_changes) {
      say(path("hours"), Kind::missing, fmt::format("the test hours of `{}` are not said", c.name),
          "its test hours", "2 h");
    }
    const auto self = static_cast<int>(i);
    links(c.after, path("after"), [&](int other) {
      rule({Wish::before,
            other,
            self,
            0.0,
            fmt::format("`{}` after `{}`", c.name, task_.names[at(other)]),
            {}});
    });
    links(c.not_later_than, path("not_later_than"), [&](int other) {
      rule({Wish::not_later,
            self,
            other,
            0.0,
            fmt::format("`{}` not later than `{}`", c.name, task_.names[at(other)]),
            {}});
    });
    links(c.together, path("together"), [&](int other) { together(self, other); });
  }

  static std::size_t at(int i) { return static_cast<std::size_t>(i); }

  template <class F>
  void links(const std::vector<std::string>& names, const std::string& path, const F& add) {
    for (std::size_t k = 0; k < names.size(); ++k) {
      const int other = find(names[k], fmt::format("{}/{}", path, k));
      if (other >= 0) add(other);
    }
  }

  void rule(PlanRule made) { task_.rules.push_back(std::move(made)); }

  /// Said by one of two or by both: one rule.
  void together(int a, int b) {
    const bool known = std::any_of(task_.rules.begin(), task_.rules.end(), [&](const PlanRule& r) {
      return r.wish == Wish::together && std::minmax(r.first, r.second) == std::minmax(a, b);
    });
    if (known || a == b) return;
    rule({Wish::together,
          a,
          b,
          0.0,
          fmt::format("`{}` together with `{}`", task_.names[at(a)], task_.names[at(b)]),
          {}});
  }

  void others() {
    for (std::size_t i = 0; i < in_.other_causes.size(); ++i) {
      const OtherCause& o = in_.other_causes[i];
      Suspect s;
      s.chance = o.chance.si;
      s.check_cost = o.check_cost;
      s.found_per_hour = -1.0;
      s.symptoms = bits(symptoms_, {o.symptom}, fmt::format("other_causes/{}/symptom", i));
      task_.model.suspects.push_back(s);
      task_.names.push_back(fmt::format("{}: another cause", o.symptom));
    }
    task_.symptom_names = symptoms_.words();
    task_.model.areas.assign(areas_.words().size(), 0.0);
    for (const auto& area : in_.areas) {
      const auto& words = areas_.words();
      const auto found = std::find(words.begin(), words.end(), area.name);
      if (found == words.end()) continue;  // an area that no change needs costs nothing
      task_.model.areas[static_cast<std::size_t>(found - words.begin())] = area.opening_cost;
    }
  }

  void pairs() {
    for (std::size_t i = 0; i < in_.never.size(); ++i) {
      const NeverTogether& n = in_.never[i];
      const int a = find(n.one, fmt::format("never/{}/one", i));
      const int b = find(n.other, fmt::format("never/{}/other", i));
      if (a < 0 || b < 0) continue;
      if (a == b) {
        say(fmt::format("never/{}/other", i), Kind::conflict,
            fmt::format("`{}` cannot be kept apart from itself", n.one), "another change");
      } else {
        rule({Wish::never, a, b, 0.0, fmt::format("`{}` never together with `{}`", n.one, n.other),
              n.reason});
      }
    }
    for (std::size_t i = 0; i < in_.harms.size(); ++i) {
      const HarmOfBoth& h = in_.harms[i];
      const int a = find(h.one, fmt::format("harms/{}/one", i));
      const int b = find(h.other, fmt::format("harms/{}/other", i));
      if (a < 0 || b < 0 || a == b) continue;
      const auto& s = task_.model.suspects;
      task_.model.harms.push_back(
          {(Set{1} << a) | (Set{1} << b), h.harm * s[at(a)].chance * s[at(b)].chance});
    }
  }

  void caps() {
    if (in_.risk_cap) {
      rule({Wish::risk_cap,
            -1,
            -1,
            in_.risk_cap->si,
            fmt::format("at most {:.3g} % chance of a fault in a stage", in_.risk_cap->si * 100.0),
            {}});
    }
    if (in_.size_cap) {
      rule({Wish::size_cap,
            -1,
            -1,
            static_cast<double>(*in_.size_cap),
            fmt::format("at most {} changes in a stage", *in_.size_cap),
            {}});
    }
  }

  double longest() const {
    double most = 0.0;
    for (int i = 0; i < task_.model.changes; ++i) {
      most = std::max(most, task_.model.suspects[at(i)].hours);
    }
    return most;
  }

  void hours() {
    CostModel& m = task_.model;
    if (in_.test_hours == TestHours::longest_of_its_changes) return;
    m.rule = HoursRule::given;
    if (in_.test_hours == TestHours::the_same_for_all) {
      if (!in_.same_hours) {
        say("same_hours", Kind::missing, "the hours of every stage are not said", "a time", "2 h");
        return;
      }
      m.grid = {hours_of(*in_.same_hours)};
    } else {
      grid();
    }
    if (!m.grid.empty() && m.grid.back() < longest()) {
      const bool same = in_.test_hours == TestHours::the_same_for_all;
      say(same ? "same_hours" : "hours_to", Kind::conflict,
          fmt::format("a change asks for {:.4g} h, a stage has at most {:.4g} h", longest(),
                      m.grid.back()),
          fmt::format("{:.4g} h or more", longest()), fmt::format("{:.4g} h", longest()));
    }
  }

  void grid() {
    const double from = in_.hours_from ? hours_of(*in_.hours_from) : 0.25;
    const double to = in_.hours_to ? hours_of(*in_.hours_to) : std::max(10.0, longest());
    const double step = in_.hours_step ? hours_of(*in_.hours_step) : 0.25;
    if (to < from) {
      say("hours_to", Kind::conflict, "the most hours are fewer than the least",
          fmt::format("{:.4g} h or more", from));
      return;
    }
    if (!(step > 0.0) || (to - from) / step > k_most_hours) {
      say("hours_step", Kind::out_of_bounds, "too many steps of hours",
          fmt::format("at most {} steps between least and most", k_most_hours), "15 min");
      return;
    }
    const auto count = static_cast<int>(std::floor((to - from) / step + 1e-9));
    for (int k = 0; k <= count; ++k) task_.model.grid.push_back(from + step * k);
  }

  void contradictions() {
    if (can_be_kept(task_.model.suspects, task_.model.changes, task_.rules)) return;
    const auto clash = contradiction(task_.model.suspects, task_.model.changes, task_.rules);
    std::string words;
    for (const PlanRule& r : clash) {
      if (!words.empty()) words += "; ";
      words += r.words;
      if (!r.reason.empty()) words += fmt::format(" ({})", r.reason);
    }
    const auto circle = [](const PlanRule& r) { return r.wish <= Wish::together; };
    const bool all_order = std::all_of(clash.begin(), clash.end(), circle);
    if (clash.size() == 1 && clash.front().wish == Wish::risk_cap) words += too_risky();
    say(path_of(clash), Kind::conflict,
        fmt::format("{}: {}", all_order ? "the order runs in a circle" : "these cannot all be kept",
                    words),
        clash.size() == 1 ? "another limit" : "one of them left out");
  }

  std::string too_risky() const {
    std::string out;
    for (int i = 0; i < task_.model.changes; ++i) {
      if (task_.model.suspects[at(i)].chance <= in_.risk_cap->si + 1e-12) continue;
      out += fmt::format("; `{}` alone has {:.3g} %", task_.names[at(i)],
                         task_.model.suspects[at(i)].chance * 100.0);
    }
    return out;
  }

  static std::string path_of(const std::vector<PlanRule>& clash) {
    const PlanRule& r = clash.front();
    switch (r.wish) {
      case Wish::before:
        return fmt::format("changes/{}/after", r.second);
      case Wish::not_later:
        return fmt::format("changes/{}/not_later_than", r.first);
      case Wish::together:
        return fmt::format("changes/{}/together", r.first);
      case Wish::never:
        return "never";
      case Wish::risk_cap:
        return "risk_cap";
      case Wish::size_cap:
        break;
    }
    return "size_cap";
  }

  const StagePlanInput& in_;
  PlanTask task_;
  Problems problems_;
  Bits symptoms_, areas_;
};

}  // namespace

Checked<PlanTask> read_plan(const StagePlanInput& input) { return Reader(input).run(); }

}  // namespace wm::staging::detail
