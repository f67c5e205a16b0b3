#include "staging/cause_rank.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "quantity/as_typed.hpp"
#include "staging/detail/noisy_or.hpp"
#include "staging/detail/problem.hpp"
#include "staging/search_value.hpp"
#include "statistics/distributions.hpp"

namespace wm::staging {
namespace {

using detail::Cause;
using detail::problem;
using quantity::pencil;

constexpr double k_hour = 3600.0;
constexpr double k_unlikely = 1e-4;
/// Before the owner has a record: as if one job in ten had brought a fault in.
constexpr double k_prior_faults = 1.0;
constexpr double k_prior_clean = 9.0;

/// How the grade of disturbance scales the odds of a fault: our own proposal, no source.
double grade_factor(Disturbance d) {
  switch (d) {
    case Disturbance::looked_at:
      return 0.1;
    case Disturbance::adjusted:
      return 0.5;
    case Disturbance::opened:
    case Disturbance::renewed:
      return 1.0;
    case Disturbance::redesigned:
      return 2.0;
  }
  return 1.0;
}

/// p with its odds multiplied.
double with_odds(double p, double factor) {
  const double weighed = p * factor;
  return weighed > 0.0 ? weighed / (1.0 - p + weighed) : 0.0;
}

std::string share(double p) { return fmt::format("{:.3g} %", p * 100.0); }

/// What speaks for and against one suspect.
struct Counts {
  int seen_explained{};
  int not_seen_expected{};
  int checks_against{};
  int checks_for{};
};

class Ranker {
 public:
  explicit Ranker(const CauseRankInput& in) : in_(in) {}

  Checked<CauseRankAnswer> run() {
    check_input();
    if (!problems_.empty()) return Fail(std::move(problems_));
    own_rate();
    number_symptoms();
    for (std::size_t i = 0; i < in_.suspects.size(); ++i) suspect(i);
    for (std::size_t i = 0; i < in_.checks.size(); ++i) check_done(i);
    if (!problems_.empty()) return Fail(std::move(problems_));
    found_ = detail::explain(causes_, leaks_);
    if (!(found_.evidence > 0.0)) {
      return Fail(Problems{
          problem("symptoms", Kind::conflict,
                  "nothing listed can bring about all that was found: its chance is zero",
                  "a chance that it comes from elsewhere, or a check that can err", "1 %")});
    }
    chances();
    rank();
    next_look();
    tests();
    if (!problems_.empty()) return Fail(std::move(problems_));
    say();
    return std::move(out_);
  }

 private:
  void say_problem(std::string path, Kind kind, std::string what, std::string expected,
                   std::string example = {}) {
    problems_.push_back(
        problem(std::move(path), kind, std::move(what), std::move(expected), std::move(example)));
  }

  template <class List>
  void unique_names(const List& list, const char* path) {
    for (std::size_t i = 0; i < list.size(); ++i) {
      const auto same = [&](const auto& other) { return other.name == list[i].name; };
      const auto end = list.begin() + static_cast<std::ptrdiff_t>(i);
      if (std::find_if(list.begin(), end, same) != end) {
        say_problem(fmt::format("{}/{}/name", path, i), Kind::duplicate,
                    fmt::format("`{}` stands twice", list[i].name), "a name of its own");
      }
    }
  }

  void check_input() {
    if (in_.suspects.empty()) {
      say_problem("suspects", Kind::missing, "nothing is listed that may be at fault",
                  "at least one change or part");
    }
    unique_names(in_.symptoms, "symptoms");
    unique_names(in_.suspects, "suspects");
    const auto seen = std::count_if(in_.symptoms.begin(), in_.symptoms.end(),
                                    [](const auto& s) { return s.state == SymptomState::seen; });
    if (static_cast<std::size_t>(seen) > detail::k_most_seen) {
      say_problem("symptoms", Kind::not_applicable, fmt::format("{} symptoms seen at once", seen),
                  fmt::format("{} or fewer: make one of those that always come together",
                              detail::k_most_seen));
    }
    if (in_.jobs_with_fault.value_or(0) > in_.jobs_done.value_or(0)) {
      say_problem("jobs_with_fault", Kind::conflict, "more jobs with a fault than jobs",
                  fmt::format("{} or fewer", in_.jobs_done.value_or(0)));
    }
  }

