/// One view of the sheet: the hose as a tube of true diameter, its fittings, what is near, the
/// tightest bend and the dimensions. Thin ink lines; lacquer only on what is being moved.

import type { JSX } from "preact";
import { hatch } from "../look/stripe_shape";
import { Dimension } from "../look/sheet";
import type { Drawn, End, EndKey } from "./drawn";
import type { Cell } from "./frame";
import { dimensionText } from "./lengths";
import type { Gap, Shape } from "./model";
import { awayFrom, bendCircle, clip, fitting, line, round, solid, type FittingOutline } from "./outline";
import { dot, type Vec } from "./space";
import { inPaper, onPaper, viewWords, type Placed, type Spot2 } from "./views";

export interface Held {
  end: EndKey;
  what: "seat" | "way";
}

export interface Seen {
  drawn: Drawn;
  shape: Shape | undefined;
  gaps: Gap[];
  ghosts: Vec[][];
  /// The hose is that of before: what stands in the fields has no answer.
  stale: boolean;
  held: Held | undefined;
  unit: string;
}

export const k_turn_handle = 56;

/// @param measured  Which dimensions this view carries.
export function ViewDrawing(props: { seen: Seen; cell: Cell; placed: Placed; measured: { across: boolean; up: boolean; radius: boolean }; dimensionsAt: { below: number; right: number } }): JSX.Element {
  const { seen, cell, placed } = props;
  const { drawn, shape } = seen;
  const words = viewWords[placed.view.name];
  const middle = shape && shape.points.length > 0 ? onPaper(placed, shape.points[Math.floor(shape.points.length / 2)]!) : onPaper(placed, placed.middle);
  const ends = (["near_end", "far_end"] as const).flatMap((key) => {
    const end = key === "near_end" ? drawn.near : drawn.far;
    return end ? [{ key, end, drawnAs: fitting(placed, end, Math.max(drawn.radius, 2)) }] : [];
  });
  ends.sort((a, b) => dot(a.end.seat, placed.view.towards) - dot(b.end.seat, placed.view.towards));
  return (
    <g>
      <text class="view-name" x={cell.x + 12} y={cell.y + 22}>{words.name}<tspan class="view-how" dx={7}>{words.how}</tspan></text>
      {drawn.solids.map((s, i) => <SolidMark key={i} drawnAs={solid(placed, s, cell)} />)}
      {seen.ghosts.map((g, i) => <path key={i} class="ghost" d={line(g.map((p) => onPaper(placed, p)))} />)}
      {shape ? <Tube points={shape.points.map((p) => onPaper(placed, p))} width={2 * drawn.radius * placed.scale} stale={seen.stale} /> : null}
      {shape?.bend && !seen.stale ? <Bend shape={shape} placed={placed} cell={cell} named={props.measured.radius} /> : null}
      {drawn.clamps.map((c, i) => <ClampMark key={i} name={c.name} at={c.place} placed={placed} radius={drawn.radius} shape={shape} />)}
      {shape && !seen.stale ? shape.others.map((o, i) => <OtherMark key={i} at={onPaper(placed, o)} />) : null}
      {ends.map(({ key, end, drawnAs }) => (
        <Fitting key={key} drawnAs={drawnAs} held={seen.held?.end === key} axis={axisOf(placed, end)} />
      ))}
      {ends.map(({ key, end, drawnAs }) => <EndName key={key} name={key === "near_end" ? "near" : "far"} placed={placed} end={end} drawnAs={drawnAs} radius={drawn.radius} from={middle} />)}
      {seen.stale ? null : seen.gaps.map((g, i) => <GapMark key={i} gap={g} placed={placed} />)}
      {drawn.near && drawn.far ? <Dimensions near={drawn.near} far={drawn.far} placed={placed} cell={cell} unit={seen.unit} measured={props.measured} at={props.dimensionsAt} /> : null}
      {seen.stale ? <path class="stale-hatch" d={hatch({ x: cell.x + 1, y: cell.y + 1, w: cell.w - 2, h: cell.h - 2 }, 22)} /> : null}
    </g>
  );
}

