/// The form of an event's kind, filled in with what was entered, and the reason.

import { useState } from "preact/hooks";
import type { JSX } from "preact";
import { latest } from "../api/changes";
import { announce, submit } from "../api/outbox";
import type { Description, Problem } from "../api/types";
import { composeRecord } from "../form/draft";
import { newId } from "../kit/identity";
import { instant } from "../kit/time";
import { arrangements } from "./arrange";
import { DescribedForm, useTouched } from "./described_form";
import { useDraft } from "./draft_state";
import type { EventAnswer } from "./record";

/// What an act asks for besides the event: a removal entered with the fitting is an event of its own.
const k_act_only: { [act: string]: string[] } = { "install-part": ["until_day", "until", "reason"] };

export function CorrectForm(props: { event: EventAnswer; description: Description; correct: Description; done: () => void }): JSX.Element {
  const { event, description, correct } = props;
  const reason = correct.input.fields.filter((f) => f.key === "reason");
  // The aircraft and the thing it is about are not what was mistyped; they are sent as they stand.
  const fields = description.input.fields.filter((f) => !(k_act_only[description.name] ?? []).includes(f.key));
  const fixed = { aircraft: event.body["aircraft"], id: event.body["id"] };
  const all = [...fields, ...reason.map((f) => ({ ...f, key: "why-corrected" }))];
  const key = `wm.draft.correct.${event.id}`;
  const state = useDraft(key, all, event.body);
  const plan = arrangements[description.name];
  const touched = useTouched();
  const [id] = useState(newId);
  const [refusals, setRefusals] = useState(0);
  const [problems, setProblems] = useState<Problem[]>([]);
  const [sending, setSending] = useState(false);
  const record = async (): Promise<void> => {
    if (sending) return;
    setSending(true);
    const composed = composeRecord(fields, state.draft);
    const body = { ...event.body, ...composed };
    // What was emptied is left out; what the form can't show stays.
    for (const f of fields) if (composed[f.key] === undefined && fixed[f.key as "id"] === undefined) delete body[f.key];
    const outcome = await submit({
      id, act: "correct", title: `Correction of no. ${event.sequence}`, seen: latest.get(), happened: instant(),
      input: { event: event.id, body: JSON.stringify(body), reason: String(state.draft["why-corrected"] ?? "").trim() },
      entered: instant(), from: location.hash, draft: key,
    });
    setSending(false);
    if (outcome.is === "problems" || outcome.is === "fault") {
      setProblems(outcome.is === "fault" ? [{ path: "", what: outcome.what }] : outcome.problems.map((p) => ({ ...p, path: p.path === "reason" ? "why-corrected" : p.path.replace(/^body\/?/, "") })));
      setRefusals((n) => n + 1);
      return;
    }
    if (outcome.is === "recorded") announce(`Corrected: no. ${event.sequence}. Both stay visible.`);
    state.clear();
    props.done();
  };
  return (
    <DescribedForm
      fields={all} draft={state.draft} set={state.set} touched={touched} refusals={refusals} problems={problems} fixed={fixed}
      first={plan ? [...plan.first, "why-corrected"] : undefined}
      onSubmit={() => void record()}
    >
      <div class="bottom-bar"><button type="submit" class="main" disabled={sending}>{sending ? "Recording" : "Record the correction"}</button></div>
    </DescribedForm>
  );
}
