/// Where the strokes of a stripe go. Two plates lie one above the other; lacquer was drawn
/// across their joint. The upper half stands still, the lower half is displaced by the share of
/// the allowance that is used, and a dotted line marks the limit.

export type StripeState =
  | { is: "within"; used: number }
  | { is: "past"; used: number }
  /// The meter can't tell: best estimate and how far it may be off, both as shares.
  | { is: "undecided"; used: number; spread: number }
  | { is: "unknown" };

export interface Box {
  x: number;
  y: number;
  w: number;
  h: number;
}

export const stripeSize = { w: 220, h: 64 } as const;
export const upperPlate: Box = { x: 0, y: 0, w: 220, h: 31 };
export const lowerPlate: Box = { x: 0, y: 33, w: 220, h: 31 };
const k_home = 31;
const k_width = 18;
/// Travel of the lower half from nothing used to the whole allowance.
const k_travel = 70;
const k_edge = 3;

/// Centre of the stripe when the whole allowance is used.
export const limitX = k_home + k_width / 2 + k_travel;

export const upperStripe: Box = { x: k_home, y: 4, w: k_width, h: 27 };

export function lowerStripe(used: number): Box {
  return { x: clampX(k_home + k_travel * Math.max(0, used), k_width), y: 33, w: k_width, h: 27 };
}

/// Hatched at the best estimate, as wide as its uncertainty reaches to both sides, but never
/// narrower than the stripe itself.
export function undecidedStripe(used: number, spread: number): Box {
  const w = Math.min(lowerPlate.w - 2 * k_edge, Math.max(k_width, 2 * Math.abs(spread) * k_travel));
  const centre = k_home + k_width / 2 + k_travel * used;
  return { x: clampX(centre - w / 2, w), y: 33, w, h: 27 };
}

/// Past the limit the lacquer is torn in two. How far past is drawn up to one allowance more.
export function tornPieces(used: number): { upper: string; lower: string } {
  const beyond = Math.min(1, Math.max(0, used - 1));
  const x = clampX(limitX + 10 + beyond * 60, 20);
  const at = (points: [number, number][]): string =>
    `M${points.map(([px, py]) => `${round(px)} ${round(py)}`).join("L")}Z`;
  const l = k_home;
  return {
    upper: at([[l, 4], [l + 18, 4], [l + 21, 23], [l + 13, 18], [l + 7, 26], [l, 20]]),
    lower: at([[x, 43], [x + 8, 37], [x + 13, 46], [x + 19, 40], [x + 20, 60], [x + 2, 60]]),
  };
}

/// Hatching as plain lines: it prints, scales and needs no pattern with an id.
export function hatch(box: Box, step: number): string {
  let d = "";
  // Lines x + y = c, from the lower left to the upper right.
  for (let c = box.x + box.y + step; c < box.x + box.w + box.y + box.h; c += step) {
    const x1 = Math.max(box.x, c - (box.y + box.h));
    const x2 = Math.min(box.x + box.w, c - box.y);
    if (x2 > x1) d += `M${round(x1)} ${round(c - x1)}L${round(x2)} ${round(c - x2)}`;
  }
  return d;
}

function clampX(x: number, w: number): number {
  return Math.min(lowerPlate.x + lowerPlate.w - k_edge - w, Math.max(lowerPlate.x + k_edge, x));
}

function round(n: number): number {
  return Math.round(n * 100) / 100;
}

/// The words that always stand beside a stripe when the server gives none.
export function stripeWords(state: StripeState): string {
  switch (state.is) {
    case "unknown":
      return "unknown";
    case "undecided":
      return "undecided";
    case "past":
      return "past limit";
    case "within": {
      if (state.used <= 0) return "whole: nothing used yet";
      const percent = state.used >= 0.995 ? Math.floor(state.used * 100) : Math.round(state.used * 100);
      return percent === 0 ? "under 1 % used" : `${percent} % used`;
    }
  }
}
