// What is sent and what comes back is what GET /api/openapi.json says.
import { copyFileSync } from "node:fs";
import { join } from "node:path";
import { check, cli, folder, freshBinder, run, serve, smallAircraft, stop } from "./support.mjs";
import { misfits } from "./support_schema.mjs";

process.env.WM_TODAY = "2026-11-25";
const server = await serve(freshBinder());
const { ask } = server;
const api = (await ask.get("/api/openapi.json")).data;

const body = (path) => api.paths[path].post.requestBody.content["application/json"].schema;
/// The schema of an answer with this status, a named response followed.
function answer(path, status = 200) {
  const told = api.paths[path].post.responses[status];
  const response = told?.$ref ? api.components.responses[told.$ref.split("/").at(-1)] : told;
  return response?.content["application/json"].schema ?? { undescribed: status };
}
function fits(what, schema, value) {
  const wrong = misfits(api, schema, value);
  check(what, wrong.length === 0, wrong.slice(0, 8));
}

async function the_validator_can_see() {
  const schema = answer("/api/view/aircraft-list");
  const good = (await ask.post("/api/view/aircraft-list")).data;
  check("a good answer passes", misfits(api, schema, good).length === 0);
  check("a missing member is seen", misfits(api, schema, { ...good, head: undefined }).length > 0);
  check("a member too many is seen", misfits(api, schema, { ...good, colour: "red" }).length > 0);
  check("a wrong type is seen", misfits(api, schema, { ...good, sequence: "7" }).length > 0);
}

async function an_act() {
  await smallAircraft(ask);
  const path = "/api/act/note-defect";
  const sent = { id: "schema-1", happened: "2026-11-20", author: "owner (invented)", device: "test", seen: 3, try_only: false,
    input: { aircraft: "pebblewing", text: "oil film below the cooler" } };
  fits("a request with its whole envelope", body(path), sent);
  const recorded = await ask.post(path, sent);
  check("it is accepted", recorded.status === 200, recorded.text);
  fits("the answer of an act", answer(path), recorded.data);
  fits("the answer to a retry", answer(path), (await ask.post(path, sent)).data);
  fits("the answer to a trial", answer(path), (await ask.post(path, { ...sent, id: "schema-2", try_only: true })).data);
  check("a request without an id does not fit", misfits(api, body(path), { input: sent.input }).length > 0);
  check("nor is it accepted", (await ask.post(path, { input: sent.input })).status === 422);
}

async function refusals() {
  const path = "/api/act/plan-change";
  const plan = (id, seen) => ask.post(path, { id, seen, input: { aircraft: "pebblewing", id, title: id, position: "oil-hose-upper", grade: "renewed" } });
  const { sequence } = (await ask.post("/api/view/bay", { aircraft: "pebblewing" })).data;
  await plan("first", sequence);
  const late = await plan("second", sequence);
  check("a conflict is 409", late.status === 409, late.text);
  fits("a conflict", answer(path, 409), late.data);
  const empty = await ask.post(path, {});
  fits("problems", answer(path, 422), empty.data);
  const foreign = await ask("POST", path, { body: {}, bare: true, headers: { "Content-Type": "application/json" } });
  check("without our header it is 403", foreign.status === 403, foreign.text);
  fits("a refusal", answer(path, 403), foreign.data);
}

/// Every problem names its field: a form has no other place to show it.
async function every_problem_has_its_path() {
  const { acts, views } = (await ask.get("/api/catalogue")).data;
  const pathless = [];
  const send = async (address, input, sent) => {
    const { data } = await ask.post(address, sent);
    for (const p of data?.problems ?? []) if (p.path === "") pathless.push(`${address} ${JSON.stringify(input).slice(0, 100)}: ${p.what}`);
  };
  for (const [face, list] of [["act", acts], ["view", views]]) {
    for (const { name } of list) {
      const { example } = (await ask.get(`/api/${face}/${name}`)).data;
      for (const input of [{}, example, { ...example, aircraft: "pebblewing" }, { colour: "red" }]) {
        const address = `/api/${face}/${name}`;
        await send(address, input, face === "act" ? { id: `p-${name}`, try_only: true, input } : input);
      }
    }
  }
  check("every problem of acts and views has its path", pathless.length === 0, pathless);
}

async function examples() {
  const wrong = [];
  for (const [path, { post }] of Object.entries(api.paths)) {
    for (const example of body(path).examples ?? [undefined]) {
      const found = misfits(api, body(path), example);
      if (found.length > 0) wrong.push(`${path}: ${found[0]}`);
    }
    if (!post.summary) wrong.push(`${path}: no summary`);
  }
  check("the example of each request fits its schema", wrong.length === 0, wrong);
  for (const [path] of Object.entries(api.paths).filter(([p]) => p.startsWith("/api/calc/"))) {
    const got = await ask.post(path, body(path).examples[0]);
    fits(`the answer of ${path}`, answer(path), got.data);
  }
}

/// On the demo binder, where the pages are full.
async function views() {
  const at = folder();
  check("the demo binder is made", cli("demo", at).status === 0);
  const copy = join(at, "copy.binder");
  copyFileSync(join(at, "pebblewing.binder"), copy);
  const full = await serve(copy);
  const inputs = { choices: [{ of: "joint" }], position: [{ position: "fuel-hose-strainer" }], "check-history": [{ check: "left-lead-1" }], hose: [{ hose: "oil-hose-lower" }], "part-evidence": [{ position: "fuel-hose-strainer" }],
    "judge-reading": [{ check: "left-lead-1", value: "7.9 kohm", instrument: "bench-meter", range: "60 kohm" }],
    "entry-draft": [{ about: "winter-2026-carburettor-hose", purpose: "opens-stage" }] };
  let seen = 0;
  const names = (await full.ask.get("/api/catalogue")).data.views.map((v) => v.name);
  for (const name of names) {
    const path = `/api/view/${name}`;
    const takesAircraft = (await full.ask.get(path)).data.input.fields.some((f) => f.key === "aircraft");
    for (const input of inputs[name] ?? [{}]) {
      const sent = takesAircraft ? { aircraft: "pebblewing", ...input } : input;
      const got = await full.ask.post(path, sent);
      if (!check_answered(name, got)) continue;
      seen += 1;
      fits(`what is asked of ${name}`, body(path), sent);
      fits(`the answer of ${name}`, answer(path), got.data);
    }
  }
  check("every view was answered", seen >= names.length, `${seen} of ${names.length}`);
  await stop(full);
}

function check_answered(name, got) {
  check(`${name} is answered`, got.status === 200, got.text.slice(0, 400));
  return got.status === 200;
}

await run([the_validator_can_see, an_act, refusals, every_problem_has_its_path, examples, views]);
