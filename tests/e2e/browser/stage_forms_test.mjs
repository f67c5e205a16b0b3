// What the forms of a stage know before anything is typed: mass and balance from the last revision
// and from the changes, the cut length from the change it is for. On the real server.
import { assert, assertEqual, assertNoComplaints, assertWellMade, laptop, openBrowser, openPage, phone, root, screenshots, settled, suite } from "./support.mjs";
import { Bench, command } from "./support_server.mjs";
import { join } from "node:path";

const shot = screenshots(join(root, "build", "screenshots", "stage-forms"));
const browser = await openBrowser();
const { test, run } = suite("stage forms");
const bench = new Bench();
const aircraft = ["--aircraft", "pebblewing"];
const plan = (...words) => command("plan", ...words.slice(0, 1), bench.binder, ...aircraft, ...words.slice(1));

plan("change", "id=fuel-hose", "title=Renew the fuel hose", "position=fuel-hose-strainer", "grade=renewed", "new_part=hose assembly, PTFE, -6", "document=sheet (invented)", "mass_in=0.9 lb", "arm=-30 in", "note=Runs behind the strainer.");
plan("change", "id=starter-new", "title=Renew the starter", "position=starter", "grade=renewed", "document=sheet (invented)", "mass_out=17.4 lb");
plan("change", "id=filter", "title=Look at the air filter", "position=air-filter", "grade=looked-at", "document=sheet (invented)");
plan("stage", "id=known", "title=Hose and filter", "changes/0=fuel-hose", "changes/1=filter");
plan("stage", "id=half", "title=Starter", "changes/0=starter-new");
const url = await bench.start();

const on = async (size, work) => {
  const page = await openPage(browser, url, size);
  try {
    await work(page);
    assertNoComplaints(page);
  } finally {
    await page.context().close();
  }
};
const visit = async (page, hash) => {
  await page.goto(`${url}/${hash}`);
  await page.waitForSelector("main h1");
  await settled(page);
};
const mass = (stage) => `#/work/act/revise-mass?stage=${stage}&back=${encodeURIComponent(`#/work/stage/${stage}`)}`;

for (const size of [phone, laptop]) {
  test(`${size.name}: what the record knows of the masses is filled in, from the mass-balance calculation`, () =>
    on(size, async (page) => {
      await visit(page, mass("known"));
      await page.locator("#f-empty_mass").waitFor();
      // 1087 lb at 11.2 in; 0.7 lb of the fitted hose out, 0.9 lb in, both at -30 in.
      assertEqual(await page.locator("#f-empty_mass").inputValue(), "1087.2", "empty mass");
      assertEqual(await page.locator("#f-empty_arm").inputValue(), "11.19", "empty arm");
      assertEqual(await page.locator("#f-items-0-mass").inputValue(), "0.7", "what comes out");
      assertEqual(await page.locator("#f-items-1-mass").inputValue(), "0.9", "what goes in");
      assertEqual(await page.locator("#f-forward_limit").inputValue(), "9.0", "limits of the last revision");
      assert(!(await page.locator(".known").innerText()).includes("air filter"), "what weighs nothing is listed");
      await page.getByText("These figures stand in the form.").waitFor();
      await assertWellMade(page);
      await shot(page, `${size.name}-mass-known`, true);
    }));

  test(`${size.name}: what is not known stays empty and is named; nothing typed is written over`, () =>
    on(size, async (page) => {
      await visit(page, mass("half"));
      await page.getByText("Not known: mass put in, arm from the datum.").waitFor();
      assertEqual(await page.locator("#f-empty_mass").inputValue(), "", "empty mass");
      await page.locator("#f-empty_mass").fill("1079.5");
      await page.locator("#f-items-add").click();
      await page.locator("#f-items-0-what").fill("starter, change of mass");
      await page.locator("#f-items-0-mass").fill("8.0");
      await page.locator("#f-items-0-added").locator('input[value="no"]').check();
      await page.locator("#f-items-0-arm").fill("-38");
      await page.getByText("Last revision and 1 item: 1079.0 lb").waitFor();
      assertEqual(await page.locator("#f-empty_mass").inputValue(), "1079.5", "what was typed");
      await page.waitForTimeout(250);
      await page.reload();
      await page.getByText("Last revision and 1 item").waitFor();
      assertEqual(await page.locator("#f-empty_mass").inputValue(), "1079.5", "what was typed, after a reload");
      await page.getByRole("button", { name: "Put these figures in" }).click();
      assertEqual(await page.locator("#f-empty_mass").inputValue(), "1079.0", "taken over when asked for");
      await assertWellMade(page);
      await shot(page, `${size.name}-mass-half`, true);
    }));
}

