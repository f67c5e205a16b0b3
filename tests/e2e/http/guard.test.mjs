// A page from elsewhere, or a name that is re-pointed at this machine, must not drive the binder.
import { check, freshBinder, rawly, run, serve, smallAircraft, stop } from "./support.mjs";

const server = await serve(freshBinder());
const { ask, port } = server;
const sequence = async () => (await ask.post("/api/view/aircraft-list")).data.sequence;

async function hosts() {
  await smallAircraft(ask);
  for (const host of [`evil.example:${port}`, "evil.example", "127.0.0.1", `127.0.0.1:${port + 1}`, `localhost.evil.example:${port}`]) {
    const answer = await ask.get("/api/catalogue", { Host: host });
    check(`not by the name ${host}`, answer.status === 403 && answer.data.problems.length === 1, answer.text);
  }
  check("not even the page", (await ask.get("/", { Host: `evil.example:${port}` })).status === 403);
  check("by its loopback name", (await ask.get("/api/catalogue", { Host: `localhost:${port}` })).status === 200);
}

async function origins() {
  const body = { id: "evil-1", input: { aircraft: "pebblewing", text: "from elsewhere" } };
  const before = await sequence();
  for (const origin of ["http://evil.example", "null", `https://127.0.0.1:${port}`, `http://127.0.0.1:${port + 1}`]) {
    const answer = await ask.post("/api/act/note-defect", body, { Origin: origin });
    check(`not from ${origin}`, answer.status === 403, answer.text);
  }
  const bare = (headers) => ask("POST", "/api/act/note-defect", { body, headers, bare: true });
  check("not without our header", (await bare({ "Content-Type": "application/json" })).status === 403);
  check("not as a form sends it", (await bare({ "Content-Type": "application/x-www-form-urlencoded" })).status === 403);
  check("not as plain text", (await bare({ "Content-Type": "text/plain", "X-Witnessmark": "1" })).status === 415);
  check("not an attachment either", (await ask("POST", "/api/attachment", { body: "x", headers: { "Content-Type": "image/png" }, bare: true })).status === 403);
  const preflight = await ask("OPTIONS", "/api/act/note-defect", { headers: { Origin: "http://evil.example", "Access-Control-Request-Method": "POST", "Access-Control-Request-Headers": "x-witnessmark" } });
  check("a foreign page gets no leave", preflight.status === 403 && preflight.headers["access-control-allow-origin"] === undefined, preflight.text);
  for (const method of ["PUT", "DELETE", "PATCH", "TRACE"]) {
    check(`${method} is not understood`, (await ask(method, "/api/act/note-defect")).status === 405);
  }
  check("nothing was recorded", (await sequence()) === before);
  const own = await ask.post("/api/act/note-defect", { ...body, id: "own-1" }, { Origin: `http://127.0.0.1:${port}` });
  check("our own page may", own.status === 200, own.text);
}

/// The body of a refused question must never be read as the next question: a foreign page can
/// choose a body freely, and in it the headers that it could not send itself.
async function smuggling() {
  const before = await sequence();
  const inner = JSON.stringify({ id: "smuggled", input: { aircraft: "pebblewing", text: "smuggled" } });
  const hidden = `POST /api/act/note-defect HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nX-Witnessmark: 1\r\n` +
    `Content-Type: application/json\r\nContent-Length: ${inner.length}\r\n\r\n${inner}`;
  const outer = (line, headers) => `${line} HTTP/1.1\r\n${headers}Content-Length: ${hidden.length}\r\n\r\n${hidden}`;
  const here = `Host: 127.0.0.1:${port}\r\n`;
  const tries = {
    "a foreign origin": outer("POST /api/act/note-defect", `${here}Origin: http://evil.example\r\nContent-Type: text/plain\r\n`),
    "a foreign name": outer("POST /", `Host: evil.example\r\nContent-Type: text/plain\r\n`),
    "an address too long": outer(`POST /${"x".repeat(9000)}`, `${here}Origin: http://evil.example\r\n`),
    "a header too long": outer("POST /", `${here}X-Long: ${"x".repeat(9000)}\r\n`),
    "a range that is none": outer("POST /", `${here}Range: bytes=5-2\r\n`),
    "a broken first line": outer("POST", here),
    "two lengths": `POST /api/act/note-defect HTTP/1.1\r\n${here}X-Witnessmark: 1\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\nContent-Length: ${hidden.length}\r\n\r\n0\r\n\r\n${hidden}`,
    "a method with a body": outer("OPTIONS /", here),
    "GET with a body": outer("GET /api/catalogue", here),
  };
  for (const [what, text] of Object.entries(tries)) {
    const { got } = await rawly(port, text, 3_000);
    const answers = got.match(/HTTP\/1\.1 \d+/g) ?? [];
    check(`one question, one answer: ${what}`, answers.length <= 1, answers);
  }
  check("nothing was smuggled in", (await sequence()) === before);
}

async function rubbish() {
  for (const text of ["\r\n\r\n", "GET\r\n\r\n", "\x00\x01\x02\r\n\r\n", "GET / HTTP/9.9\r\n\r\n", `GET / HTTP/1.1\r\n${"A: b\r\n".repeat(3000)}\r\n`,
    `POST /api/view/aircraft-list HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nX-Witnessmark: 1\r\nContent-Type: application/json\r\nContent-Length: -5\r\n\r\n`,
    `POST /api/view/aircraft-list HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nX-Witnessmark: 1\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\nzz\r\n`]) {
    const { got } = await rawly(port, text, 1_000);
    check(`rubbish is not answered with 200: ${JSON.stringify(text.slice(0, 30))}`, !/ 200 /.test(got), got.slice(0, 100));
  }
  check("the server is still there", (await ask.get("/api/catalogue")).status === 200);
  const none = await rawly(port, `POST /api/view/aircraft-list HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nX-Witnessmark: 1\r\nContent-Type: application/json\r\nConnection: close\r\n\r\n`, 3_000);
  check("no length means no body, at once", / 200 /.test(none.got), none.got.slice(0, 100));
}

async function slowOnes() {
  // More half-said questions than a browser opens; the rest must still be served.
  const open = Array.from({ length: 8 }, () => rawly(port, `POST /api/view/aircraft-list HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nX-Witnessmark: 1\r\nContent-Type: application/json\r\nContent-Length: 100\r\n\r\n{`, 4_000));
  const started = Date.now();
  check("slow ones keep nobody waiting", (await ask.get("/api/catalogue")).status === 200 && Date.now() - started < 3_000);
  await Promise.all(open);
  await stop(server);
}

await run([hosts, origins, smuggling, rubbish, slowOnes]);
