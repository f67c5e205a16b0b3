import { test } from "node:test";
import assert from "node:assert/strict";
import type { Field, JsonObject } from "../src/api/types";
import { composeRecord, recordFrom } from "../src/form/draft";
import { endsTaken } from "../src/pages/ends_taken";

const three = (shape: string): Field[] => ["x", "y", "z"].map((key) => ({ key, label: key, shape, units: shape === "quantity" ? ["in", "mm"] : undefined, unit: "in" })) as unknown as Field[];
const end = (key: string): Field => ({
  key, label: key, shape: "record", needed: true, fields: [
    { key: "seat", label: "Seat", shape: "record", fields: three("quantity") },
    { key: "leaves", label: "Leaves", shape: "record", fields: three("number") },
    { key: "form", label: "Form", shape: "choice", example: "straight" },
    { key: "rigid", label: "Rigid", shape: "optional", of: { key: "", label: "", shape: "quantity", units: ["in"], unit: "in" } },
  ],
}) as unknown as Field;
const fields = [
  { key: "title", label: "Which hose", shape: "text", needed: true }, end("near_end"), end("far_end"),
  { key: "outside_diameter", label: "Outside diameter", shape: "quantity", units: ["in", "mm"], unit: "in" },
  { key: "overall", label: "Overall", shape: "optional", of: { key: "", label: "", shape: "quantity", units: ["in", "mm"], unit: "in" } },
] as unknown as Field[];
const figure = (value: number, unit = "in"): JsonObject => ({ value, unit, text: `${value.toFixed(3)} ${unit}` });
const answer: JsonObject = {
  near_seat: { x: figure(0), y: figure(0), z: figure(0) }, near_leaves: { x: 1, y: 0, z: 0 },
  far_seat: { x: figure(7.5), y: figure(-8.512345678), z: figure(-1e-9) }, far_leaves: { x: 1e-17, y: 0.98765432, z: -1e-17 },
};

test("measured ends fill seats and directions of a new sheet, in the digits that were measured", () => {
  const input = composeRecord(fields, endsTaken(fields, undefined, { title: "Renew the hose" }, { hose: { outside_diameter: "0.77 in", rigid_far: "1.8 in" } }, answer));
  assert.deepEqual(input, {
    title: "Renew the hose", outside_diameter: "0.77 in",
    near_end: { seat: { x: "0 in", y: "0 in", z: "0 in" }, leaves: { x: 1, y: 0, z: 0 }, form: "straight" },
    far_end: { seat: { x: "7.5 in", y: "-8.5123 in", z: "0 in" }, leaves: { x: 0, y: 0.9877, z: 0 }, form: "straight", rigid: "1.8 in" },
  });
});

test("how well they are known goes with them", () => {
  const within = (key: string, unit: string): Field => ({ key, label: key, shape: "optional", of: { key: "", label: "", shape: "quantity", units: [unit], unit } }) as unknown as Field;
  const more = [...fields, within("place_within", "in"), within("directions_within", "deg")];
  const input = composeRecord(more, endsTaken(more, undefined, {}, {}, { ...answer, place_within: figure(0.25), direction_within: figure(1.7, "deg") }));
  assert.deepEqual([input["place_within"], input["directions_within"]], ["0.25 in", "1.7 deg"]);
});

test("a sheet that was begun keeps everything but its seats and directions", () => {
  const kept = recordFrom(fields, { title: "mine", overall: "20 in", outside_diameter: "0.9 in", far_end: { seat: { x: "1 in" }, form: "elbow-90", rigid: "2 in" } });
  const before = JSON.stringify(kept);
  const input = composeRecord(fields, endsTaken(fields, kept, { title: "other" }, { hose: { outside_diameter: "0.77 in", rigid_far: "1.8 in" } }, answer));
  assert.deepEqual([input["title"], input["overall"], input["outside_diameter"]], ["mine", "20 in", "0.9 in"]);
  const far = input["far_end"] as JsonObject;
  assert.deepEqual([far["form"], far["rigid"], (far["seat"] as JsonObject)["x"]], ["elbow-90", "2 in", "7.5 in"]);
  assert.equal(JSON.stringify(kept), before, "the draft given stays as it was");
});

test("metric ends stay metric; elbows are not called straight", () => {
  const metric = { ...answer, far_seat: { x: figure(190.5, "mm"), y: figure(0, "mm"), z: figure(0, "mm") } };
  const far = composeRecord(fields, endsTaken(fields, undefined, {}, { hose: { elbows: true } }, metric))["far_end"] as JsonObject;
  assert.deepEqual([(far["seat"] as JsonObject)["x"], far["form"]], ["190.5 mm", undefined]);
});
