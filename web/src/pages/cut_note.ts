/// A cut length as words in the note of a change, and what a change says of its hose.

import { isFigure, type CalcAnswer, type Field, type Json, type JsonObject } from "../api/types";
import { plain } from "../form/draft";

const k_begins = "Cut length ";

function flat(fields: Field[], input: JsonObject, out: string[]): string[] {
  for (const raw of fields) {
    const field = plain(raw);
    const value = input[raw.key];
    if (value === undefined || value === null) continue;
    if (field.shape === "record") {
      const inner = flat(field.fields ?? [], value as JsonObject, []);
      if (inner.length > 0) out.push(`${field.label.toLowerCase()}: ${inner.join(", ")}`);
    } else {
      const word = field.choices?.find((c) => c.value === value)?.label ?? String(value);
      out.push(`${field.label.toLowerCase()} ${word}`);
    }
  }
  return out;
}

const shown = (value: Json | undefined): string => (isFigure(value) ? value.text ?? `${value.value} ${value.unit}` : "");

/// "Cut length 29.25 in, overall 31.500 in (between the two sealing seats 30 in; ...)."
export function cutNote(fields: Field[], input: JsonObject, answer: CalcAnswer): string {
  const cut = shown(answer.answer["cut_length"]);
  const overall = shown(answer.answer["overall"]);
  const lengths = [cut === "" ? `${k_begins}not settled` : k_begins + cut, overall === "" ? "" : `overall ${overall}`].filter((t) => t !== "");
  return `${lengths.join(", ")} (${flat(fields, input, []).join("; ")}; length-allowance, version ${answer.version ?? 1}).`;
}

/// The plan once more with the note; one of the same kind noted earlier gives way, everything else
/// stays.
export function notedAgain(body: JsonObject, note: string): JsonObject {
  const out: JsonObject = {};
  for (const [key, value] of Object.entries(body)) if (value !== "" && value !== null) out[key] = value;
  const kind = note.startsWith(k_begins) ? k_begins : note;
  const before = String(body["note"] ?? "").split("\n").filter((l) => l.trim() !== "" && !l.startsWith(kind));
  out["note"] = [...before, note].join("\n");
  return out;
}

/// What the words of a change say for the form: the dash number of the hose that goes in.
export function startOfCut(newPart: string): JsonObject {
  const dash = /(?:^|[\s,])(-\d{1,2})(?=$|[\s,;])/.exec(newPart)?.[1];
  return dash === undefined ? {} : { size: dash };
}
