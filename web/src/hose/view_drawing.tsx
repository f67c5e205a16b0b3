/// One view of the sheet: the hose as a tube of true diameter, its fittings, what is near, the
/// tightest bend and the dimensions. Thin ink lines; lacquer only on what is being moved.

import type { JSX } from "preact";
import { hatch } from "../look/stripe_shape";
import { Dimension } from "../look/sheet";
import type { Drawn, End, EndKey } from "./drawn";
import type { Cell } from "./frame";
import { dimensionText } from "./lengths";
import type { Gap, Shape } from "./model";
import { around, Words, type Place } from "./labels";
import { bendCircle, clip, fitting, line, round, solid, type FittingOutline, type SolidOutline } from "./outline";
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

export const k_turn_handle = 48;

/// @param measured  Which dimensions this view carries; `alone`: it is the only one to be seen.
export function ViewDrawing(props: { seen: Seen; cell: Cell; placed: Placed; alone: boolean; measured: { across: boolean; up: boolean; radius: boolean }; dimensionsAt: { below: number; right: number } }): JSX.Element {
  const { seen, cell, placed } = props;
  const { drawn, shape } = seen;
  const name = viewWords[placed.view.name];
  const hose = (shape?.points ?? []).map((p) => onPaper(placed, p));
  const ends = (["near_end", "far_end"] as const).flatMap((key) => {
    const end = key === "near_end" ? drawn.near : drawn.far;
    return end ? [{ key, end, drawnAs: fitting(placed, end, Math.max(drawn.radius, 2)) }] : [];
  });
  ends.sort((a, b) => dot(a.end.seat, placed.view.towards) - dot(b.end.seat, placed.view.towards));
  const solids = drawn.solids.flatMap((s) => solid(placed, s, cell) ?? []);
  const fresh = shape && !seen.stale ? shape : undefined;

  const words = new Words(cell);
  words.taken([`${name.name}  ${name.how}`], { x: cell.x + 12, y: cell.y + 22, anchor: "start" });
  const R = drawn.radius * placed.scale;
  words.along(hose, R + 3);
  for (const e of ends) {
    words.along(e.drawnAs.spine, R * 1.3 + 2);
    const knob = knobOf(placed, e.end);
    if (knob) words.along([knob], 9);
  }
  const dimensions = drawn.near && drawn.far ? dimensionsOf(drawn.near, drawn.far, placed, cell, seen.unit, props.measured, props.dimensionsAt, words) : null;
  const names = ends.map(({ key, end, drawnAs }) => {
    const text = key === "near_end" ? "near" : "far";
    const at = words.put([text], endPlaces(placed, end, drawnAs, R), Infinity);
    return at ? <text key={key} class="end-name" x={at.x} y={at.y} text-anchor={at.anchor}>{text}</text> : null;
  });
  for (const s of solids) words.along(s.edges, s.reach);
  const circle = fresh?.bend ? circleOf(fresh.bend, placed, cell) : [];
  words.along(circle, 2);
  const bend = fresh?.bend ? bendOf(fresh, placed, cell, props.measured.radius, words) : null;
  const gaps = seen.stale ? [] : seen.gaps.filter((g) => props.alone ? shareOf(placed, g) > 0.75 : g.view === placed.view.name).map((g, i) => <GapMark key={i} gap={g} placed={placed} words={words} />);
  const solidNames = solids.map((s, i) => {
    const at = words.put([s.name], s.places, 5);
    return at ? <text key={i} class="plan-label" x={at.x} y={at.y} text-anchor={at.anchor}>{s.name}</text> : null;
  });
  return (
    <g>
      {seen.stale ? <path class="stale-hatch" d={hatch({ x: cell.x + 1, y: cell.y + 1, w: cell.w - 2, h: cell.h - 2 }, 22)} /> : null}
      <text class="view-name" x={cell.x + 12} y={cell.y + 22}>{name.name}<tspan class="view-how" dx={7}>{name.how}</tspan></text>
      {solids.map((s, i) => <SolidMark key={i} drawnAs={s} />)}
      {dimensions?.lines}
      {fresh?.bend ? <path class={fresh.bend.under ? "bend-circle under" : "bend-circle"} d={line(circle)} /> : null}
      {seen.ghosts.map((g, i) => <path key={i} class="ghost" d={line(g.map((p) => onPaper(placed, p)))} />)}
      {shape ? <Tube points={hose} width={2 * R} stale={seen.stale} /> : null}
      {bend}
      {drawn.clamps.map((c, i) => <ClampMark key={i} name={c.name} at={c.place} placed={placed} radius={drawn.radius} shape={shape} words={words} />)}
      {fresh ? fresh.others.map((o, i) => <OtherMark key={i} at={onPaper(placed, o)} />) : null}
      {ends.map(({ key, end, drawnAs }) => (
        <Fitting key={key} drawnAs={drawnAs} held={seen.held?.end === key} axis={axisOf(placed, end)} />
      ))}
      {gaps}
      {names}
      {solidNames}
      {dimensions?.figures}
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
      <path class="tube-fill" d={d} stroke-width={wide - 3} />
      <path class="centre-line" d={d} />
    </g>
  );
}

