/// Several named things of the record: tick boxes, as large as a thumb. Joints of the position
/// that the form is about, and limits whose name has the words of the job, come first; the others
/// wait behind one line.

import type { JSX } from "preact";
import { useView } from "../api/use";
import type { JointLine, NamedChoices } from "../api/views";
import { chosenAircraft } from "../aircraft";
import { useStore } from "../kit/store";
import { useForm, type FieldProps } from "./form";
import { useNotes } from "./field";

interface Choice { value: string; label: string; note?: string }

export function TickField(props: FieldProps<string[]>): JSX.Element {
  const { field, path, draft, set } = props;
  const form = useForm();
  const notes = useNotes(field, path);
  const aircraft = useStore(chosenAircraft);
  const of = field.refers_to ?? "";
  const seen = useView<NamedChoices>("choices", { of, aircraft });
  const joints = useView<{ joints: JointLine[] }>("joints", { aircraft }, of === "joint" && aircraft !== "").data?.answer.joints;
  const position = form.beside("position");
  const all: Choice[] = seen.data?.answer.choices ?? [];
  const unknown = draft.filter((v) => !all.some((c) => c.value === v)).map((value) => ({ value, label: value }));
  const list: Choice[] = [...unknown, ...all];
  const job = of === "limit" ? form.beside("what").split("-").filter((w) => w.length > 2) : [];
  const alike = (c: Choice): number => job.filter((w) => c.label.toLowerCase().includes(w)).length;
  const most = Math.max(0, ...list.map(alike));
  const near = most > 0
    ? list.filter((c) => draft.includes(c.value) || alike(c) === most)
    : of === "joint"
    ? list.filter((c) => draft.includes(c.value) || joints?.some((j) => j.id === c.value && j.position === position))
    : list.length <= 8 ? list : list.filter((c) => draft.includes(c.value));
  const far = list.filter((c) => !near.includes(c));
  const tick = (value: string, on: boolean): void => {
    set(on ? [...draft, value] : draft.filter((v) => v !== value));
    form.touch(path);
  };
  const box = (c: Choice): JSX.Element => (
    <label class="tick" key={c.value}>
      <input type="checkbox" checked={draft.includes(c.value)} onChange={(e) => tick(c.value, e.currentTarget.checked)} />
      <span>{c.label}{c.note ? <span class="stripe-note"> {c.note}</span> : null}</span>
    </label>
  );
  return (
    <fieldset class="field ticks" id={notes.id} aria-describedby={notes.describedby}>
      <legend>{field.label}{field.needed ? null : <span class="optional"> optional</span>}</legend>
      {notes.help}
      {list.length === 0 && seen.data ? <p class="none">There is none to choose.</p> : null}
      {of === "joint" && position === "" && near.length === 0 ? <p class="none">Choose the position first: its joints are then offered here.</p> : null}
      {near.map(box)}
      {far.length === 0 ? null : (
        <details class="more">
          <summary>{near.length > 0 ? `${far.length} more` : `Choose from ${far.length}`}</summary>
          {far.map(box)}
        </details>
      )}
      {notes.problem}
    </fieldset>
  );
}
