// The demo's winter work of eight changes as a sheet of stages: guesses changed, two changes kept
// apart, one moved by hand with its price, a stage made of it. On a phone and on a laptop. With
// WM_PICTURES=1 the pictures of docs/walk-staging.md are made again. All changes are invented.
import { assert, assertEqual, assertNoComplaints, assertReadingOrder, assertWellMade, laptop, openBrowser, openPage, phone, root, screenshots, settled, suite, tabOrder } from "./support.mjs";
import { Bench } from "./support_server.mjs";
import { join } from "node:path";

const shot = screenshots(join(root, "build", "screenshots", "staging-walk"));
const picture = process.env.WM_PICTURES ? screenshots(join(root, "docs", "pictures", "staging")) : shot;
const browser = await openBrowser();
const { test, run } = suite("staging walk");
const benches = [];

// Beside the two that the demo has already planned.
const more = [
  ["left-leads", "Renew the left harness", "left-harness", "renewed"],
  ["right-leads", "Renew the right harness", "right-harness", "renewed"],
  ["starter-cable", "Renew the starter cable", "starter-contactor", "renewed"],
  ["ground-strap", "Clean and refit the ground strap", "battery", "opened-and-refitted"],
  ["pump-hose", "Renew the hose to the carburettor", "fuel-hose-carburettor", "renewed"],
  ["regulator", "Adjust the voltage regulator", "voltage-regulator", "adjusted"],
];

for (const size of [phone, laptop]) walk(size);

function walk(size) {
  let bench;
  let page;
  let broken = false;
  const step = (name, work) =>
    test(`${size.name}: ${name}`, async () => {
      assert(!broken, "an earlier step of this walk failed");
      broken = true;
      await work();
      assertNoComplaints(page);
      broken = false;
    });
  const see = async (name, at) => {
    await settled(page);
    if (at) await page.locator(at).first().evaluate((e) => scrollTo(0, e.getBoundingClientRect().top + scrollY - 70));
    else await page.evaluate(() => scrollTo(0, 0));
    await picture(page, `${size.name}-${name}`);
  };
  const act = async (name, id, input) => {
    const answer = await page.request.post(`${bench.url}/api/act/${name}`, { data: { id, happened: "2026-11-24", input }, headers: { "X-Witnessmark": "1" } });
    assert(answer.ok(), `${name}: ${await answer.text()}`);
  };
  const sheets = () => page.locator(".stage-sheet").evaluateAll((all) => all.map((e) => [...e.querySelectorAll(".in-stage strong")].map((s) => s.textContent)));
  const price = async () => Number(/([\d.]+) h/.exec(await page.locator(".price strong").first().innerText())[1]);

  step("eight changes are planned; Work leads to the sheet, which is well made", async () => {
    bench = new Bench();
    benches.push(bench);
    page = await openPage(browser, await bench.start(), size);
    for (const [i, [id, title, position, grade]] of more.entries())
      await act("plan-change", `00000000-0000-7000-8000-0000000000a${i}`, { aircraft: "pebblewing", id, title, position, grade });
    await page.goto(`${bench.url}/#/work`);
    await page.getByRole("link", { name: /^What flies together/ }).click();
    await page.locator(".stage-sheet").first().waitFor();
    await settled(page);
    assertEqual((await sheets()).flat().length, 8, "changes on the sheet");
    assertEqual(await page.locator(".guess").count(), 8, "guesses");
    await assertWellMade(page);
    assertReadingOrder(await tabOrder(page, 40));
    await see("guesses");
    await see("sheet", "section.right h2");
  });

  step("the rule of the plan holds: the oil hoses come after the isolators", async () => {
    const all = await sheets();
    const of = (words) => all.findIndex((s) => s.some((t) => t.includes(words)));
    assert(of("oil-cooler") > of("isolators"), JSON.stringify(all));
  });

  step("both harnesses are kept apart, and the sheet follows", async () => {
    await page.getByText("Never in one stage").click();
    await page.getByLabel("This change").selectOption("left-leads");
    await page.getByLabel("Never with").selectOption("right-leads");
    await page.getByLabel("Because").fill("one mistake made twice takes both");
    await page.getByRole("button", { name: "Keep them apart" }).click();
    await page.waitForFunction(() => {
      const all = [...document.querySelectorAll(".stage-sheet")].map((e) => e.textContent);
      return all.length > 0 && !all.some((t) => t.includes("Renew the left harness") && t.includes("Renew the right harness"));
    });
    await settled(page);
  });

  step("a change moved by hand shows its price at once, and the way back", async () => {
    const least = await price();
    const before = await sheets();
    await page.locator(".stage-sheet", { hasText: "voltage regulator" }).getByLabel("Stage of Adjust the voltage regulator").selectOption({ label: "A stage of its own" }).catch(async () => {
      // It has a stage of its own already: into the first then.
      await page.getByLabel("Stage of Adjust the voltage regulator").selectOption("0");
    });
    await page.locator(".price", { hasText: "as arranged by hand" }).waitFor();
    await settled(page);
    assert(JSON.stringify(await sheets()) !== JSON.stringify(before), "the sheet is as it was");
    assert((await price()) >= least - 0.05, `${await price()} by hand, ${least} at least`);
    await see("moved", "section.right h2");
    await page.getByRole("button", { name: "Back to the least" }).click();
    await page.locator(".price", { hasText: "expected" }).waitFor();
    assertEqual(await price(), least, "price of the least");
  });

  step("an arrangement against the rules is refused in words", async () => {
    const all = await sheets();
    const stage = String(all.findIndex((s) => s.includes("Renew the right harness")));
    await page.getByLabel("Stage of Renew the left harness").selectOption(stage);
    await page.locator(".trouble", { hasText: "harness" }).waitFor();
    await page.getByRole("button", { name: "Back to the least" }).click();
    await page.locator(".price", { hasText: "expected" }).waitFor();
  });

  step("a figure that is none is said at its field; what was typed is there after a reload", async () => {
    await page.locator(".guess summary").first().click();
    const first = page.locator(".guess").first().getByLabel("Chance of a fault");
    await first.fill("many");
    await page.locator(".guess").first().getByText("a number is needed").waitFor();
    await page.getByText("A figure is missing or out of its range").waitFor();
    await first.fill("15");
    await page.locator(".stage-sheet").first().waitFor();
    await page.reload();
    await page.locator(".stage-sheet").first().waitFor();
    await page.locator(".guess summary").first().click();
    await see("figures", ".guess");
    assertEqual(await page.locator(".guess").first().getByLabel("Chance of a fault").inputValue(), "15", "kept");
    await assertWellMade(page);
  });

  step("a stage is made of it", async () => {
    await page.getByRole("link", { name: "Make it a stage" }).first().click();
    await page.getByRole("heading", { level: 1, name: /stage/i }).waitFor();
    assert((await page.evaluate(() => location.hash)).includes("plan-stage"), "the form of a stage");
  });
}

const passed = await run();
await browser.close();
for (const bench of benches) await bench.end();
process.exit(passed ? 0 : 1);
