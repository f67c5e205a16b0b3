/// Where words stand on a drawing: each takes the first of its places that is clear of the hose,
/// the fittings and the words before it.

import type { Spot2 } from "./views";

export type Anchor = "start" | "middle" | "end";

export interface Place extends Spot2 {
  anchor: Anchor;
}

interface Box {
  x0: number;
  y0: number;
  x1: number;
  y1: number;
}

const k_size = 13;
const k_wide = 0.58;
const k_farther = 0.12;

/// Room for `lines` of words, the first with its foot at `y`.
export function boxOf(words: string[], p: Place, size = k_size): Box {
  const w = Math.max(...words.map((t) => t.length)) * size * k_wide;
  const x0 = p.anchor === "start" ? p.x : p.anchor === "end" ? p.x - w : p.x - w / 2;
  return { x0, y0: p.y - size * 0.85, x1: x0 + w, y1: p.y + size * 0.25 + (words.length - 1) * size * 1.25 };
}

export class Words {
  private boxes: Box[] = [];
  private dots: (Spot2 & { r: number })[] = [];
  constructor(private cell: { x: number; y: number; w: number; h: number }) {}

  /// Something drawn that words must not cover.
  along(points: Spot2[], r: number): void {
    for (let i = 0; i < points.length; i++) {
      const a = points[i]!;
      const b = points[i + 1] ?? a;
      const n = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / Math.max(6, r)));
      for (let k = 0; k < n; k++) this.dots.push({ x: a.x + ((b.x - a.x) * k) / n, y: a.y + ((b.y - a.y) * k) / n, r });
    }
  }

  taken(words: string[], p: Place, size = k_size): void {
    this.boxes.push(boxOf(words, p, size));
  }

  /// Words that stand upright.
  block(middle: Spot2, w: number, h: number): void {
    this.boxes.push({ x0: middle.x - w / 2, y0: middle.y - h / 2, x1: middle.x + w / 2, y1: middle.y + h / 2 });
  }

  /// Nothing covered: 0; another word or the edge weighs more than a line.
  cost(box: Box): number {
    const { x, y, w, h } = this.cell;
    let sum = 0;
    if (box.x0 < x + 4 || box.x1 > x + w - 4 || box.y0 < y + 4 || box.y1 > y + h - 4) sum += 20;
    for (const b of this.boxes) if (box.x0 < b.x1 + 3 && box.x1 > b.x0 - 3 && box.y0 < b.y1 + 1 && box.y1 > b.y0 - 1) sum += 8;
    for (const d of this.dots) {
      const dx = Math.max(box.x0 - d.x, 0, d.x - box.x1);
      const dy = Math.max(box.y0 - d.y, 0, d.y - box.y1);
      if (Math.hypot(dx, dy) < d.r) sum += 1;
    }
    return sum;
  }

  /// @return undefined when every place costs more than `most`.
  put(words: string[], places: Place[], most: number, size = k_size): Place | undefined {
    let best: Place | undefined;
    let least = Infinity;
    for (const [i, p] of places.entries()) {
      if (i * k_farther >= least) break;
      // A place farther off must be worth it.
      const c = this.cost(boxOf(words, p, size)) + i * k_farther;
      if (c < least) {
        least = c;
        best = p;
      }
    }
    if (!best || least > most) return undefined;
    this.taken(words, best, size);
    return best;
  }
}

/// Places around a point at these distances, those above and at the left first: dimensions stand
/// below and at the right.
export function around(at: Spot2, distances: number[], size = k_size): Place[] {
  const out: Place[] = [];
  for (const d of distances) {
    const q = d * 0.75;
    out.push(
      { x: at.x, y: at.y - d, anchor: "middle" }, { x: at.x - d, y: at.y + size * 0.35, anchor: "end" },
      { x: at.x + d, y: at.y + size * 0.35, anchor: "start" }, { x: at.x, y: at.y + d + size * 0.75, anchor: "middle" },
      { x: at.x - q, y: at.y - q, anchor: "end" }, { x: at.x + q, y: at.y - q, anchor: "start" },
      { x: at.x - q, y: at.y + q + size * 0.6, anchor: "end" }, { x: at.x + q, y: at.y + q + size * 0.6, anchor: "start" },
    );
  }
  return out;
}
