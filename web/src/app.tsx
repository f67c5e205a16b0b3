/// The frame around every page: which aircraft, the five places, what was recorded last and
/// whether there is a connection.

import { useEffect, useRef, useState } from "preact/hooks";
import type { JSX } from "preact";
import { link } from "./api/changes";
import { announced, storageWorks, waiting } from "./api/outbox";
import type { Header } from "./api/views";
import { aircraftKnown, chosenAircraft, useFront, useHeader } from "./aircraft";
import { useStore } from "./kit/store";
import { dayInWords } from "./kit/time";
import { Printed } from "./look/figure";
import { address, go, places, route, type Place, type Route } from "./route/route";
import { Page, titleOf } from "./pages/page";

const names: Record<Place, string> = { bay: "Bay", work: "Work", measure: "Measure", runs: "Runs", record: "Record" };

export function App(): JSX.Element {
  const here = useStore(route);
  const main = useRef<HTMLElement>(null);
  const key = `${here.place}/${here.rest.join("/")}`;
  useFocusOnNavigation(key, main);
  useEffect(() => {
    document.title = `${titleOf(here) ?? names[here.place]} · Witnessmark`;
  }, [key]);
  const toMain = (event: Event): void => {
    // The part after "#" is our address: an ordinary skip link would navigate away.
    event.preventDefault();
    main.current?.focus();
  };
  return (
    <>
      <a class="skip" href="#main" onClick={toMain}>Skip to the page</a>
      <Head here={here} />
      <Notices />
      <Due />
      <main id="main" ref={main} tabIndex={-1}>
        <Page key={key} route={here} />
      </main>
    </>
  );
}

/// A new page announces itself: its heading takes the focus. Not on the first load, where the
/// browser's own order is right.
function useFocusOnNavigation(key: string, main: { current: HTMLElement | null }): void {
  const first = useRef(true);
  useEffect(() => {
    if (first.current) {
      first.current = false;
      return;
    }
    window.scrollTo(0, 0);
    // A page that asks for one thing has put the cursor there already.
    const chosen = document.activeElement;
    if (chosen?.matches("input, textarea, select") && main.current?.contains(chosen)) return;
    const heading = main.current?.querySelector<HTMLElement>("h1");
    if (heading) {
      heading.tabIndex = -1;
      heading.focus({ preventScroll: true });
    } else {
      main.current?.focus({ preventScroll: true });
    }
  }, [key]);
}

function Head(props: { here: Route }): JSX.Element {
  const header = useFront();
  const chosen = useStore(chosenAircraft);
  const fleet = header?.aircraft ?? [];
  const now = fleet.find((a) => a.aircraft === chosen) ?? fleet[0];
  useEffect(() => {
    if (!header) return;
    chosenAircraft.set(now?.aircraft ?? "");
    aircraftKnown.set(true);
  }, [header !== undefined, now?.aircraft]);
  return (
    <header class="head">
      <div class="title">
        {fleet.length > 1 ? <AircraftSwitch fleet={fleet} now={now} /> : <span class="aircraft-name">{now?.name ?? "Witnessmark"}</span>}
        {now ? (
          <span class="facts">
            <span>{now.registration}</span>
            <span>engine hours <Printed text={now.engine_hours} /></span>
            {header?.today ? <span>{dayInWords(header.today)}</span> : null}
          </span>
        ) : null}
      </div>
      <a class="button defect-button" href={address("bay", ["defect"])} aria-current={props.here.rest[0] === "defect" ? "page" : undefined}>Write down a defect</a>
      <nav class="places" aria-label="Places">
        {places.map((p) => (
          <a key={p} href={address(p)} aria-current={props.here.place === p ? "page" : undefined}>{names[p]}</a>
        ))}
      </nav>
    </header>
  );
}

function AircraftSwitch(props: { fleet: Header[]; now: Header | undefined }): JSX.Element {
  return (
    <select
      class="aircraft-name"
      aria-label="Aircraft"
      value={props.now?.aircraft}
      onChange={(e) => {
        chosenAircraft.set(e.currentTarget.value);
        // Entries of one aircraft must not be read as those of another.
        if (route.get().rest.length > 0) go(address(route.get().place));
      }}
    >
      {props.fleet.map((a) => <option key={a.aircraft} value={a.aircraft}>{a.name}</option>)}
    </select>
  );
}

/// What must be known before anybody flies, on every page: a stage that flew into its checks, a
/// defect that keeps the aircraft on the ground.
function Due(): JSX.Element | null {
  const header = useHeader();
  const due = header?.flight_due ?? [];
  const grounded = header?.grounding_defects ?? 0;
  if (due.length === 0 && grounded === 0) return null;
  return (
    <section class="due-line" aria-label="Before flight">
      <div class="due-words">
        {due.length > 0 ? <p><a href={address("work")}><strong>Check flight due:</strong> {due.join("; ")}</a></p> : null}
        {grounded > 0 ? <p><a href={address("bay", ["defects"])}><strong>On the ground:</strong> {grounded === 1 ? "an open defect keeps it there" : `${grounded} open defects keep it there`}</a></p> : null}
      </div>
    </section>
  );
}

/// Connection, what waits to be sent, what was just recorded.
function Notices(): JSX.Element {
  const state = useStore(link);
  const list = useStore(waiting);
  const stored = useStore(storageWorks);
  const said = useStore(announced);
  const [fresh, setFresh] = useState("");
  useEffect(() => {
    if (said.count === 0) return;
    setFresh(said.text);
    const timer = setTimeout(() => setFresh(""), 8_000);
    return () => clearTimeout(timer);
  }, [said.count]);
  const refused = list.filter((w) => w.problems).length;
  const pending = list.length - refused;
  return (
    <section class="notices" aria-label="Notices">
      <div role="status" class={`notice ${state === "none" ? "no-connection" : "quiet-notice"}`}>
        {state === "none" ? "No connection: what you type is kept here." : ""}
      </div>
      {list.length > 0 ? (
        <div class="notice pending">
          {pending > 0 ? <span>{pending === 1 ? "1 entry is" : `${pending} entries are`} not yet recorded. </span> : null}
          {refused > 0 ? <span>{refused === 1 ? "1 entry was" : `${refused} entries were`} refused. </span> : null}
          <a href={address("record", ["waiting"])}>See {list.length === 1 ? "it" : "them"}</a>
        </div>
      ) : null}
      {stored ? null : <div class="notice" role="status">This browser can't store what you type: keep the page open until it is recorded.</div>}
      <div role="status" class={fresh === "" ? "notice quiet-notice" : "notice recorded"}>{fresh}</div>
    </section>
  );
}
