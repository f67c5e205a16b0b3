/// The paper: what is seen on it, how it is laid out, and the words of a refusal below it.

import { useMemo, useRef, useState } from "preact/hooks";
import type { JSX } from "preact";
import type { JsonObject } from "../api/types";
import type { RecordDraft } from "../form/draft";
import { focusPath, sentence } from "../form/form";
import { useNarrow } from "../kit/narrow";
import { unitWords } from "../look/digits";
import { drawnOf, type Drawn } from "./drawn";
import type { Told } from "./engine";
import { drawnBounds, fourViews, oneView, stillFits, type Room } from "./frame";
import type { Moving } from "./handles";
import { gapsOf, ghostsOf, shapeOf, type Shape } from "./model";
import { SheetDrawing } from "./sheet_drawing";
import { add, times, vec, type Bounds, type Vec } from "./space";
import { homeTurn, turnWords, viewWords, type Turn, type ViewName } from "./views";
import type { Held, Seen } from "./view_drawing";
import { useWidth } from "./width";

const k_wide: Room = { left: 62, right: 82, above: 74, below: 60 };
const k_phone: Room = { left: 62, right: 66, above: 70, below: 64 };
/// On paper nothing has to be taken hold of.
const k_print: Room = { left: 40, right: 62, above: 44, below: 50 };
const k_dims_wide = { below: 30, right: 40 };
const k_dims_phone = { below: 24, right: 28 };
/// Of many problems at once the first; the fields show them all.
const k_told = 3;

export function useSeen(input: JsonObject, told: Told, held: Held | undefined): Seen {
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

export function Sheet(props: { seen: Seen; told: Told; moving: Moving; before: RecordDraft | undefined; putBack: () => void; empty: boolean; lacking: string[] }): JSX.Element {
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
