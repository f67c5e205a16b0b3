#pragma once
/// The hose itself on its sheet: tube, end fittings, clamps, ghosts, tightest bend.

#include "drawing/detail/hose_pane.hpp"
#include "drawing/detail/hose_subject.hpp"

namespace wm::drawing::detail {

[[nodiscard]] Vector vector_of(const hose::Spot& spot);
[[nodiscard]] std::vector<Vector> centreline_of(const std::vector<hose::HosePoint>& points);

/// Pieces of one end fitting, simplified: nut, bent tube of an elbow, socket.
struct FittingDrawn {
  std::vector<Body> bodies;
  std::vector<Vector> tube;  ///< of an elbow
  double tube_radius{};
  std::vector<Vector> axis;  ///< seat, corner of an elbow, where the hose can bend
};
[[nodiscard]] FittingDrawn fitting(const hose::HoseEnd& end, double outside_diameter);

void draw_ghosts(Pane& pane, const Subject& subject);
void draw_hose(Pane& pane, const Subject& subject);
void draw_clamps(Pane& pane, const Subject& subject, bool named);

/// How well the tightest bend shows in a view: 1 flat on the paper, 0 edge on.
[[nodiscard]] double bend_shows(const Subject& subject, const View& view);
/// The inscribed circle, or its ellipse; with its radius where `with_radius`.
void draw_bend(Pane& pane, const Subject& subject, bool with_radius);

/// Around the hose with its fittings, ghosts and clamps, m.
[[nodiscard]] Extent hose_extent(const Subject& subject);

}  // namespace wm::drawing::detail
