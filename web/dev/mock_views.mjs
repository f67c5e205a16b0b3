// Canned answers of the views, in the shape of the API. All invented.

export const header = {
  aircraft: [
    { aircraft: "Q-PEB", name: "Pebblewing", registration: "Q-PEB", engine_hours: "1140.6 h", cowl_closed: false, open_joints: 2, bungs: 1, open_defects: 1, grounding_defects: 0, flight_due: [] },
    { aircraft: "Q-THB", name: "Thornback", registration: "Q-THB", engine_hours: "512.3 h", cowl_closed: true, open_joints: 0, bungs: 0, open_defects: 0, grounding_defects: 0, flight_due: ["Stage 4: fuel pump"] },
  ],
  today: "2026-11-25",
};
const top = header.aircraft[0];
const mark = (id, title, position, of, standing, used, figure, detail, more = {}) => ({ id, title, position, of, standing, ...(used === undefined ? {} : { used }), figure, detail, trend: "", limit: "maker, recommended: owner's sheet", ...more });
const marks = [
  mark("fuel-hose-age", "Fuel hose, strainer to pump: age", "fuel-hose", "limit", "past-limit", 1.067, "64 of 60 months", "cured 2021-07-01"),
  mark("left-lead-2", "Left harness, lead 2 (cylinder 2 bottom)", "left-harness", "check", "undecided", 0.99, "7.94 kohm of 8.0 kohm", "read 2026-11-14", { uncertainty: 0.03 }),
  mark("isolator-age", "Mount isolators: age", "isolator", "limit", "unknown", undefined, "of 120 months", "fitted before this record began"),
  mark("breather-age", "Breather line: age", "breather", "limit", "valid", 0.933, "56 of 60 months", "cured 2022-03-01"),
  mark("magneto-500", "Right magneto: inspection", "right-magneto", "limit", "valid", 0.576, "288 of 500 h", "last done 2022-02-11"),
  mark("plugs-wear", "Plugs: wear", "plugs", "limit", "on-condition", undefined, "on condition", ""),
];
const spot = (position, name, x, y, standing = "", used) => ({ position, name, system: "oil", x, y, part: "", standing, ...(used === undefined ? {} : { used }) });
const plan = [
  spot("fuel-hose", "Fuel hose, strainer to pump", 74, 15, "past-limit", 1.067), spot("left-harness", "Left ignition harness", 68, 58, "undecided", 0.99),
  spot("isolator", "Mount isolator", 8, 12, "unknown"), spot("breather", "Breather line", 54, 14, "valid", 0.933), spot("right-magneto", "Right magneto", 46, 14, "valid", 0.576),
  spot("plugs", "Spark plugs", 72, 66, "on-condition"), spot("oil-cooler", "Oil cooler", 22, 22), spot("cylinder-1", "Cylinder 1", 22, 74), spot("cylinder-2", "Cylinder 2", 78, 74), spot("cylinder-3", "Cylinder 3", 22, 44), spot("cylinder-4", "Cylinder 4", 78, 50),
];
const due = (id, title, position, standing, used, figure, expected, early, late, left) => ({ id, title, position, position_name: title, part: "", standing, used, figure, detail: "", due: expected, left, due_on: expected, expected, early, late, how_sure: "", authority: "maker, recommended", document: "owner's sheet", binding: false, why_unknown: "" });
const ahead = [
  due("breather-age", "Breather line: age", "breather", "valid", 0.93, "56 of 60 months", "2027-03-01", "2027-03-01", "2027-03-01", "96 days"),
  due("oil-50", "Oil change", "", "valid", 0.5, "25 of 50 h", "2027-04-05", "2027-03-09", "2027-05-02", "24.4 h"),
];
const joint = (id, name, number, state, needs, torque_limits = "") => ({ id, name, position: "oil-cooler", kind: "hose swivel nut", state, number, closed: needs === "", torque: "", torque_limits, torque_table: torque_limits ? "hose maker's sheet" : "", by: "owner", since: "2026-11-24", needs });
const joints = [joint("upper-engine", "Upper oil hose at the engine", 1, "open", "torqued, marked, seen", "230 in-lb to 260 in-lb"), joint("upper-cooler", "Upper oil hose at the cooler", 2, "torqued", "marked, seen", "230 in-lb to 260 in-lb"), joint("lower", "Lower oil hose at the engine", 0, "seen", "")];
const hose = {
  id: "oil-hose", title: "oil cooler, pressure side", position: "oil-hose-upper", change: "change-1", family: "MIL-H-8794", size: "-8",
  near_at: "oil cooler, inlet", far_at: "engine, oil outlet", overall: "23.125 in", tightest_radius: "9.44 in", least_radius: "5.02 in", clocking: "",
  binding: "too tight in its bow", drawn: "2026-11-20", verdict: "conforms", proof: "4000 psi, 5 min, water, 2026-11-21", drawn_since: false, event: "e9",
};
const bungs = [{ id: "red cap 3", where: "oil-cooler outlet", since: "2026-11-24" }];
const defects = [{ id: "defect-1", text: "oil film below cylinder 4", position: "cylinder-4", happened: "2026-10-04", decision: "fly", reason: "seeps, watched", until: "2026-12-31", closed: false, how: "", photos: [] }];
const evidence = (position, position_name, leans) => ({
  position, position_name, system: "oil", part: `${position}-1`, description: position_name, grave: true, leans, because: leans === "leave" ? "nothing on record asks for more" : "10-year limit: 128 of 120 months, past a limit that binds: renew, or do what the limit asks",
  lines: [{ topic: "limit", words: "10-year limit: 128 of 120 months", source: "hose maker's sheet (maker, mandatory)", ...(leans === "leave" ? {} : { leans }) }, { topic: "age", words: "cured 2016-02-01, 10.8 years ago", source: "" }],
  decided: leans === "watch" ? "watch" : "", decided_on: leans === "watch" ? "2026-06-01" : "", decided_why: "read again in spring", look_again_due: leans === "watch", stage: "",
});
const change = (id, title, stage, state) => ({ id, title, position: "oil-cooler", position_name: "Oil cooler", system: "oil", grade: "renewed", kind: "ordinary", stage, state, new_part: "hose, PTFE", document: "", note: "", joints: ["upper-engine", "upper-cooler"], after: [], together: [] });
const stage = {
  id: "stage-1", title: "Stage 1: hoses and harness", state: "planned", state_label: "planned", reason: "", ground_only: false, changes: ["change-1", "change-2"],
  objections: [{ rule: "ignition-with-fuel", words: "Ignition and fuel are both disturbed: a rough engine would then have two possible causes.", answer: "An independent inspection, or two stages.", source: "common practice, no source", changes: ["change-1", "change-2"], accepted: ["independent-inspection", "override-in-writing"], settled: false, settled_by: "" }],
  missing_to_open: [{ what: "Joint 1 is not closed: Upper oil hose at the engine (still to be torqued, marked, seen).", where: "joints" }, { what: "Not done yet: ground run.", where: "ground-run" }], missing_to_close: [],
  steps: [{ stage: "stage-1", step: "leak-run-static", label: "leak run, engine stopped", result: "satisfactory", happened: "2026-11-24", text: "dry", by: "owner", air: "", flight_time: "", readings: ["fuel pressure 4 psi"], event: "e1" }],
  abort_values: [{ what: "oil pressure", limit: "below 25 psi" }], entries: [], mass: "", next: "Joint 1 is not closed: Upper oil hose at the engine.",
};
const check = (id, title, last, verdict, used) => ({ id, title, position: "left-harness", kind: "lead-resistance", unit: "kohm", probes: "tower end and plug end, harness off at both", procedure: "Null the test leads.", lowest: "3.0 kohm", highest: "8.0 kohm", limit_source: "harness maker's sheet, rev. C (maker, mandatory)", last: `${last} kohm`, last_when: "2026-11-14, 1137.1 h", last_words: verdict, last_event: "e9", verdict, used, lowest_number: 3, highest_number: 8, last_number: last, not_tested: "Insulation: not tested. Leads can be crossed: check tower to cylinder.", calculation: "harness-check", caution: "" });
const checks = [check("left-lead-1", "Left harness, lead 1 (cylinder 1 top)", 5.19, "conforms", 0.65), check("left-lead-2", "Left harness, lead 2 (cylinder 2 bottom)", 7.94, "undecided", 0.99)];
const figure = (value, U) => ({ value: value * 1000, unit: "ohm", text: `${value} kohm`, ...(U ? { u: U * 500, U: U * 1000, k: 2 } : {}) });

