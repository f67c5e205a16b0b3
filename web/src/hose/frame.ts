/// Where the views lie on the sheet: side below top, front at the left of side (third angle), the
/// turned one in the free corner; the three to one scale.

import { boundsOf, corners, dot, times, add, type Bounds, type Vec } from "./space";
import { front, side, top, turnedView, type Placed, type Turn, type View, type ViewName } from "./views";

export interface Cell {
  x: number;
  y: number;
  w: number;
  h: number;
}

export interface Laid {
  w: number;
  h: number;
  cells: { cell: Cell; placed: Placed }[];
}

/// Room around what is drawn, in pixels: handles and names; dimensions need more at two sides.
export interface Room {
  left: number;
  right: number;
  above: number;
  below: number;
}

const k_least_mm = 60;

/// Never flatter than a hand's breadth, so that a hose in one plane has a view too.
export function roomy(b: Bounds): Bounds {
  const grow = (low: number, high: number): [number, number] => {
    const lack = Math.max(0, k_least_mm - (high - low)) / 2;
    return [low - lack, high + lack];
  };
  const [lx, hx] = grow(b.low.x, b.high.x);
  const [ly, hy] = grow(b.low.y, b.high.y);
  const [lz, hz] = grow(b.low.z, b.high.z);
  return { low: { x: lx, y: ly, z: lz }, high: { x: hx, y: hy, z: hz } };
}

export const middleOf = (b: Bounds): Vec => times(add(b.low, b.high), 0.5);

/// How wide and high a box is in a view.
export function extent(view: View, b: Bounds): { w: number; h: number } {
  const all = corners(b);
  const span = (way: Vec): number => {
    const at = all.map((p) => dot(p, way));
    return Math.max(...at) - Math.min(...at);
  };
  return { w: span(view.right), h: span(view.up) };
}

function place(view: View, cell: Cell, room: Room, b: Bounds, scale: number): Placed {
  return {
    view, scale, middle: middleOf(b),
    at: { x: cell.x + (room.left + cell.w - room.right) / 2, y: cell.y + (room.above + cell.h - room.below) / 2 },
  };
}

function fit(view: View, cell: Cell, room: Room, b: Bounds): number {
  const e = extent(view, b);
  return Math.max(0.02, Math.min((cell.w - room.left - room.right) / e.w, (cell.h - room.above - room.below) / e.h));
}

/// All four on one sheet of this width, no higher than `most`.
export function fourViews(w: number, most: number, raw: Bounds, room: Room, turn: Turn): Laid {
  const b = roomy(raw);
  const dx = b.high.x - b.low.x;
  const dy = b.high.y - b.low.y;
  const dz = b.high.z - b.low.z;
  const across = room.left + room.right;
  const down = room.above + room.below;
  const scale = Math.max(0.02, Math.min((w - 2 * across) / (dx + dy), (most - 2 * down) / (dy + dz)));
  const spare = Math.max(0, w - 2 * across - scale * (dx + dy));
  const w1 = across + scale * dy + spare / 2;
  const w2 = w - w1;
  const h1 = down + scale * dy;
  const h2 = down + scale * dz;
  const at = (x: number, y: number, cw: number, ch: number): Cell => ({ x, y, w: cw, h: ch });
  const free = at(0, 0, w1, h1);
  const turnedOne = turnedView(turn);
  const close: Room = { left: 24, right: 24, above: 34, below: 30 };
  return {
    w, h: h1 + h2,
    cells: [
      { cell: free, placed: place(turnedOne, free, close, b, Math.min(scale, fitAllRound(free, close, b))) },
      ...([[top, at(w1, 0, w2, h1)], [front, at(0, h1, w1, h2)], [side, at(w1, h1, w2, h2)]] as [View, Cell][])
        .map(([view, cell]) => ({ cell, placed: place(view, cell, room, b, scale) })),
    ],
  };
}

/// Its size must not change while it is turned: the ball around the box fits.
function fitAllRound(cell: Cell, room: Room, b: Bounds): number {
  const d = Math.hypot(b.high.x - b.low.x, b.high.y - b.low.y, b.high.z - b.low.z);
  return Math.max(0.02, Math.min((cell.w - room.left - room.right) / d, (cell.h - room.above - room.below) / d) * 1.12);
}

/// One view, as large as the phone allows.
export function oneView(w: number, h: number, name: ViewName, raw: Bounds, room: Room, turn: Turn): Laid {
  const b = roomy(raw);
  const cell: Cell = { x: 0, y: 0, w, h };
  const views = { side, front, top, turned: turnedView(turn) };
  const view = views[name];
  const scale = name === "turned" ? fitAllRound(cell, room, b) : fit(view, cell, room, b);
  return { w, h, cells: [{ cell, placed: place(view, cell, room, b, scale) }] };
}

/// While something is dragged the paper stays; it is laid out anew when what is drawn has left it
/// or fills little of it.
export function stillFits(frame: Bounds, now: Bounds): boolean {
  const slack = 0.04 * Math.hypot(...(["x", "y", "z"] as const).map((k) => frame.high[k] - frame.low[k]));
  let used = 0;
  let held = 0;
  for (const k of ["x", "y", "z"] as const) {
    if (now.low[k] < frame.low[k] - slack || now.high[k] > frame.high[k] + slack) return false;
    used += now.high[k] - now.low[k];
    held += frame.high[k] - frame.low[k];
  }
  return used > 0.8 * held;
}

export function drawnBounds(points: Vec[]): Bounds {
  return boundsOf(points) ?? { low: { x: 0, y: 0, z: 0 }, high: { x: 300, y: 300, z: 150 } };
}
