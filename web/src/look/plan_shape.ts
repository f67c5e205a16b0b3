/// Balloons stand in two columns beside the plan, so that no label ever covers the drawing or
/// another label; leaders run to the marked places and cross as little as they can.

export interface Row {
  side: "left" | "right";
  y: number;
}

/// @return for each point the side and height of its balloon; undefined where no room is left.
export function balloonRows(points: { x: number; y: number }[], width: number, top: number, bottom: number, pitch: number): (Row | undefined)[] {
  const room = Math.max(1, Math.floor((bottom - top) / pitch) + 1);
  const order = points.map((p, i) => ({ ...p, i }));
  let left = order.filter((p) => p.x < width / 2).sort((a, b) => a.x - b.x);
  let right = order.filter((p) => p.x >= width / 2).sort((a, b) => b.x - a.x);
  // A full column hands its innermost points to the other one.
  while (left.length > room && right.length < room) right.push(left.pop()!);
  while (right.length > room && left.length < room) left.push(right.pop()!);
  left = left.slice(0, room);
  right = right.slice(0, room);
  const rows: (Row | undefined)[] = new Array<Row | undefined>(points.length).fill(undefined);
  for (const [side, column] of [["left", left], ["right", right]] as const) {
    const sorted = [...column].sort((a, b) => a.y - b.y);
    let edge = top - pitch;
    const ys = sorted.map((p) => (edge = Math.max(p.y, edge + pitch)));
    edge = bottom + pitch;
    for (let k = ys.length - 1; k >= 0; k--) ys[k] = edge = Math.min(ys[k]!, edge - pitch);
    sorted.forEach((p, k) => (rows[p.i] = { side, y: ys[k]! }));
  }
  return rows;
}
