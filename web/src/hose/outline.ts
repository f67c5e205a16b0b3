/// Outlines of tubes, fittings and solids in a view, as paths.

import { add, corners, dot, size, sub, times, turned, unit, vec, type Vec } from "./space";
import { inPaper, onPaper, type Placed, type Spot2 } from "./views";
import type { End, Solid } from "./drawn";
import { around, type Place } from "./labels";

const r = (n: number): string => String(Math.round(n * 10) / 10);

export function line(points: Spot2[], closed = false): string {
  return points.length === 0 ? "" : `M${points.map((p) => `${r(p.x)} ${r(p.y)}`).join("L")}${closed ? "Z" : ""}`;
}

/// A round piece from `a` to `b`: its outline, and the ring of the face that is seen.
export interface Piece {
  depth: number;
  outline: string;
  face: string;
  /// Edges of a hexagon, seen from the side.
  flats: string;
}

export function round(p: Placed, a: Vec, b: Vec, radius: number, hexagon = false): Piece {
  const axis = unit(sub(b, a)) ?? p.view.towards;
  const flat = inPaper(p.view, axis);
  const R = radius * p.scale;
  const facing = dot(axis, p.view.towards);
  const squash = Math.min(1, Math.abs(facing)) * R;
  const from = onPaper(p, a);
  const to = onPaper(p, b);
  const w = { x: -flat.y, y: flat.x };
  const tilt = (Math.atan2(w.y, w.x) * 180) / Math.PI;
  const off = (s: Spot2, sign: number): string => `${r(s.x + sign * w.x * R)} ${r(s.y + sign * w.y * R)}`;
  const arc = (sweep: 0 | 1, end: string): string => `A${r(R)} ${r(squash)} ${r(tilt)} 0 ${sweep} ${end}`;
  const outline = `M${off(from, 1)}L${off(to, 1)}${arc(0, off(to, -1))}L${off(from, -1)}${arc(0, off(from, 1))}Z`;
  const seen = facing > 0 ? to : from;
  const face = squash < 0.6 ? `M${off(seen, 1)}L${off(seen, -1)}` : `M${off(seen, 1)}${arc(1, off(seen, -1))}${arc(1, off(seen, 1))}Z`;
  const edge = (sign: number): string => `M${r(from.x + sign * 0.5 * w.x * R)} ${r(from.y + sign * 0.5 * w.y * R)}L${r(to.x + sign * 0.5 * w.x * R)} ${r(to.y + sign * 0.5 * w.y * R)}`;
  return {
    depth: dot(add(a, b), p.view.towards) / 2, outline, face,
    flats: hexagon && flat.share > 0.5 ? edge(1) + edge(-1) : "",
  };
}

export interface FittingOutline {
  pieces: Piece[];
  /// An elbow's bent tube, drawn as a thick line.
  bend?: { points: Spot2[]; width: number };
  /// From the seat to where the hose can bend, for what a thumb can hit.
  spine: Spot2[];
}

/// Drawn from what was entered: the rigid length is true, the rest in proportion to the hose.
export function fitting(p: Placed, end: End, hose: number): FittingOutline {
  const along = (from: Vec, way: Vec, d: number): Vec => add(from, times(way, d));
  const first = end.port ?? end.way;
  const rigid = Math.max(end.rigid, hose * 1.2);
  const nutRadius = end.male ? 0.95 * hose : 1.3 * hose;
  const pieces: Piece[] = [];
  if (end.port && end.corner) {
    const drop = size(sub(end.corner, end.seat));
    const nut = along(end.seat, first, Math.min(0.55 * Math.max(drop, hose), 1.4 * hose));
    const reach = Math.min(0.45 * rigid, Math.max(0.2 * hose, drop * 0.45));
    const start = along(end.corner, first, -Math.min(reach, drop * 0.45));
    const stop = along(end.corner, end.way, reach);
    const bent = Array.from({ length: 9 }, (_, i) => {
      const t = i / 8;
      return add(add(times(start, (1 - t) * (1 - t)), times(end.corner!, 2 * t * (1 - t))), times(stop, t * t));
    });
    const socket = along(end.corner, end.way, Math.max(reach, 0.4 * rigid));
    const mouth = along(end.corner, end.way, rigid);
    pieces.push(round(p, end.seat, nut, nutRadius, true), round(p, socket, mouth, 1.15 * hose));
    pieces.sort((a, b) => a.depth - b.depth);
    return {
      pieces,
      bend: { points: [end.seat, ...bent, socket].map((v) => onPaper(p, v)), width: 1.5 * hose * p.scale },
      spine: [end.seat, end.corner, mouth].map((v) => onPaper(p, v)),
    };
  }
  const nut = along(end.seat, first, 0.4 * rigid);
  const neck = along(end.seat, first, 0.5 * rigid);
  const mouth = along(end.seat, first, rigid);
  pieces.push(round(p, end.seat, nut, nutRadius, !end.male), round(p, nut, neck, 0.85 * hose), round(p, neck, mouth, 1.15 * hose));
  pieces.sort((a, b) => a.depth - b.depth);
  return { pieces, spine: [end.seat, mouth].map((v) => onPaper(p, v)) };
}

/// The circle that touches the tightest bend: an arc of it around the place, as far as there is
/// room on the paper; the whole circle where it is small.
export function bendCircle(at: Vec, centre: Vec, square: Vec, half: number): Vec[] {
  const steps = 48;
  const from = sub(at, centre);
  return Array.from({ length: steps + 1 }, (_, i) => add(centre, turned(from, square, -half + (2 * half * i) / steps)));
}

