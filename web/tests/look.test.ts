import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { bandAt, bandScale, spread } from "../src/look/band_shape";
import { balloonRows } from "../src/look/plan_shape";
import { digits, plainNumber, unitWords } from "../src/look/digits";
import {
  hatch, limitX, lowerPlate, lowerStripe, stripeWords, tornPieces, undecidedStripe, upperStripe,
} from "../src/look/stripe_shape";

test("a stripe is whole when nothing is used and at the limit when all is", () => {
  assert.equal(lowerStripe(0).x, upperStripe.x);
  assert.equal(lowerStripe(1).x + 9, limitX);
  assert.ok(lowerStripe(0.5).x > lowerStripe(0.4).x);
});

test("an undecided stripe is as wide as its uncertainty, and stays on the plate", () => {
  assert.equal(undecidedStripe(0.5, 0.25).w, 35);
  assert.equal(undecidedStripe(0.5, 0.001).w, upperStripe.w);
  const wide = undecidedStripe(2.5, 4);
  assert.ok(wide.x >= lowerPlate.x && wide.x + wide.w <= lowerPlate.w);
});

test("a torn stripe lies beyond the limit line however far past it is", () => {
  for (const used of [1.001, 1.3, 9]) {
    const xs = [...tornPieces(used).lower.matchAll(/[ML](-?[\d.]+) /g)].map((m) => Number(m[1]));
    assert.ok(Math.min(...xs) > limitX, String(used));
    assert.ok(Math.max(...xs) <= lowerPlate.w, String(used));
  }
});

test("hatching stays inside its box", () => {
  const box = { x: 40, y: 33, w: 18, h: 27 };
  for (const m of hatch(box, 6).matchAll(/([\d.]+) ([\d.]+)/g)) {
    assert.ok(Number(m[1]) >= 40 && Number(m[1]) <= 58 && Number(m[2]) >= 33 && Number(m[2]) <= 60, m[0]);
  }
});

test("the words never round a used-up allowance away", () => {
  assert.equal(stripeWords({ is: "within", used: 0 }), "whole: nothing used yet");
  assert.equal(stripeWords({ is: "within", used: 0.001 }), "under 1 % used");
  assert.equal(stripeWords({ is: "within", used: 0.45 }), "45 % used");
  assert.equal(stripeWords({ is: "within", used: 0.9996 }), "99 % used");
  assert.equal(stripeWords({ is: "within", used: 1 }), "100 % used");
  assert.equal(stripeWords({ is: "unknown" }), "unknown");
});

test("a band holds its limits and reading with air around them", () => {
  const scale = bandScale({ lower: 3, upper: 8, value: 7.9, U: 0.2 });
  for (const v of [3, 8, 7.7, 8.1]) {
    const at = bandAt(scale, v);
    assert.equal(at.off, 0);
    assert.ok(at.share > 0.05 && at.share < 0.95);
  }
});

test("a reading far away is drawn at the edge and does not squeeze the limits together", () => {
  const scale = bandScale({ lower: 3, upper: 8, value: 1e6 });
  assert.deepEqual(bandAt(scale, 1e6), { share: 1, off: 1 });
  assert.ok(bandAt(scale, 8).share - bandAt(scale, 3).share > 0.25);
});

test("labels are pushed apart, not over each other", () => {
  const got = spread([{ at: 50, w: 40 }, { at: 60, w: 40 }, { at: 355, w: 40 }], 360, 10);
  assert.ok(got[1]! - got[0]! >= 50);
  assert.ok(got[2]! <= 340);
});

test("balloons keep their distance and their side", () => {
  const points = Array.from({ length: 14 }, (_, i) => ({ x: i % 2 === 0 ? 100 : 500, y: 100 + i }));
  const rows = balloonRows(points, 640, 60, 520, 46);
  for (const side of ["left", "right"]) {
    const ys = rows.filter((r) => r?.side === side).map((r) => r!.y).sort((a, b) => a - b);
    for (let i = 1; i < ys.length; i++) assert.ok(ys[i]! - ys[i - 1]! >= 46);
    assert.ok(ys[0]! >= 60 && ys[ys.length - 1]! <= 520);
  }
});

// Source: JCGM 100:2008, 7.2.6 (uncertainty to two significant digits, value to the same decimal).
test("a value is printed to the decimal of its uncertainty", () => {
  assert.deepEqual(digits({ value: 85.2, unit: "ohm", U: 0.7 }), { value: "85.20", U: "0.70" });
  assert.deepEqual(digits({ value: 7.9, unit: "kohm", U: 0.025 }), { value: "7.900", U: "0.025" });
});

test("plain numbers have no false digits", () => {
  assert.equal(plainNumber(0.0431), "0.0431");
  assert.equal(plainNumber(1120), "1120");
  assert.equal(plainNumber(0.1 + 0.2), "0.3");
  assert.equal(plainNumber(0), "0");
  assert.equal(digits({ value: -11424, unit: "in-lb" }).value, "\u221211\u202f424");
});

test("units are spelled as on paper", () => {
  assert.equal(unitWords("7.9 kohm"), "7.9 kΩ");
  assert.equal(unitWords("59 degF"), "59 °F");
});

// Source: WCAG 2.2, success criteria 1.4.3 (4.5:1 for text) and 1.4.11 (3:1 for parts that must
// be seen); relative luminance as defined there.
test("the roles have contrast enough on both grounds", () => {
  const css = readFileSync("src/style/tokens.css", "utf8");
  const [light = "", dark = ""] = css.split("@media (prefers-color-scheme: dark)");
  const roles = (text: string): Map<string, string> => new Map([...text.matchAll(/--([\w-]+): (#[0-9a-f]{6})/g)].map((m) => [m[1]!, m[2]!]));
  const luminance = (hex: string): number => {
    const part = (i: number): number => {
      const c = parseInt(hex.slice(i, i + 2), 16) / 255;
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    };
    return 0.2126 * part(1) + 0.7152 * part(3) + 0.0722 * part(5);
  };
  const contrast = (a: string, b: string): number => {
    const [x, y] = [luminance(a), luminance(b)].sort((p, q) => q - p) as [number, number];
    return (x + 0.05) / (y + 0.05);
  };
  for (const [name, set] of [["light", roles(light)], ["dark", roles(dark)]] as const) {
    const c = (a: string, b: string): number => contrast(set.get(a)!, set.get(b)!);
    for (const text of ["ink", "ink-2", "lacquer-text"]) {
      assert.ok(c(text, "zinc-1") >= 4.5, `${name} ${text} on zinc-1: ${c(text, "zinc-1").toFixed(2)}`);
    }
    for (const text of ["ink", "ink-2"]) for (const ground of ["zinc-2", "field"]) {
      assert.ok(c(text, ground) >= 4.5, `${name} ${text} on ${ground}: ${c(text, ground).toFixed(2)}`);
    }
    assert.ok(c("on-ink", "ink") >= 4.5, name);
    assert.ok(c("zinc-4", "zinc-1") >= 2.7, `${name} zinc-4: ${c("zinc-4", "zinc-1").toFixed(2)}`);
  }
});
