/// A number with its unit as a choice beside it. Typing the unit, or feet and inches, works too.

import type { JSX } from "preact";
import { bare, unitOf, type NumberDraft } from "./draft";
import { useForm, type FieldProps } from "./form";
import { Label, useNotes } from "./field";
import { unitWords } from "../look/digits";

export function NumberField(props: FieldProps<NumberDraft>): JSX.Element {
  const { field, path, draft, set } = props;
  const { touch } = useForm();
  const notes = useNotes(field, path);
  const units = field.units ?? (field.unit ? [field.unit] : []);
  const unit = draft.u === "" ? unitOf(field) : draft.u;
  const ownUnit = draft.n.trim() !== "" && !bare(draft.n);
  const put = (change: Partial<NumberDraft>): void => set({ ...draft, u: unit, ...change });
  const choices = unit !== "" && !units.includes(unit) ? [unit, ...units] : units;
  return (
    <div class={`field quantity${field.shape === "measured" ? " measured" : ""}`}>
      <Label field={field} for={notes.id} />
      {notes.help}
      <div class="with-unit">
        <input
          id={notes.id}
          class="number"
          type="text"
          // No units to choose from means that the unit must be typed: then a full keyboard.
          inputMode={units.length > 0 ? "decimal" : "text"}
          autocomplete="off"
          placeholder={field.example ? `e.g. ${units.length > 0 ? short(field.example, unit) : field.example}` : undefined}
          value={draft.n}
          aria-describedby={notes.describedby}
          aria-invalid={notes.invalid || undefined}
          aria-required={field.needed || undefined}
          onInput={(e) => put({ n: e.currentTarget.value })}
          onBlur={() => touch(path)}
        />
        {ownUnit || choices.length === 0 ? (
          choices.length === 0 ? null : <span class="unit-typed">as typed</span>
        ) : choices.length === 1 ? (
          <span class="unit-only">{unitWords(unit)}</span>
        ) : (
          <select
            class="unit-choice"
            aria-label={`Unit of ${field.label}`}
            value={unit}
            onChange={(e) => put({ u: e.currentTarget.value })}
          >
            {choices.map((u) => <option key={u} value={u}>{unitWords(u)}</option>)}
          </select>
        )}
      </div>
      {field.shape === "measured" ? (
        <div class="plus-minus">
          <label for={`${notes.id}-spread`}><span aria-hidden="true">±</span> uncertainty, if it is known</label>
          <input
            id={`${notes.id}-spread`}
            class="number"
            type="text"
            inputMode="decimal"
            autocomplete="off"
            value={draft.pm ?? ""}
            aria-label={`Uncertainty of ${field.label}, plus or minus, if it is known`}
            onInput={(e) => put({ pm: e.currentTarget.value })}
            onBlur={() => touch(path)}
          />
        </div>
      ) : null}
      {notes.problem}
    </div>
  );
}

/// "7.9 kohm" beside a unit choice that says kohm is "7.9".
function short(example: string, unit: string): string {
  return unit !== "" && example.endsWith(` ${unit}`) ? example.slice(0, -unit.length - 1) : example;
}
