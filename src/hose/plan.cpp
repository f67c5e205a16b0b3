#include "hose/plan.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <tuple>

#include "hose/date_code.hpp"
#include "hose/detail/problem.hpp"
#include "quantity/as_typed.hpp"

namespace wm::hose {
namespace {

using detail::problem;
using quantity::Length;
using quantity::pencil;

constexpr double k_nanometre = 1e-9;
constexpr std::int64_t k_most_pieces = 300;
constexpr std::size_t k_most_coils = 200;

std::int64_t nanometres(Length l) { return std::llround(l.si / k_nanometre); }

std::string hose_words(std::string_view family, std::string_view size) {
  if (family.empty() && size.empty()) return "hose";
  if (family.empty() || size.empty()) return fmt::format("{}{}", family, size);
  return fmt::format("{} {}", family, size);
}

void check(const CutPlanInput& in, Problems& problems) {
  const auto length = [&](const EnteredLength& l, std::string path, bool zero) {
    if (l.value.si > 0 || (zero && l.value.si == 0)) return;
    problems.push_back(problem(std::move(path), Kind::out_of_bounds, "that is no length",
                               zero ? "zero or more" : "more than zero"));
  };
  length(in.kerf, "kerf", true);
  length(in.end_trim, "end_trim", true);
  length(in.least_kept, "least_kept", true);
  if (in.pieces.empty()) {
    problems.push_back(
        problem("pieces", Kind::missing, "there is nothing to cut", "at least one piece"));
  }
  if (in.coils.empty()) {
    problems.push_back(
        problem("coils", Kind::missing, "there is no stock", "at least one coil or offcut"));
  }
  if (in.coils.size() > k_most_coils) {
    problems.push_back(problem("coils", Kind::out_of_bounds,
                               fmt::format("{} coils in one plan", in.coils.size()),
                               fmt::format("{} at most", k_most_coils)));
  }
  std::int64_t pieces = 0;
  for (std::size_t i = 0; i < in.pieces.size(); ++i) {
    const PieceToCut& p = in.pieces[i];
    length(p.length, fmt::format("pieces/{}/length", i), false);
    if (p.count < 1 || p.count > k_most_pieces) {
      problems.push_back(problem(fmt::format("pieces/{}/count", i), Kind::out_of_bounds,
                                 fmt::format("{} of them", p.count),
                                 fmt::format("1 to {}", k_most_pieces)));
    } else {
      pieces += p.count;
    }
  }
  if (pieces > k_most_pieces) {
    problems.push_back(problem("pieces", Kind::out_of_bounds,
                               fmt::format("{} pieces in one plan", pieces),
                               fmt::format("{} at most; plan the rest apart", k_most_pieces)));
  }
  for (std::size_t i = 0; i < in.coils.size(); ++i) {
    length(in.coils[i].length, fmt::format("coils/{}/length", i), false);
  }
}

/// A coil with its dates read.
struct Dated {
  std::optional<quantity::Date> cured;  ///< last day that its code may mean
  std::string refused;
};

std::vector<Dated> dates(const CutPlanInput& in, const describe::Context& context,
                         Problems& problems) {
  std::optional<quantity::Date> day = in.day_of_use;
  if (!day && context.today.ok() && context.today.year() > std::chrono::year{0}) {
    day = context.today;
  }
  const std::string source =
      in.age_source.empty() ? "limit entered by you" : fmt::format("limit: {}", in.age_source);
  std::vector<Dated> out(in.coils.size());
  bool asked = false;
  for (std::size_t i = 0; i < in.coils.size(); ++i) {
    const StockCoil& c = in.coils[i];
    if (!c.cure.empty()) {
      auto span = read_date_code(c.cure);
      if (!span) {
        Problem p = span.error();
        p.path = fmt::format("coils/{}/cure", i);
        problems.push_back(std::move(p));
        continue;
      }
      out[i].cured = span->last;
      if (day && quantity::days_between(*day, span->first) > 0) {
        problems.push_back(problem(
            fmt::format("coils/{}/cure", i), Kind::conflict,
            fmt::format("cured {}, after the day of use, {}", c.cure, quantity::print_date(*day)),
            "a cure date not after the day of use"));
        continue;
      }
    }
    if (!c.oldest_quarters) continue;
    if (c.cure.empty()) {
      out[i].refused = "it has an age limit but no cure date: hose of unknown age is not cut";
      continue;
    }
    if (!day) {
      if (!asked) {
        problems.push_back(problem("day_of_use", Kind::missing,
                                   "a coil has an age limit, and the day of use is not known",
                                   "the day on which the hose is to be fitted", "2026-11-25"));
      }
      asked = true;
      continue;
    }
    const auto last =
        add_quarters(end_of_quarter(*out[i].cured), static_cast<int>(*c.oldest_quarters));
    if (quantity::days_between(*day, last) < 0) {
      out[i].refused =
          fmt::format("too old: cured {}, {} quarters end with {}; day of use {} ({})", c.cure,
                      *c.oldest_quarters, quarter_name(last), quantity::print_date(*day), source);
    }
  }
  return out;
}

/// One hose: the coils and pieces of one family and size.
struct Group {
  std::string family, size;
  std::vector<std::size_t> coils;   ///< in the order to take them
  std::vector<std::size_t> pieces;  ///< one entry a piece
};

class Plan {
 public:
  Plan(const CutPlanInput& in, const describe::Context& context, std::vector<Dated> dated)
      : in_(in),
        context_(context),
        dated_(std::move(dated)),
        unit_(quantity::typed_unit(in.pieces.front().length, context.units)) {}

