/// The views of the sheet: which way each looks, and where a point of the aircraft is drawn.

import { add, cross, dot, times, unit, vec, type Vec } from "./space";

export type ViewName = "side" | "front" | "top" | "turned";

/// `right` and `up` on the paper, `towards` the one who looks; a right-handed set of unit vectors.
export interface View {
  name: ViewName;
  right: Vec;
  up: Vec;
  towards: Vec;
}

export const side: View = { name: "side", right: vec(1, 0, 0), up: vec(0, 0, 1), towards: vec(0, -1, 0) };
export const front: View = { name: "front", right: vec(0, -1, 0), up: vec(0, 0, 1), towards: vec(-1, 0, 0) };
export const top: View = { name: "top", right: vec(1, 0, 0), up: vec(0, 1, 0), towards: vec(0, 0, 1) };

export const viewWords: { [name in ViewName]: { name: string; how: string } } = {
  side: { name: "Side", how: "from the left, nose at the left" },
  front: { name: "Front", how: "from the nose" },
  top: { name: "Top", how: "from above, nose at the left" },
  turned: { name: "Turned", how: "any way you like" },
};

/// In degrees: 0 looks from the nose, 90 from the aircraft's left; up to 85 above or below.
export interface Turn {
  round: number;
  above: number;
}
export const homeTurn: Turn = { round: 40, above: 28 };

export function turnBy(turn: Turn, round: number, above: number): Turn {
  return {
    round: ((((turn.round + round + 180) % 360) + 360) % 360) - 180,
    above: Math.min(85, Math.max(-85, turn.above + above)),
  };
}

export function turnedView(turn: Turn): View {
  const a = (turn.round * Math.PI) / 180;
  const e = (turn.above * Math.PI) / 180;
  const towards = vec(-Math.cos(e) * Math.cos(a), -Math.cos(e) * Math.sin(a), Math.sin(e));
  const right = unit(cross(vec(0, 0, 1), towards)) ?? vec(1, 0, 0);
  return { name: "turned", right, up: cross(towards, right), towards };
}

export function turnWords(turn: Turn): string {
  const round = Math.round(turn.round);
  const above = Math.round(turn.above);
  const where = round === 0 ? "from the nose" : `${Math.abs(round)} degrees ${round > 0 ? "to the left" : "to the right"} of the nose`;
  return `Seen ${where}, ${above === 0 ? "level" : `${Math.abs(above)} degrees ${above > 0 ? "above" : "below"}`}`;
}

export interface Spot2 {
  x: number;
  y: number;
}

/// A view at a place on the paper: pixels for each millimetre, and where the middle is.
export interface Placed {
  view: View;
  scale: number;
  middle: Vec;
  at: Spot2;
}

export function onPaper(p: Placed, v: Vec): Spot2 {
  return {
    x: p.at.x + p.scale * (dot(v, p.view.right) - dot(p.middle, p.view.right)),
    y: p.at.y - p.scale * (dot(v, p.view.up) - dot(p.middle, p.view.up)),
  };
}

/// A way across the paper as a way in the aircraft: in the plane of the view, the third stays.
export function fromPaper(view: View, scale: number, dx: number, dy: number): Vec {
  return add(times(view.right, dx / scale), times(view.up, -dy / scale));
}

/// How much of a direction lies in the paper, 0 to 1, and which way it points there.
export function inPaper(view: View, way: Vec): { share: number; x: number; y: number } {
  const x = dot(way, view.right);
  const y = -dot(way, view.up);
  const share = Math.hypot(x, y);
  return share < 1e-6 ? { share: 0, x: 1, y: 0 } : { share, x: x / share, y: y / share };
}

/// Counter-clockwise on the paper, as seen by the one who looks.
export function angleOnPaper(from: Spot2, to: Spot2): number {
  return Math.atan2(-(to.y - from.y), to.x - from.x);
}
