// Every address of the API, and what it says to bad input.
import { gunzipSync } from "node:zlib";
import { check, freshBinder, pause, rawly, run, serve, smallAircraft, stop } from "./support.mjs";

const server = await serve(freshBinder());
const { ask } = server;

async function page() {
  const index = await ask.get("/");
  check("the page is HTML", index.status === 200 && /^text\/html/.test(index.headers["content-type"]), index.headers);
  check("it has a strict policy", /default-src 'self'/.test(index.headers["content-security-policy"]) && !/unsafe/.test(index.headers["content-security-policy"]), index.headers);
  check("no sniffing, no referrer", index.headers["x-content-type-options"] === "nosniff" && index.headers["referrer-policy"] === "no-referrer");
  check("no door for other origins", index.headers["access-control-allow-origin"] === undefined);
  check("it is asked for anew", index.headers["cache-control"] === "no-cache", index.headers);
  const script = /src="\/?([^"]+\.js)"/.exec(index.text)?.[1];
  if (script === undefined) {
    check("without a built page, it says what to do", /run \.\/start/.test(index.text), index.text);
    return;
  }
  const plain = await ask.get(`/${script}`);
  const zipped = await ask.get(`/${script}`, { "Accept-Encoding": "gzip, br" });
  check("a script is kept for ever", /immutable/.test(plain.headers["cache-control"]), plain.headers);
  check("compressed where that is accepted", zipped.headers["content-encoding"] === "gzip" && plain.headers["content-encoding"] === undefined, zipped.headers);
  check("and the same", gunzipSync(zipped.raw).equals(plain.raw));
  const again = await ask.get(`/${script}`, { "Accept-Encoding": "gzip", "If-None-Match": zipped.headers.etag });
  check("unchanged is told in a word", again.status === 304 && again.raw.length === 0, again.status);
  const head = await ask("HEAD", `/${script}`);
  check("HEAD has no body", head.status === 200 && head.raw.length === 0, head.status);
  for (const path of ["/no-such-page", "/../etc/passwd", "/%2e%2e/%2e%2e/etc/passwd", "//etc/passwd", "/%00"]) {
    check(`nothing at ${path}`, (await ask.get(path)).status === 404);
  }
}

async function catalogue() {
  const { data } = await ask.get("/api/catalogue");
  check("the catalogue lists calculations, acts and views", data.calculations.length >= 7 && data.acts.length > 30 && data.views.length > 10);
  check("each with name and purpose", [...data.calculations, ...data.acts, ...data.views].every((e) => e.name && e.purpose));
  for (const [face, list] of [["calc", data.calculations], ["act", data.acts], ["view", data.views]]) {
    for (const { name } of list) {
      const one = await ask.get(`/api/${face}/${name}`);
      const good = one.status === 200 && one.data?.name === name && Array.isArray(one.data.input?.fields) && one.data.output !== undefined;
      if (!good || face === "calc") check(`${face} ${name} is described`, good, one.text.slice(0, 300));
    }
  }
  const act = (await ask.get("/api/act/measure")).data;
  check("an act carries cautions and an example", act.cautions.length > 0 && act.example !== undefined && act.kind === "act", act);
  for (const face of ["calc", "act", "view"]) {
    const none = await ask.get(`/api/${face}/no-such-thing`);
    check(`no such ${face}: 404 in words`, none.status === 404 && /no-such-thing/.test(none.data.problems[0].what), none.text);
  }
  const api = (await ask.get("/api/openapi.json")).data;
  check("the API describes itself", api.openapi.startsWith("3.1") && api.paths["/api/act/measure"] !== undefined);
  check("answers are not kept", (await ask.get("/api/catalogue")).headers["cache-control"] === "no-store");
}

