// A whole harness of eight leads, from the first terminal to the summary, as a mechanic reads it: one
// lead flexed, one over range, one mistyped and corrected, three with a meter that types by itself.
// On a phone the whole, on a laptop a short one by keys alone. The harness, its maker and all figures
// are invented. Taps and keys are counted. With WM_PICTURES=1 the pictures of docs/walk-harness.md
// are made again.
import {
  assert, assertEqual, assertNoComplaints, assertReadingOrder, assertWellMade, laptop, openBrowser, openPage, phone, root, screenshots, settled,
  suite, tabOrder,
} from "./support.mjs";
import { Bench } from "./support_server.mjs";
import { join } from "node:path";

const shot = screenshots(join(root, "build", "screenshots", "harness-walk"));
const picture = process.env.WM_PICTURES ? screenshots(join(root, "docs", "pictures", "measure")) : shot;
const browser = await openBrowser();
const { test, run } = suite("harness walk");
const benches = [];
const k_group = "new-harness";
const k_most_seconds = 120;
const k_most_touches = 60;

const leads = ["1 top", "1 bottom", "2 top", "2 bottom", "3 top", "3 bottom", "4 top", "4 bottom"];
const idOf = (i) => `new-lead-${i + 1}`;

for (const size of [phone, laptop]) walk(size);

