/// What can be taken hold of: the outlines of the fittings, the ends of their axes, and the view
/// that turns. With a pointer, or with the arrow keys once one has the focus.

import { useRef } from "preact/hooks";
import type { JSX, SVGAttributes, TargetedKeyboardEvent, TargetedPointerEvent } from "preact";
import type { RecordDraft } from "../form/draft";
import { fitting, line } from "./outline";
import { moveSeat, seatWords, turnEnd, unitOfSeat, wayWords, type Drawn, type End, type EndKey } from "./drawn";
import { dragStep, keyStep, toStep } from "./lengths";
import { dot, size, times, vec, type Vec } from "./space";
import { angleOnPaper, fromPaper, inPaper, onPaper, turnBy, turnWords, viewWords, type Placed, type Spot2, type Turn } from "./views";
import { k_turn_handle, type Held } from "./view_drawing";
import type { Cell } from "./frame";

export interface Moving {
  /// What is drawn, and what was last asked for: a step ahead of it while an answer is awaited.
  draft: RecordDraft;
  newest: () => RecordDraft;
  take: (held: Held) => void;
  move: (next: RecordDraft, at: number) => void;
  /// @param before  What stood in the fields when it began.
  done: (before: RecordDraft) => void;
  back: (before: RecordDraft) => void;
}

const names: Record<EndKey, string> = { near_end: "Near fitting", far_end: "Far fitting" };
const k_degree = Math.PI / 180;
const k_least_share = 0.35;
/// Left and up: counter-clockwise on the paper.
const k_turn_keys: { [key: string]: number } = { ArrowLeft: 1, ArrowUp: 1, ArrowRight: -1, ArrowDown: -1 };

/// Browsers heed "touch-action" on the drawing as a whole only, and that must let the page scroll:
/// a finger on something that can be taken hold of is kept from scrolling here.
function holdPage(e: TouchEvent): void {
  if (e.cancelable) e.preventDefault();
}

/// Whole steps in each of the aircraft's axes that the view moves.
export function inSteps(by: Vec, step: number): Vec {
  return vec(toStep(by.x, step), toStep(by.y, step), toStep(by.z, step));
}

export function Handles(props: { placed: Placed; drawn: Drawn; moving: Moving; ratio: () => number }): JSX.Element {
  const { placed, drawn } = props;
  return (
    <g class="handles">
      {(["near_end", "far_end"] as const).map((key) => {
        const end = key === "near_end" ? drawn.near : drawn.far;
        return end ? <EndHandles key={key} {...props} name={key} end={end} radius={Math.max(drawn.radius, 2)} placed={placed} /> : null;
      })}
    </g>
  );
}

interface Grip {
  draft: RecordDraft;
  x: number;
  y: number;
  /// Where the drawing is on the screen, and how large: asked once, not at each move.
  svg: DOMRect;
  ratio: number;
  pivot: Spot2;
  start: number;
  moved: boolean;
}