async function calculations() {
  const described = (await ask.get("/api/calc/lead-check")).data;
  const good = await ask.post("/api/calc/lead-check", described.example);
  check("the example of a calculation runs", good.status === 200 && good.data.answer && good.data.sources.length > 0 && good.data.cautions.length > 0, good.text.slice(0, 300));
  const empty = await ask.post("/api/calc/torque-setting", {});
  check("what is missing is told field by field", empty.status === 422 && empty.data.problems.length > 0 && empty.data.problems.every((p) => p.path), empty.text.slice(0, 300));
  const key = described.input.fields.find((f) => f.shape === "quantity" || f.shape === "measured").key;
  const unit = await ask.post("/api/calc/lead-check", { ...described.example, [key]: "28 psi" });
  const bare = await ask.post("/api/calc/lead-check", { ...described.example, [key]: 28 });
  check("a wrong unit is told with its path", unit.status === 422 && unit.data.problems[0].path === key && unit.data.problems[0].kind === "wrong-dimension", unit.text.slice(0, 400));
  check("so is a bare number", bare.status === 422 && bare.data.problems[0].path === key, bare.text.slice(0, 400));
  const broken = await ask.post("/api/calc/lead-check", "{\"a\": ");
  check("broken JSON is told", broken.status === 422 && broken.data.problems.length === 1, broken.text);
  const list = await ask.post("/api/calc/lead-check", "[1,2]");
  check("a list is no input", list.status === 422, list.text);
  const deep = await ask.post("/api/calc/lead-check", "[".repeat(100000));
  check("depth is refused", deep.status === 422, deep.text.slice(0, 200));
  const notText = await ask("POST", "/api/calc/lead-check", { body: Buffer.from([0x7b, 0x22, 0xff, 0xfe, 0x22, 0x7d]) });
  check("what is no UTF-8 is refused", notText.status === 422, notText.text.slice(0, 200));
}

async function acts() {
  await smallAircraft(ask);
  const noted = await ask.act("note-defect", { aircraft: "pebblewing", text: "oil film below the cooler" }, { author: "owner (invented)", happened: "2026-11-20" });
  const { data } = noted;
  check("an act is recorded", noted.status === 200 && data.recorded.length >= 1 && data.sequence === data.recorded.at(-1).sequence && /^[0-9a-f]{64}$/.test(data.head), noted.text);
  check("with its cautions and its words", data.cautions.length > 0 && data.answer.words, noted.text);

  const event = await ask.get(`/api/event/${data.recorded[0].id}`);
  check("the event can be fetched for a correction", event.status === 200 && event.data.kind === "defect-noted" && event.data.body.text === "oil film below the cooler" && event.data.happened === "2026-11-20" && event.data.author === "owner (invented)", event.text);
  check("no such event", (await ask.get("/api/event/nothing")).status === 404);

  const bad = await ask.post("/api/act/note-defect", { seen: "x", colour: 1, input: { aircraft: "pebblewing", smell: "burnt" } });
  const paths = bad.data.problems.map((p) => p.path);
  check("envelope and input are told together", bad.status === 422 && ["id", "seen", "colour", "smell", "text"].every((p) => paths.includes(p)), bad.text);
  const nowhere = await ask.act("note-defect", { aircraft: "thornback", text: "x" });
  check("an aircraft that is not there", nowhere.status === 422 && nowhere.data.problems[0].path === "aircraft", nowhere.text);
  const day = await ask.act("note-defect", { aircraft: "pebblewing", text: "x" }, { happened: "2026-02-30" });
  check("30 February", day.status === 422 && day.data.problems[0].path === "happened", day.text);
  const photo = await ask.act("note-defect", { aircraft: "pebblewing", text: "x", photos: ["0".repeat(64)] });
  check("a photo that was not stored", photo.status === 422 && photo.data.problems[0].path === "photos/0", photo.text);
  check("no such act", (await ask.act("fly", {})).status === 404);
  const after = await ask.post("/api/view/bay", { aircraft: "pebblewing" });
  check("nothing was recorded by what was refused", after.data.sequence === data.sequence, after.data.sequence);
  const trying = await ask.act("note-defect", { aircraft: "pebblewing", text: "only trying" }, { try_only: true });
  check("trying records nothing", trying.status === 200 && trying.data.recorded.length === 0 && trying.data.sequence === data.sequence, trying.text);
}

