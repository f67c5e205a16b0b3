/// From what was seen, changed and looked at to the input of cause-rank.

import type { JsonObject } from "../api/types";
import type { ChangeLine } from "../api/views";
import { guessFor } from "../staging/guess";
import book from "./knowledge.json";

export type Seen = "seen" | "not-seen" | "not-looked-for";
export interface Own { id: string; name: string; percent: number; hours: number; symptoms: string[] }
export interface Found { suspect: string; fault_found: boolean }
export interface Suspect { id: string; name: string; changed: boolean; percent?: number; hours: number; look: string; reach: string; grade?: string; links: { [symptom: string]: number } }

export const stops = book.stop;
export const first = book.first;
export const reachWords: { [reach: string]: string } = { seat: "from the seat", walk: "walking round", cowl: "cowl off" };

/// All symptoms that anything here can bring about, in the order of the alphabet.
export function symptomsOf(suspects: Suspect[]): string[] {
  return [...new Set(suspects.flatMap((s) => Object.keys(s.links)))].sort();
}

const grades: { [label: string]: string } = { "looked at": "looked-at", "adjusted": "adjusted", "opened and refitted": "opened", "renewed": "renewed", "redesigned": "redesigned" };

export function suspectsOf(changes: ChangeLine[], own: Own[]): Suspect[] {
  const changed = changes.map((c): Suspect => {
    const g = guessFor(c);
    const symptoms = g.symptoms.split(",").map((s) => s.trim()).filter((s) => s !== "");
    return { id: `change ${c.id}`, name: c.title, changed: true, percent: Number(g.chance), hours: Number(g.look), look: "what was opened for it, joint by joint", reach: "cowl", grade: grades[c.grade] ?? "renewed", links: Object.fromEntries(symptoms.map((s) => [s, book.link_percent])) };
  });
  const parts = book.parts.map((p): Suspect => ({ id: p.id, name: p.name, changed: false, percent: p.percent, hours: p.hours, look: p.look, reach: p.reach, links: links(p.symptoms) }));
  const mine = own.map((o): Suspect => ({ id: o.id, name: o.name, changed: false, percent: o.percent, hours: o.hours, look: "your own entry", reach: "cowl", links: Object.fromEntries(o.symptoms.map((s) => [s, book.link_percent])) }));
  const all = [...changed, ...mine, ...parts];
  const twice = new Set(all.map((s) => s.name).filter((n, i, names) => names.indexOf(n) !== i));
  return all.map((s) => (twice.has(s.name) ? { ...s, name: `${s.name} (${s.id})` } : s));
}
const links = (from: { [symptom: string]: number | undefined }): { [symptom: string]: number } =>
  Object.fromEntries(Object.entries(from).flatMap(([k, v]) => (v === undefined ? [] : [[k, v]])));

/// @return undefined while nothing was seen: nothing is at fault that does not show.
export function rankInput(all: Suspect[], seen: { [symptom: string]: Seen }, done: Found[]): JsonObject | undefined {
  const asked = Object.entries(seen).filter(([, s]) => s !== "not-looked-for");
  if (!asked.some(([, s]) => s === "seen")) return undefined;
  const known = new Set(asked.map(([s]) => s));
  // Only what can bring about a symptom that was seen, or was changed: the rest cannot move up.
  const wanted = all.filter((s) => s.changed || asked.some(([name, state]) => state === "seen" && s.links[name] !== undefined));
  return {
    symptoms: asked.map(([name, state]) => ({ name, state, from_elsewhere: `${book.elsewhere_percent} %` })),
    suspects: wanted.map((s) => ({
      name: s.name, kind: s.changed ? "change" : "unchanged", look_cost: s.hours,
      ...(s.percent === undefined ? {} : { fault_chance: `${s.percent} %` }), ...(s.grade === undefined ? {} : { disturbance: s.grade }),
      symptoms: Object.entries(s.links).filter(([name]) => known.has(name)).map(([symptom, chance]) => ({ symptom, chance: `${chance} %` })),
    })),
    checks: done.filter((d) => wanted.some((s) => s.name === d.suspect)).map((d) => ({ ...d, finds: "90 %", false_alarms: "2 %" })),
  };
}
