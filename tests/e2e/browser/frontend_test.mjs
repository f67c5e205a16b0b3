// The front end alone, against its stand-in server: frame, bench, forms with bad input, lost and
// found connection, restart of the server. The walk through the real server is another test.
import {
  assert, assertEqual, assertNoComplaints, assertReadingOrder, assertWellMade, laptop, openBrowser, openPage, phone, root,
  screenshots, settled, suite, tabOrder, toTop,
} from "./support.mjs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const { startMock } = await import(pathToFileURL(join(root, "web", "dev", "mock.mjs")));
const shot = screenshots(join(root, "build", "screenshots", "frontend"));
const browser = await openBrowser();
let mock = await startMock();
const { test, run } = suite("front end");

/// One page for one test, closed whatever happens.
async function on(size, work, options) {
  const page = await openPage(browser, mock.url, size, options);
  try {
    await work(page);
    assertNoComplaints(page);
  } finally {
    await page.context().close();
  }
}

async function visit(page, hash) {
  await page.goto(`${mock.url}/${hash}`);
  await page.waitForSelector("main h1");
  await settled(page);
}

const choose = (page, name) => page.getByRole("radio", { name, exact: true }).check();

const pages = [
  "#/bay", "#/bay/defect", "#/bay/position/oil-cooler", "#/work", "#/work/stage/stage-1", "#/work/decide", "#/work/decide/oil-cooler", "#/work/joints", "#/work/joint/upper-engine", "#/work/sign/stage-1/opens-stage", "#/work/all", "#/work/bench", "#/work/bench/conformity", "#/work/bench/mass-balance", "#/work/bench/line-element",
  "#/measure", "#/measure/group/left-harness/left-lead-2", "#/measure/check/left-lead-2", "#/measure/act/defect", "#/measure/act/measure", "#/runs", "#/runs/view/trend", "#/record", "#/record/waiting", "#/work/bench/nowhere",
];
for (const size of [phone, laptop]) {
  for (const dark of [false, true]) {
    test(`every page is well made on the ${size.name}${dark ? ", dark" : ""}`, () =>
      on(size, async (page) => {
        for (const hash of pages) {
          await visit(page, hash);
          try {
            await assertWellMade(page);
          } catch (error) {
            throw new Error(`${hash}: ${error.message}`);
          }
          if (!dark) await shot(page, `${size.name}-${hash.replace(/[#/]+/g, "-").slice(1)}`);
        }
      }, { dark }));
  }
  test(`the keyboard goes the way of the eye on the ${size.name}`, () =>
    on(size, async (page) => {
      for (const hash of ["#/bay", "#/work/bench/conformity", "#/measure/act/defect"]) {
        await visit(page, hash);
        const stops = await tabOrder(page);
        assertEqual(stops[0]?.name, "Skip to the page", `${hash}, first stop`);
        assertReadingOrder(stops);
      }
    }));
}

test("the skip link leads past the places without changing the page", () =>
  on(laptop, async (page) => {
    await visit(page, "#/work/bench");
    await toTop(page);
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    assertEqual(await page.evaluate(() => document.activeElement.id), "main", "focus");
    assert(page.url().endsWith("#/work/bench"), "the address changed");
  }));

test("a new page says so: title, current place, heading in focus", () =>
  on(laptop, async (page) => {
    await page.getByRole("link", { name: "Measure", exact: true }).click();
    await page.waitForFunction(() => document.activeElement?.tagName === "H1");
    assertEqual(await page.evaluate(() => document.activeElement.textContent), "Measure", "focus");
    assertEqual(await page.title(), "Measure · Witnessmark", "title");
    assertEqual(await page.locator(".places [aria-current=page]").allTextContents(), ["Measure"], "current place");
  }));

test("the aircraft can be switched and is remembered", () =>
  on(phone, async (page) => {
    await page.getByLabel("Aircraft").selectOption("Q-THB");
    await page.getByText("512.3").waitFor();
    await page.reload();
    await page.getByText("512.3").waitFor();
  }));

test("a verdict appears while typing, and the latest typed wins", () =>
  on(phone, async (page) => {
    await visit(page, "#/work/bench/conformity");
    await page.getByLabel("Reading", { exact: true }).fill("7.9");
    await page.getByLabel(/^Uncertainty of Reading/).fill("0.2");
    await page.getByRole("textbox", { name: /^Highest allowed/ }).fill("8.0");
    await choose(page, "guarded acceptance");
    await page.getByText("Undecided: too close to tell").waitFor();
    await page.getByLabel("Reading", { exact: true }).fill("9.1");
    await page.getByText("Does not conform").waitFor();
    await page.getByLabel("Reading", { exact: true }).pressSequentially("", { delay: 5 });
    await page.getByLabel("Reading", { exact: true }).fill("3.2");
    await page.getByText("Conforms", { exact: true }).waitFor();
    await page.getByRole("button", { name: "Show the answer" }).click();
    assertEqual(await page.evaluate(() => document.activeElement.className), "right", "focus goes to the answer");
  }));

