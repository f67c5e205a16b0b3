/// The answer as the drawing needs it.

import { isFigure, type CalcAnswer, type Json, type JsonObject } from "../api/types";
import { plainNumber, unitWords } from "../look/digits";
import { mmOf, nearestOn, spotOf, type Drawn, type Solid } from "./drawn";
import { front, inPaper, side, top, type ViewName } from "./views";
import { add, sub, times, unit, vec, type Vec } from "./space";

export interface Shape {
  points: Vec[];
  stations: number[];
  bend?: { at: Vec; centre: Vec; square: Vec; text: string; limit: string; under: boolean };
  others: Vec[];
  unit: string;
}

const rows = (value: Json | undefined): JsonObject[] => (Array.isArray(value) ? (value as JsonObject[]) : []);

export function shapeOf(answer: JsonObject): Shape {
  const points: Vec[] = [];
  const stations: number[] = [];
  for (const row of rows(answer["points"])) {
    const p = spotOf(row);
    if (!p) continue;
    points.push(p);
    stations.push(mmOf(row["station"]) ?? 0);
  }
  const bend = answer["bend"] as JsonObject | null | undefined;
  const at = spotOf(bend?.["at"]);
  const centre = spotOf(bend?.["centre"]);
  const way = bend?.["square"] as { x?: number; y?: number; z?: number } | undefined;
  const square = way ? unit(vec(way.x ?? 0, way.y ?? 0, way.z ?? 0)) : undefined;
  const overall = answer["overall"];
  return {
    points, stations,
    ...(at && centre && square ? { bend: { at, centre, square, text: figureText(answer["tightest_radius"]), limit: figureText(answer["least_radius"]), under: (mmOf(answer["in_hand"]) ?? 0) < 0 } } : {}),
    others: rows(answer["other_shapes"]).flatMap((o) => {
      const middle = spotOf({ x: o["middle_x"], y: o["middle_y"], z: o["middle_z"] } as JsonObject);
      return middle ? [middle] : [];
    }),
    unit: isFigure(overall) ? overall.unit : "in",
  };
}

export function figureText(value: Json | undefined): string {
  if (!isFigure(value)) return "";
  return unitWords(value.text ?? `${plainNumber(value.value)} ${value.unit}`);
}

export function pointAt(shape: Shape, station: number): Vec | undefined {
  const { points, stations } = shape;
  for (let i = 1; i < points.length; i++) {
    const a = stations[i - 1]!;
    const b = stations[i]!;
    if (station <= b || i === points.length - 1) {
      const t = b > a ? Math.min(1, Math.max(0, (station - a) / (b - a))) : 0;
      return add(points[i - 1]!, times(sub(points[i]!, points[i - 1]!), t));
    }
  }
  return points[0];
}

/// The least gap to each thing, from the skin of the hose to its surface.
export interface Gap {
  from: Vec;
  to: Vec;
  text: string;
  /// The view that shows most of its true length.
  view: ViewName;
}

export function gapsOf(sheet: CalcAnswer | undefined, shape: Shape, drawn: Drawn): Gap[] {
  const length = sheet?.answer["length"] as JsonObject | undefined;
  return rows(length?.["near"]).flatMap((near) => {
    const thing = drawn.solids.find((s: Solid) => s.name === near["name"]);
    const station = mmOf(near["at"]);
    const p = station === undefined ? undefined : pointAt(shape, station);
    if (!thing || !p) return [];
    const to = nearestOn(thing, p);
    const way = unit(sub(to, p));
    return way ? [{ from: add(p, times(way, drawn.radius)), to, text: figureText(near["gap"]), view: flattest(way) }] : [];
  });
}

function flattest(way: Vec): ViewName {
  return [top, side, front].reduce((best, v) => (inPaper(v, way).share > inPaper(best, way).share + 0.02 ? v : best)).name;
}

export function ghostsOf(sheet: CalcAnswer | undefined): Vec[][] {
  return rows(sheet?.answer["ghosts"]).map((g) => rows(g["points"]).flatMap((p) => spotOf(p) ?? []));
}