  /// Beta(1, 9) and the owner's own jobs.
  void own_rate() {
    const auto faults = static_cast<double>(in_.jobs_with_fault.value_or(0));
    const auto jobs = static_cast<double>(in_.jobs_done.value_or(0));
    const double a = k_prior_faults + faults;
    const double b = k_prior_clean + jobs - faults;
    rate_ = a / (a + b);
    if (!in_.jobs_done) return;
    out_.own_rate = quantity::Fraction{rate_};
    out_.own_rate_in_words =
        fmt::format("{:.0f} of your {:.0f} jobs brought a fault in: {}, between {} and {} (90 %)",
                    faults, jobs, share(rate_), share(statistics::beta_quantile(0.05, a, b)),
                    share(statistics::beta_quantile(0.95, a, b)));
  }

  void number_symptoms() {
    for (const auto& s : in_.symptoms) {
      seen_number_.push_back(s.state == SymptomState::seen ? static_cast<int>(leaks_.size()) : -1);
      if (s.state == SymptomState::seen) leaks_.push_back(s.from_elsewhere.si);
      if (s.state == SymptomState::not_seen) quiet_leaks_ *= 1.0 - s.from_elsewhere.si;
    }
  }

  /// Chance of a fault before anything was seen; grade and quiet hours counted.
  double before(std::size_t i) {
    const CauseSuspect& s = in_.suspects[i];
    const auto path = [&](const char* f) { return fmt::format("suspects/{}/{}", i, f); };
    if (!s.fault_chance && s.kind == SuspectKind::unchanged) {
      say_problem(path("fault_chance"), Kind::missing,
                  fmt::format("no chance is given for `{}`, which was not changed", s.name),
                  "the chance that it is at fault", "0.5 %");
      return 0.0;
    }
    double p = s.fault_chance ? s.fault_chance->si : rate_;
    std::string words = share(p);
    if (!s.fault_chance) {
      used_rate_ = true;
      const double factor = grade_factor(s.disturbance.value_or(Disturbance::renewed));
      p = with_odds(p, factor);
      words += fmt::format(" (own rate), odds x {} for the grade = {}", pencil(factor), share(p));
    }
    if (s.quiet_hours && !s.found_per_hour) {
      say_problem(path("found_per_hour"), Kind::missing,
                  "quiet hours tell nothing without the rate at which the fault would show",
                  "times an hour", "0.5");
    } else if (s.quiet_hours) {
      const double h = s.quiet_hours->value.si / k_hour;
      p = with_odds(p, std::exp(-*s.found_per_hour * h));
      words += fmt::format(", odds x e^(-{} x {} h) = {}", pencil(*s.found_per_hour), pencil(h),
                           share(p));
    }
    out_.working.push_back(fmt::format("{} beforehand: {}", s.name, words));
    return p;
  }

  void suspect(std::size_t i) {
    const CauseSuspect& s = in_.suspects[i];
    const double p = before(i);
    Cause made{1.0 - p, p, {}};
    Counts counts;
    for (std::size_t k = 0; k < s.symptoms.size(); ++k) {
      const CauseLink& link = s.symptoms[k];
      const auto found =
          std::find_if(in_.symptoms.begin(), in_.symptoms.end(),
                       [&](const ObservedSymptom& o) { return o.name == link.symptom; });
      if (found == in_.symptoms.end()) {
        say_problem(fmt::format("suspects/{}/symptoms/{}/symptom", i, k), Kind::not_found,
                    fmt::format("no symptom is called `{}`", link.symptom),
                    "the name of a symptom in this list");
        continue;
      }
      const auto number = seen_number_[static_cast<std::size_t>(found - in_.symptoms.begin())];
      if (number >= 0 && link.chance.si > 0.0) {
        made.shows_as.push_back({number, link.chance.si});
        ++counts.seen_explained;
      }
      if (found->state == SymptomState::not_seen && link.chance.si > 0.0) {
        made.present *= 1.0 - link.chance.si;
        ++counts.not_seen_expected;
      }
    }
    before_.push_back(p);
    causes_.push_back(std::move(made));
    counts_.push_back(counts);
  }

