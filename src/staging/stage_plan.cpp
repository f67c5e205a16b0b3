#include "staging/stage_plan.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <bit>
#include <cmath>

#include "quantity/as_typed.hpp"
#include "staging/detail/plan_input.hpp"
#include "staging/detail/plan_search.hpp"
#include "staging/detail/problem.hpp"

namespace wm::staging {
namespace {

using detail::Plan;
using detail::PlanRule;
using detail::PlanTask;
using detail::Search;
using detail::Set;
using detail::StageCosts;
using detail::StageOption;
using detail::Wish;
using quantity::pencil;

constexpr double k_equal = 1e-9;
constexpr double k_per_cent = 100.0;
constexpr std::size_t at(int i) { return static_cast<std::size_t>(i); }

bool less_or_equal(double a, double b) { return a <= b + k_equal * std::max(1.0, std::abs(b)); }

template <class F>
void each(Set set, const F& visit) {
  for (; set != 0; set &= set - 1) visit(std::countr_zero(set));
}

std::string joined(const std::vector<std::string>& words, const char* between) {
  std::string out;
  for (const auto& w : words) {
    if (!out.empty()) out += between;
    out += w;
  }
  return out;
}

/// A task with what the search needs beside it; stays where it is built.
class Solver {
 public:
  Solver(const PlanTask& task, std::function<bool(double)> go_on)
      : task_(task), costs_(task.model), go_on_(std::move(go_on)) {}

  [[nodiscard]] detail::Units units(const std::vector<PlanRule>& rules) const {
    return detail::units_of(task_.model.suspects, task_.model.changes, rules);
  }
  [[nodiscard]] Plan solve(const detail::Units& units, Set forbidden = 0) const {
    Search search{costs_, units, forbidden};
    search.go_on = go_on_;
    return detail::cheapest(search);
  }
  [[nodiscard]] Plan solve() const { return solve(units(task_.rules)); }
  [[nodiscard]] const StageCosts& costs() const { return costs_; }
  [[nodiscard]] const PlanTask& task() const { return task_; }

 private:
  const PlanTask& task_;
  StageCosts costs_;
  std::function<bool(double)> go_on_;
};

class Planner {
 public:
  Planner(const StagePlanInput& in, const describe::Context& context, const PlanTask& task)
      : in_(in),
        context_(context),
        solver_(task, [this](double share) { return go_on(share); }),
        units_(solver_.units(task.rules)) {}

  Checked<StagePlanAnswer> run() {
    first_share_ = 0.0;
    plan_ = solver_.solve(units_);
    if (!plan_.found()) {
      return Fail(Problems{detail::problem("", Kind::stopped, "stopped before a plan was found")});
    }
    out_.order_matters = detail::order_counts(solver_.costs(), units_);
    main_answer();
    compare_simple_plans();
    if (!stopped_) runner_up();
    if (!stopped_) prices();
    if (!stopped_) sensitivity();
    if (stopped_) out_.notes.emplace_back("stopped by the user: what is left out was not computed");
    say();
    return std::move(out_);
  }

 private:
  bool go_on(double share) {
    // The first search is told as the first half; what follows as the rest.
    const double told = first_share_ + (first_share_ > 0.0 ? 0.1 : 0.5) * share;
    if (!context_.go_on(std::min(1.0, told))) stopped_ = true;
    return !stopped_;
  }

  const std::vector<std::string>& names() const { return solver_.task().names; }

  std::vector<std::string> named(Set changes) const {
    std::vector<std::string> out;
    each(changes, [&](int i) { out.push_back(names()[at(i)]); });
    return out;
  }

  void main_answer() {
    out_.cost = plan_.cost;
    out_.proven = plan_.proven();
    out_.at_least = std::min(plan_.at_least, plan_.cost);
    out_.gap = {plan_.cost > 0.0 ? 1.0 - out_.at_least / plan_.cost : 0.0};
    Set left = 0;
    for (const Set s : plan_.stages) left |= s;
    for (const Set s : plan_.stages) {
      stage(s, detail::waiting_of(solver_.costs(), left));
      left &= ~s;
    }
    out_.working.push_back(fmt::format("together {}", pencil(plan_.cost)));
  }

