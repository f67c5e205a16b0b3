/// Mass and balance at a stage: filled in from the last revision and from the changes of the
/// stage where the record knows enough. What it does not know stays empty and is named.

import { useEffect, useRef, useState } from "preact/hooks";
import type { JSX } from "preact";
import { latest } from "../api/changes";
import { announce } from "../api/outbox";
import { ask } from "../api/client";
import { usePlans } from "../api/plans";
import { useDescription, useLive, type Seen } from "../api/use";
import type { CalcAnswer, Description, JsonObject, ViewAnswer } from "../api/types";
import type { StageLine, WorkAnswer } from "../api/views";
import { chosenAircraft, useAircraftView } from "../aircraft";
import { composeRecord, draftFrom, plain, type RecordDraft } from "../form/draft";
import { useStore } from "../kit/store";
import { today } from "../kit/time";
import { Cautions } from "../look/answer";
import { unitWords } from "../look/digits";
import { go } from "../route/route";
import { ActForm, type ActState } from "./act_form";
import { balanceInput, stageMasses, typedOf, type ChangeMasses, type SheetPart } from "./mass_known";
import { Trouble } from "./trouble";

interface Sheet { mass?: JsonObject; parts?: SheetPart[] }
interface Last { mass: string; arm: string; document: string }

export function MassPage(props: { query: Record<string, string> }): JSX.Element {
  const aircraft = useStore(chosenAircraft);
  const described = useDescription("act", "revise-mass");
  const sheet = useAircraftView<Sheet>("sheet");
  const work = useAircraftView<WorkAnswer>("work");
  const stage = work.data?.answer.stages.find((s) => s.id === props.query["stage"]);
  const changes = work.data?.answer.changes.filter((c) => stage?.changes.includes(c.id)) ?? [];
  const plans = usePlans(aircraft, changes.map((c) => c.id));
  // What was kept from an earlier look is not good enough to fill a form from: it would be counted
  // twice. Once filled in, the form stays as it is.
  const newest = useStore(latest);
  const settled = useRef(false);
  const fresh = (seen: Seen<ViewAnswer<unknown>>): boolean => seen.data !== undefined && (seen.stale || seen.data.sequence >= newest);
  if (fresh(sheet) && fresh(work) && plans) settled.current = true;
  if (!described.data || !settled.current || !sheet.data || !plans) {
    return <div class="one-column"><h1>Revise mass and balance</h1><Trouble failed={described.failed ?? sheet.failed ?? work.failed} /></div>;
  }
  // Revised once, the changes are in the last figures: counting them again would be wrong.
  const masses = stage?.mass ? [] : stageMasses(changes, plans, sheet.data.answer.parts ?? []);
  return <Filled key={`${aircraft} ${stage?.id ?? ""}`} description={described.data} mass={sheet.data.answer.mass} masses={masses} aircraft={aircraft} stage={stage} query={props.query} />;
}

/// Asked once, before the form stands: what is typed afterwards is never written over.
function Filled(props: {
  description: Description; mass: JsonObject | undefined; masses: ChangeMasses[]; aircraft: string;
  stage: StageLine | undefined; query: Record<string, string>;
}): JSX.Element {
  const { mass, masses } = props;
  const last: Last | undefined = mass && typedOf(mass["empty_mass"]) !== "" && typedOf(mass["empty_arm"]) !== ""
    ? { mass: typedOf(mass["empty_mass"]), arm: typedOf(mass["empty_arm"]), document: typedOf(mass["document"]) }
    : undefined;
  const [start, setStart] = useState<JsonObject | undefined>(undefined);
  useEffect(() => {
    void (async () => {
      const items = masses.flatMap((m) => m.items);
      const out: JsonObject = {};
      for (const key of ["forward_limit", "aft_limit", "greatest_mass"]) {
        const value = mass ? typedOf(mass[key]) : "";
        if (value !== "") out[key] = value;
      }
      if (items.length > 0) out["items"] = items.map((i) => ({ ...i }));
      if (last && props.stage && !props.stage.mass && masses.every((m) => m.missing.length === 0)) {
        const sum = await ask<CalcAnswer>("/api/calc/mass-balance", { body: balanceInput(last, out["items"]) });
        if (sum.is === "answer") Object.assign(out, figuresOf(sum.data), { document: documentOf(last) });
      }
      setStart(out);
    })();
  }, []);
  return (
    <div class="sheet">
      <section class="left">
        <p class="trail"><a href={backOf(props.query) ?? "#/work"}>{backOf(props.query) ? "Back" : "Work"}</a></p>
        <h1>Revise mass and balance</h1>
        {props.stage ? <p class="lead">{props.stage.title}</p> : null}
        <Known last={last} masses={masses} revised={Boolean(props.stage?.mass)} />
        {start === undefined ? <p class="help">Fetching.</p> : <Form {...props} start={start} last={last} />}
      </section>
      <section class="right" aria-label="What to mind"><Cautions cautions={props.description.cautions} /></section>
    </div>
  );
}

