/// The bay: the plan with its marks, what is most used, and what is ahead.

import type { JSX } from "preact";
import { useView } from "../api/use";
import { chosenAircraft } from "../aircraft";
import { useStore } from "../kit/store";
import { BayPlan } from "../look/bay_plan";
import { TitleBlock } from "../look/sheet";
import { StripeLine } from "../look/stripe";
import { Ahead } from "../look/ahead";
import type { BayAnswer, Mark } from "./bay_types";
import { stateOf } from "./bay_types";
import { Trouble } from "./trouble";

export function BayPage(): JSX.Element {
  const aircraft = useStore(chosenAircraft);
  const seen = useView<BayAnswer>("bay", aircraft === "" ? {} : { aircraft });
  const bay = seen.data?.answer;
  if (!bay) return <div class="one-column"><h1>Bay</h1><Trouble failed={seen.failed} /></div>;
  return (
    <div class="sheet bay">
      <section class="left">
        <h1>Engine bay from above<span class="sub">, nose down the page: the aircraft's left is at your right</span></h1>
        <BayPlan plan={bay.plan} marks={bay.marks} />
        <div class="sheet-foot">
          <p class="state-line">
            <strong>Open joints: {bay.open_joints}</strong>
            <span>{bay.defects}</span>
          </p>
          <TitleBlock rows={bay.title_block} />
        </div>
      </section>
      <section class="right">
        <h2>Most used first</h2>
        <ol class="stripes">{bay.marks.map((m) => <li key={m.id}><MarkLine mark={m} /></li>)}</ol>
        <h2>Ahead</h2>
        <Ahead items={bay.ahead} from={bay.today} />
      </section>
    </div>
  );
}

function MarkLine(props: { mark: Mark }): JSX.Element {
  const { mark } = props;
  return (
    <StripeLine
      state={stateOf(mark)}
      name={mark.number === undefined ? mark.name : `${mark.number}  ${mark.name}`}
      {...(mark.words ? { words: mark.words } : {})}
      {...(mark.figure ? { figure: mark.figure } : {})}
      {...(mark.note ? { note: mark.note } : {})}
    />
  );
}
