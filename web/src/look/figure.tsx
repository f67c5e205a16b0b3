/// A number never stands alone: value, uncertainty, unit.

import type { JSX } from "preact";
import type { Figure } from "../api/types";
import { digits, unitWords } from "./digits";

export function FigureText(props: { figure: Figure }): JSX.Element {
  const { figure } = props;
  if (figure.text) return <Printed text={figure.text} />;
  const d = digits(figure);
  return (
    <span class="figure">
      {d.value}
      {d.U === undefined ? null : <span class="spread"> ± {d.U}</span>}
      <span class="unit"> {unitWords(figure.unit)}</span>
    </span>
  );
}

/// Text as the server printed it ("85.20 ohm +- 0.70 ohm"), units smaller than their numbers.
export function Printed(props: { text: string }): JSX.Element {
  const parts = props.text.replaceAll("+-", "±").split(/(-?\d[\d.,\u202f ]*(?:e[+-]?\d+)?)/i).filter((p) => p !== "");
  return (
    <span class="figure">
      {parts.map((p, i) => (/^-?\d/.test(p) ? p : <span key={i} class="unit">{unitWords(p)}</span>))}
    </span>
  );
}

/// A sentence of the server with its figures: the words as they are, a unit after its number smaller.
export function Worded(props: { text: string }): JSX.Element {
  const parts = unitWords(props.text).replaceAll("+-", "±").split(/((?<=\d) (?:in|ft|mm|cm|m|psi|bar|kPa|lb|kg|g|N|°F|°C|°|degrees|%)(?![\w-]))/);
  return <>{parts.map((p, i) => (i % 2 === 1 ? <span key={i} class="unit">{`\u00a0${p.slice(1)}`}</span> : p))}</>;
}
