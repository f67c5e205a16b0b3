// Act: the page is opened for the first time: what travels before it can be used, compressed, as
//      the build of the page lists it in web/dist/manifest.json.
// Aim: below 60 kB without charts, which are fetched when one is shown.
import { existsSync, readFileSync, statSync } from "node:fs";
import { gunzipSync } from "node:zlib";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const dist = join(dirname(fileURLToPath(import.meta.url)), "..", "web", "dist");
if (!existsSync(join(dist, "manifest.json"))) {
  console.error("page_bench: web/dist is not built");
  process.exit(3);
}
const files = JSON.parse(readFileSync(join(dist, "manifest.json"), "utf8"));
const page = readFileSync(join(dist, "index.html"), "utf8");
// The figures are those of the files themselves, not of the list alone.
for (const file of files) {
  const packed = readFileSync(join(dist, file.gzip));
  if (packed.length !== file.gzip_bytes || gunzipSync(packed).length !== statSync(join(dist, file.name)).size) {
    console.error(`page_bench: wrong answer: ${file.name} is not what the list says`);
    process.exit(3);
  }
}
const first = files.filter((file) => file.first_load);
for (const [, name] of page.matchAll(/(?:src|href)="\/([^"]+\.(?:js|css))"/g)) {
  if (!first.some((file) => file.name === name)) {
    console.error(`page_bench: wrong answer: the page asks for ${name}, the list leaves it out`);
    process.exit(3);
  }
}
const sum = (list) => list.reduce((all, file) => all + file.gzip_bytes, 0);
console.log(JSON.stringify({
  act: "first page load, compressed", value: sum(first) / 1000, unit: "kB", aim: "below 60 kB without charts",
  note: `${first.length} files; charts and icon, when needed, ${(sum(files.filter((f) => !f.first_load)) / 1000).toFixed(1)} kB more`,
}));
