/// The form of an act with its "Record": draft, refusals, waiting without a connection. Pages fix
/// some of the values and say what is asked first; the description says everything else.

import { useState } from "preact/hooks";
import type { ComponentChildren, JSX } from "preact";
import { latest } from "../api/changes";
import { submit, waiting } from "../api/outbox";
import { useView } from "../api/use";
import type { NamedChoices } from "../api/views";
import type { ActAnswer, Description, Field, JsonObject, Problem } from "../api/types";
import { chosenAircraft } from "../aircraft";
import { composeRecord, plain, type RecordDraft } from "../form/draft";
import { newId } from "../kit/identity";
import { keep, kept } from "../kit/keep";
import { useStore } from "../kit/store";
import { instant, today } from "../kit/time";
import { arrangements, firstAsked } from "./arrange";
import { DescribedForm, useTouched } from "./described_form";
import { useDraft } from "./draft_state";
import { named } from "./page";

export type ActState =
  | { is: "filling" }
  | { is: "sending" }
  | { is: "recorded"; data: ActAnswer }
  | { is: "waiting" }
  | { is: "refused"; problems: Problem[]; conflict: boolean }
  | { is: "fault"; what: string };

const k_remembered = "wm.last.";

export function ActForm(props: {
  description: Description;
  /// Not asked: sent as they are.
  fixed: JsonObject;
  /// Filled in, and may be changed.
  start?: JsonObject;
  first?: string[] | undefined;
  button?: string;
  /// Another name for the draft, where `fixed` is long.
  scope?: string;
  onState?: (state: ActState, input: JsonObject) => void;
  withoutDay?: boolean;
  /// Stands above the fields and sees what is filled in.
  inside?: ((draft: RecordDraft, set: (next: RecordDraft) => void) => ComponentChildren) | undefined;
  children?: ComponentChildren;
}): JSX.Element {
  const { description, fixed } = props;
  const { fields } = description.input;
  const plan = arrangements[description.name];
  // Another start is another form: what was typed for one stage must not turn up in the next.
  const scope = props.scope ?? Object.entries({ ...fixed, ...props.start }).map(([k, v]) => `${k}=${String(v)}`).join("&");
  const draftKey = `wm.draft.act.${description.name}.${scope}`;
  const start = { ...remembered(plan?.remember ?? []), ...props.start };
  // A page that was closed while its entry was being sent finds both the draft and the entry that
  // waits: the draft has done its work, and kept again it would be recorded twice.
  const state = useDraft(draftKey, fields, start, (kept) =>
    waiting.get().some((w) => w.draft === draftKey && JSON.stringify(w.input) === JSON.stringify({ ...composeRecord(fields, kept), ...fixed })));
  const touched = useTouched();
  const [refusals, setRefusals] = useState(0);
  const [sent, setSent] = useState<ActState>({ is: "filling" });
  const [when, setWhen] = useState<"now" | "earlier">("now");
  const [day, setDay] = useState(today());
  // The same entry keeps its id until it is recorded, however often "Record" is pressed.
  const [id, setId] = useState(newId);
  const say = (next: ActState, input: JsonObject): void => {
    setSent(next);
    props.onState?.(next, input);
  };

  const record = async (): Promise<void> => {
    if (sent.is === "sending") return;
    setSent({ is: "sending" });
    const filled = state.draft;
    const input = { ...composeRecord(fields, filled), ...fixed };
    const outcome = await submit({
      id, act: description.name, title: named(description.name), seen: latest.get(),
      happened: when === "now" ? instant() : day,
      input, entered: instant(), from: location.hash, draft: draftKey,
    });
    if (outcome.is === "problems") {
      say({ is: "refused", problems: outcome.problems, conflict: outcome.conflict }, input);
      setRefusals((n) => n + 1);
      return;
    }
    if (outcome.is === "fault") return say(outcome, input);
    // Recorded, or written down in the list of entries that wait: the form is free again. On a slow
    // connection that takes seconds, and the next entry may be half typed by then.
    for (const key of plan?.remember ?? []) {
      if (typeof input[key] === "string" && fixed[key] === undefined) keep(k_remembered + key, input[key]);
    }
    setRefusals(0);
    setId(newId());
    touched.reset();
    state.restart(start, filled);
    say(outcome.is === "recorded" ? outcome : { is: "waiting" }, input);
  };

  const refused = sent.is === "refused" ? sent.problems : [];
  return (
    <>
    {props.inside?.(state.draft, state.set)}
    <DescribedForm
      fields={fields} draft={state.draft} touched={touched} refusals={refusals} fixed={fixed}
      first={props.first ?? firstAsked(description.name, fixed)}
      problems={refused}
      set={state.set} onSubmit={() => void record()}
    >
      {props.children}
      {props.withoutDay || plan?.now ? null : (
        <fieldset class="field buttons">
          <legend>When was it done?</legend>
          <div class="options">
            <label class="option"><input type="radio" name="when" checked={when === "now"} onChange={() => setWhen("now")} /><span>Now</span></label>
            <label class="option"><input type="radio" name="when" checked={when === "earlier"} onChange={() => setWhen("earlier")} /><span>On another day</span></label>
          </div>
          {when === "earlier" ? (
            <div class="field date">
              <label for="happened">Day</label>
              <input id="happened" type="date" value={day} max={today()} onInput={(e) => setDay(e.currentTarget.value)} />
            </div>
          ) : null}
        </fieldset>
      )}
      <div class="bottom-bar">
        <button type="submit" class="main" disabled={sent.is === "sending"}>
          {sent.is === "sending" ? "Recording" : sent.is === "refused" && sent.conflict ? "Record as things stand now" : props.button ?? plan?.button ?? "Record"}
        </button>
      </div>
    </DescribedForm>
    </>
  );
}

