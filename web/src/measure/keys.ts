/// Keys of a meter that types, gathered into readings. Pure: the page feeds it keys and acts on
/// what comes back.

export interface Gathered {
  text: string;
  /// Enter or Tab has come: the next figure begins anew.
  ended: boolean;
  /// When it ended: meters that send a carriage return and a line feed press Enter twice.
  at: number;
}

export const nothing: Gathered = { text: "", ended: true, at: 0 };

export type KeyDoes = "typed" | "ended" | "again" | "passed";

const k_same_press_ms = 150;
/// What meters send: figures, signs, the letters of units and of "overload", "inf".
const k_sent = /^[\d.,+\-\u2212 a-zA-Z°%µμωΩ∞:=]$/;

/// @param now  milliseconds of any clock
export function take(before: Gathered, key: string, now: number): { now: Gathered; does: KeyDoes } {
  if (key === "Enter" || key === "Tab") {
    if (!before.ended && before.text.trim() !== "") return { now: { ...before, ended: true, at: now }, does: "ended" };
    return { now: before, does: before.at > 0 && now - before.at < k_same_press_ms ? "again" : "passed" };
  }
  if (key === "Backspace" && before.text !== "") return { now: { text: before.text.slice(0, -1), ended: false, at: 0 }, does: "typed" };
  if (!k_sent.test(key)) return { now: before, does: "passed" };
  const fresh = before.ended ? "" : before.text;
  // A space presses a button; it belongs to a reading only within one.
  if (key === " " && fresh === "") return { now: before, does: "passed" };
  return { now: { text: fresh + key, ended: false, at: 0 }, does: "typed" };
}
