/// The form of any description: it arranges described fields and restates nothing.

import { createContext } from "preact";
import { useContext, useEffect, useRef } from "preact/hooks";
import type { ComponentChildren, JSX } from "preact";
import type { Field, Problem } from "../api/types";
import { shown, type Draft, type RecordDraft } from "./draft";
import { fieldId } from "./problems";
import { FieldView } from "./field";

export interface FormState {
  /// Problems by the path of the field they belong to.
  problems: Map<string, Problem[]>;
  touch: (path: string) => void;
  /// What is filled in or fixed beside a field, as text: joints are offered by their position.
  beside: (key: string) => string;
}

export const FormContext = createContext<FormState>({ problems: new Map(), touch: () => undefined, beside: () => "" });

export interface FieldProps<D extends Draft = Draft> {
  field: Field;
  path: string;
  draft: D;
  set: (next: D) => void;
}

/// Fields of one record, one below the other. `prefix` is the path of the record, "" at the top.
export function Fields(props: {
  fields: Field[];
  prefix: string;
  draft: RecordDraft;
  set: (next: RecordDraft) => void;
}): JSX.Element {
  const { fields, prefix, draft, set } = props;
  // Two fields may change before the page is drawn again: always start from the newest.
  const now = useRef(draft);
  now.current = draft;
  return (
    <>
      {fields.filter((f) => shown(f, draft)).map((field) => (
        <FieldView
          key={field.key}
          field={field}
          path={prefix === "" ? field.key : `${prefix}/${field.key}`}
          draft={draft[field.key] ?? ""}
          set={(next) => {
            now.current = { ...now.current, [field.key]: next };
            set(now.current);
          }}
        />
      ))}
    </>
  );
}

/// The paths that a form shows, for placing problems.
export function pathsOf(fields: Field[], draft: RecordDraft, prefix = ""): Set<string> {
  const out = new Set<string>();
  const walk = (list: Field[], record: RecordDraft, at: string): void => {
    for (const raw of list) {
      if (!shown(raw, record)) continue;
      one(raw, record[raw.key], at === "" ? raw.key : `${at}/${raw.key}`);
    }
  };
  const one = (raw: Field, value: Draft | undefined, path: string): void => {
    out.add(path);
    const field = raw.shape === "optional" && raw.of ? raw.of : raw;
    if (field.shape === "record") walk(field.fields ?? [], (value ?? {}) as RecordDraft, path);
    if (field.shape === "list" && field.of && Array.isArray(value)) {
      value.forEach((v, i) => one(field.of as Field, v, `${path}/${i}`));
    }
    if (field.shape === "one_of" && value) {
      const is = (value as { is: string; by: { [w: string]: RecordDraft } });
      const chosen = field.alternatives?.find((a) => a.word === is.is);
      if (chosen) walk(chosen.fields, is.by[is.is] ?? {}, path);
    }
  };
  walk(fields, draft, prefix);
  return out;
}

export function ProblemText(props: { problems: Problem[]; id?: string }): JSX.Element | null {
  if (props.problems.length === 0) return null;
  return (
    <div class="problem" id={props.id}>
      {props.problems.map((p) => (
        <p key={`${p.path} ${p.what}`}>
          <strong>{sentence(p.what)}</strong>
          {p.expected ? ` Expected: ${p.expected}${p.example ? `, such as ${p.example}` : ""}.` : p.example ? ` Such as ${p.example}.` : ""}
          {p.do_next ? ` ${sentence(p.do_next)}` : ""}
          {p.source ? <span class="source-note"> {p.source}</span> : null}
        </p>
      ))}
    </div>
  );
}

/// Starts with a capital and ends with a full stop, whatever the server left open.
export function sentence(text: string): string {
  const trimmed = text.trim();
  if (trimmed === "") return "";
  // A quoted piece of what was typed keeps its case.
  const first = trimmed[0]!.toUpperCase() + trimmed.slice(1);
  return /[.!?:]$/.test(first) ? first : `${first}.`;
}

/// What is wrong with the whole: a list that leads to each field. It takes the focus only when
/// no field can.
export function ProblemSummary(props: { problems: Problem[]; whole: Problem[]; labels: (path: string) => string }): JSX.Element | null {
  if (props.problems.length === 0) return null;
  const count = props.problems.length;
  return (
    <div class="summary" role="alert" tabIndex={-1} id="problem-summary">
      <h2>{count === 1 ? "One thing to put right" : `${count} things to put right`}</h2>
      <ProblemText problems={props.whole} />
      <ul class="plain">
        {props.problems.filter((p) => !props.whole.includes(p)).map((p) => (
          <li key={`${p.path} ${p.what}`}>
            <button type="button" class="link" onClick={() => focusPath(p.path)}>
              {withLabel(props.labels(p.path), p.what)}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

function withLabel(label: string, what: string): string {
  const last = label.split(", ").pop() ?? label;
  // "Bore: bore is needed" says it twice.
  if (what.toLowerCase().startsWith(last.toLowerCase())) {
    return label === last ? what : `${label.slice(0, -last.length)}${what}`;
  }
  return `${label}: ${what}`;
}

/// Put the cursor into the field of a path, or the nearest one around it.
export function focusPath(path: string): boolean {
  let at = path;
  for (;;) {
    const found = document.getElementById(fieldId(at));
    if (found) {
      const inside = found.matches("input, select, textarea, button")
        ? found
        : found.querySelector<HTMLElement>("input, select, textarea, button");
      (inside ?? found).focus();
      found.scrollIntoView({ block: "center" });
      return true;
    }
    if (!at.includes("/")) return false;
    at = at.slice(0, at.lastIndexOf("/"));
  }
}

/// Labels along a path, for the summary: "Leads, 3rd: Resistance".
export function labelOf(fields: Field[], path: string): string {
  const words: string[] = [];
  let here: Field[] = fields;
  for (const part of path.split("/")) {
    if (/^\d+$/.test(part)) {
      words.push(`no. ${Number(part) + 1}`);
      continue;
    }
    const field = here.find((f) => f.key === part);
    if (!field) {
      if (part !== "") words.push(part);
      continue;
    }
    words.push(field.label);
    const inner = field.shape === "list" || field.shape === "optional" ? field.of : field;
    here = inner?.fields ?? inner?.alternatives?.flatMap((a) => a.fields) ?? [];
  }
  return words.join(", ");
}

export function useForm(): FormState {
  return useContext(FormContext);
}

/// After a refusal: the first field with a problem takes the focus.
export function useFocusFirstProblem(problems: Problem[], count: number): void {
  useEffect(() => {
    if (count === 0 || problems.length === 0) return;
    for (const p of problems) {
      if (p.path !== "" && focusPath(p.path)) return;
    }
    document.getElementById("problem-summary")?.focus();
  }, [count]);
}

export function Group(props: { legend: string; help?: string; id: string; describedby?: string; children: ComponentChildren }): JSX.Element {
  return (
    <fieldset id={props.id} aria-describedby={props.describedby}>
      <legend>{props.legend}</legend>
      {props.help ? <p class="help">{props.help}</p> : null}
      {props.children}
    </fieldset>
  );
}
