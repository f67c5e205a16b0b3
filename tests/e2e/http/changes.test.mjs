// The event stream: what is recorded anywhere is heard everywhere, and nothing is missed.
import { check, cli, freshBinder, listen, run, serve, smallAircraft, stop, until } from "./support.mjs";

const binder = freshBinder();
let server = await serve(binder);
let { ask, port } = server;
const note = (text) => ask.act("note-defect", { aircraft: "pebblewing", text });
const ids = (stream) => [...stream.heard.matchAll(/^id: (\d+)$/gm)].map((m) => Number(m[1]));

async function hearing() {
  await smallAircraft(ask);
  const stream = await listen(port, "/api/changes?after=0", { "Accept-Encoding": "gzip, br" }).opened;
  check("a stream opens", stream.status === 200 && stream.headers["content-type"] === "text/event-stream" && stream.headers["content-encoding"] === undefined, stream.headers);
  check("and says at once where the record stands", await until(() => ids(stream).length === 1), stream.heard);
  const made = (await note("a hiss")).data;
  check("what this server records is heard", await until(() => ids(stream).includes(made.sequence)), stream.heard);
  const data = JSON.parse(/^data: (.*)$/gm.exec(stream.heard.slice(stream.heard.lastIndexOf("id:")))[1]);
  check("with its head", data.sequence === made.sequence && data.head === made.head && /event: recorded/.test(stream.heard), stream.heard);

  const other = cli("act", binder, "note-defect", "aircraft=pebblewing", "text=from the command line", "--json");
  check("another process writes", other.status === 0, other.stderr);
  check("and that is heard too", await until(() => ids(stream).includes(made.sequence + 1)), stream.heard);
  stream.close();
}

async function resuming() {
  const now = (await note("a knock")).data.sequence;
  const behind = await listen(port, "/api/changes?after=0", { "Last-Event-ID": String(now - 1) }).opened;
  check("who was away hears the latest at once", await until(() => ids(behind).includes(now)), behind.heard);
  const current = await listen(port, `/api/changes?after=${now}`).opened;
  check("who is up to date hears a greeting only", await until(() => /: here/.test(current.heard)) && ids(current).length === 0, current.heard);
  const silly = await listen(port, "/api/changes?after=yes").opened;
  check("a number that is none means the beginning", await until(() => ids(silly).includes(now)), silly.heard);
  check("silence is broken by a beat", await until(() => /: beat/.test(current.heard), 25_000), current.heard);
  for (const stream of [behind, current, silly]) stream.close();
}

async function manyListeners() {
  // Streams that were closed a moment ago give their place back once the server notices.
  const streams = [];
  await until(async () => {
    const stream = await listen(port, "/api/changes").opened;
    if (stream.status === 200) streams.push(stream);
    return streams.length === 12;
  });
  check("twelve may listen", streams.length === 12, streams.length);
  const thirteenth = await ask.get("/api/changes");
  check("the thirteenth is told to ask now and then", thirteenth.status === 503 && Number(thirteenth.headers["retry-after"]) > 0, thirteenth.text);
  const started = Date.now();
  check("others are served meanwhile", (await ask.post("/api/view/aircraft-list")).status === 200 && Date.now() - started < 3_000);
  streams.pop().close();
  check("a place that is given back is taken", await until(async () => {
    const stream = await listen(port, "/api/changes").opened;
    if (stream.status !== 200) return false;
    streams.push(stream);
    return true;
  }));
  const before = Date.now();
  const ended = await stop(server);
  check("streams do not hold up the end", ended.code === 0 && Date.now() - before < 4_000, { ...ended, ms: Date.now() - before });
  check("and end themselves", await until(() => streams.every((s) => s.over)));
}

await run([hearing, resuming, manyListeners]);
