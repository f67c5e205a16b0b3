/// Clocking as on a clock face: the near elbow at six o'clock, the far one as the hand, counted
/// counter-clockwise, with the sector within which it is made.

import type { JSX } from "preact";

const k_r = 62;

/// Where an angle stands on the face. 0 is at six o'clock, 90 at three: counter-clockwise.
export function onDial(degrees: number, radius: number): { x: number; y: number } {
  const a = (degrees * Math.PI) / 180;
  return { x: Math.sin(a) * radius, y: Math.cos(a) * radius };
}

const at = (degrees: number, radius: number): string => {
  const p = onDial(degrees, radius);
  return `${p.x.toFixed(2)} ${p.y.toFixed(2)}`;
};

export function Dial(props: { degrees: number; tolerance: number; text: string; words: string }): JSX.Element {
  const { degrees, tolerance } = props;
  const large = degrees > 180 ? 1 : 0;
  const wide = tolerance * 2 > 180 ? 1 : 0;
  return (
    <figure class="dial">
      <svg class="drawing" viewBox="-104 -92 208 196" role="img" aria-label={`Clocking ${props.text}. ${props.words}`}>
        <circle class="outline" r={k_r} />
        {Array.from({ length: 12 }, (_, i) => <path key={i} class="thin" d={`M${at(i * 30, k_r - 5)}L${at(i * 30, k_r)}`} />)}
        <path class="dial-sector" d={`M0 0L${at(degrees - tolerance, k_r)}A${k_r} ${k_r} 0 ${wide} 0 ${at(degrees + tolerance, k_r)}Z`} />
        <path class="dial-near" d={`M0 0L${at(0, k_r)}`} />
        <path class="dial-hand" d={`M0 0L${at(degrees, k_r)}`} />
        <path class="thin" d={`M${at(0, 26)}A26 26 0 ${large} 0 ${at(degrees, 26)}`} />
        <circle class="leader-end" r={3} />
        <text x={0} y={k_r + 18} text-anchor="middle">near</text>
        <text x={onDial(degrees, k_r + 16).x} y={onDial(degrees, k_r + 16).y + 5} text-anchor={anchor(degrees)}>far</text>
      </svg>
      <figcaption><span>Clocking</span> <strong class="figure">{props.text}</strong></figcaption>
    </figure>
  );
}

function anchor(degrees: number): "start" | "middle" | "end" {
  const x = onDial(degrees, 1).x;
  return x > 0.35 ? "start" : x < -0.35 ? "end" : "middle";
}
