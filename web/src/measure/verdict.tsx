/// What the server says of the reading that stands in the field, and what it is judged by.

import type { JSX } from "preact";
import type { CheckLine, Judged } from "../api/views";
import { sentence } from "../form/form";
import { verdictText } from "../look/answer";
import { AcceptanceBand } from "../look/band";
import { plainNumber, unitWords } from "../look/digits";
import { address } from "../route/route";

function headline(judged: Judged): string {
  return judged.verdict === "undecided" ? verdictText(judged.verdict) : sentence(judged.words).slice(0, -1);
}

/// For a screen reader, politely and whole; only the answer to what stands in the field now.
export function spoken(judged: Judged): string {
  return [headline(judged), judged.reason, judged.next ? `Next: ${judged.next}` : ""].filter((t) => t !== "").map((t) => unitWords(sentence(t))).join(" ");
}

/// @param text  the figure as it was typed; without it (several readings) the server's mean.
export function Verdict(props: { judged: Judged; check: CheckLine; over: boolean; text: string | undefined }): JSX.Element {
  const { judged } = props;
  return (
    <div class="live-verdict">
      <Band {...props} />
      <p class={`verdict is-${judged.verdict}`}>{headline(judged)}</p>
      <p>{unitWords(judged.reason)}</p>
      {judged.next ? <p><strong>Next:</strong> {unitWords(judged.next)}</p> : null}
    </div>
  );
}

/// The server answers in the owner's unit set; a lead is read in kΩ. The scale of the picture is
/// taken from a limit that is known in both.
function Band(props: { judged: Judged; check: CheckLine; over: boolean; text: string | undefined }): JSX.Element | null {
  const { judged, check } = props;
  const { lowest, highest, value } = judged;
  if (!lowest && !highest) return null;
  const scale = highest && check.highest_number ? check.highest_number / highest.value : lowest && check.lowest_number ? check.lowest_number / lowest.value : 1;
  const U = value?.U === undefined ? undefined : value.U * scale;
  const spread = U === undefined ? "" : ` ± ${Number(U.toPrecision(2))}`;
  const text = props.over ? "over range" : `${props.text ?? (value ? plainNumber(Number((value.value * scale).toPrecision(4))) : "")}${spread}`;
  return (
    <AcceptanceBand
      lower={check.lowest_number} upper={check.highest_number} value={value ? value.value * scale : undefined} U={U}
      others={judged.sibling_readings.map((s) => Number.parseFloat(s.value)).filter((n) => Number.isFinite(n))}
      {...limitTexts(check)}
      {...(value ? { valueText: text } : {})}
      words={`Reading between its limits. ${judged.reason}`}
    />
  );
}

function limitTexts(check: CheckLine): { lowerText?: string; upperText?: string } {
  return {
    ...(check.lowest ? { lowerText: `lowest ${unitWords(check.lowest)}` } : {}),
    ...(check.highest ? { upperText: `highest ${unitWords(check.highest)}` } : {}),
  };
}

export function Before(props: { check: CheckLine }): JSX.Element {
  const { check } = props;
  return check.lowest_number === undefined && check.highest_number === undefined
    ? <p class="help">No limit is entered for this check.</p>
    : (
      <AcceptanceBand
        lower={check.lowest_number} upper={check.highest_number} {...(check.last_number === undefined ? {} : { others: [check.last_number] })}
        {...limitTexts(check)}
        words={`Limits: ${check.lowest ? `lowest ${check.lowest} ` : ""}${check.highest ? `highest ${check.highest}` : ""}`}
      />
    );
}

export function Meaning(props: { judged: Judged | undefined; check: CheckLine }): JSX.Element {
  const { judged, check } = props;
  const openBy = judged?.not_tested ?? check.not_tested;
  const rows: [string, string][] = [
    ["Limit from", judged?.limit_source ?? check.limit_source],
    ["Last time", judged?.last_time ?? (check.last ? `${check.last}, ${check.last_when}` : "not read before")],
    ["Siblings", judged?.siblings ?? ""],
    ["Risk", judged?.risk ?? ""],
    ["Rule", judged?.rule ?? ""],
  ];
  return (
    <>
      <h2>What it is judged by</h2>
      <dl class="answer">
        {rows.filter(([, v]) => v !== "").map(([k, v]) => <div class="row" key={k}><dt>{k}</dt><dd>{unitWords(v)}</dd></div>)}
      </dl>
      {openBy ? <p><strong>{unitWords(openBy)}</strong></p> : null}
      {judged && judged.working.length > 0 ? <details class="more"><summary>How it was reckoned</summary><ol class="lines">{judged.working.map((w) => <li key={w}>{unitWords(w)}</li>)}</ol></details> : null}
      <p class="form-acts"><a class="button" href={address("measure", ["check", check.id])}>All readings of this check</a>
        {check.calculation ? <a class="button" href={address("work", ["bench", check.calculation])}>Reckon further: {check.calculation.replace(/-/g, " ")}</a> : null}</p>
    </>
  );
}
