/// A defect in ten seconds: words, a photo if it helps, Keep. Flying or not is decided after.

import { useEffect, useState } from "preact/hooks";
import type { JSX } from "preact";
import { useDescription } from "../api/use";
import { aircraftKnown, chosenAircraft } from "../aircraft";
import { useStore } from "../kit/store";
import { Cautions } from "../look/answer";
import { address } from "../route/route";
import { ActForm, type ActState } from "./act_form";
import { Trouble } from "./trouble";

export function DefectPage(): JSX.Element {
  const seen = useDescription("act", "note-defect");
  const aircraft = useStore(chosenAircraft);
  const known = useStore(aircraftKnown);
  const [state, setState] = useState<ActState>({ is: "filling" });
  const ready = seen.data !== undefined && known;
  useEffect(() => {
    if (ready) document.getElementById("f-text")?.focus({ preventScroll: true });
  }, [ready]);
  if (!seen.data || !known) return <div class="one-column"><h1>Write down a defect</h1><Trouble failed={seen.failed} /></div>;
  const id = state.is === "recorded" ? String(state.data.answer?.["id"] ?? "") : "";
  return (
    <div class="one-column">
      <h1>Write down a defect</h1>
      {state.is === "recorded" || state.is === "waiting" ? (
        <div class="told" role="status">
          <p><strong>{state.is === "recorded" ? "Kept." : "Kept here, not yet in the record: no connection."}</strong></p>
          <div class="form-acts">
            {id === "" ? null : <a class="button main" href={address("bay", ["act", "decide-defect"], { defect: id, back: "#/bay" })}>Fly with it, or stay on the ground?</a>}
            <a class="button" href={address("bay")}>Later</a>
          </div>
        </div>
      ) : null}
      <ActForm
        description={seen.data} fixed={aircraft === "" ? {} : { aircraft, decision: "undecided" }} scope={`aircraft=${aircraft}`}
        first={["text", "photos", "position"]} withoutDay onState={setState}
      />
      <Cautions cautions={seen.data.cautions} />
    </div>
  );
}