function EndHandles(props: { placed: Placed; name: EndKey; end: End; radius: number; moving: Moving; ratio: () => number }): JSX.Element {
  const { placed, name, end, moving } = props;
  const { view } = placed;
  const grip = useRef<Grip | undefined>(undefined);
  const spine = fitting(placed, end, props.radius).spine;
  const seat = onPaper(placed, end.seat);
  const flat = inPaper(view, end.port ?? end.way);
  const turns = flat.share >= k_least_share;
  const knob: Spot2 = { x: seat.x - flat.x * k_turn_handle, y: seat.y - flat.y * k_turn_handle };
  const where = `${viewWords[view.name].name.toLowerCase()} view`;

  const begin = (what: Held["what"]) => (e: TargetedPointerEvent<SVGGElement>): void => {
    if (e.button !== 0) return;
    e.preventDefault();
    e.currentTarget.setPointerCapture(e.pointerId);
    e.currentTarget.focus({ preventScroll: true });
    const ratio = props.ratio();
    const svg = e.currentTarget.ownerSVGElement!.getBoundingClientRect();
    const at = { x: (e.clientX - svg.left) / ratio, y: (e.clientY - svg.top) / ratio };
    grip.current = { draft: moving.draft, x: e.clientX, y: e.clientY, svg, ratio, pivot: seat, start: angleOnPaper(seat, at), moved: false };
    moving.take({ end: name, what });
  };
  const drag = (what: Held["what"]) => (e: TargetedPointerEvent<SVGGElement>): void => {
    const g = grip.current;
    if (!g) return;
    const { ratio, svg } = g;
    if (what === "seat") {
      const by = fromPaper(view, placed.scale, (e.clientX - g.x) / ratio, (e.clientY - g.y) / ratio);
      const steps = inSteps(by, dragStep(unitOfSeat(g.draft, name)));
      if (size(steps) === 0 && !g.moved) return;
      g.moved = true;
      moving.move(moveSeat(g.draft, name, steps), e.timeStamp);
    } else {
      const now = angleOnPaper(g.pivot, { x: (e.clientX - svg.left) / ratio, y: (e.clientY - svg.top) / ratio });
      const degrees = Math.round((now - g.start) / k_degree);
      if (degrees === 0 && !g.moved) return;
      g.moved = true;
      moving.move(turnEnd(g.draft, name, view.towards, degrees * k_degree), e.timeStamp);
    }
  };
  const end_ = (): void => {
    const g = grip.current;
    grip.current = undefined;
    if (g) moving.done(g.draft);
  };
  const cancel = (e: KeyboardEvent): boolean => {
    const g = grip.current;
    if (e.key !== "Escape" || !g) return false;
    grip.current = undefined;
    moving.back(g.draft);
    return true;
  };
  const moveKey = (e: TargetedKeyboardEvent<SVGGElement>): void => {
    if (cancel(e)) return;
    const ways: { [key: string]: Vec } = { ArrowLeft: times(view.right, -1), ArrowRight: view.right, ArrowUp: view.up, ArrowDown: times(view.up, -1) };
    const way = ways[e.key];
    if (!way) return;
    e.preventDefault();
    const step = keyStep(unitOfSeat(moving.draft, name), e.shiftKey);
    moving.take({ end: name, what: "seat" });
    const before = moving.newest();
    moving.move(moveSeat(before, name, times(way, step)), e.timeStamp);
    moving.done(before);
  };
  const turnKey = (e: TargetedKeyboardEvent<SVGGElement>): void => {
    if (cancel(e)) return;
    const sign = k_turn_keys[e.key];
    if (sign === undefined) return;
    e.preventDefault();
    moving.take({ end: name, what: "way" });
    const before = moving.newest();
    moving.move(turnEnd(before, name, view.towards, sign * (e.shiftKey ? 45 : 5) * k_degree), e.timeStamp);
    moving.done(before);
  };
  const now = Math.round(dot(end.seat, view.right) * 10) / 10;
  const on = (what: Held["what"]): SVGAttributes<SVGGElement> => ({
    onPointerDown: begin(what), onPointerMove: drag(what), onPointerUp: end_, onPointerCancel: end_,
    onTouchStart: holdPage,
  });
  return (
    <>
      <g
        class="handle" tabindex={0} role="slider" data-handle={`${view.name} ${name} seat`}
        aria-label={`${names[name]}, ${where}: move with the arrow keys`} aria-valuenow={now} aria-valuetext={seatWords(moving.draft, name)}
        onKeyDown={moveKey} {...on("seat")}
      >
        <path class="grip" d={line(spine)} />
        {spine.slice(0, 1).map((p, i) => <circle key={i} class="grip-spot" cx={p.x} cy={p.y} r={22} />)}
        <path class="grip-ring" d={line(spine)} />
      </g>
      {turns ? (
        <g
          class="handle" tabindex={0} role="slider" data-handle={`${view.name} ${name} way`}
          aria-label={`${names[name]}, ${where}: turn with the arrow keys`} aria-valuenow={Math.round(angleOnPaper({ x: 0, y: 0 }, flat) / k_degree)} aria-valuetext={`leaves ${wayWords(moving.draft, name)}`}
          onKeyDown={turnKey} {...on("way")}
        >
          <circle class="grip-spot" cx={knob.x} cy={knob.y} r={22} />
          <circle class="knob" cx={knob.x} cy={knob.y} r={6} />
        </g>
      ) : null}
    </>
  );
}

/// The paper of the turned view: dragged sideways it goes round, up and down above and below.
export function TurnGround(props: { cell: Cell; turn: Turn; set: (turn: Turn) => void }): JSX.Element {
  const { cell, turn, set } = props;
  const grip = useRef<{ x: number; y: number; turn: Turn } | undefined>(undefined);
  return (
    <g
      class="turn-ground" tabindex={0} role="slider" data-handle="turn"
      aria-label="Turned view: turn with the arrow keys" aria-valuemin={-180} aria-valuemax={180} aria-valuenow={Math.round(turn.round)} aria-valuetext={turnWords(turn)}
      onKeyDown={(e) => {
        const step = e.shiftKey ? 45 : 5;
        const by = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, step], ArrowDown: [0, -step] }[e.key];
        if (!by) return;
        e.preventDefault();
        set(turnBy(turn, by[0]!, by[1]!));
      }}
      onPointerDown={(e) => {
        if (e.button !== 0) return;
        e.currentTarget.setPointerCapture(e.pointerId);
        grip.current = { x: e.clientX, y: e.clientY, turn };
      }}
      onPointerMove={(e) => {
        const g = grip.current;
        if (g) set(turnBy(g.turn, (e.clientX - g.x) * 0.5, (e.clientY - g.y) * 0.5));
      }}
      onTouchStart={holdPage}
      onPointerUp={() => { grip.current = undefined; }}
      onPointerCancel={() => { grip.current = undefined; }}
    >
      <rect x={cell.x + 3} y={cell.y + 3} width={cell.w - 6} height={cell.h - 6} />
    </g>
  );
}
