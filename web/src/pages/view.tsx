/// Any view from its description.

import type { JSX } from "preact";
import { useDescription, useView } from "../api/use";
import type { Description, JsonObject } from "../api/types";
import { aircraftKnown, chosenAircraft } from "../aircraft";
import { useStore } from "../kit/store";
import { composeRecord, stillNeeded } from "../form/draft";
import { Answer } from "../look/answer";
import { apart } from "../look/pictures";
import { DescribedForm, useTouched } from "./described_form";
import { useDraft } from "./draft_state";
import { named } from "./page";
import { Trouble } from "./trouble";

export function ViewPage(props: { name: string }): JSX.Element {
  const seen = useDescription("view", props.name);
  const known = useStore(aircraftKnown);
  return seen.data && known
    ? <View key={props.name} description={seen.data} />
    : <div class="one-column"><h1>{named(props.name)}</h1><Trouble failed={seen.failed} /></div>;
}

function View(props: { description: Description }): JSX.Element {
  const { description } = props;
  const { fields } = description.input;
  const state = useDraft(`wm.draft.view.${description.name}`, fields);
  const touched = useTouched();
  const aircraft = useStore(chosenAircraft);
  const fixed: JsonObject = fields.some((f) => f.key === "aircraft") && aircraft !== "" ? { aircraft } : {};
  const lacking = stillNeeded(fields, state.draft).filter((f) => fixed[f.key] === undefined);
  return (
    <div class="sheet">
      <section class="left">
        <h1>{named(description.name)}</h1>
        <p class="lead">{description.purpose}</p>
        <DescribedForm fields={fields} draft={state.draft} set={state.set} problems={[]} touched={touched} refusals={0} fixed={fixed} onSubmit={() => undefined} />
      </section>
      <section class="right" aria-label="Answer">
        <h2 class="visually-hidden">Answer</h2>
        {lacking.length > 0
          ? <p class="not-judged">Still needed: {lacking.map((f) => f.label).join(", ")}.</p>
          : <Shown description={description} input={{ ...composeRecord(fields, state.draft), ...fixed }} />}
      </section>
    </div>
  );
}

function Shown(props: { description: Description; input: ReturnType<typeof composeRecord> }): JSX.Element {
  const seen = useView(props.description.name, props.input);
  if (!seen.data) return <Trouble failed={seen.failed} />;
  const { pictures, rest } = apart(seen.data.answer);
  return (
    <>
      {pictures}
      <Answer fields={props.description.output?.fields} answer={rest} />
    </>
  );
}