  std::optional<std::size_t> find(const std::string& name, const std::string& path) {
    const auto found = std::find_if(in_.suspects.begin(), in_.suspects.end(),
                                    [&](const CauseSuspect& s) { return s.name == name; });
    if (found != in_.suspects.end()) return static_cast<std::size_t>(found - in_.suspects.begin());
    say_problem(path, Kind::not_found, fmt::format("nothing listed is called `{}`", name),
                "the name of a suspect in this list");
    return {};
  }

  void check_done(std::size_t i) {
    const CheckDone& c = in_.checks[i];
    const auto s = find(c.suspect, fmt::format("checks/{}/suspect", i));
    if (!s) return;
    causes_[*s].present *= c.fault_found ? c.finds.si : 1.0 - c.finds.si;
    causes_[*s].absent *= c.fault_found ? c.false_alarms.si : 1.0 - c.false_alarms.si;
    ++(c.fault_found ? counts_[*s].checks_for : counts_[*s].checks_against);
  }

  void chances() {
    out_.evidence = found_.evidence * quiet_leaks_;
    const auto left = [&](const std::vector<Cause>& causes, const std::vector<double>& leaks) {
      return std::clamp(detail::evidence(causes, leaks) / found_.evidence, 0.0, 1.0);
    };
    double none_elsewhere = left(causes_, std::vector<double>(leaks_.size(), 0.0));
    for (const double leak : leaks_) none_elsewhere *= 1.0 - leak;
    out_.something_else = {1.0 - none_elsewhere};
    auto causes = causes_;
    for (std::size_t i = 0; i < causes.size(); ++i) {
      if (in_.suspects[i].kind == SuspectKind::change) causes[i].present = 0.0;
    }
    out_.no_change = {left(causes, leaks_)};
    for (Cause& c : causes) c.present = 0.0;
    out_.nothing_listed = {left(causes, leaks_)};
    out_.working.push_back(fmt::format("chance of all that was found: {}", pencil(out_.evidence)));
  }

  void rank() {
    std::vector<std::size_t> order(causes_.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
      return found_.at_fault[a] > found_.at_fault[b];
    });
    for (const std::size_t i : order) {
      out_.ranking.push_back({in_.suspects[i].name,
                              in_.suspects[i].kind,
                              {before_[i]},
                              {found_.at_fault[i]},
                              words_for(i)});
      out_.working.push_back(
          fmt::format("{}: chance of all that was found and it at fault {}, divided by {} = {}",
                      in_.suspects[i].name, pencil(out_.evidence * found_.at_fault[i]),
                      pencil(out_.evidence), share(found_.at_fault[i])));
    }
  }

  std::string words_for(std::size_t i) const {
    const Counts& c = counts_[i];
    std::string out =
        fmt::format("{} before, {} now; can bring about {} of {} seen", share(before_[i]),
                    share(found_.at_fault[i]), c.seen_explained, leaks_.size());
    if (c.not_seen_expected > 0) {
      out +=
          fmt::format("; against it: {} not seen that it could bring about", c.not_seen_expected);
    }
    if (c.checks_against > 0) out += fmt::format("; checked {} x, nothing found", c.checks_against);
    if (c.checks_for > 0) out += fmt::format("; found faulty by {} check(s)", c.checks_for);
    if (in_.suspects[i].quiet_hours) {
      out += fmt::format("; {} h without trouble",
                         pencil(in_.suspects[i].quiet_hours->value.si / k_hour));
    }
    return out;
  }

