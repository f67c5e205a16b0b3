/// What the drawing shows of the input: the fittings where they were entered, what is near, and
/// the input again after a fitting was moved or turned.

import { isFigure, type Json, type JsonObject } from "../api/types";
import type { Draft, NumberDraft, RecordDraft } from "../form/draft";
import { readDraft, readLength, millimetres, trimmed, writeLength } from "./lengths";
import { add, size, sub, times, turned, unit, vec, type Vec } from "./space";

export type EndKey = "near_end" | "far_end";

export interface End {
  seat: Vec;
  /// The way the hose leaves the fitting.
  way: Vec;
  /// An elbow: out of the port, and the corner where its two axes meet.
  port?: Vec;
  corner?: Vec;
  /// Where the hose can bend.
  mouth: Vec;
  rigid: number;
  male: boolean;
}

export type Solid =
  | { is: "ball"; name: string; centre: Vec; radius: number }
  | { is: "tube"; name: string; from: Vec; to: Vec; radius: number }
  | { is: "box"; name: string; centre: Vec; half: Vec }
  | { is: "wall"; name: string; point: Vec; free: Vec };

export interface Clamp {
  name: string;
  place: Vec;
}

export interface Drawn {
  near: End | undefined;
  far: End | undefined;
  /// Of the hose, outside.
  radius: number;
  solids: Solid[];
  /// Names of what must be kept clear of and can't be drawn from the fields: meshes, half-entered.
  undrawn: string[];
  clamps: Clamp[];
}

function record(value: Json | undefined): JsonObject | undefined {
  return typeof value === "object" && value !== null && !Array.isArray(value) ? value : undefined;
}

function place(value: Json | undefined): Vec | undefined {
  const p = record(value);
  const x = readLength(p?.["x"]);
  const y = readLength(p?.["y"]);
  const z = readLength(p?.["z"]);
  return x === undefined || y === undefined || z === undefined ? undefined : vec(x, y, z);
}

function way(value: Json | undefined): Vec | undefined {
  const w = record(value);
  const of = (key: string): number => (typeof w?.[key] === "number" ? (w[key] as number) : 0);
  return w ? unit(vec(of("x"), of("y"), of("z"))) : undefined;
}

export function isElbow(form: unknown): boolean {
  return form === "elbow-45" || form === "elbow-90";
}

export function endOf(value: Json | undefined): End | undefined {
  const e = record(value);
  const seat = place(e?.["seat"]);
  const leaves = way(e?.["leaves"]);
  if (!e || !seat || !leaves) return undefined;
  const rigid = readLength(e["rigid"]) ?? 0;
  const port = isElbow(e["form"]) ? way(e["port"]) : undefined;
  const male = e["form"] === "male-thread";
  if (!port) return { seat, way: leaves, mouth: add(seat, times(leaves, rigid)), rigid, male };
  const corner = add(seat, times(port, readLength(e["drop"]) ?? 0));
  return { seat, way: leaves, port, corner, mouth: add(corner, times(leaves, rigid)), rigid, male };
}

function solidOf(value: Json): Solid | undefined {
  const k = record(value);
  const s = record(k?.["shape"]);
  const name = String(k?.["name"] ?? "");
  if (!s) return undefined;
  const radius = readLength(s["radius"]);
  if (s["is"] === "ball") {
    const centre = place(s["centre"]);
    return centre && radius !== undefined ? { is: "ball", name, centre, radius } : undefined;
  }
  if (s["is"] === "tube") {
    const from = place(s["from"]);
    const to = place(s["to"]);
    return from && to && radius !== undefined ? { is: "tube", name, from, to, radius } : undefined;
  }
  if (s["is"] === "box") {
    const centre = place(s["centre"]);
    const [x, y, z] = ["size_x", "size_y", "size_z"].map((key) => readLength(s[key]));
    return centre && x !== undefined && y !== undefined && z !== undefined ? { is: "box", name, centre, half: vec(x / 2, y / 2, z / 2) } : undefined;
  }
  if (s["is"] === "wall") {
    const point = place(s["point"]);
    const free = way(s["free_side"]);
    return point && free ? { is: "wall", name, point, free } : undefined;
  }
  return undefined;
}

const list = (value: Json | undefined): Json[] => (Array.isArray(value) ? value : []);

export function drawnOf(input: JsonObject): Drawn {
  return {
    near: endOf(input["near_end"]),
    far: endOf(input["far_end"]),
    radius: (readLength(input["outside_diameter"]) ?? 0) / 2,
    solids: list(input["keep_outs"]).map(solidOf).filter((s): s is Solid => s !== undefined),
    undrawn: list(input["keep_outs"]).filter((k) => solidOf(k) === undefined).map((k) => String(record(k)?.["name"] ?? "")).filter((n) => n !== ""),
    clamps: list(input["clamps"]).flatMap((c) => {
      const at = place(record(c)?.["place"]);
      return at ? [{ name: String(record(c)?.["name"] ?? ""), place: at }] : [];
    }),
  };
}

