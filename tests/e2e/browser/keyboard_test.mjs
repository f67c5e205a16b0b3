// The walk without a mouse, on a laptop: Tab, Enter, Space, arrows and letters alone, on the real
// server. At every stop the focus must show. Each step needs the earlier ones.
import { assert, assertEqual, assertNoComplaints, laptop, openBrowser, openPage, settled, suite } from "./support.mjs";
import { Bench, command } from "./support_server.mjs";
import { Keys } from "./support_keys.mjs";

const browser = await openBrowser();
const { test, run } = suite("keyboard");
const bench = new Bench();
const page = await openPage(browser, await bench.start(), laptop);
const keys = new Keys(page);
// A touch of the mouse anywhere would be cheating.
await page.evaluate(() => addEventListener("mousedown", () => console.error("the mouse was used"), true));

const owner = "owner (invented)";
const second = "second person (invented)";
let stage = "";

const step = (name, work) => test(name, async () => {
  await work();
  assertNoComplaints(page);
});
const heading = async (name) => {
  await page.getByRole("heading", { level: 1, name }).waitFor();
  await settled(page);
  // A new page takes the focus to its heading a moment after it stands; the page of before does not.
  await page.waitForFunction(() => document.activeElement?.tagName === "H1", undefined, { timeout: 400 }).catch(() => undefined);
};
/// Through the places at the top, as somebody without a mouse goes.
const place = async (name) => {
  await keys.press(name);
  await heading(name === "Bay" ? /./ : name);
};
/// Sends the form, reads notes, goes on.
const send = async (button) => {
  const from = page.url();
  await keys.press(button);
  await page.waitForFunction((url) => location.href !== url || document.querySelector(".told, .problem, .summary"), from);
  const refused = await page.locator(".problem").allInnerTexts();
  if (refused.some((t) => t !== "")) throw new Error(`refused: ${refused.join(" | ")}`);
  if ((await page.getByRole("link", { name: "Go on" }).count()) > 0) await keys.press("Go on");
  await page.waitForFunction((url) => location.href !== url, from);
  await page.waitForTimeout(120);
  await settled(page);
};
const openStage = async () => {
  await place("Work");
  await keys.press("Stage 8: fuel hose and left harness");
  await heading("Stage 8: fuel hose and left harness");
};

step("a defect is written down and decided", async () => {
  await page.locator(".title-block").waitFor();
  await keys.press("Write down a defect");
  await page.waitForFunction(() => document.activeElement?.id === "f-text");
  await page.keyboard.type("fuel smell at the strainer after the flight");
  await keys.press("Keep");
  await page.getByText("Kept.").waitFor();
  await keys.press(/^Fly with it/);
  await page.locator("#f-reason").waitFor();
  await keys.fill({ decision: "fly", reason: "hose is renewed before the next flight" });
  await send("Decide");
});

step("changes are planned, put into a stage, and the objections answered", async () => {
  const plans = [
    { title: "Renew the fuel hose", position: "fuel-hose-strainer", grade: "renewed", joints: ["Fuel hose at the strainer"], new_part: "hose assembly, PTFE, -6", document: "sheet (invented)" },
    { title: "Renew the left harness", position: "left-harness", grade: "renewed", joints: ["Left harness at the magneto"], document: "manual (invented)" },
  ];
  await place("Work");
  for (const plan of plans) {
    await keys.press("Plan a change");
    await page.locator("#f-title").waitFor();
    await keys.fill(plan);
    await send("Plan it");
    await heading("Work");
  }
  for (const { title } of plans) await keys.press(`Choose ${title}`, "Space");
  await keys.press("Put 2 into a stage");
  await page.locator("#f-title").waitFor();
  await keys.fill({ title: "Stage 8: fuel hose and left harness" });
  await send("Make the stage");
  await openStage();
  stage = decodeURIComponent(page.url().split("/stage/")[1]);
  for (let left = await page.locator(".objection:not(.settled)").count(); left > 0; left--) {
    await keys.press(/^Independent inspection/);
    await page.locator("#f-by").waitFor();
    await keys.fill({ by: second, certificate: "none (invented)", text: "all disturbed joints seen and locked" });
    await send("Answer it");
    await page.waitForFunction((n) => document.querySelectorAll(".objection:not(.settled)").length < n, left);
  }
});

