// What the browser tests share: Debian's chromium without any network of its own, two sizes of
// screen, and checks that hold on every page. The server to test is given by its address.
import { createRequire } from "node:module";
import { mkdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "..");
const from_web = createRequire(join(root, "web", "package.json"));
const { chromium } = from_web("playwright-core");
const axe_source = readFileSync(from_web.resolve("axe-core/axe.min.js"), "utf8");

export const phone = { name: "phone", width: 390, height: 844, touch: true };
export const laptop = { name: "laptop", width: 1366, height: 768, touch: false };

const flags = [
  "--no-sandbox", "--disable-background-networking", "--disable-component-update", "--disable-sync",
  "--disable-quic", "--no-first-run", "--enable-unsafe-swiftshader", "--use-angle=swiftshader",
];

export async function openBrowser() {
  return chromium.launch({ executablePath: process.env.CHROMIUM || "/usr/bin/chromium", headless: true, args: flags });
}

/// While the page is being worked on (WM_DIST=1): its files come from web/dist as they are now,
/// the answers from the server; nothing has to be built into the program first.
async function freshFile(route) {
  const path = new URL(route.request().url()).pathname;
  const name = path === "/" ? "index.html" : path.slice(1);
  const types = { html: "text/html; charset=utf-8", js: "text/javascript", css: "text/css", svg: "image/svg+xml" };
  try {
    await route.fulfill({
      body: readFileSync(join(root, "web", "dist", name)), contentType: types[name.split(".").pop()],
      headers: { "Content-Security-Policy": "default-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'self'" },
    });
  } catch {
    await route.fulfill({ status: 404, body: "not here" });
  }
}

/// A fresh browser profile of one size with one page in it. Everything that the page complains
/// about is collected in `page.complaints`: errors, refused content, requests to other machines.
export async function openPage(browser, url, size, options = {}) {
  const context = await browser.newContext({
    viewport: { width: size.width, height: size.height },
    hasTouch: size.touch, isMobile: size.touch, deviceScaleFactor: options.scale ?? 1,
    colorScheme: options.dark ? "dark" : "light", reducedMotion: "reduce", locale: "en-US",
  });
  if (process.env.WM_DIST) await context.route((target) => !target.pathname.startsWith("/api/"), freshFile);
  const page = await context.newPage();
  page.complaints = [];
  page.setDefaultTimeout(8000);
  page.on("pageerror", (error) => page.complaints.push(`error: ${error.message}`));
  page.on("console", (message) => {
    const text = message.text();
    // A refused connection is logged by the browser itself; tests that stop the server expect it.
    if (message.type() === "error" && !/ERR_|Failed to load resource/.test(text)) page.complaints.push(`console: ${text}`);
  });
  const home = new URL(url).host;
  page.on("request", (request) => {
    const target = new URL(request.url());
    if (target.protocol.startsWith("http") && target.host !== home) page.complaints.push(`request to ${target.host}`);
  });
  await page.goto(url);
  await page.waitForSelector("main h1");
  return page;
}

/// Settled: nothing is being fetched that a page waits for.
export async function settled(page) {
  await page.waitForFunction(() => !document.querySelector(".answer-body.working") && !/^Fetching\.$/m.test(document.body.innerText));
}

export async function assertNoOverflow(page) {
  const wide = await page.evaluate(() => {
    const limit = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth <= limit) return [];
    return [...document.querySelectorAll("body *")]
      .filter((e) => e.getBoundingClientRect().right > limit + 0.5)
      .slice(0, 5)
      .map((e) => `${e.tagName.toLowerCase()}.${e.getAttribute("class") ?? ""} reaches ${Math.round(e.getBoundingClientRect().right)}`);
  });
  if (wide.length > 0) throw new Error(`wider than the screen: ${wide.join("; ")}`);
}

/// Every target at least 44 px in both directions. A radio button is as large as its label; a
/// link inside a sentence is exempt (WCAG 2.2, 2.5.8, inline).
export async function assertTargets44(page) {
  const small = await page.evaluate(() => {
    const out = [];
    for (const e of document.querySelectorAll("a[href], button, input, select, textarea, summary, [role=button]")) {
      const box = (e.closest("label.option") ?? e).getBoundingClientRect();
      const style = getComputedStyle(e);
      if (box.width === 0 || style.visibility === "hidden" || box.bottom < 0) continue;
      if (e.tagName === "A" && style.display === "inline" && e.closest("p, dd, td, li > span, .file-state")) continue;
      if (box.width < 43.5 || box.height < 43.5) {
        out.push(`${e.tagName.toLowerCase()} "${(e.textContent || e.getAttribute("aria-label") || e.id).trim().slice(0, 30)}" ${Math.round(box.width)}x${Math.round(box.height)}`);
      }
    }
    return out;
  });
  if (small.length > 0) throw new Error(`targets under 44 px: ${small.join("; ")}`);
}

