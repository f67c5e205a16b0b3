// What the program says about itself, and what it says to words that it does not know.
import { existsSync, readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { check, demo, done, folder, run, wm } from "./support.mjs";

const binder = demo();
const mine = ["--aircraft", "pebblewing"];

/// Every field of a description, those in lists and alternatives too.
function fieldsOf(record) {
  const inside = (one) => [...(one.fields ? fieldsOf(one) : []), ...(one.of ? inside(one.of) : []), ...(one.alternatives ?? []).flatMap(fieldsOf)];
  return (record.fields ?? []).flatMap((f) => [f, ...inside(f)]);
}

function every_act_and_view_describes_itself() {
  const wrong = [];
  for (const [kind, least] of [["act", 35], ["view", 15]]) {
    const list = done(kind, "--list", "--json").data?.[`${kind}s`] ?? [];
    check(`${kind} --list --json lists them`, list.length >= least && list.every((e) => e.name && e.purpose), list.length);
    const told = done(kind, "--list").out;
    for (const { name, purpose } of list) {
      if (!told.includes(name)) wrong.push(`${kind} ${name} is not listed`);
      const { data } = done(kind, name, "--describe", "--json");
      const good = data?.name === name && data.purpose === purpose && data.kind === kind && data.input && data.output?.fields.length > 0
        && Array.isArray(data.cautions) && data.example !== undefined;
      if (!good || (kind === "act" && (data.cautions.length === 0 || typeof data.changes_plans !== "boolean"))) wrong.push(`${kind} ${name}`);
      for (const f of fieldsOf(data?.input ?? {})) {
        if (!f.key || !f.label || !f.shape || typeof f.needed !== "boolean") wrong.push(`${kind} ${name}: ${f.key}`);
        if (["quantity", "measured", "any_quantity", "count", "number", "date"].includes(f.shape) && !f.example && !f.above) wrong.push(`${kind} ${name}: ${f.key} has no example`);
        if (["quantity", "measured"].includes(f.shape) && !(f.kind && f.units.length > 0)) wrong.push(`${kind} ${name}: ${f.key} has no dimension`);
      }
      const text = done(kind, name, "--describe").out;
      if (!text.startsWith(`${name}: ${purpose}\n`) || !/\nAnswer\n/.test(text)) wrong.push(`${kind} ${name} in words`);
    }
  }
  check("each with purpose, fields, answer, cautions and example", wrong.length === 0, wrong);
  const verb = done("measure", "--describe", "--json").data;
  check("a short command describes its act", verb?.name === "measure" && verb.kind === "act");
  check("one in a group too", done("plan", "stage", "--describe", "--json").data?.name === "plan-stage");
  check("with a binder before it as well", done("act", binder, "measure", "--describe", "--json").data?.name === "measure");
}

function every_page_of_the_manual_is_made() {
  const at = folder();
  done("manual", "--into", at);
  const pages = readdirSync(join(at, "manual"));
  const index = readFileSync(join(at, "manual", "index.md"), "utf8");
  check("a page for each, listed under three headings", ["## Calculations", "## Acts", "## Views"].every((h) => index.includes(h))
    && pages.filter((p) => p !== "index.md").every((p) => index.includes(`](${p})`)) && pages.length > 60, pages.length);
  for (const page of ["act-measure.md", "view-bay.md"]) check(`${page} is there`, existsSync(join(at, "manual", page)));
}

function words_that_are_not_known() {
  const cases = [
    [["mesure", binder], /did you mean `measure`/],
    [["stage", "opn"], /witnessmark stage: there is no command `opn`[^]*did you mean `open`/],
    [["act", binder, "mesure"], /did you mean `measure`/],
    [["act", "mesure", "--describe"], /did you mean `measure`/],
    [["view", binder, "histroy"], /did you mean `history`/],
    [["calc", "lead-chek"], /did you mean `lead-check`/],
    [["measure", binder, "--arcraft", "x"], /did you mean `--aircraft`/],
    [["measure", binder, ...mine, "chek=left-lead-1"], /did you mean `check`/],
    [["measure", "check=left-lead-1"], /BINDER: `check=left-lead-1` stands where the binder is needed/],
    [["act", "note-defect", "text=oil"], /stands where the name of the act is needed/],
    [["act", "note-defect"], /BINDER/], [["verify"], /BINDER/], [["new"], /BINDER/], [["due"], /BINDER/],
    [["print", binder], /CARD: is missing\n +expected work, stage, entry, hose, tag or trend/],
    [["due", binder, "extra"], /`extra` is one word too many/],
    [["due", binder, "--units", "metric"], /--units/],
  ];
  for (const [words, said] of cases) {
    const ran = wm(...words);
    check(`\`${words.filter((w) => w !== binder).join(" ")}\` is refused in words`, ran.status === 2 && said.test(ran.err) && ran.out === "", `${ran.status} ${ran.said}`);
    const json = wm(...words, "--json");
    check("and as JSON, with its path", json.status === 2 && json.data?.problems?.every((p) => p.path && p.what), json.said);
  }
  const nothing = wm();
  check("no word at all shows the commands", nothing.status === 2 && /measure/.test(nothing.err), nothing.said);
  check("`help` is understood", /Exit status/.test(done("help").out) && /BINDER/.test(done("help", "measure").out));
}

/// Calculations ended with 0 whatever their verdict.
function a_finding_is_status_1() {
  const judge = (reading) => wm("calc", "conformity", `reading=${reading}`, "upper=27.60 kohm", "meter/name=60 kohm", "meter/full_scale=60.00 kohm",
    "meter/of_reading=0.9 %", "meter/counts=2", "limit_source=entered by the owner", "--json");
  for (const [reading, verdict, status] of [["20.00 kohm", "conforms", 0], ["40.00 kohm", "does-not-conform", 1], ["27.60 kohm", "undecided", 1]]) {
    const ran = judge(reading);
    check(`conformity: ${verdict} ends with ${status}`, ran.data?.answer.verdict === verdict && ran.status === status, `${ran.status} ${ran.said.slice(0, 200)}`);
  }
  const none = wm("calc", "conformity", "upper=27.60 kohm", "limit_source=entered by the owner", "--json");
  check("conformity: not-tested ends with 0, as `measure` does", none.data?.answer?.verdict === "not-tested" && none.status === 0, `${none.status} ${none.said.slice(0, 300)}`);
  const { example } = done("calc", "lead-check", "--describe", "--json").data;
  const far = wm("calc", "lead-check", JSON.stringify({ ...example, reading: "900 kohm", meter: undefined }), "--json");
  check("lead-check: out of limits ends with 1", far.data?.answer?.verdict === "does-not-conform" && far.status === 1, `${far.status} ${far.said.slice(0, 300)}`);
  const asked = ["check=left-lead-1", "value=40 kohm", "instrument=bench-meter", "range=60 kohm"];
  const view = wm("view", binder, "judge-reading", ...mine, ...asked, "--json");
  const act = wm("measure", binder, ...mine, ...asked, "--try", "--json");
  check("a live verdict ends as the recorded one does", view.status === 1 && act.status === 1 && view.data?.answer.verdict === act.data?.answer.verdict, `${view.said}\n${act.said}`);
}

function lists_on_the_command_line() {
  const ran = wm("act", binder, "work-joints", ...mine, "joints=fuel-hose-strainer-inlet,fuel-hose-strainer-outlet", "state=open", "--by", "owner (invented)", "--try");
  check("joints=a,b is two joints", ran.status === 0, ran.said);
  const wrong = wm("act", binder, "work-joints", ...mine, "joints=fuel-hose-strainer-inlet,nowhere", "state=open", "--try");
  check("the wrong one is named by its place", wrong.status === 2 && /joints\/1: there is no joint `nowhere`/.test(wrong.err), wrong.said);
  const figures = wm("calc", "conformity", "reading=20 kohm", "upper=27 kohm", "repeats=19 kohm,21 kohm");
  check("figures are not split, and it says how to write them", figures.status === 2 && /repeats\/0=\.\.\. repeats\/1=\.\.\./.test(figures.err), figures.said);
}

function units_of_an_answer() {
  const { example } = done("calc", "mass-balance", "--describe", "--json").data;
  const described = done("calc", "mass-balance", "--describe", "--json").data.output;
  const nested = described.fields.find((f) => f.of?.fields?.some((g) => g.kind === "mass") || f.fields?.some((g) => g.kind === "mass"));
  const inner = (nested.of?.fields ?? nested.fields).find((g) => g.kind === "mass");
  const ask = (units) => wm("calc", "mass-balance", JSON.stringify({ ...example, units }), "--json");
  const got = ask({ [`${nested.key}/${inner.key}`]: "kg" });
  const values = [got.data?.answer[nested.key]].flat().map((e) => e?.[inner.key]).filter(Boolean);
  check("a unit asked for a field inside a list", got.status < 2 && values.length > 0 && values.every((v) => v.unit === "kg"), got.said.slice(0, 400));
  const no = ask({ colour: "kg" });
  check("an unknown field is refused clearly", no.status === 2 && no.data.problems[0].path === "units/colour" && /one of: /.test(no.data.problems[0].expected), no.said);
  const wrong = ask({ [`${nested.key}/${inner.key}`]: "psi" });
  check("a wrong dimension too", wrong.status === 2 && wrong.data.problems[0].kind === "wrong-dimension", wrong.said);
  // The kind of a reading is known from its unit alone: `psi` for ohms was silently passed over.
  const judged = { ...done("calc", "conformity", "--describe", "--json").data.example };
  const off = wm("calc", "conformity", JSON.stringify({ ...judged, units: { value: "psi" } }), "--json");
  check("a unit of another kind than the reading", off.status === 2 && off.data.problems[0].path === "units/value" && /resistance/.test(off.data.problems[0].what), off.said.slice(0, 300));
  const long = [];
  const look = (v, path) => {
    if (typeof v === "number" && !Number.isInteger(v) && String(v).replace(/^-?0?\.?0*|e.*$|\./g, "").length > 12) long.push(`${path} ${v}`);
    if (typeof v === "object" && v !== null) for (const [k, inside] of Object.entries(v)) look(inside, `${path}/${k}`);
  };
  for (const { name } of done("calc", "--list", "--json").data.calculations) {
    const sample = done("calc", name, "--describe", "--json").data.example;
    look(wm("calc", name, JSON.stringify(sample), "--json").data, name);
  }
  look(wm("bay", binder, ...mine, "--json").data, "bay");
  check("no number is printed with more than twelve digits", long.length === 0, long);
}

function answers_are_those_of_the_api() {
  const act = done("defect", binder, ...mine, "text=a rattle", "--json").data;
  check("an act's answer has its cautions", act?.cautions.length > 0 && act.was_there_already === false && act.recorded.length === 1, act);
  const view = wm("view", binder, "work", ...mine, "--json").data;
  check("a view's answer has where the record stands", view?.head.length === 64 && view.sequence === act.sequence && Array.isArray(view.cautions), view?.head);
  const copy = join(folder(), "copy.binder");
  check("copy, new and print answer as JSON", done("copy", binder, copy, "--json").data?.copy === copy && done("new", join(folder(), "a.binder"), "--json").data?.events === 0);
}

await run([every_act_and_view_describes_itself, every_page_of_the_manual_is_made, words_that_are_not_known, a_finding_is_status_1,
  lists_on_the_command_line, units_of_an_answer, answers_are_those_of_the_api]);
