/// The stripe of a length window: the upper half stands at the length with the widest bend, the
/// lower half at the chosen one, dotted lines at the shortest and the longest.

import { tornPieces, limitX } from "../look/stripe_shape";

export interface Window {
  shortest: number;
  best: number;
  longest: number;
  chosen: number;
}

export interface Scale {
  low: number;
  high: number;
  w: number;
}

const k_beyond = 0.27;
export const k_lacquer = 18;

/// As far beyond each limit as lets a stripe that is past it be seen.
export function windowScale(window: Window, w: number): Scale {
  const span = Math.max(window.longest - window.shortest, 1);
  return { low: window.shortest - k_beyond * span, high: window.longest + k_beyond * span, w };
}

export function atLength(scale: Scale, mm: number): number {
  const x = ((mm - scale.low) / (scale.high - scale.low)) * scale.w;
  return Math.min(scale.w - k_lacquer / 2 - 3, Math.max(k_lacquer / 2 + 3, x));
}

export function lengthAt(scale: Scale, x: number): number {
  const share = Math.min(1, Math.max(0, x / scale.w));
  return scale.low + share * (scale.high - scale.low);
}

/// Where the label of the best length stands: over its stripe, clear of those of the two limits,
/// which stand outside their lines.
export function bestLabelAt(best: number, shortest: number, longest: number, half: number): number {
  const low = shortest + half - 2;
  const high = longest - half + 2;
  return low > high ? (shortest + longest) / 2 : Math.min(high, Math.max(low, best));
}

/// How much of the way from the best length to the limit on that side is used.
export function used(window: Window): number {
  const { shortest, best, longest, chosen } = window;
  const room = chosen < best ? best - shortest : longest - best;
  const gone = Math.abs(chosen - best);
  if (gone < 1e-6) return 0;
  return room <= 1e-6 ? Infinity : gone / room;
}

export function past(window: Window): "too short" | "too long" | undefined {
  // What the server rounds to print must not look like being past it.
  const hair = 0.02;
  if (window.chosen < window.shortest - hair) return "too short";
  if (window.chosen > window.longest + hair) return "too long";
  return undefined;
}

/// Ragged stubs of the same drawing as everywhere: the upper at the best length, the lower at the
/// chosen one.
export function stubs(upper: number, lower: number): { upper: string; lower: string } {
  const torn = tornPieces(1);
  return { upper: shifted(torn.upper, upper - 31 - k_lacquer / 2), lower: shifted(torn.lower, lower - limitX - 10 - 10) };
}

function shifted(path: string, by: number): string {
  return path.replace(/([ML])(-?[\d.]+) /g, (_, letter: string, x: string) => `${letter}${Math.round((Number(x) + by) * 100) / 100} `);
}
