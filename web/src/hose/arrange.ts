/// Which of the described fields are asked at once, and which only where they apply.

import { plain, type RecordDraft } from "../form/draft";
import type { Field } from "../api/types";
import { isElbow } from "./drawn";

export const k_first = ["title", "near_end", "far_end", "outside_diameter", "least_radius", "radius_to", "overall"];

export const k_groups = [
  { words: "What it is and what it is screwed to", keys: ["near_at", "far_at", "family", "size", "radius_source"] },
  { words: "What is near it, what holds it", keys: ["keep_outs", "clamps"] },
  { words: "What moves and pulls", keys: ["motion", "weight"] },
  { words: "Pressure", keys: ["lengthens", "shortens", "working_pressure", "proof_pressure", "proof_source"] },
  { words: "Who drew it", keys: ["drawn_by", "drawn_on"] },
];

const k_elbow_only = ["port", "drop"];

/// An end's port and drop are asked of an elbow only; its form is one of those that there are.
export function arranged(fields: Field[], draft: RecordDraft): Field[] {
  return fields.map((raw) => {
    if (raw.key !== "near_end" && raw.key !== "far_end") return raw;
    const end = draft[raw.key];
    const form = typeof end === "object" && !Array.isArray(end) ? (end as RecordDraft)["form"] : undefined;
    const inner = plain(raw).fields;
    if (!inner) return raw;
    return { ...raw, fields: inner.filter((f) => isElbow(form) || !k_elbow_only.includes(f.key)).map((f) => (f.key === "form" ? { ...f, needed: true } : f)) };
  });
}

/// The words of a described answer, by path: "length/shortest".
export function fieldAt(fields: Field[] | undefined, path: string): Field | undefined {
  let here = fields;
  let found: Field | undefined;
  for (const key of path.split("/")) {
    found = here?.find((f) => f.key === key);
    if (!found) return undefined;
    here = plain(found).fields;
  }
  return found;
}
