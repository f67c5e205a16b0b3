/// A length of a hose for one change: what the change says is filled in, and the answer is kept
/// with it: the change is planned again with the length in its note.

import { useState } from "preact/hooks";
import type { JSX } from "preact";
import { latest } from "../api/changes";
import { announce, submit } from "../api/outbox";
import { usePlans } from "../api/plans";
import type { Problem } from "../api/types";
import type { ChangeLine, WorkAnswer } from "../api/views";
import { chosenAircraft, useAircraftView } from "../aircraft";
import { sentence } from "../form/form";
import { newId } from "../kit/identity";
import { useStore } from "../kit/store";
import { instant } from "../kit/time";
import { go } from "../route/route";
import { notedAgain } from "./cut_note";

/// Is it worth offering? A hose is named by what the owner wrote; nothing is decided by it.
export function aboutHose(change: ChangeLine): boolean {
  return /\bhoses?\b/i.test(`${change.title} ${change.new_part} ${change.position_name}`);
}

export function useChange(id: string | undefined): ChangeLine | undefined {
  const seen = useAircraftView<WorkAnswer>("work");
  return id === undefined ? undefined : seen.data?.answer.changes.find((c) => c.id === id);
}

export function CutFor(props: { change: ChangeLine }): JSX.Element {
  const { change } = props;
  return (
    <dl class="about">
      <div><dt>For</dt><dd>{change.title}</dd></div>
      {change.new_part ? <div><dt>Goes in</dt><dd>{change.new_part}</dd></div> : null}
      {change.note ? <div><dt>Note</dt><dd class="entry-note">{change.note}</dd></div> : null}
    </dl>
  );
}

/// @param note   One line for the note of the change; it takes the place of an earlier one of its kind.
/// @param title  What is kept, for the list of what waits: "Cut length".
export function KeepWithChange(props: { change: ChangeLine; note: string; title: string; back: string }): JSX.Element {
  const { change, back, note } = props;
  const aircraft = useStore(chosenAircraft);
  const plans = usePlans(aircraft, [change.id]);
  const [id] = useState(newId);
  const [sending, setSending] = useState(false);
  const [problems, setProblems] = useState<Problem[]>([]);
  const plan = plans?.[change.id];
  if (plans && !plan) return <p class="help">The plan of this change was corrected: write the length into its note by hand. {note}</p>;
  const keep = async (): Promise<void> => {
    if (sending || !plan) return;
    setSending(true);
    const outcome = await submit({
      id, act: "plan-change", title: `${props.title}: ${change.title}`, seen: latest.get(), happened: instant(),
      input: notedAgain(plan.body, note), entered: instant(), from: location.hash, draft: `wm.draft.act.plan-change.id=${change.id}`,
    });
    setSending(false);
    if (outcome.is === "problems") return setProblems(outcome.problems);
    if (outcome.is === "fault") return setProblems([{ path: "", what: outcome.what }]);
    if (outcome.is === "recorded") announce(`Kept with: ${change.title}`);
    go(back);
  };
  return (
    <div class="keep-with">
      {problems.length > 0 ? <div class="problem" role="alert">{problems.map((p) => <p key={p.path + p.what}><strong>{sentence(p.what)}</strong>{p.do_next ? ` ${sentence(p.do_next)}` : ""}</p>)}</div> : null}
      <p class="help">Goes into the note of the change: {note}</p>
      <p class="form-acts"><button type="button" class="main" disabled={sending || !plan} onClick={() => void keep()}>{sending ? "Keeping" : "Keep with the change"}</button></p>
    </div>
  );
}