export interface SolidOutline {
  name: string;
  outline: string;
  /// A thick line whose two edges are the outline (tubes).
  thick?: { points: Spot2[]; width: number };
  hatched?: string;
  /// What words must not cover, and where its name may stand.
  edges: Spot2[];
  reach: number;
  places: Place[];
}

export function solid(p: Placed, s: Solid, cell: { x: number; y: number; w: number; h: number }): SolidOutline | undefined {
  switch (s.is) {
    case "ball": {
      const c = onPaper(p, s.centre);
      const R = s.radius * p.scale;
      return { name: s.name, outline: `M${r(c.x - R)} ${r(c.y)}a${r(R)} ${r(R)} 0 1 0 ${r(2 * R)} 0a${r(R)} ${r(R)} 0 1 0 ${r(-2 * R)} 0Z`, edges: ring(c, R), reach: 3, places: [...(R > 40 ? [{ x: c.x, y: c.y + 4, anchor: "middle" as const }] : []), ...around(c, [R + 6, R + 16, R + 30])] };
    }
    case "tube": {
      const points = [s.from, s.to].map((v) => onPaper(p, v));
      const [a, b] = points as [Spot2, Spot2];
      return { name: s.name, outline: "", thick: { points, width: 2 * s.radius * p.scale }, edges: points, reach: s.radius * p.scale + 2, places: [a, b, { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }].flatMap((q) => around(q, [s.radius * p.scale + 6, s.radius * p.scale + 18])) };
    }
    case "box": {
      const low = sub(s.centre, s.half);
      const high = add(s.centre, s.half);
      const hull = hullOf(corners({ low, high }).map((v) => onPaper(p, v)));
      const c = onPaper(p, s.centre);
      // The edges that meet in the corner nearest to the eye.
      const t = p.view.towards;
      const sign = (n: number): number => (n >= 0 ? 1 : -1);
      const nearest = vec(s.centre.x + sign(t.x) * s.half.x, s.centre.y + sign(t.y) * s.half.y, s.centre.z + sign(t.z) * s.half.z);
      const edges = [vec(-2 * sign(t.x) * s.half.x, 0, 0), vec(0, -2 * sign(t.y) * s.half.y, 0), vec(0, 0, -2 * sign(t.z) * s.half.z)]
        .map((d) => line([nearest, add(nearest, d)].map((v) => onPaper(p, v)))).join("");
      return { name: s.name, outline: line(hull, true) + edges, edges: [...hull, hull[0]!], reach: 3, places: [{ x: c.x, y: c.y + 4, anchor: "middle" }, ...hull.flatMap((q) => around(q, [8, 18])), ...around(c, [40, 60])] };
    }
    case "wall": {
      // Only its edge can be drawn as a line: seen from the front it covers the paper.
      const flat = inPaper(p.view, s.free);
      if (flat.share < 0.9) return undefined;
      const q = onPaper(p, s.point);
      const reach = cell.w + cell.h;
      const a = { x: q.x - flat.y * reach, y: q.y + flat.x * reach };
      const b = { x: q.x + flat.y * reach, y: q.y - flat.x * reach };
      const cut = clip(a, b, cell);
      if (!cut) return undefined;
      const [c, d] = cut;
      const ticks: string[] = [];
      const length = Math.hypot(d.x - c.x, d.y - c.y);
      for (let k = 6; k < length; k += 12) {
        const m = { x: c.x + ((d.x - c.x) * k) / length, y: c.y + ((d.y - c.y) * k) / length };
        ticks.push(line([m, { x: m.x - 7 * flat.x + 5 * flat.y, y: m.y - 7 * flat.y - 5 * flat.x }]));
      }
      return { name: s.name, outline: line([c, d]), hatched: ticks.join(""), edges: [c, d], reach: 3, places: [0.12, 0.3, 0.5, 0.7, 0.88].flatMap((t) => around({ x: c.x + (d.x - c.x) * t, y: c.y + (d.y - c.y) * t }, [14, 24])) };
    }
  }
}

/// The part of a line inside a cell.
export function clip(a: Spot2, b: Spot2, cell: { x: number; y: number; w: number; h: number }): [Spot2, Spot2] | undefined {
  let t0 = 0;
  let t1 = 1;
  const d = { x: b.x - a.x, y: b.y - a.y };
  for (const [p, q] of [[-d.x, a.x - cell.x], [d.x, cell.x + cell.w - a.x], [-d.y, a.y - cell.y], [d.y, cell.y + cell.h - a.y]] as [number, number][]) {
    if (Math.abs(p) < 1e-9) {
      if (q < 0) return undefined;
    } else if (p < 0) t0 = Math.max(t0, q / p);
    else t1 = Math.min(t1, q / p);
  }
  if (t0 > t1) return undefined;
  return [{ x: a.x + t0 * d.x, y: a.y + t0 * d.y }, { x: a.x + t1 * d.x, y: a.y + t1 * d.y }];
}

function ring(c: Spot2, R: number): Spot2[] {
  return Array.from({ length: 13 }, (_, i) => ({ x: c.x + R * Math.cos((i * Math.PI) / 6), y: c.y + R * Math.sin((i * Math.PI) / 6) }));
}

function hullOf(points: Spot2[]): Spot2[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (list: Spot2[]): Spot2[] => {
    const out: Spot2[] = [];
    for (const p of list) {
      while (out.length >= 2 && turnOf(out[out.length - 2]!, out[out.length - 1]!, p) <= 0) out.pop();
      out.push(p);
    }
    out.pop();
    return out;
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

const turnOf = (a: Spot2, b: Spot2, c: Spot2): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
