/// The acceptance band with a reading and its uncertainty on it.

import type { JSX } from "preact";
import { bandAt, bandScale, spread, type BandInput } from "./band_shape";

const k_w = 360;
const k_letter = 7.4;

export interface BandProps extends BandInput {
  /// Words with units, as the server printed them.
  lowerText?: string;
  upperText?: string;
  valueText?: string;
  /// What a screen reader hears instead of the drawing.
  words: string;
}

export function AcceptanceBand(props: BandProps): JSX.Element {
  const scale = bandScale(props);
  const x = (v: number): number => bandAt(scale, v).share * k_w;
  const lower = props.lower === undefined ? undefined : x(props.lower);
  const upper = props.upper === undefined ? undefined : x(props.upper);
  const labels = [
    ...(lower === undefined ? [] : [{ at: lower, text: props.lowerText ?? String(props.lower) }]),
    ...(upper === undefined ? [] : [{ at: upper, text: props.upperText ?? String(props.upper) }]),
  ];
  const centres = spread(labels.map((l) => ({ at: l.at, w: l.text.length * k_letter })), k_w, 10);
  return (
    <svg class="band" viewBox={`0 0 ${k_w} 92`} role="img" aria-label={props.words}>
      <rect class="band-outside" x={0} y={32} width={k_w} height={20} />
      <rect class="band-inside" x={lower ?? 0} y={32} width={Math.max(0, (upper ?? k_w) - (lower ?? 0))} height={20} />
      {(props.others ?? []).map((o, i) => <line key={i} class="band-other" x1={x(o)} x2={x(o)} y1={36} y2={48} />)}
      {lower === undefined ? null : <line class="band-limit" x1={lower} x2={lower} y1={24} y2={62} />}
      {upper === undefined ? null : <line class="band-limit" x1={upper} x2={upper} y1={24} y2={62} />}
      {labels.map((l, i) => (
        <text key={l.text} class="band-label" x={centres[i]} y={80} text-anchor="middle">{l.text}</text>
      ))}
      {props.value === undefined ? null : <Reading x={x} scale={scale} value={props.value} U={props.U} text={props.valueText} />}
    </svg>
  );
}

function Reading(props: {
  x: (v: number) => number;
  scale: { from: number; to: number };
  value: number;
  U: number | undefined;
  text: string | undefined;
}): JSX.Element {
  const { value, U, text } = props;
  const { off } = bandAt(props.scale, value);
  const at = Math.min(k_w - 9, Math.max(9, props.x(value)));
  const half = (text?.length ?? 0) * k_letter / 2;
  const label = Math.min(k_w - half, Math.max(half, at));
  return (
    <g class="band-reading">
      {U === undefined || off !== 0 ? null : (
        <path class="band-bar" d={bar(props.x(value - U), props.x(value + U))} />
      )}
      {off === 0
        ? <circle class="band-dot" cx={at} cy={42} r={7} />
        : <path class="band-dot" d={off > 0 ? `M${k_w - 14} 34L${k_w - 1} 42L${k_w - 14} 50Z` : "M14 34L1 42L14 50Z"} />}
      {text ? <text class="band-value" x={label} y={15} text-anchor="middle">{text}</text> : null}
    </g>
  );
}

function bar(from: number, to: number): string {
  return `M${from} 42H${to}M${from} 35V49M${to} 35V49`;
}
