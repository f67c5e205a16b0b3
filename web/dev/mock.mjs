// A stand-in for the server, for the browser tests of the front end alone: it serves dist with
// the same content policy and gives canned answers in the shape of the API. It judges only as
// much as the tests need. All data are invented.
import { createServer } from "node:http";
import { createHash, randomBytes } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { descriptions } from "./mock_data.mjs";
import { views as builtIn } from "./mock_views.mjs";

const dist = join(dirname(fileURLToPath(import.meta.url)), "..", "dist");
const k_policy = "default-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'self'";

/// @param state  Survives a restart: pass the state of the server that was stopped.
export async function startMock({ port = 0, state = freshState() } = {}) {
  const streams = new Set();
  const sockets = new Set();
  const server = createServer((request, response) => {
    void answer(request, response, state, streams).catch((error) => {
      response.writeHead(500).end(String(error));
    });
  });
  server.on("connection", (socket) => {
    sockets.add(socket);
    socket.on("close", () => sockets.delete(socket));
  });
  await new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, "127.0.0.1", resolve);
  });
  return {
    port: server.address().port,
    url: `http://127.0.0.1:${server.address().port}`,
    state,
    record: (kind) => record(state, streams, kind),
    close: () =>
      new Promise((resolve) => {
        server.close(resolve);
        for (const socket of sockets) socket.destroy();
      }),
  };
}

function freshState() {
  return { sequence: 318, ids: new Map(), entries: [], attachments: new Map() };
}

function record(state, streams, kind) {
  state.sequence += 1;
  for (const stream of streams) stream.write(`id: ${state.sequence}\nevent: recorded\ndata: {}\n\n`);
  return { sequence: state.sequence, id: randomBytes(8).toString("hex"), kind };
}

async function answer(request, response, state, streams) {
  const url = new URL(request.url, "http://mock");
  if (!url.pathname.startsWith("/api/")) return file(url.pathname, response);
  const json = (status, body) => {
    response.writeHead(status, { "Content-Type": "application/json", "Cache-Control": "no-store" });
    response.end(JSON.stringify(body));
  };
  if (url.pathname === "/api/changes") return changes(request, response, state, streams, url);
  if (url.pathname === "/api/catalogue") return json(200, catalogue());
  if (url.pathname.startsWith("/api/attachment")) return attachment(request, response, state, url, json);
  const [, , face, name] = url.pathname.split("/");
  const described = descriptions[face]?.[name];
  if (!described && !(face === "view" && builtIn[name])) {
    return json(404, { problems: [{ path: "", kind: "not_found", what: `there is no ${face} named ${name}` }] });
  }
  if (request.method === "GET") return json(200, described?.description);
  if (request.headers["x-witnessmark"] !== "1") return json(403, { problems: [{ path: "", what: "not from our page" }] });
  const body = JSON.parse((await bytes(request)).toString("utf8") || "{}");
  if (face === "view") {
    const view = builtIn[name] ?? described.run;
    return json(200, { answer: view(body, state), sequence: state.sequence });
  }
  if (face === "calc") {
    const problems = missing(described.description.input.fields, body, "");
    const out = problems.length > 0 ? { problems } : described.run(body);
    if (out.problems) return json(422, out);
    const { sources, cautions, version } = described.description;
    return json(200, { answer: out, sources, cautions, version });
  }
  return act(described, name, body, state, streams, json);
}

function act(described, name, body, state, streams, json) {
  if (state.ids.has(body.id)) return json(200, state.ids.get(body.id));
  const problems = [
    ...missing(described.description.input.fields, body.input ?? {}, ""),
    ...(described.check?.(body.input ?? {}) ?? []),
  ];
  if (problems.length > 0) return json(422, { problems });
  const recorded = record(state, streams, name);
  state.entries.push({ ...body, act: name });
  const out = { sequence: recorded.sequence, head: createHash("sha256").update(body.id).digest("hex"), answer: described.run?.(body.input) ?? {}, recorded: [recorded] };
  state.ids.set(body.id, out);
  json(200, out);
}

