/// The bay: the plan with its marks, what is most used, and what is ahead.

import { useState } from "preact/hooks";
import type { JSX } from "preact";
import type { BayAnswer, DefectLine, Mark } from "../api/views";
import { useAircraftView, useFront } from "../aircraft";
import { dayInWords } from "../kit/time";
import { Ahead } from "../look/ahead";
import { BayPlan, type Placed } from "../look/bay_plan";
import { unitWords } from "../look/digits";
import { TitleBlock } from "../look/sheet";
import { StripeLine } from "../look/stripe";
import { address } from "../route/route";
import { standingState, standingWords } from "./standing";
import { Trouble } from "./trouble";

const k_first_marks = 12;
const k_first_ahead = 8;

export function BayPage(): JSX.Element {
  const seen = useAircraftView<BayAnswer>("bay");
  const front = useFront();
  const [all, setAll] = useState(false);
  const bay = seen.data?.answer;
  if (!bay || !front) return <div class="one-column"><h1>Bay</h1><Trouble failed={seen.failed} /></div>;
  const { header } = bay;
  const marks = all ? bay.marks : bay.marks.slice(0, k_first_marks);
  const cylinders = bay.plan.filter((s) => /^cylinder/i.test(s.position)).length || 4;
  return (
    <div class="sheet bay">
      <section class="left">
        <h1>Engine bay from above<span class="sub">, nose down the page: the aircraft's left is at your right</span></h1>
        {bay.open_joints.length > 0 || bay.bungs.length > 0 ? <OpenNow bay={bay} /> : null}
        <BayPlan plan={bay.plan} placed={placedOf(bay)} cylinders={cylinders} />
        <div class="sheet-foot">
          <p class="state-line">
            <strong>Open joints: {header.open_joints}</strong>
            <span>cowl {header.cowl_closed ? "closed" : "open"}</span>
            {header.bungs > 0 ? <span>bungs and tools fitted: {header.bungs}</span> : null}
          </p>
          <TitleBlock rows={[`${header.name} · engine bay plan · ${dayInWords(front.today)}`, `${bay.past_limit} past limit · ${bay.doubtful} doubtful · ${bay.unknown} unknown · ${bay.within} within`, `limits: each with its document in the lists`]} />
        </div>
        <Defects defects={bay.defects} />
        <details class="more">
          <summary>All {bay.plan.length} places</summary>
          <ul class="places-list">{bay.plan.map((s) => <li key={s.position}><a class="row-link" href={address("bay", ["position", s.position])}>{s.name}</a></li>)}</ul>
        </details>
        {bay.oddities.length > 0 ? <details class="more"><summary>{bay.oddities.length} things in the record do not fit</summary><ul class="plain">{bay.oddities.map((o) => <li key={o}>{o}</li>)}</ul></details> : null}
      </section>
      <section class="right">
        <h2>Most used first</h2>
        <ol class="stripes">{marks.map((m, i) => <li key={m.of + m.id}><MarkLine mark={m} number={i + 1} /></li>)}</ol>
        {bay.marks.length > k_first_marks ? <p class="form-acts"><button type="button" onClick={() => setAll(!all)}>{all ? `Only the first ${k_first_marks}` : `All ${bay.marks.length}`}</button></p> : null}
        <h2>Ahead</h2>
        <Ahead
          from={front.today}
          items={bay.ahead.slice(0, k_first_ahead).map((r) => ({
            id: r.id, name: r.title, on: r.expected ?? r.due_on ?? front.today,
            ...(r.position ? { href: address("bay", ["position", r.position]) } : {}),
            ...(r.early && r.late && r.early !== r.late ? { earliest: r.early, latest: r.late } : {}),
            note: [r.left === "" ? "" : `${r.left} left`, r.early && r.late && r.early !== r.late ? `${dayInWords(r.early)} to ${dayInWords(r.late)}, 8 in 10` : ""].filter((t) => t !== "").join(" · "),
          }))}
        />
        <p class="form-acts"><a class="button" href={address("bay", ["due"])}>All that is due</a></p>
      </section>
    </div>
  );
}