/// Put the keyboard's place before everything on the page.
export async function toTop(page) {
  await page.evaluate(() => {
    const start = document.createElement("span");
    start.tabIndex = -1;
    document.body.prepend(start);
    start.focus();
    start.addEventListener("blur", () => start.remove(), { once: true });
  });
}

/// What Tab reaches, in order, from the top of the page: name and place of each stop.
export async function tabOrder(page, limit = 80) {
  await toTop(page);
  const stops = [];
  for (let i = 0; i < limit; i++) {
    await page.keyboard.press("Tab");
    const stop = await page.evaluate(() => {
      const e = document.activeElement;
      if (!e || e === document.body || e === document.documentElement) return null;
      const label = e.getAttribute("aria-label") ?? (e.labels?.[0]?.textContent || e.textContent || e.id);
      const box = e.getBoundingClientRect();
      return { name: label.trim().replace(/\s+/g, " "), tag: e.tagName.toLowerCase(), x: box.x, y: box.y + scrollY, h: box.height, fixed: Boolean(e.closest(".places, .bottom-bar")) };
    });
    // At the end the browser begins again at the top.
    if (!stop || (i > 0 && stop.name === stops[0].name && stop.tag === stops[0].tag)) break;
    stops.push(stop);
  }
  return stops;
}

/// In one column, the order of the keyboard is the order of the eye.
export function assertReadingOrder(stops) {
  const flow = stops.filter((s) => !s.fixed && s.name !== "Skip to the page");
  for (let i = 1; i < flow.length; i++) {
    if (flow[i].y + flow[i].h <= flow[i - 1].y && Math.abs(flow[i].x - flow[i - 1].x) < 300) {
      throw new Error(`Tab goes up the page from "${flow[i - 1].name}" to "${flow[i].name}"`);
    }
  }
}

export async function axeClean(page) {
  await page.evaluate(axe_source);
  const found = await page.evaluate(async () => {
    const result = await window.axe.run(document, { resultTypes: ["violations"] });
    return result.violations.map((v) => `${v.id}: ${v.nodes.slice(0, 3).map((n) => n.target.join(" ")).join(", ")}${v.nodes[0]?.any?.[0]?.message ? ` (${v.nodes[0].any[0].message})` : ""}`);
  });
  if (found.length > 0) throw new Error(`axe: ${found.join("; ")}`);
}

export function assertNoComplaints(page) {
  if (page.complaints.length > 0) throw new Error(page.complaints.join("; "));
}

/// The checks of every page at once.
export async function assertWellMade(page) {
  await settled(page);
  await assertNoOverflow(page);
  await assertTargets44(page);
  await axeClean(page);
  assertNoComplaints(page);
}

export function screenshots(dir) {
  mkdirSync(dir, { recursive: true });
  return async (page, name, full = false) => {
    await settled(page);
    await page.screenshot({ path: join(dir, `${name}.png`), fullPage: full });
  };
}

export function assertEqual(got, expected, what) {
  const g = JSON.stringify(got);
  const e = JSON.stringify(expected);
  if (g !== e) throw new Error(`${what}: expected ${e}, got ${g}`);
}

export function assert(condition, what) {
  if (!condition) throw new Error(what);
}

/// The message without the colours and the repeated attempts that the browser driver adds.
function plainText(error) {
  const text = String(error.message ?? error).replace(/\u001b\[\d+m/g, "");
  return text.split("\n").filter((l) => l.trim() !== "").slice(0, 8).join("\n      ");
}

/// A list of named tests: a line for each, and "N passed, N failed" at the end.
export function suite(title) {
  const tests = [];
  return {
    test: (name, run) => tests.push({ name, run }),
    async run() {
      let passed = 0;
      let failed = 0;
      const only = process.argv.find((a) => a.startsWith("--only="))?.slice(7);
      for (const { name, run } of tests) {
        if (only && !name.includes(only)) continue;
        const start = performance.now();
        try {
          await run();
          passed += 1;
          console.log(`ok    ${title}: ${name} (${((performance.now() - start) / 1000).toFixed(1)} s)`);
        } catch (error) {
          failed += 1;
          console.log(`FAIL  ${title}: ${name}\n      ${plainText(error)}`);
        }
      }
      console.log(`${passed} passed, ${failed} failed`);
      return failed === 0;
    },
  };
}