  /// Rising cost (1 - p) / p, as for looking within a stage.
  void next_look() {
    for (std::size_t i = 0; i < causes_.size(); ++i) {
      if (in_.suspects[i].look_cost && found_.at_fault[i] > 0.0) lookable_.push_back(i);
    }
    if (lookable_.empty()) return;
    const auto patience = [&](std::size_t i) {
      const double p = found_.at_fault[i];
      return *in_.suspects[i].look_cost * (1.0 - p) / p;
    };
    std::stable_sort(lookable_.begin(), lookable_.end(),
                     [&](std::size_t a, std::size_t b) { return patience(a) < patience(b); });
    for (const std::size_t i : lookable_) {
      out_.look_order.push_back(in_.suspects[i].name);
      places_.push_back({found_.at_fault[i], *in_.suspects[i].look_cost});
      out_.working.push_back(fmt::format("look at {}: {} x (1 - {}) / {} = {}",
                                         in_.suspects[i].name, pencil(*in_.suspects[i].look_cost),
                                         pencil(found_.at_fault[i]), pencil(found_.at_fault[i]),
                                         pencil(patience(i))));
    }
    const std::size_t first = lookable_.front();
    out_.search_cost = search_cost(places_);
    out_.look_next =
        fmt::format("{}: {} at a cost of {}", in_.suspects[first].name,
                    share(found_.at_fault[first]), pencil(*in_.suspects[first].look_cost));
  }

  void tests() {
    for (std::size_t t = 0; t < in_.tests.size(); ++t) {
      const PossibleTest& test = in_.tests[t];
      std::vector<double> positive(in_.suspects.size(), test.otherwise.si);
      for (std::size_t k = 0; k < test.positive_if.size(); ++k) {
        const auto s =
            find(test.positive_if[k].suspect, fmt::format("tests/{}/positive_if/{}/suspect", t, k));
        if (s) positive[*s] = test.positive_if[k].positive.si;
      }
      if (places_.empty()) continue;
      std::vector<double> at_places;
      for (const std::size_t i : lookable_) at_places.push_back(positive[i]);
      const auto value = test_value(places_, at_places);
      const bool pays = value.worth_at_most > test.cost;
      out_.tests.push_back(
          {test.name, value.worth_at_most, test.cost, pays,
           fmt::format("saves {} of a search of {} on average; it costs {}: {}",
                       pencil(value.worth_at_most), pencil(*out_.search_cost), pencil(test.cost),
                       pays ? "it pays" : "look at once instead")});
    }
  }

  void say() {
    const RankedCause& first = out_.ranking.front();
    out_.in_words = fmt::format(
        "Most likely: {} ({}). No change at fault: {}. Something not "
        "listed has a part in it: {}.",
        first.name, share(first.now.si), share(out_.no_change.si), share(out_.something_else.si));
    if (out_.evidence < k_unlikely) {
      out_.notes.push_back(fmt::format(
          "What was found is rare under everything listed (chance {}): look for a cause that is "
          "missing from the list.",
          pencil(out_.evidence)));
    }
    if (used_rate_) {
      out_.notes.emplace_back(
          "How a grade of disturbance scales the odds (looked at x 0.1, adjusted x 0.5, redesigned "
          "x 2) is our own proposal, no source; so is one fault in ten jobs to begin with.");
    }
    out_.notes.emplace_back("Chances rank where to look; they prove nothing.");
    if (!places_.empty()) {
      out_.notes.emplace_back(
          "Search cost and worth of tests are counted as if exactly one fault "
          "were there, among those with a cost of looking.");
    }
  }

  const CauseRankInput& in_;
  Problems problems_;
  CauseRankAnswer out_;
  double rate_{};
  bool used_rate_{};
  std::vector<int> seen_number_;
  std::vector<double> leaks_;
  double quiet_leaks_{1.0};
  std::vector<double> before_;
  std::vector<Cause> causes_;
  std::vector<Counts> counts_;
  detail::Explained found_;
  std::vector<std::size_t> lookable_;
  std::vector<Place> places_;
};

}  // namespace

Checked<CauseRankAnswer> cause_rank(const CauseRankInput& input,
                                    const describe::Context& /*context*/) {
  return Ranker(input).run();
}

}  // namespace wm::staging
