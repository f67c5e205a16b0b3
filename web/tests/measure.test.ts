import assert from "node:assert/strict";
import { test } from "node:test";
import { nothing, take, type Gathered } from "../src/measure/keys";
import { readMeter } from "../src/measure/meter_text";
import { linesOf, newest, nextUnread, shortNames, spreadOf, withReading, type Session } from "../src/measure/session";
import { pictureOf } from "../src/look/probe_pick";
import type { CheckLine } from "../src/api/views";

const value = (n: string, u: string): object => ({ is: "value", n, u });

test("a bare figure is in the unit of the check", () => {
  assert.deepEqual(readMeter("12.41", "kohm"), value("12.41", "kohm"));
  assert.deepEqual(readMeter(" +0.025 ", "in"), value("+0.025", "in"));
  assert.deepEqual(readMeter("-0.12", "V"), value("-0.12", "V"));
  assert.deepEqual(readMeter("\u22120.12", "V"), value("-0.12", "V"));
  assert.deepEqual(readMeter(".47", "kohm"), value(".47", "kohm"));
  assert.deepEqual(readMeter("12.", "kohm"), value("12", "kohm"));
});

test("units that a meter sends are understood in our writing", () => {
  for (const [sent, n, u] of [
    ["12.41 kOhm", "12.41", "kohm"], ["12.41kOhm", "12.41", "kohm"], ["12.41 k", "12.41", "kohm"], ["12.41 K", "12.41", "kohm"], ["12.41 KOHM", "12.41", "kohm"],
    ["12.41 kΩ", "12.41", "kohm"], ["12.41 k\u2126", "12.41", "kohm"], ["1.2 M", "1.2", "Mohm"], ["1.2 MOhm", "1.2", "Mohm"], ["1.2 MOHM", "1.2", "Mohm"], ["1.2 Meg", "1.2", "Mohm"],
    ["85.2 Ohm", "85.2", "ohm"], ["85.2 OHMS", "85.2", "ohm"], ["85.2 Ω", "85.2", "ohm"], ["85.2 R", "85.2", "ohm"], ["3 mOhm", "3", "mohm"], ["3 m", "3", "mohm"],
    ["R 12.41 kOhm", "12.41", "kohm"],
  ] as const) assert.deepEqual(readMeter(sent, "kohm"), value(n, u), sent);
  assert.deepEqual(readMeter("DC 12.6 V", "V"), value("12.6", "V"));
  assert.deepEqual(readMeter("12.6VDC", "V"), value("12.6", "V"));
  assert.deepEqual(readMeter("180 mV", "V"), value("180", "mV"));
  assert.deepEqual(readMeter("0.31 uF", "uF"), value("0.31", "uF"));
  assert.deepEqual(readMeter("0.31 µF", "nF"), value("0.31", "uF"));
});

test("milli and mega are not mistaken for each other", () => {
  assert.deepEqual(readMeter("2 m", "ohm"), value("2", "mohm"));
  assert.deepEqual(readMeter("2 M", "ohm"), value("2", "Mohm"));
  assert.deepEqual(readMeter("2 mohm", "kohm"), value("2", "mohm"));
  assert.deepEqual(readMeter("2 Mohm", "kohm"), value("2", "Mohm"));
});

test("a comma is where the decimals begin; a power of ten is of the plain unit", () => {
  assert.deepEqual(readMeter("12,41 kOhm", "kohm"), value("12.41", "kohm"));
  assert.deepEqual(readMeter("1,234", "kohm"), value("1.234", "kohm"));
  assert.deepEqual(readMeter("+1.24100000E+04", "kohm"), value("+1.24100000E4", "ohm"));
  assert.deepEqual(readMeter("+1.24100000E+04 OHM", "kohm"), value("+1.24100000E4", "ohm"));
  assert.deepEqual(readMeter("1.26E+01", "V"), value("1.26E1", "V"));
});

test("over range in every writing", () => {
  for (const sent of ["OL", "O.L", "0L", "0.L", ".OL", "O.L.", "ol", "-OL", "OL MOhm", "O.L kΩ", "OL Ohm", "overload", "OVER RANGE", "inf", "Infinity", "∞", "1. OL", "1.OL", "1 . overload", "----", "--- kohm", "9.90000000E+37", "+9.9E37 OHM"]) {
    assert.deepEqual(readMeter(sent, "kohm"), { is: "over" }, sent);
  }
});

