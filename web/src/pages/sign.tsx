/// An entry as it will be signed: the exact text, what is missing, then the name.

import { useState } from "preact/hooks";
import type { JSX } from "preact";
import { useDescription } from "../api/use";
import type { DraftAnswer, Missing, WorkAnswer } from "../api/views";
import type { JsonObject } from "../api/types";
import { aircraftKnown, chosenAircraft, useAircraftView } from "../aircraft";
import { useStore } from "../kit/store";
import { unitWords } from "../look/digits";
import { Cautions } from "../look/answer";
import { address } from "../route/route";
import { ActForm, type ActState } from "./act_form";
import { Trouble } from "./trouble";
import { Card, wayTo } from "./work";

const acts: { [purpose: string]: string } = { "opens-stage": "open-stage", "closes-stage": "close-stage" };

export function SignPage(props: { about: string; purpose: string }): JSX.Element {
  const { about, purpose } = props;
  const act = acts[purpose] ?? "sign-entry";
  const ofStage = act !== "sign-entry";
  const seen = useAircraftView<DraftAnswer>("entry-draft", { about, purpose });
  const work = useAircraftView<WorkAnswer>("work").data?.answer;
  const description = useDescription("act", act);
  const aircraft = useStore(chosenAircraft);
  const known = useStore(aircraftKnown);
  const [state, setState] = useState<ActState>({ is: "filling" });
  const draft = seen.data?.answer;
  const stage = work?.stages.find((s) => s.id === about);
  const trail = ofStage ? address("work", ["stage", about]) : address("record");
  const title = purpose === "opens-stage" ? "Sign it open: check flight due" : purpose === "closes-stage" ? "Sign it closed" : "Sign the entry";
  if (!draft || !description.data || !known) return <div class="one-column"><h1>{title}</h1><Trouble failed={seen.failed ?? description.failed} /></div>;
  if (state.is === "recorded" || state.is === "waiting") {
    const id = state.is === "recorded" ? String(state.data.answer?.["id"] ?? "") : "";
    const notes = state.is === "recorded" && Array.isArray(state.data.answer?.["notes"]) ? (state.data.answer["notes"] as string[]) : [];
    return (
      <div class="one-column">
        <p class="trail"><a href={trail}>{ofStage ? "Stage" : "Record"}</a></p>
        <h1>{state.is === "recorded" ? "Signed" : "Not yet recorded"}</h1>
        <div class="told" role="status">
          <p><strong>{state.is === "recorded" ? String(state.data.answer?.["words"] ?? "") : "No connection. The signature is kept in this browser and goes to the record when the connection is back."}</strong></p>
          {notes.map((n) => <p key={n}>{n}</p>)}
          <div class="form-acts"><a class="button main" href={trail}>{ofStage ? "To the stage" : "To the record"}</a>{id ? <Card kind="entry" id={id} words="Print the entry" about={id} /> : null}</div>
        </div>
      </div>
    );
  }
  const fixed: JsonObject = ofStage ? { aircraft, stage: about, text: draft.text } : { aircraft, about, purpose, text: draft.text };
  return (
    <div class="sheet">
      <section class="left">
        <p class="trail"><a href={trail}>{ofStage ? "Stage" : "Record"}</a></p>
        <h1>{title}</h1>
        {stage ? <p class="lead">{stage.title}</p> : null}
        <h2>The text that is signed</h2>
        <pre class="entry-text">{draft.text}</pre>
        {draft.unsigned_notes.map((n) => <p key={n} class="help">{n}</p>)}
        <ActForm description={description.data} fixed={fixed} scope={`${about} ${purpose}`} withoutDay onState={setState} />
      </section>
      <section class="right">
        {draft.missing.length > 0 ? (
          <>
            <h2>Missing before it can be signed</h2>
            <ol class="missing">
              {draft.missing.map((m: Missing, i: number) => <li key={i}><span>{unitWords(m.what)}</span> {stage && work ? <a class="button quiet-button" href={wayTo(m, stage, work).to}>{wayTo(m, stage, work).words}</a> : null}</li>)}
            </ol>
          </>
        ) : <p>Nothing that the record asks for is missing.</p>}
        <Cautions cautions={description.data.cautions} />
      </section>
    </div>
  );
}