  Checked<CutPlanAnswer> run() {
    groups();
    std::size_t done = 0;
    for (const Group& group : groups_) {
      if (!one(group, static_cast<double>(done), static_cast<double>(groups_.size()))) {
        return Fail(Problems{problem("", Kind::stopped, "stopped before there was a plan")});
      }
      ++done;
    }
    over_all();
    return std::move(out_);
  }

 private:
  std::string say(std::int64_t nm) const {
    return pencil(static_cast<double>(nm) * k_nanometre, unit_);
  }
  EnteredLength made(std::int64_t nm) const {
    return {Length{static_cast<double>(nm) * k_nanometre}, 0.001 * unit_.factor, {}};
  }

  void groups() {
    const auto group = [&](const std::string& family, const std::string& size) -> Group& {
      for (Group& g : groups_) {
        if (g.family == family && g.size == size) return g;
      }
      groups_.push_back({family, size, {}, {}});
      return groups_.back();
    };
    for (std::size_t i = 0; i < in_.pieces.size(); ++i) {
      Group& g = group(in_.pieces[i].family, in_.pieces[i].size);
      for (std::int64_t n = 0; n < in_.pieces[i].count; ++n) g.pieces.push_back(i);
    }
    std::vector<std::size_t> order(in_.coils.size());
    std::iota(order.begin(), order.end(), 0U);
    const auto key = [&](std::size_t i) {
      const StockCoil& c = in_.coils[i];
      constexpr std::int64_t k_last = 1'000'000;
      constexpr int k_never = 1'000'000;
      const int age = dated_[i].cured
                          ? quantity::days_between(quantity::Date{std::chrono::year{1900} / 1 / 1},
                                                   *dated_[i].cured)
                          : k_never;
      return std::make_tuple(c.take.value_or(k_last), !c.offcut, age, nanometres(c.length.value));
    };
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return key(a) < key(b); });
    for (const std::size_t i : order) {
      const StockCoil& c = in_.coils[i];
      if (!dated_[i].refused.empty()) {
        out_.refused.push_back({c.name, dated_[i].refused});
        continue;
      }
      bool wanted = false;
      for (Group& g : groups_) {
        if (g.family != c.family || g.size != c.size) continue;
        g.coils.push_back(i);
        wanted = true;
      }
      if (!wanted) out_.untouched.push_back(c.name);
    }
  }

  CutTask task_of(const Group& group) const {
    CutTask task;
    task.aim = in_.aim;
    task.kerf = nanometres(in_.kerf.value);
    task.trim = nanometres(in_.end_trim.value);
    task.least_kept = nanometres(in_.least_kept.value);
    for (const std::size_t i : group.coils) {
      task.coils.push_back(nanometres(in_.coils[i].length.value));
      task.places.push_back(static_cast<std::int64_t>(task.coils.size()));
    }
    for (const std::size_t i : group.pieces) {
      task.pieces.push_back(nanometres(in_.pieces[i].length.value));
    }
    return task;
  }