/// The worst mark of each place among those at the top of the list, numbered as there.
function placedOf(bay: BayAnswer): Placed[] {
  const out: Placed[] = [];
  bay.marks.slice(0, k_first_marks).forEach((m, i) => {
    const spot = bay.plan.find((s) => s.position === m.position);
    if (!spot || out.some((p) => p.spot.position === m.position)) return;
    out.push({ spot, number: i + 1, standing: m.standing, ...(m.used === undefined ? {} : { used: m.used }), ...(m.uncertainty === undefined ? {} : { uncertainty: m.uncertainty }) });
  });
  return out;
}

function OpenNow(props: { bay: BayAnswer }): JSX.Element {
  const { open_joints, bungs } = props.bay;
  return (
    <section class="open-now" aria-label="Open now">
      {open_joints.length > 0 ? (
        <>
          <h2>{open_joints.length === 1 ? "1 joint is open" : `${open_joints.length} joints are open`}</h2>
          <ol class="plain">
            {open_joints.map((j) => (
              <li key={j.id}><a class="open-joint" href={address("work", ["joint", j.id])}><strong class="joint-number">{j.number}</strong><span>{j.name}<span class="stripe-note"> still to be {j.needs}</span></span></a></li>
            ))}
          </ol>
        </>
      ) : null}
      {bungs.length > 0 ? <p><a class="button" href={address("work", ["joints"])}>Fitted: {bungs.map((b) => b.id).join(", ")}</a></p> : null}
    </section>
  );
}

export function MarkLine(props: { mark: Mark; number?: number }): JSX.Element {
  const { mark, number } = props;
  const state = standingState(mark.standing, mark.used, mark.uncertainty);
  const note = [mark.trend, mark.detail].filter((t) => t !== "").map(unitWords).join(" · ");
  return (
    <StripeLine
      state={state}
      name={number === undefined ? mark.title : `${number}  ${mark.title}`}
      href={mark.of === "check" ? address("measure", ["check", mark.id]) : mark.position ? address("bay", ["position", mark.position]) : address("bay", ["due"])}
      words={standingWords(mark.standing, mark.used)}
      figure={mark.figure}
      {...(note === "" ? {} : { note })}
    />
  );
}

function Defects(props: { defects: DefectLine[] }): JSX.Element | null {
  if (props.defects.length === 0) return null;
  return (
    <section>
      <h2>Open defects</h2>
      <ul class="plain rows">{props.defects.map((d) => <li key={d.id}><DefectRow defect={d} back="#/bay" /></li>)}</ul>
    </section>
  );
}

const decisions: { [word: string]: string } = { undecided: "Fly or ground: not decided yet", fly: "Fly with it", ground: "Stays on the ground" };

export function DefectRow(props: { defect: DefectLine; back: string }): JSX.Element {
  const { defect, back } = props;
  return (
    <div class="row-with-acts">
      <div>
        <strong>{defect.text}</strong>
        <p class="help">{dayInWords(defect.happened)} · {defect.closed ? `closed: ${defect.how}` : decisions[defect.decision] ?? defect.decision}{defect.reason ? `: ${defect.reason}` : ""}{defect.until ? `, until ${dayInWords(defect.until)}` : ""}</p>
        {defect.photos.map((h, i) => <a key={h} class="photo-link" href={`/api/attachment/${h}`} target="_blank" rel="noopener">Photo {i + 1}</a>)}
      </div>
      {defect.closed ? null : (
        <div class="form-acts">
          <a class="button" href={address("bay", ["act", "decide-defect"], { defect: defect.id, back })}>Fly or ground</a>
          <a class="button" href={address("bay", ["act", "close-defect"], { defect: defect.id, back })}>Close it</a>
          <a class="button" href={address("work", ["causes"], { about: defect.text })}>What it may be</a>
        </div>
      )}
    </div>
  );
}

export function DefectsPage(): JSX.Element {
  const seen = useAircraftView<BayAnswer>("bay");
  const bay = seen.data?.answer;
  return (
    <div class="one-column">
      <p class="trail"><a href={address("bay")}>Bay</a></p>
      <h1>Open defects</h1>
      {bay ? bay.defects.length === 0 ? <p class="none">None is open.</p> : <ul class="plain rows">{bay.defects.map((d) => <li key={d.id}><DefectRow defect={d} back="#/bay/defects" /></li>)}</ul> : <Trouble failed={seen.failed} />}
    </div>
  );
}
