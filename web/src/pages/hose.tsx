/// The way to the hose sheet, which is loaded when it is opened: "?change=ID&back=..." as on the
/// page of a calculation, "?hose=ID" for one that is kept.

import { useEffect, useState } from "preact/hooks";
import type { JSX } from "preact";
import { useDescription } from "../api/use";
import { styleOf } from "../kit/style";
import { address } from "../route/route";
import type { HoseAnswer } from "../api/views";
import { useAircraftView } from "../aircraft";
import { useChange } from "./cut";
import { Trouble } from "./trouble";

type Loaded = typeof import("../hose/page");

export function HoseDoor(props: { query: Record<string, string> }): JSX.Element {
  const { query } = props;
  const seen = useDescription("calc", "hose-sheet");
  const wanted = query["change"];
  const held = query["hose"];
  const kept = useAircraftView<HoseAnswer>("hose", { hose: held ?? "" }, held !== undefined).data?.answer;
  const change = useChange(wanted ?? (kept?.hose.change || undefined));
  const [loaded, setLoaded] = useState<Loaded | "failed" | undefined>(undefined);
  const [tries, setTries] = useState(0);
  useEffect(() => {
    let gone = false;
    Promise.all([import("../hose/page"), styleOf("hose")]).then(([part]) => { if (!gone) setLoaded(part); }).catch(() => { if (!gone) setLoaded("failed"); });
    return () => { gone = true; };
  }, [tries]);
  const back = query["back"]?.startsWith("#/") ? query["back"] : undefined;
  const ready = seen.data && (wanted === undefined || change) && (held === undefined || kept);
  return (
    <>
      <div class="hose-head">
        <p class="trail"><a href={back ?? address("work")}>{back ? "Back" : "Work"}</a></p>
        <h1>Hose sheet</h1>
      </div>
      {loaded === "failed" ? (
        <div class="one-column"><p class="trouble">The sheet could not be loaded: no connection.</p><button type="button" onClick={() => { setLoaded(undefined); setTries(tries + 1); }}>Try again</button></div>
      ) : loaded && ready && seen.data ? <loaded.HosePage key={held ?? wanted ?? ""} description={seen.data} change={change} kept={kept} back={back} /> : <div class="one-column"><Trouble failed={seen.failed} /></div>}
    </>
  );
}

/// One hose of the record, loaded when it is opened.
export function KeptHoseDoor(props: { id: string }): JSX.Element {
  const [loaded, setLoaded] = useState<typeof import("../hose/kept") | "failed" | undefined>(undefined);
  useEffect(() => {
    let gone = false;
    import("../hose/kept").then((part) => { if (!gone) setLoaded(part); }).catch(() => { if (!gone) setLoaded("failed"); });
    return () => { gone = true; };
  }, []);
  if (loaded === "failed") return <div class="one-column"><h1>Hose</h1><p class="trouble">The page could not be loaded: no connection.</p></div>;
  return loaded ? <loaded.KeptHosePage key={props.id} id={props.id} /> : <div class="one-column"><h1>Hose</h1></div>;
}
