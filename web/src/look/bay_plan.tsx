/// The plan of an engine bay from above: firewall, cowl, crankcase, cylinders, propeller flange,
/// with the most used marks as stripes at the sides and leaders to the places they mean. Every
/// place of the plan is a dot that can be touched; keyboard and screen reader have the same places
/// in the lists beside it.

import type { JSX } from "preact";
import type { PlanSpot } from "../api/views";
import { useNarrow } from "../kit/narrow";
import { standingState, standingWords } from "../pages/standing";
import { address, go } from "../route/route";
import { balloonRows } from "./plan_shape";
import { StripeMarks } from "./stripe";
import { stripeSize } from "./stripe_shape";
import { Drawing } from "./sheet";

/// A place whose worst mark is drawn as a stripe, with its number in the list.
export interface Placed { spot: PlanSpot; number: number; standing: string; used?: number; uncertainty?: number }

interface Sheet { w: number; h: number; x: number; y: number; scale: number; stripe: number; pitch: number; top: number }
const k_wide: Sheet = { w: 640, h: 560, x: 0, y: 0, scale: 1, stripe: 104, pitch: 58, top: 50 };
/// On the phone the stripes stand at the edges as large as they must be, and the outline shrinks
/// between them.
const k_narrow: Sheet = { w: 390, h: 330, x: 16, y: 6, scale: 0.56, stripe: 82, pitch: 46, top: 34 };

/// From the record's plan (0 = the aircraft's right and the firewall, 100 = its left and the
/// propeller) to the drawing, nose down the page: the aircraft's left is at the viewer's right.
function at(sheet: Sheet, spot: PlanSpot): { x: number; y: number } {
  return { x: sheet.x + (116 + spot.x * 4.08) * sheet.scale, y: sheet.y + (36 + spot.y * 4.6) * sheet.scale };
}

export function BayPlan(props: { plan: PlanSpot[]; placed: Placed[]; cylinders: number }): JSX.Element {
  const sheet = useNarrow() ? k_narrow : k_wide;
  const { w, h, stripe } = sheet;
  const small = sheet === k_narrow;
  const size = stripe / stripeSize.w;
  const room = 2 * (Math.floor((h - 24 - sheet.top) / sheet.pitch) + 1);
  const placed = props.placed.slice(0, room);
  const rows = balloonRows(placed.map((p) => at(sheet, p.spot)), w, sheet.top, h - 24, sheet.pitch);
  const past = placed.filter((p) => standingState(p.standing, p.used).is === "past").length;
  return (
    <Drawing w={w} h={h} class="bay-plan" words={`Plan of the engine bay with ${props.plan.length} places; ${placed.length} are marked, ${past} of them past their limit. All are in the lists beside it.`}>
      <g transform={`translate(${sheet.x} ${sheet.y}) scale(${sheet.scale})`}><Outline cylinders={props.cylinders} bare={small} /></g>
      {props.plan.map((spot) => {
        const p = at(sheet, spot);
        return (
          <g key={spot.position} class="plan-spot" onClick={() => go(address("bay", ["position", spot.position]))}>
            <title>{spot.name}{spot.standing ? `: ${standingWords(spot.standing, spot.used)}` : ""}</title>
            <circle class="plan-target" cx={p.x} cy={p.y} r={small ? 12 : 13} />
            <circle class={spot.standing ? "plan-dot" : "plan-dot bare"} cx={p.x} cy={p.y} r={small ? 2.6 : 3.4} />
          </g>
        );
      })}
      {placed.map((p, i) => {
        const row = rows[i];
        if (!row) return null;
        const right = row.side === "right";
        const x = right ? w - stripe : 0;
        const to = at(sheet, p.spot);
        const state = standingState(p.standing, p.used, p.uncertainty);
        return (
          <g key={p.spot.position} class={`plan-mark is-${state.is}`} onClick={() => go(address("bay", ["position", p.spot.position]))}>
            <title>{p.spot.name}: {standingWords(p.standing, p.used)}</title>
            <rect class="plan-target" x={x} y={row.y - 32} width={stripe} height={sheet.pitch - 2} />
            <path class="leader" d={`M${right ? x - 3 : stripe + 3} ${row.y}L${to.x} ${to.y}`} />
            <text class="mark-number" x={right ? w : 0} y={row.y - 17} text-anchor={right ? "end" : "start"}>{p.number}</text>
            <g transform={`translate(${x} ${row.y - 13}) scale(${size})`}><StripeMarks state={state} scale={size} /></g>
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
      {props.bare ? null : <text class="plan-label" x={320} y={20} text-anchor="middle">firewall</text>}
      <path class="hidden-line" d="M116 36C116 250 186 430 262 526H378C454 430 524 250 524 36" />
      {bank(true)}
      {bank(false)}
      <rect class="outline filled" x={242} y={128} width={156} height={320} rx={8} />
      <rect class="outline" x={262} y={92} width={44} height={36} rx={4} />
      <rect class="outline" x={334} y={92} width={44} height={36} rx={4} />
      <path class="outline" d="M296 448V486M344 448V486M282 486H358" />
      <path class="centre-line" d="M320 48V536" />
      <line class="outline" x1={268} x2={372} y1={504} y2={504} />
      {props.bare ? null : (
        <>
          <text class="plan-label" x={320} y={545} text-anchor="middle">propeller</text>
          <text class="plan-label" x={124} y={548} text-anchor="middle">aircraft's right</text>
          <text class="plan-label" x={516} y={548} text-anchor="middle">aircraft's left</text>
        </>
      )}
    </g>
  );
}
