// What the tests of the HTTP door share: the program, a temporary binder, plain requests whose
// every header can be chosen, and the count on the last line. Node alone, nothing installed.
import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { request } from "node:http";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "..");
export const program = process.env.WITNESSMARK ?? join(root, "build", "release", "bin", "witnessmark");

let passed = 0;
let failed = 0;

export function check(what, good, got) {
  if (good) {
    passed += 1;
    return;
  }
  failed += 1;
  console.log(`FAILED: ${what}${got === undefined ? "" : `\n   got ${typeof got === "string" ? got : JSON.stringify(got)}`}`);
}

export const pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

/// Asks again and again: other processes share the machine.
export async function until(what, patience = 20_000) {
  const end = Date.now() + patience;
  while (Date.now() < end) {
    const got = await what();
    if (got) return got;
    await pause(50);
  }
  return undefined;
}

const running = new Set();
const folders = new Set();

export function folder() {
  const made = mkdtempSync(join(tmpdir(), "wm-http-"));
  folders.add(made);
  return made;
}

export function cli(...words) {
  return spawnSync(program, words, { encoding: "utf8" });
}

export function freshBinder() {
  const path = join(folder(), "test.binder");
  const made = cli("new", path);
  if (made.status !== 0) throw new Error(`no binder: ${made.stderr}`);
  return path;
}

/// Start a server and wait until it says where it is.
export async function serve(binder, ...words) {
  const child = spawn(program, ["serve", binder, ...(words.includes("--port") ? words : ["--port", "0", ...words])]);
  running.add(child);
  let said = "";
  let complained = "";
  child.stdout.on("data", (text) => (said += text));
  child.stderr.on("data", (text) => (complained += text));
  const ended = new Promise((resolve) => child.on("exit", (code, signal) => {
    running.delete(child);
    resolve({ code, signal, said, complained });
  }));
  const found = await until(() => /http:\/\/[^/\s]+:(\d+)\//.exec(said) ?? (child.exitCode !== null ? "over" : undefined));
  if (!Array.isArray(found)) return { ended, child };
  const port = Number(found[1]);
  return { child, ended, port, ask: asker(port) };
}

export function stop(server, signal = "SIGTERM") {
  server.child.kill(signal);
  return server.ended;
}

/// One request, every header as given. Body: text, bytes, or an object for JSON.
function asker(port) {
  const ask = (method, path, { body, headers = {}, bare = false } = {}) =>
    new Promise((resolve, reject) => {
      const json = body !== undefined && typeof body !== "string" && !Buffer.isBuffer(body);
      const bytes = body === undefined ? undefined : Buffer.from(json ? JSON.stringify(body) : body);
      const usual = method === "POST" && !bare
        ? { "Content-Type": "application/json", "X-Witnessmark": "1" } : {};
      const sent = request({
        host: "127.0.0.1", port, method, path, agent: false,
        headers: { ...usual, ...(bytes ? { "Content-Length": bytes.length } : {}), ...headers },
      }, (response) => {
        const parts = [];
        response.on("data", (part) => parts.push(part));
        response.on("error", reject);
        response.on("end", () => {
          const raw = Buffer.concat(parts);
          let data;
          try {
            data = JSON.parse(raw.toString("utf8"));
          } catch {
            data = undefined;
          }
          resolve({ status: response.statusCode, headers: response.headers, raw, text: raw.toString("utf8"), data });
        });
      });
      sent.on("error", reject);
      sent.end(bytes);
    });
  ask.get = (path, headers) => ask("GET", path, { headers });
  ask.post = (path, body, headers) => ask("POST", path, { body, headers });
  let count = 0;
  ask.act = (name, input, more = {}) => {
    count += 1;
    return ask.post(`/api/act/${name}`, { id: `t-${process.pid}-${count}`, input, ...more });
  };
  return ask;
}

/// Bytes as they are over one connection; gives what came back until it was closed.
export function rawly(port, text, patience = 8_000) {
  return new Promise((resolve) => {
    let got = "";
    const socket = connect(port, "127.0.0.1", () => socket.write(text));
    socket.on("data", (part) => (got += part));
    socket.on("error", () => undefined);
    socket.on("close", () => resolve({ got, closed: true }));
    setTimeout(() => {
      resolve({ got, closed: socket.destroyed });
      socket.destroy();
    }, patience).unref();
  });
}

/// An event stream: gives what was heard so far, as it grows.
export function listen(port, path = "/api/changes", headers = {}) {
  const stream = { heard: "", status: 0, headers: {}, over: false, close: () => undefined };
  stream.opened = new Promise((resolve) => {
    const sent = request({ host: "127.0.0.1", port, path, agent: false, headers: { Accept: "text/event-stream", ...headers } }, (response) => {
      stream.status = response.statusCode;
      stream.headers = response.headers;
      response.on("data", (part) => (stream.heard += part));
      response.on("close", () => (stream.over = true));
      response.on("error", () => (stream.over = true));
      resolve(stream);
    });
    sent.on("error", () => {
      stream.over = true;
      resolve(stream);
    });
    sent.end();
    stream.close = () => sent.destroy();
  });
  return stream;
}

/// A small invented aircraft, entered through the acts.
export async function smallAircraft(ask) {
  const all = [
    await ask.act("describe-aircraft", { id: "pebblewing", name: "Pebblewing", registration: "Q-PEB" }),
    await ask.act("add-position", { aircraft: "pebblewing", id: "oil-hose-upper", name: "Oil-cooler hose, upper", system: "oil" }),
    await ask.act("add-position", { aircraft: "pebblewing", id: "left-harness", name: "Left ignition harness", system: "ignition" }),
  ];
  check("a small aircraft is entered", all.every((r) => r.status === 200), all.map((r) => r.text));
}

export async function run(tests) {
  if (!existsSync(program)) {
    console.log(`there is no program at ${program}; build it or set WITNESSMARK\n0 passed, 1 failed`);
    process.exit(1);
  }
  for (const test of tests) {
    try {
      await test();
    } catch (error) {
      check(`${test.name} ended early`, false, String(error?.stack ?? error));
    }
  }
  for (const child of running) child.kill("SIGKILL");
  for (const made of folders) rmSync(made, { recursive: true, force: true });
  console.log(`${passed} passed, ${failed} failed`);
  process.exit(failed === 0 ? 0 : 1);
}
