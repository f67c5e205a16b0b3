#include "electrics/circuit.hpp"

#include <fmt/core.h>

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <numeric>
#include <optional>
#include <set>

#include "electrics/detail/problem.hpp"

namespace wm::electrics {
namespace {

using detail::problem;
using Index = Eigen::Index;

/// Groups of nodes that are held together.
class Groups {
 public:
  explicit Groups(std::size_t count) : parent_(count) {
    std::iota(parent_.begin(), parent_.end(), std::size_t{0});
  }
  std::size_t root(std::size_t i) {
    while (parent_[i] != i) i = parent_[i] = parent_[parent_[i]];
    return i;
  }
  /// @return false when they were together already.
  bool join(std::size_t a, std::size_t b) {
    const std::size_t first = root(a);
    const std::size_t second = root(b);
    parent_[first] = second;
    return first != second;
  }

 private:
  std::vector<std::size_t> parent_;
};

/// Its voltage is fixed whatever its current: an ideal source, or a wire of no resistance.
bool is_ideal(const CircuitElement& e) {
  return e.kind == Branch::voltage_source ? e.internal_ohm == 0.0
                                          : e.kind == Branch::resistor && e.value == 0.0;
}

bool has_own_current(const CircuitElement& e) {
  return e.kind == Branch::voltage_source || is_ideal(e);
}

std::string joined(const std::vector<std::string>& names) {
  std::string all;
  for (const auto& name : names) all += (all.empty() ? "" : ", ") + name;
  return all;
}

class Network {
 public:
  Network(std::span<const CircuitElement> elements, std::string_view ground)
      : elements_(elements), ground_name_(ground) {}

  Result<SolvedCircuit> run() {
    if (auto p = read()) return Fail(*p);
    if (auto p = check_ground()) return Fail(*p);
    if (auto p = check_ideal_loops()) return Fail(*p);
    assemble();
    return answer();
  }

 private:
  std::optional<Problem> bad_element(std::size_t i) {
    const CircuitElement& e = elements_[i];
    const std::string path = fmt::format("elements/{}", i);
    if (e.name.empty()) return problem(path + "/name", Kind::missing, "an element has no name");
    if (!names_.insert(e.name).second) {
      return problem(path + "/name", Kind::duplicate,
                     fmt::format("two elements are called `{}`", e.name), "a name of its own");
    }
    if (e.from.empty() || e.to.empty()) {
      return problem(path + (e.from.empty() ? "/from" : "/to"), Kind::missing,
                     fmt::format("`{}` has an end without a node", e.name));
    }
    const bool figures = std::isfinite(e.value) && std::isfinite(e.internal_ohm);
    const bool negative = (e.kind == Branch::resistor && e.value < 0.0) || e.internal_ohm < 0.0;
    if (!figures || negative) {
      return problem(path + "/value", Kind::out_of_bounds,
                     fmt::format("`{}`: {}", e.name,
                                 figures ? "a resistance below 0" : "a value that is no number"),
                     "a finite value; resistances 0 or more");
    }
    return std::nullopt;
  }

  std::size_t node(const std::string& name) {
    const auto [at, fresh] = index_.try_emplace(name, nodes_.size());
    if (fresh) nodes_.push_back(name);
    return at->second;
  }

  std::optional<Problem> read() {
    if (elements_.empty()) {
      return problem("elements", Kind::missing, "there is no element", "a source and a resistor");
    }
    for (std::size_t i = 0; i < elements_.size(); ++i) {
      if (auto p = bad_element(i)) return p;
      from_.push_back(node(elements_[i].from));
      to_.push_back(node(elements_[i].to));
    }
    const auto ground = index_.find(ground_name_);
    if (ground == index_.end()) {
      return problem("ground", Kind::not_found,
                     fmt::format("no element ends at the ground node `{}`", ground_name_),
                     "one of: " + joined(nodes_));
    }
    ground_ = ground->second;
    return std::nullopt;
  }

