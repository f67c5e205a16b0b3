// node tools/cause-scenarios.mjs [COUNT] [> docs/method/cause-scenarios.md]
//
// How many looks the list of possible causes needs, over seeded scenarios, beside random order and
// beside cheapest first. Faults and symptoms are drawn from the same guesses that the page ranks
// by (web/src/causes/knowledge.json, web/src/staging/guesses.json), so this shows what ordering is
// worth if the guesses were right; it says nothing of whether they are. Uses the release program.
import { createRequire } from "node:module";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { Bench } from "../tests/e2e/browser/support_server.mjs";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const count = Number(process.argv[2] ?? 500);
const k_finds = 0.9; // as the page assumes of a look
const k_most_rounds = 5;

const { buildSync } = createRequire(join(root, "web", "package.json"))("esbuild");
const made = mkdtempSync(join(tmpdir(), "wm-scenarios-"));
buildSync({ entryPoints: [join(root, "web/src/causes/suspects.ts")], bundle: true, format: "esm", platform: "node", outfile: join(made, "suspects.mjs") });
const { rankInput, suspectsOf, symptomsOf } = await import(pathToFileURL(join(made, "suspects.mjs")).href);

/// Mulberry32: small, seeded, the same everywhere.
function drawer(seed) {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}
const systems = ["fuel", "oil", "ignition", "starting", "charging", "induction", "exhaust", "cooling", "engine mounts", "engine controls"];
const grades = ["looked at", "adjusted", "opened and refitted", "renewed", "redesigned"];

function scenario(seed) {
  const draw = drawer(seed);
  const pick = (list) => list[Math.floor(draw() * list.length)];
  for (;;) {
    const changes = Array.from({ length: 4 }, (_, i) => {
      const system = pick(systems);
      return { id: `${i}`, title: `Change ${i + 1} (${system})`, grade: pick(grades), system, after: [], together: [] };
    });
    const all = suspectsOf(changes, []);
    const faulty = all.filter((s) => draw() < s.percent / 100);
    const seen = {};
    for (const name of symptomsOf(all)) {
      const silent = faulty.reduce((p, s) => p * (1 - (s.links[name] ?? 0) / 100), 1 - 0.01);
      seen[name] = draw() < 1 - silent ? "seen" : "not-seen";
    }
    const causes = faulty.filter((s) => Object.entries(s.links).some(([name]) => seen[name] === "seen"));
    if (causes.length > 0) return { all, seen, causes: new Set(causes.map((s) => s.name)), draw };
  }
}

const bench = new Bench();
const url = await bench.start();
async function rank(input) {
  const answer = await fetch(`${url}/api/calc/cause-rank`, { method: "POST", body: JSON.stringify(input), headers: { "Content-Type": "application/json", "X-Witnessmark": "1" } });
  if (!answer.ok) throw new Error(await answer.text());
  return (await answer.json()).answer;
}

/// Looks until a true cause is found. `order`: the names still to be looked at, best first.
async function search(s, names, order) {
  const hours = (name) => s.all.find((x) => x.name === name).hours;
  const luck = drawer(s.luck);
  let looks = 0;
  let spent = 0;
  for (let round = 0; round < k_most_rounds; ++round) {
    const done = [];
    while (done.length < names.length) {
      const next = (await order(done)).find((n) => !done.includes(n));
      if (next === undefined) break;
      looks += 1;
      spent += hours(next);
      if (s.causes.has(next) && luck() < k_finds) return { looks, spent };
      done.push(next);
    }
  }
  return { looks, spent };
}

const results = { list: [], random: [], cheapest: [] };
for (let seed = 1; seed <= count; ++seed) {
  const s = { ...scenario(seed), luck: seed + 1_000_000 };
  const names = rankInput(s.all, s.seen, []).suspects.map((x) => x.name);
  const shuffled = [...names];
  const draw = drawer(seed + 2_000_000);
  for (let i = shuffled.length - 1; i > 0; --i) {
    const j = Math.floor(draw() * (i + 1));
    [shuffled[i], shuffled[j]] = [shuffled[j], shuffled[i]];
  }
  const hours = (name) => s.all.find((x) => x.name === name).hours;
  const cheap = [...names].sort((a, b) => hours(a) - hours(b));
  results.list.push(await search(s, names, async (done) => (await rank(rankInput(s.all, s.seen, done.map((suspect) => ({ suspect, fault_found: false }))))).look_order));
  results.random.push(await search(s, names, async () => shuffled));
  results.cheapest.push(await search(s, names, async () => cheap));
  if (process.stderr.isTTY && seed % 25 === 0) process.stderr.write(`${seed} of ${count}\r`);
}
await bench.end();
rmSync(made, { recursive: true, force: true });

const sorted = (list) => [...list].sort((a, b) => a - b);
const at = (list, share) => sorted(list)[Math.min(list.length - 1, Math.floor(share * list.length))];
const mean = (list) => list.reduce((a, b) => a + b, 0) / list.length;
const names = { list: "by the list", cheapest: "cheapest first", random: "random order" };
console.log(`<!-- Made by tools/cause-scenarios.mjs; change that, not this page. -->

# How many looks the list needs

${count} scenarios, seeds 1 to ${count}: four changes of random system and grade beside the parts that nobody
touched. Faults are drawn from the guesses that the page starts with, symptoms from their links with 1 % from
elsewhere; drawn again until a fault shows. A look finds a fault that is there nine times in ten; after all were
looked at in vain a second round begins. The search ends at the first true cause. Both other orders look at the
same things: changes, and parts that can bring about what was seen.

The draws come from the same guesses as the ranking. This shows what ordering is worth if they were right; whether
they are, only the owner's own record can show.

| order | looks: half within | 90 % within | mean | hours spent: mean | 90 % within |
| --- | --- | --- | --- | --- | --- |
${Object.entries(names).map(([key, words]) => {
  const looks = results[key].map((r) => r.looks);
  const spent = results[key].map((r) => r.spent);
  return `| ${words} | ${at(looks, 0.5)} | ${at(looks, 0.9)} | ${mean(looks).toFixed(2)} | ${mean(spent).toFixed(2)} | ${at(spent, 0.9).toFixed(1)} |`;
}).join("\n")}

| looks needed | ${Object.values(names).join(" | ")} |
| --- | --- | --- | --- |
${[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12].map((n) => `| ${n === 12 ? "12 or more" : n} | ${Object.keys(names).map((key) => results[key].filter((r) => (n === 12 ? r.looks >= 12 : r.looks === n)).length).join(" | ")} |`).join("\n")}`);
