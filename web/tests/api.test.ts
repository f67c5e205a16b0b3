import assert from "node:assert/strict";
import { test } from "node:test";
import { newId } from "../src/kit/identity";
import { dayInWords, instant, today } from "../src/kit/time";
import { address, parseRoute } from "../src/route/route";
import { fieldId, place, worthShowing } from "../src/form/problems";

// Source: RFC 9562, section 5.7 and the test vector of appendix A.6.
test("an id is a version 7 UUID", () => {
  const random = new Uint8Array([0, 0, 0, 0, 0, 0, 0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f]);
  assert.equal(newId(0x017f22e279b0, random), "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
});

test("later ids sort later", () => {
  assert.ok(newId(1_000) < newId(2_000));
  assert.notEqual(newId(1_000), newId(1_000));
});

// Source: RFC 3339, section 5.6.
test("an instant carries the offset of the place", () => {
  assert.equal(instant(new Date("2026-11-25T08:12:00Z"), 60), "2026-11-25T09:12:00+01:00");
  assert.equal(instant(new Date("2026-11-25T08:12:00Z"), -210), "2026-11-25T04:42:00-03:30");
});

test("days", () => {
  assert.equal(today(new Date(2024, 1, 29)), "2024-02-29");
  assert.equal(dayInWords("2026-11-25"), "25 Nov 2026");
  assert.equal(dayInWords("unknown"), "unknown");
  assert.equal(dayInWords("2026-13-01"), "2026-13-01");
});

test("addresses lead where they say", () => {
  assert.deepEqual(parseRoute("#/work/bench/torque-setting?aircraft=Q-PEB"), { place: "work", rest: ["bench", "torque-setting"], query: { aircraft: "Q-PEB" } });
  assert.deepEqual(parseRoute(""), { place: "bay", rest: [], query: {} });
  assert.deepEqual(parseRoute("#/nowhere/x").place, "bay");
  assert.deepEqual(parseRoute("#/work/%E0%A4%A").rest, ["%E0%A4%A"]);
  const there = address("record", ["entry", "a/b"], { q: "1 & 2" });
  assert.deepEqual(parseRoute(there), { place: "record", rest: ["entry", "a/b"], query: { q: "1 & 2" } });
});

test("a problem lands on its field or on the nearest one around it", () => {
  const problem = (path: string) => ({ path, what: "wrong" });
  const placed = place([problem("leads/2/reading"), problem("leads/9/x"), problem("elsewhere")], new Set(["leads", "leads/2/reading"]));
  assert.equal(placed.get("leads/2/reading")?.length, 1);
  assert.equal(placed.get("leads")?.length, 1);
  assert.equal(placed.get("")?.length, 1);
  assert.equal(fieldId("leads/2/reading"), "f-leads-2-reading");
});

test("while typing, only what was left wrong behind is marked", () => {
  const list = [{ path: "a", kind: "missing", what: "" }, { path: "b", kind: "bad_text", what: "" }, { path: "c", kind: "bad_text", what: "" }];
  assert.deepEqual(worthShowing(list, new Set(["a", "b"]), false).map((p) => p.path), ["b"]);
  assert.equal(worthShowing(list, new Set(), true).length, 3);
});
