/// What can be entered and looked at, from the catalogue: every act and view has its form, also
/// those that no page arranges.

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

export function AllPage(props: { place: Place }): JSX.Element {
  const seen = useCatalogue();
  return (
    <div class="one-column">
      <p class="trail"><a href={address(props.place)}>{named(props.place)}</a></p>
      <h1>Everything that can be entered or looked at</h1>
      {seen.data ? (
        <>
          <h2>Enter</h2>
          <Index place={props.place} face="act" entries={seen.data.acts} />
          <h2>Look at</h2>
          <Index place={props.place} face="view" entries={seen.data.views} />
        </>
      ) : <Trouble failed={seen.failed} />}
    </div>
  );
}
