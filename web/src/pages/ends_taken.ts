/// Measured ends as a draft of the hose sheet: what was measured takes the place of what stood
/// there, what is known of the hose fills only what is still empty.

import { isFigure, type Field, type Json, type JsonObject } from "../api/types";
import { compose, draftFrom, emptyRecord, mended, plain, recordFrom, type Draft, type RecordDraft } from "../form/draft";

/// As it is shown: no more digits than were measured, and no "-0".
function shortened(value: Json | undefined): Json | undefined {
  const digits = (n: number): string => String(Number(n.toFixed(4)));
  if (typeof value === "number") return Number(digits(value));
  if (isFigure(value)) return `${digits(value.value)} ${value.unit}`;
  return value;
}

const each = (value: Json | undefined): JsonObject => {
  const out: JsonObject = {};
  for (const [key, v] of Object.entries((value ?? {}) as JsonObject)) {
    const short = shortened(v);
    if (short !== undefined) out[key] = short;
  }
  return out;
};

/// The hose as it was entered for the measurement, by the keys of the sheet.
const k_hose = ["outside_diameter", "least_radius", "radius_to", "lengthens", "shortens"];

/// @param fields  Of the hose sheet.
/// @param kept    Its draft, if one was begun; otherwise it starts with `start`.
/// @param input   What was measured.
/// @param answer  Of hose-ends.
export function endsTaken(fields: Field[], kept: RecordDraft | undefined, start: JsonObject, input: JsonObject, answer: JsonObject): RecordDraft {
  const draft = kept ? mended(fields, kept) : recordFrom(fields, start);
  const hose = (input["hose"] ?? {}) as JsonObject;
  const fill = (inside: Field[], into: RecordDraft, key: string, value: Json | undefined): void => {
    const field = inside.find((f) => f.key === key);
    if (field && value !== undefined && compose(field, into[key]) === undefined) into[key] = draftFrom(field, value);
  };
  for (const key of k_hose) fill(fields, draft, key, hose[key]);
  // How well they are known goes with them: the window of lengths then fits wherever they are.
  for (const [key, from] of [["place_within", "place_within"], ["directions_within", "direction_within"]] as const) {
    const field = fields.find((f) => f.key === key);
    const value = shortened(answer[from]);
    if (field && value !== undefined) draft[key] = draftFrom(field, value) as Draft;
  }
  for (const side of ["near", "far"]) {
    const end = fields.find((f) => f.key === `${side}_end`);
    const inner = end ? plain(end).fields : undefined;
    if (!inner) continue;
    const record: RecordDraft = { ...emptyRecord(inner), ...((draft[`${side}_end`] ?? {}) as RecordDraft) };
    for (const key of ["seat", "leaves"]) {
      const field = inner.find((f) => f.key === key);
      if (field) record[key] = draftFrom(field, each(answer[`${side}_${key}`])) as Draft;
    }
    fill(inner, record, "rigid", hose[`rigid_${side}`]);
    // Elbows say more than their form: that is left to the owner.
    if (hose["elbows"] !== true) fill(inner, record, "form", inner.find((f) => f.key === "form")?.example as Json | undefined);
    draft[`${side}_end`] = record;
  }
  return draft;
}
