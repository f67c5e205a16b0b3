/// Where the probes go, drawn for a lead; in words for everything else.

import type { JSX } from "preact";
import { Drawing } from "./sheet";

export function Probes(props: { kind: string; probes: string }): JSX.Element | null {
  const { kind, probes } = props;
  if (kind !== "lead-resistance") return probes === "" ? null : <p class="probe-words"><strong>Probes:</strong> {probes}</p>;
  return (
    <>
      <Drawing w={360} h={86} class="probes" words={`A lead with one probe at each end: ${probes}`}>
        <path class="lead" d="M62 30C120 4 170 62 232 42S290 34 298 34" />
        <rect class="outline filled" x={30} y={20} width={32} height={22} rx={3} />
        <rect class="outline filled" x={298} y={24} width={36} height={20} rx={3} />
        <path class="outline" d="M46 42V64M316 44V64" />
        <circle class="probe-end" cx={46} cy={69} r={5.5} />
        <circle class="outline" cx={316} cy={69} r={5.5} />
        <text class="plan-label" x={60} y={74}>tower end</text>
        <text class="plan-label" x={302} y={74} text-anchor="end">plug end</text>
      </Drawing>
      {probes === "" ? null : <p class="probe-words">{probes}</p>}
    </>
  );
}
