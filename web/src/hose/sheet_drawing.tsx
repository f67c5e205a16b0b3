/// The drawing sheet: four views on a laptop and on paper, one at a time on a phone.

import { useRef } from "preact/hooks";
import type { JSX } from "preact";
import { Handles, TurnGround, type Moving } from "./handles";
import type { Laid } from "./frame";
import { dot } from "./space";
import { front, side, top, type Turn, type View, type ViewName } from "./views";
import { ViewDrawing, type Seen } from "./view_drawing";

export function SheetDrawing(props: {
  laid: Laid;
  seen: Seen;
  turn: Turn;
  setTurn?: (turn: Turn) => void;
  moving?: Moving;
  words: string;
  class?: string;
  dimensionsAt: { below: number; right: number };
}): JSX.Element {
  const { laid, seen, moving, setTurn } = props;
  const svg = useRef<SVGSVGElement>(null);
  const ratio = (): number => (svg.current?.getBoundingClientRect().width ?? laid.w) / laid.w || 1;
  const alone = laid.cells.length === 1;
  const flattest = bestFor(seen);
  return (
    <svg
      ref={svg} class={`drawing hose-sheet ${props.class ?? ""}`} viewBox={`0 0 ${laid.w} ${laid.h}`} width={laid.w} height={laid.h}
      role={moving ? "group" : "img"} aria-label={props.words}
    >
      <rect class="sheet-edge" x={1} y={1} width={laid.w - 2} height={laid.h - 2} />
      {laid.cells.map(({ cell, placed }) => {
        const { name } = placed.view;
        return (
          <g key={name} data-view={name}>
            {name === "turned" && setTurn ? <TurnGround cell={cell} turn={props.turn} set={setTurn} /> : null}
            {cell.x > 0 ? <path class="cell-rule" d={`M${cell.x} ${cell.y + 12}V${cell.y + cell.h - 12}`} /> : null}
            {cell.y > 0 ? <path class="cell-rule" d={`M${cell.x + 12} ${cell.y}H${cell.x + cell.w - 12}`} /> : null}
            <ViewDrawing
              seen={seen} cell={cell} placed={placed} alone={alone} dimensionsAt={props.dimensionsAt}
              measured={{
                across: name !== "turned" && (alone || name === "side"),
                up: name !== "turned" && (alone || name === "side" || name === "top"),
                radius: alone || name === flattest,
              }}
            />
            {moving ? <Handles placed={placed} drawn={seen.drawn} moving={moving} ratio={ratio} /> : null}
          </g>
        );
      })}
    </svg>
  );
}

/// The view that sees the circle of the tightest bend most nearly round carries its figure.
function bestFor(seen: Seen): ViewName {
  const square = seen.shape?.bend?.square;
  if (!square) return "top";
  const flatness = (v: View): number => Math.abs(dot(v.towards, square));
  return [top, side, front].reduce((best, v) => (flatness(v) > flatness(best) + 0.05 ? v : best)).name;
}
