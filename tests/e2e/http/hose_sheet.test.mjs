// POST /api/sheet/hose-sheet: the drawing sheet of a hose and its centreline.
import { check, freshBinder, run, serve, stop } from "./support.mjs";

const server = await serve(freshBinder());
const { ask } = server;
const example = {
  title: "oil cooler, pressure side",
  near_end: { seat: { x: "0 in", y: "0 in", z: "0 in" }, leaves: { x: 1 }, rigid: "1.5 in" },
  far_end: { seat: { x: "14 in", y: "13 in", z: "4 in" }, leaves: { y: -1 }, rigid: "1.5 in" },
  outside_diameter: "0.77 in",
  least_radius: "4.63 in",
};
const at = (as, paper = "") => `/api/sheet/hose-sheet?as=${as}${paper && `&paper=${paper}`}`;

async function forms() {
  for (const [as, type, start, shown] of [
    ["pdf", /^application\/pdf/, "%PDF-", true], ["svg", /^image\/svg\+xml/, "<svg ", true],
    ["png", /^image\/png/, "\x89PNG", true], ["csv", /^text\/csv/, "station_in,", false],
    ["dxf", /^image\/vnd\.dxf/, "999", false]]) {
    const got = await ask.post(at(as), example);
    check(`${as} is given`, got.status === 200 && type.test(got.headers["content-type"]) && got.raw.toString("latin1").trimStart().startsWith(start), `${got.status} ${JSON.stringify(got.headers)}`);
    const disposition = got.headers["content-disposition"];
    check(`${as} has its name`, disposition.startsWith(shown ? "inline" : "attachment") && disposition.includes(`oil-cooler-pressure-side.${as}`), disposition);
    check(`${as} is not kept`, got.headers["cache-control"] === "no-store");
  }
  const svg = await ask.post(at("svg", "letter"), example);
  check("letter paper", /width="279.4mm"/.test(svg.text));
  check("a drawing runs nothing", /sandbox/.test(svg.headers["content-security-policy"]), svg.headers);
}

async function refusals() {
  const wrong = { ...example, least_radius: "4 psi" };
  const sheet = await ask.post(at("pdf"), wrong);
  const calc = await ask.post("/api/calc/hose-sheet", wrong);
  check("the same problems as the calculation", sheet.status === 422 && sheet.text === calc.text, sheet.text);
  const short = { ...example, overall: "9 in" };
  const [a, b] = [await ask.post(at("svg"), short), await ask.post("/api/calc/hose-sheet", short)];
  check("and so where physics refuses", a.status === 422 && a.text === b.text, a.text);
  const doc = await ask.post(at("doc", "a0"), example);
  check("form and paper are told at once", doc.status === 422 && doc.data.problems.map((p) => p.path).join() === "as,paper", doc.text);
  const none = await ask.post("/api/sheet/torque-setting?as=pdf", {});
  check("what is not drawn is not there", none.status === 404 && /torque-setting/.test(none.text), none.text);
  const empty = await ask.post(at("pdf"), "");
  check("an empty body asks for what is needed", empty.status === 422 && empty.data.problems.length > 3, empty.text);
}

await run([forms, refusals, async function end() {
  await stop(server);
}]);