/// Two outlines and a chain-dotted centreline: a thick ink line with a thinner one of the paper.
export function Tube(props: { points: Spot2[]; width: number; stale: boolean; class?: string }): JSX.Element {
  const d = line(props.points);
  const wide = Math.max(props.width, 4);
  return (
    <g class={`hose${props.stale ? " stale" : ""}`} data-part="hose">
      <path class="tube-edge" d={d} stroke-width={wide} />
      <path class="tube-fill" d={d} stroke-width={wide - 2.6} />
      <path class="centre-line" d={d} />
    </g>
  );
}

function axisOf(placed: Placed, end: End): string {
  const flat = inPaper(placed.view, end.port ?? end.way);
  const seat = onPaper(placed, end.seat);
  const reach = k_turn_handle - 8;
  return flat.share < 0.35 ? "" : line([{ x: seat.x - flat.x * reach, y: seat.y - flat.y * reach }, seat]);
}

function Fitting(props: { drawnAs: FittingOutline; held: boolean; axis: string }): JSX.Element {
  const { drawnAs } = props;
  const bend = drawnAs.bend ? line(drawnAs.bend.points) : "";
  return (
    <g class={`fitting${props.held ? " held" : ""}`}>
      {props.axis === "" ? null : <path class="centre-line" d={props.axis} />}
      {drawnAs.bend ? <path class="tube-edge" d={bend} stroke-width={drawnAs.bend.width} /> : null}
      {drawnAs.bend ? <path class="tube-fill" d={bend} stroke-width={Math.max(1, drawnAs.bend.width - 2.6)} /> : null}
      {drawnAs.pieces.map((piece, i) => (
        <g key={i}>
          <path class="piece" d={piece.outline} />
          <path class="piece-line" d={piece.face} />
          {piece.flats === "" ? null : <path class="piece-thin" d={piece.flats} />}
        </g>
      ))}
    </g>
  );
}

function EndName(props: { name: string; placed: Placed; end: End; drawnAs: FittingOutline; radius: number; from: Spot2 }): JSX.Element {
  const { placed, end, drawnAs, from } = props;
  const spine = drawnAs.spine;
  const first = spine[0]!;
  const flat = inPaper(placed.view, end.port ?? end.way);
  const away = awayFrom(first, flat, from);
  const R = 1.3 * props.radius * placed.scale + 12;
  // End-on there is no side: then straight away from the hose.
  const d = Math.hypot(first.x - from.x, first.y - from.y) || 1;
  const out = flat.share < 0.35 ? { x: (first.x - from.x) / d, y: (first.y - from.y) / d } : away;
  const x = first.x + out.x * R;
  const y = first.y + out.y * R + 4.5;
  return <text class="end-name" x={x} y={y} text-anchor={out.x > 0.4 ? "start" : out.x < -0.4 ? "end" : "middle"}>{props.name}</text>;
}

function SolidMark(props: { drawnAs: ReturnType<typeof solid> }): JSX.Element | null {
  const s = props.drawnAs;
  if (!s) return null;
  const d = s.thick ? line(s.thick.points) : "";
  return (
    <g class="solid">
      {s.thick ? <path class="solid-edge" d={d} stroke-width={s.thick.width} /> : null}
      {s.thick ? <path class="solid-fill" d={d} stroke-width={Math.max(1, s.thick.width - 2.4)} /> : null}
      {s.thick ? <path class="centre-line" d={d} /> : null}
      {s.outline === "" ? null : <path class={s.hatched === undefined ? "solid-line" : "solid-wall"} d={s.outline} />}
      {s.hatched ? <path class="piece-thin" d={s.hatched} /> : null}
      <text class="plan-label" x={s.label.x} y={s.label.y} text-anchor="middle">{s.name}</text>
    </g>
  );
}

