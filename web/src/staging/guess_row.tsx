/// One change with what the owner guesses of it.

import type { JSX } from "preact";
import type { ChangeLine } from "../api/views";
import { figureTrouble, troubles, type Guess } from "./guess";

export function GuessRow(props: { change: ChangeLine; guess: Guess; out: boolean; set: (g: Guess) => void; leave: (out: boolean) => void }): JSX.Element {
  const { change, guess } = props;
  const field = (name: "chance" | "look" | "fly", label: string, unit: string, most: number): JSX.Element => {
    const wrong = figureTrouble(guess[name], 0, most);
    return (
      <label>{label}
        <span class="with-unit"><input class="number" inputMode="decimal" value={guess[name]} aria-invalid={wrong !== undefined || undefined} onInput={(e) => props.set({ ...guess, [name]: e.currentTarget.value })} /><span class="unit-only">{unit}</span></span>
        {wrong ? <span class="wrong">{wrong}</span> : null}
      </label>
    );
  };
  return (
    <li class="guess">
      <label class="tick"><input type="checkbox" checked={!props.out} onChange={(e) => props.leave(!e.currentTarget.checked)} /><span><strong>{change.title}</strong></span></label>
      <p class="help">{[change.position_name, change.system, change.grade].filter((t) => t !== "").join(" · ")}</p>
      {props.out ? <p class="help">Left out of this plan.</p> : (
        <details class="more" open={troubles(guess).length > 0 || undefined}>
          <summary>{`${guess.chance} % · look ${guess.look} h · fly ${guess.fly} h`}{guess.symptoms ? ` · ${guess.symptoms}` : ""}</summary>
        <div class="guess-fields">
          {field("chance", "Chance of a fault", "%", 100)}
          {field("look", "One look for it", "h", 1000)}
          {field("fly", "To fly", "h", 1000)}
          <label class="wide">It would show as<input type="text" value={guess.symptoms} onInput={(e) => props.set({ ...guess, symptoms: e.currentTarget.value })} /></label>
        </div>
        </details>
      )}
    </li>
  );
}
