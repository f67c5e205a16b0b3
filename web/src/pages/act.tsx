/// Any act from its description: the form, when it happened, and "Record".

import { useState } from "preact/hooks";
import type { JSX } from "preact";
import { latest } from "../api/changes";
import { submit } from "../api/outbox";
import { useDescription } from "../api/use";
import type { ActAnswer, Description, JsonObject, Problem } from "../api/types";
import { aircraftKnown, chosenAircraft } from "../aircraft";
import { composeRecord } from "../form/draft";
import { Answer, Cautions, Sources } from "../look/answer";
import { newId } from "../kit/identity";
import { useStore } from "../kit/store";
import { instant, today } from "../kit/time";
import { address, type Place } from "../route/route";
import { DescribedForm, useTouched } from "./described_form";
import { useDraft } from "./draft_state";
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
  return <Act key={`${props.name} ${aircraft}`} description={seen.data} place={props.place} start={startOf(seen.data, props.query, aircraft)} />;
}

/// What the address already says ("?position=..."), and the aircraft the page is about.
function startOf(description: Description, query: Record<string, string>, aircraft: string): JsonObject {
  const start: JsonObject = {};
  for (const field of description.input.fields) {
    const given = query[field.key] ?? (field.key === "aircraft" ? aircraft : undefined);
    if (given !== undefined && given !== "") start[field.key] = given;
  }
  return start;
}

type State =
  | { is: "filling" }
  | { is: "sending" }
  | { is: "recorded"; data: ActAnswer }
  | { is: "waiting" }
  | { is: "refused"; problems: Problem[]; conflict: boolean }
  | { is: "fault"; what: string };

export function Act(props: { description: Description; place: Place; start: JsonObject }): JSX.Element {
  const { description, place, start } = props;
  const { fields } = description.input;
  const scope = Object.entries(start).map(([k, v]) => `${k}=${String(v)}`).join("&");
  const draftKey = `wm.draft.act.${description.name}.${scope}`;
  const state = useDraft(draftKey, fields, start);
  const touched = useTouched();
  const [refusals, setRefusals] = useState(0);
  const [sent, setSent] = useState<State>({ is: "filling" });
  const [when, setWhen] = useState<"now" | "earlier">("now");
  const [day, setDay] = useState(today());
  // The same entry keeps its id until it is recorded, however often "Record" is pressed.
  const [id, setId] = useState(newId);

  const record = async (): Promise<void> => {
    if (sent.is === "sending") return;
    setSent({ is: "sending" });
    const outcome = await submit({
      id, act: description.name, title: named(description.name), seen: latest.get(),
      happened: when === "now" ? instant() : day,
      input: composeRecord(fields, state.draft), entered: instant(),
      from: location.hash, draft: draftKey,
    });
    if (outcome.is === "problems") {
      setSent({ is: "refused", problems: outcome.problems, conflict: outcome.conflict });
      setRefusals((n) => n + 1);
      return;
    }
    if (outcome.is === "fault") {
      setSent(outcome);
      return;
    }
    // Recorded, or written down in the list of entries that wait: the form is free again.
    setSent(outcome.is === "recorded" ? outcome : { is: "waiting" });
    setRefusals(0);
    setId(newId());
    touched.reset();
    state.clear();
    state.show(start);
  };

  return (
    <div class="sheet">
      <section class="left">
        <p class="trail"><a href={address(place)}>{named(place)}</a></p>
        <h1>{named(description.name)}</h1>
        <p class="lead">{description.purpose}</p>
        <DescribedForm
          fields={fields} draft={state.draft} touched={touched} refusals={refusals}
          problems={sent.is === "refused" ? sent.problems : []}
          set={state.set} onSubmit={() => void record()}
        >
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
          <div class="bottom-bar">
            <button type="submit" class="main" disabled={sent.is === "sending"}>
              {sent.is === "sending" ? "Recording" : sent.is === "refused" && sent.conflict ? "Record as things stand now" : "Record"}
            </button>
          </div>
        </DescribedForm>
      </section>
      <section class="right" aria-label="Outcome">
        <Outcome state={sent} description={description} />
        <Cautions cautions={description.cautions} />
        <Sources sources={description.sources} />
      </section>
    </div>
  );
}

function Outcome(props: { state: State; description: Description }): JSX.Element | null {
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
