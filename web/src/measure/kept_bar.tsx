/// What was kept last, and the way to correct it. Nothing is deleted: a correction is an entry.

import type { JSX } from "preact";
import type { CheckGroup } from "../api/views";
import { chosenAircraft } from "../aircraft";
import { useStore } from "../kit/store";
import { Printed } from "../look/figure";
import { address } from "../route/route";
import { newest, sessionOf, sessionTick, type Line } from "./session";
import { said } from "./strip";

export function KeptBar(props: { group: CheckGroup; lines: Line[] }): JSX.Element | null {
  const { group, lines } = props;
  const aircraft = useStore(chosenAircraft);
  useStore(sessionTick);
  const last = newest(sessionOf(aircraft, group.id));
  const line = lines.find((l) => l.check.id === last?.check);
  if (!last || !line) return null;
  return (
    <div class="kept-bar">
      <span>Kept: <strong>{line.name}</strong>, <Printed text={line.text} />{line.judged || line.waits ? <span class="help"> {said(line)}</span> : null}</span>
      {line.waits
        ? <a class="button" href={address("record", ["waiting"])}>See it</a>
        : <a class="button" href={address("record", ["correct", last.reading.event], { back: location.hash || address("measure") })}>Correct it</a>}
    </div>
  );
}