async function sameIdTwice() {
  const body = { id: "retry-1", input: { aircraft: "pebblewing", text: "a rattle" } };
  const [one, two] = [await ask.post("/api/act/note-defect", body), await ask.post("/api/act/note-defect", body)];
  check("the same id again is harmless", one.status === 200 && two.status === 200 && two.data.was_there_already && two.data.sequence === one.data.sequence && two.data.recorded[0].id === one.data.recorded[0].id, two.text);
  const many = await Promise.all(Array.from({ length: 12 }, () => ask.post("/api/act/note-defect", { ...body, id: "retry-2" })));
  const sequences = new Set(many.map((r) => r.data?.recorded?.[0]?.sequence));
  check("also when all come at once", many.every((r) => r.status === 200) && sequences.size === 1, [...sequences]);
}

async function plansThatMoved() {
  const seen = (await ask.post("/api/view/bay", { aircraft: "pebblewing" })).data.sequence;
  const plan = (title, more) => ask.act("plan-change", { aircraft: "pebblewing", title, position: "oil-hose-upper", grade: "renewed" }, more);
  check("a plan is made", (await plan("Renew the hose", { seen })).status === 200);
  const late = await plan("Renew it again", { seen });
  check("a plan made on an old page is a conflict, with what changed", late.status === 409 && late.data.problems[0].kind === "conflict" && /Renew the hose/.test(late.text), late.text);
  const reading = await ask.act("note-defect", { aircraft: "pebblewing", text: "a whistle" }, { seen });
  check("what was seen is never a conflict", reading.status === 200, reading.text);
}

async function views() {
  const list = await ask.post("/api/view/aircraft-list");
  check("an empty body is an empty input", list.status === 200 && list.data.answer.aircraft[0].id === "pebblewing" && list.data.head.length === 64, list.text);
  const none = await ask.post("/api/view/bay", {});
  check("a view says what it needs", none.status === 422 && none.data.problems[0].path === "aircraft", none.text);
  const names = (await ask.get("/api/catalogue")).data.views.map((v) => v.name);
  const faults = [];
  for (const name of names) {
    const answer = await ask.post(`/api/view/${name}`, { aircraft: "pebblewing" });
    if (answer.status >= 500) faults.push(`${name}: ${answer.text}`);
  }
  check("no view is a fault", faults.length === 0, faults);
}

async function attachments() {
  const png = Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), Buffer.alloc(300_000, 7)]);
  const send = (body, type = "application/octet-stream") => ask("POST", "/api/attachment", { body, headers: { "Content-Type": type } });
  const stored = await send(png, "image/png");
  check("an attachment is stored", stored.status === 200 && stored.data.size === png.length && stored.data.hash.length === 64, stored.text);
  const back = await ask.get(`/api/attachment/${stored.data.hash}`);
  check("and comes back as it was", back.raw.equals(png) && back.headers["content-type"] === "image/png" && /^inline/.test(back.headers["content-disposition"]) && back.headers.etag === `"${stored.data.hash}"`, back.headers);
  check("nothing in it can run", /sandbox/.test(back.headers["content-security-policy"]) && !/'self'/.test(back.headers["content-security-policy"]), back.headers);
  const kept = await ask.get(`/api/attachment/${stored.data.hash}`, { "If-None-Match": back.headers.etag });
  check("unchanged is told in a word", kept.status === 304, kept.status);
  const part = await ask.get(`/api/attachment/${stored.data.hash}`, { Range: "bytes=1-3" });
  check("a part can be had", part.status === 206 && part.text === "PNG", part.status);
  const parts = await ask.get(`/api/attachment/${stored.data.hash}`, { Range: `bytes=${"0-,".repeat(1000)}0-` });
  check("a thousand parts cannot", parts.status === 416, parts.status);
  const page = await send("<script>alert(1)</script>", "text/html");
  const named = await ask.act("attach", { aircraft: "pebblewing", hash: page.data.hash, name: "a\"b\r\n.html", media_type: "text/html" });
  check("it is named by an event", named.status === 200, named.text);
  const out = await ask.get(`/api/attachment/${page.data.hash}`);
  check("a page is handed out as a file, never shown", /^attachment/.test(out.headers["content-disposition"]) && out.headers["x-content-type-options"] === "nosniff", out.headers);
  check("an empty one is refused", (await ask("POST", "/api/attachment", { headers: { "Content-Type": "image/png" } })).status === 422);
  check("no such attachment", (await ask.get(`/api/attachment/${"0".repeat(64)}`)).status === 404);
  check("nor one of a silly name", (await ask.get("/api/attachment/zz")).status === 404);
}

