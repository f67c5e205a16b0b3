// The cut plan against an exact integer-programming library, and against its own laws.
//
// Oracle:    GLPK 5.0, branch and cut (glp_intopt), on the plain assignment model below. Only the
//            totals are compared: there may be several plans of equal total.
// Tolerance: none; lengths are whole numbers.
#include <fmt/core.h>
#include <glpk.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>
#include <random>
#include <tuple>

#include "hose/cut_plan.hpp"
#include "support/reference_case.hpp"

namespace {

using namespace wm::hose;

std::int64_t draw(std::mt19937_64& g, std::int64_t lowest, std::int64_t highest) {
  return lowest + static_cast<std::int64_t>(g() % static_cast<std::uint64_t>(highest - lowest + 1));
}

struct Sizes {
  std::int64_t pieces_from, pieces_to, coils_from, coils_to;
  std::int64_t piece_from, piece_to, coil_from, coil_to;
  bool alike{};  ///< coils of few lengths, as bought
};

CutTask make(std::mt19937_64& g, const Sizes& s, CutAim aim) {
  CutTask task;
  task.aim = aim;
  task.kerf = draw(g, 0, 2);
  task.trim = draw(g, 0, 3);
  task.least_kept = draw(g, 0, 1) * draw(g, 1, s.piece_to);
  const auto coils = draw(g, s.coils_from, s.coils_to);
  const std::int64_t bought = draw(g, s.coil_from, s.coil_to);
  for (std::int64_t i = 0; i < coils; ++i) {
    task.coils.push_back(s.alike && i > 0 ? bought : draw(g, s.coil_from, s.coil_to));
    task.places.push_back(i + 1);
  }
  const auto pieces = draw(g, s.pieces_from, s.pieces_to);
  for (std::int64_t i = 0; i < pieces; ++i) {
    const bool again = i > 0 && draw(g, 0, 3) == 0;
    task.pieces.push_back(again ? task.pieces.back() : draw(g, s.piece_from, s.piece_to));
  }
  return task;
}

/// Every piece from one coil, no coil beyond its length, and the total as it is said to be.
void expect_sound(const CutTask& task, const CutSolution& got) {
  ASSERT_EQ(got.coil_of.size(), task.pieces.size());
  std::vector<std::int64_t> length(task.coils.size());
  std::vector<std::int64_t> count(task.coils.size());
  std::size_t left = 0;
  for (std::size_t i = 0; i < task.pieces.size(); ++i) {
    if (got.coil_of[i] == k_not_cut) {
      ++left;
      continue;
    }
    const auto c = static_cast<std::size_t>(got.coil_of[i]);
    ASSERT_LT(c, task.coils.size());
    length[c] += task.pieces[i];
    ++count[c];
  }
  EXPECT_EQ(got.complete, left == 0);
  EXPECT_EQ(left, got.left_over.size());
  for (std::size_t c = 0; c < length.size(); ++c) {
    if (count[c] == 0) continue;
    EXPECT_LE(length[c] + task.kerf * (count[c] - 1) + task.trim, task.coils[c]);
    EXPECT_TRUE(fits(task, task.coils[c], length[c], count[c]));
  }
  EXPECT_EQ(total_of(task, got.coil_of), got.total);
  EXPECT_LE(got.bound, got.total);
}

/// min sum c_i over coils i, with x_ki pieces of kind k from it; y_i: used up, z_i: remainder kept.
///   sum_i x_ki = n_k;  sum_k w_k x_ki <= room_i y_i + kept_i z_i;  y_i + z_i <= 1
///   opened: c_i = L_i y_i (z_i = 0);   used: c_i >= trim (y_i + z_i) + sum_k w_k x_ki, L_i y_i
/// @return nothing where the stock cannot hold all pieces
class Model {
 public:
  explicit Model(const CutTask& task) : task_(task), p_(glp_create_prob()) {
    for (const auto piece : task.pieces) {
      const auto width = piece + task.kerf;
      const auto at = std::find(widths_.begin(), widths_.end(), width);
      if (at == widths_.end()) {
        widths_.push_back(width);
        counts_.push_back(1);
      } else {
        ++counts_[static_cast<std::size_t>(at - widths_.begin())];
      }
    }
  }
  Model(const Model&) = delete;
  Model& operator=(const Model&) = delete;
  ~Model() { glp_delete_prob(p_); }