test("bad input is marked at its field, with what was expected, and the first takes the focus", () =>
  on(phone, async (page) => {
    await visit(page, "#/work/bench/line-element");
    await page.getByLabel("Flow", { exact: true }).fill("38 psi");
    await page.getByLabel("Length", { exact: true }).fill("1,5");
    await page.waitForTimeout(500);
    await page.getByRole("button", { name: "Show the answer" }).click();
    await page.getByText("3 things to put right").waitFor();
    assertEqual(await page.evaluate(() => document.activeElement.id), "f-flow", "focus");
    for (const [id, words] of [["f-flow", "38 psi"], ["f-element-length", "comma"], ["f-element-bore", "needed"]]) {
      const described = await page.locator(`#${id}`).getAttribute("aria-describedby");
      assert(described?.startsWith(`${id}-problem`), `${id} is not described by its problem`);
      assert((await page.locator(`#${id}-problem`).textContent()).includes(words), `${id} does not say "${words}"`);
      assertEqual(await page.locator(`#${id}`).getAttribute("aria-invalid"), "true", `${id} invalid`);
    }
    await shot(page, "phone-bad-input", true);
    await assertWellMade(page);
    // Put right, they go quiet by themselves.
    await page.getByLabel("Flow", { exact: true }).fill("9.4");
    await page.getByLabel("Length", { exact: true }).fill("3 ft 2 1/2 in");
    await page.getByLabel("Bore", { exact: true }).fill("3/8");
    await page.getByText("Pressure lost").nth(1).waitFor();
    assertEqual(await page.locator(".problem").count(), 0, "problems left");
  }));

test("an empty form is not scolded while it is filled in", () =>
  on(laptop, async (page) => {
    await visit(page, "#/work/bench/conformity");
    await page.getByRole("textbox", { name: /^Highest allowed/ }).fill("8");
    await page.getByText("Still needed: Reading, Decision rule.").waitFor();
    assertEqual(await page.locator(".problem").count(), 0, "problems");
  }));

test("list elements can be added, taken away and put back, by keyboard alone", () =>
  on(laptop, async (page) => {
    await visit(page, "#/work/bench/mass-balance");
    const add = page.getByRole("button", { name: /^Add/ });
    await add.focus();
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.activeElement?.id === "f-items-0-name");
    await page.keyboard.type("starter");
    await add.focus();
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.activeElement?.id === "f-items-1-name");
    await page.keyboard.type("battery");
    await page.getByRole("button", { name: "Take away Item 1" }).focus();
    await page.keyboard.press("Enter");
    // Drawn after the key, not with it.
    const firstIs = (text) => page.waitForFunction((wanted) => document.querySelector("#f-items-0-name")?.value === wanted, text);
    await firstIs("battery");
    await page.getByRole("button", { name: "Put no. 1 back" }).focus();
    await page.keyboard.press("Enter");
    await firstIs("starter");
    assertEqual(await page.locator("#f-items-1-name").inputValue(), "battery", "and its neighbour");
  }));

test("what was typed is there again after a reload, and gone after recording", () =>
  on(phone, async (page) => {
    await visit(page, "#/measure/act/defect");
    await page.getByLabel("What was noticed").fill("smell of fuel at the strainer");
    await page.waitForTimeout(250);
    await page.reload();
    assertEqual(await page.getByLabel("What was noticed").inputValue(), "smell of fuel at the strainer", "draft");
    await choose(page, "Yes");
    await page.getByRole("button", { name: "Record" }).click();
    await page.getByRole("heading", { name: "Recorded" }).waitFor();
    await page.getByText("Recorded: Defect").waitFor();
    assertEqual(await page.getByLabel("What was noticed").inputValue(), "", "after recording");
    await page.reload();
    assertEqual(await page.getByLabel("What was noticed").inputValue(), "", "after a reload");
    assertEqual(mock.state.entries.at(-1).input.aircraft, "Q-PEB", "the aircraft that was recorded");
  }));

test("a form opened before anything else is known starts with the right aircraft", async () => {
  const context = await browser.newContext();
  const page = await context.newPage();
  try {
    await page.addInitScript(() => localStorage.getItem("wm.aircraft") ?? localStorage.setItem("wm.aircraft", '"of another binder"'));
    await page.route("**/api/view/header", async (route) => {
      await new Promise((resolve) => setTimeout(resolve, 600));
      await route.continue();
    });
    await page.goto(`${mock.url}/#/measure/act/defect`);
    await page.getByLabel("What was noticed").fill("play in the throttle lever");
    await choose(page, "No");
    await page.getByRole("button", { name: "Record" }).click();
    await page.getByRole("heading", { name: "Recorded" }).waitFor();
    assertEqual(mock.state.entries.at(-1).input.aircraft, "Q-PEB", "aircraft");
  } finally {
    await context.close();
  }
});

