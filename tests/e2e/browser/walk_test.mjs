// The walk: from the bay to a signed entry and a closed stage, on the real server and a fresh demo
// binder, on a phone and on a laptop. Each step is a test of its own; a later one needs the
// earlier ones, so after a failure the rest of that walk fails too.
import {
  assert, assertEqual, assertNoComplaints, assertReadingOrder, assertWellMade, laptop, openBrowser, openPage, phone, root,
  screenshots, settled, suite, tabOrder,
} from "./support.mjs";
import { Bench, command } from "./support_server.mjs";
import { join } from "node:path";

const shot = screenshots(join(root, "build", "screenshots", "walk"));
const browser = await openBrowser();
const { test, run } = suite("walk");
const benches = [];

const owner = "owner of Pebblewing (invented)";
const second = "second person (invented)";

for (const size of [phone, laptop]) walk(size);

function walk(size) {
  let bench;
  let page;
  let stage = "";
  const step = (name, work) =>
    test(`${size.name}: ${name}`, async () => {
      await work();
      assertNoComplaints(page);
    });
  const see = (name) => shot(page, `${size.name}-${name}`, true);
  const visit = async (hash) => {
    await page.goto(`${bench.url}/${hash}`);
    await page.waitForSelector("main h1");
    await settled(page);
  };
  /// By the keys of the description: they are the ids of the fields.
  const enter = async (values) => {
    for (const [key, value] of Object.entries(values)) {
      const field = page.locator(`#f-${key}`);
      await field.waitFor({ state: "attached" });
      const tag = await field.evaluate((e) => e.tagName);
      if (tag === "SELECT") await field.selectOption(value);
      else if (tag === "FIELDSET" && Array.isArray(value)) for (const v of value) await field.getByRole("checkbox", { name: v }).check();
      else if (tag === "FIELDSET") await field.locator(`input[value="${value}"]`).check();
      else await field.fill(value);
    }
  };
  const press = (name) => page.getByRole("button", { name, exact: true }).click();
  const follow = (name) => page.locator("main").getByRole("link", { name, exact: typeof name === "string" }).first().click();
  /// A form that goes back where it came from; notes are read first.
  const record = async (button) => {
    const from = page.url();
    await press(button);
    await page.waitForFunction((url) => location.href !== url || document.querySelector(".told, .problem, .summary"), from);
    if ((await page.locator(".problem").count()) > 0) throw new Error(`refused: ${(await page.locator(".problem").allInnerTexts()).join(" | ")}`);
    const on = page.getByRole("link", { name: "Go on" });
    if ((await on.count()) > 0) await on.click();
    await page.waitForFunction((url) => location.href !== url, from);
    // The page follows its address a moment later.
    await page.waitForTimeout(120);
    await settled(page);
  };

  step("the bay shows what is past its limit, doubtful, unknown, and what is ahead", async () => {
    bench = new Bench();
    benches.push(bench);
    page = await openPage(browser, await bench.start(), size);
    await page.locator(".title-block").waitFor();
    const counts = await page.locator(".title-block").innerText();
    assert(/\b1 past limit · 2 doubtful · 3 unknown/.test(counts), `counts: ${counts}`);
    assert((await page.locator(".ahead-list li").count()) >= 3, "fewer than three limits ahead");
    await assertWellMade(page);
    await see("bay");
  });

  step("a defect is written down in ten seconds", async () => {
    const began = performance.now();
    await page.getByRole("link", { name: "Write down a defect" }).click();
    await page.waitForFunction(() => document.activeElement?.id === "f-text");
    await page.keyboard.type("fuel smell at the strainer after the flight");
    await page.getByRole("button", { name: "Keep" }).click();
    await page.getByText("Kept.").waitFor();
    assert(performance.now() - began < 10_000, "it took longer than ten seconds");
    await see("defect");
    await page.getByRole("link", { name: /^Fly with it/ }).click();
    await enter({ decision: "fly", reason: "hose is renewed before the next flight" });
    await record("Decide");
    await page.getByText("fuel smell at the strainer").first().waitFor();
  });

  step("changes are planned, put into a stage, and the program objects", async () => {
    const plans = [
      { title: "Renew the fuel hose, strainer to pump", position: "fuel-hose-strainer", grade: "renewed", joints: ["Fuel hose at the strainer", "Fuel hose at the engine pump"], document: "hose maker's sheet (invented), rev. B" },
      { title: "Renew the left ignition harness", position: "left-harness", grade: "renewed", joints: ["Left harness at the magneto"], document: "ignition maker's manual (invented), rev. 2" },
      { title: "Clean the air filter", position: "air-filter", grade: "looked-at", document: "engine maker's manual (invented), rev. 4" },
      { title: "Adjust the mixture cable", position: "mixture-cable", grade: "adjusted", document: "engine maker's manual (invented), rev. 4" },
    ];
    for (const plan of plans) {
      await visit("#/work");
      await follow("Plan a change");
      await enter(plan);
      if (plan === plans[0]) {
        await assertWellMade(page);
        await see("plan-change");
      }
      await record("Plan it");
    }
    await visit("#/work");
    await page.getByRole("checkbox", { name: `Choose ${plans[0].title}` }).check();
    await page.getByRole("checkbox", { name: `Choose ${plans[1].title}` }).check();
    await follow("Put 2 into a stage");
    await enter({ title: "Stage 8: fuel hose and left harness" });
    await record("Make the stage");
    await page.getByRole("heading", { name: "Objection" }).first().waitFor();
    await assertWellMade(page);
    await see("objection");
    await page.getByRole("link", { name: "Stage 8: fuel hose and left harness" }).click();
    await page.waitForFunction(() => location.hash.startsWith("#/work/stage/"));
    stage = decodeURIComponent(page.url().split("/stage/")[1]);
    while ((await page.getByRole("heading", { name: "Objection" }).count()) > 0) {
      const before = await page.getByRole("heading", { name: "Objection" }).count();
      await page.locator(".objection").getByRole("link", { name: /^Independent inspection/ }).first().click();
      await enter({ by: second, certificate: "none (invented)", text: "all disturbed joints of both systems seen and locked" });
      await record("Answer it");
      await page.waitForFunction((n) => document.querySelectorAll(".objection:not(.settled)").length < n, before);
    }
    await page.getByText("Settled.").first().waitFor();
    // The other two go into a stage of their own.
    await visit("#/work");
    await page.getByRole("checkbox", { name: `Choose ${plans[2].title}` }).check();
    await page.getByRole("checkbox", { name: `Choose ${plans[3].title}` }).check();
    await follow("Put 2 into a stage");
    await enter({ title: "Stage 9: filter and mixture cable" });
    await record("Make the stage");
  });

  step("the cut length of the hose, and the cards", async () => {
    await visit("#/work");
    await follow(/^Cut length of a hose/);
    await page.getByRole("button", { name: "Fill in the example" }).click();
    await page.locator("dl.answer").first().waitFor();
    await assertWellMade(page);
    await see("cut-length");
    await visit(`#/work/stage/${stage}`);
    const cards = await page.locator('a[href^="/api/print/"]').evaluateAll((links) => links.map((l) => l.href));
    assert(cards.length >= 2, `cards offered: ${cards.length}`);
    for (const card of cards) {
      const answer = await page.request.get(card);
      assert(answer.ok() && (await answer.body()).subarray(0, 5).toString() === "%PDF-", `no PDF at ${card}: ${answer.status()}`);
    }
  });

  step("open joints appear on the list as the work starts", async () => {
    await visit(`#/work/joints?stage=${stage}`);
    for (const name of ["Fuel hose at the strainer", "Fuel hose at the engine pump", "Left harness at the magneto"]) await page.getByRole("checkbox", { name: `Choose ${name}` }).check();
    await page.getByRole("group", { name: "3 joints chosen" }).getByRole("link", { name: "open" }).click();
    await enter({ by: owner });
    await record("Record the joints");
    await page.getByRole("heading", { name: "Open: 3" }).waitFor();
    await visit("#/work/joints");
    await follow("Count one in");
    await enter({ id: "red cap 3", where: "strainer outlet" });
    await record("Count it");
    await visit("#/bay");
    await page.getByRole("heading", { name: "3 joints are open" }).waitFor();
    await assertWellMade(page);
    await see("bay-open");
  });

  step("four lead readings: conforms, does not, open, undecided", async () => {
    await visit("#/measure");
    await assertWellMade(page);
    await see("measure");
    await visit("#/measure/group/left-harness/left-lead-1");
    await page.getByLabel("Instrument", { exact: true }).selectOption("bench-meter");
    await page.getByLabel("Range used").selectOption("60 kohm");
    await page.getByLabel("Test leads").selectOption("nulled");
    const verdict = page.locator(".live-verdict .verdict");
    const reading = page.getByLabel("Reading", { exact: true });
    const keep = async (words, name) => {
      await verdict.filter({ hasText: words }).waitFor();
      await settled(page);
      await page.evaluate(() => scrollTo(0, 0));
      await shot(page, `${size.name}-reading-${name}`);
      await assertWellMade(page);
      const from = page.url();
      await page.getByRole("button", { name: /^Keep/ }).click();
      await page.waitForFunction((url) => location.href !== url, from);
    };
    await reading.fill("5.20");
    await keep(/^Conforms/, "conforms");
    await reading.fill("9.10");
    await keep(/^Does.not.conform/, "does-not-conform");
    await page.getByLabel(/over-range/).check();
    await keep(/open/, "open");
    await reading.fill("7.97");
    await keep(/^Undecided/, "undecided");
    await page.getByRole("heading", { name: "4 of 4 read" }).waitFor();
  });

  step("changes done, joints closed, bung out, mass and balance revised", async () => {
    for (const [title, text] of [["Renew the fuel hose, strainer to pump", "hose made, proved with liquid, fitted"], ["Renew the left ignition harness", "harness fitted, leads in their order"]]) {
      await visit(`#/work/stage/${stage}`);
      await page.getByRole("link", { name: `Done: ${title}` }).first().click();
      await enter({ text, proof: "held 300 psi with liquid for one minute, dry", by: owner });
      await record("Done");
    }
    const torques = { "Fuel hose at the strainer": "120 in-lb", "Fuel hose at the engine pump": "120 in-lb", "Left harness at the magneto": "20 in-lb" };
    for (const [joint, torque] of Object.entries(torques)) {
      await visit(`#/work/joints?stage=${stage}`);
      await page.locator(".joint-link", { hasText: joint }).first().click();
      for (let i = 0; i < 5; i++) {
        const button = page.getByRole("button", { name: /^Record: / });
        await button.waitFor();
        const state = (await button.innerText()).replace("Record: ", "");
        if (!(await page.locator("h1").innerText()).includes(joint)) break;
        if (state === "torqued") await enter({ torque });
        await enter({ by: state === "seen" ? second : owner });
        if (state === "torqued" && joint.includes("strainer")) {
          await assertWellMade(page);
          await see("joint");
        }
        await record(`Record: ${state}`);
        if (state === "seen") break;
      }
    }
    await visit("#/work/joints");
    await page.getByRole("heading", { name: "Open: 0" }).waitFor();
    await follow("Taken out");
    await record("Count it");
    await visit(`#/work/stage/${stage}`);
    await page.getByRole("link", { name: "Revise mass and balance" }).first().click();
    await enter({ empty_mass: "1087.6 lb", empty_arm: "11.2 in", document: "calculation of today: hose 0.6 lb heavier" });
    await record("Revise mass and balance");
  });

  step("leak run and ground run, then the entry is read and signed: the stage is open", async () => {
    const runs = [
      ["leak-run-static", { result: "satisfactory", text: "boost pump on for two minutes, dry", by: owner }],
      ["leak-run-engine", { result: "satisfactory", text: "ten minutes at idle, uncowled, dry", by: owner }],
      ["ground-run", { result: "satisfactory", text: "both magnetos even", ambient_temperature: "41 degF", ambient_pressure: "29.92 inHg", by: owner }],
    ];
    for (const [name, values] of runs) {
      await visit(`#/work/act/stage-step?stage=${stage}&step=${name}&back=${encodeURIComponent(`#/work/stage/${stage}`)}`);
      await enter(values);
      await record("Record");
    }
    await visit("#/work/joints");
    if ((await page.getByRole("link", { name: "Close the cowl" }).count()) > 0) {
      await follow("Close the cowl");
      await enter({ by: owner });
      await record("Record");
    }
    await visit(`#/work/stage/${stage}`);
    await see("stage-ready");
    await assertWellMade(page);
    await follow("Read and sign it open");
    const text = await page.locator(".entry-text").innerText();
    for (const words of ["fuel hose", "41 degF"]) assert(text.includes(words), `the entry does not say "${words}": ${text}`);
    await enter({ name: owner, signer: "owner" });
    await assertWellMade(page);
    await see("sign");
    await press("Sign it open");
    await page.getByRole("heading", { name: "Signed" }).waitFor();
    await page.locator(".due-line").getByText("Check flight due:").waitFor();
    await visit("#/bay");
    await page.locator(".due-line").getByText("Check flight due:").waitFor();
    await see("flight-due");
  });

  step("check flight and second look are entered, the stage is closed", async () => {
    await visit("#/runs");
    await assertWellMade(page);
    await see("runs");
    await page.locator(".stage-card", { hasText: "Stage 8" }).getByRole("link", { name: "Enter it" }).first().click();
    await enter({ result: "satisfactory", text: "climb and cruise, gauges as before", flight_time: "40 min", by: owner });
    await record("Record");
    await visit(`#/work/act/stage-step?stage=${stage}&step=second-look&back=${encodeURIComponent(`#/work/stage/${stage}`)}`);
    await enter({ result: "satisfactory", text: "dry, marks unmoved", by: second });
    await record("Record");
    await follow("Read and sign it closed");
    await enter({ name: owner, signer: "owner" });
    await press("Sign it closed");
    await page.getByRole("heading", { name: "Signed" }).waitFor();
    await visit("#/bay");
    await page.locator(".title-block").waitFor();
    await page.locator(".due-line").getByText("Check flight due:").waitFor({ state: "detached" });
  });

  step("a mistyped reading is corrected; both stay visible", async () => {
    await visit("#/measure/check/left-lead-1");
    await assertWellMade(page);
    await see("check-history");
    await page.getByRole("link", { name: /^Correct the reading/ }).first().click();
    await enter({ value: "5.02 kohm", "why-corrected": "mistyped" });
    await assertWellMade(page);
    await see("correct");
    await press("Record the correction");
    await page.waitForFunction(() => location.hash.startsWith("#/measure/check/"));
    await visit("#/record");
    await assertWellMade(page);
    await see("record");
    await visit("#/record/history?about=left-lead-1");
    const both = page.locator(".both").first();
    await both.waitFor();
    const text = await both.innerText();
    assert(text.includes("5.20") && text.includes("5.02") && text.includes("mistyped"), `the correction shows: ${text}`);
    await assertWellMade(page);
    await see("corrected");
  });

  step("the server is killed in the middle of an entry; nothing is lost", async () => {
    await visit("#/bay/defect");
    await enter({ text: "white powder at the battery post" });
    await bench.kill();
    await page.getByText("No connection: what you type is kept here.").waitFor();
    await page.getByRole("button", { name: "Keep" }).click();
    await page.getByText("1 entry is not yet recorded.").waitFor();
    // The form empties itself a moment later on a busy machine.
    await page.waitForFunction(() => document.querySelector("#f-text")?.value === "");
    await page.locator("#f-text").fill("a second thing, half typed");
    await page.waitForTimeout(300);
    await bench.start(bench.port);
    await page.getByText(/^Recorded: /).waitFor({ timeout: 20_000 });
    assertEqual(await page.locator("#f-text").inputValue(), "a second thing, half typed", "what was being typed");
    await page.reload();
    await page.locator("#f-text").waitFor();
    assertEqual(await page.locator("#f-text").inputValue(), "a second thing, half typed", "after a reload");
    await page.locator("#f-text").fill("");
    await visit("#/bay");
    await page.getByText("white powder at the battery post").first().waitFor();
    await visit("#/record");
    await press("Verify the chain");
    await page.getByText("Every link holds.").waitFor();
    command("verify", bench.binder);
  });

  step("an oil change is a quick job of less than a minute", async () => {
    const began = performance.now();
    await visit("#/work");
    await follow(/^Quick job/);
    await enter({ what: "oil-change", quantity: "6", text: "oil drained warm, filter renewed", by: owner });
    const limits = page.locator("#f-limits");
    if ((await limits.locator("summary").count()) > 0) await limits.locator("summary").click();
    await limits.getByRole("checkbox", { name: /oil/i }).first().check();
    await assertWellMade(page);
    await see("quick-job");
    await press("Job done");
    await page.locator(".told").waitFor();
    assert(performance.now() - began < 60_000, "it took longer than a minute");
    await follow("Read and sign the entry");
    await page.locator(".entry-text").waitFor();
    await enter({ name: owner, signer: "owner" });
    await press("Sign");
    await page.getByRole("heading", { name: "Signed" }).waitFor();
  });

  step("another screen of the same binder follows", async () => {
    const other = await openPage(browser, bench.url, size === phone ? laptop : phone);
    try {
      await other.locator(".title-block").waitFor();
      await visit("#/bay/defect");
      await enter({ text: "loose clamp on the breather" });
      await page.getByRole("button", { name: "Keep" }).click();
      await page.getByText("Kept.").waitFor();
      await other.getByText("loose clamp on the breather").waitFor();
    } finally {
      await other.context().close();
    }
  });

  step("every page is well made, and the keyboard goes the way of the eye", async () => {
    const pages = [
      "#/bay", "#/bay/defects", "#/bay/defect", "#/bay/position/fuel-hose-strainer", "#/bay/due", "#/bay/view/due", "#/work", `#/work/stage/${stage}`, "#/work/joints",
      "#/work/joint/left-harness-cap", "#/work/quick", "#/work/act/plan-change", "#/work/act/plan-stage", "#/work/act/revise-mass", "#/work/act/stage-step", "#/work/act/install-part",
      "#/work/bench", "#/work/bench/conformity", "#/work/bench/mass-balance", "#/work/bench/torque-setting", "#/work/all", "#/measure", "#/measure/group/left-harness",
      "#/measure/check/oil-pressure", "#/measure/act/register-instrument", "#/runs", "#/record", "#/record/history?about=left-harness", "#/record/waiting", "#/record/all",
    ];
    const wrong = [];
    for (const hash of pages) {
      await visit(hash);
      await page.waitForTimeout(150);
      try {
        await assertWellMade(page);
        assertReadingOrder(await tabOrder(page, 60));
      } catch (error) {
        wrong.push(`${hash}: ${error.message}`);
      }
      await see(`page-${hash.replace(/[^a-z]+/g, "-").slice(1)}`);
    }
    assertEqual(wrong, [], "pages");
    await page.context().close();
  });
}

const passed = await run();
await browser.close();
for (const bench of benches) await bench.end();
process.exit(passed ? 0 : 1);
