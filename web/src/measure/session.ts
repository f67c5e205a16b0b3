/// The readings of one walk along a group, on this device: which of them came in, so that the
/// strip and the summary know "this time" from "last time". The record itself is the server's.

import type { CheckGroup, CheckLine } from "../api/views";
import { keep, kept } from "../kit/keep";
import { Store } from "../kit/store";
import { instant } from "../kit/time";

export interface KeptReading {
  /// The id of its event: the act was sent with it.
  event: string;
  /// The latest event of the check before it: as long as the page still says that one, it is behind.
  before?: string;
  at: string;
  /// As it was typed, with its unit; "over range".
  text: string;
  repeats: number;
}
export interface Session {
  began: string;
  last: string;
  readings: { [check: string]: KeptReading };
}

/// After a pause as long as a night the next reading begins a new walk.
const k_walk_ms = 8 * 3600_000;

/// Grows when a session was written, so that what shows it looks again.
export const sessionTick = new Store<number>(0);

const keyOf = (aircraft: string, group: string): string => `wm.walk.${aircraft}.${group}`;

export function sessionOf(aircraft: string, group: string, now: number = Date.now()): Session | undefined {
  const found = kept<Session>(keyOf(aircraft, group));
  return found && now - Date.parse(found.last) < k_walk_ms ? found : undefined;
}

export function withReading(before: Session | undefined, check: string, reading: KeptReading): Session {
  const readings = { ...before?.readings };
  // Last in its order, also when it was read before.
  delete readings[check];
  return { began: before?.began ?? reading.at, last: reading.at, readings: { ...readings, [check]: reading } };
}

export function noteReading(aircraft: string, group: string, check: string, reading: KeptReading): void {
  keep(keyOf(aircraft, group), withReading(sessionOf(aircraft, group), check, reading));
  sessionTick.set(sessionTick.get() + 1);
}

export function beginAnew(aircraft: string, group: string): void {
  const now = instant();
  // Empty, not missing: without one, what was read today counts.
  keep(keyOf(aircraft, group), { began: now, last: now, readings: {} } satisfies Session);
  sessionTick.set(sessionTick.get() + 1);
}

/// What was kept last, by this device.
export function newest(session: Session | undefined): { check: string; reading: KeptReading } | undefined {
  const all = Object.entries(session?.readings ?? {}).map(([check, reading]) => ({ check, reading }));
  // Two within one second: the order in which they were kept.
  return all.sort((a, b) => Date.parse(a.reading.at) - Date.parse(b.reading.at)).at(-1);
}

/// One line of the strip and of the summary.
export interface Line {
  check: CheckLine;
  name: string;
  /// Read in this walk, or today on another device.
  read: boolean;
  /// Kept here, not yet in the record: the words are those that were typed.
  waits: boolean;
  /// The record's word on it is here: its figure and its verdict.
  judged: boolean;
  text: string;
  repeats: number;
}

export function linesOf(group: CheckGroup, session: Session | undefined, today: string, waitingIds: string[]): Line[] {
  const names = shortNames(group.checks.map((c) => c.title));
  return group.checks.map((check, i) => {
    const mine = session?.readings[check.id];
    const waits = mine !== undefined && check.last_event !== mine.event && waitingIds.includes(mine.event);
    const read = mine !== undefined || (session === undefined && today !== "" && check.last_when.startsWith(today));
    const behind = mine !== undefined && check.last_event !== mine.event && check.last_event === mine.before;
    const judged = read && !waits && !behind;
    return { check, name: names[i] ?? check.title, read, waits, judged, text: judged || !mine ? check.last : mine.text, repeats: mine?.repeats ?? 0 };
  });
}

/// Where to go after one is kept: the next that was not read, then those that were passed over,
/// then the summary.
export function nextUnread(lines: Line[], now: string): CheckLine | undefined {
  const at = lines.findIndex((l) => l.check.id === now);
  const order = [...lines.slice(at + 1), ...lines.slice(0, Math.max(at, 0))];
  return order.find((l) => !l.read)?.check;
}

/// "Left harness, lead 3 (cylinder 3 top)" -> "3 (cylinder 3 top)": the words that all share are
/// said once, above.
export function shortNames(titles: string[]): string[] {
  if (titles.length < 2) return titles;
  const words = titles.map((t) => t.split(/(?<=\s)/));
  const least = Math.min(...words.map((w) => w.length));
  const same = (at: (w: string[]) => string | undefined): boolean => words.every((w) => at(w)?.trim() === at(words[0]!)?.trim());
  let front = 0;
  while (front < least - 1 && same((w) => w[front])) front += 1;
  let back = 0;
  while (back < least - 1 - front && same((w) => w[w.length - 1 - back])) back += 1;
  return words.map((w) => w.slice(front, w.length - back).join("").trim().replace(/[,:]$/, ""));
}

/// "0.11 kohm" between the least and the greatest of some readings in one unit; undefined when
/// they are not plain figures of one unit.
export function spreadOf(texts: string[]): string | undefined {
  const parts = texts.map((t) => /^([+-]?(?:\d+\.?\d*|\.\d+)) (\S+)$/.exec(t));
  const unit = parts[0]?.[2];
  if (texts.length < 2 || unit === undefined || parts.some((p) => p?.[2] !== unit)) return undefined;
  const figures = parts.map((p) => p?.[1] ?? "");
  const numbers = figures.map(Number);
  const decimals = Math.max(...figures.map((f) => f.split(".")[1]?.length ?? 0));
  return `${(Math.max(...numbers) - Math.min(...numbers)).toFixed(decimals)} ${unit}`;
}
