// A rough-running engine after a stage, led to its true cause on a phone: what shows, what does not,
// and the next thing to look at until it is found. The fault is the left harness; the walk only follows
// "Look next at". Changes are invented. With WM_PICTURES=1 the pictures of docs/walk-causes.md are made.
import { assert, assertEqual, assertNoComplaints, assertReadingOrder, assertWellMade, laptop, openBrowser, openPage, phone, root, screenshots, settled, suite, tabOrder } from "./support.mjs";
import { Bench } from "./support_server.mjs";
import { join } from "node:path";

const shot = screenshots(join(root, "build", "screenshots", "causes-walk"));
const picture = process.env.WM_PICTURES ? screenshots(join(root, "docs", "pictures", "causes")) : shot;
const browser = await openBrowser();
const { test, run } = suite("causes walk");
const benches = [];
const k_cause = "Renew the left harness";
const k_most_looks = 10;

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
  let count = 0;
  const act = async (name, input) => {
    count += 1;
    const id = `00000000-0000-7000-8000-0000000000c${count}`;
    const answer = await page.request.post(`${bench.url}/api/act/${name}`, { data: { id, happened: "2026-11-24", input: { aircraft: "pebblewing", ...input } }, headers: { "X-Witnessmark": "1" } });
    assert(answer.ok(), `${name}: ${await answer.text()}`);
  };
  const say = (words, symptom) => page.getByRole("button", { name: `${words}: ${symptom}`, exact: true });
  const next = async () => (await page.locator(".price strong").first().innerText()).trim();

  step("two changes were made; the stage leads to what it may be", async () => {
    bench = new Bench();
    benches.push(bench);
    page = await openPage(browser, await bench.start(), size);
    await act("plan-change", { id: "left-leads", title: k_cause, position: "left-harness", grade: "renewed" });
    await act("plan-change", { id: "pump-hose", title: "Renew the hose to the carburettor", position: "fuel-hose-carburettor", grade: "renewed" });
    await act("plan-stage", { id: "second", title: "Second stage of the winter", changes: ["left-leads", "pump-hose"] });
    await act("change-done", { change: "left-leads", text: "fitted" });
    await act("change-done", { change: "pump-hose", text: "fitted" });
    await page.goto(`${bench.url}/#/work/causes?stage=second`);
    await page.getByText("Say what was seen.").waitFor();
    assertEqual(await page.getByText("Changed lately (2)").count(), 1, "the changes of the stage");
    await settled(page);
    await assertWellMade(page);
    assertReadingOrder(await tabOrder(page, 60));
    await see("start");
  });

  step("what shows and what does not; a smell of fuel would stop everything", async () => {
    await say("Seen", "smell of fuel").click();
    await page.getByRole("alert").getByText("Do not start or fly").waitFor();
    await say("Not seen", "smell of fuel").click();
    await page.getByRole("alert").waitFor({ state: "detached" });
    await say("Seen", "rough running").click();
    await say("Seen", "drop of speed on one side").click();
    await say("Not seen", "vibration").click();
    await page.locator(".ranking li").first().waitFor();
    await settled(page);
    const list = await page.locator(".ranking li").allInnerTexts();
    assert(list.slice(0, 3).some((t) => t.includes(k_cause)), list.join("\n"));
    await assertWellMade(page);
    await see("list", "section.right h2");
  });

  step("each look moves the list, until the cause is found", async () => {
    let looks = 0;
    for (; looks < k_most_looks; ++looks) {
      const name = await next();
      if (name === k_cause) break;
      const row = page.locator(".ranking li", { hasText: name });
      if ((await row.count()) === 0) await page.getByRole("button", { name: /^All \d+/ }).click();
      await say("Nothing found", name).click();
      await page.waitForFunction((before) => document.querySelector(".price strong")?.textContent !== before, name);
      await settled(page);
    }
    assertEqual(await next(), k_cause, `after ${looks} looks`);
    console.log(`      ${size.name}: ${looks} looks before the true cause`);
    await see("looked", "section.right h2");
    await say("This is it", k_cause).click();
    await page.locator(".price", { hasText: `Found: ${k_cause}` }).waitFor();
    await page.reload();
    await page.locator(".price", { hasText: `Found: ${k_cause}` }).waitFor();
    await see("found", "section.right h2");
  });

  step("a cause of one's own is asked like the others; begin anew forgets the walk, not the cause", async () => {
    await page.getByText(/^A cause of your own/).click();
    await page.getByLabel("What it is").fill("Loose cowl flap");
    await page.getByRole("group", { name: "It shows as" }).getByLabel("rough running").check();
    await page.getByRole("button", { name: "Add it" }).click();
    await page.getByText("A cause of your own (1)").waitFor();
    const all = page.getByRole("button", { name: /^All \d+/ });
    if (await all.count()) await all.click();
    await page.locator(".ranking li", { hasText: "Loose cowl flap" }).waitFor();
    await page.getByRole("button", { name: "Begin anew" }).click();
    await page.getByText("Say what was seen.").waitFor();
    assertEqual(await page.getByText("A cause of your own (1)").count(), 1, "kept");
  });
}

const passed = await run();
await browser.close();
for (const bench of benches) await bench.end();
process.exit(passed ? 0 : 1);