test("a photo goes with the entry", () =>
  on(phone, async (page) => {
    await visit(page, "#/measure/act/defect");
    await page.getByLabel("What was noticed").fill("chafed lead, see the photo");
    await choose(page, "No");
    await page.getByLabel("Photo").setInputFiles({ name: "lead.png", mimeType: "image/png", buffer: Buffer.from("not really a picture") });
    await page.getByRole("link", { name: "lead.png" }).waitFor();
    await page.getByRole("button", { name: "Record" }).click();
    await page.getByRole("heading", { name: "Recorded" }).waitFor();
    assert(/^[0-9a-f]{64}$/.test(mock.state.entries.at(-1).input.photo), "the entry names no attachment");
  }));

test("without a connection entries wait here, say so, and go once when it is back", () =>
  on(phone, async (page) => {
    const before = mock.state.entries.length;
    await visit(page, "#/measure/act/defect");
    await page.context().setOffline(true);
    await page.getByText("No connection: what you type is kept here.").waitFor();
    await page.getByLabel("What was noticed").fill("rattle at idle, right side");
    await choose(page, "Yes");
    await page.getByLabel("Photo").setInputFiles({ name: "idle.png", mimeType: "image/png", buffer: Buffer.from("kept in the browser") });
    await page.getByText("goes with the entry when the connection is back").waitFor();
    await page.getByRole("button", { name: "Record" }).click();
    await page.getByRole("heading", { name: "Not yet recorded" }).waitFor();
    await page.getByText("1 entry is not yet recorded.").waitFor();
    await assertWellMade(page);
    await shot(page, "phone-no-connection");
    await page.getByRole("link", { name: "See it" }).click();
    await page.getByText("Waiting for a connection").waitFor();
    assertEqual(mock.state.entries.length, before, "entries at the server");
    await page.context().setOffline(false);
    await page.getByText("Nothing waits").waitFor({ timeout: 15000 });
    await page.getByText("Recorded: Defect").waitFor();
    assertEqual(mock.state.entries.length, before + 1, "entries at the server");
    assert(/^[0-9a-f]{64}$/.test(mock.state.entries.at(-1).input.photo), "the photo went along");
    assertEqual(await page.getByText("No connection:").count(), 0, "notice gone");
  }));

test("an entry refused after waiting keeps its text and can be opened again", () =>
  on(phone, async (page) => {
    await visit(page, "#/measure/act/defect");
    await page.context().setOffline(true);
    await page.getByLabel("What was noticed").fill("x".repeat(201));
    await choose(page, "Yes");
    await page.getByRole("button", { name: "Record" }).click();
    await page.getByText("1 entry is not yet recorded.").waitFor();
    await page.context().setOffline(false);
    await page.getByText("1 entry was refused.").waitFor({ timeout: 15000 });
    await page.getByRole("link", { name: "See it" }).click();
    await page.getByText("longer than 200 letters").waitFor();
    await assertWellMade(page);
    await page.getByRole("button", { name: "Open it again" }).click();
    assertEqual((await page.getByLabel("What was noticed").inputValue()).length, 201, "text");
  }));

test("no answer is no verdict", () =>
  on(laptop, async (page) => {
    await visit(page, "#/work/bench/conformity");
    await page.getByRole("button", { name: "Fill in the example" }).click();
    await page.getByText("Undecided: too close to tell").waitFor();
    await page.context().setOffline(true);
    await page.getByLabel("Reading", { exact: true }).fill("5.5");
    await page.locator(".not-judged", { hasText: "Not judged: no connection." }).waitFor();
    assertEqual(await page.getByText("Undecided: too close to tell").count(), 0, "the old verdict is gone");
    await page.context().setOffline(false);
    await page.getByText("Conforms", { exact: true }).waitFor({ timeout: 15000 });
  }));

test("phone and laptop stay in step", async () => {
  const one = await openPage(browser, mock.url, phone);
  const two = await openPage(browser, mock.url, laptop);
  try {
    let asked = 0;
    two.on("request", (r) => (asked += r.url().endsWith("/api/view/bay") ? 1 : 0));
    await visit(one, "#/measure/act/defect");
    await one.getByLabel("What was noticed").fill("oil on the nose leg");
    await choose(one, "No");
    await one.getByRole("button", { name: "Record" }).click();
    await one.getByRole("heading", { name: "Recorded" }).waitFor();
    for (let i = 0; i < 40 && asked === 0; i++) await two.waitForTimeout(50);
    assert(asked > 0, "the other page did not ask again");
  } finally {
    await one.context().close();
    await two.context().close();
  }
});