test("a mass and balance that was filled in can be recorded as it stands", () =>
  on(phone, async (page) => {
    await visit(page, mass("known"));
    await page.locator("#f-empty_mass").waitFor();
    await page.getByRole("button", { name: "Revise mass and balance" }).click();
    await page.getByRole("heading", { name: "Hose and filter" }).waitFor();
    await page.getByText("1087.2 lb at 11.19 in").first().waitFor();
    // Opened again, the same changes were counted a second time.
    await visit(page, mass("known"));
    await page.getByText("its changes are counted in").waitFor();
    await page.locator("#f-empty_mass").waitFor();
    assertEqual([await page.locator("#f-empty_mass").inputValue(), await page.locator("#f-items-0-mass").count()], ["", 0], "filled in twice");
  }));

test("each missing thing leads to the change that it names", () =>
  on(laptop, async (page) => {
    await visit(page, "#/work/stage/known");
    const rows = await page.locator(".missing > li").filter({ hasText: "Not done yet: " }).filter({ hasText: "Done: " }).allInnerTexts();
    for (const row of rows) {
      const [, named] = /Not done yet: (.*)\.\s/.exec(row) ?? [];
      assert(named && row.includes(`Done: ${named}`), `another change is offered: ${row}`);
    }
    assertEqual(rows.length, 2, "changes missing");
  }));

test("an untouched form of a calculation is not answered and not scolded", () =>
  on(laptop, async (page) => {
    await visit(page, "#/work/bench/length-allowance");
    await page.getByText("The answer appears here as you type.").waitFor();
  }));

test("from the change of a hose one tap opens the cut length, and the answer is kept with the change", () =>
  on(phone, async (page) => {
    await visit(page, "#/work/stage/known");
    assertEqual(await page.getByRole("link", { name: /^Cut length: / }).count(), 1, "offered for hoses only");
    await page.getByRole("link", { name: "Cut length: Renew the fuel hose" }).click();
    await page.locator("#f-size").waitFor();
    assertEqual(await page.locator("#f-size").inputValue(), "-6", "dash number, from the part that goes in");
    await page.locator("#f-between_seats").fill("14.5");
    for (const end of ["near_end", "far_end"]) {
      await page.locator(`#f-${end}-rigid`).fill("1.1");
      await page.locator(`#f-${end}-cut_off`).fill("0.8");
    }
    const keep = page.getByRole("button", { name: "Keep with the change" });
    await keep.waitFor();
    await assertWellMade(page);
    await shot(page, "phone-cut-length", true);
    await keep.click();
    await page.getByRole("heading", { name: "Hose and filter" }).waitFor();
    await page.getByText(/Cut length .* in, overall .* in \(between the two sealing seats 14.5 in/).waitFor();
    await page.getByText("Runs behind the strainer.").waitFor();
    // Kept again, it takes the place of the earlier one; the masses of the plan are still there.
    await page.getByRole("link", { name: "Cut length: Renew the fuel hose" }).click();
    assertEqual(await page.locator("#f-between_seats").inputValue(), "14.5", "what was typed is still there");
    await page.locator("#f-between_seats").fill("15");
    await page.getByText(/sealing seats 15 in/).waitFor();
    await keep.click();
    await page.getByRole("heading", { name: "Hose and filter" }).waitFor();
    await page.getByText(/sealing seats 15 in/).waitFor();
    await page.getByText(/sealing seats 14.5 in/).waitFor({ state: "detached" });
    await shot(page, "phone-change-with-length", true);
    const { lines } = JSON.parse(command("view", bench.binder, "history", ...aircraft, "about=fuel-hose", "--json")).answer;
    const last = lines.find((l) => l.kind === "change-planned");
    const event = await (await page.request.get(`${url}/api/event/${last.event}`)).json();
    assert(JSON.stringify(event.body.mass_in).includes("0.9"), `the plan has lost its mass: ${JSON.stringify(event.body)}`);
  }));

const good = await run();
await browser.close();
await bench.end();
process.exit(good ? 0 : 1);
