import assert from "node:assert/strict";
import { test } from "node:test";
import type { Field } from "../src/api/types";
import {
  bare, compose, composeRecord, draftFrom, emptyDraft, emptyRecord, recordFrom, shown, splitNumber, stillNeeded, untouched,
  type RecordDraft,
} from "../src/form/draft";

const field = (more: Partial<Field>): Field => ({ key: "x", label: "X", shape: "text", ...more });
const resistance = field({ shape: "quantity", units: ["ohm", "kohm"], unit: "kohm" });
const measured = field({ shape: "measured", units: ["ohm", "kohm"], unit: "kohm" });

test("a number gets the chosen unit", () => {
  assert.equal(compose(resistance, { n: "7.9", u: "kohm" }), "7.9 kohm");
  assert.equal(compose(resistance, { n: " -31 ", u: "in" }), "-31 in");
  assert.equal(compose(resistance, { n: "4 1/2", u: "in" }), "4 1/2 in");
  assert.equal(compose(resistance, { n: "3/8", u: "in" }), "3/8 in");
  assert.equal(compose(resistance, { n: ".5", u: "in" }), ".5 in");
  assert.equal(compose(resistance, { n: "1e3", u: "ohm" }), "1e3 ohm");
});

test("a comma is sent on with its unit, for the server to explain", () => {
  assert.equal(compose(resistance, { n: "7,9", u: "kohm" }), "7,9 kohm");
});

test("a unit that was typed stays as typed", () => {
  assert.equal(compose(resistance, { n: "3 ft 4 1/2 in", u: "in" }), "3 ft 4 1/2 in");
  assert.equal(compose(resistance, { n: "85 Ω", u: "kohm" }), "85 Ω");
  assert.equal(compose(resistance, { n: "38\"", u: "in" }), "38\"");
  assert.equal(compose(resistance, { n: "nine", u: "in" }), "nine");
});

test("nothing typed is nothing sent", () => {
  for (const shape of ["text", "quantity", "measured", "count", "number", "yes_no", "choice", "date", "instant", "list", "attachment"] as const) {
    const f = field({ shape, of: field({}) });
    assert.equal(compose(f, emptyDraft(f)), undefined, shape);
  }
});

test("an uncertainty is written once with its unit", () => {
  assert.equal(compose(measured, { n: "7.9", u: "kohm", pm: "0.2" }), "7.9 +- 0.2 kohm");
  assert.equal(compose(measured, { n: "7.9 kohm", u: "kohm", pm: "0.2" }), "7.9 kohm +- 0.2 kohm");
  assert.equal(compose(measured, { n: "7.9", u: "kohm", pm: "" }), "7.9 kohm");
});

test("numbers are numbers, other text goes as typed", () => {
  assert.equal(compose(field({ shape: "count" }), "12"), 12);
  assert.equal(compose(field({ shape: "number" }), "0.90"), 0.9);
  assert.equal(compose(field({ shape: "count" }), "a dozen"), "a dozen");
  assert.equal(compose(field({ shape: "number" }), "0,9"), "0,9");
  assert.equal(compose(field({ shape: "number" }), "Infinity"), "Infinity");
});

test("yes, no and not said are three things", () => {
  const f = field({ shape: "yes_no" });
  assert.equal(compose(f, "yes"), true);
  assert.equal(compose(f, "no"), false);
  assert.equal(compose(f, ""), undefined);
});

test("elements of a list keep their place while empty", () => {
  const list = field({ shape: "list", of: field({ shape: "record", fields: [field({ key: "name" })] }) });
  assert.deepEqual(compose(list, [{ name: "" }, { name: "starter" }]), [{}, { name: "starter" }]);
});

test("an alternative says which it is, and only its own fields go", () => {
  const f = field({
    shape: "one_of",
    alternatives: [{ word: "pipe", fields: [field({ key: "length", shape: "quantity", units: ["in"], unit: "in" })] }, { word: "elbow", fields: [field({ key: "angle" })] }],
  });
  assert.deepEqual(compose(f, { is: "pipe", by: { pipe: { length: { n: "38", u: "in" } }, elbow: { angle: "90 deg" } } }), { is: "pipe", length: "38 in" });
});

test("a field shown only with its neighbour's value is left out otherwise", () => {
  const fields = [field({ key: "kind", shape: "choice" }), field({ key: "drag", shown_when: "kind=locknut" })];
  assert.equal(shown(fields[1]!, { kind: "plain" }), false);
  assert.deepEqual(composeRecord(fields, { kind: "plain", drag: "12 in-lb" }), { kind: "plain" });
  assert.deepEqual(composeRecord(fields, { kind: "locknut", drag: "12 in-lb" }), { kind: "locknut", drag: "12 in-lb" });
});

test("an optional is asked like the thing inside", () => {
  const f = field({ shape: "optional", of: field({ shape: "quantity", units: ["in"], unit: "in" }) });
  assert.equal(compose(f, { n: "38", u: "in" }), "38 in");
  assert.deepEqual(emptyDraft(f), { n: "", u: "in" });
});

