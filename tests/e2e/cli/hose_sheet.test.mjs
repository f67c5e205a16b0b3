// The sheet of a hose as files: what an owner prints or hands to another program.
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { check, folder, run, wm } from "./support.mjs";

const example = {
  title: "oil cooler, pressure side",
  near_end: { seat: { x: "0 in", y: "0 in", z: "0 in" }, leaves: { x: 1 }, rigid: "1.5 in" },
  far_end: { seat: { x: "14 in", y: "13 in", z: "4 in" }, leaves: { y: -1 }, rigid: "1.5 in" },
  outside_diameter: "0.77 in",
  least_radius: "4.63 in",
};
const here = folder();
const draw = (to, input = example, ...more) => wm("calc", "hose-sheet", JSON.stringify(input), "--to", to, ...more);

function every_form() {
  for (const [ending, starts] of [["pdf", "%PDF-"], ["svg", "<svg "], ["png", "\x89PNG"], ["csv", "station_in,"], ["dxf", "999"]]) {
    const file = join(here, `hose.${ending}`);
    const ran = draw(file);
    const bytes = existsSync(file) ? readFileSync(file, "latin1") : "";
    check(`a ${ending} is written`, ran.status === 0 && bytes.trimStart().startsWith(starts) && /Wrote/.test(ran.out), ran.said + bytes.slice(0, 40));
  }
  const told = draw(join(here, "told.svg"), example, "--json");
  check("as JSON it says which file", told.data?.file?.endsWith("told.svg") && told.data.bytes > 1000, told.said);
  const letter = draw(join(here, "letter.svg"), example, "--paper", "letter");
  check("letter paper", letter.status === 0 && /width="279.4mm" height="215.9mm"/.test(readFileSync(join(here, "letter.svg"), "utf8")), letter.said);
  const sheet = readFileSync(join(here, "hose.svg"), "utf8");
  check("the sheet has its dimensions and its date", /x 14.00 in/.test(sheet) && /2026-11-25/.test(sheet));
}

function what_is_refused() {
  const none = join(here, "none.pdf");
  const wrong = draw(none, { ...example, least_radius: "4 psi", far_end: { ...example.far_end, rigid: "1.5" } });
  check("wrong input is told field by field", wrong.status === 2 && /least_radius/.test(wrong.said) && /rigid/.test(wrong.said), wrong.said);
  const doc = draw(join(here, "hose.doc"));
  check("another ending", doc.status === 2 && /pdf, svg, png, csv, dxf/.test(doc.said), doc.said);
  const paper = draw(none, example, "--paper", "a0");
  check("another paper", paper.status === 2 && /a4, letter/.test(paper.said), paper.said);
  const other = wm("calc", "torque-setting", "--to", none);
  check("a calculation that is not drawn", other.status === 2 && /hose-sheet/.test(other.said), other.said);
  check("nothing was written", !existsSync(none) && !existsSync(join(here, "hose.doc")));
  const nowhere = draw(join(here, "no", "such", "folder.pdf"));
  check("a folder that is not there", nowhere.status === 3 && /Cannot write/.test(nowhere.said), nowhere.said);
}

await run([every_form, what_is_refused]);
