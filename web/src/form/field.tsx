/// One described field, whatever its shape.

import type { JSX } from "preact";
import { plain, type Draft, type FileDraft, type NumberDraft, type OneOfDraft } from "./draft";
import { Fields, ProblemText, useForm, type FieldProps } from "./form";
import { fieldId } from "./problems";
import { NumberField } from "./number_field";
import { ListField } from "./list_field";
import { FileField, PhotosField } from "./file_field";
import { TickField } from "./tick_field";
import { ReferenceField } from "./reference_field";
import type { Field } from "../api/types";

const k_big_buttons = 5;
/// An example of this many letters shows that a sentence is wanted, not a word.
const k_long_text = 40;

export function FieldView(props: FieldProps): JSX.Element {
  const field = plain(props.field);
  const { path, set } = props;
  switch (field.shape) {
    case "quantity":
    case "measured":
    case "any_quantity":
      return <NumberField field={field} path={path} draft={asNumber(props.draft)} set={set} />;
    case "yes_no":
      return <Buttons field={field} path={path} draft={String(props.draft)} set={set} choices={[{ value: "yes", label: "Yes" }, { value: "no", label: "No" }]} />;
    case "choice":
      return (field.choices?.length ?? 0) <= k_big_buttons
        ? <Buttons field={field} path={path} draft={String(props.draft)} set={set} choices={field.choices ?? []} />
        : <Select field={field} path={path} draft={String(props.draft)} set={set} />;
    case "record":
      return <Inner field={field} path={path} draft={props.draft} set={set} />;
    case "list":
      if (field.refers_to === "attachment") return <PhotosField field={field} path={path} draft={Array.isArray(props.draft) ? (props.draft as FileDraft[]) : []} set={set} />;
      if (field.refers_to) return <TickField field={field} path={path} draft={Array.isArray(props.draft) ? props.draft.map(String) : []} set={set} />;
      return <ListField field={field} path={path} draft={Array.isArray(props.draft) ? props.draft : []} set={set} />;
    case "one_of":
      return <OneOf field={field} path={path} draft={asOneOf(props.draft)} set={set} />;
    case "attachment":
      return <FileField field={field} path={path} draft={typeof props.draft === "object" ? (props.draft as FileDraft) : {}} set={set} />;
    case "reference":
      return <ReferenceField field={field} path={path} draft={String(props.draft)} set={set} />;
    default:
      return field.refers_to
        ? <ReferenceField field={field} path={path} draft={String(props.draft)} set={set} />
        : <Text field={field} path={path} draft={String(props.draft)} set={set} />;
  }
}

function asNumber(draft: Draft): NumberDraft {
  return typeof draft === "object" && !Array.isArray(draft) && "n" in draft ? (draft as NumberDraft) : { n: "", u: "" };
}

function asOneOf(draft: Draft): OneOfDraft {
  return typeof draft === "object" && !Array.isArray(draft) && "by" in draft ? (draft as OneOfDraft) : { is: "", by: {} };
}

export function Label(props: { field: Field; for: string }): JSX.Element {
  return (
    <label for={props.for}>
      {props.field.label}
      {props.field.needed ? null : <span class="optional"> optional</span>}
    </label>
  );
}

/// Help, bounds and problems below or above a field, with the ids that describe it.
export function useNotes(field: Field, path: string): { id: string; describedby: string | undefined; invalid: boolean; help: JSX.Element | null; problem: JSX.Element | null } {
  const id = fieldId(path);
  const problems = useForm().problems.get(path) ?? [];
  const bounds = boundsText(field);
  const text = [field.help, bounds].filter((t) => t).join(" ");
  const helpId = `${id}-help`;
  const problemId = `${id}-problem`;
  const ids = [...(problems.length > 0 ? [problemId] : []), ...(text === "" ? [] : [helpId])];
  return {
    id,
    describedby: ids.length > 0 ? ids.join(" ") : undefined,
    invalid: problems.length > 0,
    help: text === "" ? null : <p class="help" id={helpId}>{text}</p>,
    problem: problems.length > 0 ? <ProblemText problems={problems} id={problemId} /> : null,
  };
}

function boundsText(field: Field): string {
  if (field.min && field.max) return `From ${field.min} to ${field.max}.`;
  if (field.min) return `At least ${field.min}.`;
  if (field.max) return `At most ${field.max}.`;
  return "";
}

const inputModes: { [shape: string]: "numeric" | "decimal" } = { count: "numeric", number: "decimal" };

