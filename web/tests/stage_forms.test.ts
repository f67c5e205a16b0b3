import { test } from "node:test";
import assert from "node:assert/strict";
import type { CalcAnswer, Field } from "../src/api/types";
import type { ChangeLine } from "../src/api/views";
import { emptyRecord, untouched } from "../src/form/draft";
import { cutNote, notedAgain, startOfCut } from "../src/pages/cut_note";
import { balanceInput, massesOf } from "../src/pages/mass_known";

const change = { id: "c", title: "Renew the hose", position: "p", position_name: "Hose", new_part: "hose, -6", state: "planned" } as unknown as ChangeLine;
const plan = (body: object): { happened: string; body: never } => ({ happened: "2026-11-20", body: body as never });
const part = (fitted: string): never => ({ id: "h1", type: "hose", description: "", position: "p", fitted, mass: { value: 0.7, unit: "lb", as_typed: "0.7 lb" } }) as never;

test("a change with both masses and its arm makes two items and misses nothing", () => {
  const out = massesOf(change, plan({ grade: "renewed", mass_out: { value: 1.1, unit: "lb", text: "1.1 lb" }, mass_in: "1.3 lb", arm: "-30 in" }), []);
  assert.deepEqual(out.items, [{ what: "Hose, old", added: false, mass: "1.1 lb", arm: "-30 in" }, { what: "hose, -6", added: true, mass: "1.3 lb", arm: "-30 in" }]);
  assert.deepEqual(out.missing, []);
});

test("the fitted part is what comes off, or, fitted after the plan, what went in", () => {
  const body = { grade: "renewed", arm: "-30 in" };
  assert.deepEqual(massesOf(change, plan(body), [part("2021-09-18")]).missing, ["mass put in"]);
  assert.deepEqual(massesOf(change, plan(body), [part("2026-11-24")]).missing, ["mass taken out"]);
});

test("without an arm nothing is added up, and what is known is told", () => {
  const out = massesOf(change, plan({ grade: "renewed" }), [part("2021-09-18")]);
  assert.deepEqual([out.items, out.known, out.missing], [[], ["0.7 lb comes out (hose h1, old)"], ["mass put in", "arm from the datum"]]);
});

test("a change that renews nothing asks for no mass; an unreadable plan says so", () => {
  const out = massesOf(change, plan({ grade: "adjusted" }), [part("2021-09-18")]);
  assert.deepEqual([out.items.length, out.missing.length], [0, 0]);
  assert.equal(massesOf(change, undefined, []).missing.length, 1);
});

test("items without mass or arm are left out of the sum", () => {
  const input = balanceInput({ mass: "1087 lb", arm: "11.2 in" }, [{ what: "a", added: false, mass: "1 lb", arm: "2 in" }, { what: "b", mass: "1 lb" }]);
  assert.deepEqual(input["changes"], [{ what: "a", kind: "removed", mass: "1 lb", arm: "2 in" }]);
});

const fields = [
  { key: "between_seats", label: "Between the two sealing seats", shape: "quantity" },
  { key: "near_end", label: "Near end", shape: "record", needed: true, fields: [{ key: "rigid", label: "Its length that does not bend", shape: "quantity" }] },
] as Field[];

test("a cut length is kept in words, takes the place of the earlier one, and leaves the rest of the plan", () => {
  const answer = { version: 1, answer: { cut_length: { value: 29.25, unit: "in", text: "29.25 in" }, overall: { value: 31.5, unit: "in", text: "31.500 in" } } } as CalcAnswer;
  const note = cutNote(fields, { between_seats: "30 in", near_end: { rigid: "1.5 in" } }, answer);
  assert.equal(note, "Cut length 29.25 in, overall 31.500 in (between the two sealing seats 30 in; near end: its length that does not bend 1.5 in; length-allowance, version 1).");
  const again = notedAgain({ id: "c", defect: "", mass_in: "1 lb", note: "mine\nCut length 1 in, overall 2 in (old)." }, note);
  assert.deepEqual(again, { id: "c", mass_in: "1 lb", note: `mine\n${note}` });
});

test("the dash number is found in the words for the part, and nowhere else", () => {
  assert.deepEqual(startOfCut("two hose assemblies, PTFE, -8, fire sleeve"), { size: "-8" });
  assert.deepEqual(startOfCut("hose A-12, 14 in"), {});
  assert.deepEqual(startOfCut(""), {});
});

test("a form whose records are empty inside is untouched", () => {
  assert.equal(untouched(fields, emptyRecord(fields)), true);
  assert.equal(untouched(fields, { ...emptyRecord(fields), near_end: { rigid: { n: "1", u: "in" } } }), false);
});