test("what could be either, or neither, is left to a person", () => {
  const one = readMeter("1.", "Mohm");
  assert.equal(one.is, "unclear");
  assert.deepEqual(readMeter("1", "Mohm"), value("1", "Mohm"));
  assert.deepEqual(readMeter("1.0", "Mohm"), value("1.0", "Mohm"));
  assert.deepEqual(readMeter("12.4 furlong", "kohm"), { is: "text", text: "12.4 furlong" });
  assert.deepEqual(readMeter("hello", "kohm"), { is: "text", text: "hello" });
  assert.deepEqual(readMeter("", "kohm"), { is: "text", text: "" });
  assert.deepEqual(readMeter("12.4 k", "psi"), { is: "text", text: "12.4 k" });
});

function typed(keys: string[], from: Gathered = nothing): { now: Gathered; did: string[] } {
  let now = from;
  const did: string[] = [];
  let clock = 1000;
  for (const key of keys) {
    const step = take(now, key, clock);
    now = step.now;
    did.push(step.does);
    clock += 5;
  }
  return { now, did };
}

test("keys become a reading that Enter or Tab ends", () => {
  for (const end of ["Enter", "Tab"]) {
    const { now, did } = typed([..."12.41 k", end]);
    assert.equal(now.text, "12.41 k");
    assert.ok(now.ended);
    assert.equal(did.at(-1), "ended");
  }
});

test("the second press of a meter that sends two is not a person's", () => {
  assert.deepEqual(typed([..."5.2", "Enter", "Enter"]).did.slice(-2), ["ended", "again"]);
  const first = typed([..."5.2", "Enter"]).now;
  assert.equal(take(first, "Enter", 5000).does, "passed");
  assert.equal(take(first, "Tab", 5000).does, "passed", "Tab still moves the focus");
});

test("after the end a new figure begins; keys that are none pass", () => {
  const first = typed([..."5.2", "Enter"]).now;
  assert.equal(typed([..."6.1"], first).now.text, "6.1");
  assert.deepEqual(typed(["ArrowDown", "Shift", "Escape", "F5", " "]).did, ["passed", "passed", "passed", "passed", "passed"]);
  assert.deepEqual(typed(["Enter", "Tab"]).did, ["passed", "passed"], "nothing was typed: they stay the keyboard's");
  assert.equal(typed([..."5.23", "Backspace"]).now.text, "5.2");
});

test("the words that all titles share are said once", () => {
  assert.deepEqual(shortNames(["Left harness, lead 1 (cylinder 1 top)", "Left harness, lead 2 (cylinder 2 bottom)"]), ["1 (cylinder 1 top)", "2 (cylinder 2 bottom)"]);
  assert.deepEqual(shortNames(["Module 1, coil for cylinders 1 and 2: secondary", "Module 1, coil for cylinders 3 and 4: secondary"]), ["1 and 2", "3 and 4"]);
  assert.deepEqual(shortNames(["Compression, cylinder 1", "Compression, cylinder 2"]), ["1", "2"]);
  assert.deepEqual(shortNames(["Alone"]), ["Alone"]);
  assert.deepEqual(shortNames(["Same", "Same"]), ["Same", "Same"]);
});

test("the spread of repeats is between figures of one unit, to their digits", () => {
  assert.equal(spreadOf(["5.20 kohm", "5.31 kohm"]), "0.11 kohm");
  assert.equal(spreadOf(["5.2 kohm", "5.31 kohm", "5.0 kohm"]), "0.31 kohm");
  assert.equal(spreadOf(["5.2 kohm"]), undefined);
  assert.equal(spreadOf(["5.2 kohm", "5200 ohm"]), undefined);
});

const check = (id: string, more: Partial<CheckLine> = {}): CheckLine => ({
  id, title: `Lead ${id}`, position: "", kind: "lead-resistance", unit: "kohm", probes: "", procedure: "", lowest: "", highest: "", limit_source: "",
  last: "", last_when: "", last_words: "", last_event: "", verdict: "not-tested", ...more,
});

