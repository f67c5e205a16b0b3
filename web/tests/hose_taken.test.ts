import assert from "node:assert/strict";
import { test } from "node:test";
import type { HoseAnswer } from "../src/api/views";
import { startWith, takesHose } from "../src/pages/hose_taken";

const kept: HoseAnswer = {
  hose: {
    id: "oil", title: "oil cooler", position: "oil-hose", change: "c", family: "MIL-H-8794", size: "-8", near_at: "cooler", far_at: "engine",
    overall: "23.12 in", tightest_radius: "9.4 in", least_radius: "5 in", clocking: "35 deg", binding: "", drawn: "2026-11-25", verdict: "not-tested", proof: "", drawn_since: false, event: "e",
  },
  clocking_read: "from the far end", working_pressure: "90 psi", proof_pressure: "", note: "", lines: [], proofs: [],
  sheet: JSON.stringify({ near_end: { form: "elbow-90", rigid: "1.5 in", seat: { x: "0 in" } }, far_end: { form: "straight", rigid: "1.2 in" } }),
};

test("what a kept sheet says is filled in for cutting, ordering and proving", () => {
  assert.deepEqual(startWith("hose-cut", kept), {
    assemblies: [{
      name: "oil cooler", family: "MIL-H-8794", size: "-8", overall: "23.12 in", clocking: "35 deg", proof_family: "medium-elastomer",
      near_end: { form: "elbow-90", rigid: "1.5 in" }, far_end: { form: "straight", rigid: "1.2 in" },
    }],
  });
  assert.deepEqual(startWith("proof-test", kept), { size: "-8", length: "23.12 in", family: "medium-elastomer", system_pressure: "90 psi" });
  assert.equal(startWith("hose-order", kept)["overall"], "23.12 in");
  assert.ok([...takesHose].every((name) => Object.keys(startWith(name, kept)).length > 0));
});

test("a family that no standard of ours names is left to the owner, and a sheet that cannot be read fills nothing in", () => {
  const other = { ...kept, sheet: "{", hose: { ...kept.hose, family: "PTFE (invented)" } };
  assert.equal(startWith("proof-test", other)["family"], undefined);
  assert.deepEqual(startWith("hose-order", other)["near_end"], {});
});
