/// Vectors in aircraft axes (x aft, y to the right, z up), in millimetres of the drawing.

export interface Vec {
  x: number;
  y: number;
  z: number;
}

export const vec = (x: number, y: number, z: number): Vec => ({ x, y, z });
export const add = (a: Vec, b: Vec): Vec => vec(a.x + b.x, a.y + b.y, a.z + b.z);
export const sub = (a: Vec, b: Vec): Vec => vec(a.x - b.x, a.y - b.y, a.z - b.z);
export const times = (a: Vec, s: number): Vec => vec(a.x * s, a.y * s, a.z * s);
export const dot = (a: Vec, b: Vec): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const cross = (a: Vec, b: Vec): Vec => vec(a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);
export const size = (a: Vec): number => Math.hypot(a.x, a.y, a.z);

/// @return undefined for a direction of no length.
export function unit(a: Vec): Vec | undefined {
  const l = size(a);
  return l > 1e-9 ? times(a, 1 / l) : undefined;
}

/// Turned about an axis of unit length, right-handed.
export function turned(a: Vec, axis: Vec, radians: number): Vec {
  const c = Math.cos(radians);
  const s = Math.sin(radians);
  const along = dot(axis, a) * (1 - c);
  const side = cross(axis, a);
  return add(add(times(a, c), times(side, s)), times(axis, along));
}

export interface Bounds {
  low: Vec;
  high: Vec;
}

export function boundsOf(points: Vec[]): Bounds | undefined {
  if (points.length === 0) return undefined;
  const of = (key: "x" | "y" | "z", pick: (...n: number[]) => number): number => pick(...points.map((p) => p[key]));
  return {
    low: vec(of("x", Math.min), of("y", Math.min), of("z", Math.min)),
    high: vec(of("x", Math.max), of("y", Math.max), of("z", Math.max)),
  };
}

export function corners(b: Bounds): Vec[] {
  const out: Vec[] = [];
  for (const x of [b.low.x, b.high.x]) for (const y of [b.low.y, b.high.y]) for (const z of [b.low.z, b.high.z]) out.push(vec(x, y, z));
  return out;
}