function judge(input) {
  const open = input.over_range === true;
  const value = parseFloat(input.value ?? "0");
  const U = 0.2;
  const verdict = open ? "does-not-conform" : value + U <= 8 ? "conforms" : value - U > 8 ? "does-not-conform" : "undecided";
  return {
    verdict, words: open ? "does-not-conform (open)" : verdict, reason: open ? "The display shows over-range: the lead is open." : `The limit is ${(8 - value).toFixed(1)} kohm away; the meter is good to 0.2 kohm.`,
    next: verdict === "undecided" ? "Reseat the probes and read again, on a finer range." : "", risk: "", ...(open ? {} : { value: figure(value, U) }), lowest: figure(3), highest: figure(8), meter_good_enough: true,
    limit_source: "harness maker's sheet, rev. C", rule: "guarded acceptance", last_time: "7.1 kohm at 1062 h", siblings: "5.2 to 5.9 kohm", not_tested: "Insulation: not tested.", sibling_readings: [{ check: "left-lead-1", title: "lead 1", value: "5.2 kohm", verdict: "conforms" }], working: ["highest less reading"],
  };
}

const event = (sequence, kind, words, more = {}) => ({ sequence, event: `e${sequence}`, kind, kind_label: kind.replaceAll("-", " "), happened: "2026-11-14", recorded: "2026-11-14T10:00:00Z", author: "owner", words, refers_to: "", corrected: false, corrected_words: "", correction_reason: "", ...more });

