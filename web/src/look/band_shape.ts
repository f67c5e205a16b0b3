/// Where things go on an acceptance band: a rule with the accepted part between its limit lines,
/// and the reading as a dot with its uncertainty bar. All numbers are in one unit; nothing is
/// converted or judged here.

export interface BandInput {
  lower?: number | undefined;
  upper?: number | undefined;
  value?: number | undefined;
  /// Expanded uncertainty, to both sides.
  U?: number | undefined;
  /// Other readings to compare with: siblings, the last one.
  others?: number[] | undefined;
}

export interface BandScale {
  from: number;
  to: number;
}

/// A scale that holds limits, reading and the others with air on both sides. A reading far away
/// does not squeeze the limits together: it is drawn at the edge, and the words say its figure.
export function bandScale(input: BandInput): BandScale {
  const limits = [input.lower, input.upper].filter((n): n is number => n !== undefined);
  const near = [...limits, ...(input.others ?? [])];
  if (input.value !== undefined) near.push(input.value - (input.U ?? 0), input.value + (input.U ?? 0));
  if (near.length === 0) return { from: 0, to: 1 };
  let from = Math.min(...near);
  let to = Math.max(...near);
  if (input.lower === undefined && from > 0 && limits.length > 0) from = 0;
  if (limits.length > 0) {
    const low = Math.min(...limits);
    const high = Math.max(...limits);
    const width = limits.length === 2 && high > low ? high - low : Math.abs(high) || 1;
    from = Math.max(from, low - 1.5 * width);
    to = Math.min(to, high + 1.5 * width);
  }
  const span = to - from || Math.abs(to) || 1;
  return { from: from - 0.12 * span, to: to + 0.12 * span };
}

/// Share of the width, kept inside it; `off` says that the true place lies outside.
export function bandAt(scale: BandScale, value: number): { share: number; off: -1 | 0 | 1 } {
  const share = (value - scale.from) / (scale.to - scale.from);
  if (share < 0) return { share: 0, off: -1 };
  if (share > 1) return { share: 1, off: 1 };
  return { share, off: 0 };
}

/// Labels under a line: pushed apart so that none covers its neighbour. Given wanted centres and
/// widths (same unit), in order; returns the centres to use, inside 0..total where they fit.
export function spread(wanted: { at: number; w: number }[], total: number, gap: number): number[] {
  const order = wanted.map((label, i) => ({ ...label, i })).sort((a, b) => a.at - b.at);
  const placed: { at: number; w: number; i: number }[] = [];
  let edge = 0;
  for (const label of order) {
    const at = Math.max(label.at, edge + label.w / 2);
    placed.push({ ...label, at });
    edge = at + label.w / 2 + gap;
  }
  edge = total;
  for (const label of [...placed].reverse()) {
    label.at = Math.min(label.at, edge - label.w / 2);
    edge = label.at - label.w / 2 - gap;
  }
  const out = new Array<number>(wanted.length).fill(0);
  for (const label of placed) out[label.i] = label.at;
  return out;
}
