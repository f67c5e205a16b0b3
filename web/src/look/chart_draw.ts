/// Draws a trend with uPlot: ink line, limit as a line with its label on it, readings as dots
/// with uncertainty bars. Colours come from the page's roles.

import uPlot from "uplot";
import { plainNumber } from "./digits";

export interface PlotData {
  /// "engine hours", "h"
  x: { label: string; unit: string };
  y: { label: string; unit: string };
  points: { x: number; y: number; U?: number }[];
  limits?: { y: number; label: string }[];
  /// A fitted line with its band, already computed.
  fit?: { x: number; y: number; low?: number; high?: number }[];
}

export function drawPlot(place: HTMLElement, data: PlotData): () => void {
  const role = (name: string): string => getComputedStyle(place).getPropertyValue(name).trim();
  const ink = role("--ink");
  const second = role("--ink-2");
  const line = role("--zinc-3");
  const lacquer = role("--lacquer");
  const points = [...data.points].sort((a, b) => a.x - b.x);
  const fit = data.fit ?? [];
  const xs = [...new Set([...points.map((p) => p.x), ...fit.map((p) => p.x)])].sort((a, b) => a - b);
  const at = <P extends { x: number }>(list: P[], pick: (p: P) => number | undefined): (number | null)[] =>
    xs.map((x) => {
      const found = list.find((p) => p.x === x);
      return found === undefined ? null : pick(found) ?? null;
    });
  const width = (): number => Math.max(240, place.clientWidth);
  const font = "13px system-ui, sans-serif";
  const marks = (u: uPlot): void => {
    const { ctx } = u;
    ctx.save();
    ctx.font = `${13 * devicePixelRatio}px system-ui, sans-serif`;
    ctx.textAlign = "left";
    ctx.textBaseline = "alphabetic";
    for (const limit of data.limits ?? []) {
      const y = u.valToPos(limit.y, "y", true);
      ctx.strokeStyle = ink;
      ctx.lineWidth = 1.5 * devicePixelRatio;
      ctx.setLineDash([4 * devicePixelRatio, 4 * devicePixelRatio]);
      ctx.beginPath();
      ctx.moveTo(u.bbox.left, y);
      ctx.lineTo(u.bbox.left + u.bbox.width, y);
      ctx.stroke();
      ctx.fillStyle = second;
      ctx.fillText(limit.label, u.bbox.left + 6 * devicePixelRatio, y - 6 * devicePixelRatio);
    }
    ctx.setLineDash([]);
    points.forEach((p, i) => {
      const x = u.valToPos(p.x, "x", true);
      const newest = i === points.length - 1;
      ctx.strokeStyle = ctx.fillStyle = newest ? lacquer : ink;
      ctx.lineWidth = 1.5 * devicePixelRatio;
      if (p.U !== undefined) {
        ctx.beginPath();
        ctx.moveTo(x, u.valToPos(p.y - p.U, "y", true));
        ctx.lineTo(x, u.valToPos(p.y + p.U, "y", true));
        ctx.stroke();
      }
      ctx.beginPath();
      ctx.arc(x, u.valToPos(p.y, "y", true), (newest ? 5 : 3.5) * devicePixelRatio, 0, 2 * Math.PI);
      ctx.fill();
    });
    ctx.restore();
  };
  const values = [...points.flatMap((p) => [p.y - (p.U ?? 0), p.y + (p.U ?? 0)]), ...(data.limits ?? []).map((l) => l.y),
    ...fit.flatMap((p) => [p.low ?? p.y, p.high ?? p.y])];
  const low = Math.min(...values);
  const high = Math.max(...values);
  const first = xs[0] ?? 0;
  const last = xs[xs.length - 1] ?? 1;
  const reach = last - first || 1;
  const air = 0.1 * (high - low || 1);
  const axis = (label: string, unit: string): uPlot.Axis => ({
    label: `${label}, ${unit}`, labelFont: font, font, stroke: second, labelSize: 24,
    grid: { stroke: line, width: 1 }, ticks: { stroke: line, width: 1 },
    values: (_, splits) => splits.map((v) => plainNumber(v)),
  });
  const plot = new uPlot(
    {
      width: width(),
      height: 260,
      legend: { show: false },
      cursor: { show: false },
      // Air at the right for the newest dot, and above for the words on the limit.
      scales: { x: { time: false, range: [first - 0.03 * reach, last + 0.05 * reach] }, y: { range: [low - air, high + 1.8 * air] } },
      axes: [axis(data.x.label, data.x.unit), axis(data.y.label, data.y.unit)],
      series: [
        {},
        { stroke: second, width: 1.5, spanGaps: true, points: { show: false } },
        { stroke: second, width: 1, dash: [2, 3], spanGaps: true, points: { show: false } },
        { stroke: second, width: 1, dash: [2, 3], spanGaps: true, points: { show: false } },
      ],
      hooks: { draw: [marks] },
    },
    [xs, at(fit, (p) => p.y), at(fit, (p) => p.low), at(fit, (p) => p.high)] as uPlot.AlignedData,
    place,
  );
  const resize = new ResizeObserver(() => plot.setSize({ width: width(), height: 260 }));
  resize.observe(place);
  return () => {
    resize.disconnect();
    plot.destroy();
  };
}
