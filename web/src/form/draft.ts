/// What stands in a form while it is being filled in, and the input that it makes.
///
/// A draft keeps exactly what was typed, number and unit apart. Composing puts them together
/// ("7.9" and "kohm" become "7.9 kohm") and judges nothing: the server does.

import { isFigure, type Alternative, type Field, type Json, type JsonObject } from "../api/types";
import { instant } from "../kit/time";

export interface NumberDraft {
  n: string;
  u: string;
  /// The uncertainty, in the same unit; only for measured fields.
  pm?: string;
}
export interface OneOfDraft {
  is: string;
  by: { [word: string]: RecordDraft };
}
export interface FileDraft {
  hash?: string;
  pending?: string;
  name?: string;
}
export type RecordDraft = { [key: string]: Draft };
export type Draft = string | NumberDraft | OneOfDraft | FileDraft | Draft[] | RecordDraft;

/// An optional of something is asked like the thing itself, and may stay empty.
export function plain(field: Field): Field {
  // A list of attachments says so on the list; its elements are files.
  if (field.shape === "list" && field.refers_to === "attachment" && field.of && field.of.shape !== "attachment") {
    return { ...field, of: { ...field.of, shape: "attachment" } };
  }
  if (field.shape !== "optional" || !field.of) return field;
  const { key, label, help, example } = field;
  const inner = { ...field.of, key, label, needed: false };
  if (help !== undefined) inner.help = help;
  if (example !== undefined) inner.example = example;
  return plain(inner);
}

export function unitOf(field: Field): string {
  return field.unit ?? field.units?.[0] ?? "";
}

export function emptyDraft(raw: Field): Draft {
  const field = plain(raw);
  switch (field.shape) {
    case "quantity":
    case "any_quantity":
      return { n: "", u: unitOf(field) };
    case "measured":
      return { n: "", u: unitOf(field), pm: "" };
    case "record":
      return emptyRecord(field.fields ?? []);
    case "list":
      return [];
    case "one_of":
      return { is: field.alternatives?.[0]?.word ?? "", by: {} };
    case "attachment":
      return {};
    default:
      return "";
  }
}

export function emptyRecord(fields: Field[]): RecordDraft {
  const out: RecordDraft = {};
  for (const field of fields) out[field.key] = emptyDraft(field);
  return out;
}

const k_bare = /^[+-]?\s*(\d+[\d.,]*|[.,]\d+)(e[+-]?\d+)?(\s+\d+\/\d+|\/\d+)?$/i;

/// Does this need its unit added? "3 ft 4 1/2 in" and "7.9 kohm" bring theirs along.
export function bare(text: string): boolean {
  return k_bare.test(text.trim());
}

function withUnit(n: string, u: string): string {
  const text = n.trim();
  return u !== "" && bare(text) ? `${text} ${u}` : text;
}

export function composeNumber(draft: NumberDraft): string | undefined {
  const n = draft.n.trim();
  const pm = (draft.pm ?? "").trim();
  if (n === "" && pm === "") return undefined;
  if (pm === "") return withUnit(n, draft.u);
  if (bare(n) && bare(pm)) return `${n} +- ${pm}${draft.u === "" ? "" : ` ${draft.u}`}`;
  return `${withUnit(n, draft.u)} +- ${withUnit(pm, draft.u)}`;
}

/// @return undefined where nothing was entered: the field is then left out.
export function compose(raw: Field, draft: Draft | undefined): Json | undefined {
  const field = plain(raw);
  if (draft === undefined) return undefined;
  switch (field.shape) {
    case "quantity":
    case "measured":
    case "any_quantity":
      return typeof draft === "string" ? draft.trim() || undefined : composeNumber(draft as NumberDraft);
    case "yes_no":
      return draft === "yes" ? true : draft === "no" ? false : undefined;
    case "count":
    case "number": {
      const text = String(draft).trim();
      if (text === "") return undefined;
      // Anything that is not plainly a number goes as typed: the server says what it expected.
      return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) ? Number(text) : text;
    }
    case "record": {
      const inner = composeRecord(field.fields ?? [], draft as RecordDraft);
      // A record that may be left out is left out while nothing stands in it.
      return field.optional && hollow(inner) ? undefined : inner;
    }
    case "list":
      return composeList(field, draft as Draft[]);
    case "one_of": {
      const one = draft as OneOfDraft;
      const chosen = alternative(field, one.is);
      if (!chosen) return undefined;
      return { is: one.is, ...composeRecord(chosen.fields, one.by[one.is] ?? {}) };
    }
    case "attachment": {
      const file = draft as FileDraft;
      if (file.hash !== undefined) return file.hash;
      return file.pending === undefined ? undefined : { pending: file.pending };
    }
    case "instant": {
      const text = String(draft).trim();
      if (text === "") return undefined;
      // The browser's own field knows no offset: that of this place is meant.
      return /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2})?$/.test(text) ? instant(new Date(text)) : text;
    }
    default: {
      const text = String(draft).trim();
      return text === "" ? undefined : text;
    }
  }
}

/// Elements keep their place even while empty, so that a problem's path points at the right one.
function composeList(field: Field, drafts: Draft[]): Json | undefined {
  const of = field.of;
  if (field.refers_to === "attachment" && of) {
    const files = drafts.map((d) => compose(of, d)).filter((v): v is Json => v !== undefined);
    return files.length === 0 ? undefined : files;
  }
  if (!of || (drafts.length === 0 && !field.needed)) return undefined;
  return drafts.map((d) => compose(of, d) ?? (plain(of).shape === "record" ? {} : ""));
}

