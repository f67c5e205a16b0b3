/// The stripe: our one sign. It always comes with its words; a screen reader hears those.

import type { JSX } from "preact";
import { Printed } from "./figure";
import {
  hatch, limitX, lowerPlate, lowerStripe, stripeSize, stripeWords, tornPieces, undecidedStripe,
  upperPlate, upperStripe, type Box, type StripeState,
} from "./stripe_shape";

function Rect(props: { box: Box; class: string; rx?: number }): JSX.Element {
  const { x, y, w, h } = props.box;
  return <rect x={x} y={y} width={w} height={h} rx={props.rx} class={props.class} />;
}

/// The drawing alone, for use inside another drawing. Says nothing to a screen reader.
/// `scale` tells how small it will be drawn: hatching keeps its lines apart.
export function StripeMarks(props: { state: StripeState; scale?: number }): JSX.Element {
  const { state } = props;
  const limit = <line class="stripe-limit" x1={limitX} x2={limitX} y1={33} y2={64} />;
  if (state.is === "unknown") {
    return (
      <g class="stripe-unknown">
        <Rect box={inset(upperPlate)} class="plate-open" rx={3} />
        <Rect box={inset(lowerPlate)} class="plate-open" rx={3} />
        <Rect box={upperStripe} class="lacquer-open" />
        <Rect box={lowerStripe(0)} class="lacquer-open" />
      </g>
    );
  }
  const plates = (
    <>
      <Rect box={upperPlate} class="plate-upper" rx={3} />
      <Rect box={lowerPlate} class="plate-lower" rx={3} />
    </>
  );
  if (state.is === "past") {
    const torn = tornPieces(state.used);
    return (
      <g>
        {plates}
        <path d={torn.upper} class="lacquer-torn" />
        <path d={torn.lower} class="lacquer-torn" />
        {limit}
      </g>
    );
  }
  if (state.is === "undecided") {
    const box = undecidedStripe(state.used, state.spread);
    return (
      <g>
        {plates}
        <Rect box={upperStripe} class="lacquer" />
        <Rect box={box} class="lacquer-undecided" />
        <path d={hatch(box, Math.max(8, 4.6 / (props.scale ?? 1)))} class="lacquer-hatch" />
        {limit}
      </g>
    );
  }
  return (
    <g>
      {plates}
      <Rect box={upperStripe} class="lacquer" />
      <rect class="lacquer moves" x={0} y={33} width={18} height={27} transform={`translate(${lowerStripe(state.used).x} 0)`} />
      {limit}
    </g>
  );
}

function inset(box: Box): Box {
  return { x: box.x + 1, y: box.y + 1, w: box.w - 2, h: box.h - 2 };
}

const scales = { small: 0.375, normal: 0.5, large: 1 };

export function Stripe(props: { state: StripeState; size?: "small" | "normal" | "large" }): JSX.Element {
  return (
    <svg
      class={`stripe ${props.size ?? "normal"} is-${props.state.is}`}
      viewBox={`0 0 ${stripeSize.w} ${stripeSize.h}`}
      aria-hidden="true"
      focusable="false"
    >
      <StripeMarks state={props.state} scale={scales[props.size ?? "normal"]} />
    </svg>
  );
}

/// A stripe in a list: sign, name, the figure against its limit, and a note (the clock, the date).
export function StripeLine(props: {
  state: StripeState;
  name: string;
  href?: string;
  words?: string;
  figure?: string;
  note?: string;
}): JSX.Element {
  const { state, name, figure, note } = props;
  const words = props.words ?? stripeWords(state);
  return (
    <div class={`stripe-line is-${state.is}`}>
      <Stripe state={state} />
      <div class="stripe-text">
        <span class="stripe-name">{props.href ? <a href={props.href}>{name}</a> : name}</span>
        <span class="stripe-words">{words}{note ? <span class="stripe-note">{words === "" ? "" : " · "}{note}</span> : null}</span>
      </div>
      {figure ? <span class="stripe-figure"><Printed text={figure} /></span> : null}
    </div>
  );
}
