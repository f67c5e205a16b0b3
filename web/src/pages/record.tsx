/// Record: signed entries, what happened with corrections beside it, the chain, the sheet.

import { useState } from "preact/hooks";
import type { JSX } from "preact";
import { ask } from "../api/client";
import { useAnswer, useDescription } from "../api/use";
import type { EntryLine, HistoryLine } from "../api/views";
import type { JsonObject } from "../api/types";
import { chosenAircraft, useAircraftView } from "../aircraft";
import { useStore } from "../kit/store";
import { dayInWords } from "../kit/time";
import { unitWords } from "../look/digits";
import { address, go } from "../route/route";
import { CorrectForm } from "./correct";
import { named } from "./page";
import { Trouble } from "./trouble";
import { Card } from "./work";

const k_page = 15;

export function RecordPage(): JSX.Element {
  const seen = useAircraftView<{ entries: EntryLine[] }>("entries");
  const aircraft = useStore(chosenAircraft);
  const entries = seen.data?.answer.entries;
  return (
    <div class="sheet record">
      <section class="left">
        <h1>Record</h1>
        <h2>Signed entries</h2>
        {entries === undefined ? <Trouble failed={seen.failed} /> : entries.length === 0 ? <p class="none">None is signed yet.</p> : (
          <ol class="plain rows">{entries.slice(0, 8).map((e) => <li key={e.id}><Entry entry={e} /></li>)}</ol>
        )}
        <h2>What happened, newest first</h2>
        <History about="" />
      </section>
      <section class="right">
        <h2>The chain</h2>
        <Verify />
        <h2>Take with you</h2>
        <ul class="index">
          <li><a href={`/api/sheet/${encodeURIComponent(aircraft)}.toml`} download><strong>Aircraft sheet</strong><span>Positions, joints, parts, limits and checks as a text file</span></a></li>
          <li><a href={address("record", ["act", "attach"], { back: "#/record" })}><strong>Attach a paper</strong><span>By its content</span></a></li>
          <li><a href={address("record", ["all"])}><strong>Everything that can be entered or looked at</strong><span>From the catalogue</span></a></li>
          <li><a href={address("record", ["waiting"])}><strong>Not yet recorded</strong><span>What waits in this browser</span></a></li>
        </ul>
      </section>
    </div>
  );
}

function Entry(props: { entry: EntryLine }): JSX.Element {
  const { entry } = props;
  return (
    <div>
      <details class="more entry">
        <summary><strong>{entry.purpose.charAt(0).toUpperCase() + entry.purpose.slice(1)}</strong>, {dayInWords(entry.happened)}<span class="help line">no. {entry.sequence} · {entry.name}, {entry.signer}{entry.certificate ? `, ${entry.certificate}` : ""}</span></summary>
        <pre class="entry-text">{entry.text}</pre>
      </details>
      {entry.amended_after_signature ? <p class="amended"><strong>Amended after signature:</strong> something that it reports was corrected later. The text stands as it was signed.</p> : null}
      <div class="form-acts"><Card kind="entry" id={entry.id} words="Print" about={`entry no. ${entry.sequence}`} /></div>
    </div>
  );
}

export function HistoryPage(props: { about: string; of: string }): JSX.Element {
  return (
    <div class="one-column wide">
      <p class="trail"><a href={address("record")}>Record</a></p>
      <h1>History{props.about ? ` of ${props.of || named(props.about)}` : ""}</h1>
      <History about={props.about} />
    </div>
  );
}

function History(props: { about: string }): JSX.Element {
  const [pages, setPages] = useState(1);
  const most = Math.min(1000, pages * k_page);
  const seen = useAircraftView<{ lines: HistoryLine[]; more: boolean }>("history", { most, ...(props.about ? { about: props.about } : {}) });
  const data = seen.data?.answer;
  if (!data) return <Trouble failed={seen.failed} />;
  return (
    <>
      {data.lines.length === 0 ? <p class="none">Nothing.</p> : null}
      <ol class="plain rows history">{data.lines.map((l) => <li key={l.event}><Line line={l} back={location.hash} /></li>)}</ol>
      {data.more ? <p class="form-acts"><button type="button" onClick={() => setPages(pages + 1)}>Earlier ones</button></p> : null}
    </>
  );
}

const fixedKinds = new Set(["event-corrected", "verdict-given", "sheet-imported", "entry-signed", "stage-moved"]);

