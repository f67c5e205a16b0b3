/// One stage of the plan: what goes in, how long it flies, where to look, what looks alike.

import type { JSX } from "preact";
import type { Figure } from "../api/types";
import { unitWords } from "../look/digits";
import { address } from "../route/route";

/// Guesses went in: two digits are what comes out.
const short = (f: Figure): string => `${Number(f.value.toPrecision(2))}\u00a0${unitWords(f.unit)}`;

export interface PlannedStage {
  changes: string[]; hours: Figure; on_the_ground: boolean; cost: number; risk: Figure;
  look_first: { symptom: string; look_at: string[] }[];
}

export function StageSheet(props: {
  number: number; of: number; changes: { id: string; name: string }[]; figures: PlannedStage | undefined;
  alike: { symptom: string; names: string[] }[]; move: (id: string, to: number) => void;
}): JSX.Element {
  const { number, figures } = props;
  return (
    <li class="stage-sheet">
      <h3>Stage {number}</h3>
      <ul class="plain">
        {props.changes.map((c) => (
          <li key={c.id} class="in-stage">
            <strong>{c.name}</strong>
            <label class="move"><span class="visually-hidden">Stage of {c.name}</span>
              <select value={number - 1} onChange={(e) => props.move(c.id, Number(e.currentTarget.value))}>
                {Array.from({ length: props.of }, (_, i) => <option key={i} value={i}>Stage {i + 1}</option>)}
                {props.changes.length > 1 ? <option value={props.of}>A stage of its own</option> : null}
              </select>
            </label>
          </li>
        ))}
      </ul>
      {figures ? (
        <p>{figures.on_the_ground ? "Proven on the ground" : <>Fly {short(figures.hours)} before the next is opened</>}; chance of a fault {short(figures.risk)}; {figures.cost.toFixed(1)} h of work expected.</p>
      ) : null}
      {props.alike.length > 0 ? <ul class="alike">{props.alike.map((a) => <li key={a.symptom}>If there is <em>{a.symptom}</em>: {a.names.join(", or ")}.</li>)}</ul> : <p class="help">No two of them show alike.</p>}
      {figures && figures.look_first.some((l) => l.look_at.length > 1) ? (
        <ul>{figures.look_first.filter((l) => l.look_at.length > 1).map((l) => <li key={l.symptom}>With {l.symptom}, look at: {l.look_at.join(", then ")}.</li>)}</ul>
      ) : null}
      <p class="form-acts"><a class="button" href={address("work", ["act", "plan-stage"], { "start.changes": props.changes.map((c) => c.id).join(","), back: "#/work/staging" })}>Make it a stage</a></p>
    </li>
  );
}
