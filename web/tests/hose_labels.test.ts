import assert from "node:assert/strict";
import { test } from "node:test";
import { onDial } from "../src/hose/dial";
import { extent, fourViews, oneView, roomy, stillFits } from "../src/hose/frame";
import { around, boxOf, Words } from "../src/hose/labels";
import { clip } from "../src/hose/outline";
import { vec } from "../src/hose/space";
import { fileName } from "../src/hose/take_along";
import { homeTurn, onPaper } from "../src/hose/views";
import { atLength, bestLabelAt, lengthAt, past, stubs, used, windowScale } from "../src/hose/window_shape";

const bounds = { low: vec(0, 0, 0), high: vec(350, 330, 100) };
const room = { left: 60, right: 80, above: 60, below: 60 };

test("three views to one scale, top above side and front beside it, all inside their part of the paper", () => {
  const laid = fourViews(780, 560, bounds, room, homeTurn);
  const of = (name: string) => laid.cells.find((c) => c.placed.view.name === name)!;
  const [side, front, top] = [of("side"), of("front"), of("top")];
  assert.equal(side.placed.scale, front.placed.scale);
  assert.equal(side.placed.scale, top.placed.scale);
  assert.ok(of("turned").placed.scale <= side.placed.scale);
  const p = vec(120, 40, 60);
  assert.ok(Math.abs(onPaper(side.placed, p).x - onPaper(top.placed, p).x) < 1e-9);
  assert.ok(Math.abs(onPaper(side.placed, p).y - onPaper(front.placed, p).y) < 1e-9);
  for (const { cell, placed } of laid.cells) {
    for (const q of [bounds.low, bounds.high]) {
      const s = onPaper(placed, q);
      assert.ok(s.x >= cell.x && s.x <= cell.x + cell.w && s.y >= cell.y && s.y <= cell.y + cell.h, placed.view.name);
    }
  }
  assert.ok(laid.h <= 560.5);
});

test("a hose in one plane has room in every view, and one view fills the phone", () => {
  const flat = roomy({ low: vec(0, 0, 5), high: vec(300, 200, 5) });
  assert.equal(flat.high.z - flat.low.z, 60);
  const laid = oneView(358, 358, "top", bounds, room, homeTurn);
  const e = extent(laid.cells[0]!.placed.view, bounds);
  assert.ok(e.w * laid.cells[0]!.placed.scale <= 358 - 140 + 1e-9);
});

test("the paper stays while what is drawn fits it, and not when it has become small or left", () => {
  assert.equal(stillFits(bounds, bounds), true);
  assert.equal(stillFits(bounds, { low: vec(0, 0, 0), high: vec(420, 330, 100) }), false);
  assert.equal(stillFits(bounds, { low: vec(0, 0, 0), high: vec(100, 100, 50) }), false);
});

test("words take a place that is clear of lines and of each other", () => {
  const words = new Words({ x: 0, y: 0, w: 400, h: 300 });
  words.along([{ x: 0, y: 150 }, { x: 400, y: 150 }], 8);
  const first = words.put(["near"], around({ x: 200, y: 150 }, [10, 24]), Infinity)!;
  const second = words.put(["far"], around({ x: 200, y: 150 }, [10, 24]), Infinity)!;
  const [a, b] = [boxOf(["near"], first), boxOf(["far"], second)];
  assert.ok(a.y1 < 143 || a.y0 > 157);
  assert.ok(a.x1 < b.x0 || b.x1 < a.x0 || a.y1 < b.y0 || b.y1 < a.y0);
  assert.equal(words.put(["no room at all"], [{ x: 200, y: 152, anchor: "middle" }], 2), undefined);
});

const window = { shortest: 500, best: 520, longest: 700, chosen: 600 };

test("a length and its place on the stripe belong together; the limits stand inside the plates", () => {
  const scale = windowScale(window, 468);
  for (const mm of [500, 560, 700]) assert.ok(Math.abs(lengthAt(scale, atLength(scale, mm)) - mm) < 1e-9);
  assert.ok(atLength(scale, 500) > 60 && atLength(scale, 700) < 408);
  assert.ok(atLength(scale, 1e6) <= 468);
});

test("the share used counts from the best length to the limit on that side", () => {
  assert.equal(used({ ...window, chosen: 520 }), 0);
  assert.ok(Math.abs(used(window) - 80 / 180) < 1e-12);
  assert.equal(used({ ...window, chosen: 510 }), 0.5);
  assert.equal(past({ ...window, chosen: 499 }), "too short");
  assert.equal(past({ ...window, chosen: 701 }), "too long");
  assert.equal(past({ ...window, chosen: 499.99 }), undefined);
});

test("torn stubs stand at the best and at the chosen length", () => {
  const xs = (d: string): number[] => [...d.matchAll(/[ML](-?[\d.]+) /g)].map((m) => Number(m[1]));
  const torn = stubs(120, 300);
  assert.ok(Math.min(...xs(torn.upper)) < 120 && Math.max(...xs(torn.upper)) > 120);
  assert.ok(Math.min(...xs(torn.lower)) < 300 && Math.max(...xs(torn.lower)) > 300);
});

test("the label of the best length keeps clear of those of the limits", () => {
  assert.equal(bestLabelAt(75, 71, 400, 38), 107);
  assert.equal(bestLabelAt(200, 71, 400, 38), 200);
  assert.equal(bestLabelAt(200, 190, 210, 38), 200);
});

test("the clock face: six o'clock is nothing, three o'clock a quarter counter-clockwise", () => {
  assert.ok(Math.abs(onDial(0, 10).y - 10) < 1e-9);
  assert.ok(Math.abs(onDial(90, 10).x - 10) < 1e-9);
  assert.ok(Math.abs(onDial(180, 10).y + 10) < 1e-9);
});

test("a line is cut at the edge of its part of the paper", () => {
  assert.deepEqual(clip({ x: -10, y: 5 }, { x: 30, y: 5 }, { x: 0, y: 0, w: 20, h: 10 }), [{ x: 0, y: 5 }, { x: 20, y: 5 }]);
  assert.equal(clip({ x: -10, y: 50 }, { x: 30, y: 50 }, { x: 0, y: 0, w: 20, h: 10 }), undefined);
});

test("a file is named after the hose", () => {
  assert.equal(fileName("Oil cooler, pressure side", "pdf"), "oil-cooler-pressure-side.pdf");
  assert.equal(fileName("../..", "dxf"), "hose.dxf");
});
