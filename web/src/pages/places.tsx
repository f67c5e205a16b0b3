/// Work, Measure, Runs and Record: what can be entered and looked at, from the catalogue.

import type { JSX } from "preact";
import { useCatalogue } from "../api/use";
import type { Entry } from "../api/types";
import { address, type Place } from "../route/route";
import { named } from "./page";
import { Trouble } from "./trouble";

function Index(props: { place: Place; face: "act" | "view"; entries: Entry[] }): JSX.Element | null {
  if (props.entries.length === 0) return null;
  return (
    <ul class="index">
      {props.entries.map((e) => (
        <li key={e.name}>
          <a href={address(props.place, [props.face, e.name])}>
            <strong>{named(e.name)}</strong>
            <span>{e.purpose}</span>
          </a>
        </li>
      ))}
    </ul>
  );
}

function Place(props: { place: Place; title: string; lead: string; children?: JSX.Element }): JSX.Element {
  const seen = useCatalogue();
  return (
    <div class="one-column">
      <h1>{props.title}</h1>
      <p class="lead">{props.lead}</p>
      {props.children}
      {seen.data ? (
        <>
          {seen.data.acts.length > 0 ? <h2>Enter</h2> : null}
          <Index place={props.place} face="act" entries={seen.data.acts} />
          {seen.data.views.length > 0 ? <h2>Look at</h2> : null}
          <Index place={props.place} face="view" entries={seen.data.views} />
        </>
      ) : <Trouble failed={seen.failed} />}
    </div>
  );
}

export function WorkPage(): JSX.Element {
  return (
    <Place place="work" title="Work" lead="Changes, stages, parts to make or order, cards.">
      <ul class="index">
        <li>
          <a href={address("work", ["bench"])}>
            <strong>Bench</strong>
            <span>Any calculation by itself</span>
          </a>
        </li>
      </ul>
    </Place>
  );
}

export function MeasurePage(): JSX.Element {
  return <Place place="measure" title="Measure" lead="Readings and their verdicts." />;
}

export function RunsPage(): JSX.Element {
  return <Place place="runs" title="Runs" lead="Check runs and flights, before and after." />;
}

export function RecordPage(): JSX.Element {
  return <Place place="record" title="Record" lead="Entries, signatures, history." />;
}