function backOf(query: Record<string, string>): string | undefined {
  return query["back"]?.startsWith("#/") ? query["back"] : undefined;
}

function figuresOf(sum: CalcAnswer): JsonObject {
  return { empty_mass: textOf(sum, "empty_mass"), empty_arm: textOf(sum, "empty_arm") };
}
function textOf(sum: CalcAnswer, key: string): string {
  const figure = sum.answer[key] as { text?: string } | undefined;
  return figure?.text ?? typedOf(sum.answer[key]);
}
function documentOf(last: Last): string {
  return `calculation of ${today()} from: ${last.document || `${last.mass} at ${last.arm}`}`;
}

function Known(props: { last: Last | undefined; masses: ChangeMasses[]; revised: boolean }): JSX.Element {
  const { last, masses } = props;
  const lines = masses.filter((m) => m.items.length + m.known.length + m.missing.length > 0);
  return (
    <div class="known">
      <p>
        {last
          ? <><strong>Last revision:</strong> {unitWords(`${last.mass} at ${last.arm}`)}{last.document ? <span class="help"> {last.document}</span> : null}</>
          : <strong>No earlier mass and balance is on record: type the figures of the weighing report.</strong>}
      </p>
      {props.revised ? <p>This stage was revised before: its changes are counted in. Add only what is new.</p> : null}
      {lines.length === 0 ? null : (
        <ul class="plain rows">
          {lines.map((m) => (
            <li key={m.title}>
              <strong>{m.title}</strong>
              {m.items.map((i) => <span key={i.what} class="help line">{unitWords(`${i.added ? "In" : "Out"}: ${i.what}, ${i.mass} at ${i.arm}`)}</span>)}
              {m.known.map((k) => <span key={k} class="help line">{unitWords(k)}</span>)}
              {m.missing.length > 0 ? <span class="line">Not known: {m.missing.join(", ")}. Add it as an item.</span> : null}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

function Form(props: { description: Description; start: JsonObject; last: Last | undefined; aircraft: string; stage: { id: string } | undefined; query: Record<string, string> }): JSX.Element {
  const { description, last } = props;
  const back = backOf(props.query);
  const fixed: JsonObject = { aircraft: props.aircraft, ...(props.stage ? { stage: props.stage.id } : {}) };
  const [done, setDone] = useState<ActState | undefined>(undefined);
  const take = (next: ActState): void => {
    setDone(next);
    if (next.is === "recorded") announce(String(next.data.answer?.["words"] ?? "Recorded."));
    if (back && (next.is === "recorded" || next.is === "waiting")) go(back);
  };
  return (
    <>
      {done?.is === "recorded" && !back ? <p class="told" role="status"><strong>Recorded.</strong></p> : null}
      {done?.is === "fault" ? <p class="trouble" role="alert">{done.what} What you typed is kept; try again.</p> : null}
      <ActForm
        description={description} fixed={fixed} start={props.start} scope={`${props.aircraft}.${props.stage?.id ?? ""}`} onState={take}
        inside={last ? (draft, set) => <Sum description={description} last={last} draft={draft} set={set} /> : undefined}
      />
    </>
  );
}

/// The sum of the last revision and of the items as they stand in the form, for taking over.
function Sum(props: { description: Description; last: Last; draft: RecordDraft; set: (next: RecordDraft) => void }): JSX.Element | null {
  const { last, draft, set } = props;
  const { fields } = props.description.input;
  const composed = composeRecord(fields, draft);
  const input = balanceInput(last, composed["items"]);
  const all = Array.isArray(composed["items"]) ? composed["items"].length : 0;
  const counted = (input["changes"] as unknown[]).length;
  const live = useLive("calc", "mass-balance", input);
  const sum = live.is === "answer" ? live.data : undefined;
  if (live.is === "problems") return <p class="not-judged">The items can't be added up yet: {live.problems[0]?.what}.</p>;
  if (!sum) return live.is === "no-connection" ? <p class="not-judged"><strong>Not added up: no connection.</strong></p> : null;
  const figures = figuresOf(sum);
  const same = composed["empty_mass"] === figures["empty_mass"] && composed["empty_arm"] === figures["empty_arm"];
  const takeOver = (): void => {
    const next = { ...draft };
    for (const raw of fields) if (figures[raw.key] !== undefined) next[raw.key] = draftFrom(plain(raw), figures[raw.key]);
    if (String(next["document"] ?? "").trim() === "") next["document"] = documentOf(last);
    set(next);
  };
  return (
    <div class="sum">
      <p role="status">
        Last revision and {counted === 1 ? "1 item" : `${counted} items`}: <strong>{unitWords(`${figures["empty_mass"]} at ${figures["empty_arm"]}`)}</strong>
        {all > counted ? ` (${all - counted} without mass or arm not counted)` : ""}
      </p>
      {same ? <p class="help">These figures stand in the form.</p> : <p class="form-acts"><button type="button" onClick={takeOver}>Put these figures in</button></p>}
    </div>
  );
}
