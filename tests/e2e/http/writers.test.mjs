// Two writers at once, a port in use, and a server that is killed: nothing acknowledged is lost.
import { spawn } from "node:child_process";
import { check, cli, freshBinder, program, run, serve, smallAircraft, stop } from "./support.mjs";

const binder = freshBinder();
let server = await serve(binder);
let { ask } = server;

const history = async () => (await ask.post("/api/view/history", { aircraft: "pebblewing", most: 500 })).data.answer.lines;

function writeByHand(text) {
  return new Promise((resolve) => {
    const child = spawn(program, ["act", binder, "note-defect", "aircraft=pebblewing", `text=${text}`, "--json"]);
    child.on("exit", (code) => resolve(code));
  });
}

async function atOnce() {
  await smallAircraft(ask);
  const byHand = (async () => {
    const codes = [];
    for (let i = 0; i < 8; ++i) codes.push(await writeByHand(`hand ${i}`));
    return codes;
  })();
  const statuses = await Promise.all(Array.from({ length: 24 }, (_, i) => ask.act("note-defect", { aircraft: "pebblewing", text: `page ${i}` }).then((r) => r.status)));
  const codes = await byHand;
  check("the page's are all recorded", statuses.every((s) => s === 200), statuses);
  check("and those of the command line", codes.every((c) => c === 0), codes);
  const text = JSON.stringify(await history());
  const missing = [...Array.from({ length: 24 }, (_, i) => `page ${i}`), ...Array.from({ length: 8 }, (_, i) => `hand ${i}`)].filter((t) => !text.includes(t));
  check("none is missing", missing.length === 0, missing);
  check("the record agrees with itself", (await ask.get("/api/verify")).data.clean === true);
}

async function portInUse() {
  const second = await serve(binder, "--port", String(server.port));
  const { code, said, complained } = await second.ended;
  check("a port in use is told in plain words", code === 2 && new RegExp(`port ${server.port} is in use`).test(said + complained), { code, said, complained });
  check("the first is not disturbed", (await ask.get("/api/catalogue")).status === 200);
}

async function killed() {
  const acknowledged = [];
  let refused = 0;
  const writing = (async () => {
    for (let i = 0; i < 400 && refused < 3; ++i) {
      const id = `kill-${i}`;
      try {
        const answer = await ask.post("/api/act/note-defect", { id, input: { aircraft: "pebblewing", text: `before the kill ${i}` } });
        if (answer.status === 200) acknowledged.push(id);
      } catch {
        refused += 1;
      }
    }
  })();
  await new Promise((resolve) => setTimeout(resolve, 700));
  await stop(server, "SIGKILL");
  await writing;
  check("some were acknowledged before it was killed", acknowledged.length > 0, acknowledged.length);
  server = await serve(binder);
  ask = server.ask;
  const lost = [];
  for (const id of acknowledged) {
    if ((await ask.get(`/api/event/${id}`)).status !== 200) lost.push(id);
  }
  check("none of them is lost", lost.length === 0, lost);
  check("the record agrees with itself", (await ask.get("/api/verify")).data.clean === true);
  const again = await ask.post("/api/act/note-defect", { id: acknowledged.at(-1), input: { aircraft: "pebblewing", text: "x" } });
  check("one sent again after the restart is harmless", again.status === 200 && again.data.was_there_already === true, again.text);
  const verified = cli("verify", binder);
  check("the command line finds it clean too", verified.status === 0, verified.stdout);
  await stop(server);
}

await run([atOnce, portInUse, killed]);
