import { test } from "node:test";
import assert from "node:assert/strict";
import type { ChangeLine } from "../src/api/views";
import { alike, guessFor, moved, namesOf, numberOf, planInput, startCosts, troubles, type Wanted } from "../src/staging/guess";

const change = (id: string, more: Partial<ChangeLine> = {}): ChangeLine => ({
  id, title: `Renew ${id}`, position: "", position_name: "", system: "fuel", grade: "renewed", kind: "", stage: "", state: "planned",
  new_part: "", document: "", note: "", joints: [], after: [], together: [], ...more,
});
const wanted = (changes: ChangeLine[], more: Partial<Wanted> = {}): Wanted => ({ changes, guesses: {}, costs: startCosts, apart: [], ...more });

test("a change starts from the guess of its grade and the symptoms of its system", () => {
  const g = guessFor(change("a", { grade: "looked at", system: "ignition" }));
  assert.equal(g.chance, "0.5");
  assert.match(g.symptoms, /rough running/);
  assert.equal(guessFor(change("a", { grade: "opened and refitted", system: "nothing known" })).symptoms, "");
});

test("what is no figure is said and nothing is sent", () => {
  assert.equal(numberOf("2,5"), 2.5);
  assert.equal(numberOf("two"), undefined);
  assert.equal(troubles({ chance: "120", look: "1", fly: "1", symptoms: "" }).length, 1);
  const bad = { chance: "", look: "1", fly: "1", symptoms: "" };
  assert.equal(planInput(wanted([change("a")], { guesses: { a: bad } })), undefined);
  assert.equal(planInput(wanted([])), undefined);
});

test("an arrangement by hand leaves nothing to choose", () => {
  const input = planInput(wanted([change("a"), change("b"), change("c", { after: ["a"] })]), [["a", "b"], ["c"]]) as { changes: { name: string; together: string[]; after: string[] }[] };
  assert.deepEqual(input.changes.map((c) => c.together), [["Renew b"], ["Renew a"], []]);
  assert.deepEqual(input.changes[2]!.after.sort(), ["Renew a", "Renew b"]);
});

test("rules name only changes that are in the plan; two of one title are told apart", () => {
  const twins = [change("a", { title: "Same", after: ["gone"] }), change("b", { title: "Same" })];
  const input = planInput(wanted(twins, { apart: [{ one: "a", other: "b", reason: "r" }, { one: "a", other: "gone", reason: "" }] })) as { changes: { name: string; after: string[] }[]; never: object[] };
  assert.deepEqual([...namesOf(twins).values()], ["Same (a)", "Same (b)"]);
  assert.deepEqual(input.changes[0]!.after, []);
  assert.equal(input.never.length, 1);
});

test("moving a change empties and opens stages", () => {
  assert.deepEqual(moved([["a"], ["b", "c"]], "a", 1), [["b", "c", "a"]]);
  assert.deepEqual(moved([["a", "b"]], "b", 1), [["a"], ["b"]]);
});

test("what shows alike within a stage is told", () => {
  const symptoms: { [id: string]: string } = { a: "smell, rough", b: "rough", c: "noise" };
  assert.deepEqual(alike(["a", "b", "c"], (id) => ({ chance: "", look: "", fly: "", symptoms: symptoms[id]! })), [{ symptom: "rough", changes: ["a", "b"] }]);
});
