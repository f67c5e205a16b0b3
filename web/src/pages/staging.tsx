/// The way to the sheet of stages, which is loaded when it is opened.

import type { JSX } from "preact";
import type { WorkAnswer } from "../api/views";
import { chosenAircraft, useAircraftView } from "../aircraft";
import { styleOf } from "../kit/style";
import { useStore } from "../kit/store";
import { Door } from "./door";
import { Trouble } from "./trouble";

const load = async (): Promise<typeof import("../staging/page")> => (await Promise.all([import("../staging/page"), styleOf("staging")]))[0];

export function StagingDoor(): JSX.Element {
  const seen = useAircraftView<WorkAnswer>("work");
  const aircraft = useStore(chosenAircraft);
  const work = seen.data?.answer;
  return (
    <Door title="What flies together" load={load} waits={<Trouble failed={seen.failed} />}>
      {(part) => (work ? <part.StagingPage work={work} aircraft={aircraft ?? ""} /> : null)}
    </Door>
  );
}