async function sizes() {
  const large = await ask.post("/api/act/note-defect", `{"id":"big","input":{"text":"${"x".repeat(5 << 20)}"}}`);
  check("a question above 4 MiB is refused in words", large.status === 413 && /4 MiB/.test(large.text), large.text);
  const chunked = await ask("POST", "/api/attachment", { headers: { "Content-Type": "image/png", "Transfer-Encoding": "chunked" } });
  check("an empty chunked body is refused", chunked.status === 422, chunked.text);
  const huge = await ask("POST", "/api/attachment", { body: Buffer.alloc((64 << 20) + 1), headers: { "Content-Type": "image/png" } });
  check("an attachment above 64 MiB is refused in words", huge.status === 413 && /64 MiB/.test(huge.text), huge.text);
  const fits = await ask("POST", "/api/attachment", { body: Buffer.alloc(20 << 20, 1), headers: { "Content-Type": "image/png" } });
  check("one of 20 MiB is taken", fits.status === 200 && fits.data.size === 20 << 20, fits.text);
}

async function papers() {
  const verified = await ask.get("/api/verify");
  check("the record agrees with itself", verified.status === 200 && verified.data.clean === true && verified.data.events > 0, verified.text);
  const against = await ask.get(`/api/verify?against=${encodeURIComponent(verified.data.printed)}`);
  check("and with its head", against.data.clean && against.data.heads === 1, against.text);
  const wrong = await ask.get(`/api/verify?against=1:${"ab".repeat(16)}`);
  check("not with another", wrong.data.clean === false && wrong.data.findings.length > 0, wrong.text);
  check("a head that is none", (await ask.get("/api/verify?against=yes")).status === 422);
  const sheet = await ask.get("/api/sheet/pebblewing.toml");
  check("the aircraft sheet is TOML", sheet.status === 200 && /toml/.test(sheet.headers["content-type"]) && /Oil-cooler hose, upper/.test(sheet.text), sheet.text.slice(0, 200));
  check("no sheet of another", (await ask.get("/api/sheet/thornback.toml")).status === 404);

  const changes = (await ask.post("/api/view/work", { aircraft: "pebblewing" })).data.answer.changes;
  const stage = await ask.act("plan-stage", { aircraft: "pebblewing", id: "s1", title: "Hose", changes: [changes[0].id] });
  check("a stage is planned", stage.status === 200, stage.text);
  const pdf = await ask.get("/api/print/stage/s1.pdf?aircraft=pebblewing&paper=letter");
  check("a stage card is printed", pdf.status === 200 && pdf.headers["content-type"] === "application/pdf" && pdf.text.startsWith("%PDF-"), pdf.text.slice(0, 300));
  const svg = await ask.get("/api/print/work/s1.svg?aircraft=pebblewing");
  check("a work card is drawn", svg.status === 200 && /<svg/.test(svg.text), svg.text.slice(0, 300));
  check("no card of another stage", (await ask.get("/api/print/work/s9.pdf?aircraft=pebblewing")).status === 404);
  check("no such card", (await ask.get("/api/print/flag/s1.pdf?aircraft=pebblewing")).status === 404);
  check("no such paper", (await ask.get("/api/print/work/s1.pdf?aircraft=pebblewing&paper=b5")).status === 422);
}

async function ending() {
  check("nothing is sent elsewhere", (await ask.get("/api/nothing/at/all")).status === 404);
  check("a POST to nowhere", (await ask.post("/api/nothing", {})).status === 404);
  // A browser keeps its connections for the next question; they must not hold up the end.
  const idle = Array.from({ length: 4 }, () => rawly(server.port, `GET /api/catalogue HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\n\r\n`));
  await pause(300);
  const started = Date.now();
  const ended = await stop(server);
  check("it stops when told to", ended.code === 0 && Date.now() - started < 2_500, { ...ended, ms: Date.now() - started });
  check("what it was asked was answered", (await Promise.all(idle)).every(({ got, closed }) => closed && / 200 /.test(got)));
  check("and it complained of nothing", !/witnessmark:|ERROR|runtime error/.test(ended.complained), ended.complained);
}

await run([page, catalogue, calculations, acts, sameIdTwice, plansThatMoved, views, attachments, sizes, papers, ending]);
