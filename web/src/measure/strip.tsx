/// The group at a glance: each reading, its verdict and its stripe as they come in.

import type { JSX } from "preact";
import type { CheckGroup } from "../api/views";
import { Printed } from "../look/figure";
import { Stripe } from "../look/stripe";
import { standingState, standingWords } from "../pages/standing";
import { address } from "../route/route";
import type { Line } from "./session";

export function said(line: Line): string {
  if (line.waits) return "waits, not judged";
  if (!line.read) return "not read yet";
  if (!line.judged) return "kept";
  return standingWords(line.check.verdict);
}

export function Strip(props: { group: CheckGroup; lines: Line[]; now: string }): JSX.Element {
  const { group, lines, now } = props;
  return (
    <ol class="strip" aria-label={`Readings of ${group.title}`}>
      {lines.map((l) => {
        const state = l.judged ? standingState(l.check.verdict, l.check.used) : { is: "unknown" as const };
        const out = l.judged && l.check.stands_out;
        return (
          <li key={l.check.id}>
            <a href={address("measure", ["group", group.id, l.check.id])} aria-current={l.check.id === now ? "step" : undefined} class={out ? "cell out" : "cell"}>
              <span class="cell-name">{l.name}</span>
              <Stripe state={state} size="small" />
              <span class="cell-figure">{l.read && l.text !== "" ? <Printed text={l.text} /> : "–"}</span>
              <span class="cell-words">{said(l)}{out ? <strong class="line">stands out</strong> : null}</span>
            </a>
          </li>
        );
      })}
    </ol>
  );
}

/// How far along, as small as it can be: the words say it, the marks show it.
export function Along(props: { lines: Line[]; now: string }): JSX.Element {
  const { lines, now } = props;
  const at = lines.findIndex((l) => l.check.id === now);
  const read = lines.filter((l) => l.read).length;
  return (
    <div class="along">
      <span class="along-words">{at + 1} of {lines.length}<span class="help"> · {read} read</span></span>
      <svg class="along-marks" viewBox={`0 0 ${lines.length * 26} 22`} aria-hidden="true" focusable="false">
        {lines.map((l, i) => (
          <g key={l.check.id} transform={`translate(${i * 26} 0)`}>
            <Mark line={l} />
            {i === at ? <path class="along-now" d="M4 20.5H22" /> : null}
          </g>
        ))}
      </svg>
    </div>
  );
}

/// By shape: full, torn, hatched, open.
function Mark(props: { line: Line }): JSX.Element {
  const { line } = props;
  const verdict = line.judged ? line.check.verdict : "";
  if (verdict === "conforms") return <rect class="along-full" x={6} y={2} width={14} height={14} />;
  if (verdict === "does-not-conform") return <path class="along-full" d="M6 2H20L18 7L14.5 4.5L11 8L6 5.5ZM6 16V12L10 10L13 13L17 9.5L20 12V16Z" />;
  if (verdict === "undecided") return <path class="along-hatch" d="M6.5 2.5H19.5V15.5H6.5ZM6.5 9L13 2.5M6.5 15.5L19.5 2.5M13 15.5L19.5 9" />;
  return <rect class={line.read ? "along-open read" : "along-open"} x={6.5} y={2.5} width={13} height={13} />;
}
