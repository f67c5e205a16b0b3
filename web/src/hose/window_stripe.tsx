/// The length window as a stripe along which the chosen length can be moved.

import { useRef, useState } from "preact/hooks";
import type { JSX } from "preact";
import { atLength, bestLabelAt, k_lacquer, lengthAt, past, stubs, used, windowScale, type Scale, type Window } from "./window_shape";
import { dragStep, keyStep, toStep } from "./lengths";
import { useWidth } from "./width";

export interface WindowWords {
  shortest: string;
  best: string;
  longest: string;
  chosen: string;
}

export function WindowStripe(props: {
  window: Window;
  words: WindowWords;
  /// Nobody chose a length: it is the one that the server would order.
  open: boolean;
  unit: string;
  working: boolean;
  label: string;
  /// What was last chosen, a step ahead of what is drawn while an answer is awaited.
  newest: () => number | undefined;
  choose: (mm: number, at: number) => void;
  rest: () => void;
}): JSX.Element {
  const { window, words, unit } = props;
  const place = useRef<HTMLDivElement>(null);
  const w = useWidth(place, 640);
  const [held, setHeld] = useState<Scale | undefined>(undefined);
  const scale = held ?? windowScale(window, w);
  const out = past(window);
  const upper = atLength(scale, window.best);
  const lower = atLength(scale, window.chosen);
  const l = atLength(scale, window.shortest);
  const r = atLength(scale, window.longest);
  const torn = out ? stubs(upper, lower) : undefined;
  const percent = Math.round(used(window) * 100);
  const state = out ?? (percent === 0 ? "at the widest bend" : `${percent} % of the way to the ${window.chosen < window.best ? "shortest" : "longest"}`);
  const move = (e: PointerEvent, s: Scale): void => {
    const box = place.current?.getBoundingClientRect();
    if (!box) return;
    const mm = toStep(lengthAt(s, ((e.clientX - box.left) / box.width) * s.w), dragStep(unit) * 2);
    if (mm !== window.chosen) props.choose(mm, e.timeStamp);
  };
  const keys = (e: KeyboardEvent): void => {
    const by = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageUp: 8, PageDown: -8 }[e.key];
    const to = e.key === "Home" ? window.shortest : e.key === "End" ? window.longest : by === undefined ? undefined : (props.newest() ?? window.chosen) + by * keyStep(unit, false);
    if (to === undefined) return;
    e.preventDefault();
    const step = keyStep(unit, false);
    // Inside the window also after rounding.
    const mm = e.key === "Home" ? Math.ceil(to / step) * step : e.key === "End" ? Math.floor(to / step) * step : toStep(to, step);
    props.choose(mm, e.timeStamp);
  };
  return (
    <div class={`window-stripe${props.working ? " working" : ""}`}>
      <div ref={place}>
        <svg class="drawing" viewBox={`0 0 ${w} 132`} width={w} height={132} aria-hidden="true">
          <g class="stripe-window" transform="translate(0 40)">
            <rect class="plate-upper" x={0} y={0} width={w} height={31} rx={3} />
            <rect class="plate-lower" x={0} y={33} width={w} height={31} rx={3} />
            {torn ? <path class="lacquer-torn" d={torn.upper} /> : <rect class="lacquer" x={upper - k_lacquer / 2} y={4} width={k_lacquer} height={27} />}
            {torn ? <path class="lacquer-torn" d={torn.lower} /> : <rect class="lacquer" x={lower - k_lacquer / 2} y={33} width={k_lacquer} height={27} />}
            <line class="stripe-limit" x1={l} x2={l} y1={-4} y2={66} />
            <line class="stripe-limit" x1={r} x2={r} y1={-4} y2={66} />
          </g>
          <Label x={l - 6} anchor="end" name="shortest" figure={words.shortest} />
          <Label x={r + 6} anchor="start" name="longest" figure={words.longest} />
          <Label x={bestLabelAt(upper, l, r, k_half_label)} anchor="middle" name="widest bend" figure={words.best} />
          <text class="window-chosen" x={held1(lower, w)} y={124} text-anchor="middle">{props.open ? "to order" : "chosen"} {words.chosen}{out ? `: ${out}` : ""}</text>
        </svg>
        <div
          class="window-slider" role="slider" tabIndex={0} aria-label={props.label}
          aria-valuemin={Math.round(window.shortest * 10) / 10} aria-valuemax={Math.round(window.longest * 10) / 10}
          aria-valuenow={Math.round(window.chosen * 10) / 10}
          aria-valuetext={`${words.chosen}, ${state}`}
          onKeyDown={keys}
          onPointerDown={(e) => {
            if (e.button !== 0) return;
            e.currentTarget.setPointerCapture(e.pointerId);
            const s = windowScale(window, w);
            setHeld(s);
            move(e, s);
          }}
          onPointerMove={(e) => (held ? move(e, held) : undefined)}
          onPointerUp={() => setHeld(undefined)}
          onPointerCancel={() => setHeld(undefined)}
        />
      </div>
      <p class="window-state">
        <span>{state.charAt(0).toUpperCase() + state.slice(1)}.</span>
        {props.open ? null : <button type="button" class="quiet" onClick={props.rest}>Leave the length open</button>}
      </p>
    </div>
  );
}

const k_half_label = 38;

function Label(props: { x: number; anchor: "start" | "middle" | "end"; name: string; figure: string }): JSX.Element {
  return (
    <text class="window-label" text-anchor={props.anchor}>
      <tspan x={props.x} y={14}>{props.name}</tspan><tspan class="window-figure" x={props.x} y={31}>{props.figure}</tspan>
    </text>
  );
}

/// Labels stay on the paper.
function held1(x: number, w: number): number {
  return Math.min(w - 92, Math.max(92, x));
}
