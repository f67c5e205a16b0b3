/// From the owner's guesses to the input of stage-plan, and an arrangement made by hand as rules
/// that leave stage-plan nothing to choose: then its cost is the price of that arrangement.

import type { JsonObject } from "../api/types";
import type { ChangeLine } from "../api/views";
import table from "./guesses.json";

/// Text as it was typed: what is no number is said at its field and never sent.
export interface Guess { chance: string; look: string; fly: string; symptoms: string }
export interface Costs { stage: string; air: string; ground: string; most: string }
export interface Apart { one: string; other: string; reason: string }
/// Stages of change ids, in the order in which they fly.
export type Arrangement = string[][];

export function guessFor(change: ChangeLine): Guess {
  const row = table.by_grade.find((g) => g.grade === gradeWord(change.grade)) ?? table.by_grade[3]!;
  const seen = table.by_system.find((s) => s.system === change.system)?.symptoms ?? [];
  return { chance: String(row.chance_percent), look: String(row.look_hours), fly: String(row.fly_hours), symptoms: seen.join(", ") };
}
const gradeWord = (label: string): string => label.replaceAll(" ", "-");

export const startCosts: Costs = { stage: String(table.costs.stage_hours), air: String(table.costs.air_hour), ground: String(table.costs.ground_hour), most: "" };

/// What is wrong with a figure, or undefined.
export function figureTrouble(text: string, least: number, most: number): string | undefined {
  const value = numberOf(text);
  if (value === undefined) return `a number is needed, ${least} to ${most}`;
  return value < least || value > most ? `${least} to ${most}` : undefined;
}
export function numberOf(text: string): number | undefined {
  const plain = text.trim().replace(",", ".");
  return /^\d+(\.\d+)?$|^\.\d+$/.test(plain) ? Number(plain) : undefined;
}

export function troubles(guess: Guess): string[] {
  const out: string[] = [];
  const say = (what: string, wrong: string | undefined): void => { if (wrong) out.push(`${what}: ${wrong}`); };
  say("chance", figureTrouble(guess.chance, 0, 100));
  say("one look", figureTrouble(guess.look, 0, 1000));
  say("hours to fly", figureTrouble(guess.fly, 0, 1000));
  return out;
}

/// A name that a person reads and that only one change has.
export function namesOf(changes: ChangeLine[]): Map<string, string> {
  const twice = new Set(changes.map((c) => c.title).filter((t, i, all) => all.indexOf(t) !== i));
  return new Map(changes.map((c) => [c.id, twice.has(c.title) ? `${c.title} (${c.id})` : c.title]));
}

export interface Wanted {
  changes: ChangeLine[];
  guesses: { [id: string]: Guess };
  costs: Costs;
  apart: Apart[];
}

/// @return the input of stage-plan; undefined while a figure is not one, or there is no change.
export function planInput(wanted: Wanted, by_hand?: Arrangement): JsonObject | undefined {
  const { changes, costs } = wanted;
  if (changes.length === 0) return undefined;
  const figures = [numberOf(costs.stage), numberOf(costs.air), numberOf(costs.ground)];
  if (figures.some((f) => f === undefined)) return undefined;
  if (costs.most.trim() !== "" && !/^[1-9]\d?$/.test(costs.most.trim())) return undefined;
  const names = namesOf(changes);
  const named = (ids: string[]): string[] => ids.flatMap((id) => names.get(id) ?? []);
  const rows: JsonObject[] = [];
  for (const change of changes) {
    const guess = wanted.guesses[change.id] ?? guessFor(change);
    if (troubles(guess).length > 0) return undefined;
    const symptoms = guess.symptoms.split(",").map((s) => s.trim()).filter((s) => s !== "");
    const stage = by_hand?.findIndex((s) => s.includes(change.id)) ?? -1;
    const after = new Set([...change.after, ...(stage > 0 ? by_hand![stage - 1]! : [])]);
    const together = new Set([...change.together, ...(stage >= 0 ? by_hand![stage]!.filter((id) => id !== change.id) : [])]);
    rows.push({
      name: names.get(change.id)!, fault_chance: `${numberOf(guess.chance)} %`, check_cost: numberOf(guess.look)!, hours: `${numberOf(guess.fly)} h`, symptoms,
      after: named([...after]), together: named([...together]),
    });
  }
  return {
    changes: rows, stage_cost: figures[0]!, hour_cost: figures[1]!, ground_hour_cost: figures[2]!,
    never: wanted.apart.filter((p) => names.has(p.one) && names.has(p.other) && p.one !== p.other).map((p) => ({ one: names.get(p.one)!, other: names.get(p.other)!, reason: p.reason })),
    ...(costs.most.trim() === "" ? {} : { size_cap: Number(costs.most) }),
  };
}

/// @return the arrangement with `change` in stage `to` (0-based; one past the end: a stage of its own).
export function moved(now: Arrangement, change: string, to: number): Arrangement {
  const out = now.map((s) => s.filter((id) => id !== change));
  if (to >= out.length) out.push([]);
  out[to]!.push(change);
  return out.filter((s) => s.length > 0);
}

/// Which of a stage's changes show alike: "what they could be confused with".
export function alike(stage: string[], guesses: (id: string) => Guess): { symptom: string; changes: string[] }[] {
  const by = new Map<string, string[]>();
  for (const id of stage)
    for (const s of new Set(guesses(id).symptoms.split(",").map((t) => t.trim()).filter((t) => t !== ""))) by.set(s, [...(by.get(s) ?? []), id]);
  return [...by].filter(([, ids]) => ids.length > 1).map(([symptom, changes]) => ({ symptom, changes }));
}