  void stage(Set changes, double waiting) {
    const StageOption option = solver_.costs().best(changes, waiting);
    const auto parts = solver_.costs().parts(changes, option);
    PlannedStage made;
    made.changes = named(changes);
    made.hours = quantity::hours(option.hours);
    made.on_the_ground = option.ground;
    made.cost = option.cost + option.hours * waiting;
    double none = 1.0;
    each(changes, [&](int i) { none *= 1.0 - solver_.task().model.suspects[at(i)].chance; });
    made.risk = {1.0 - none};
    const auto number = out_.stages.size() + 1;
    double untangling = 0.0;
    for (const auto& looks : parts.kinds) untangling += kind(number, looks, made);
    out_.working.push_back(fmt::format(
        "stage {}: once, areas and harms {} + {} h {} = {} + search {} + escapes {} + waiting {} = "
        "{}",
        number, pencil(parts.fixed), pencil(option.hours),
        option.ground ? "on the ground" : "in the air", pencil(parts.testing), pencil(untangling),
        pencil(parts.escapes), pencil(option.hours * waiting), pencil(made.cost)));
    out_.stages.push_back(std::move(made));
  }

  double kind(std::size_t number, const std::vector<detail::Look>& looks, PlannedStage& made) {
    LookOrder order;
    Set symptoms = 0;
    double sum = 0.0, shown = 0.0;
    std::string terms;
    for (const auto& look : looks) {
      const auto& s = solver_.task().model.suspects[at(look.suspect)];
      symptoms |= s.symptoms;
      order.look_at.push_back(names()[at(look.suspect)]);
      sum += s.check_cost * look.chance_needed;
      shown += look.shown;
      terms += fmt::format("{}{} x {}", terms.empty() ? "" : " + ", pencil(s.check_cost),
                           pencil(look.chance_needed));
    }
    std::vector<std::string> words;
    each(symptoms, [&](int i) { words.push_back(solver_.task().symptom_names[at(i)]); });
    order.symptom = words.empty() ? "its own" : joined(words, ", ");
    const double confirm = solver_.task().model.confirmation_cost;
    out_.working.push_back(
        fmt::format("stage {}, symptom {}: look at {}: {} + confirming {} x {} = {}", number,
                    order.symptom, joined(order.look_at, ", then "), terms, pencil(confirm),
                    pencil(shown), pencil(sum + confirm * shown)));
    made.look_first.push_back(std::move(order));
    return sum + confirm * shown;
  }

  void compare_simple_plans() {
    const Set all = units_.changes((Set{1} << units_.count()) - 1);
    out_.all_at_once_cost = detail::cost_of(solver_.costs(), {all});
    std::vector<std::string> broken;
    for (const PlanRule& r : solver_.task().rules) {
      if (breaks_all_at_once(r)) broken.push_back(r.words);
    }
    out_.all_at_once = broken.empty() ? "keeps the rules" : "breaks: " + joined(broken, "; ");
    auto apart = units_;
    const Set every = (Set{1} << units_.count()) - 1;
    for (int u = 0; u < apart.count(); ++u) apart.never[at(u)] = every & ~(Set{1} << u);
    const Plan singles = solver_.solve(apart);
    if (singles.found()) out_.one_by_one_cost = singles.cost;
  }

  bool breaks_all_at_once(const PlanRule& r) const {
    if (r.wish == Wish::before || r.wish == Wish::never) return true;
    if (r.wish == Wish::size_cap) return solver_.task().model.changes > r.limit;
    if (r.wish != Wish::risk_cap) return false;
    double none = 1.0;
    for (int i = 0; i < solver_.task().model.changes; ++i) {
      none *= 1.0 - solver_.task().model.suspects[at(i)].chance;
    }
    return 1.0 - none > r.limit + k_equal;
  }

  /// Another grouping lacks at least one of these stages: forbid each in turn.
  void runner_up() {
    if (!plan_.exact) {
      out_.notes.emplace_back("too many changes to prove which plan comes second");
      return;
    }
    first_share_ = 0.5;
    for (const Set s : plan_.stages) {
      const Plan other = solver_.solve(units_, s);
      if (stopped_) return;
      if (other.found() && other.cost < second_.cost) second_ = other;
    }
    if (!second_.found()) return;
    out_.runner_up_cost = second_.cost;
    for (const Set s : second_.stages) out_.runner_up.push_back(joined(named(s), " + "));
    out_.tie = less_or_equal(second_.cost, plan_.cost);
  }

  void prices() {
    first_share_ = 0.6;
    const auto& rules = solver_.task().rules;
    for (std::size_t i = 0; i < rules.size(); ++i) {
      auto without = rules;
      without.erase(without.begin() + static_cast<std::ptrdiff_t>(i));
      ConstraintPrice price{rules[i].words, rules[i].reason, {}};
      if (plan_.proven()) {
        const Plan free = solver_.solve(solver_.units(without));
        if (stopped_) return;
        // Rounding can leave a price of -1e-14.
        if (free.proven()) price.price = std::max(0.0, plan_.cost - free.cost);
      }
      out_.prices.push_back(std::move(price));
    }
    if (!plan_.proven() && !rules.empty()) {
      out_.notes.emplace_back("prices of the rules need a proven plan: make one of some changes");
    }
  }