  /// A node hangs in the air when nothing but current sources ties it to the ground.
  std::optional<Problem> check_ground() {
    Groups groups(nodes_.size());
    for (std::size_t i = 0; i < elements_.size(); ++i) {
      if (elements_[i].kind != Branch::current_source) groups.join(from_[i], to_[i]);
    }
    std::vector<std::string> floating;
    for (std::size_t n = 0; n < nodes_.size(); ++n) {
      if (groups.root(n) != groups.root(ground_)) floating.push_back(nodes_[n]);
    }
    if (floating.empty()) return std::nullopt;
    return problem("elements", Kind::not_applicable,
                   fmt::format("floating: no resistor or source ties {} to the ground `{}`",
                               joined(floating), ground_name_),
                   "a path from every node to the ground");
  }

  /// Ideal sources and wires in a ring: their current, or even their voltage, is not settled.
  std::optional<Problem> check_ideal_loops() {
    Groups groups(nodes_.size());
    std::vector<std::size_t> ideal;
    for (std::size_t i = 0; i < elements_.size(); ++i) {
      if (!is_ideal(elements_[i])) continue;
      ideal.push_back(i);
      if (groups.join(from_[i], to_[i])) continue;
      return problem(
          "elements", Kind::not_applicable,
          fmt::format("a loop of ideal sources and wires of 0 ohm: {}", joined(ring(ideal, i))),
          "an internal resistance in at least one of them");
    }
    return std::nullopt;
  }

  /// Elements of the ring that `last` closes: ends with one neighbour are cut off until none is.
  std::vector<std::string> ring(std::vector<std::size_t> ideal, std::size_t last) const {
    if (from_[last] == to_[last]) return {elements_[last].name};
    bool cut = true;
    while (cut) {
      std::map<std::size_t, int> ends;
      for (const std::size_t i : ideal) {
        ++ends[from_[i]];
        ++ends[to_[i]];
      }
      const auto gone = std::remove_if(ideal.begin(), ideal.end(), [&](std::size_t i) {
        return ends[from_[i]] < 2 || ends[to_[i]] < 2;
      });
      cut = gone != ideal.end();
      ideal.erase(gone, ideal.end());
    }
    std::vector<std::string> names;
    for (const std::size_t i : ideal) names.push_back(elements_[i].name);
    return names;
  }

  /// Row of a node; nothing for the ground.
  std::optional<Index> row(std::size_t n) const {
    if (n == ground_) return std::nullopt;
    return static_cast<Index>(n > ground_ ? n - 1 : n);
  }

  void add(std::optional<Index> r, std::optional<Index> c, double value) {
    if (r && c) matrix_(*r, *c) += value;
  }

  void assemble() {
    const auto own = std::count_if(elements_.begin(), elements_.end(), has_own_current);
    const auto size = static_cast<Index>(nodes_.size()) - 1 + static_cast<Index>(own);
    matrix_ = Eigen::MatrixXd::Zero(size, size);
    right_ = Eigen::VectorXd::Zero(size);
    auto next = static_cast<Index>(nodes_.size()) - 1;
    for (std::size_t i = 0; i < elements_.size(); ++i) {
      const auto from = row(from_[i]);
      const auto to = row(to_[i]);
      own_.push_back(has_own_current(elements_[i]) ? std::optional(next++) : std::nullopt);
      if (own_[i]) {
        stamp_branch(elements_[i], from, to, *own_[i]);
      } else if (elements_[i].kind == Branch::resistor) {
        const double siemens = 1.0 / elements_[i].value;
        add(from, from, siemens);
        add(to, to, siemens);
        add(from, to, -siemens);
        add(to, from, -siemens);
      } else {
        if (from) right_(*from) -= elements_[i].value;
        if (to) right_(*to) += elements_[i].value;
      }
    }
  }

  /// v(from) - v(to) - r i = E, and i leaves `from` and enters `to`.
  void stamp_branch(const CircuitElement& e, std::optional<Index> from, std::optional<Index> to,
                    Index own) {
    add(from, own, 1.0);
    add(to, own, -1.0);
    add(own, from, 1.0);
    add(own, to, -1.0);
    if (e.kind == Branch::voltage_source) {
      matrix_(own, own) -= e.internal_ohm;
      right_(own) = e.value;
    }
  }

