/// Lengths for drawing only: where a thing stands on the paper, and how far it was dragged. What
/// is judged goes to the server as it was typed, with its unit.

import { composeNumber, type NumberDraft } from "../form/draft";

/// Exact by definition: 1 in = 25.4 mm, 1 NM = 1852 m.
const k_mm: { [unit: string]: number } = {
  mm: 1, cm: 10, m: 1000, km: 1e6, um: 1e-3, in: 25.4, ft: 304.8, yd: 914.4, thou: 0.0254, mi: 1609344, NM: 1852000,
};

export const inchLike = (unit: string): boolean => ["in", "ft", "yd", "thou", "mi", "NM"].includes(unit);

export function millimetres(value: number, unit: string): number | undefined {
  const factor = k_mm[unit];
  return factor === undefined ? undefined : value * factor;
}

/// "14 in", "-1 1/2 in", "3 ft 4 1/2 in". @return undefined where the drawing can't read it.
export function readLength(text: unknown): number | undefined {
  if (typeof text !== "string") return undefined;
  const sign = /^\s*[-\u2212]/.test(text) ? -1 : 1;
  const rest = text.trim().replace(/^[-+\u2212]\s*/, "");
  const part = /(\d+(?:\.\d*)?|\.\d+)(?:\s+(\d+)\/(\d+)|\/(\d+))?\s*([a-zA-Z]+)\s*/y;
  let sum = 0;
  let at = 0;
  while (at < rest.length) {
    part.lastIndex = at;
    const m = part.exec(rest);
    const factor = m?.[5] === undefined ? undefined : k_mm[m[5]];
    if (!m || factor === undefined) return undefined;
    const whole = Number(m[1]);
    const value = m[4] !== undefined ? whole / Number(m[4]) : m[2] !== undefined ? whole + Number(m[2]) / Number(m[3]) : whole;
    if (!Number.isFinite(value)) return undefined;
    sum += value * factor;
    at = part.lastIndex;
  }
  return rest === "" ? undefined : sign * sum;
}

/// One press of an arrow key: what a tape measure shows.
export function keyStep(unit: string, large: boolean): number {
  if (inchLike(unit)) return large ? 25.4 : 25.4 / 8;
  return large ? 25 : 2;
}

/// Dragging goes in steps that can be read from a tape.
export function dragStep(unit: string): number {
  return inchLike(unit) ? 25.4 / 16 : 1;
}

export function toStep(mm: number, step: number): number {
  return Math.round(mm / step) * step;
}

export function trimmed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  const short = text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  return short === "-0" ? "0" : short;
}

const k_decimals: { [unit: string]: number } = { mm: 1, cm: 2, m: 4, um: 0, thou: 0, in: 4, ft: 5, yd: 5 };

/// In the unit that stands in the field already.
export function writeLength(mm: number, unit: string): NumberDraft {
  const u = k_mm[unit] === undefined ? "mm" : unit;
  return { n: trimmed(mm / (k_mm[u] ?? 1), k_decimals[u] ?? 7), u };
}

export function readDraft(draft: NumberDraft): number | undefined {
  return readLength(composeNumber(draft));
}

/// For a dimension of the drawing: "14 in", "355.6 mm".
export function dimensionText(mm: number, unit: string): string {
  const draft = writeLength(mm, unit);
  const n = Number(draft.n);
  return `${trimmed(n, inchLike(draft.u) ? 3 : 1)} ${draft.u}`;
}