  bool one(const Group& group, double before, double all) {
    const CutTask task = task_of(group);
    CutEffort effort;
    effort.steps *= std::clamp<std::int64_t>(in_.longer, 1, 100);
    if (context_.progress) {
      effort.go_on = [&, before, all](double share) {
        return context_.go_on((before + share) / all);
      };
    }
    const CutSolution got = solve(task, effort);
    const bool nothing = got.coil_of.empty() || std::all_of(got.coil_of.begin(), got.coil_of.end(),
                                                            [](int c) { return c == k_not_cut; });
    if (got.stopped && nothing) return false;
    if (got.stopped) out_.notes.push_back("stopped early: the best plan found so far");
    for (std::size_t c = 0; c < group.coils.size(); ++c) coil(group, task, got, c);
    not_cut(group, task, got);
    totals(group, task, got);
    return true;
  }

  void coil(const Group& group, const CutTask& task, const CutSolution& got, std::size_t c) {
    const StockCoil& stock = in_.coils[group.coils[c]];
    std::vector<std::size_t> here;
    for (std::size_t i = 0; i < got.coil_of.size(); ++i) {
      if (got.coil_of[i] == static_cast<int>(c)) here.push_back(i);
    }
    if (here.empty()) {
      out_.untouched.push_back(stock.name);
      return;
    }
    // The longest first: a spoiled cut then leaves the most to start again from.
    std::stable_sort(here.begin(), here.end(),
                     [&](std::size_t a, std::size_t b) { return task.pieces[a] > task.pieces[b]; });
    PlannedCoil plan;
    plan.coil = stock.name;
    plan.family = group.family;
    plan.size = group.size;
    plan.length = made(task.coils[c]);
    undated_ = undated_ || !stock.oldest_quarters.has_value();
    std::int64_t at = task.trim;
    std::int64_t sum = 0;
    std::string terms = task.trim > 0 ? fmt::format("{} trim", say(task.trim)) : std::string{};
    for (const std::size_t i : here) {
      const std::int64_t end = at + task.pieces[i];
      plan.cuts.push_back(
          {in_.pieces[group.pieces[i]].name, made(task.pieces[i]), made(at), made(end)});
      terms += fmt::format("{}{}", terms.empty() ? "" : " + ", say(task.pieces[i]));
      at = end + task.kerf;
      sum += task.pieces[i];
    }
    const auto count = static_cast<std::int64_t>(here.size());
    const std::int64_t rest = remainder_of(task, task.coils[c], sum, count);
    const bool exact = at - task.kerf == task.coils[c];
    plan.remainder = made(rest);
    plan.goes_back = rest > 0 && rest >= task.least_kept;
    plan.in_words = plan.goes_back
                        ? fmt::format(
                              "{} goes back into stock: mark it with its cure date and how "
                              "much it is",
                              say(rest))
                    : rest > 0 ? fmt::format("{} is left, too short to keep", say(rest))
                               : std::string("nothing is left");
    const std::int64_t cuts = exact ? count - 1 : count;
    if (task.kerf > 0 && cuts > 0) terms += fmt::format(" + {} x {} kerf", cuts, say(task.kerf));
    const bool runs_out = !exact && at > task.coils[c];
    out_.working.push_back(fmt::format(
        "{}: {} = {} of {}{}, remainder {}", stock.name, terms, say(exact ? task.coils[c] : at),
        say(task.coils[c]), runs_out ? " (the last cut takes what is left)" : "", say(rest)));
    if (exact) {
      out_.notes.push_back(fmt::format(
          "{}: the last piece ends where the coil ends; that end must be square and sound",
          stock.name));
    }
    out_.coils.push_back(std::move(plan));
  }