function Bend(props: { shape: Shape; placed: Placed; cell: Cell; named: boolean }): JSX.Element | null {
  const { placed, cell } = props;
  const bend = props.shape.bend!;
  const at = onPaper(placed, bend.at);
  const centre = onPaper(placed, bend.centre);
  const R = Math.hypot(bend.at.x - bend.centre.x, bend.at.y - bend.centre.y, bend.at.z - bend.centre.z) * placed.scale;
  const half = Math.min(Math.PI, (0.42 * Math.min(cell.w, cell.h)) / Math.max(R, 1));
  const circle = bendCircle(bend.at, bend.centre, bend.square, half >= 2.4 ? Math.PI : half).map((p) => onPaper(placed, p));
  const inner = { x: cell.x + 16, y: cell.y + 34, w: cell.w - 32, h: cell.h - 60 };
  const seen = clip(centre, at, inner);
  if (!seen) return <path class="bend-circle" d={line(circle)} />;
  const [from, to] = seen;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const u = { x: (to.x - from.x) / (length || 1), y: (to.y - from.y) / (length || 1) };
  let angle = (Math.atan2(u.y, u.x) * 180) / Math.PI;
  const flip = angle > 90.01 || angle <= -90;
  if (flip) angle += 180;
  // Towards the centre, where the hose is not.
  const share = length > 150 ? 0.42 : 0.5;
  const m = { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
  const atCentre = Math.hypot(from.x - centre.x, from.y - centre.y) < 0.5;
  const sideways = { x: -u.y, y: u.x };
  const arrow = `M${to.x} ${to.y}L${to.x - 9 * u.x + 2.8 * sideways.x} ${to.y - 9 * u.y + 2.8 * sideways.y}L${to.x - 9 * u.x - 2.8 * sideways.x} ${to.y - 9 * u.y - 2.8 * sideways.y}Z`;
  const broken = line([
    { x: from.x + 4 * sideways.x - 2 * u.x, y: from.y + 4 * sideways.y - 2 * u.y }, { x: from.x + 2 * u.x, y: from.y + 2 * u.y },
    { x: from.x - 2 * u.x, y: from.y - 2 * u.y }, { x: from.x - 4 * sideways.x + 2 * u.x, y: from.y - 4 * sideways.y + 2 * u.y },
  ]);
  return (
    <g class="bend">
      <path class="bend-circle" d={line(circle)} />
      {length < 14 ? null : (
        <>
          <path class="thin" d={line([from, to])} />
          <path class="arrow" d={arrow} />
          {atCentre ? <path class="thin" d={`M${centre.x - 5} ${centre.y}h10M${centre.x} ${centre.y - 5}v10`} /> : <path class="thin" d={broken} />}
        </>
      )}
      {props.named && length > 76 ? (
        <g transform={`translate(${m.x} ${m.y}) rotate(${angle})`}>
          <text class="bend-text" y={-6} text-anchor="middle">R {bend.text}</text>
          {bend.limit === "" || length < 116 ? null : <text class="bend-limit" y={16} text-anchor="middle">limit {bend.limit}</text>}
        </g>
      ) : null}
    </g>
  );
}

function GapMark(props: { gap: Gap; placed: Placed }): JSX.Element | null {
  const a = onPaper(props.placed, props.gap.from);
  const b = onPaper(props.placed, props.gap.to);
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  if (length < 10) return null;
  return length > 74
    ? <Dimension x1={a.x} y1={a.y} x2={b.x} y2={b.y} text={props.gap.text} />
    : (
      <g class="dimension">
        <path class="gap-line" d={line([a, b])} />
        <circle class="leader-end" cx={a.x} cy={a.y} r={2} /><circle class="leader-end" cx={b.x} cy={b.y} r={2} />
      </g>
    );
}

function ClampMark(props: { name: string; at: Vec; placed: Placed; radius: number; shape: Shape | undefined }): JSX.Element {
  const { at, placed, shape } = props;
  const points = shape?.points ?? [];
  let best = 1;
  const far = (i: number): number => Math.hypot(points[i]!.x - at.x, points[i]!.y - at.y, points[i]!.z - at.z);
  for (let i = 1; i < points.length; i++) if (far(i) < far(best)) best = i;
  const a = points[best - 1];
  const b = points[best];
  const width = 8 / placed.scale;
  const c = onPaper(placed, at);
  let piece = { outline: `M${c.x - 6} ${c.y - 6}h12v12h-12Z`, face: "", flats: "", depth: 0 };
  if (a && b) {
    const l = Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z) || 1;
    const h = { x: ((b.x - a.x) / l) * width, y: ((b.y - a.y) / l) * width, z: ((b.z - a.z) / l) * width };
    piece = round(placed, { x: at.x - h.x, y: at.y - h.y, z: at.z - h.z }, { x: at.x + h.x, y: at.y + h.y, z: at.z + h.z }, props.radius * 1.35);
  }
  return (
    <g class="clamp">
      <path class="piece" d={piece.outline} />
      {piece.face === "" ? null : <path class="piece-line" d={piece.face} />}
      <text class="plan-label" x={c.x} y={c.y - props.radius * placed.scale * 1.35 - 10} text-anchor="middle">{props.name}</text>
    </g>
  );
}

