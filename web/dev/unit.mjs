// Runs the unit tests of the pure parts: bundled by esbuild, run by Node's own test runner.
import { build } from "esbuild";
import { mkdirSync, readdirSync, rmSync } from "node:fs";
import { spawnSync } from "node:child_process";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const out = join(root, "node_modules", ".cache", "unit");
rmSync(out, { recursive: true, force: true });
mkdirSync(out, { recursive: true });
const tests = readdirSync(join(root, "tests")).filter((n) => n.endsWith(".test.ts"));
await build({
  absWorkingDir: root,
  entryPoints: tests.map((n) => join("tests", n)),
  outdir: out,
  outExtension: { ".js": ".mjs" },
  bundle: true,
  platform: "node",
  format: "esm",
  target: "node18",
  jsx: "automatic",
  jsxImportSource: "preact",
  logLevel: "warning",
  // Browsers have it, and Node from 19 on; Debian's Node 18 keeps it in a module.
  banner: { js: 'import { webcrypto } from "node:crypto"; globalThis.crypto ??= webcrypto;' },
});
const files = tests.map((n) => join(out, n.replace(/\.ts$/, ".mjs")));
const run = spawnSync(process.execPath, ["--test", ...files], { stdio: "inherit" });
process.exit(run.status ?? 1);