test("number and unit come apart as they went together", () => {
  assert.deepEqual(splitNumber("7.9 kohm", resistance), { n: "7.9", u: "kohm" });
  assert.deepEqual(splitNumber("85.2 ohm +- 0.7 ohm", measured), { n: "85.2", u: "ohm", pm: "0.7" });
  assert.deepEqual(splitNumber("85.2 +- 0.7 ohm", measured), { n: "85.2", u: "ohm", pm: "0.7" });
  assert.deepEqual(splitNumber("3 ft 4 1/2 in", field({ shape: "quantity", units: ["in", "ft"], unit: "in" })), { n: "3 ft 4 1/2 in", u: "in" });
  assert.deepEqual(splitNumber("4 1/2 in", field({ shape: "quantity", units: ["in", "ft"], unit: "ft" })), { n: "4 1/2", u: "in" });
  assert.deepEqual(splitNumber("70 %", field({ shape: "quantity", units: ["%"], unit: "%" })), { n: "70", u: "%" });
});

test("an input shown in a form composes to itself", () => {
  const fields: Field[] = [
    field({ key: "r", shape: "measured", units: ["ohm", "kohm"], unit: "kohm" }),
    field({ key: "l", shape: "quantity", units: ["in", "ft"], unit: "in" }),
    field({ key: "n", shape: "count" }), field({ key: "ok", shape: "yes_no" }), field({ key: "on", shape: "date" }),
    field({ key: "items", shape: "list", of: field({ shape: "record", fields: [field({ key: "name" })] }) }),
    field({ key: "e", shape: "one_of", alternatives: [{ word: "elbow", fields: [field({ key: "angle" })] }] }),
  ];
  const input = { r: "7.9 +- 0.2 kohm", l: "3 ft 2 in", n: 4, ok: false, on: "2024-02-29", items: [{ name: "a" }, { name: "b" }], e: { is: "elbow", angle: "90 deg" } };
  assert.deepEqual(composeRecord(fields, recordFrom(fields, input)), input);
});

test("a draft with nothing in it is not kept, and says what it needs", () => {
  const fields = [field({ key: "a", needed: true }), field({ key: "b" })];
  assert.equal(untouched(fields, emptyRecord(fields)), true);
  assert.equal(untouched(fields, { a: "x", b: "" }), false);
  assert.deepEqual(stillNeeded(fields, { a: " ", b: "" }).map((f) => f.key), ["a"]);
});

test("a bare number is one without letters", () => {
  for (const yes of ["7.9", "-5", "+3", "4 1/2", "3/8", "1e3", "1,120"]) assert.equal(bare(yes), true, yes);
  for (const no of ["7.9 kohm", "3 ft", "nine", "", "85 Ω", "70 %", "38\""]) assert.equal(bare(no), false, no);
});

test("a figure with its typed text shows that text", () => {
  assert.deepEqual(draftFrom(resistance, { value: 7900, unit: "ohm", typed: "7.9 kohm" }), { n: "7.9", u: "kohm" });
});

test("a reading to correct keeps its unit beside it: only the figure is typed again", () => {
  const field = { key: "value", label: "Reading", shape: "any_quantity" } as Field;
  assert.deepEqual(draftFrom(field, { value: 5200, unit: "ohm", typed: "5.20 kohm" }), { n: "5.20", u: "kohm" });
  assert.equal(compose(field, { n: "5.02", u: "kohm" }), "5.02 kohm");
  assert.equal(compose(field, { n: "5020 ohm", u: "kohm" }), "5020 ohm");
});

test("an optional record with nothing in it is left out; one that is needed is sent as it is", () => {
  // Symptom: an untouched "weight" went as {} and was refused for its needed fields.
  const inner: Field[] = [{ key: "filled", label: "Filled", shape: "quantity", unit: "lb/ft", units: ["lb/ft"], needed: true }];
  const fields: Field[] = [
    { key: "weight", label: "Weight", shape: "record", optional: true, fields: inner },
    { key: "seat", label: "Seat", shape: "record", needed: true, fields: inner },
  ];
  assert.deepEqual(composeRecord(fields, emptyRecord(fields)), { seat: {} });
  assert.deepEqual(composeRecord(fields, { weight: { filled: { n: "0.2", u: "lb/ft" } } }), { weight: { filled: "0.2 lb/ft" } });
});

test("what was typed into one of several kinds alone counts: it was neither answered nor kept", () => {
  const fields = [{
    key: "route", label: "Measured by", shape: "one_of", needed: true, alternatives: [{
      word: "tube", title: "tube", fields: [
        { key: "bends", label: "Bends", shape: "list", needed: true, of: { key: "", label: "", shape: "record", fields: [{ key: "straight", label: "Straight", shape: "quantity", units: ["in"] }] } },
        { key: "last", label: "Last", shape: "quantity", units: ["in"] },
      ],
    }],
  }] as unknown as Field[];
  const with_ = (inside: RecordDraft): RecordDraft => ({ route: { is: "tube", by: { tube: inside } } });
  assert.equal(untouched(fields, { route: { is: "tube", by: {} } }), true);
  assert.equal(untouched(fields, with_({ bends: [{ straight: { n: "", u: "in" } }], last: { n: "", u: "in" } })), true);
  assert.equal(untouched(fields, with_({ bends: [], last: { n: "7", u: "in" } })), false);
  assert.equal(untouched(fields, with_({ bends: [{ straight: { n: "6", u: "in" } }] })), false);
});
