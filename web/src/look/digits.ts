/// How numbers and units are written out where the server sent no text of its own.

import type { Figure } from "../api/types";
import { dayInWords } from "../kit/time";

/// Rounded for the eye when the server sent no text: the uncertainty to two significant digits,
/// the value to the same decimal (JCGM 100:2008, 7.2.6); else four significant digits.
export function digits(figure: Figure): { value: string; U?: string } {
  const { value, U } = figure;
  if (U !== undefined && U > 0 && Number.isFinite(U)) {
    const decimals = Math.min(12, Math.max(0, 1 - Math.floor(Math.log10(U))));
    return { value: grouped(value.toFixed(decimals)), U: U.toFixed(decimals) };
  }
  return { value: grouped(plainNumber(value)) };
}

export function plainNumber(value: number): string {
  if (value === 0) return "0";
  const size = Math.abs(value);
  if (size >= 1e9 || size < 1e-4) return value.toPrecision(4);
  if (Number.isInteger(value)) return String(value);
  const decimals = Math.min(12, Math.max(0, 3 - Math.floor(Math.log10(size))));
  return value.toFixed(decimals).replace(/(\.\d*?)0+$/, "$1").replace(/\.$/, "");
}

/// Thousands apart by a thin space from five digits on.
function grouped(text: string): string {
  const [whole = "", part] = text.split(".", 2);
  const apart = whole.replace("-", "").length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, "\u202f") : whole;
  return (part === undefined ? apart : `${apart}.${part}`).replace(/^-/, "\u2212");
}

/// Units and days spelled as people write them on paper; the value is untouched.
export function unitWords(text: string): string {
  return text
    .replace(/\b\d{4}-\d{2}-\d{2}\b/g, dayInWords)
    .replace(/\bkohm\b/g, "kΩ").replace(/\bMohm\b/g, "MΩ").replace(/\bmohm\b/g, "mΩ").replace(/\bohm\b/g, "Ω")
    .replace(/\bdegF\b/g, "°F").replace(/\bdegC\b/g, "°C").replace(/\bdeg\b/g, "°");
}
