import { test } from "node:test";
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import type { ChangeLine } from "../src/api/views";
import { rankInput, suspectsOf, symptomsOf } from "../src/causes/suspects";

const change = (id: string, more: Partial<ChangeLine> = {}): ChangeLine => ({
  id, title: `Renew ${id}`, position: "", position_name: "", system: "ignition", grade: "opened and refitted", kind: "", stage: "", state: "done",
  new_part: "", document: "", note: "", joints: [], after: [], together: [], ...more,
});
type Input = { symptoms: { name: string; state: string }[]; suspects: { name: string; kind: string; disturbance?: string; fault_chance?: string; symptoms: { symptom: string }[] }[]; checks: { suspect: string }[] };

test("nothing is ranked before something was seen", () => {
  assert.equal(rankInput(suspectsOf([change("a")], []), {}, []), undefined);
  assert.equal(rankInput(suspectsOf([change("a")], []), { noise: "not-seen" }, []), undefined);
});

test("changes stay, parts only if they can bring about what was seen", () => {
  const all = suspectsOf([change("a"), change("hose", { system: "fuel" })], []);
  const input = rankInput(all, { "low voltage": "seen", "noise": "not-seen" }, [{ suspect: "Renew a", fault_found: false }, { suspect: "gone", fault_found: true }]) as Input;
  assert.equal(input.suspects.filter((s) => s.kind === "change").length, 2);
  assert.equal(input.suspects[0]!.disturbance, "opened");
  assert.equal(input.suspects[0]!.fault_chance, "3 %", "as on the sheet of stages");
  assert(input.suspects.some((s) => s.name.startsWith("Regulator")));
  assert(!input.suspects.some((s) => s.name === "Baffles or seals of the cooling"));
  const asked = new Set(input.symptoms.map((s) => s.name));
  for (const s of input.suspects) for (const l of s.symptoms) assert(asked.has(l.symptom), `${s.name} names ${l.symptom}`);
  assert.deepEqual(input.checks.map((c) => c.suspect), ["Renew a"]);
});

test("every row of the knowledge says where to look, and every stop names a symptom that can be ticked", () => {
  const book = JSON.parse(readFileSync("src/causes/knowledge.json", "utf8")) as { stop: { symptom: string }[]; parts: { id: string; name: string; look: string; percent: number; hours: number; reach: string; symptoms: object }[] };
  const known = symptomsOf(suspectsOf([], []));
  for (const s of book.stop) assert(known.includes(s.symptom), s.symptom);
  for (const p of book.parts) {
    assert(p.look !== "" && p.percent > 0 && p.percent <= 100 && p.hours > 0 && Object.keys(p.symptoms).length > 0, p.id);
    assert(["seat", "walk", "cowl"].includes(p.reach), p.id);
  }
  assert.equal(new Set(book.parts.map((p) => p.name)).size, book.parts.length);
});

test("two of one name are told apart", () => {
  const all = suspectsOf([change("a", { title: "A fouled plug" })], []);
  assert.equal(new Set(all.map((s) => s.name)).size, all.length);
});
