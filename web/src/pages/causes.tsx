/// The way to the possible causes, which are loaded when they are opened: "?stage=ID&about=...".

import { useEffect, useState } from "preact/hooks";
import type { JSX } from "preact";
import type { WorkAnswer } from "../api/views";
import { chosenAircraft, useAircraftView } from "../aircraft";
import { styleOf } from "../kit/style";
import { useStore } from "../kit/store";
import { Trouble } from "./trouble";

export function CausesDoor(props: { query: Record<string, string> }): JSX.Element {
  const seen = useAircraftView<WorkAnswer>("work");
  const aircraft = useStore(chosenAircraft);
  const [loaded, setLoaded] = useState<typeof import("../causes/page") | "failed" | undefined>(undefined);
  useEffect(() => {
    let gone = false;
    Promise.all([import("../causes/page"), styleOf("staging")]).then(([part]) => { if (!gone) setLoaded(part); }).catch(() => { if (!gone) setLoaded("failed"); });
    return () => { gone = true; };
  }, []);
  if (loaded === "failed") return <div class="one-column"><h1>What it may be</h1><p class="trouble">The page could not be loaded: no connection.</p></div>;
  const work = seen.data?.answer;
  const stage = props.query["stage"];
  return loaded && work ? <loaded.CausesPage key={stage ?? ""} work={work} aircraft={aircraft ?? ""} stage={stage} about={props.query["about"] ?? ""} /> : <div class="one-column"><h1>What it may be</h1><Trouble failed={seen.failed} /></div>;
}