  void sensitivity() {
    first_share_ = 0.8;
    const auto guess = [&](const char* words, double factor) {
      if (!stopped_) guessed(words, factor);
    };
    guess("every chance half as large", 0.5);
    guess("every chance twice as large", 2.0);
  }

  void guessed(const char* words, double factor) {
    StagePlanInput other = in_;
    for (auto& c : other.changes) c.fault_chance.si = std::min(1.0, c.fault_chance.si * factor);
    WhenGuessed made;
    made.guess = words;
    PlanTask scaled = solver_.task();
    const auto task = detail::read_plan(other);
    if (!task) {
      for (std::size_t i = 0; i < other.changes.size(); ++i) {
        scaled.model.suspects[i].chance = other.changes[i].fault_chance.si;
      }
      made.this_plan_cost = detail::cost_of(StageCosts(scaled.model), plan_.stages);
      made.in_words = "then no plan keeps the rules: " + task.error().front().what;
      out_.sensitivity.push_back(std::move(made));
      return;
    }
    const Solver solver(*task, [this](double share) { return go_on(share); });
    made.this_plan_cost = detail::cost_of(solver.costs(), plan_.stages);
    const Plan best = solver.solve();
    if (stopped_ || !best.found()) return;
    made.best_cost = best.cost;
    made.same_plan = less_or_equal(made.this_plan_cost, best.cost) && keeps_cap(*task);
    if (second_.found() &&
        less_or_equal(detail::cost_of(solver.costs(), second_.stages), made.this_plan_cost)) {
      out_.tie = true;
    }
    made.in_words = guess_words(made, *task);
    out_.sensitivity.push_back(std::move(made));
  }

  bool keeps_cap(const PlanTask& task) const {
    if (!in_.risk_cap) return true;
    return std::all_of(plan_.stages.begin(), plan_.stages.end(), [&](Set s) {
      double none = 1.0;
      each(s, [&](int i) { none *= 1.0 - task.model.suspects[at(i)].chance; });
      return 1.0 - none <= in_.risk_cap->si + k_equal;
    });
  }

  std::string guess_words(const WhenGuessed& g, const PlanTask& task) const {
    if (g.same_plan) return "the plan stays the best";
    if (!keeps_cap(task))
      return fmt::format("this plan breaks the cap; the best costs {}", pencil(*g.best_cost));
    return fmt::format("another plan is better: {} against {}", pencil(*g.best_cost),
                       pencil(g.this_plan_cost));
  }

  void say() {
    std::string words = fmt::format("{} stage{} for {}", out_.stages.size(),
                                    out_.stages.size() == 1 ? "" : "s", pencil(out_.cost));
    if (out_.one_by_one_cost) {
      words += fmt::format("; one by one {}", pencil(*out_.one_by_one_cost));
    }
    if (out_.all_at_once_cost) {
      words +=
          fmt::format("; all at once {} ({})", pencil(*out_.all_at_once_cost), out_.all_at_once);
    }
    words += out_.proven ? ". No plan that keeps the rules costs less."
                         : fmt::format(". Not proven: the best may cost {:.3g} % less.",
                                       out_.gap.si * k_per_cent);
    if (out_.tie) {
      words +=
          " A tie: within the guesses of the chances the runner-up is as good; choose by "
          "what the sums do not hold.";
    }
    out_.in_words = std::move(words);
    if (!out_.order_matters && out_.stages.size() > 1) {
      out_.notes.emplace_back("the stages may be flown in any order: none changes the cost");
    }
    if (plan_.exact && plan_.optima > 1.0) {
      out_.notes.push_back(fmt::format("{:.0f} plans cost the same", plan_.optima));
    }
  }

  const StagePlanInput& in_;
  const describe::Context& context_;
  Solver solver_;
  detail::Units units_;
  Plan plan_, second_;
  StagePlanAnswer out_;
  double first_share_{};
  bool stopped_{};
};

}  // namespace

Checked<StagePlanAnswer> stage_plan(const StagePlanInput& input, const describe::Context& context) {
  const auto task = detail::read_plan(input);
  if (!task) return Fail(task.error());
  return Planner(input, context, *task).run();
}

}  // namespace wm::staging