function walk(size) {
  let bench;
  let page;
  let broken = false;
  let touches = 0;
  let seconds = 0;
  const step = (name, work) =>
    test(`${size.name}: ${name}`, async () => {
      assert(!broken, "an earlier step of this walk failed");
      broken = true;
      await work();
      assertNoComplaints(page);
      broken = false;
    });
  const see = async (name, { at, into = shot, soon = false } = {}) => {
    await settled(page);
    if (at) await page.locator(at).first().evaluate((e) => scrollTo(0, e.getBoundingClientRect().top + scrollY - 70));
    else await page.evaluate(() => scrollTo(0, 0));
    // What was told a moment ago would cover the picture.
    if (process.env.WM_PICTURES && into === picture && !soon) await page.locator(".notice.recorded").waitFor({ state: "hidden", timeout: 15_000 });
    await into(page, `${size.name}-${name}`);
  };
  const ask = async (path, body) => {
    const answer = await page.request.post(`${bench.url}${path}`, { data: body, headers: { "X-Witnessmark": "1" } });
    assert(answer.ok(), `${path}: ${await answer.text()}`);
    return answer.json();
  };
  const view = async () => {
    const page_ = await ask("/api/view/measure", { aircraft: "pebblewing" });
    return page_.answer.groups.find((g) => g.id === k_group);
  };
  const visit = async (hash) => {
    await page.goto(`${bench.url}/${hash}`);
    await page.waitForSelector("main h1");
    await settled(page);
  };
  const reading = () => page.locator("#reading");
  const verdict = () => page.locator(".answer-body:not(.working) .live-verdict .verdict");
  const at = (i) => page.waitForFunction(([id, lead]) => location.hash.endsWith(`/${id}`) && document.querySelector("h1")?.textContent.endsWith(lead) && document.activeElement?.id === "reading", [idOf(i), leads[i]]);
  const tap = async (locator) => {
    touches += 1;
    if (size.touch) await locator.tap();
    else await locator.click();
  };
  const type = async (text) => {
    touches += text.length;
    await page.keyboard.type(text);
  };
  const key = async (name) => {
    touches += 1;
    await page.keyboard.press(name);
  };
  /// As a meter does it: fast, wherever the focus is, and no touch of a person.
  const meterSends = async (text, end = "Enter") => {
    await page.keyboard.type(text);
    await page.keyboard.press(end);
  };
  const cells = () => page.locator(".strip .cell").evaluateAll((all) => all.map((e) => e.innerText.replace(/\s+/g, " ").trim()));

  step("a harness of eight leads is described and opened; the place is well made", async () => {
    bench = new Bench();
    benches.push(bench);
    page = await openPage(browser, await bench.start(), size);
    for (const [i, lead] of leads.entries()) {
      const id = `00000000-0000-7000-8000-00000000000${i}`;
      await ask("/api/act/describe-check", { id, happened: "2026-11-25", input: {
        aircraft: "pebblewing", id: idOf(i), title: `New harness, lead ${lead}`, position: "left-harness", kind: "lead-resistance", group: k_group, order: i + 1,
        probes: "tower end and plug end, harness off at both", procedure: "Null the test leads, flex the lead at both ends, write down what stands.",
        lowest: "3.0 kohm", highest: "8.0 kohm", unit: "kohm", authority: "maker-mandatory", document: "harness maker's sheet (invented)",
      } });
    }
    await visit("#/measure");
    await page.locator(".group-head", { hasText: "New harness" }).click();
    await reading().waitFor();
    await settled(page);
    await page.getByLabel("Instrument", { exact: true }).selectOption("bench-meter");
    await page.getByLabel("Range used").selectOption("60 kohm");
    await page.getByLabel("Test leads").selectOption("nulled");
    assertEqual((await cells()).length, 8, "cells of the strip");
    assert((await cells()).every((c) => c.includes("not read yet")), `strip: ${await cells()}`);
    // Again, with the meter known: as it looks at every further lead.
    await page.reload();
    await reading().waitFor();
    await assertWellMade(page);
    assertReadingOrder(await tabOrder(page, 60));
    await see("first", { into: picture });
    await reading().focus();
  });

  step("two leads by hand: number, Enter, and the next one stands there", async () => {
    seconds = performance.now();
    touches = 0;
    await type("5.20");
    await verdict().filter({ hasText: /^Conforms/ }).waitFor();
    await key("Enter");
    await at(1);
    await type("5.12");
    if (size.touch) await tap(page.getByRole("button", { name: "Keep, next" }));
    else await key("Enter");
    await at(2);
    await page.locator(".kept-bar").getByText("1 bottom").waitFor();
    await page.locator(".strip .cell", { hasText: "1 bottom" }).getByText("conforms").waitFor();
  });

  step("one is flexed: what was read before stays as a chip, the spread and the verdict follow", async () => {
    for (const [i, text] of ["5.31", "5.55", "9.99"].entries()) {
      await type(text);
      await tap(page.getByRole("button", { name: "Read again / flex it" }));
      await page.waitForFunction((n) => document.querySelectorAll(".chip").length === n && document.activeElement?.id === "reading" && document.activeElement.value === "", i + 1);
    }
    await tap(page.getByRole("button", { name: "Take away 9.99 kΩ" }));
    await type("5.43");
    await page.locator(".repeats").getByText("3 readings, spread").waitFor();
    assert((await page.locator(".repeats").innerText()).replace(/\s+/g, " ").includes("spread 0.24 kΩ"), await page.locator(".repeats").innerText());
    await verdict().filter({ hasText: /^Conforms/ }).waitFor();
    await assertWellMade(page);
    await see("flexed", { into: picture });
    await key("Enter");
    await at(3);
  });

  step("one is open: over range is a reading", async () => {
    await tap(page.locator(".tick.over", { hasText: "over-range" }));
    await verdict().filter({ hasText: /open|not conform/i }).waitFor();
    await assertWellMade(page);
    await tap(page.getByRole("button", { name: "Keep, next" }));
    await at(4);
  });

  step("one is mistyped and kept: the bar leads to its correction, and back", async () => {
    await type("6.52");
    await verdict().filter({ hasText: /^Conforms/ }).waitFor();
    await key("Enter");
    await at(5);
    const bar = page.locator(".kept-bar");
    await bar.getByText("3 top").waitFor();
    await bar.getByText("conforms").waitFor();
    await see("kept", { into: picture });
    await tap(bar.getByRole("link", { name: "Correct it" }));
    await page.locator("#f-value").waitFor();
    await assertWellMade(page);
    touches += 4 + 8;
    await page.locator("#f-value").fill("5.62");
    await page.locator("#f-why-corrected").fill("mistyped");
    await tap(page.getByRole("button", { name: "Record the correction" }));
    await at(5);
    await bar.getByText(/5\.62/).waitFor();
    await page.locator(".strip .cell", { hasText: "3 top" }).getByText(/5\.62/).waitFor();
  });

  step("hands-free: the meter types, a good reading is kept by itself", async () => {
    const sw = page.getByRole("switch", { name: "Hands-free" });
    touches += 1;
    await sw.check();
    await assertWellMade(page);
    // What was told a moment ago would cover the picture of the pause, which itself does not wait.
    if (process.env.WM_PICTURES) await page.locator(".notice.recorded").waitFor({ state: "hidden", timeout: 15_000 });
    // Wherever the focus is.
    await page.evaluate(() => document.activeElement?.blur());
    await meterSends("5.40 kOhm");
    await page.locator(".hands-free.counting").waitFor();
    assert(/kept in a moment/i.test(await page.locator("[data-says=hands-free]").innerText()), "nothing is said of the pause");
    await see("counting", { into: picture, soon: true });
    await at(6);
  });

  step("hands-free: a key stops it, a doubtful one waits for a person", async () => {
    // Some meters end with Tab, and some press twice.
    await meterSends("5,38k", "Tab");
    await page.locator(".hands-free.counting").waitFor();
    await page.keyboard.press("Escape");
    await page.locator(".hands-free.counting").waitFor({ state: "detached" });
    await page.waitForTimeout(1800);
    assert(page.url().endsWith(idOf(6)), "it was kept although a key stopped it");
    await meterSends("O.L");
    await page.locator(".hands-free.held").waitFor();
    await page.waitForTimeout(1800);
    assert(page.url().endsWith(idOf(6)), "over range was kept by itself");
    await see("held", { into: picture });
    await assertWellMade(page);
    // The clip had slipped: the next reading takes its place.
    await meterSends("5380 Ohm");
    await page.keyboard.press("Enter");
    await page.locator(".hands-free.counting").waitFor();
    await at(7);
    await meterSends("7.60");
    await page.waitForFunction(() => location.hash.endsWith("/summary"));
    seconds = (performance.now() - seconds) / 1000;
  });

  step("the summary: all eight, the open one, the one that stands out, and what was not tested", async () => {
    await page.getByRole("heading", { name: "New harness: 8 of 8 read" }).waitFor();
    assertEqual(await page.getByText("Conductor only: insulation not tested", { exact: true }).count(), 1, "how often it is said");
    await page.locator(".summary-rows > li").nth(7).getByText("conforms").waitFor();
    const rows = (await page.locator(".summary-rows > li").allInnerTexts()).map((t) => t.replace(/\s+/g, " "));
    assertEqual(rows.length, 8, "rows");
    for (const [i, words] of [[0, /5\.20 kΩ conforms/], [2, /3 readings/], [3, /over range does not conform|over range.*open/i], [4, /5\.62 kΩ conforms/], [6, /5380 Ω|5\.380? kΩ/]]) assert(words.test(rows[i]), `row ${i + 1}: ${rows[i]}`);
    assert(/stands out from its siblings: higher/i.test(rows[7]), `the outlier: ${rows[7]}`);
    assertEqual(rows.filter((r) => /stands out/i.test(r)).length, 1, "how many stand out");
    await assertWellMade(page);
    await see("summary", { into: picture });
    await see("summary-rows", { at: ".summary-rows", into: picture });
  });

  step("the record has them all, with repeats, and the correction beside what was entered", async () => {
    const group = await view();
    assertEqual(group.checks.map((c) => c.last !== ""), leads.map(() => true), "each lead has a reading");
    assertEqual(group.checks.map((c) => c.verdict), leads.map((_, i) => (i === 3 ? "does-not-conform" : "conforms")), "verdicts");
    assertEqual(group.checks.map((c) => c.stands_out), leads.map((_, i) => i === 7), "outliers");
    const bodyOf = async (i) => (await (await page.request.get(`${bench.url}/api/event/${group.checks[i].last_event}`)).json()).body;
    assertEqual((await bodyOf(2)).repeats.length, 2, "repeats of the flexed lead");
    assertEqual((await bodyOf(3)).over_range, true, "over range");
    const history = await ask("/api/view/history", { aircraft: "pebblewing", about: idOf(4), most: 20 });
    const taken = history.answer.lines.find((l) => l.kind === "reading-taken");
    assert(taken.corrected && taken.words.includes("6.52") && taken.corrected_words.includes("5.62"), JSON.stringify(taken));
    console.log(`      ${size.name}: ${touches} taps and keys of a person, ${seconds.toFixed(0)} s`);
    assert(seconds < k_most_seconds, `it took ${seconds} s`);
    assert(touches <= k_most_touches, `it took ${touches} taps and keys`);
  });

  step("a line is read again from the summary, and the walk can begin anew", async () => {
    await tap(page.getByRole("link", { name: "Read again: New harness, lead 2 bottom" }));
    await at(3);
    await page.keyboard.type("5.10");
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => location.hash.endsWith("/summary"));
    await page.locator(".summary-rows > li").nth(3).getByText("conforms").waitFor();
    await tap(page.getByRole("button", { name: "Read the group anew" }));
    await page.locator("h1", { hasText: leads[0] }).waitFor();
    assert((await cells()).every((c) => c.includes("not read yet")), `strip: ${await cells()}`);
  });

  step("without a connection a reading waits, is shown as not judged, and goes when it is back", async () => {
    await page.getByRole("switch", { name: "Hands-free" }).uncheck();
    await bench.kill();
    await page.getByText("No connection: what you type is kept here.").waitFor();
    await reading().fill("5.25");
    await page.getByText("Not judged: no connection.").waitFor();
    await page.getByRole("button", { name: "Keep, next" }).click();
    await at(1);
    await page.locator(".kept-bar").getByText("waits, not judged").waitFor();
    await bench.start(bench.port);
    await page.locator(".kept-bar").getByText("conforms").waitFor({ timeout: 20_000 });
  });

  step("a check that cranks says first what must be so, before the probes and before the form", async () => {
    await page.goto(`${bench.url}/#/measure/group/cranking-voltage/cranking-voltage`);
    await page.locator(".caution-first", { hasText: "fuel off, ignition proven dead" }).waitFor();
    const above = (one, other) => page.evaluate(([a, b]) => Boolean(document.querySelector(a).compareDocumentPosition(document.querySelector(b)) & Node.DOCUMENT_POSITION_FOLLOWING), [one, other]);
    assert(await above(".caution-first", "#reading"), "the caution stands before the number");
    await assertWellMade(page);
    await page.goto(`${bench.url}/#/work/bench/starting-circuit`);
    await page.locator(".left .cautions", { hasText: "Cranking test" }).waitFor();
    assert(await above(".left .cautions", "form"), "the caution stands before the form");
    assertEqual(await page.locator(".right .cautions", { hasText: "Cranking test" }).count(), 0, "and is not said twice");
    await assertWellMade(page);
    await page.context().close();
  });
}

const passed = await run();
await browser.close();
for (const bench of benches) await bench.end();
process.exit(passed ? 0 : 1);
