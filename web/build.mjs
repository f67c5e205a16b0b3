// Builds web/dist: index.html, hashed scripts and styles, a gzip copy of each text file, and
// manifest.json, from which the server's table of embedded files is made.
import { build } from "esbuild";
import { gzipSync } from "node:zlib";
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const dist = join(here, "dist");
// Made beside and moved when whole: whoever reads web/dist meanwhile never finds half a page.
const making = join(here, "dist.making");

// What the browser downloads before the first page stands, gzip, without charts.
const k_first_load_limit = 60_000;

// Style sheets of pages that are loaded when they are opened (src/kit/style.ts): each has its
// place {{NAME-style}} in index.html.
const later_styles = ["hose", "measure", "staging"];

const types = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".svg": "image/svg+xml",
};

rmSync(making, { recursive: true, force: true });
mkdirSync(making, { recursive: true });

const result = await build({
  absWorkingDir: here,
  entryPoints: { app: "src/main.tsx", ...Object.fromEntries(later_styles.map((name) => [name, `src/style/${name}.css`])) },
  outdir: "dist.making",
  bundle: true,
  splitting: true,
  format: "esm",
  minify: true,
  target: ["es2021"],
  entryNames: "[name].[hash]",
  chunkNames: "part.[hash]",
  assetNames: "[name].[hash]",
  jsx: "automatic",
  jsxImportSource: "preact",
  legalComments: "none",
  metafile: true,
  logLevel: "warning",
});

const outputs = Object.entries(result.metafile.outputs);
const entry = outputs.find(([, o]) => o.entryPoint === "src/main.tsx");
if (!entry) throw new Error("the build made no entry script");
const script = entry[0].replace(/^dist\.making\//, "");
const style = entry[1].cssBundle?.replace(/^dist\.making\//, "");
if (!style) throw new Error("the build made no style sheet");
// Parts that the entry needs at once; the others are loaded when a page asks for them.
const at_once = new Set([script, style]);
for (const part of entry[1].imports) {
  if (part.kind === "import-statement") at_once.add(part.path.replace(/^dist\.making\//, ""));
}

writeFileSync(join(making, "icon.svg"), readFileSync(join(here, "src/icon.svg")));
let page = readFileSync(join(here, "src/index.html"), "utf8").replace("{{script}}", `/${script}`).replace("{{style}}", `/${style}`);
for (const name of later_styles) {
  const sheet = outputs.find(([, o]) => o.entryPoint === `src/style/${name}.css`)?.[0].replace(/^dist\.making\//, "");
  if (!sheet || !page.includes(`{{${name}-style}}`)) throw new Error(`no style sheet, or no place for it in index.html: ${name}`);
  page = page.replace(`{{${name}-style}}`, `/${sheet}`);
}
writeFileSync(join(making, "index.html"), page);

const manifest = [];
let first_load = 0;
for (const name of readdirSync(making).sort()) {
  const bytes = readFileSync(join(making, name));
  const type = types[name.slice(name.lastIndexOf("."))];
  if (!type) throw new Error(`no content type for ${name}`);
  const packed = gzipSync(bytes, { level: 9 });
  writeFileSync(join(making, `${name}.gz`), packed);
  const hashed = /\.[A-Z0-9]{8}\.(js|css)$/.test(name);
  const first = name === "index.html" || at_once.has(name);
  if (first) first_load += packed.length;
  manifest.push({
    name,
    type,
    bytes: bytes.length,
    gzip: `${name}.gz`,
    gzip_bytes: packed.length,
    // A hashed name never changes its content; the page itself is asked for each time.
    cache: hashed ? "forever" : "check",
    first_load: first,
  });
}
writeFileSync(join(making, "manifest.json"), `${JSON.stringify(manifest, null, 2)}\n`);

for (const file of manifest) {
  const size = `${(file.bytes / 1000).toFixed(1)} kB`.padStart(9);
  const gzip = `${(file.gzip_bytes / 1000).toFixed(1)} kB gzip`.padStart(13);
  console.log(`${size} ${gzip}  ${file.name}${file.first_load ? "  (first load)" : ""}`);
}
console.log(`first load ${(first_load / 1000).toFixed(1)} kB gzip`);
if (first_load > k_first_load_limit) {
  console.error(`the first load is above ${k_first_load_limit / 1000} kB gzip`);
  process.exit(1);
}
rmSync(dist, { recursive: true, force: true });
renameSync(making, dist);
