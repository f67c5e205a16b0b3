// What goes wrong for an owner: wrong input, wrong files, a full disk, somebody else at work. Each
// ends with a clear message and the exit status of design.md, and nothing is lost or half written.
import { spawn, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { copyFileSync, existsSync, readFileSync, readdirSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import { afterwards, check, demo, done, env, folder, program, root, run, skip, wm } from "./support.mjs";

const binder = demo();
const mine = ["--aircraft", "pebblewing"];
const events = () => done("verify", binder, "--json").data?.events;

/// Refused as bad input, the message says what was expected, and the record has not grown.
function refused(what, words, ...said) {
  const before = events();
  const ran = wm(...words);
  const missing = said.filter((s) => !s.test(ran.said));
  check(what, ran.status === 2 && missing.length === 0 && ran.said.trim() !== "", `${ran.status}, not said: ${missing.map((s) => s.source)}\n${ran.said}`);
  check(`${what}: nothing is recorded`, events() === before);
}

function one_field_after_the_other() {
  const act = (name, ...words) => ["act", binder, name, ...mine, ...words];
  refused("a pressure where a resistance is needed", ["measure", binder, ...mine, "check=left-lead-1", "value=38 psi", "instrument=bench-meter", "range=60 kohm"], /resistance/, /pressure/);
  refused("a bare number", act("work-joint", "joint=fuel-hose-strainer-inlet", "state=torqued", "torque=120"), /torque/, /unit/);
  refused("a comma for a decimal point", act("work-joint", "joint=fuel-hose-strainer-inlet", "state=torqued", "torque=12,5 in-lb"), /torque/, /point|comma/);
  refused("not a number at all", act("work-joint", "joint=fuel-hose-strainer-inlet", "state=torqued", "torque=nan in-lb"), /torque/);
  refused("30 February", ["defect", binder, ...mine, "text=oil film", "--on", "2026-02-30"], /2026-02-30|day/);
  refused("30 February in a field", act("register-part", "id=hose-new", "type=hose", "cured=2026-02-30"), /cured/);
  refused("29 February of a common year", ["defect", binder, ...mine, "text=oil film", "--on", "2025-02-29"], /2025-02-29|day/);
  refused("a counter that runs backwards", ["read", binder, ...mine, "at/0/counter=engine", "at/0/hours=900 h"], /hours|counter/, /1140\.6|backwards|less|below/);
  refused("a part put where another one sits", act("install-part", "part=p-new", "position=fuel-hose-strainer"), /p-new|position|fuel-hose/);
  refused("several errors are told at once", act("work-joint", "joint=nowhere", "state=tight", "torque=1 psi"), /state/, /torque/);
  refused("a field that is not there", act("note-defect", "text=oil", "colour=red"), /colour/, /expected/);
  refused("a word without =", act("note-defect", "text"), /=/);
  refused("JSON cut off", act("note-defect", '{"text":"oil'), /JSON|end|column|\}/);
  refused("JSON nested without end", act("note-defect", "[".repeat(5000)));
  refused("an act that is not there", ["act", binder, "fly-away", ...mine], /fly-away/);
  refused("a view that is not there", ["view", binder, "crystal-ball", ...mine], /crystal-ball/);
  refused("a calculation that is not there", ["calc", "horoscope"], /horoscope/, /torque-setting/);
  refused("a command that is not there", ["fly"], /fly|subcommand/i);
  refused("two aircraft and none is named", ["defect", binder, "text=oil film"], /pebblewing/, /thornback/);
  refused("an aircraft that is not there", ["due", binder, "--aircraft", "albatross"], /albatross/);
  refused("a card of a stage that is not there", ["print", binder, "work", "nowhere", ...mine, "--to", join(folder(), "x.pdf")], /nowhere/);
  refused("a picture form that is not there", ["print", binder, "work", "winter-2026-carburettor-hose", ...mine, "--to", join(folder(), "x.doc")], /pdf/);
  refused("a very long argument", act("note-defect", `text=${"oil ".repeat(30_000)}`), /text/);
  const bytes = spawnSync("sh", ["-c", `exec "$0" defect "$1" --aircraft pebblewing "$(printf 'text=\\377\\376 oil')"`, program, binder], { encoding: "utf8", env });
  check("bytes that are no text", bytes.status === 2 && bytes.signal === null, `${bytes.status} ${bytes.stdout}${bytes.stderr}`);
}

function installations_and_serials() {
  const act = (name, ...words) => wm("act", binder, name, ...mine, "--json", ...words);
  const one = act("register-part", "id=hose-x1", "type=hose assembly", "serial=X-1");
  check("a part is registered", one.status === 0, one.said);
  refused("the same serial number twice", ["act", binder, "register-part", ...mine, "id=hose-x2", "type=hose assembly", "serial=X-1"], /serial/, /hose-x1/);
  refused("a part into a taken position", ["act", binder, "install-part", ...mine, "part=hose-x1", "position=fuel-hose-strainer"], /fuel-hose-strainer|position/);
  const tried = wm("act", binder, "install-part", ...mine, "part=hose-x1", "position=fuel-hose-strainer", "--on", "2022-05-01");
  check("an installation that overlaps another in the past", tried.status === 2 && tried.err !== "", tried.said);
}

function files_that_are_no_binder() {
  const at = folder();
  const put = (name, bytes) => {
    writeFileSync(join(at, name), bytes);
    return join(at, name);
  };
  done("defect", binder, ...mine, "text=a wagtail nests in the air box");
  const whole = readFileSync(binder);
  const cases = {
    "an empty file": put("empty.binder", ""),
    "a text file": put("text.binder", "This is a shopping list.\n"),
    "a picture": put("picture.binder", readFileSync(join(root, "demo", "stripe.png"))),
    "a binder cut in the middle": put("half.binder", whole.subarray(0, Math.floor(whole.length / 2))),
    "a binder cut after its head": put("head.binder", whole.subarray(0, 4096)),
    "noise": put("noise.binder", Buffer.from(Array.from({ length: 9000 }, (_, i) => (i * 7919) % 251))),
    "a folder": at,
    "a file that is not there": join(at, "nothing.binder"),
  };
  for (const [what, file] of Object.entries(cases)) {
    const before = existsSync(file) && file !== at ? readFileSync(file) : undefined;
    for (const words of [["bay", file], ["defect", file, "text=oil"], ["verify", file], ["serve", file, "--port", "0"]]) {
      const ran = wm(...words, { timeout: 20_000 });
      const good = words[0] === "verify" ? [1, 2] : [2];
      check(`${what}: \`${words[0]}\` says so`, good.includes(ran.status) && ran.said.trim() !== "", `${ran.status} ${ran.said}`);
    }
    check(`${what}: left as it was`, before === undefined ? !existsSync(file) || file === at : readFileSync(file).equals(before));
  }
  const flipped = Buffer.from(whole);
  // Everywhere it stands: pages keep old copies of a row that moved, which nobody reads.
  for (let at = flipped.indexOf("a wagtail"); at >= 0; at = flipped.indexOf("a wagtail", at + 1)) flipped[at + 2] ^= 1;
  const ran = wm("verify", put("flipped.binder", flipped));
  check("one letter changed behind our back: verify finds it, exit status 1", ran.status === 1 && /event \d+/.test(ran.out), `${ran.status} ${ran.said}`);
  const again = wm("new", binder);
  check("`new` over a binder is refused", again.status === 2 && events() > 800, again.said);
  const second = wm("demo", join(binder, ".."));
  check("`demo` over a binder is refused", second.status === 2, second.said);
}

function a_sheet_with_errors() {
  const at = folder();
  const sheet = join(at, "bad.toml");
  const made = join(at, "bad.binder");
  writeFileSync(sheet, ['[aircraft]', 'id = "wren"', 'name = "Wren"', 'cylinders = "four"', '', '[[positions]]', 'id = "oil-hose"',
    'name = "Oil hose"', 'system = "plumbing"', 'colour = "red"', '', '[[limits]]', 'id = "oil-change"', 'title = "Oil change"',
    'every_hours = "50 psi"', ''].join("\n"));
  const ran = wm("import", sheet, "--into", made);
  check("a sheet with four errors: exit status 2", ran.status === 2, ran.said);
  for (const [line, field] of [[4, "cylinders"], [9, "system"], [10, "colour"], [15, "every_hours"]]) {
    const place = new RegExp(`(line ${line}\\b[^\\n]*column \\d+|\\b${line}:\\d+)`);
    check(`a sheet with errors: ${field} with line ${line} and its column`, new RegExp(field).test(ran.err) && place.test(ran.err), ran.err);
  }
  check("a sheet with errors: no binder is left", !existsSync(made) && readdirSync(at).join() === "bad.toml", readdirSync(at));
  writeFileSync(sheet, '[aircraft]\nid = "wren"\nname = "Wren\n');
  const cut = wm("import", sheet, "--into", made);
  check("a sheet that is no TOML: line and column", cut.status === 2 && /line 3|3:/.test(cut.err) && !existsSync(made), cut.said);
  const before = events();
  writeFileSync(sheet, '[aircraft]\nid = "wren"\nname = "Wren"\nregistration = "Q-WRN"\n\n[[joints]]\nid = "nut"\nname = "Nut"\nposition = "nowhere"\n');
  const half = wm("import", sheet, "--into", binder);
  check("a sheet that refers to nothing: refused with its line", half.status === 2 && /nowhere/.test(half.err) && /line 9|9:/.test(half.err), half.said);
  check("a sheet that refers to nothing: nothing half imported", events() === before);
  const twin = join(at, "twin.binder");
  done("import", join(root, "demo", "thornback.toml"), "--into", twin);
  check("a good sheet into a new binder", done("verify", twin, "--json").data?.events > 0);
}

function a_folder_that_may_not_be_written() {
  const at = folder();
  copyFileSync(binder, join(at, "a.binder"));
  if (process.getuid?.() === 0) {
    const bound = spawnSync("mount", ["--bind", at, at]).status === 0 && spawnSync("mount", ["-o", "remount,ro,bind", at]).status === 0;
    if (!bound) {
      spawnSync("umount", [at]);
      return skip("a folder that may not be written", "run as root, and no mount is allowed here");
    }
    afterwards(() => spawnSync("umount", [at]));
  } else {
    spawnSync("chmod", ["a-w", at, join(at, "a.binder")]);
    afterwards(() => spawnSync("chmod", ["u+w", at, join(at, "a.binder")]));
  }
  const file = join(at, "a.binder");
  check("read-only folder: the bay can still be seen", wm("bay", file, ...mine).status === 1);
  check("read-only folder: verify is clean", wm("verify", file).status === 0);
  for (const words of [["defect", file, ...mine, "text=oil"], ["new", join(at, "b.binder")], ["demo", join(at, "d")],
    ["import", join(root, "demo", "thornback.toml"), "--into", join(at, "c.binder")], ["copy", binder, join(at, "e.binder")],
    ["print", binder, "work", "winter-2026-carburettor-hose", ...mine, "--to", join(at, "w.pdf")]]) {
    const ran = wm(...words);
    check(`read-only folder: \`${words[0]}\` says so`, [2, 3].includes(ran.status) && ran.err.trim() !== "", `${ran.status} ${ran.said}`);
  }
}

function a_full_disk() {
  const at = folder();
  if (process.getuid?.() !== 0 || spawnSync("mount", ["-t", "tmpfs", "-o", "size=1200k", "wm-test", at]).status !== 0)
    return skip("a full disk", "a small disk cannot be mounted here (it needs root)");
  afterwards(() => spawnSync("umount", [at]));
  const file = join(at, "full.binder");
  copyFileSync(binder, file);
  const fill = spawnSync("dd", ["if=/dev/zero", `of=${join(at, "fill")}`, "bs=4k"]);
  check("full disk: it is full", fill.status !== 0);
  const before = done("verify", file, "--json").data?.events;
  let answered = 0;
  let last;
  for (let i = 0; i < 30; i++) {
    last = wm("defect", file, ...mine, "--json", `text=full ${i} ${"oil film ".repeat(80)}`);
    if (last.status !== 0) break;
    answered += 1;
  }
  check("full disk: exit status 3, and it says so", last?.status === 3 && /full|room|space/i.test(last.said), `${last?.status} ${last?.said}`);
  const after = wm("verify", file, "--json");
  check(`full disk: the ${answered} acknowledged before are there, verify is clean`, after.status === 0 && after.data?.events === before + answered, after.said);
  for (const words of [["new", join(at, "b.binder")], ["copy", binder, join(at, "c.binder")], ["demo", join(at, "d")]]) {
    const ran = wm(...words);
    check(`full disk: \`${words[0]}\` says so`, [2, 3].includes(ran.status) && ran.said.trim() !== "", `${ran.status} ${ran.said}`);
  }
  const print = wm("print", file, "work", "winter-2026-carburettor-hose", ...mine, "--to", join(at, "w.pdf"));
  check("full disk: `print` says so", print.status === 3, `${print.status} ${print.said}`);
  check("full disk: nothing half made is left", !["b.binder", "c.binder", "w.pdf"].some((f) => existsSync(join(at, f))), readdirSync(at));
  spawnSync("rm", [join(at, "fill")]);
  check("full disk: with room again it goes on", wm("defect", file, ...mine, "text=room again").status === 0);
}

async function a_port_in_use() {
  const taken = createServer();
  await new Promise((resolve) => taken.listen(0, "127.0.0.1", resolve));
  const port = String(taken.address().port);
  const ran = wm("serve", binder, "--port", port, { timeout: 20_000 });
  check("a port in use is told, with its number", [2, 3].includes(ran.status) && ran.said.includes(port), `${ran.status} ${ran.said}`);
  await new Promise((resolve) => taken.close(resolve));
  check("a port out of range", wm("serve", binder, "--port", "70000").status === 2);
}

async function two_writers_at_once() {
  const before = events();
  const one = (who, i) => new Promise((resolve) => {
    const child = spawn(program, ["defect", binder, ...mine, "--json", "--id", `${who}-${i}`, `text=${who} ${i}`], { env });
    let said = "";
    child.stdout.on("data", (t) => (said += t));
    child.stderr.on("data", (t) => (said += t));
    child.on("close", (status, signal) => resolve({ status, signal, said }));
  });
  const writer = async (who) => {
    const all = [];
    for (let i = 0; i < 12; i++) all.push(await one(who, i));
    return all;
  };
  const all = (await Promise.all([writer("left"), writer("right"), writer("third")])).flat();
  const bad = all.filter((r) => r.status !== 0);
  check("three writers at once: all 36 are recorded", bad.length === 0 && events() === before + 36, bad.map((r) => `${r.status} ${r.said}`).slice(0, 3));
  check("three writers at once: verify is clean", wm("verify", binder).status === 0);
}

/// The last row again with a kind of a later program, its hash as docs/method/journal.md says.
function a_binder_of_a_newer_program() {
  if (spawnSync("sqlite3", ["--version"]).status !== 0) return skip("a binder of a newer program", "sqlite3 is not here");
  const file = join(folder(), "newer.binder");
  copyFileSync(binder, file);
  const sql = (text) => {
    const ran = spawnSync("sqlite3", [file, text], { encoding: "utf8" });
    if (ran.status !== 0) check("sqlite3 adds the row", false, ran.stderr);
    return ran.stdout.trim();
  };
  const [sequence, head] = sql("SELECT sequence, hash FROM journal ORDER BY sequence DESC LIMIT 1").split("|");
  const row = [head, String(Number(sequence) + 1), "later-1", "propeller-balanced", "1", "2027-01-02", "2027-01-02T10:00:00Z", "owner (invented)",
    "a later program", "", "{}"];
  const parts = row.map((text) => Buffer.from(text));
  const length = (part) => {
    const eight = Buffer.alloc(8);
    eight.writeBigUInt64BE(BigInt(part.length));
    return eight;
  };
  const hash = createHash("sha256").update(Buffer.concat(parts.flatMap((p) => [length(p), p]))).digest("hex");
  const marks = parts.map((p) => crc32(p).toString(16).padStart(8, "0")).join("");
  const quoted = row.map((text, i) => (i === 1 || i === 4 ? text : `'${text}'`));
  sql(`INSERT INTO journal (previous_hash, sequence, id, kind, version, happened, recorded, author, device, refers_to, body, hash, marks)
    VALUES (${quoted.join(", ")}, '${hash}', '${marks}')`);
  check("a newer kind of event: verify is clean", wm("verify", file).status === 0, wm("verify", file).said);
  const seen = wm("bay", file, ...mine);
  check("a newer kind of event: the bay can still be seen", seen.status === 1, seen.said.slice(0, 300));
  const written = wm("defect", file, ...mine, "text=oil film");
  check("a newer kind of event: nothing is written, and it says why", written.status === 2 && /propeller-balanced|newer/.test(written.err), `${written.status} ${written.said}`);
}

/// CRC-32 as in zlib: the marks of the journal.
function crc32(bytes) {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let i = 0; i < 8; i++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return (crc ^ 0xffffffff) >>> 0;
}

function the_catalogue() {
  const listed = done("calc", "--list", "--json").data;
  const all = listed?.calculations ?? listed ?? [];
  const names = all.map((c) => c.name);
  const seven = ["meter-uncertainty", "conformity", "torque-setting", "length-allowance", "mass-balance", "due-date", "lead-check"];
  check("calc --list --json: the seven", seven.every((n) => names.includes(n)), names);
  const described = (fields, path) => fields.flatMap((f) => {
    const here = `${path}${f.key}`;
    const faults = [];
    if (!f.label) faults.push(`${here}: no label`);
    if (!f.shape) faults.push(`${here}: no shape`);
    if (f.shape === "quantity" && (!f.kind || !f.unit)) faults.push(`${here}: no kind or unit`);
    if (f.shape === "quantity" && f.min === undefined && f.max === undefined) faults.push(`${here}: no bounds`);
    if (f.needed && f.example === undefined && f.shape !== "choice") faults.push(`${here}: needed, and no example`);
    return [...faults, ...described(f.fields ?? f.of?.fields ?? [], `${here}/`)];
  });
  for (const name of names) {
    const d = done("calc", name, "--describe", "--json").data ?? {};
    const parts = ["purpose", "input", "output", "sources", "cautions", "version", "example"].filter((p) => d[p] === undefined || d[p].length === 0);
    check(`calc ${name}: described whole`, parts.length === 0, parts);
    const faults = described(d.input?.fields ?? [], "");
    check(`calc ${name}: each input has label, kind, unit, bounds, example`, faults.length === 0, faults);
    check(`calc ${name}: each source has a document and how far it was read`, d.sources?.every((s) => s.document && s.provenance), d.sources);
    check(`calc ${name}: each output has a label`, d.output?.fields.every((f) => f.label), d.output);
    const json = wm("calc", name, JSON.stringify(d.example), "--json");
    check(`calc ${name}: its example runs`, json.status === 0 && json.data !== undefined, `${json.status} ${json.said}`);
    check(`calc ${name}: the answer names sources, cautions, version`, ["sources", "cautions", "version"].every((k) => json.data?.[k] !== undefined), json.out.slice(0, 300));
    const text = wm("calc", name, JSON.stringify(d.example));
    check(`calc ${name}: and as text`, text.status === 0 && /source/.test(text.out) && /caution/.test(text.out), text.said);
    const none = wm("calc", name, "nonsense=1", "--json");
    check(`calc ${name}: nonsense is refused by name`, none.status === 2 && none.data?.problems?.some((p) => p.path === "nonsense"), none.said);
  }
}

// Cranking turns the propeller: what must be so stands above the answer and above the description.
function what_cranks_says_it_first() {
  for (const words of [["calc", "starting-circuit", "--describe"], ["calc", "contactor-check", "coil=5.2 ohm +- 0.1 ohm"]]) {
    const said = wm(...words).out;
    check(`${words.join(" ")}: the caution first`, /^\s*first\s+Cranking test: fuel off/.test(said), said.slice(0, 200));
  }
}

await run([what_cranks_says_it_first, one_field_after_the_other, installations_and_serials, files_that_are_no_binder, a_sheet_with_errors,
  a_folder_that_may_not_be_written, a_full_disk, a_port_in_use, two_writers_at_once, a_binder_of_a_newer_program, the_catalogue]);
