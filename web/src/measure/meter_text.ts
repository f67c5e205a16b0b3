/// What a meter that types like a keyboard sent, taken apart into number and unit. It reads only
/// how the meter writes; whether the reading is any good is the server's to say.

export type MeterSaid =
  | { is: "value"; n: string; u: string }
  | { is: "over" }
  /// "1." alone: some displays show it beyond their range, and it may be one.
  | { is: "unclear"; n: string; u: string; why: string }
  /// Not understood: it goes as it came, the server says what it expected.
  | { is: "text"; text: string };

const k_over = /^[+-]?\s*(?:[o0]\.?l\.?|\.[o0]l|over\s*(?:load|range|flow)?|overrange|inf(?:inity)?|∞|-{3,})$/i;
/// Instruments driven by the common programming language print infinity as 9.9E37 (from memory).
const k_infinity = 9.8e37;
const k_number = /^([+-]?\s*(?:\d+[.,]?\d*|[.,]\d+))(?:\s*e\s*([+-]?\d+))?\s*(.*)$/i;
/// What stands before a figure: the mode that the meter is in.
const k_mode = /^(?:dc|ac|res|r)[\s:=]+(?=[+-]?[.\d])/i;

export function readMeter(raw: string, checkUnit: string): MeterSaid {
  const text = raw.trim().replace(/\s+/g, " ").replace(/\u2212/g, "-");
  if (saysOver(text, checkUnit)) return { is: "over" };
  const match = k_number.exec(text.replace(k_mode, ""));
  if (!match) return { is: "text", text };
  const [, figure = "", power, rest = ""] = match;
  // A meter sends no thousands apart: a comma is where the decimals begin.
  const digits = figure.replace(/\s+/g, "").replace(",", ".");
  const n = power === undefined ? digits : `${digits}E${Number(power)}`;
  if (Math.abs(Number(n)) >= k_infinity) return { is: "over" };
  const u = unitSent(rest, checkUnit, power !== undefined);
  if (u === undefined) return { is: "text", text };
  if (/^1\.$/.test(digits) && power === undefined) {
    return { is: "unclear", n: "1", u, why: "The meter sent “1.”: some displays show that beyond their range. Over range, or one?" };
  }
  return { is: "value", n: n.replace(/\.$/, ""), u };
}

/// "OL", "O.L MΩ", "1. OL", "overload", "inf", and "--- kohm".
function saysOver(text: string, checkUnit: string): boolean {
  const words = text.replace(/^1\s*\.\s*/, "");
  if (k_over.test(words)) return true;
  const apart = /^(\S+)\s+(\S+)$/.exec(words);
  return apart?.[1] !== undefined && apart[2] !== undefined && k_over.test(apart[1]) && unitSent(apart[2], checkUnit, false) !== undefined;
}

const prefixes: { [sign: string]: string } = { k: "k", K: "k", M: "M", m: "m", u: "u", "µ": "u", "μ": "u", n: "n", p: "p" };
const bases: { [word: string]: string } = { ohm: "ohm", ohms: "ohm", "ω": "ohm", "Ω": "ohm", r: "ohm", v: "V", vdc: "V", vac: "V", volt: "V", volts: "V", a: "A", adc: "A", f: "F", farad: "F" };
const others: { [word: string]: string } = { "°c": "degC", degc: "degC", "°f": "degF", degf: "degF", rpm: "rpm", psi: "psi", bar: "bar", in: "in", mm: "mm", "°": "deg", deg: "deg", "%": "%" };

/// @return the unit in our writing; undefined when the words are none that meters send.
function unitSent(raw: string, checkUnit: string, withPower: boolean): string | undefined {
  const words = raw.replace(/\s+/g, "").replace(/\.$/, "");
  const base = baseOf(checkUnit);
  // With a power of ten the figure is in the plain unit: "1.241E+04" is 12410 ohm.
  if (words === "") return withPower && base !== undefined ? base : checkUnit;
  if (words === checkUnit) return checkUnit;
  const plain = others[words.toLowerCase()];
  if (plain !== undefined) return plain;
  if (/^meg(?:a|ohms?)?$/i.test(words)) return `M${base ?? "ohm"}`;
  const whole = bases[words.toLowerCase()];
  if (whole !== undefined) return whole;
  const prefix = prefixes[words.charAt(0)];
  if (prefix === undefined) return undefined;
  const tail = words.slice(1).toLowerCase();
  const of = tail === "" ? base : bases[tail];
  return of === undefined ? undefined : `${prefix}${of}`;
}

/// "kohm" -> "ohm"; undefined for units that take no prefix here.
function baseOf(unit: string): string | undefined {
  const match = /^[kMmunp]?(ohm|V|A|F)$/.exec(unit);
  return match?.[1];
}
