/// A quick job on one screen: what, which limits start anew, how much; then the entry to sign.

import { useState } from "preact/hooks";
import type { JSX } from "preact";
import { useDescription } from "../api/use";
import { aircraftKnown, chosenAircraft } from "../aircraft";
import { useStore } from "../kit/store";
import { Cautions } from "../look/answer";
import { address } from "../route/route";
import { ActForm, type ActState } from "./act_form";
import { Trouble } from "./trouble";

export function QuickPage(): JSX.Element {
  const seen = useDescription("act", "quick-job");
  const aircraft = useStore(chosenAircraft);
  const known = useStore(aircraftKnown);
  const [state, setState] = useState<ActState>({ is: "filling" });
  if (!seen.data || !known) return <div class="one-column"><h1>Quick job</h1><Trouble failed={seen.failed} /></div>;
  const answer = state.is === "recorded" ? state.data.answer : undefined;
  const notes = Array.isArray(answer?.["notes"]) ? (answer["notes"] as string[]) : [];
  return (
    <div class="one-column">
      <p class="trail"><a href={address("work")}>Work</a></p>
      <h1>Quick job</h1>
      {state.is === "recorded" || state.is === "waiting" ? (
        <div class="told" role="status">
          <p><strong>{state.is === "recorded" ? String(answer?.["words"] ?? "Recorded.") : "Kept here, not yet in the record: no connection."}</strong></p>
          {notes.map((n) => <p key={n}>{n}</p>)}
          <div class="form-acts">
            {answer?.["id"] ? <a class="button main" href={address("record", ["sign", String(answer["id"]), "record-only"])}>Read and sign the entry</a> : null}
            <a class="button" href={address("work")}>Later</a>
          </div>
        </div>
      ) : (
        <>
          <ActForm description={seen.data} fixed={{ aircraft }} start={{ what: "oil-change" }} onState={setState} />
          <Cautions cautions={seen.data.cautions} />
        </>
      )}
    </div>
  );
}
