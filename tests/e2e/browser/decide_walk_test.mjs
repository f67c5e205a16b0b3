// Renew, watch or leave on the demo aircraft: what the record says of each part, a decision with its
// reason, and the evidence beside it in the history. With WM_PICTURES=1 the pictures of
// docs/walk-decide.md are made.
import { assert, assertEqual, assertNoComplaints, assertReadingOrder, assertWellMade, laptop, openBrowser, openPage, phone, root, screenshots, settled, suite, tabOrder } from "./support.mjs";
import { Bench } from "./support_server.mjs";
import { join } from "node:path";

const shot = screenshots(join(root, "build", "screenshots", "decide-walk"));
const picture = process.env.WM_PICTURES ? screenshots(join(root, "docs", "pictures", "decide")) : shot;
const browser = await openBrowser();
const { test, run } = suite("decide walk");
const benches = [];

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
  const see = async (name) => {
    await settled(page);
    await page.evaluate(() => { document.activeElement?.blur(); scrollTo(0, 0); });
    await picture(page, `${size.name}-${name}`);
  };
  let first = "";

  step("Work leads to every part with what the record says of it", async () => {
    bench = new Bench();
    benches.push(bench);
    page = await openPage(browser, await bench.start(), size);
    await page.goto(`${bench.url}/#/work`);
    await page.getByRole("link", { name: "Renew, watch or leave" }).click();
    await page.locator(".lead", { hasText: "as the record leans" }).waitFor();
    const [renew, watch, leave] = (await page.locator(".lead").innerText()).match(/\d+/g).map(Number);
    assert(renew > 0 && watch > 0 && leave > 0, `of each some: ${renew}, ${watch}, ${leave}`);
    assertEqual(await page.getByRole("heading", { level: 2 }).allInnerTexts(), [`Leans to renewing (${renew})`, `Leans to watching (${watch})`, `Nothing asks for more (${leave})`], "in this order");
    await assertWellMade(page);
    assertReadingOrder(await tabOrder(page, 40));
    await see("all");
  });

  step("one part: limits, age, readings, service, consequence, each with its source", async () => {
    const part = page.locator("article").first();
    first = (await part.getByRole("heading", { level: 3 }).innerText()).trim();
    await part.getByRole("link", { name: first, exact: true }).click();
    await page.getByRole("heading", { level: 1, name: first }).waitFor();
    await page.getByText("The record leans to: renew.").waitFor();
    const topics = await page.locator(".evidence dt").allInnerTexts();
    for (const topic of ["Limit", "Age", "Consequence"]) assert(topics.some((t) => t.startsWith(topic)), `${topic} among ${topics.join(", ")}`);
    await assertWellMade(page);
    await see("one");
  });

  step("it is decided with a reason; without one the form says what is missing", async () => {
    await page.getByRole("link", { name: `Decide: ${first}` }).click();
    await page.locator("#f-reason").waitFor();
    assert(await page.locator('#f-decision input[value="renew"]').isChecked(), "what the record leans to is filled in");
    await page.locator('#f-decision input[value="watch"]').check();
    await page.getByRole("button", { name: "Decide", exact: true }).click();
    await page.locator(".problem").first().waitFor();
    await page.locator("#f-reason").fill("flown to the end of the season, looked at before each flight");
    await page.locator("#f-look_again").fill("2027-03-01");
    await assertWellMade(page);
    await see("form");
    await page.getByRole("button", { name: "Decide", exact: true }).click();
    await page.waitForFunction(() => location.hash.startsWith("#/work/decide/"));
    await page.getByText(/^Decided on .*: watch\.$/).waitFor();
    await assertWellMade(page);
    await see("decided");
  });

  step("the history keeps the decision with its reason", async () => {
    await page.goto(`${bench.url}/#/record/history`);
    await page.getByText(/Decided for .*: watch: flown to the end of the season/).first().waitFor();
    await page.goto(`${bench.url}/#/work/decide`);
    const part = page.locator("article", { has: page.getByRole("heading", { name: first, exact: true }) });
    await part.getByText(/^Decided on .*: watch\.$/).waitFor();
    await part.getByRole("link", { name: `Plan the change: ${first}` }).click();
    await page.locator("#f-title").waitFor();
    assertEqual(await page.locator("#f-title").inputValue(), `Renew: ${first}`, "the title of the change");
    await page.context().close();
  });
}

const passed = await run();
await browser.close();
for (const bench of benches) await bench.end();
process.exit(passed ? 0 : 1);