step("the cut length is worked out and kept with its change; the cards can be reached", async () => {
  await keys.press("Cut length: Renew the fuel hose");
  await page.locator("#f-between_seats").waitFor();
  await keys.fill({ between_seats: "14.5", "near_end-rigid": "1.1", "near_end-cut_off": "0.8", "far_end-rigid": "1.1", "far_end-cut_off": "0.8" });
  await page.getByRole("button", { name: "Keep with the change" }).waitFor();
  await send("Keep with the change");
  await keys.to(/^Work card as PDF/);
  await keys.to(/^Stage card as PDF/);
});

step("joints are opened, several at once, and a cap counted in", async () => {
  await keys.press("Several at once, bungs, cowl");
  await heading("Joints");
  for (const name of ["Fuel hose at the strainer", "Left harness at the magneto"]) await keys.press(`Choose ${name}`, "Space");
  await keys.press("open");
  await page.locator("#f-by").waitFor();
  await keys.fill({ by: owner });
  await send("Record the joints");
  await page.getByRole("heading", { name: "Open: 2" }).waitFor();
  await keys.press("Count one in");
  await page.locator("#f-id").waitFor();
  await keys.fill({ id: "red cap 3", where: "strainer outlet" });
  await send("Count it");
});

step("four lead readings; the verdict is said as it is typed", async () => {
  await place("Measure");
  await keys.press(/^Left ignition harness ?Read all 4/);
  await page.waitForFunction(() => document.activeElement?.id === "reading");
  await keys.fill({ "#instrument": "bench-meter", "#range": "60 kohm", "#leads": "nulled" });
  // A fresh document: the region that speaks must be there before it has something to say.
  const region = page.locator('[role="status"][data-says="verdict"]');
  assertEqual(await region.count(), 1, "a polite region for the verdict, before anything is typed");
  assertEqual((await region.innerText()).trim(), "", "it is silent at first");
  for (const [typed, words] of [["5.20", /^Conforms/], ["9.10", /^Does.not.conform/], ["over", /open/i], ["7.97", /^Undecided/]]) {
    if (typed === "over") await keys.press("The display shows over-range", "Space");
    else await keys.fill({ "#reading": typed });
    await region.filter({ hasText: words }).waitFor();
    const from = page.url();
    await keys.press(/^Keep/);
    await page.waitForFunction((url) => location.href !== url, from);
    if (typed !== "7.97") await page.waitForFunction(() => document.activeElement?.id === "reading" && document.activeElement.value === "");
    await settled(page);
  }
  await page.getByRole("heading", { name: "4 of 4 read" }).waitFor();
});

step("changes done, joints closed, the cap out, mass and balance revised", async () => {
  for (const title of ["Renew the fuel hose", "Renew the left harness"]) {
    await openStage();
    await keys.press(`Done: ${title}`);
    await page.locator("#f-text").waitFor();
    await keys.fill({ text: "made and fitted", proof: "held 300 psi with liquid, dry", by: owner });
    await send("Done");
  }
  for (const [joint, torque] of [["Fuel hose at the strainer", "120"], ["Left harness at the magneto", "20"]]) {
    await openStage();
    await keys.press("Several at once, bungs, cowl");
    await heading("Joints");
    await keys.press(new RegExp(`^\\d* ?${joint}`));
    for (let i = 0; i < 5; i++) {
      const button = page.getByRole("button", { name: /^Record: / });
      await button.waitFor();
      const state = (await button.innerText()).replace("Record: ", "");
      if (!(await page.locator("h1").innerText()).includes(joint)) break;
      await keys.fill({ ...(state === "torqued" ? { torque } : {}), by: state === "seen" ? second : owner });
      await send(`Record: ${state}`);
      if (state === "seen") break;
    }
  }
  await openStage();
  await keys.press("Several at once, bungs, cowl");
  await page.getByRole("heading", { name: "Open: 0" }).waitFor();
  await keys.press("Taken out");
  await page.locator("#f-fitted, #f-where").first().waitFor();
  await send("Count it");
  await openStage();
  await keys.press("Revise mass and balance");
  await page.locator("#f-empty_mass").waitFor();
  await keys.fill({ empty_mass: "1087.6", empty_arm: "11.2", document: "calculation of today (invented)" });
  await send("Revise mass and balance");
});