function Text(props: FieldProps<string>): JSX.Element {
  const { field, path, draft, set } = props;
  const { touch } = useForm();
  const notes = useNotes(field, path);
  const common = {
    id: notes.id,
    value: draft,
    "aria-describedby": notes.describedby,
    "aria-invalid": notes.invalid || undefined,
    "aria-required": field.needed || undefined,
    onBlur: () => touch(path),
  };
  const placeholder = field.example ? `e.g. ${field.example}` : undefined;
  const put = (e: { currentTarget: { value: string } }): void => set(e.currentTarget.value);
  let box: JSX.Element;
  if (field.shape === "date") {
    box = <input {...common} type="date" onInput={put} />;
  } else if (field.shape === "instant") {
    box = <input {...common} type="datetime-local" onInput={put} />;
  } else if (field.shape === "text" && (field.example?.length ?? 0) > k_long_text) {
    box = <textarea {...common} rows={3} placeholder={placeholder} onInput={put} />;
  } else {
    const mode = inputModes[field.shape];
    box = <input {...common} type="text" autocomplete="off" {...(mode ? { inputMode: mode } : {})} placeholder={placeholder} onInput={put} />;
  }
  return (
    <div class={`field ${field.shape}`}>
      <Label field={field} for={notes.id} />
      {notes.help}
      {box}
      {notes.problem}
    </div>
  );
}

function Select(props: FieldProps<string>): JSX.Element {
  const { field, path, draft, set } = props;
  const { touch } = useForm();
  const notes = useNotes(field, path);
  return (
    <div class="field choice">
      <Label field={field} for={notes.id} />
      {notes.help}
      <select
        id={notes.id}
        value={draft}
        aria-describedby={notes.describedby}
        aria-invalid={notes.invalid || undefined}
        onChange={(e) => {
          set(e.currentTarget.value);
          touch(path);
        }}
      >
        <option value="">{field.needed ? "Choose" : "Not said"}</option>
        {(field.choices ?? []).map((c) => <option key={c.value} value={c.value}>{c.label}</option>)}
      </select>
      {notes.problem}
    </div>
  );
}

/// A few words to choose from: as large as a thumb, all in sight.
function Buttons(props: FieldProps<string> & { choices: { value: string; label: string }[] }): JSX.Element {
  const { field, path, draft, set, choices } = props;
  const { touch } = useForm();
  const notes = useNotes(field, path);
  const all = field.needed ? choices : [...choices, { value: "", label: "Not said" }];
  return (
    <fieldset class="field buttons" id={notes.id} aria-describedby={notes.describedby}>
      <legend>{field.label}</legend>
      {notes.help}
      <div class="options">
        {all.map((c) => (
          <label key={c.value} class="option">
            <input
              type="radio"
              name={notes.id}
              value={c.value}
              checked={draft === c.value}
              aria-invalid={notes.invalid || undefined}
              onChange={() => {
                set(c.value);
                touch(path);
              }}
            />
            <span>{c.label}</span>
          </label>
        ))}
      </div>
      {notes.problem}
    </fieldset>
  );
}

function Inner(props: FieldProps): JSX.Element {
  const notes = useNotes(props.field, props.path);
  const draft = typeof props.draft === "object" && !Array.isArray(props.draft) ? (props.draft as { [key: string]: Draft }) : {};
  return (
    <fieldset class="field record" id={notes.id} aria-describedby={notes.describedby}>
      <legend>{props.field.label}</legend>
      {notes.help}
      {notes.problem}
      <Fields fields={props.field.fields ?? []} prefix={props.path} draft={draft} set={props.set} />
    </fieldset>
  );
}

function OneOf(props: FieldProps<OneOfDraft>): JSX.Element {
  const { field, path, draft, set } = props;
  const notes = useNotes(field, path);
  const alternatives = field.alternatives ?? [];
  const chosen = alternatives.find((a) => a.word === draft.is);
  const choices = alternatives.map((a) => ({ value: a.word, label: a.label ?? a.word.replaceAll("-", " ") }));
  const asChoice: Field = { key: field.key, label: field.label, shape: "choice", choices, needed: true };
  const choose = (is: string): void => set({ ...draft, is });
  return (
    <div class="field one-of">
      {notes.help}
      {choices.length <= k_big_buttons
        ? <Buttons field={asChoice} path={path} draft={draft.is} set={choose} choices={choices} />
        : <Select field={asChoice} path={path} draft={draft.is} set={choose} />}
      {chosen ? (
        <div class="record">
          <Fields
            key={draft.is}
            fields={chosen.fields}
            prefix={path}
            draft={draft.by[draft.is] ?? {}}
            set={(next) => set({ ...draft, by: { ...draft.by, [draft.is]: next } })}
          />
        </div>
      ) : null}
    </div>
  );
}
