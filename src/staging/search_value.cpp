#include "staging/search_value.hpp"

#include <algorithm>
#include <numeric>

namespace wm::staging {
namespace {

double sum_of(std::span<const Place> places) {
  return std::accumulate(places.begin(), places.end(), 0.0,
                         [](double sum, const Place& p) { return sum + p.chance; });
}

/// Places weighed with the chance of an outcome in each.
std::vector<Place> weighed(std::span<const Place> places, std::span<const double> by,
                           bool positive) {
  std::vector<Place> out(places.begin(), places.end());
  for (std::size_t i = 0; i < out.size(); ++i) out[i].chance *= positive ? by[i] : 1.0 - by[i];
  return out;
}

}  // namespace

std::vector<std::size_t> best_order(std::span<const Place> places) {
  std::vector<std::size_t> order(places.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  // chance / cost, without dividing by a cost of nothing
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    const bool some_a = places[a].chance > 0.0;
    const bool some_b = places[b].chance > 0.0;
    if (!some_a || !some_b) return some_a && !some_b;
    return places[a].chance * places[b].cost > places[b].chance * places[a].cost;
  });
  return order;
}

double search_cost(std::span<const Place> places) {
  const double all = sum_of(places);
  if (!(all > 0.0)) return 0.0;
  double paid = 0.0;
  double cost = 0.0;
  for (const std::size_t i : best_order(places)) {
    paid += places[i].cost;
    cost += places[i].chance / all * paid;
  }
  return cost;
}

TestValue test_value(std::span<const Place> places, std::span<const double> positive_if) {
  const double all = sum_of(places);
  const auto plus = weighed(places, positive_if, true);
  const auto minus = weighed(places, positive_if, false);
  TestValue out;
  out.positive = sum_of(plus) / all;
  out.cost_after = out.positive * search_cost(plus) + (1.0 - out.positive) * search_cost(minus);
  const double now = search_cost(places);
  out.worth_at_most = std::max(0.0, now - out.cost_after);
  double known = 0.0;
  for (const Place& p : places) known += p.chance / all * p.cost;
  out.perfect = now - known;
  return out;
}

}  // namespace wm::staging