/// The point of a solid's surface that is nearest to `p`; of its inside where `p` is in it.
export function nearestOn(solid: Solid, p: Vec): Vec {
  const out = (axis: Vec, radius: number): Vec => {
    const away = sub(p, axis);
    const d = size(away);
    return d < 1e-9 ? axis : add(axis, times(away, Math.min(1, radius / d)));
  };
  switch (solid.is) {
    case "ball":
      return out(solid.centre, solid.radius);
    case "tube": {
      const d = sub(solid.to, solid.from);
      const l2 = d.x * d.x + d.y * d.y + d.z * d.z;
      const q = sub(p, solid.from);
      const t = l2 === 0 ? 0 : Math.min(1, Math.max(0, (q.x * d.x + q.y * d.y + q.z * d.z) / l2));
      return out(add(solid.from, times(d, t)), solid.radius);
    }
    case "box": {
      const hold = (v: number, c: number, h: number): number => Math.min(c + h, Math.max(c - h, v));
      const { centre: c, half: h } = solid;
      return vec(hold(p.x, c.x, h.x), hold(p.y, c.y, h.y), hold(p.z, c.z, h.z));
    }
    case "wall": {
      const above = (p.x - solid.point.x) * solid.free.x + (p.y - solid.point.y) * solid.free.y + (p.z - solid.point.z) * solid.free.z;
      return sub(p, times(solid.free, above));
    }
  }
}

/// A figure of an answer, in millimetres of the drawing.
export function mmOf(value: Json | undefined): number | undefined {
  return isFigure(value) ? millimetres(value.value, value.unit) : undefined;
}

export function spotOf(value: Json | undefined): Vec | undefined {
  const s = record(value);
  const x = mmOf(s?.["x"]);
  const y = mmOf(s?.["y"]);
  const z = mmOf(s?.["z"]);
  return x === undefined || y === undefined || z === undefined ? undefined : vec(x, y, z);
}

const k_axes = ["x", "y", "z"] as const;

const recordIn = (draft: RecordDraft, key: string): RecordDraft => {
  const found = draft[key];
  return typeof found === "object" && !Array.isArray(found) ? (found as RecordDraft) : {};
};

function numberIn(draft: Draft | undefined): NumberDraft | undefined {
  return typeof draft === "object" && !Array.isArray(draft) && "n" in draft ? (draft as NumberDraft) : undefined;
}

/// The unit in which an end's seat was entered: its steps are those of that tape.
export function unitOfSeat(draft: RecordDraft, end: EndKey): string {
  return numberIn(recordIn(recordIn(draft, end), "seat")["x"])?.u ?? "in";
}

/// The seat moved by so much; a coordinate that does not move keeps what was typed.
export function moveSeat(draft: RecordDraft, end: EndKey, by: Vec): RecordDraft {
  const whole = recordIn(draft, end);
  const seat = { ...recordIn(whole, "seat") };
  for (const key of k_axes) {
    const now = numberIn(seat[key]);
    const mm = now ? readDraft(now) : undefined;
    if (!now || mm === undefined || Math.abs(by[key]) < 1e-9) continue;
    seat[key] = writeLength(mm + by[key], now.u);
  }
  return { ...draft, [end]: { ...whole, seat } };
}

/// The whole fitting turned about its seat: the way the hose leaves it, and an elbow's port.
export function turnEnd(draft: RecordDraft, end: EndKey, axis: Vec, radians: number): RecordDraft {
  const whole = { ...recordIn(draft, end) };
  for (const key of ["leaves", "port"]) {
    if (key === "port" && !isElbow(whole["form"])) continue;
    const now = recordIn(whole, key);
    const of = (k: string): number => Number(String(now[k] ?? "").trim() || 0);
    const before = unit(vec(of("x"), of("y"), of("z")));
    if (!before) continue;
    const after = turned(before, axis, radians);
    whole[key] = { x: trimmed(after.x, 4), y: trimmed(after.y, 4), z: trimmed(after.z, 4) };
  }
  return { ...draft, [end]: whole };
}

/// Which axes a view can move, for the words of a handle.
export function seatWords(draft: RecordDraft, end: EndKey): string {
  const seat = recordIn(recordIn(draft, end), "seat");
  const of = (key: string): string => {
    const n = numberIn(seat[key]);
    return n ? `${n.n} ${n.u}` : "";
  };
  return `aft ${of("x")}, right ${of("y")}, up ${of("z")}`;
}

export function wayWords(draft: RecordDraft, end: EndKey): string {
  const leaves = recordIn(recordIn(draft, end), "leaves");
  const of = (key: string): string => String(leaves[key] ?? "").trim() || "0";
  return `aft ${of("x")}, right ${of("y")}, up ${of("z")}`;
}
