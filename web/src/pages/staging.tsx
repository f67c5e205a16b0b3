/// The way to the sheet of stages, which is loaded when it is opened.

import { useEffect, useState } from "preact/hooks";
import type { JSX } from "preact";
import type { WorkAnswer } from "../api/views";
import { chosenAircraft, useAircraftView } from "../aircraft";
import { styleOf } from "../kit/style";
import { useStore } from "../kit/store";
import { Trouble } from "./trouble";

export function StagingDoor(): JSX.Element {
  const seen = useAircraftView<WorkAnswer>("work");
  const aircraft = useStore(chosenAircraft);
  const [loaded, setLoaded] = useState<typeof import("../staging/page") | "failed" | undefined>(undefined);
  useEffect(() => {
    let gone = false;
    Promise.all([import("../staging/page"), styleOf("staging")]).then(([part]) => { if (!gone) setLoaded(part); }).catch(() => { if (!gone) setLoaded("failed"); });
    return () => { gone = true; };
  }, []);
  if (loaded === "failed") return <div class="one-column"><h1>What flies together</h1><p class="trouble">The page could not be loaded: no connection.</p></div>;
  const work = seen.data?.answer;
  return loaded && work ? <loaded.StagingPage work={work} aircraft={aircraft ?? ""} /> : <div class="one-column"><h1>What flies together</h1><Trouble failed={seen.failed} /></div>;
}
