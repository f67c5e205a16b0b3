/// The hose sheet: the ends are entered or moved by the outlines of their fittings, the hose
/// follows at once, and what it means stands beside. Loaded only when it is opened.

import { useEffect, useLayoutEffect, useMemo, useRef, useState } from "preact/hooks";
import type { JSX } from "preact";
import { refresh } from "../api/changes";
import type { CalcAnswer, Description, JsonObject, Problem } from "../api/types";
import type { ChangeLine } from "../api/views";
import { composeNumber, composeRecord, stillNeeded, untouched, type NumberDraft, type RecordDraft } from "../form/draft";
import { focusPath, sentence } from "../form/form";
import { useNarrow } from "../kit/narrow";
import { useStore } from "../kit/store";
import { Answer, Cautions, Sources } from "../look/answer";
import { unitWords } from "../look/digits";
import { Printed, Worded } from "../look/figure";
import { CutFor, KeepWithChange } from "../pages/cut";
import { hoseNote } from "../pages/cut_note";
import { DescribedForm, useTouched } from "../pages/described_form";
import { useDraft } from "../pages/draft_state";
import { arranged, fieldAt, k_first, k_groups } from "./arrange";
import { Dial } from "./dial";
import { drawnOf, mmOf, type Drawn } from "./drawn";
import { EndsTable } from "./ends_table";
import { Engine, type Told } from "./engine";
import { drawnBounds, fourViews, oneView, stillFits, type Room } from "./frame";
import type { Moving } from "./handles";
import { readDraft, writeLength } from "./lengths";
import { figureText, gapsOf, ghostsOf, shapeOf, type Shape } from "./model";
import { SheetDrawing } from "./sheet_drawing";
import { add, times, vec, type Bounds, type Vec } from "./space";
import { takeAlong, type FileKind } from "./take_along";
import { homeTurn, turnWords, viewWords, type Turn, type ViewName } from "./views";
import type { Held, Seen } from "./view_drawing";
import { WindowStripe } from "./window_stripe";
import { useWidth } from "./width";

const k_form_pause_ms = 200;
const k_fitting_ms = 40;
const k_one_move_ms = 1500;
/// Of many problems at once the first; the fields show them all.
const k_told = 3;
const k_wide: Room = { left: 62, right: 82, above: 74, below: 60 };
const k_phone: Room = { left: 62, right: 66, above: 70, below: 64 };
/// On paper nothing has to be taken hold of.
const k_print: Room = { left: 40, right: 62, above: 44, below: 50 };
const k_dims_wide = { below: 30, right: 40 };
const k_dims_phone = { below: 24, right: 28 };