test("a page left open recovers when the server restarts, and nothing typed is lost", () =>
  on(phone, async (page) => {
    await visit(page, "#/measure/act/defect");
    await page.getByLabel("What was noticed").fill("white powder on the battery post");
    const { port, state } = mock;
    await mock.close();
    try {
      await page.getByText("No connection: what you type is kept here.").waitFor();
      await choose(page, "No");
      await page.getByRole("button", { name: "Record" }).click();
      await page.getByText("1 entry is not yet recorded.").waitFor();
      await page.getByLabel("What was noticed").fill("and a second thing, half typed");
    } finally {
      mock = await startMock({ port, state });
    }
    await page.getByText("Recorded: Defect").waitFor({ timeout: 20000 });
    assertEqual(mock.state.entries.at(-1).input.what, "white powder on the battery post", "what was recorded");
    assertEqual(await page.getByLabel("What was noticed").inputValue(), "and a second thing, half typed", "what was being typed");
    mock.record("elsewhere");
    await page.waitForFunction(() => !document.body.textContent.includes("No connection:"));
  }));

test("what is typed while an entry is still on its way stays in the form", () =>
  on(phone, async (page) => {
    await visit(page, "#/measure/act/defect");
    let go_on;
    const held = new Promise((resolve) => (go_on = resolve));
    await page.route("**/api/act/defect", async (route) => {
      if (route.request().method() === "POST") await held;
      await route.continue();
    });
    await page.getByLabel("What was noticed").fill("oil on the left tyre");
    await choose(page, "No");
    await page.getByRole("button", { name: "Record" }).click();
    await page.getByRole("button", { name: "Recording" }).waitFor();
    await page.getByLabel("What was noticed").fill("the next one");
    go_on();
    await page.getByText("Recorded: Defect").waitFor();
    assertEqual(mock.state.entries.at(-1).input.what, "oil on the left tyre", "what was recorded");
    assertEqual(await page.getByLabel("What was noticed").inputValue(), "the next one", "what was typed meanwhile");
    assertEqual(await page.getByRole("radio", { name: "No", exact: true }).isChecked(), false, "what was sent is gone from the form");
    await page.reload();
    await page.waitForFunction(() => [...document.querySelectorAll("input, textarea")].some((e) => e.value === "the next one"));
  }));

test("a page closed while its entry is on its way does not offer the same entry again", () =>
  on(phone, async (page) => {
    await visit(page, "#/measure/act/defect");
    // The connection drops after the entry was written down here and before the page hears of it.
    await page.route("**/api/act/defect", (route) => (route.request().method() === "POST" ? undefined : route.continue()));
    await page.getByLabel("What was noticed").fill("paint blistered at the muffler");
    await choose(page, "No");
    await page.getByRole("button", { name: "Record" }).click();
    await page.getByRole("button", { name: "Recording" }).waitFor();
    const before = mock.state.entries.length;
    await page.unroute("**/api/act/defect");
    await page.reload();
    // It is sent as soon as the page is there again, perhaps before there is a place to say so.
    for (let i = 0; i < 100 && mock.state.entries.length === before; i++) await page.waitForTimeout(100);
    await page.waitForFunction(() => !Object.keys(localStorage).some((key) => key.startsWith("wm.outbox.")));
    assertEqual(await page.getByLabel("What was noticed").inputValue(), "", "the form after it");
    assertEqual(mock.state.entries.length, before + 1, "how often it was recorded");
  }));

test("the plot is fetched only by a page that has one", () =>
  on(laptop, async (page) => {
    const parts = [];
    page.on("request", (r) => (r.url().includes("/part.") ? parts.push(r.url()) : 0));
    await visit(page, "#/runs/view/trend");
    assertEqual(parts.length, 0, "parts before");
    await page.locator("select#f-position").waitFor({ timeout: 20000 });
    await page.getByLabel("Position").selectOption("left-harness");
    await page.locator(".plot canvas").waitFor();
    await assertWellMade(page);
    await shot(page, "laptop-trend");
  }));

test("the page prints without its controls", () =>
  on(laptop, async (page) => {
    await page.emulateMedia({ media: "print" });
    assertEqual(await page.locator(".places").isVisible(), false, "places");
    // The plan comes with its view: wait for it, then look.
    await page.locator(".bay-plan").waitFor({ state: "visible", timeout: 20000 });
    assertEqual(await page.locator(".bay-plan").isVisible(), true, "plan");
    await shot(page, "print-bay");
  }));

const good = await run();
await browser.close();
await mock.close();
process.exit(good ? 0 : 1);