export const views = {
  header: () => header,
  bay: () => ({ header: top, past_limit: 1, doubtful: 1, unknown: 1, within: 3, marks, plan, ahead, open_joints: joints.slice(0, 2), bungs, defects, oddities: [] }),
  work: () => ({ header: top, changes: [change("change-1", "Renew the upper oil hose", "stage-1", "done"), change("change-2", "Renew the left harness", "stage-1", "planned"), change("change-3", "Fire sleeve on the fuel hose", "", "planned")], stages: [stage], joints, bungs, hoses: [hose] }),
  joints: () => ({ header: top, joints, bungs }),
  measure: () => ({ header: top, groups: [{ id: "left-harness", title: "Left ignition harness", checks }], instruments: [{ id: "bench-meter", name: "Bench multimeter", serial: "M-1", calibrated: "2026-02-03", calibration_due: "2027-02-03", state: "calibration in date", found_bad: "", ranges: ["6 kohm", "60 kohm"], range_accuracy: ["+-(0.9 % of reading + 2 digits)", "+-(0.9 % of reading + 2 digits)"] }] }),
  "judge-reading": judge,
  "check-history": () => ({ check: checks[1], lowest: 3, highest: 8, trend: "the part drifts: +0.9 kohm in 100 h", trend_lines: ["the part drifts: +0.9 kohm in 100 h (0.8 kohm to 1.1 kohm), p 0.017"], trend_notes: ["A projection says what happens if nothing changes; it is no permission to wait."], line: { from_at: 850, to_at: 1137, from_value: 5.2, to_value: 7.9 }, points: [[850, 5.2], [930, 5.9], [1010, 6.4], [1062, 7.1], [1137, 7.94]].map(([h, y], i) => ({ event: `e${i}`, day: `202${2 + i}-11-14`, part: "", value: `${y} kohm`, verdict: "conforms", words: "", instrument: "bench-meter", range: "60 kohm", number: y, uncertainty: 0.2, engine_hours: h, corrected: i === 2 })) }),
  decide: () => ({ header: top, parts: [evidence("oil-cooler", "Oil cooler", "renew"), evidence("left-harness", "Left ignition harness", "watch"), evidence("fuel-pump", "Fuel pump", "leave")], renew: 1, watch: 1, leave: 1 }),
  "part-evidence": () => evidence("oil-cooler", "Oil cooler", "renew"),
  position: () => ({ id: "oil-cooler", name: "Oil cooler", system: "oil", chapter: "7921", area: "right rear", redundant_with: "", note: "", installations: [{ part: "p1", description: "Oil cooler, 10 rows", serial: "A1", cured: "", assembled: "", from: "2019-05-01", to: "", hours: "640.2 h", why_removed: "" }], limits: ahead, checks, joints, defects }),
  entries: () => ({ header: top, entries: [{ id: "entry-1", about: "stage-0", purpose: "checks judged, stage closed", text: "Upper oil hose renewed.\nLeak run dry.", name: "A. Owner", signer: "owner", certificate: "", happened: "2026-05-01", event: "e4", sequence: 201, amended_after_signature: true }] }),
  "entry-draft": () => ({ text: "Upper oil hose renewed.\nLeak run: dry.", missing: stage.missing_to_open, unsigned_notes: ["A person signs this text; the program drafts it and judges nothing."] }),
  history: () => ({ more: false, lines: [event(318, "reading-taken", "Left harness, lead 2: 79.4 kohm", { corrected: true, corrected_words: "Left harness, lead 2: 7.94 kohm", correction_reason: "mistyped" }), event(317, "counter-read", "Engine hours 1140.6 h")] }),
  choices: (input) => ({
    choices: {
      position: plan.map((s) => ({ value: s.position, label: s.name })),
      joint: joints.map((j) => ({ value: j.id, label: j.name })),
      instrument: [{ value: "bench-meter", label: "Bench multimeter", note: "calibrated 3 Feb 2026" }],
    }[input.of] ?? [],
  }),
};
