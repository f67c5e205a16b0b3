import assert from "node:assert/strict";
import { test } from "node:test";
import type { Outcome } from "../src/api/client";
import type { CalcAnswer, JsonObject } from "../src/api/types";
import { Engine, k_rest_ms } from "../src/hose/engine";

const wait = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

function bench(answer: (name: string, body: JsonObject) => Outcome<CalcAnswer>, takes = 8): { engine: Engine; asked: [string, JsonObject][]; most: () => number } {
  const asked: [string, JsonObject][] = [];
  let under = 0;
  let most = 0;
  const engine = new Engine(async (path, options) => {
    const name = path.slice("/api/calc/".length);
    asked.push([name, options.body as JsonObject]);
    most = Math.max(most, ++under);
    await wait(name === "hose-sheet" ? takes : 8);
    under -= 1;
    return answer(name, options.body as JsonObject);
  });
  return { engine, asked, most: () => most };
}

const shape = (name: string): CalcAnswer => ({ answer: name === "hose-sheet" ? { shape: { overall: { value: 23, unit: "in" } } } : { overall: { value: 23, unit: "in" } } });
const good = (name: string): Outcome<CalcAnswer> => ({ is: "answer", data: shape(name) });

test("one request at a time, the newest wins, and at rest the whole sheet is asked once", async () => {
  const { engine, asked, most } = bench(good);
  engine.move({ at: 0 }, 1);
  await wait(20);
  assert.deepEqual(asked.map((a) => a[0]), ["hose-sheet"], "without a length known, the sheet finds one");
  for (let i = 1; i <= 20; i++) {
    engine.move({ at: i, near_end: { n: i } }, i);
    await wait(2);
  }
  await wait(k_rest_ms + 60);
  const moves = asked.filter((a) => a[0] === "hose-shape");
  assert.equal(most(), 1);
  // How many depends on how busy the machine is; never more than there were moves.
  assert.ok(moves.length <= 20 && moves.length > 0, String(moves.length));
  assert.deepEqual(moves.at(-1)?.[1], { near_end: { n: 20 }, overall: "23 in", fineness: "moving", points: 33 });
  assert.deepEqual(asked.filter((a) => a[0] === "hose-sheet").map((a) => a[1]["at"]), [0, 20]);
  assert.equal(engine.told.get().settled, true);
});

test("a refusal keeps the last good shape and says that it is not up to date", async () => {
  let refuse = false;
  const { engine } = bench((name) => (refuse ? { is: "problems", problems: [{ path: "overall", what: "too short" }], conflict: false } : good(name)));
  engine.typed({ overall: "23 in" });
  await wait(k_rest_ms + 30);
  refuse = true;
  engine.move({ overall: "12 in" }, 5);
  await wait(30);
  const told = engine.told.get();
  assert.equal(told.problems[0]?.what, "too short");
  assert.equal(told.current, false);
  assert.ok(told.shape && told.sheet);
  engine.end();
});

test("where no length was chosen and the last one does not reach, the sheet finds another at once", async () => {
  const { engine, asked } = bench((name) => (name === "hose-shape" ? { is: "problems", problems: [{ path: "overall", what: "too short" }], conflict: false } : good(name)));
  engine.move({ at: 1 }, 1);
  await wait(20);
  engine.move({ at: 2 }, 2);
  await wait(40);
  assert.deepEqual(asked.map((a) => a[0]), ["hose-sheet", "hose-shape", "hose-sheet"]);
  assert.equal(engine.told.get().current, true);
  engine.end();
});

test("where the whole sheet takes long, the shape is asked first at rest too", async () => {
  const { engine, asked } = bench(good, 330);
  engine.typed({ at: 1 });
  await wait(520);
  engine.typed({ at: 2 });
  await wait(1000);
  assert.deepEqual(asked.map((a) => a[0]), ["hose-sheet", "hose-shape", "hose-sheet"]);
  assert.equal(engine.told.get().settled, true);
});

test("without a connection nothing is judged, and the shape of before stays", async () => {
  let gone = false;
  const { engine } = bench((name) => (gone ? { is: "no-connection" } : good(name)));
  engine.typed({});
  await wait(k_rest_ms);
  gone = true;
  engine.typed({ at: 1 });
  await wait(k_rest_ms);
  assert.equal(engine.told.get().trouble, "no-connection");
  assert.ok(engine.told.get().shape);
});