function OtherMark(props: { at: Spot2 }): JSX.Element {
  const { x, y } = props.at;
  return (
    <g class="other-shape">
      <path class="thin" d={`M${x - 6} ${y}h12M${x} ${y - 6}v12`} />
      <text class="view-how" x={x + 9} y={y - 6}>or here</text>
    </g>
  );
}

/// Between the seats, across and up the paper; extension lines end a little before them.
function Dimensions(props: { near: End; far: End; placed: Placed; cell: Cell; unit: string; measured: { across: boolean; up: boolean }; at: { below: number; right: number } }): JSX.Element {
  const { placed, cell, unit, measured } = props;
  const a = onPaper(placed, props.near.seat);
  const b = onPaper(placed, props.far.seat);
  const across = Math.abs(b.x - a.x) / placed.scale;
  const up = Math.abs(b.y - a.y) / placed.scale;
  const y = cell.y + cell.h - props.at.below;
  const x = cell.x + cell.w - props.at.right;
  const parts: JSX.Element[] = [];
  const gap = 1.3 * 10;
  if (measured.across && across * placed.scale > 4) {
    parts.push(<path key="e" class="extension" d={`M${a.x} ${Math.min(y - 8, a.y + gap)}V${y + 6}M${b.x} ${Math.min(y - 8, b.y + gap)}V${y + 6}`} />);
    const [l, r] = a.x < b.x ? [a.x, b.x] : [b.x, a.x];
    parts.push(<Measure key="d" x1={l} y1={y} x2={r} y2={y} text={dimensionText(across, unit)} />);
  }
  if (measured.up && up * placed.scale > 4) {
    parts.push(<path key="f" class="extension" d={`M${Math.min(x - 8, a.x + gap)} ${a.y}H${x + 6}M${Math.min(x - 8, b.x + gap)} ${b.y}H${x + 6}`} />);
    const [low, high] = a.y > b.y ? [a.y, b.y] : [b.y, a.y];
    parts.push(<Measure key="g" x1={x} y1={low} x2={x} y2={high} text={dimensionText(up, unit)} />);
  }
  return <g class="dimensions">{parts}</g>;
}

/// Where the arrows have no room for the figure between them, it stands beside.
function Measure(props: { x1: number; y1: number; x2: number; y2: number; text: string }): JSX.Element {
  const { x1, y1, x2, y2, text } = props;
  const length = Math.hypot(x2 - x1, y2 - y1);
  if (length > 14 + text.length * 7) return <Dimension {...props} />;
  const upright = Math.abs(x2 - x1) < 1;
  return (
    <g class="dimension">
      {length > 22 ? <Dimension x1={x1} y1={y1} x2={x2} y2={y2} text="" /> : (
        <path class="thin" d={upright ? `M${x1} ${y1 + 12}V${y2 - 12}M${x1 - 4} ${y1 + 4}l8 -8M${x1 - 4} ${y2 + 4}l8 -8` : `M${x1 - 12} ${y1}H${x2 + 12}M${x1 - 4} ${y1 + 4}l8 -8M${x2 - 4} ${y1 + 4}l8 -8`} />
      )}
      {upright
        ? <text x={x1 + 7} y={(y1 + y2) / 2 + 4.5}>{text}</text>
        : <text x={Math.max(x1, x2) + 16} y={y1 + 4.5}>{text}</text>}
    </g>
  );
}
