/// The way to the possible causes, which are loaded when they are opened: "?stage=ID&about=...".

import type { JSX } from "preact";
import type { WorkAnswer } from "../api/views";
import { chosenAircraft, useAircraftView } from "../aircraft";
import { styleOf } from "../kit/style";
import { useStore } from "../kit/store";
import { Door } from "./door";
import { Trouble } from "./trouble";

const load = async (): Promise<typeof import("../causes/page")> => (await Promise.all([import("../causes/page"), styleOf("staging")]))[0];

export function CausesDoor(props: { query: Record<string, string> }): JSX.Element {
  const seen = useAircraftView<WorkAnswer>("work");
  const aircraft = useStore(chosenAircraft);
  const work = seen.data?.answer;
  const stage = props.query["stage"];
  return (
    <Door title="What it may be" load={load} waits={<Trouble failed={seen.failed} />}>
      {(part) => (work ? <part.CausesPage key={stage ?? ""} work={work} aircraft={aircraft ?? ""} stage={stage} about={props.query["about"] ?? ""} /> : null)}
    </Door>
  );
}
