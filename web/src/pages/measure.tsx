/// Measure: the groups and the instruments. One reading at a time is in src/measure.

import { useEffect, useState } from "preact/hooks";
import type { JSX } from "preact";
import type { MeasureAnswer } from "../api/views";
import { useAircraftView } from "../aircraft";
import { styleOf } from "../kit/style";
import { Printed } from "../look/figure";
import { Stripe } from "../look/stripe";
import { address } from "../route/route";
import { named } from "./page";
import { standingState, standingWords } from "./standing";
import { Trouble } from "./trouble";

export function MeasurePage(): JSX.Element {
  const seen = useAircraftView<MeasureAnswer>("measure");
  const page = seen.data?.answer;
  // At the engine the connection may be gone: what comes next is fetched while it is there.
  useEffect(() => void load().catch(() => undefined), []);
  return (
    <div class="one-column wide">
      <h1>Measure</h1>
      {page ? <Groups page={page} /> : <Trouble failed={seen.failed} />}
    </div>
  );
}

function Groups(props: { page: MeasureAnswer }): JSX.Element {
  const { groups, instruments } = props.page;
  return (
    <>
      <p class="lead">Choose what to read. Nothing is recorded before you press Keep.</p>
      <ul class="groups">
        {groups.map((g) => (
          <li key={g.id}>
            {g.checks.length === 1 ? null : (
              <a class="group-head" href={address("measure", ["group", g.id])}>
                <strong>{named(g.title)}</strong>
                <span>Read all {g.checks.length}</span>
              </a>
            )}
            <ul class="plain checks">
              {g.checks.map((c) => (
                <li key={c.id}>
                  <a class="check-line" href={address("measure", ["check", c.id])}>
                    <Stripe state={standingState(c.verdict, c.used)} size="small" />
                    <span class="check-name">{c.title}</span>
                    <span class="check-last">{c.last === "" ? null : <Printed text={c.last} />}<span class="stripe-note"> {standingWords(c.verdict)}</span></span>
                  </a>
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
      <h2>Instruments</h2>
      <ul class="plain rows">
        {instruments.map((i) => (
          <li key={i.id}>
            <strong>{i.name}</strong> <span class="help">{i.serial} · {i.state}{i.found_bad ? `: ${i.found_bad}` : ""}</span>
          </li>
        ))}
      </ul>
      <p class="form-acts">
        <a class="button" href={address("measure", ["act", "register-instrument"], { back: "#/measure" })}>Register an instrument</a>
        <a class="button" href={address("measure", ["act", "instrument-found-bad"], { back: "#/measure" })}>An instrument was found bad</a>
        <a class="button" href={address("measure", ["act", "describe-check"], { back: "#/measure" })}>Describe a check</a>
      </p>
    </>
  );
}

type Loaded = typeof import("../measure/page");

// Once it is here, the next reading stands at once, with the cursor in its field.
let here: Loaded | undefined;
const load = (): Promise<Loaded> => Promise.all([import("../measure/page"), styleOf("measure")]).then(([part]) => (here = part));

/// The way to one reading and to the summary of a group, which are loaded when they are opened.
export function ReadingPage(props: { group: string; check?: string | undefined }): JSX.Element {
  const [part, setPart] = useState<Loaded | "failed" | undefined>(here);
  const [tries, setTries] = useState(0);
  useEffect(() => {
    if (here) return;
    let gone = false;
    load().then((p) => { if (!gone) setPart(p); }).catch(() => { if (!gone) setPart("failed"); });
    return () => { gone = true; };
  }, [tries]);
  if (part === "failed") return <div class="one-column"><h1>Measure</h1><p class="trouble">The page could not be loaded: no connection.</p><button type="button" onClick={() => { setPart(undefined); setTries(tries + 1); }}>Try again</button></div>;
  if (!part) return <div class="one-column"><h1>Measure</h1><Trouble failed={undefined} /></div>;
  return <part.GroupPage group={props.group} check={props.check} />;
}
