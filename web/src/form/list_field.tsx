/// Several of the same: add one, take one away, and put back the one taken away by mistake.

import { useState } from "preact/hooks";
import type { JSX } from "preact";
import { emptyDraft, plain, type Draft } from "./draft";
import { focusPath, type FieldProps } from "./form";
import { FieldView, useNotes } from "./field";

export function ListField(props: FieldProps<Draft[]>): JSX.Element {
  const { field, path, draft, set } = props;
  const notes = useNotes(field, path);
  const [taken, setTaken] = useState<{ at: number; value: Draft } | undefined>(undefined);
  if (!field.of) return <p class="help">{field.label}</p>;
  const of = plain(field.refers_to === "attachment" ? { ...field.of, shape: "attachment" } : { ...field.of, key: "", label: field.of.label ?? "" });
  const one = of.label === "" ? field.label : of.label;
  const add = (): void => {
    set([...draft, emptyDraft(of)]);
    setTimeout(() => focusPath(`${path}/${draft.length}`), 0);
  };
  const remove = (at: number): void => {
    setTaken({ at, value: draft[at] as Draft });
    set(draft.filter((_, i) => i !== at));
    setTimeout(() => document.getElementById(`${notes.id}-add`)?.focus(), 0);
  };
  return (
    <fieldset class="field list" id={notes.id} aria-describedby={notes.describedby}>
      <legend>
        {field.label}
        {field.needed ? null : <span class="optional"> optional</span>}
      </legend>
      {notes.help}
      {notes.problem}
      {draft.map((value, i) => (
        <div class="element" key={i}>
          <div class="element-head">
            <span class="element-number">{i + 1}</span>
            <button type="button" class="quiet" onClick={() => remove(i)} aria-label={`Take away ${one} ${i + 1}`}>
              Take away
            </button>
          </div>
          <FieldView
            field={{ ...of, label: of.label === "" ? `${field.label} ${i + 1}` : of.label, needed: true }}
            path={`${path}/${i}`}
            draft={value}
            set={(next) => set(draft.map((d, j) => (j === i ? next : d)))}
          />
        </div>
      ))}
      <div class="list-acts">
        <button type="button" id={`${notes.id}-add`} onClick={add}>
          {draft.length === 0 ? "Add the first" : "Add another"}
        </button>
        {taken ? (
          <button
            type="button"
            class="quiet"
            onClick={() => {
              set([...draft.slice(0, taken.at), taken.value, ...draft.slice(taken.at)]);
              setTaken(undefined);
            }}
          >
            Put no. {taken.at + 1} back
          </button>
        ) : null}
      </div>
    </fieldset>
  );
}
