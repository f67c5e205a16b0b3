#pragma once
/// How near a hose comes to things in every way that it can lie.
///
/// Over the positions of its ends, what pressure makes of its length and the pulls of its weight;
/// over every stable shape that the solver knows; and, between ends in line, over every side to
/// which it may bow: there nothing but friction chooses the side.

#include <map>
#include <string>
#include <vector>

#include "hose/chain.hpp"

namespace wm::hose {

struct ClearAsk {
  std::vector<Rod> positions;  ///< the nominal first; `length` in them does not matter
  std::vector<Support> supports;
  std::vector<double> stretches{1.0};
  std::vector<Vector> pulls;  ///< weight per length over EI, each by itself
  double outside_diameter{};
  std::vector<Solid> things;
};

struct Clearance {
  std::vector<Gap> least;     ///< of each thing; infinite where no state was looked at
  std::vector<Gap> as_drawn;  ///< the same of the shape that hose-shape draws, and its like
  int looked_at{};            ///< positions times stretches that were measured
  int restless{};             ///< of the rest: no stable shape was found
  int taut{};                 ///< of the rest: no slack
  bool taut_as_made{}, taut_shortened{};  ///< among these: with the ends where they were measured
  int snapped{};                          ///< pulls of weight under which no rest was found
  bool any_side{};                        ///< ends in line: it may bow to any side
  bool other_shapes{};                    ///< it can lie in another way as well

  /// The worse of two lengths, for a hose that may turn out as either.
  void add(const Clearance& other);

  /// What was left out, to end a sentence: "where it is taut (shortened under pressure)".
  [[nodiscard]] std::string left_out() const;
};

/// Whether friction alone chooses the side to which a shape bows.
///
/// For small slopes the bow of slack e has slope a = 2 sqrt(e). Ends that are parallel and offset
/// leave its energy the same to every side; an arch d of the ends, half the angle between their
/// directions, adds 4 d/a / pi (1 part in 16 at a/20) of the slack on one side and takes it on the
/// other. So: arch within a/20, directions within a/4 of the chord.
[[nodiscard]] bool bows_to_any_side(const Shape& shape);

/// One length after another. One thread at a time.
class Clearances {
 public:
  explicit Clearances(ClearAsk ask);
  /// @param afresh  looks for every stable shape at this length; else those found at the nearest
  ///                length before are followed, which is quicker by far
  /// @param pulled  the pulls of weight count too
  [[nodiscard]] Clearance at(double length, bool afresh, bool pulled);

 private:
  [[nodiscard]] const std::vector<Lie>& seeds(double length, bool afresh);
  [[nodiscard]] std::vector<Lie> ways(const Rod& rod, const std::vector<Support>& supports,
                                      const std::vector<Lie>& from);
  void measure(const Lie& lie, const Vector& pull, bool drawn, Clearance& out) const;

  ClearAsk ask_;
  std::map<double, std::vector<Lie>> found_;  ///< by length, the one that is drawn first
  RodSolver rods_{64};
  LieSolver lies_{64};
};

}  // namespace wm::hose
