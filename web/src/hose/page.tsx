/// The hose sheet: the ends are entered or moved by the outlines of their fittings, the hose
/// follows at once, and what it means stands beside. Loaded only when it is opened.

import { useEffect, useLayoutEffect, useMemo, useRef, useState } from "preact/hooks";
import type { JSX } from "preact";
import { refresh } from "../api/changes";
import type { Description, JsonObject } from "../api/types";
import type { ChangeLine } from "../api/views";
import { composeRecord, stillNeeded, untouched, type NumberDraft, type RecordDraft } from "../form/draft";
import { focusPath } from "../form/form";
import { useStore } from "../kit/store";
import { Cautions, Sources } from "../look/answer";
import type { HoseAnswer } from "../api/views";
import { CutFor } from "../pages/cut";
import { sheetOf } from "../pages/hose_taken";
import { KeepInRecord, keptAddress } from "./keep_hose";
import { DescribedForm, useTouched } from "../pages/described_form";
import { useDraft } from "../pages/draft_state";
import { address } from "../route/route";
import { arranged, fieldAt, k_first, k_groups } from "./arrange";
import { EndsTable } from "./ends_table";
import { Engine, type Told } from "./engine";
import type { Moving } from "./handles";
import { readDraft, writeLength } from "./lengths";
import { Sheet, useSeen } from "./paper";
import { Length, Says, SignBlock, TakeAlong, Working } from "./says";
import type { Held } from "./view_drawing";

const k_form_pause_ms = 200;
const k_fitting_ms = 40;
const k_one_move_ms = 1500;