function Line(props: { line: HistoryLine; back: string }): JSX.Element {
  const { line, back } = props;
  return (
    <div class="row-with-acts">
      <div>
        <span class="help line">no. {line.sequence} · {dayInWords(line.happened)} · {line.kind_label}{line.author ? ` · ${line.author}` : ""}</span>
        {line.corrected ? (
          <div class="both">
            <p><span class="help line">as it was entered</span><s>{unitWords(line.words)}</s></p>
            <p><span class="help line">corrected: {line.correction_reason}</span><strong>{unitWords(line.corrected_words)}</strong></p>
          </div>
        ) : <p>{unitWords(line.words)}</p>}
      </div>
      {fixedKinds.has(line.kind) ? null : <div class="form-acts"><a class="button quiet-button" href={address("record", ["correct", line.event], { back })} aria-label={`Correct no. ${line.sequence}`}>Correct</a></div>}
    </div>
  );
}

function Verify(): JSX.Element {
  const [asked, setAsked] = useState<JsonObject | undefined>(undefined);
  const [state, setState] = useState("");
  const check = async (): Promise<void> => {
    setState("Checking every link");
    const outcome = await ask<JsonObject>("/api/verify");
    setState(outcome.is === "answer" ? "" : outcome.is === "no-connection" ? "No connection: nothing was checked." : "It could not be checked.");
    setAsked(outcome.is === "answer" ? outcome.data : undefined);
  };
  const problems = Array.isArray(asked?.["problems"]) ? (asked["problems"] as JsonObject[]) : Array.isArray(asked?.["findings"]) ? (asked["findings"] as JsonObject[]) : [];
  return (
    <div>
      <p>Every event carries the digest of the one before it. Checking reads them all.</p>
      <p class="form-acts"><button type="button" onClick={() => void check()}>Verify the chain</button></p>
      <div role="status">
        {state ? <p>{state}</p> : null}
        {asked ? (
          <div class="told">
            <p><strong>{problems.length === 0 ? "Every link holds." : `${problems.length} things do not fit.`}</strong></p>
            {problems.map((p, i) => <p key={i}>{String(p["what"] ?? JSON.stringify(p))}</p>)}
            <dl class="answer">
              {Object.entries(asked).filter(([, v]) => typeof v === "string" || typeof v === "number").map(([k, v]) => <div class="row" key={k}><dt>{named(k)}</dt><dd>{String(v)}</dd></div>)}
            </dl>
          </div>
        ) : null}
      </div>
    </div>
  );
}

export interface EventAnswer { sequence: number; id: string; kind: string; version: number; happened: string; recorded?: string; body: JsonObject }

/// The act whose input has the shape of this kind of event.
const actOf: { [kind: string]: string } = {
  "reading-taken": "measure", "defect-noted": "note-defect", "defect-decided": "decide-defect", "defect-closed": "close-defect",
  "counter-read": "read-counter", "counter-replaced": "replace-counter", "counter-defined": "define-counter", "stage-step-done": "stage-step",
  "quick-job-done": "quick-job", "task-done": "task-done", "change-planned": "plan-change", "change-done": "change-done",
  "change-withdrawn": "withdraw-change", "stage-planned": "plan-stage", "stage-rule-answered": "answer-objection", "joint-worked": "work-joint",
  "joint-added": "add-joint", "position-added": "add-position", "part-registered": "register-part", "part-installed": "install-part",
  "part-removed": "remove-part", "limit-set": "set-limit", "check-described": "describe-check", "instrument-registered": "register-instrument",
  "instrument-found-bad": "instrument-found-bad", "bung-counted": "count-bung", "cowl-moved": "move-cowl", "mass-revised": "revise-mass",
  "aircraft-described": "describe-aircraft", "attachment-added": "attach",
};

export function CorrectPage(props: { event: string; back: string }): JSX.Element {
  const seen = useAnswer<EventAnswer>(`/api/event/${encodeURIComponent(props.event)}`);
  const event = seen.data;
  const act = event ? actOf[event.kind] : undefined;
  const described = useDescription("act", act ?? "correct");
  const correct = useDescription("act", "correct");
  if (!event || !described.data || !correct.data) {
    return <div class="one-column"><h1>Correct</h1><Trouble failed={seen.failed ?? described.failed ?? correct.failed} /></div>;
  }
  if (!act) return <div class="one-column"><p class="trail"><a href={props.back}>Back</a></p><h1>Correct</h1><p class="trouble">An event of this kind can't be corrected by a form. Enter what is right as a new event.</p></div>;
  return (
    <div class="one-column">
      <p class="trail"><a href={props.back}>Back</a></p>
      <h1>Correct no. {event.sequence}</h1>
      <p class="lead">{event.kind.replaceAll("-", " ")}, {dayInWords(event.happened)}. What was entered stays in the record; what is right stands beside it.</p>
      <CorrectForm key={event.id} event={event} description={described.data} correct={correct.data} done={() => go(props.back)} />
    </div>
  );
}