  std::optional<std::int64_t> least() {
    glp_term_out(GLP_OFF);
    glp_set_obj_dir(p_, GLP_MIN);
    build();
    glp_iocp how;
    glp_init_iocp(&how);
    how.presolve = GLP_ON;
    how.msg_lev = GLP_MSG_OFF;
    how.tol_int = 1e-7;
    const int failed = glp_intopt(p_, &how);
    if (failed == GLP_ENOPFS) return std::nullopt;
    EXPECT_EQ(failed, 0);
    const int status = glp_mip_status(p_);
    if (status == GLP_NOFEAS) return std::nullopt;
    EXPECT_EQ(status, GLP_OPT);
    return std::llround(glp_mip_obj_val(p_));
  }

 private:
  int column(double cost, double highest, int kind) {
    const int c = glp_add_cols(p_, 1);
    glp_set_obj_coef(p_, c, cost);
    glp_set_col_kind(p_, c, kind);
    if (highest > 0) {
      glp_set_col_bnds(p_, c, GLP_DB, 0, highest);
    } else {
      glp_set_col_bnds(p_, c, GLP_LO, 0, 0);
    }
    return c;
  }
  void row(int type, double lowest, double highest, const std::vector<std::pair<int, double>>& of) {
    const int r = glp_add_rows(p_, 1);
    glp_set_row_bnds(p_, r, type, lowest, highest);
    std::vector<int> index{0};
    std::vector<double> value{0};
    for (const auto& [c, v] : of) {
      index.push_back(c);
      value.push_back(v);
    }
    glp_set_mat_row(p_, r, static_cast<int>(of.size()), index.data(), value.data());
  }
  void build() {
    std::vector<std::vector<std::pair<int, double>>> all(widths_.size());
    const auto trim = static_cast<double>(task_.trim);
    for (const auto length : task_.coils) {
      const auto whole = static_cast<double>(length);
      const auto room = static_cast<double>(length - task_.trim + task_.kerf);
      const auto kept = static_cast<double>(length - task_.trim - task_.least_kept);
      if (room < 0) continue;
      std::vector<std::pair<int, double>> taken;
      for (std::size_t k = 0; k < widths_.size(); ++k) {
        const int x = column(0, static_cast<double>(counts_[k]), GLP_IV);
        all[k].emplace_back(x, 1.0);
        taken.emplace_back(x, static_cast<double>(widths_[k]));
      }
      const bool used = task_.aim == CutAim::used;
      const int y = column(used ? 0.0 : whole, 1, GLP_BV);
      auto holds = taken;
      holds.emplace_back(y, -room);
      if (used) {
        const int z = column(0, 1, GLP_BV);
        const int c = column(1, 0, GLP_CV);
        holds.emplace_back(z, -kept);
        row(GLP_UP, 0, 1, {{y, 1.0}, {z, 1.0}});
        row(GLP_LO, 0, 0, {{c, 1.0}, {y, -whole}});
        auto cost = taken;
        for (auto& [x, v] : cost) v = -v;
        cost.emplace_back(c, 1.0);
        cost.emplace_back(y, -trim);
        cost.emplace_back(z, -trim);
        row(GLP_LO, 0, 0, cost);
      }
      row(GLP_UP, 0, 0, holds);
    }
    for (std::size_t k = 0; k < widths_.size(); ++k) {
      if (all[k].empty()) all[k].emplace_back(column(0, 1e-9, GLP_CV), 1.0);
      row(GLP_FX, static_cast<double>(counts_[k]), static_cast<double>(counts_[k]), all[k]);
    }
  }
  const CutTask& task_;
  glp_prob* p_;
  std::vector<std::int64_t> widths_;
  std::vector<int> counts_;
};

void against_the_library(const char* id, const Sizes& sizes, CutAim aim, int instances,
                         std::uint64_t seed) {
  std::mt19937_64 g{seed};
  int possible = 0;
  int agree = 0;
  for (int i = 0; i < instances; ++i) {
    const CutTask task = make(g, sizes, aim);
    const auto expected = Model(task).least();
    const CutSolution got = solve(task, {});
    SCOPED_TRACE(
        fmt::format("instance {}: {} pieces, {} coils", i, task.pieces.size(), task.coils.size()));
    expect_sound(task, got);
    EXPECT_TRUE(got.decided);
    ASSERT_EQ(got.complete, expected.has_value());
    if (!expected) continue;
    ++possible;
    EXPECT_TRUE(got.proved);
    EXPECT_EQ(got.total, *expected);
    if (got.proved && got.total == *expected) ++agree;
  }
  wm::test::check({"cut-plan", id, "GLPK 5.0, glp_intopt, assignment model",
                   fmt::format("{} equal least totals", possible), static_cast<double>(possible),
                   static_cast<double>(agree), 0.0, "whole numbers"});
  EXPECT_GT(possible, instances / 3) << "too few of these can be cut at all";
}

constexpr Sizes k_ample{4, 9, 3, 6, 8, 60, 60, 160};
constexpr Sizes k_scarce{5, 9, 3, 4, 15, 60, 80, 140};
constexpr Sizes k_bought{6, 10, 5, 7, 20, 60, 90, 110, true};
// Equal coils with either use cost the library minutes; fewer of them, seconds.
constexpr Sizes k_bought_few{4, 8, 4, 4, 20, 60, 90, 110, true};

TEST(CutPlanAgainstGlpk, LeastOpenedFromAmpleStock) {
  against_the_library("least opened, ample stock", k_ample, CutAim::opened, 60, 11);
}
TEST(CutPlanAgainstGlpk, LeastOpenedFromScarceStock) {
  against_the_library("least opened, scarce stock", k_scarce, CutAim::opened, 60, 12);
}
TEST(CutPlanAgainstGlpk, LeastOpenedFromBoughtLengths) {
  against_the_library("least opened, coils of one length", k_bought, CutAim::opened, 40, 13);
}
TEST(CutPlanAgainstGlpk, LeastUsedFromAmpleStock) {
  against_the_library("least used, ample stock", k_ample, CutAim::used, 60, 21);
}
TEST(CutPlanAgainstGlpk, LeastUsedFromScarceStock) {
  against_the_library("least used, scarce stock", k_scarce, CutAim::used, 60, 22);
}
TEST(CutPlanAgainstGlpk, LeastUsedFromBoughtLengths) {
  against_the_library("least used, coils of one length", k_bought_few, CutAim::used, 40, 23);
}

std::int64_t total_of_first_fit(const CutTask& task) {
  const auto plan = first_fit_decreasing(task);
  const bool all = std::find(plan.begin(), plan.end(), k_not_cut) == plan.end();
  return all ? total_of(task, plan) : -1;
}

/// One unit is 1/100 in: a workshop's own sizes, with the steps cut short.
constexpr Sizes k_workshop{5, 30, 2, 10, 600, 6000, 6000, 30000};
const CutEffort k_short{20'000, {}};

TEST(CutPlanLaws, NeverMoreThanFirstFitDecreasingOnAThousand) {
  std::mt19937_64 g{31};
  int compared = 0;
  int better = 0;
  for (int i = 0; i < 1000; ++i) {
    Sizes sizes = k_workshop;
    sizes.alike = i % 3 == 0;
    const CutTask task = make(g, sizes, i % 2 == 0 ? CutAim::used : CutAim::opened);
    const CutSolution got = solve(task, k_short);
    SCOPED_TRACE(i);
    expect_sound(task, got);
    const std::int64_t other = total_of_first_fit(task);
    if (other < 0) continue;
    ASSERT_TRUE(got.complete);
    ASSERT_LE(got.total, other);
    ++compared;
    if (got.total < other) ++better;
  }
  RecordProperty("compared", compared);
  RecordProperty("better", better);
  EXPECT_GT(compared, 400);
  EXPECT_GT(better, 100);
}

TEST(CutPlanLaws, TheOrderOfTheInputDoesNotMatter) {
  std::mt19937_64 g{41};
  for (int i = 0; i < 100; ++i) {
    const CutTask task = make(g, k_ample, i % 2 == 0 ? CutAim::used : CutAim::opened);
    CutTask other = task;
    for (std::size_t k = other.pieces.size(); k > 1; --k) {
      std::swap(other.pieces[k - 1], other.pieces[g() % k]);
    }
    for (std::size_t k = other.coils.size(); k > 1; --k) {
      const auto j = g() % k;
      std::swap(other.coils[k - 1], other.coils[j]);
      std::swap(other.places[k - 1], other.places[j]);
    }
    const auto a = solve(task, {});
    const auto b = solve(other, {});
    ASSERT_EQ(a.total, b.total) << i;
    ASSERT_EQ(a.left_over.size(), b.left_over.size()) << i;
  }
}

TEST(CutPlanLaws, AnotherCoilNeverCostsMoreAndAnotherPieceNeverLess) {
  std::mt19937_64 g{51};
  for (int i = 0; i < 100; ++i) {
    const CutTask task = make(g, k_ample, i % 2 == 0 ? CutAim::used : CutAim::opened);
    const auto before = solve(task, {});
    CutTask more = task;
    more.coils.push_back(draw(g, 60, 160));
    more.places.push_back(static_cast<std::int64_t>(more.coils.size()));
    const auto with_coil = solve(more, {});
    ASSERT_LE(with_coil.left_over.size(), before.left_over.size()) << i;
    if (before.complete) {
      ASSERT_LE(with_coil.total, before.total) << i;
    }
    CutTask longer = task;
    longer.pieces.push_back(draw(g, 8, 60));
    const auto with_piece = solve(longer, {});
    if (before.complete && with_piece.complete) {
      ASSERT_GE(with_piece.total, before.total) << i;
    }
  }
}

TEST(CutPlanLaws, TheBoundOfAShortSearchHoldsForALongOne) {
  std::mt19937_64 g{71};
  int open = 0;
  for (int i = 0; i < 60; ++i) {
    const Sizes sizes{10, 16, 4, 8, 600, 5000, 3000, 20000, i % 4 == 0};
    const CutTask task = make(g, sizes, i % 2 == 0 ? CutAim::used : CutAim::opened);
    const auto brief = solve(task, {300, {}});
    const auto full = solve(task, {2'000'000, {}});
    if (!full.complete || !brief.complete) continue;
    SCOPED_TRACE(i);
    expect_sound(task, brief);
    ASSERT_LE(brief.bound, full.total);
    ASSERT_LE(full.bound, full.total);
    ASSERT_LE(full.total, brief.total);
    ASSERT_LE(brief.bound, full.bound);
    if (!brief.proved) ++open;
  }
  EXPECT_GT(open, 5) << "the short search should leave something open";
}

/// All plans there are, by trying each piece in each coil and left over.
struct Tried {
  std::size_t left{};
  std::int64_t total{};
  std::int64_t places{};
  std::int64_t coils{};
  [[nodiscard]] auto key() const { return std::tie(left, total, places, coils); }
};
Tried best_of_all(const CutTask& task) {
  std::optional<Tried> best;
  std::vector<int> plan(task.pieces.size(), k_not_cut);
  std::vector<std::int64_t> length(task.coils.size());
  std::vector<std::int64_t> count(task.coils.size());
  const auto look = [&] {
    Tried t;
    t.left = static_cast<std::size_t>(std::count(plan.begin(), plan.end(), k_not_cut));
    t.total = total_of(task, plan);
    for (std::size_t c = 0; c < count.size(); ++c) {
      if (count[c] == 0) continue;
      t.places += task.places[c];
      ++t.coils;
    }
    if (!best || t.key() < best->key()) best = t;
  };
  const auto put = [&](const auto& self, std::size_t i) -> void {
    if (i == plan.size()) {
      look();
      return;
    }
    plan[i] = k_not_cut;
    self(self, i + 1);
    for (std::size_t c = 0; c < count.size(); ++c) {
      if (!fits(task, task.coils[c], length[c] + task.pieces[i], count[c] + 1)) continue;
      length[c] += task.pieces[i];
      ++count[c];
      plan[i] = static_cast<int>(c);
      self(self, i + 1);
      length[c] -= task.pieces[i];
      --count[c];
    }
    plan[i] = k_not_cut;
  };
  put(put, 0);
  return *best;
}

// The shortest pieces are those cut, so the total may differ from that of another set as large:
// totals and order are compared where every piece is cut.
TEST(CutPlanLaws, AsManyPiecesAndTheOrderLikeTryingEverything) {
  std::mt19937_64 g{61};
  int partly = 0;
  int whole = 0;
  for (int i = 0; i < 300; ++i) {
    const Sizes sizes{3, 6, 2, 3, 8, 40, 30, 90, i % 3 == 0};
    const CutTask task = make(g, sizes, i % 2 == 0 ? CutAim::used : CutAim::opened);
    const Tried expected = best_of_all(task);
    const auto got = solve(task, {});
    SCOPED_TRACE(i);
    expect_sound(task, got);
    ASSERT_TRUE(got.decided && got.proved && got.order_proved);
    ASSERT_EQ(got.left_over.size(), expected.left);
    if (!got.complete) {
      ++partly;
      continue;
    }
    ++whole;
    ASSERT_EQ(got.total, expected.total);
    std::vector<char> opened(task.coils.size(), 0);
    for (const int c : got.coil_of) opened[static_cast<std::size_t>(c)] = 1;
    std::int64_t places = 0;
    for (std::size_t c = 0; c < opened.size(); ++c) places += opened[c] != 0 ? task.places[c] : 0;
    ASSERT_EQ(places, expected.places);
    ASSERT_EQ(std::count(opened.begin(), opened.end(), 1), expected.coils);
  }
  EXPECT_GT(partly, 30);
  EXPECT_GT(whole, 100);
}

}  // namespace