  void not_cut(const Group& group, const CutTask& task, const CutSolution& got) {
    if (got.complete) return;
    std::int64_t longest = 0;
    for (const std::int64_t coil : task.coils) longest = std::max(longest, coil - task.trim);
    std::int64_t missing = 0;
    for (const int left : got.left_over) {
      const auto i = static_cast<std::size_t>(left);
      missing += task.pieces[i] + task.kerf;
      std::string why;
      if (task.coils.empty()) {
        why = fmt::format("there is no {} in stock that may be cut",
                          hose_words(group.family, group.size));
      } else if (task.pieces[i] > longest) {
        why = fmt::format("longer than any coil ({} after the trim), and hose is not spliced",
                          say(longest));
      } else {
        why = got.decided
                  ? "the stock cannot hold one piece more"
                  : "no plan found for one piece more; whether there is one was not settled";
      }
      out_.not_cut.push_back({in_.pieces[group.pieces[i]].name, made(task.pieces[i]), why});
    }
    out_.notes.push_back(fmt::format(
        "{}: {} of {} pieces are not cut; a coil of {} more would hold them. The plan cuts as many "
        "as can be, which are the shortest: if others matter more, take off the list what can wait",
        hose_words(group.family, group.size), got.left_over.size(), task.pieces.size(),
        say(task.trim + missing)));
  }

  void totals(const Group& group, const CutTask& task, const CutSolution& got) {
    HoseTotal t;
    t.family = group.family;
    t.size = group.size;
    std::int64_t cut = 0;
    std::size_t count = 0;
    for (std::size_t i = 0; i < got.coil_of.size(); ++i) {
      if (got.coil_of[i] == k_not_cut) continue;
      cut += task.pieces[i];
      ++count;
    }
    if (count == 0) return;
    t.cut = made(cut);
    t.total = made(got.total);
    t.bound = made(got.bound);
    t.proved = got.proved;
    const std::string what = in_.aim == CutAim::used ? "used up" : "opened";
    t.in_words = fmt::format("{}: {} {} for {} of pieces; ", hose_words(group.family, group.size),
                             say(got.total), what, say(cut));
    t.in_words += got.proved ? "proved: no plan for these pieces takes less"
                             : fmt::format(
                                   "within {} of the least possible: no plan takes less "
                                   "than {}; a longer search may settle it",
                                   say(got.total - got.bound), say(got.bound));
    if (got.proved) {
      t.in_words +=
          got.order_proved
              ? ", and of those that take as much none keeps closer to your order of coils"
              : "; whether another of equal total keeps closer to your order of coils was "
                "not settled";
    }
    const auto plain = first_fit_decreasing(task);
    if (got.complete && std::find(plain.begin(), plain.end(), k_not_cut) == plain.end()) {
      const std::int64_t other = total_of(task, plain);
      t.first_fit = made(other);
      t.in_words += other > got.total
                        ? fmt::format(
                              ". The longest first, each from the first coil with room, "
                              "would take {}: {} more",
                              say(other), say(other - got.total))
                        : std::string(
                              ". The longest first, each from the first coil with room, "
                              "takes as much");
    } else if (got.complete) {
      t.in_words +=
          ". The longest first, each from the first coil with room, would not get all pieces out";
    }
    out_.working.push_back(fmt::format("{}: {} states looked at, bound {}",
                                       hose_words(group.family, group.size), got.states,
                                       say(got.bound)));
    out_.totals.push_back(std::move(t));
  }

  void over_all() {
    out_.all_cut = out_.not_cut.empty();
    std::string words;
    for (const HoseTotal& t : out_.totals) words += (words.empty() ? "" : " ") + t.in_words + ".";
    if (!out_.all_cut) {
      words = fmt::format("{} {} not cut. ", out_.not_cut.size(),
                          out_.not_cut.size() == 1 ? "piece is" : "pieces are") +
              words;
    }
    out_.in_words = std::move(words);
    if (undated_) {
      out_.notes.push_back(
          "a coil without an age limit was taken as it is: PTFE has none by TM 1-1500-204-23-2 "
          "page "
          "4-66, elastomer hose has one by its maker or authority");
    }
    out_.notes.push_back(
        "measure the coil before the first cut: a plan is no better than the length entered");
  }

  const CutPlanInput& in_;
  const describe::Context& context_;
  std::vector<Dated> dated_;
  const quantity::Unit& unit_;
  std::vector<Group> groups_;
  bool undated_{};  ///< a coil without an age limit is cut
  CutPlanAnswer out_;
};

}  // namespace

Checked<CutPlanAnswer> cut_plan(const CutPlanInput& input, const describe::Context& context) {
  Problems problems;
  check(input, problems);
  auto dated = dates(input, context, problems);
  if (!problems.empty()) return Fail(std::move(problems));
  return Plan(input, context, std::move(dated)).run();
}

}  // namespace wm::hose
