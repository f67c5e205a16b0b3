/// The plan of an engine bay from above: firewall, cowl, crankcase, cylinders, propeller flange,
/// with item balloons at the sides and leaders to the places they mean.

import type { JSX } from "preact";
import type { Mark } from "../pages/bay_types";
import { stateOf } from "../pages/bay_types";
import { balloonRows } from "./plan_shape";
import { StripeMarks } from "./stripe";
import { stripeSize } from "./stripe_shape";
import { Balloon, Drawing } from "./sheet";
import { useNarrow } from "../kit/narrow";

const k_w = 640;
const k_h = 560;

/// On the phone the plan is a key to the list: the stripes stand at the edges as large as they
/// must be, and the outline shrinks between them.
const k_narrow = { w: 390, h: 336, scale: 0.56, left: 16, top: 6, stripe: 82 };

export function BayPlan(props: { plan: { cylinders: number }; marks: Mark[] }): JSX.Element {
  return useNarrow() ? <NarrowPlan {...props} /> : <WidePlan {...props} />;
}

function words(marks: Mark[]): string {
  const past = marks.filter((m) => m.state === "past").length;
  return `Plan of the engine bay with ${marks.length} marked items, ${past} past the limit. Each is in the list that follows.`;
}

function NarrowPlan(props: { plan: { cylinders: number }; marks: Mark[] }): JSX.Element {
  const { w, h, scale, left, top, stripe } = k_narrow;
  const placed = props.marks.filter((m) => m.at !== undefined);
  const at = (m: Mark): { x: number; y: number } => ({ x: left + (m.at?.x ?? 0.5) * k_w * scale, y: top + (m.at?.y ?? 0.5) * k_h * scale });
  const rows = balloonRows(placed.map(at), w, 38, h - 22, 45);
  return (
    <Drawing w={w} h={h} class="bay-plan" words={words(placed)}>
      <g transform={`translate(${left} ${top}) scale(${scale})`}><Outline cylinders={props.plan.cylinders} bare /></g>
      {placed.map((m, i) => {
        const row = rows[i];
        if (!row) return null;
        const right = row.side === "right";
        const x = right ? w - stripe : 0;
        const to = at(m);
        return (
          <g key={m.id} class={`plan-mark is-${m.state}`}>
            <path class="thin" d={`M${right ? x - 4 : stripe + 4} ${row.y}L${to.x} ${to.y}`} />
            <circle class="leader-end" cx={to.x} cy={to.y} r={2} />
            <text class="mark-number" x={right ? w : 0} y={row.y - 15} text-anchor={right ? "end" : "start"}>{m.number}</text>
            <g transform={`translate(${x} ${row.y - 12}) scale(${stripe / stripeSize.w})`}><StripeMarks state={stateOf(m)} scale={stripe / stripeSize.w} /></g>
          </g>
        );
      })}
    </Drawing>
  );
}

function WidePlan(props: { plan: { cylinders: number }; marks: Mark[] }): JSX.Element {
  const placed = props.marks.filter((m) => m.at !== undefined);
  const rows = balloonRows(placed.map((m) => ({ x: (m.at?.x ?? 0.5) * k_w, y: (m.at?.y ?? 0.5) * k_h })), k_w, 60, k_h - 30, 46);
  return (
    <Drawing w={k_w} h={k_h} class="bay-plan" words={words(placed)}>
      <Outline cylinders={props.plan.cylinders} />
      {placed.map((m, i) => {
        const row = rows[i];
        if (!row) return null;
        const left = row.side === "left";
        return (
          <g key={m.id} class={`plan-mark is-${m.state}`}>
            <Balloon x={left ? 109 : k_w - 109} y={row.y} number={m.number ?? ""} to={{ x: (m.at?.x ?? 0) * k_w, y: (m.at?.y ?? 0) * k_h }} />
            <g transform={`translate(${left ? 0 : k_w - 94} ${row.y - 13.7}) scale(${94 / stripeSize.w})`}>
              <StripeMarks state={stateOf(m)} scale={94 / stripeSize.w} />
            </g>
          </g>
        );
      })}
    </Drawing>
  );
}

/// `bare` leaves the words out, where they would be too small to read.
function Outline(props: { cylinders: number; bare?: boolean }): JSX.Element {
  const pairs = Math.max(1, Math.ceil(props.cylinders / 2));
  const top = 150;
  const bottom = 430;
  const pitch = (bottom - top) / pairs;
  const bank = (left: boolean): JSX.Element[] =>
    Array.from({ length: pairs }, (_, i) => {
      const h = pitch * 0.72;
      // Opposed crank throws set the two banks off along the crankshaft.
      const y = top + i * pitch + pitch * 0.14 + (left ? pitch * 0.08 : -pitch * 0.08);
      const x = left ? 170 : 398;
      const fins = Array.from({ length: 5 }, (_, j) => y + (h * (j + 1)) / 6);
      return (
        <g key={`${left} ${i}`}>
          <rect class="outline" x={x} y={y} width={72} height={h} rx={5} />
          <path class="thin" d={fins.map((f) => `M${x + 7} ${f}h58`).join("")} />
        </g>
      );
    });
  return (
    <g>
      <line class="firewall" x1={112} x2={528} y1={32} y2={32} />
      {props.bare ? null : <text class="plan-label" x={320} y={22} text-anchor="middle">firewall</text>}
      <path class="hidden-line" d="M136 36C132 250 190 420 262 520H378C450 420 508 250 504 36" />
      <path class="thin" d="M288 140C288 96 268 60 250 34M352 140C352 96 372 60 390 34" />
      {bank(true)}
      {bank(false)}
      <rect class="outline filled" x={242} y={128} width={156} height={320} rx={8} />
      <rect class="outline" x={262} y={92} width={44} height={36} rx={4} />
      <rect class="outline" x={334} y={92} width={44} height={36} rx={4} />
      <path class="outline" d="M296 448V486M344 448V486M282 486H358" />
      <path class="centre-line" d="M320 48V536" />
      <line class="outline" x1={268} x2={372} y1={504} y2={504} />
      {props.bare ? null : <text class="plan-label" x={320} y={300} text-anchor="middle">crankcase</text>}
    </g>
  );
}
