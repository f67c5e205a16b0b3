import assert from "node:assert/strict";
import { test } from "node:test";
import { drawnOf, moveSeat, nearestOn, turnEnd } from "../src/hose/drawn";
import { dimensionText, keyStep, readLength, toStep, writeLength } from "../src/hose/lengths";
import { cross, dot, size, sub, turned, vec } from "../src/hose/space";
import { angleOnPaper, front, fromPaper, inPaper, onPaper, side, top, turnBy, turnedView, type Placed } from "../src/hose/views";

const near = (a: number, b: number, what = ""): void => assert.ok(Math.abs(a - b) < 1e-9, `${what} ${a} is not ${b}`);

const draft = {
  near_end: { seat: { x: { n: "0", u: "in" }, y: { n: "0", u: "in" }, z: { n: "0", u: "in" } }, leaves: { x: "1", y: "", z: "" }, form: "", rigid: { n: "1.5", u: "in" } },
  far_end: { seat: { x: { n: "14", u: "in" }, y: { n: "330", u: "mm" }, z: { n: "4", u: "in" } }, leaves: { x: "", y: "-1", z: "" }, form: "elbow-90", port: { x: "0", y: "0", z: "1" } },
};

test("each view is a right-handed set, and the three look along the aircraft's axes", () => {
  for (const v of [side, front, top, turnedView({ round: 33, above: 20 }), turnedView({ round: -120, above: -70 })]) {
    const n = cross(v.right, v.up);
    near(dot(n, v.towards), 1, v.name);
    near(size(v.right), 1);
  }
  const at = (v: typeof side): Placed => ({ view: v, scale: 2, middle: vec(0, 0, 0), at: { x: 100, y: 100 } });
  assert.deepEqual(onPaper(at(side), vec(10, 5, 3)), { x: 120, y: 94 });
  // Seen from the nose, the aircraft's right is at the left.
  assert.deepEqual(onPaper(at(front), vec(10, 5, 3)), { x: 90, y: 94 });
  assert.deepEqual(onPaper(at(top), vec(10, 5, 3)), { x: 120, y: 90 });
});

test("the turned view looks from the nose at 0 and from the left at 90, and stops before the pole", () => {
  near(turnedView({ round: 0, above: 0 }).towards.x, -1);
  near(turnedView({ round: 90, above: 0 }).towards.y, -1);
  assert.equal(turnBy({ round: 170, above: 80 }, 30, 30).round, -160);
  assert.equal(turnBy({ round: 0, above: 80 }, 0, 30).above, 85);
});

test("dragging across the paper and drawing again ends under the pointer; the third coordinate stays", () => {
  for (const view of [side, front, top]) {
    const placed: Placed = { view, scale: 1.7, middle: vec(3, 4, 5), at: { x: 50, y: 60 } };
    const start = vec(10, 20, 30);
    const by = fromPaper(view, placed.scale, 17, -9);
    const a = onPaper(placed, start);
    const b = onPaper(placed, vec(start.x + by.x, start.y + by.y, start.z + by.z));
    near(b.x - a.x, 17);
    near(b.y - a.y, -9);
    near(dot(by, view.towards), 0);
  }
});

test("a moved seat keeps its units, and what did not move keeps what was typed", () => {
  const moved = moveSeat(draft, "far_end", vec(25.4 / 8, 10, 0)).far_end as typeof draft.far_end;
  assert.deepEqual(moved.seat.x, { n: "14.125", u: "in" });
  assert.deepEqual(moved.seat.y, { n: "340", u: "mm" });
  assert.equal(moved.seat.z, draft.far_end.seat.z);
});

test("turning by the view's own sense: counter-clockwise on the paper, elbow and port together", () => {
  for (const view of [side, front, top]) {
    const before = inPaper(view, view.right);
    const after = inPaper(view, turned(view.right, view.towards, Math.PI / 6));
    near(angleOnPaper({ x: 0, y: 0 }, after) - angleOnPaper({ x: 0, y: 0 }, before), Math.PI / 6, view.name);
  }
  const out = turnEnd(draft, "far_end", side.towards, Math.PI / 2).far_end as typeof draft.far_end;
  assert.deepEqual(out.leaves, { x: "0", y: "-1", z: "0" });
  assert.deepEqual(out.port, { x: "-1", y: "0", z: "0" });
  const straight = turnEnd(draft, "near_end", top.towards, Math.PI / 2).near_end as typeof draft.near_end;
  assert.deepEqual(straight.leaves, { x: "0", y: "1", z: "0" });
});

test("lengths are read as people type them, and not guessed", () => {
  near(readLength("14 in") ?? 0, 355.6);
  near(readLength("-1 1/2 in") ?? 0, -38.1);
  near(readLength("3 ft 4 1/2 in") ?? 0, 40.5 * 25.4);
  near(readLength("3/8 in") ?? 0, 9.525);
  near(readLength("0.6 m") ?? 0, 600);
  for (const odd of ["", "14", "14 lb", "about 3 in", 14]) assert.equal(readLength(odd), undefined, String(odd));
});

test("steps are those of a tape", () => {
  near(keyStep("in", false), 3.175);
  near(keyStep("ft", true), 25.4);
  near(keyStep("mm", false), 2);
  near(toStep(3.9, 25.4 / 16), 25.4 / 8);
  assert.deepEqual(writeLength(-0.00001, "in"), { n: "0", u: "in" });
  assert.deepEqual(writeLength(300, "mm"), { n: "300", u: "mm" });
  assert.deepEqual(writeLength(2540, "ft"), { n: "8.33333", u: "ft" });
  assert.equal(dimensionText(355.6, "in"), "14 in");
});

test("an elbow is drawn from its seat along the port, then along the hose", () => {
  const drawn = drawnOf({ outside_diameter: "20 mm", near_end: { form: "elbow-90", seat: { x: "0 mm", y: "0 mm", z: "0 mm" }, leaves: { x: 1 }, port: { z: 2 }, drop: "30 mm", rigid: "40 mm" } });
  assert.deepEqual(drawn.near?.corner, vec(0, 0, 30));
  assert.deepEqual(drawn.near?.mouth, vec(40, 0, 30));
  assert.equal(drawn.radius, 10);
  assert.equal(drawn.far, undefined);
});

test("the nearest point of what must be kept away from lies on its surface", () => {
  const p = vec(100, 0, 0);
  assert.deepEqual(nearestOn({ is: "ball", name: "", centre: vec(0, 0, 0), radius: 20 }, p), vec(20, 0, 0));
  near(nearestOn({ is: "tube", name: "", from: vec(0, 0, -50), to: vec(0, 0, 50), radius: 10 }, p).x, 10);
  assert.deepEqual(nearestOn({ is: "box", name: "", centre: vec(0, 0, 0), half: vec(5, 6, 7) }, p), vec(5, 0, 0));
  near(size(sub(nearestOn({ is: "wall", name: "", point: vec(0, 0, 0), free: vec(1, 0, 0) }, vec(9, 2, 3)), vec(0, 2, 3))), 0);
});