function remembered(keys: string[]): JsonObject {
  const out: JsonObject = {};
  for (const key of keys) {
    const value = kept<string>(k_remembered + key);
    if (value !== undefined) out[key] = value;
  }
  return out;
}

/// What an address says ("?stage=stage-1&joints=a,b&closed=true") as values of their fields.
export function fromQuery(fields: Field[], query: Record<string, string>): JsonObject {
  const out: JsonObject = {};
  for (const raw of fields) {
    const text = query[raw.key];
    if (text === undefined || text === "") continue;
    const field = plain(raw);
    if (field.shape === "yes_no") out[raw.key] = text === "true" || text === "yes";
    else if (field.shape === "list") out[raw.key] = text.split(",");
    else out[raw.key] = text;
  }
  return out;
}

/// What a form is about, in words: the fixed values by their labels.
export function About(props: { fields: Field[]; fixed: JsonObject }): JSX.Element | null {
  const shown = props.fields.filter((f) => props.fixed[f.key] !== undefined && f.key !== "aircraft" && f.key !== "text");
  if (shown.length === 0) return null;
  return (
    <dl class="about">
      {shown.map((f) => (
        <div key={f.key}>
          <dt>{f.label}</dt>
          <dd><Named field={f} value={props.fixed[f.key]} /></dd>
        </div>
      ))}
    </dl>
  );
}

function Named(props: { field: Field; value: unknown }): JSX.Element {
  const { field, value } = props;
  const aircraft = useStore(chosenAircraft);
  const of = field.refers_to ?? "";
  const choices = useView<NamedChoices>("choices", { of, aircraft }, of !== "" && aircraft !== "").data?.answer.choices ?? [];
  const name = (v: unknown): string =>
    choices.find((c) => c.value === v)?.label ?? plain(field).choices?.find((c) => c.value === v)?.label ?? (v === true ? "yes" : v === false ? "no" : String(v));
  return Array.isArray(value) ? <>{value.map((v, i) => <span key={i} class="line">{name(v)}</span>)}</> : <>{name(value)}</>;
}
