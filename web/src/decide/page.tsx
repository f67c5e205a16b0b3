/// Renew, watch or leave: each part that is fitted with what the record says about it. The record
/// leans; the owner decides, with a reason, and both are kept.

import type { JSX } from "preact";
import { useAircraftView } from "../aircraft";
import type { EvidenceLine, PartEvidence, DecideAnswer } from "../api/views";
import { dayInWords } from "../kit/time";
import { unitWords } from "../look/digits";
import { address } from "../route/route";
import { Trouble } from "../pages/trouble";

const k_all = address("work", ["decide"]);
const ways = ["renew", "watch", "leave"] as const;
const leaning: Record<string, string> = { renew: "renewing", watch: "watching", leave: "leaving" };
const headings: Record<string, string> = { renew: "Leans to renewing", watch: "Leans to watching", leave: "Nothing asks for more" };

export function DecidePage(): JSX.Element {
  const seen = useAircraftView<DecideAnswer>("decide");
  const page = seen.data?.answer;
  if (!page) return <div class="one-column"><h1>Renew, watch or leave</h1><Trouble failed={seen.failed} /></div>;
  const of = (way: string): PartEvidence[] => page.parts.filter((p) => p.leans === way);
  return (
    <div class="one-column wide decide">
      <p class="trail"><a href={address("work")}>Work</a></p>
      <h1>Renew, watch or leave</h1>
      <p class="lead">{page.renew} to renew, {page.watch} to watch, {page.leave} to leave, as the record leans. It is your decision; the maker's manual and the rules that apply come first.</p>
      {ways.map((way) => {
        const parts = of(way);
        const list = <ul class="plain rows">{parts.map((p) => <li key={p.position}><Part part={p} back={k_all} /></li>)}</ul>;
        if (parts.length === 0) return null;
        return (
          <section key={way}>
            <h2>{headings[way]} ({parts.length})</h2>
            {way === "leave" ? <details class="more"><summary>Show {parts.length === 1 ? "it" : "them"}</summary>{list}</details> : list}
          </section>
        );
      })}
    </div>
  );
}

export function DecideOnePage(props: { position: string }): JSX.Element {
  const seen = useAircraftView<PartEvidence>("part-evidence", { position: props.position });
  const part = seen.data?.answer;
  if (!part) return <div class="one-column"><p class="trail"><a href={k_all}>Renew, watch or leave</a></p><h1>Renew, watch or leave</h1><Trouble failed={seen.failed} /></div>;
  return (
    <div class="one-column wide decide">
      <p class="trail"><a href={k_all}>Renew, watch or leave</a></p>
      <h1>{part.position_name}</h1>
      {part.part === "" ? <p class="lead">No part is on record here.</p> : <p class="lead">{part.description}</p>}
      <p><strong>The record leans to: {part.leans}.</strong> {unitWords(part.because)}</p>
      <Decided part={part} />
      <Evidence lines={part.lines} />
      <Acts part={part} back={address("work", ["decide", part.position])} />
    </div>
  );
}

function Part(props: { part: PartEvidence; back: string }): JSX.Element {
  const { part } = props;
  return (
    <article aria-labelledby={`part-${part.position}`}>
      <h3 id={`part-${part.position}`}><a class="row-link" href={address("work", ["decide", part.position])}>{part.position_name}</a></h3>
      <p>{unitWords(part.because)}</p>
      <p class="help">{[part.description, part.system, part.grave ? "its failure may be grave" : ""].filter((t) => t !== "").join(" · ")}</p>
      <Decided part={part} />
      <details class="more"><summary>Evidence, {part.lines.length} lines</summary><Evidence lines={part.lines} /></details>
      <Acts part={part} back={props.back} />
    </article>
  );
}

function Decided(props: { part: PartEvidence }): JSX.Element | null {
  const { part } = props;
  if (part.decided === "") return null;
  return <p class="about"><strong>Decided on {dayInWords(part.decided_on)}: {part.decided}.</strong> {part.decided_why}{part.look_again_due ? <strong> The day to look again has come.</strong> : null}</p>;
}

function Evidence(props: { lines: EvidenceLine[] }): JSX.Element {
  return (
    <dl class="evidence">
      {props.lines.map((l, i) => (
        <div key={i}>
          <dt>{l.topic.charAt(0).toUpperCase() + l.topic.slice(1)}{l.leans ? <span class="leans">leans to {leaning[l.leans]}</span> : null}</dt>
          <dd>{unitWords(l.words)}{l.source ? <span class="help line">{unitWords(l.source)}</span> : null}</dd>
        </div>
      ))}
    </dl>
  );
}

function Acts(props: { part: PartEvidence; back: string }): JSX.Element {
  const { part, back } = props;
  return (
    <div class="form-acts">
      {part.part === "" ? null : <a class="button main" href={address("work", ["act", "decide-part"], { position: part.position, "start.decision": part.leans, back })} aria-label={`Decide: ${part.position_name}`}>Decide</a>}
      {part.leans === "renew" || part.decided === "renew" ? <a class="button" href={address("work", ["act", "plan-change"], { "start.position": part.position, "start.title": `Renew: ${part.position_name}`, back: "#/work" })} aria-label={`Plan the change: ${part.position_name}`}>Plan the change</a> : null}
      {part.stage === "" ? null : <a class="button" href={address("work", ["stage", part.stage])} aria-label={`The stage that changes it: ${part.position_name}`}>The stage that changes it</a>}
      <a class="button quiet-button" href={address("bay", ["position", part.position])} aria-label={`The place: ${part.position_name}`}>The place</a>
    </div>
  );
}