export function HosePage(props: { description: Description; change: ChangeLine | undefined; back: string | undefined }): JSX.Element {
  const { description, change, back } = props;
  const all = description.input.fields;
  const state = useDraft(`wm.draft.calc.${description.name}${change ? `.change=${change.id}` : ""}`, all, change ? { title: change.title } : {});
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
        {change && change.state === "planned" && told.settled && told.sheet ? (
          <KeepWithChange change={change} note={hoseNote(input, told.sheet)} title="Hose sheet" back={back ?? "#/work"} />
        ) : null}
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

function useSeen(input: JsonObject, told: Told, held: Held | undefined): Seen {
  const key = JSON.stringify(input);
  const drawn = useMemo(() => drawnOf(input), [key]);
  const shape = useMemo(() => (told.shape ? shapeOf(told.shape) : undefined), [told.shape]);
  const gaps = useMemo(() => (shape && told.settled ? gapsOf(told.sheet, shape, drawn) : []), [shape, told.settled, drawn]);
  const ghosts = useMemo(() => (told.settled ? ghostsOf(told.sheet) : []), [told.settled, told.sheet]);
  const stale = shape !== undefined && (told.problems.length > 0 || told.trouble !== undefined);
  const od = input["outside_diameter"];
  const typed = typeof od === "string" ? /[a-zA-Z]+\s*$/.exec(od)?.[0].trim() : undefined;
  return { drawn, shape, gaps, ghosts, stale, held, unit: shape?.unit ?? typed ?? "in" };
}

function allPoints(drawn: Drawn, shape: Shape | undefined): Vec[] {
  const out: Vec[] = [...(shape?.points ?? [])];
  for (const end of [drawn.near, drawn.far]) if (end) out.push(end.seat, end.mouth, ...(end.corner ? [end.corner] : []));
  for (const s of drawn.solids) {
    if (s.is === "ball") out.push(add(s.centre, vec(s.radius, s.radius, s.radius)), add(s.centre, vec(-s.radius, -s.radius, -s.radius)));
    if (s.is === "box") out.push(add(s.centre, s.half), add(s.centre, times(s.half, -1)));
    if (s.is === "tube") out.push(s.from, s.to);
  }
  for (const c of drawn.clamps) out.push(c.place);
  return out;
}

/// The paper stays while something moves on it, and is laid out anew at rest.
function useBounds(seen: Seen, told: Told): Bounds {
  const kept = useRef<Bounds | undefined>(undefined);
  const now = drawnBounds(allPoints(seen.drawn, seen.shape));
  const rest = told.settled || told.problems.length > 0 || told.trouble !== undefined;
  if (!kept.current || (!seen.held && rest && !stillFits(kept.current, now))) kept.current = now;
  if (!told.sheet && !seen.held) kept.current = now;
  return kept.current;
}

const viewNames: ViewName[] = ["side", "front", "top", "turned"];

function Sheet(props: { seen: Seen; told: Told; moving: Moving; before: RecordDraft | undefined; putBack: () => void; empty: boolean; lacking: string[] }): JSX.Element {
  const { seen, told, moving } = props;
  const place = useRef<HTMLDivElement>(null);
  const w = useWidth(place, 720);
  const narrow = useNarrow();
  const [view, setView] = useState<ViewName>("side");
  const [turn, setTurn] = useState<Turn>(homeTurn);
  const bounds = useBounds(seen, told);
  const alone = narrow || w < 560;
  const laid = alone ? oneView(w, Math.min(w, 420), view, bounds, k_phone, turn) : fourViews(w, Math.min(760, Math.max(430, window.innerHeight - 210)), bounds, k_wide, turn);
  const lines = (told.sheet?.answer["lines"] ?? []) as string[];
  const words = `Drawing of the hose. ${seen.stale ? "Not up to date. " : ""}${lines[0] ?? ""}`;
  const printed = useMemo(() => fourViews(860, 450, bounds, k_print, turn), [bounds, turn]);
  const settledSeen = useRef(seen);
  if (told.settled || !told.sheet) settledSeen.current = { ...seen, held: undefined };
  const paper = useMemo(() => (
    <SheetDrawing laid={printed} seen={settledSeen.current} turn={turn} words={words} class="print-only" dimensionsAt={k_dims_wide} />
  ), [printed, settledSeen.current.shape, settledSeen.current.drawn, told.settled, words]);
  return (
    <div class="hose-drawing">
      {alone ? (
        <fieldset class="view-choice screen-only">
          <legend class="visually-hidden">View</legend>
          <div class="options">
            {viewNames.map((name) => (
              <label key={name} class="option"><input type="radio" name="hose-view" value={name} checked={view === name} onChange={() => setView(name)} /><span>{viewWords[name].name}</span></label>
            ))}
          </div>
        </fieldset>
      ) : null}
      <div ref={place} class="hose-paper screen-only">
        <SheetDrawing laid={laid} seen={seen} turn={turn} setTurn={setTurn} moving={moving} words={words} dimensionsAt={alone ? k_dims_phone : k_dims_wide} />
        {seen.stale ? <p class="stale-tag">Not up to date</p> : null}
      </div>
      {paper}
      <Refusal told={told} empty={props.empty} lacking={props.lacking.length > 0} />
      <div class="hose-tools screen-only">
        <p class="hose-hint">{props.empty ? "Fill in the example, or both ends: the hose is then drawn here." : seen.stale ? "" : seen.shape ? (view === "turned" && alone ? `${turnWords(turn)}.` : `Drag a fitting, or the circle behind it to turn it.${alone ? "" : " Arrow keys move what has the focus, Shift in larger steps."}${seen.drawn.undrawn.length > 0 ? ` Not drawn here: ${seen.drawn.undrawn.join(", ")}.` : ""}`) : props.lacking.length > 0 ? `Still needed: ${props.lacking.join(", ")}.` : ""}</p>
        {props.before ? <button type="button" class="quiet" onClick={props.putBack}>Put it back</button> : null}
        {turn !== homeTurn && (!alone || view === "turned") ? <button type="button" class="quiet" onClick={() => setTurn(homeTurn)}>Turned view as it was</button> : null}
      </div>
    </div>
  );
}

function Refusal(props: { told: Told; empty: boolean; lacking: boolean }): JSX.Element {
  const { told } = props;
  const real = told.problems.filter((p) => p.kind !== "missing");
  const missing = props.lacking ? [] : told.problems.filter((p) => p.kind === "missing");
  return (
    <div role="status" class="hose-refusal">
      {told.trouble === "no-connection" ? <p class="not-judged"><strong>Not judged: no connection.</strong> What you typed is kept here{told.shape ? "; the hose is drawn as it was" : ""}.</p> : null}
      {told.trouble === "fault" ? <p class="not-judged"><strong>Not judged.</strong> {told.fault}</p> : null}
      {!props.empty && real.length > 0 ? (
        <div class="problem">
          {real.slice(0, k_told).map((p) => <p key={p.path + p.what}><strong>{sentence(unitWords(p.what))}</strong>{p.expected ? ` Expected: ${unitWords(p.expected)}.` : ""}{p.do_next ? ` ${sentence(p.do_next)}` : ""}</p>)}
        </div>
      ) : null}
      {!props.empty && missing.length > 0 ? (
        <div class="problem">
          {missing.slice(0, k_told).map((p) => <p key={p.path + p.what}><button type="button" class="link" onClick={() => focusPath(p.path)}>{sentence(unitWords(p.what))}</button>{p.expected ? ` Expected: ${unitWords(p.expected)}.` : ""}</p>)}
        </div>
      ) : null}
    </div>
  );
}

function Length(props: { told: Told; description: Description; draft: RecordDraft; newest: () => number | undefined; choose: (mm: number, at: number) => void; rest: () => void }): JSX.Element | null {
  const { told, description, draft } = props;
  const length = told.sheet?.answer["length"] as JsonObject | undefined;
  if (!length) return null;
  const out = description.output?.fields;
  const label = fieldAt(description.input.fields, "overall")?.label ?? fieldAt(out, "shape/overall")?.label ?? "";
  const typed = draft["overall"] as NumberDraft | undefined;
  const open = !typed || typed.n.trim() === "";
  const overall = told.shape?.["overall"];
  const chosen = (open ? undefined : readDraft(typed)) ?? mmOf(overall);
  const shortest = mmOf(length["shortest"]);
  const longest = mmOf(length["longest"]);
  const best = mmOf(length["best"]);
  const binding = String(length["binding"] ?? "");
  const overallText = !open && typed && readDraft(typed) !== undefined ? unitWords(composeNumber(typed) ?? "") : told.settled ? figureText(length["to_order"]) || figureText(overall) : figureText(overall);
  const unit = writeLength(0, String((overall as { unit?: string } | undefined)?.unit ?? "in")).u;
  return (
    <div class="hose-length">
      <h2>{label}</h2>
      {shortest !== undefined && longest !== undefined && best !== undefined && chosen !== undefined ? (
        <WindowStripe
          window={{ shortest, best, longest, chosen }} open={open} unit={unit} working={!told.settled && told.problems.length === 0 && told.trouble === undefined} label={label}
          words={{ shortest: figureText(length["shortest"]), best: figureText(length["best"]), longest: figureText(length["longest"]), chosen: overallText }}
          newest={props.newest} choose={props.choose} rest={props.rest}
        />
      ) : <p class="not-judged"><strong>No length is permitted here.</strong> Widest bend: <Printed text={figureText(length["best_radius"])} /> at <Printed text={figureText(length["best"])} />.</p>}
      {binding === "" ? null : <p class="binding"><Worded text={sentence(binding)} /></p>}
    </div>
  );
}

const k_shown = ["shape/overall", "shape/flexible", "shape/tightest_radius", "shape/tightest_inside", "shape/tightest_at", "shape/least_radius", "shape/in_hand", "length/straight_at_ends", "length/probability"];

function Says(props: { told: Told; description: Description; empty: boolean }): JSX.Element {
  const { told, description } = props;
  const { sheet } = told;
  if (!sheet) return <p class="not-judged">{props.empty ? "The verdict appears here once both ends are known." : told.problems.length > 0 || told.trouble !== undefined ? "No answer yet." : "Working it out."}</p>;
  const lines = (sheet.answer["lines"] ?? []) as string[];
  const shape = (told.current ? told.shape : undefined) ?? (sheet.answer["shape"] as JsonObject);
  const length = sheet.answer["length"] as JsonObject;
  const fields = k_shown.flatMap((path) => fieldAt(description.output?.fields, path) ?? []);
  const figures: JsonObject = {};
  for (const path of k_shown) {
    const [part, key] = path.split("/") as ["shape" | "length", string];
    const value = (part === "shape" ? shape : length)[key];
    if (value !== undefined && value !== null) figures[key] = value;
  }
  const clocking = shape["clocking"] as { value?: number } | null | undefined;
  const tolerance = shape["clocking_tolerance"] as { value?: number } | null | undefined;
  const others = (shape["other_shapes"] ?? []) as JsonObject[];
  // It stands beside the stripe already.
  const binding = sentence(String(length["binding"] ?? ""));
  const stale = told.problems.length > 0 || told.trouble !== undefined;
  const late = !told.settled && !stale;
  return (
    <div class={`answer-body${late ? " working" : ""}`}>
      <div role="status" class="visually-hidden">{told.settled ? lines[0] ?? "" : ""}</div>
      {late ? <p class="visually-hidden">Working it out.</p> : null}
      {stale ? <p class="not-judged"><strong>Not up to date:</strong> this is about the hose as it was.</p> : null}
      <ul class="plain hose-lines" id="hose-lines">{lines.map((l) => <li key={l} class={l === binding ? "print-only" : undefined}><Worded text={l} /></li>)}</ul>
      {clocking?.value !== undefined ? <Dial degrees={clocking.value} tolerance={tolerance?.value ?? 0} text={`${Math.round(clocking.value)}° ± ${Math.round(tolerance?.value ?? 0)}°`} words={String(shape["clocking_read"] ?? "")} /> : null}
      {others.length > 0 ? (
        <section class="answer-part">
          <h3>{fieldAt(description.output?.fields, "shape/other_shapes")?.label ?? ""}</h3>
          <Answer fields={[fieldAt(description.output?.fields, "shape/other_shapes")!]} answer={{ other_shapes: others }} />
        </section>
      ) : null}
      <Answer fields={fields} answer={figures} />
    </div>
  );
}

function TakeAlong(props: { input: JsonObject; ready: boolean; printable: boolean }): JSX.Element {
  const [said, setSaid] = useState("");
  const [problems, setProblems] = useState<Problem[]>([]);
  const [busy, setBusy] = useState(false);
  const take = async (kind: FileKind): Promise<void> => {
    if (busy) return;
    setBusy(true);
    setSaid("Making it");
    const taken = await takeAlong(props.input, kind);
    setBusy(false);
    setProblems(taken.is === "problems" ? taken.problems : []);
    setSaid(taken.is === "saved" ? `Saved as ${taken.name}.` : taken.is === "not-made" ? taken.what : "Not made:");
  };
  return (
    <div class="take-along screen-only">
      <h3>The sheet on paper and as a file</h3>
      <div class="form-acts">
        <button type="button" class="main wide-only" disabled={!props.printable} onClick={() => window.print()}>Print</button>
        {(["pdf", "svg", "csv", "dxf"] as const).map((kind) => (
          <button key={kind} type="button" class="quiet-button" disabled={!props.ready || busy} onClick={() => void take(kind)}>{kind.toUpperCase()}</button>
        ))}
      </div>
      <p role="status" class="help">{said}{problems.map((p) => ` ${sentence(p.what)}`).join("")}</p>
    </div>
  );
}

function Working(props: { sheet: CalcAnswer | undefined }): JSX.Element | null {
  const { sheet } = props;
  if (!sheet) return null;
  const part = (name: string): JsonObject => (sheet.answer[name] ?? {}) as JsonObject;
  const of = (key: string): string[] => [...new Set([...((part("shape")[key] ?? []) as string[]), ...((part("length")[key] ?? []) as string[])])];
  return (
    <>
      <details class="more screen-only">
        <summary>The sum, step by step</summary>
        <ol class="lines">{of("working").map((l) => <li key={l}>{unitWords(l)}</li>)}</ol>
      </details>
      <ul class="plain hose-notes">{of("notes").map((n) => <li key={n}>{sentence(n)}</li>)}</ul>
    </>
  );
}

function SignBlock(props: { input: JsonObject; description: Description }): JSX.Element {
  const { input, description } = props;
  const row = (key: string): JSX.Element => (
    <div key={key}><span>{fieldAt(description.input.fields, key)?.label ?? key}</span><strong>{unitWords(String(input[key] ?? ""))}</strong></div>
  );
  return (
    <div class="sign-block print-only">
      {["family", "size", "outside_diameter", "least_radius", "radius_source", "working_pressure", "proof_pressure", "proof_source", "drawn_by", "drawn_on"].map(row)}
      <div class="sign-line"><span>Checked by, date</span><strong /></div>
      <div class="sign-line"><span>Signature</span><strong /></div>
    </div>
  );
}