test("the next one is the next that was not read, then those passed over, then none", () => {
  const group = { id: "g", title: "Harness", checks: ["a", "b", "c"].map((id) => check(id)) };
  let session: Session | undefined;
  const lines = () => linesOf(group, session, "2026-11-25", []);
  session = withReading(session, "b", { event: "e1", at: "2026-11-25T10:00:00Z", text: "5 kohm", repeats: 0 });
  assert.equal(nextUnread(lines(), "b")?.id, "c");
  session = withReading(session, "c", { event: "e2", at: "2026-11-25T10:01:00Z", text: "5 kohm", repeats: 0 });
  assert.equal(nextUnread(lines(), "c")?.id, "a");
  assert.equal(nextUnread(lines(), "a"), undefined);
});

test("what was kept last is the last, also within one second and read again", () => {
  const reading = (event: string, at = "2026-11-25T10:00:00Z") => ({ event, at, text: "5 kohm", repeats: 0 });
  let session = withReading(undefined, "a", reading("e1"));
  session = withReading(session, "b", reading("e2"));
  assert.equal(newest(session)?.check, "b");
  session = withReading(session, "a", reading("e3"));
  assert.equal(newest(session)?.reading.event, "e3");
});

test("a reading of today counts where no walk was begun; one that waits shows what was typed", () => {
  const group = { id: "g", title: "Harness", checks: [check("a", { last: "5.1 kohm", last_when: "2026-11-25, 1140.2 h", last_event: "e9" }), check("b", { last: "5.0 kohm", last_when: "2026-02-01" })] };
  assert.deepEqual(linesOf(group, undefined, "2026-11-25", []).map((l) => l.read), [true, false]);
  const session = withReading(undefined, "b", { event: "e1", at: "2026-11-25T10:00:00Z", text: "5.4 kohm", repeats: 1 });
  const waits = linesOf(group, session, "2026-11-25", ["e1"])[1]!;
  assert.deepEqual([waits.read, waits.waits, waits.text], [true, true, "5.4 kohm"]);
});

test("each thing that is read has its drawing; what fits none has none", () => {
  for (const [kind, title, probes, picture] of [
    ["lead-resistance", "Left harness, lead 1", "tower end and plug end", "lead"],
    ["insulation", "Left harness, insulation", "lead conductor and its screen", "insulation"],
    ["resistance", "Left magneto coil: primary", "", "coil-primary"],
    ["resistance", "Left magneto coil: secondary", "tower and ground", "coil-secondary"],
    ["resistance", "Module 1, coil for cylinders 1 and 2: secondary", "both plug towers, leads off", "coil-double-ended"],
    ["gap", "Plug 1 top", "feeler", "plug-gap"],
    ["gap", "Breaker points, left magneto", "", "point-gap"],
    ["resistance", "Plug 1 top, resistor", "", "plug-resistor"],
    ["insulation", "Condenser, left magneto", "", "condenser"],
    ["other", "Condenser, left magneto: capacitance", "", "condenser"],
    ["other", "Timing, left magneto", "timing light on the P-lead", "timing"],
    ["voltage-drop", "Voltage drop over the starter cable", "", "cable-drop"],
    ["voltage-drop", "Voltage drop over the starter contactor", "battery stud and starter stud, while cranking", "contactor-contacts"],
    ["resistance", "Starter contactor: coil", "", "contactor-coil"],
    ["resistance", "Starter contactor, contacts closed", "", "contactor-contacts"],
    ["resistance", "Bonding, engine to airframe", "crankcase and firewall, four wires", "bond"],
    ["voltage", "Charging voltage at 1500 rpm", "battery terminals", "battery"],
    ["speed", "Speed drop on the left magneto alone", "", "speed-drop"],
    ["condenser", "Left magneto", "", "condenser"],
    ["magneto-timing", "Left magneto", "", "timing"],
    ["bond", "Engine", "", "bond"],
    ["compression", "Cylinder 1", "top plug hole", undefined],
    ["speed", "Static speed, full throttle", "", undefined],
    ["pressure", "Compression, cylinder 1", "top plug hole", undefined],
    ["resistance", "Fuel sender", "", "two-ends"],
  ] as const) assert.equal(pictureOf(kind, title, probes), picture, title);
});
