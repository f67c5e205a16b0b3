// node tools/hose-pictures.mjs PROGRAM
//
// Draws the figures of docs/method/hose-shape.md with the program itself: sheets by
// `calc hose-sheet --to`, and the tightest radius against the length from the answer of hose-length.
import { spawnSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const program = process.argv[2];
if (program === undefined) {
  console.error("node tools/hose-pictures.mjs PROGRAM");
  process.exit(2);
}
const folder = join(dirname(fileURLToPath(import.meta.url)), "..", "docs", "pictures", "hose");
mkdirSync(folder, { recursive: true });
// The figures must come out the same whenever they are made.
const env = { ...process.env, WM_TODAY: "2026-11-25" };

function call(...words) {
  const ran = spawnSync(program, words, { encoding: "utf8", env, maxBuffer: 1 << 26 });
  if (ran.status !== 0) throw new Error(`${words.slice(0, 2).join(" ")}: ${ran.stdout}${ran.stderr}`);
  return ran.stdout;
}

const place = (x, y, z) => ({ x: `${x} in`, y: `${y} in`, z: `${z} in` });
const hose = { outside_diameter: "0.77 in", least_radius: "4.63 in", radius_source: "AC 43.13-1B table 9-3" };
const example = {
  near_end: { seat: place(0, 0, 0), leaves: { x: 1 }, rigid: "1.5 in" },
  far_end: { seat: place(14, 13, 4), leaves: { y: -1 }, rigid: "1.5 in" },
  ...hose,
};
const sheets = {
  "sheet.svg": {
    title: "oil cooler, pressure side (invented)", ...example,
    near_at: "oil cooler, inlet", far_at: "engine, oil outlet",
    keep_outs: [{ name: "exhaust stack", beside: "exhaust", needed: "2 in",
      shape: { is: "tube", from: place(10, 0, -6), to: place(10, 10, -6), radius: "1 in" } }],
  },
  "u-bend.svg": {
    title: "U-bend (invented)", ...hose, overall: "22 in",
    near_end: { seat: place(0, 0, 0), leaves: { z: -1 }, rigid: "1.2 in" },
    far_end: { seat: place(12, 0, 0), leaves: { z: -1 }, rigid: "1.2 in" },
  },
};
for (const [name, input] of Object.entries(sheets)) call("calc", "hose-sheet", JSON.stringify(input), "--to", join(folder, name));

/// Tightest radius of every length that was looked at, the limit as a line, the window hatched.
function plot() {
  const { radius_source: _, ...asked } = example;
  const { answer } = JSON.parse(call("calc", "hose-length", JSON.stringify(asked), "--json"));
  const points = answer.scan.map((p) => [p.overall.value, p.tightest_radius.value]).sort((a, b) => a[0] - b[0]);
  const unit = answer.scan[0].overall.unit;
  const limit = answer.least_radius.value;
  const [low, high] = [Math.floor(points[0][0]), Math.min(points.at(-1)[0], answer.longest.value * 1.5)];
  const seen = points.filter(([l]) => l <= high);
  const top = Math.max(...seen.map(([, r]) => r)) * 1.12;
  const [left, foot, wide, tall] = [14, 66, 120, 54];
  const x = (l) => left + (wide * (l - low)) / (high - low);
  const y = (r) => foot - (tall * r) / top;
  const round = (v) => Number(v.toFixed(2));
  const at = (l, r) => `${round(x(l))} ${round(y(r))}`;
  const text = (px, py, words, anchor = "start") => `<text x="${round(px)}" y="${round(py)}" font-size="2.8" text-anchor="${anchor}" fill="#1d2224">${words}</text>`;
  const [shortest, longest, best] = [answer.shortest.value, answer.longest.value, answer.best.value];
  const ticks = [];
  for (let l = Math.ceil(low / 5) * 5; l <= high; l += 5) ticks.push(`<path d="M${round(x(l))} ${foot}v1.2" stroke="#1d2224" stroke-width="0.2"/>${text(x(l), foot + 4.4, l, "middle")}`);
  for (let r = 0; r <= top; r += 2) ticks.push(`<path d="M${left} ${round(y(r))}h-1.2" stroke="#1d2224" stroke-width="0.2"/>${text(left - 2, y(r) + 1, r, "end")}`);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="140mm" height="78mm" viewBox="0 0 140 78" font-family="DejaVu Sans, system-ui, sans-serif" role="img" aria-labelledby="t">
<title id="t">Tightest radius against overall length: it keeps ${answer.least_radius.text} from ${answer.shortest.text} to ${answer.longest.text}, and is widest at ${answer.best.text}</title>
<rect width="140" height="78" fill="#ffffff"/>
<rect x="${round(x(shortest))}" y="${foot - tall}" width="${round(x(longest) - x(shortest))}" height="${tall}" fill="#dfe2e3"/>
<path d="M${left} ${foot - tall}V${foot}H${left + wide}" fill="none" stroke="#1d2224" stroke-width="0.3"/>
${ticks.join("\n")}
<path d="M${at(low, limit)}L${at(high, limit)}" stroke="#1d2224" stroke-width="0.25" stroke-dasharray="1.6 1"/>
<path d="M${seen.map(([l, r]) => at(l, r)).join("L")}" fill="none" stroke="#1d2224" stroke-width="0.4"/>
<path d="M${at(best, 0)}L${at(best, top)}" stroke="#50585c" stroke-width="0.2"/>
${text(x(high), y(limit) - 1.2, `limit ${answer.least_radius.text}`, "end")}
${text(x(shortest) + 1, foot - 1.6, `shortest ${answer.shortest.text}`)}
${text(x(longest) - 1, foot - 5.4, `longest ${answer.longest.text}`, "end")}
${text(x(best) + 1, foot - tall + 3, `best ${answer.best.text}`)}
${text(left + wide / 2, 75.5, `overall length, ${unit}`, "middle")}
${text(2, 8, `tightest radius, ${unit}: over all motion and pressure`)}
</svg>
`;
}
writeFileSync(join(folder, "radius-against-length.svg"), plot());
console.log(`3 figures in ${folder}`);
