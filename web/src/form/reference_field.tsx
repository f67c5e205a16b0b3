/// Names something of the record (a position, a part, an instrument): chosen from what is there,
/// or typed when the list can't be had.

import type { JSX } from "preact";
import { useView } from "../api/use";
import type { NamedChoices } from "../api/views";
import { chosenAircraft } from "../aircraft";
import { useStore } from "../kit/store";
import { useForm, type FieldProps } from "./form";
import { Label, useNotes } from "./field";

export function ReferenceField(props: FieldProps<string>): JSX.Element {
  const { field, path, draft, set } = props;
  const { touch } = useForm();
  const notes = useNotes(field, path);
  const aircraft = useStore(chosenAircraft);
  const seen = useView<NamedChoices>("choices", { of: field.refers_to ?? "", aircraft });
  const choices = seen.data?.answer.choices ?? [];
  // Until the list is here the field is already the one that it will be: what a person types into a
  // text box must not be lost to the list that takes its place.
  const coming = seen.data === undefined && seen.failed === undefined;
  const common = {
    id: notes.id,
    "aria-describedby": notes.describedby,
    "aria-invalid": notes.invalid || undefined,
  };
  const known = draft === "" || choices.some((c) => c.value === draft);
  return (
    <div class="field reference">
      <Label field={field} for={notes.id} />
      {notes.help}
      {choices.length > 0 || coming ? (
        <select
          {...common}
          aria-busy={coming || undefined}
          value={draft}
          onChange={(e) => {
            set(e.currentTarget.value);
            touch(path);
          }}
        >
          <option value="">{field.needed ? "Choose" : "Not said"}</option>
          {known ? null : <option value={draft}>{draft}</option>}
          {choices.map((c) => (
            <option key={c.value} value={c.value}>{c.note ? `${c.label} (${c.note})` : c.label}</option>
          ))}
        </select>
      ) : (
        <input
          {...common}
          type="text"
          autocomplete="off"
          placeholder={field.example ? `e.g. ${field.example}` : undefined}
          value={draft}
          onInput={(e) => set(e.currentTarget.value)}
          onBlur={() => touch(path)}
        />
      )}
      {notes.problem}
    </div>
  );
}
