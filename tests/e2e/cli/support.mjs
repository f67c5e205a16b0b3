// What the tests of the command line share: the program, temporary folders, one run of one
// command, and the count on the last line. Node alone, nothing installed.
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "..");
export const program = process.env.WITNESSMARK ?? join(root, "build", "release", "bin", "witnessmark");

/// The day on which the demo ends, so that every run sees the same bay.
export const env = { ...process.env, WM_TODAY: "2026-11-25" };

let passed = 0;
let failed = 0;
let skipped = 0;

/// One line a check; what came instead where it failed.
export function check(what, good, got) {
  if (good) {
    passed += 1;
    console.log(`ok      ${what}`);
    return true;
  }
  failed += 1;
  const shown = got === undefined ? "" : typeof got === "string" ? got : JSON.stringify(got);
  console.log(`FAILED  ${what}${shown === "" ? "" : `\n        got ${shown.slice(0, 1500)}`}`);
  return false;
}

export function skip(what, why) {
  skipped += 1;
  console.log(`skipped ${what}: ${why}`);
}

const folders = new Set();
const last = [];

export function folder(name = "wm-cli-") {
  const made = mkdtempSync(join(tmpdir(), name));
  folders.add(made);
  return made;
}

/// Something to undo when the tests are over, last first.
export function afterwards(work) {
  last.unshift(work);
}

/// One command. Every one of them must end by itself, with one of the four statuses, and never
/// with the inner words of the machine.
export function wm(...words) {
  const options = typeof words.at(-1) === "object" ? words.pop() : {};
  const ran = spawnSync(program, words, {
    encoding: "utf8", env, timeout: 60_000, maxBuffer: 1 << 28, ...options,
  });
  const said = `${ran.stdout ?? ""}${ran.stderr ?? ""}`;
  const shown = words.map((w) => (w.length > 60 ? `${w.slice(0, 57)}...` : w)).join(" ");
  if (ran.error || ran.signal || ![0, 1, 2, 3].includes(ran.status)) {
    check(`\`${shown}\` ends with a status of 0 to 3`, false,
      String(ran.error ?? ran.signal ?? ran.status) + said);
  }
  if (/terminate called|Sanitizer|std::|\.cpp:|Assertion|nlohmann|SQLITE_|exception/i.test(said)) {
    check(`\`${shown}\` speaks plainly`, false, said);
  }
  let data;
  try {
    data = JSON.parse(ran.stdout);
  } catch {
    data = undefined;
  }
  return { status: ran.status, signal: ran.signal, out: ran.stdout ?? "", err: ran.stderr ?? "", said, data, shown };
}

/// A command that must be done.
export function done(...words) {
  const ran = wm(...words);
  if (ran.status !== 0) check(`\`${ran.shown}\` is done`, false, `${ran.status}: ${ran.said}`);
  return ran;
}

export function demo() {
  const at = folder();
  const made = done("demo", at);
  if (made.status !== 0) {
    console.log(`no demo binder, nothing to test\n${passed} passed, ${failed} failed`);
    process.exit(1);
  }
  return join(at, "pebblewing.binder");
}

export async function run(tests) {
  if (!existsSync(program)) {
    console.log(`there is no program at ${program}; build it or set WITNESSMARK\n0 passed, 1 failed`);
    process.exit(1);
  }
  for (const test of tests) {
    console.log(`-- ${test.name.replaceAll("_", " ")}`);
    try {
      await test();
    } catch (error) {
      check(`${test.name} ended early`, false, String(error?.stack ?? error));
    }
  }
  for (const work of last) work();
  for (const made of folders) rmSync(made, { recursive: true, force: true });
  console.log(`${passed} passed, ${failed} failed, ${skipped} skipped`);
  process.exit(failed === 0 ? 0 : 1);
}
