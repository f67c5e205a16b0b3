/// Any act from its description: the form, when it happened, and what came of it. What the
/// address fixes isn't asked again; `back` says where to go when it is recorded.

import { useState } from "preact/hooks";
import type { JSX } from "preact";
import { useDescription } from "../api/use";
import { announce } from "../api/outbox";
import type { Description, JsonObject } from "../api/types";
import { aircraftKnown, chosenAircraft } from "../aircraft";
import { Answer, Cautions, Sources } from "../look/answer";
import { useStore } from "../kit/store";
import { address, go, type Place } from "../route/route";
import { About, ActForm, fromQuery, type ActState } from "./act_form";
import { named } from "./page";
import { Trouble } from "./trouble";

export function ActPage(props: { name: string; place: Place; query: Record<string, string> }): JSX.Element {
  const seen = useDescription("act", props.name);
  const aircraft = useStore(chosenAircraft);
  const known = useStore(aircraftKnown);
  if (!seen.data || !known) {
    return (
      <div class="one-column">
        <h1>{named(props.name)}</h1>
        <Trouble failed={seen.failed} />
      </div>
    );
  }
  return <Act key={`${props.name} ${aircraft}`} description={seen.data} place={props.place} query={props.query} aircraft={aircraft} />;
}

/// "start.KEY=value" fills a field in; "KEY=value" fixes it.
function Act(props: { description: Description; place: Place; query: Record<string, string>; aircraft: string }): JSX.Element {
  const { description, place, query } = props;
  const { fields } = description.input;
  const fixed: JsonObject = fromQuery(fields, query);
  if (fields.some((f) => f.key === "aircraft") && props.aircraft !== "") fixed["aircraft"] ??= props.aircraft;
  const starts: Record<string, string> = {};
  for (const [key, value] of Object.entries(query)) if (key.startsWith("start.")) starts[key.slice(6)] = value;
  const [state, setState] = useState<ActState>({ is: "filling" });
  const back = query["back"];
  const take = (next: ActState): void => {
    setState(next);
    if (back === undefined || !back.startsWith("#/")) return;
    if (next.is === "waiting") go(back);
    if (next.is === "recorded" && notesOf(next).length === 0) {
      const words = next.data.answer?.["words"];
      if (typeof words === "string") announce(words);
      go(back);
    }
  };
  return (
    <div class="sheet">
      <section class="left">
        <p class="trail"><a href={back ?? address(place)}>{back ? "Back" : named(place)}</a></p>
        <h1>{named(description.name)}</h1>
        <p class="lead">{description.purpose}</p>
        <About fields={fields} fixed={fixed} />
        {state.is === "recorded" ? <Recorded state={state} back={back} /> : null}
        <ActForm description={description} fixed={fixed} start={fromQuery(fields, starts)} onState={take} />
      </section>
      <section class="right" aria-label="Outcome">
        <Outcome state={state} description={description} />
        <Cautions cautions={description.cautions} />
        <Sources sources={description.sources} />
      </section>
    </div>
  );
}

function notesOf(state: ActState & { is: "recorded" }): string[] {
  const notes = state.data.answer?.["notes"];
  return Array.isArray(notes) ? notes.map(String).filter((n) => n !== "") : [];
}

function Recorded(props: { state: ActState & { is: "recorded" }; back: string | undefined }): JSX.Element | null {
  const notes = notesOf(props.state);
  if (notes.length === 0) return null;
  return (
    <div class="told" role="status">
      <p><strong>{String(props.state.data.answer?.["words"] ?? "Recorded.")}</strong></p>
      {notes.map((n) => <p key={n}>{n}</p>)}
      {props.back ? <a class="button main" href={props.back}>Go on</a> : null}
    </div>
  );
}

function Outcome(props: { state: ActState; description: Description }): JSX.Element | null {
  const { state, description } = props;
  switch (state.is) {
    case "recorded":
      return (
        <>
          <h2>Recorded</h2>
          <p class="figure">no. {state.data.sequence}</p>
          {state.data.answer ? <Answer fields={description.output?.fields} answer={state.data.answer} /> : null}
        </>
      );
    case "waiting":
      return (
        <>
          <h2>Not yet recorded</h2>
          <p>No connection. The entry is kept in this browser and goes to the record when the connection is back.</p>
        </>
      );
    case "fault":
      return <><h2>Not recorded</h2><p>{state.what} What you typed is kept; try again.</p></>;
    case "refused":
      return (
        <>
          <h2>Not recorded</h2>
          <p>{state.conflict ? "Something changed while you were typing. Look at it, then record again." : "Put right what is marked, then record again."}</p>
        </>
      );
    default:
      return null;
  }
}