export function alternative(field: Field, word: string): Alternative | undefined {
  return field.alternatives?.find((a) => a.word === word);
}

/// "key=value" of the same record.
export function shown(field: Field, record: RecordDraft): boolean {
  if (field.shown_when === undefined || field.shown_when === "") return true;
  const at = field.shown_when.indexOf("=");
  const key = field.shown_when.slice(0, at);
  const wanted = field.shown_when.slice(at + 1);
  const now = record[key];
  if (now === undefined) return false;
  if (typeof now === "string") return now === wanted;
  return !Array.isArray(now) && (now as OneOfDraft).is === wanted;
}

export function composeRecord(fields: Field[], draft: RecordDraft): JsonObject {
  const out: JsonObject = {};
  for (const field of fields) {
    if (!shown(field, draft)) continue;
    const value = compose(field, draft[field.key]);
    if (value !== undefined) out[field.key] = value;
  }
  return out;
}

/// Number and unit apart again, when the unit is one of the choices.
export function splitNumber(text: string, field: Field): NumberDraft {
  const [left = "", right] = text.split(/\s*(?:\+-|\+\/-|±)\s*/, 2);
  const units = field.units ?? [];
  const apart = (part: string): { n: string; u?: string } => {
    const match = /^(.*?)\s*([^\d\s.,/+-][^\d]*|%)$/.exec(part.trim());
    const unit = match?.[2]?.trim();
    // Where no units are offered, the one that stands there stays: only the figure is mistyped.
    const known = units.includes(unit ?? "") || (field.shape === "any_quantity" && units.length === 0);
    if (match?.[1] !== undefined && unit !== undefined && known && bare(match[1])) {
      return { n: match[1].trim(), u: unit };
    }
    return { n: part.trim() };
  };
  const value = apart(left);
  if (field.shape !== "measured" || right === undefined) {
    const whole = right === undefined ? value : { n: text.trim() };
    const draft: NumberDraft = { n: whole.n, u: whole.u ?? unitOf(field) };
    if (field.shape === "measured") draft.pm = "";
    return draft;
  }
  const spread = apart(right);
  const unit = value.u ?? (bare(value.n) ? spread.u : undefined);
  if (unit !== undefined && (spread.u === undefined || spread.u === unit)) {
    return { n: value.n, u: unit, pm: spread.n };
  }
  return { n: left.trim(), u: unitOf(field), pm: right.trim() };
}

/// A draft that shows a given input (an example, an entry to correct).
export function draftFrom(raw: Field, value: Json | undefined): Draft {
  const field = plain(raw);
  if (value === undefined || value === null) return emptyDraft(field);
  switch (field.shape) {
    case "quantity":
    case "measured":
    case "any_quantity":
      if (isFigure(value)) {
        const { typed, U } = value;
        return splitNumber(typed ?? `${value.value}${U === undefined ? "" : ` +- ${U}`} ${value.unit}`, field);
      }
      return splitNumber(String(value), field);
    case "yes_no":
      return value === true ? "yes" : value === false ? "no" : "";
    case "record":
      return recordFrom(field.fields ?? [], value as JsonObject);
    case "list": {
      const of = field.of;
      return of && Array.isArray(value) ? value.map((v) => draftFrom(of, v)) : [];
    }
    case "one_of": {
      const one = value as JsonObject;
      const word = String(one["is"] ?? "");
      const chosen = alternative(field, word);
      return { is: word, by: chosen ? { [word]: recordFrom(chosen.fields, one) } : {} };
    }
    case "attachment":
      return typeof value === "string" ? { hash: value } : {};
    case "instant": {
      const when = new Date(String(value));
      return Number.isNaN(when.getTime()) ? String(value) : instant(when).slice(0, 16);
    }
    default:
      return typeof value === "object" ? "" : String(value);
  }
}

export function recordFrom(fields: Field[], value: JsonObject): RecordDraft {
  const out: RecordDraft = {};
  for (const field of fields) out[field.key] = draftFrom(field, value[field.key]);
  return out;
}

/// Keys that a kept draft lacks (the description has grown since) are filled in.
export function mended(fields: Field[], draft: RecordDraft | undefined): RecordDraft {
  return { ...emptyRecord(fields), ...(draft ?? {}) };
}

/// Is there nothing in it worth keeping? Which of several kinds is chosen says nothing alone: one of
/// them always is.
export function untouched(fields: Field[], draft: RecordDraft): boolean {
  const kinds = fields.filter((f) => f.shape === "one_of");
  return hollow(composeRecord(fields.filter((f) => f.shape !== "one_of"), draft)) && Object.values(composeRecord(kinds, draft)).every(unsaid);
}

function unsaid(value: Json | undefined): boolean {
  if (value === undefined) return true;
  if (Array.isArray(value)) return value.every(unsaid);
  return typeof value === "object" && value !== null && Object.entries(value).every(([key, inner]) => key === "is" || unsaid(inner));
}

/// A record whose fields are all empty says nothing either.
function hollow(value: Json | undefined): boolean {
  if (value === undefined) return true;
  return typeof value === "object" && value !== null && !Array.isArray(value) && Object.values(value).every(hollow);
}

/// How many needed fields of the top level are still empty; the page then waits with judging.
export function stillNeeded(fields: Field[], draft: RecordDraft): Field[] {
  return fields.filter((f) => f.needed && shown(f, draft) && compose(f, draft[f.key]) === undefined);
}
