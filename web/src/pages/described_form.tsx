/// A described form with its problems: what the bench and every act have in common.

import { useMemo, useState } from "preact/hooks";
import type { ComponentChildren, JSX } from "preact";
import type { Field, JsonObject, Problem } from "../api/types";
import { FormContext, Fields, labelOf, pathsOf, ProblemSummary, useFocusFirstProblem, type FormState } from "../form/form";
import { place, worthShowing } from "../form/problems";
import { untouched, type RecordDraft } from "../form/draft";

export interface Touched {
  touched: Set<string>;
  touch: (path: string) => void;
  reset: () => void;
}

export function useTouched(): Touched {
  const [touched, setTouched] = useState<Set<string>>(new Set());
  return {
    touched,
    touch: (path) => setTouched((now) => (now.has(path) ? now : new Set([...now, path]))),
    reset: () => setTouched(new Set()),
  };
}

export interface Group {
  words: string;
  keys: string[];
}

export function DescribedForm(props: {
  fields: Field[];
  draft: RecordDraft;
  set: (next: RecordDraft) => void;
  problems: Problem[];
  touched: Touched;
  /// Grows with each refusal: all problems are then shown and the first takes the focus.
  refusals: number;
  onSubmit: () => void;
  /// Keys that are asked at once, in this order; needed ones always are. The others wait behind
  /// "More". Without it every field stands in the order of the description.
  first?: string[] | undefined;
  /// Where much waits behind "More": in groups, each with its words; what no group names is last.
  groups?: Group[] | undefined;
  /// Fixed values that are not asked.
  fixed?: JsonObject | undefined;
  children?: ComponentChildren;
}): JSX.Element {
  const { fields, draft, touched, refusals } = props;
  const paths = useMemo(() => pathsOf(fields, draft), [fields, draft]);
  const visible = worthShowing(props.problems, touched.touched, refusals > 0);
  const placed = place(visible, paths);
  const whole = placed.get("") ?? [];
  const beside = (key: string): string => {
    const value = props.fixed?.[key] ?? draft[key];
    return typeof value === "string" ? value : "";
  };
  const state: FormState = { problems: placed, touch: touched.touch, beside };
  const asked = fields.filter((f) => props.fixed?.[f.key] === undefined);
  const { first } = props;
  const front = first === undefined ? asked : arranged(asked, first);
  const rest = asked.filter((f) => !front.includes(f));
  const hidden = (list: Field[]): boolean => list.some((f) => [...placed.keys()].some((p) => p === f.key || p.startsWith(`${f.key}/`)));
  const groups = grouped(rest, props.groups);
  useFocusFirstProblem(visible, refusals);
  return (
    <FormContext.Provider value={state}>
      <form
        class="described"
        noValidate
        onSubmit={(e) => {
          e.preventDefault();
          props.onSubmit();
        }}
      >
        {refusals > 0 || whole.length > 0
          ? <ProblemSummary problems={refusals > 0 ? visible : whole} whole={whole} labels={(p) => labelOf(fields, p)} />
          : null}
        <Fields fields={front} prefix="" draft={draft} set={props.set} />
        {groups.map((g) => {
          const filled = props.groups ? g.fields.filter((f) => !untouched([f], draft)).length : 0;
          return (
            <details class="more" key={g.words} open={hidden(g.fields) || (props.groups === undefined && !untouched(rest, draft))}>
              <summary>{g.words}{filled > 0 ? <span class="stripe-note"> {filled} filled in</span> : null}</summary>
              <Fields fields={g.fields} prefix="" draft={draft} set={props.set} />
            </details>
          );
        })}
        {props.children}
      </form>
    </FormContext.Provider>
  );
}

function grouped(rest: Field[], groups: Group[] | undefined): { words: string; fields: Field[] }[] {
  const of = (groups ?? []).map((g) => ({ words: g.words, fields: g.keys.flatMap((key) => rest.find((f) => f.key === key) ?? []) }));
  const last = rest.filter((f) => !of.some((g) => g.fields.includes(f)));
  return [...of, { words: `More: ${last.map((f) => f.label.toLowerCase()).join(", ")}`, fields: last }].filter((g) => g.fields.length > 0);
}

function arranged(fields: Field[], first: string[]): Field[] {
  const named = first.map((key) => fields.find((f) => f.key === key)).filter((f): f is Field => f !== undefined);
  return [...named, ...fields.filter((f) => f.needed && !named.includes(f))];
}