export function HosePage(props: { description: Description; change: ChangeLine | undefined; kept: HoseAnswer | undefined; back: string | undefined }): JSX.Element {
  const { description, change, kept, back } = props;
  const all = description.input.fields;
  const draftKey = `wm.draft.calc.${description.name}${kept ? `.hose=${kept.hose.id}` : change ? `.change=${change.id}` : ""}`;
  const state = useDraft(draftKey, all, kept ? sheetOf(kept) : change ? { title: change.title } : {});
  const fields = useMemo(() => arranged(all, state.draft), [all, state.draft]);
  const touched = useTouched();
  const [refusals, setRefusals] = useState(0);
  const [held, setHeld] = useState<Held | undefined>(undefined);
  const [before, setBefore] = useState<RecordDraft | undefined>(undefined);
  const engine = useRef<Engine | undefined>(undefined);
  engine.current ??= new Engine();
  const told = useStore(engine.current.told);
  const input = composeRecord(fields, state.draft);
  const key = JSON.stringify(input);
  const tick = useStore(refresh);
  const asked = useRef("");
  const empty = untouched(all, state.draft);
  const lacking = stillNeeded(fields, state.draft);
  const held_ = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);

  useEffect(() => {
    if (asked.current === key) return;
    asked.current = key;
    if (empty) engine.current?.clear();
    else engine.current?.typed(input);
  }, [key]);
  useEffect(() => {
    if (!empty) engine.current?.typed(input);
  }, [tick]);
  useEffect(() => () => engine.current?.end(), []);
  useMeasured(told);

  // The fitting and the hose are drawn together when the answer is there; a slow answer does not
  // hold the fitting back.
  const shown = useRef<RecordDraft | undefined>(undefined);
  const late = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const show = (): void => {
    clearTimeout(late.current);
    late.current = undefined;
    const next = shown.current;
    shown.current = undefined;
    if (next) state.set(next);
  };
  const showNow = useRef(show);
  showNow.current = show;
  useEffect(() => engine.current?.told.watch(() => showNow.current()), []);
  useEffect(() => () => clearTimeout(late.current), []);
  const moveTo = (next: RecordDraft, at: number): void => {
    const moved = composeRecord(arranged(all, next), next);
    asked.current = JSON.stringify(moved);
    shown.current = next;
    late.current ??= setTimeout(() => showNow.current(), k_fitting_ms);
    engine.current?.move(moved, at);
  };
  const lastDone = useRef(-Infinity);
  const newest = (): RecordDraft => shown.current ?? state.draft;
  const moving: Moving = {
    draft: state.draft,
    newest,
    take: (what) => {
      clearTimeout(held_.current);
      setHeld(what);
    },
    move: moveTo,
    done: (was) => {
      show();
      // Keys pressed one after the other are one move.
      const now = performance.now();
      if (now - lastDone.current > k_one_move_ms) setBefore(was);
      lastDone.current = now;
      // After a key the lacquer stays a moment, so that the eye finds what moved.
      clearTimeout(held_.current);
      held_.current = setTimeout(() => setHeld(undefined), 350);
    },
    back: (was) => {
      setHeld(undefined);
      moveTo(was, performance.now());
    },
  };
  const seen = useSeen(input, told, held);
  const problems = told.problems;
  const example = description.example as JsonObject | undefined;
  const words = useRef<HTMLElement>(null);
  const title = typeof state.draft["title"] === "string" ? state.draft["title"] : "";
  const formDraft = useSlowly(state.draft, held !== undefined);
  const formFields = useMemo(() => arranged(all, formDraft), [all, formDraft]);
  // Hundreds of elements that need not follow each step of the pointer.
  const form = useMemo(() => (
    <DescribedForm
      fields={formFields} draft={formDraft} problems={problems} touched={touched} refusals={refusals}
      first={k_first} groups={k_groups}
      set={(next) => {
        state.set(next);
        if (refusals > 0 && problems.length === 0) setRefusals(0);
      }}
      onSubmit={() => {
        if (problems.length > 0) setRefusals((n) => n + 1);
        else if (empty && lacking[0]) focusPath(lacking[0].key);
        else words.current?.focus();
      }}
    >
      <div class="form-acts">
        {example ? <button type="button" onClick={() => { state.show(withForms(example, all)); setRefusals(0); }}>Fill in the example</button> : null}
        <button type="button" class="quiet" disabled={empty} onClick={() => { state.clear(); touched.reset(); setRefusals(0); setBefore(undefined); }}>Clear</button>
        <a class="button" href={address("work", ["bench", "hose-ends"], { ...(change ? { change: change.id } : {}), ...(back ? { back } : {}) })}>Measure the ends</a>
      </div>
      <div class="bottom-bar">
        <button type="button" class="main" disabled={!told.sheet} onClick={() => window.print()}>Print the sheet</button>
      </div>
    </DescribedForm>
  ), [formDraft, formFields, problems, touched.touched, refusals, told.sheet === undefined, empty]);
  const papers = useMemo(() => (
    <>
      <Working sheet={told.sheet} />
      <Cautions cautions={told.sheet?.cautions ?? description.cautions} />
      <Sources sources={told.sheet?.sources ?? description.sources} />
      <p class="version">{description.name}, version {told.sheet?.version ?? description.version ?? 1}</p>
    </>
  ), [told.sheet, description]);
  return (
    <div class={`sheet hose${((told.sheet?.answer["lines"] ?? []) as string[]).length > 6 ? " many" : ""}`}>
      <section class="left">
        <p class="hose-title print-only">{title}</p>
        {change ? <CutFor change={change} /> : null}
        <Sheet seen={seen} told={told} moving={moving} before={before} putBack={() => { if (before) { moveTo(before, performance.now()); setBefore(undefined); } }} empty={empty} lacking={lacking.map((f) => f.label)} />
        <div class="print-only"><EndsTable fields={fields} input={input} /></div>
      </section>
      <section class="right" aria-labelledby="words-heading" ref={words} tabIndex={-1}>
        <Length
          told={told} description={description} draft={state.draft}
          newest={() => readDraft(newest()["overall"] as NumberDraft)}
          choose={(mm, at) => {
            touched.touch("overall");
            const draft = newest();
            const now = draft["overall"] as NumberDraft | undefined;
            const od = draft["outside_diameter"] as NumberDraft | undefined;
            const unit = now && now.n.trim() !== "" ? now.u : od?.u ?? seen.unit;
            moveTo({ ...draft, overall: writeLength(mm, unit) }, at);
          }}
          rest={() => moveTo({ ...newest(), overall: { ...(newest()["overall"] as NumberDraft), n: "" } }, performance.now())}
        />
        <h2 id="words-heading">What it says</h2>
        <Says told={told} description={description} empty={empty} />
        <TakeAlong input={input} ready={told.settled && !empty} printable={told.sheet !== undefined} />
        {empty ? null : (
          <KeepInRecord
            act="draw-hose" title={`Hose sheet: ${title}`} words={kept ? "Keep it as drawn now" : "Keep this hose"} draft={draftKey}
            input={{ ...(kept ? { id: kept.hose.id, ...(kept.hose.position ? { position: kept.hose.position } : {}) } : {}), ...(change && change.state === "planned" ? { change: change.id } : {}), sheet: input }}
            onward={keptAddress} ready={told.settled && told.sheet !== undefined}
          />
        )}
        <h2 class="screen-only">The figures it is drawn from</h2>
        {form}
        {papers}
        <SignBlock input={input} description={description} />
      </section>
    </div>
  );
}

/// The example says nothing of a form: then it is the one that the description names.
function withForms(example: JsonObject, fields: Description["input"]["fields"]): JsonObject {
  const out = { ...example };
  for (const key of ["near_end", "far_end"]) {
    const form = fieldAt(fields, `${key}/form`)?.example;
    if (form !== undefined) out[key] = { form, ...(out[key] as JsonObject) };
  }
  return out;
}

/// The newest value, but while `busy` no more often than a few times a second.
function useSlowly<T>(value: T, busy: boolean): T {
  const [shown, setShown] = useState(value);
  const newest = useRef(value);
  newest.current = value;
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  useEffect(() => {
    if (!busy) {
      clearTimeout(timer.current);
      timer.current = undefined;
      return;
    }
    timer.current ??= setTimeout(() => {
      timer.current = undefined;
      setShown(newest.current);
    }, k_form_pause_ms);
  }, [value, busy]);
  useEffect(() => () => clearTimeout(timer.current), []);
  useLayoutEffect(() => {
    if (!busy) setShown(value);
  }, [value, busy]);
  return busy ? shown : value;
}

/// From the pointer to the frame after the picture changed: the browser's own list of measures.
function useMeasured(told: Told): void {
  useLayoutEffect(() => {
    const { moved } = told;
    if (moved === undefined) return;
    requestAnimationFrame(() => {
      performance.measure("hose moved", { start: moved });
      if (performance.getEntriesByName("hose moved").length > 600) performance.clearMeasures("hose moved");
    });
  }, [told.shape]);
}