function catalogue() {
  const list = (face) => Object.values(descriptions[face]).map(({ description: d }) => ({ name: d.name, purpose: d.purpose, version: d.version }));
  return { calculations: list("calc"), acts: list("act"), views: list("view") };
}

/// Needed fields and the crudest of unit checks, each with its path.
function missing(fields, input, prefix) {
  const out = [];
  for (const f of fields) {
    const path = prefix + f.key;
    const value = input?.[f.key];
    if (value === undefined) {
      if (f.needed) out.push({ path, kind: "missing", what: `${f.label} is needed`, expected: "a value", example: f.example ?? "" });
      continue;
    }
    out.push(...wrong(f, value, path));
  }
  return out;
}

function wrong(f, value, path) {
  if (f.shape === "list") return value.flatMap((v, i) => wrong(f.of, v, `${path}/${i}`));
  if (f.shape === "record") return missing(f.fields, value, `${path}/`);
  if (f.shape === "one_of") return missing(f.alternatives.find((a) => a.word === value.is)?.fields ?? [], value, `${path}/`);
  if (f.shape === "quantity" || f.shape === "measured") {
    if (/,/.test(value)) return [{ path, kind: "bad_text", what: `\`${value}\` has a comma`, expected: "a point as decimal sign", example: f.example }];
    if (!/^[-+]?[\d.]/.test(value)) return [{ path, kind: "bad_text", what: `\`${value}\` is not a number with a unit`, expected: `a number with one of ${f.units.join(", ")}`, example: f.example }];
    const unit = /([^\d\s.+-][^\d]*?)\s*$/.exec(value)?.[1];
    if (unit && !f.units.includes(unit)) return [{ path, kind: "wrong_dimension", what: `\`${value}\` is not ${f.kind_words ?? `a ${f.kind}`}`, expected: `one of ${f.units.join(", ")}`, example: f.example }];
  }
  return [];
}

function changes(request, response, state, streams, url) {
  response.writeHead(200, { "Content-Type": "text/event-stream", "Cache-Control": "no-store" });
  const after = Number(request.headers["last-event-id"] ?? url.searchParams.get("after") ?? 0);
  response.write("retry: 700\n: here\n\n");
  if (state.sequence > after) response.write(`id: ${state.sequence}\nevent: recorded\ndata: {}\n\n`);
  streams.add(response);
  const beat = setInterval(() => response.write(": beat\n\n"), 5000);
  response.on("close", () => {
    clearInterval(beat);
    streams.delete(response);
  });
}

async function attachment(request, response, state, url, json) {
  if (request.method === "POST") {
    const content = await bytes(request);
    const hash = createHash("sha256").update(content).digest("hex");
    state.attachments.set(hash, { content, type: request.headers["content-type"] });
    return json(200, { hash });
  }
  const found = state.attachments.get(url.pathname.split("/").pop());
  if (!found) return json(404, { problems: [{ path: "", what: "no such attachment" }] });
  response.writeHead(200, { "Content-Type": found.type });
  response.end(found.content);
}

async function bytes(request) {
  const parts = [];
  for await (const part of request) parts.push(part);
  return Buffer.concat(parts);
}

const manifest = () => JSON.parse(readFileSync(join(dist, "manifest.json"), "utf8"));

function file(path, response) {
  const name = path === "/" ? "index.html" : path.slice(1);
  const found = manifest().find((f) => f.name === name);
  if (!found || !existsSync(join(dist, name))) {
    response.writeHead(404, { "Content-Type": "text/plain" }).end("not here");
    return;
  }
  response.writeHead(200, {
    "Content-Type": found.type, "Content-Encoding": "gzip", "Content-Security-Policy": k_policy,
    "X-Content-Type-Options": "nosniff",
    "Cache-Control": found.cache === "forever" ? "max-age=31536000, immutable" : "no-cache",
  });
  response.end(readFileSync(join(dist, found.gzip)));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const mock = await startMock({ port: Number(process.argv[2] ?? 8099) });
  console.log(mock.url);
}
