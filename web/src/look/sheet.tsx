/// What drawings are made of: thin ink lines, dimensions with arrows, item balloons, a title block.

import type { ComponentChildren, JSX } from "preact";

/// A drawing on its sheet. `words` is what a screen reader hears.
export function Drawing(props: { w: number; h: number; words: string; class?: string; children: ComponentChildren }): JSX.Element {
  return (
    <svg class={`drawing ${props.class ?? ""}`} viewBox={`0 0 ${props.w} ${props.h}`} role="img" aria-label={props.words}>
      {props.children}
    </svg>
  );
}

/// A dimension: the line with its two arrows, and the figure in a gap above it.
export function Dimension(props: { x1: number; y1: number; x2: number; y2: number; text: string; off?: number }): JSX.Element {
  const { x1, y1, x2, y2, text } = props;
  const length = Math.hypot(x2 - x1, y2 - y1) || 1;
  const ux = (x2 - x1) / length;
  const uy = (y2 - y1) / length;
  const arrow = (x: number, y: number, sign: number): string =>
    `M${x} ${y}L${x + sign * 8 * ux - 2.6 * uy} ${y + sign * 8 * uy + 2.6 * ux}L${x + sign * 8 * ux + 2.6 * uy} ${y + sign * 8 * uy - 2.6 * ux}Z`;
  // Figures are read from below or from the right, never upside down.
  let angle = (Math.atan2(uy, ux) * 180) / Math.PI;
  if (angle > 89.99 || angle < -90.01) angle += 180;
  const cx = (x1 + x2) / 2;
  const cy = (y1 + y2) / 2;
  return (
    <g class="dimension">
      <path class="thin" d={`M${x1} ${y1}L${x2} ${y2}`} />
      <path class="arrow" d={arrow(x1, y1, 1) + arrow(x2, y2, -1)} />
      <text transform={`translate(${cx} ${cy}) rotate(${angle}) translate(0 ${-(props.off ?? 5)})`} text-anchor="middle">{text}</text>
    </g>
  );
}

/// An item number on a drawing, with a leader to what it means.
export function Balloon(props: { x: number; y: number; number: number | string; to?: { x: number; y: number }; class?: string }): JSX.Element {
  const { x, y, to } = props;
  let leader: JSX.Element | null = null;
  if (to) {
    const d = Math.hypot(to.x - x, to.y - y) || 1;
    const r = 11;
    leader = (
      <>
        <path class="thin" d={`M${x + (r * (to.x - x)) / d} ${y + (r * (to.y - y)) / d}L${to.x} ${to.y}`} />
        <circle class="leader-end" cx={to.x} cy={to.y} r={2} />
      </>
    );
  }
  return (
    <g class={`balloon ${props.class ?? ""}`}>
      {leader}
      <circle class="balloon-ring" cx={x} cy={y} r={11} />
      <text x={x} y={y + 4.2} text-anchor="middle">{props.number}</text>
    </g>
  );
}

/// Name, date and the source of every limit, as on a drawing.
export function TitleBlock(props: { rows: string[] }): JSX.Element {
  return (
    <div class="title-block">
      {props.rows.map((row) => <div key={row}>{row}</div>)}
    </div>
  );
}
