// The two pictures of the README, from a fresh demo binder: run by hand when the page has changed.
// node tests/e2e/browser/support_pictures.mjs
import { laptop, openBrowser, openPage, phone, root, settled } from "./support.mjs";
import { Bench } from "./support_server.mjs";
import { mkdirSync } from "node:fs";
import { join } from "node:path";

const folder = join(root, "docs", "pictures");
mkdirSync(folder, { recursive: true });
const browser = await openBrowser();
const bench = new Bench();
try {
  const url = await bench.start();
  const wide = await openPage(browser, url, laptop);
  await wide.locator(".ahead-list").waitFor();
  await settled(wide);
  await wide.screenshot({ path: join(folder, "bay.png") });
  const small = await openPage(browser, url, phone);
  await small.goto(`${url}/#/measure/group/left-harness/left-lead-2`);
  await small.getByLabel("Instrument", { exact: true }).selectOption("bench-meter");
  await small.getByLabel("Range used").selectOption("60 kohm");
  await small.getByLabel("Test leads").selectOption("nulled");
  await small.reload();
  await small.getByLabel("Reading", { exact: true }).fill("7.94");
  await small.locator(".live-verdict .verdict").waitFor();
  await settled(small);
  await small.evaluate(() => scrollTo(0, 0));
  await small.screenshot({ path: join(folder, "measure.png") });
} finally {
  await browser.close();
  await bench.end();
}