step("runs are entered, the cowl closed, the entry read and signed", async () => {
  const runs = [
    ["Leak run, engine stopped", { result: "satisfactory", text: "boost pump on, dry", by: owner }],
    ["Leak run, engine running", { result: "satisfactory", text: "idle, uncowled, dry", by: owner }],
    ["Ground run", { result: "satisfactory", ambient_temperature: "41", ambient_pressure: "29.92", text: "both magnetos even", by: owner }],
  ];
  for (const [name, values] of runs) {
    await openStage();
    await keys.press(/^Enter a run or check/);
    await keys.press(name);
    await page.locator("#f-result").waitFor();
    await keys.fill(values);
    await send("Record");
  }
  await openStage();
  await keys.press("Several at once, bungs, cowl");
  await heading("Joints");
  if ((await page.getByRole("link", { name: "Close the cowl" }).count()) > 0) {
    await keys.press("Close the cowl");
    await page.locator("#f-by").waitFor();
    await keys.fill({ by: owner });
    await send("Record");
  }
  await openStage();
  await keys.press("Read and sign it open");
  await page.locator("#f-name").waitFor();
  await keys.fill({ name: owner, signer: "owner" });
  await keys.press("Sign it open");
  await heading("Signed");
});

step("check flight and second look are entered, the stage is closed", async () => {
  await place("Runs");
  await keys.press("Enter it");
  await page.locator("#f-flight_time").waitFor();
  await keys.fill({ result: "satisfactory", flight_time: "40", text: "gauges as before", by: owner });
  await send("Record");
  await openStage();
  await keys.press(/^Enter a run or check/);
  await keys.press("Second look");
  await page.locator("#f-result").waitFor();
  await keys.fill({ result: "satisfactory", text: "dry, marks unmoved", by: second });
  await send("Record");
  await openStage();
  await keys.press("Read and sign it closed");
  await page.locator("#f-name").waitFor();
  await keys.fill({ name: owner, signer: "owner" });
  await keys.press("Sign it closed");
  await heading("Signed");
});

step("a mistyped reading is corrected", async () => {
  await place("Measure");
  await keys.press(/^Left harness, lead 1/);
  await heading(/lead 1/);
  await keys.press(/^Correct the reading of/);
  await page.locator("#f-why-corrected").waitFor();
  await keys.fill({ value: "5.02", "why-corrected": "mistyped" });
  await send("Record the correction");
});

step("an oil change is a quick job, and the chain is verified", async () => {
  await place("Work");
  await keys.press(/^Quick job/);
  await page.locator("#f-what").waitFor();
  await keys.fill({ what: "oil-change", quantity: "6", text: "oil drained warm", by: owner });
  await keys.press("Job done");
  await page.locator(".told").waitFor();
  await keys.press("Read and sign the entry");
  await page.locator("#f-name").waitFor();
  await keys.fill({ name: owner, signer: "owner" });
  await keys.press("Sign");
  await heading("Signed");
  await place("Record");
  await keys.press("Verify the chain");
  await page.getByText("Every link holds.").waitFor();
  command("verify", bench.binder);
  assert(keys.stops > 500, `stops looked at: ${keys.stops}`);
  assert(stage !== "", "no stage");
});

const good = await run();
await browser.close();
await bench.end();
process.exit(good ? 0 : 1);
