/// A described form with its problems: what the bench and every act have in common.

import { useMemo, useState } from "preact/hooks";
import type { ComponentChildren, JSX } from "preact";
import type { Field, Problem } from "../api/types";
import { FormContext, Fields, labelOf, pathsOf, ProblemSummary, useFocusFirstProblem, type FormState } from "../form/form";
import { place, worthShowing } from "../form/problems";
import type { RecordDraft } from "../form/draft";

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

export function DescribedForm(props: {
  fields: Field[];
  draft: RecordDraft;
  set: (next: RecordDraft) => void;
  problems: Problem[];
  touched: Touched;
  /// Grows with each refusal: all problems are then shown and the first takes the focus.
  refusals: number;
  onSubmit: () => void;
  children?: ComponentChildren;
}): JSX.Element {
  const { fields, draft, touched, refusals } = props;
  const paths = useMemo(() => pathsOf(fields, draft), [fields, draft]);
  const visible = worthShowing(props.problems, touched.touched, refusals > 0);
  const placed = place(visible, paths);
  const whole = placed.get("") ?? [];
  const state: FormState = { problems: placed, touch: touched.touch };
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
        <Fields fields={fields} prefix="" draft={draft} set={props.set} />
        {props.children}
      </form>
    </FormContext.Provider>
  );
}