function knobOf(placed: Placed, end: End): Spot2 | undefined {
  const flat = inPaper(placed.view, end.port ?? end.way);
  const seat = onPaper(placed, end.seat);
  return flat.share < 0.35 ? undefined : { x: seat.x - flat.x * k_turn_handle, y: seat.y - flat.y * k_turn_handle };
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

/// Beside the nut, above or at the left first: dimensions stand below and at the right.
function endPlaces(placed: Placed, end: End, drawnAs: FittingOutline, R: number): Place[] {
  const first = drawnAs.spine[0]!;
  const flat = inPaper(placed.view, end.port ?? end.way);
  const d = 1.3 * R + 8;
  if (flat.share < 0.35) return [...around(first, [d]).filter((p) => p.anchor !== "middle"), ...around(first, [d, d + 10])];
  const square = { x: -flat.y, y: flat.x };
  const up = square.x + 1.5 * square.y <= 0 ? square : { x: flat.y, y: -flat.x };
  const at = (w: Spot2, far: number): Place => ({
    x: first.x + w.x * far, y: first.y + w.y * far + (w.y < -0.5 ? -1 : w.y > 0.5 ? 11 : 4.5),
    anchor: w.x > 0.4 ? "start" : w.x < -0.4 ? "end" : "middle",
  });
  return [at(up, d), at({ x: -up.x, y: -up.y }, d), ...around(first, [d + 6, d + 16])];
}

function SolidMark(props: { drawnAs: SolidOutline }): JSX.Element {
  const s = props.drawnAs;
  const d = s.thick ? line(s.thick.points) : "";
  return (
    <g class="solid">
      {s.thick ? <path class="solid-edge" d={d} stroke-width={s.thick.width} /> : null}
      {s.thick ? <path class="solid-fill" d={d} stroke-width={Math.max(1, s.thick.width - 2.4)} /> : null}
      {s.thick ? <path class="centre-line" d={d} /> : null}
      {s.outline === "" ? null : <path class={s.hatched === undefined ? "solid-line" : "solid-wall"} d={s.outline} />}
      {s.hatched ? <path class="piece-thin" d={s.hatched} /> : null}
    </g>
  );
}

/// Drawn under the hose: it shows where the hose leaves it.
function circleOf(bend: NonNullable<Shape["bend"]>, placed: Placed, cell: Cell): Spot2[] {
  const R = Math.hypot(bend.at.x - bend.centre.x, bend.at.y - bend.centre.y, bend.at.z - bend.centre.z) * placed.scale;
  const half = Math.min(Math.PI, (0.62 * Math.min(cell.w, cell.h)) / Math.max(R, 1));
  return bendCircle(bend.at, bend.centre, bend.square, half >= 2.2 ? Math.PI : half).map((p) => onPaper(placed, p));
}

function bendOf(shape: Shape, placed: Placed, cell: Cell, named: boolean, words: Words): JSX.Element | null {
  const bend = shape.bend!;
  const at = onPaper(placed, bend.at);
  const centre = onPaper(placed, bend.centre);
  const inner = { x: cell.x + 16, y: cell.y + 34, w: cell.w - 32, h: cell.h - 60 };
  const seen = clip(centre, at, inner);
  if (!seen) return null;
  const [from, to] = seen;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const u = { x: (to.x - from.x) / (length || 1), y: (to.y - from.y) / (length || 1) };
  let angle = (Math.atan2(u.y, u.x) * 180) / Math.PI;
  const flip = angle > 90.01 || angle <= -90;
  if (flip) angle += 180;
  // Towards the centre, where the hose is not.
  const share = length > 150 ? 0.42 : 0.5;
  const m = { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
  const limit = bend.limit === "" ? "" : `${bend.under ? "under the limit" : "limit"} ${bend.limit}`;
  const lines = [`R ${bend.text}`, ...(limit === "" ? [] : [limit])];
  const onLine = named && length > 116;
  words.along([from, to], onLine ? 16 : 3);
  // Too short an arrow for its figure: it stands where there is room, by the centre first.
  const beside = named && !onLine ? words.put(lines, [...around(from, [12, 24]), ...around(m, [16, 30, 46])], Infinity) : undefined;
  const atCentre = Math.hypot(from.x - centre.x, from.y - centre.y) < 0.5;
  const sideways = { x: -u.y, y: u.x };
  const arrow = `M${to.x} ${to.y}L${to.x - 9 * u.x + 2.8 * sideways.x} ${to.y - 9 * u.y + 2.8 * sideways.y}L${to.x - 9 * u.x - 2.8 * sideways.x} ${to.y - 9 * u.y - 2.8 * sideways.y}Z`;
  const broken = line([
    { x: from.x + 4 * sideways.x - 2 * u.x, y: from.y + 4 * sideways.y - 2 * u.y }, { x: from.x + 2 * u.x, y: from.y + 2 * u.y },
    { x: from.x - 2 * u.x, y: from.y - 2 * u.y }, { x: from.x - 4 * sideways.x + 2 * u.x, y: from.y - 4 * sideways.y + 2 * u.y },
  ]);
  return (
    <g class="bend">
      {length < 14 ? null : (
        <>
          <path class="thin" d={line([from, to])} />
          <path class="arrow" d={arrow} />
          {atCentre ? <path class="thin" d={`M${centre.x - 5} ${centre.y}h10M${centre.x} ${centre.y - 5}v10`} /> : <path class="thin" d={broken} />}
        </>
      )}
      {onLine ? (
        <g transform={`translate(${m.x} ${m.y}) rotate(${angle})`}>
          <text class="bend-text" y={-6} text-anchor="middle">R {bend.text}</text>
          {limit === "" ? null : <text class="bend-limit" y={16} text-anchor="middle">{limit}</text>}
        </g>
      ) : null}
      {beside ? (
        <g transform={`translate(${beside.x} ${beside.y})`}>
          <text class="bend-text" text-anchor={beside.anchor}>R {bend.text}</text>
          {limit === "" ? null : <text class="bend-limit" y={16} text-anchor={beside.anchor}>{limit}</text>}
        </g>
      ) : null}
    </g>
  );
}

/// How much of a gap's true length a view shows.
function shareOf(placed: Placed, gap: Gap): number {
  const a = onPaper(placed, gap.from);
  const b = onPaper(placed, gap.to);
  const true_ = Math.hypot(gap.to.x - gap.from.x, gap.to.y - gap.from.y, gap.to.z - gap.from.z) * placed.scale;
  return true_ < 1e-6 ? 0 : Math.hypot(b.x - a.x, b.y - a.y) / true_;
}

function GapMark(props: { gap: Gap; placed: Placed; words: Words }): JSX.Element | null {
  const { gap, placed, words } = props;
  const a = onPaper(placed, gap.from);
  const b = onPaper(placed, gap.to);
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const m = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  words.along([a, b], 3);
  const at = words.put([gap.text], around(m, [9, 16, 26, 38]), 8);
  return (
    <g class="dimension">
      {length > 18 ? <Dimension x1={a.x} y1={a.y} x2={b.x} y2={b.y} text="" /> : (
        <>
          <path class="gap-line" d={line([a, b])} />
          <circle class="leader-end" cx={a.x} cy={a.y} r={2} /><circle class="leader-end" cx={b.x} cy={b.y} r={2} />
        </>
      )}
      {at ? <text x={at.x} y={at.y} text-anchor={at.anchor}>{gap.text}</text> : null}
    </g>
  );
}

function ClampMark(props: { name: string; at: Vec; placed: Placed; radius: number; shape: Shape | undefined; words: Words }): JSX.Element {
  const { at, placed, shape, words } = props;
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
  const d = props.radius * placed.scale * 1.35 + 8;
  const label = words.put([props.name], around(c, [d, d + 10, d + 22]), 8);
  return (
    <g class="clamp">
      <path class="piece" d={piece.outline} />
      {piece.face === "" ? null : <path class="piece-line" d={piece.face} />}
      {label ? <text class="plan-label" x={label.x} y={label.y} text-anchor={label.anchor}>{props.name}</text> : null}
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

/// Between the seats, across and up the paper; extension lines go under everything else.
function dimensionsOf(near: End, far: End, placed: Placed, cell: Cell, unit: string, measured: { across: boolean; up: boolean }, at: { below: number; right: number }, words: Words): { lines: JSX.Element; figures: JSX.Element } {
  const a = onPaper(placed, near.seat);
  const b = onPaper(placed, far.seat);
  const across = Math.abs(b.x - a.x) / placed.scale;
  const up = Math.abs(b.y - a.y) / placed.scale;
  const y = cell.y + cell.h - at.below;
  const x = cell.x + cell.w - at.right;
  let lines = "";
  const figures: JSX.Element[] = [];
  const gap = 1.3 * 10;
  if (measured.across && across * placed.scale > 4) {
    lines += `M${a.x} ${Math.min(y - 8, a.y + gap)}V${y + 6}M${b.x} ${Math.min(y - 8, b.y + gap)}V${y + 6}`;
    const [l, r] = a.x < b.x ? [a.x, b.x] : [b.x, a.x];
    const text = dimensionText(across, unit);
    words.taken([text], { x: (l + r) / 2, y: y - 5, anchor: "middle" });
    words.along([{ x: l, y }, { x: r, y }], 3);
    figures.push(<Measure key="d" x1={l} y1={y} x2={r} y2={y} text={text} />);
  }
  if (measured.up && up * placed.scale > 4) {
    lines += `M${Math.min(x - 8, a.x + gap)} ${a.y}H${x + 6}M${Math.min(x - 8, b.x + gap)} ${b.y}H${x + 6}`;
    const [low, high] = a.y > b.y ? [a.y, b.y] : [b.y, a.y];
    const text = dimensionText(up, unit);
    words.along([{ x, y: low }, { x, y: high }], 3);
    words.block({ x: x - 9, y: (low + high) / 2 }, 14, text.length * 7.5);
    figures.push(<Measure key="g" x1={x} y1={low} x2={x} y2={high} text={text} />);
  }
  return { lines: <path class="extension" d={lines} />, figures: <g class="dimensions">{figures}</g> };
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