  /// Rows and columns are scaled first: milliohms stand beside megohms.
  Eigen::VectorXd unknowns() const {
    Eigen::VectorXd scale = matrix_.rowwise().lpNorm<Eigen::Infinity>();
    scale = scale.cwiseSqrt().cwiseInverse();
    const Eigen::MatrixXd scaled = scale.asDiagonal() * matrix_ * scale.asDiagonal();
    const Eigen::PartialPivLU<Eigen::MatrixXd> factors(scaled);
    const auto solved = [&](const Eigen::VectorXd& b) -> Eigen::VectorXd {
      return scale.asDiagonal() * factors.solve(scale.asDiagonal() * b);
    };
    Eigen::VectorXd x = solved(right_);
    x += solved(right_ - matrix_ * x);  // one step of refinement takes off the rounding
    return x;
  }

  Result<SolvedCircuit> answer() const {
    SolvedCircuit out;
    if (matrix_.rows() == 0) return finish(out, {});
    const Eigen::VectorXd x = unknowns();
    // Against the size of the terms of each equation: what rounding alone could leave.
    const Eigen::VectorXd rest = (matrix_ * x - right_).cwiseAbs();
    const Eigen::VectorXd terms = matrix_.cwiseAbs() * x.cwiseAbs() + right_.cwiseAbs();
    constexpr double k_good = 1e-9;
    for (Index i = 0; i < rest.size(); ++i) {
      if (terms(i) > 0.0) out.residual = std::max(out.residual, rest(i) / terms(i));
    }
    if (!x.allFinite() || !matrix_.allFinite() || !(out.residual < k_good)) {
      return Fail(problem("elements", Kind::not_applicable,
                          "the equations cannot be solved: values too far apart",
                          "resistances between about 1e-9 and 1e12 ohm"));
    }
    return finish(out, x);
  }

  SolvedCircuit finish(SolvedCircuit out, const Eigen::VectorXd& x) const {
    const auto volts = [&](std::size_t n) {
      const auto r = row(n);
      return r ? x(*r) : 0.0;
    };
    for (std::size_t n = 0; n < nodes_.size(); ++n) out.nodes.push_back({nodes_[n], volts(n)});
    for (std::size_t i = 0; i < elements_.size(); ++i) {
      const CircuitElement& e = elements_[i];
      BranchState b;
      b.name = e.name;
      b.volts = volts(from_[i]) - volts(to_[i]);
      if (own_[i]) {
        b.amperes = x(*own_[i]);
      } else {
        b.amperes = e.kind == Branch::resistor ? b.volts / e.value : e.value;
      }
      out.branches.push_back(std::move(b));
    }
    return out;
  }

  std::span<const CircuitElement> elements_;
  std::string ground_name_;
  std::set<std::string> names_;
  std::map<std::string, std::size_t> index_;
  std::vector<std::string> nodes_;
  std::vector<std::size_t> from_, to_;
  std::vector<std::optional<Index>> own_;
  std::size_t ground_{};
  Eigen::MatrixXd matrix_;
  Eigen::VectorXd right_;
};

}  // namespace

Result<SolvedCircuit> solve(std::span<const CircuitElement> elements, std::string_view ground) {
  return Network(elements, ground).run();
}

Result<double> voltage_at(const SolvedCircuit& solved, std::string_view node) {
  std::vector<std::string> there;
  for (const NodeVoltage& n : solved.nodes) {
    if (n.node == node) return n.volts;
    there.push_back(n.node);
  }
  return Fail(problem("node", Kind::not_found, fmt::format("there is no node `{}`", node),
                      "one of: " + joined(there)));
}

Result<BranchState> branch_of(const SolvedCircuit& solved, std::string_view name) {
  std::vector<std::string> there;
  for (const BranchState& b : solved.branches) {
    if (b.name == name) return b;
    there.push_back(b.name);
  }
  return Fail(problem("name", Kind::not_found, fmt::format("there is no element `{}`", name),
                      "one of: " + joined(there)));
}

}  // namespace wm::electrics
