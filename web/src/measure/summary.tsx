/// What came of the whole group: every reading with its verdict, those that stand out from their
/// siblings, and what was not tested. Each line can be read again or corrected.

import type { JSX } from "preact";
import { waiting } from "../api/outbox";
import type { CheckGroup, CheckLine, MeasureAnswer } from "../api/views";
import { chosenAircraft, useFront } from "../aircraft";
import { useStore } from "../kit/store";
import { dayInWords } from "../kit/time";
import { sentence } from "../form/form";
import { bandAt, bandScale } from "../look/band_shape";
import { unitWords } from "../look/digits";
import { Printed } from "../look/figure";
import { Stripe } from "../look/stripe";
import { named } from "../pages/page";
import { standingState } from "../pages/standing";
import { address } from "../route/route";
import { beginAnew, linesOf, nextUnread, sessionOf, sessionTick, type Line } from "./session";
import { said } from "./strip";

export function Summary(props: { page: MeasureAnswer; group: CheckGroup }): JSX.Element {
  const { page, group } = props;
  const aircraft = useStore(chosenAircraft);
  const front = useFront();
  const outbox = useStore(waiting);
  useStore(sessionTick);
  const session = sessionOf(aircraft, group.id);
  const lines = linesOf(group, session, front?.today ?? "", outbox.map((w) => w.id));
  const read = lines.filter((l) => l.read);
  const next = nextUnread(lines, "");
  const back = address("measure", ["group", group.id, "summary"]);
  const insulation = insulationOf(page, group);
  return (
    <div class="one-column wide group-summary">
      <p class="trail"><a href={address("measure")}>Measure</a></p>
      <h1>{named(group.title)}: {read.length} of {lines.length} read</h1>
      <p class="lead">{counted(read)}</p>
      {group.checks.some((c) => c.kind === "lead-resistance") ? (
        <div class="conductor-only">
          <p><strong>Conductor only: insulation not tested</strong></p>
          <p>A lead whose conductor conforms may still leak or be crossed: check tower to cylinder.{insulation.map((c) => <>{" "}<a href={address("measure", ["group", c.group, c.check.id])}>{c.check.title}: {c.check.verdict === "not-tested" ? "not tested" : c.check.last}</a></>)}</p>
        </div>
      ) : null}
      <ol class="plain rows summary-rows">{lines.map((l) => <li key={l.check.id}><Row line={l} lines={lines} group={group} back={back} /></li>)}</ol>
      <p class="form-acts">
        {next ? <a class="button main" href={address("measure", ["group", group.id, next.id])}>Go on with {next.title}</a> : <a class="button main" href={address("measure")}>Done: all groups</a>}
        {read.length > 0 ? <button type="button" onClick={() => { beginAnew(aircraft, group.id); location.hash = address("measure", ["group", group.id]); }}>Read the group anew</button> : null}
        <button type="button" onClick={() => print()}>Print</button>
      </p>
      <p class="help">What was kept stays in the record. Reading anew begins another walk along the group; a correction stands beside what was entered.</p>
    </div>
  );
}

function Row(props: { line: Line; lines: Line[]; group: CheckGroup; back: string }): JSX.Element {
  const { line, group, back } = props;
  const { check } = line;
  const { judged } = line;
  const out = judged && check.stands_out === true;
  return (
    <div class={out ? "summary-row out" : "summary-row"}>
      <Stripe state={judged ? standingState(check.verdict, check.used) : { is: "unknown" }} size="normal" />
      <div class="summary-words">
        <strong>{line.name}</strong>
        <p class="summary-figure">{line.read && line.text !== "" ? <Printed text={line.text} /> : "–"} <span class={judged ? `is-${check.verdict}` : ""}>{said(line)}</span></p>
        {judged && check.last_words && check.verdict !== "conforms" ? <p class="help">{unitWords(reasonOf(check.last_words))}</p> : null}
        {out && check.among ? <p class="stands-out">{sentence(check.among)}</p> : null}
        {line.repeats > 0 ? <p class="help">{line.repeats + 1} readings, judged by their mean</p> : null}
        {!line.read && check.last ? <p class="help">Last time {unitWords(check.last)}, {dayInWords(check.last_when)}</p> : null}
      </div>
      <Among lines={props.lines} line={line} />
      <div class="form-acts">
        <a class="button quiet-button" href={address("measure", ["group", group.id, check.id])} aria-label={`${line.read ? "Read again" : "Read"}: ${check.title}`}>{line.read ? "Read again" : "Read"}</a>
        {judged && check.last_event ? <a class="button quiet-button" href={address("record", ["correct", check.last_event], { back })} aria-label={`Correct: ${check.title}`}>Correct</a> : null}
        {line.waits ? <a class="button quiet-button" href={address("record", ["waiting"])} aria-label={`Not yet recorded: ${check.title}`}>See it</a> : null}
      </div>
    </div>
  );
}

const k_w = 240;

/// All readings on one scale, one line each: what stands apart is seen from a step away.
function Among(props: { lines: Line[]; line: Line }): JSX.Element | null {
  const values = props.lines.filter((l) => l.judged).map((l) => l.check.last_number).filter((n): n is number => n !== undefined);
  const { check } = props.line;
  if (values.length < 2) return null;
  const { lowest_number: lower, highest_number: upper } = check;
  const scale = bandScale({ lower, upper, others: values });
  const x = (v: number): number => 8 + bandAt(scale, v).share * (k_w - 16);
  const own = props.line.judged ? check.last_number : undefined;
  const off = own === undefined ? 0 : bandAt(scale, own).off;
  return (
    <svg class="among" viewBox={`0 0 ${k_w} 26`} aria-hidden="true" focusable="false">
      <path class="among-rule" d={`M8 13H${k_w - 8}`} />
      {values.map((v, i) => <path key={i} class="among-other" d={`M${x(v)} 8V18`} />)}
      {[lower, upper].map((v, i) => (v === undefined ? null : <path key={i} class="among-limit" d={`M${x(v)} 2V24`} />))}
      {own === undefined ? null : off === 0
        ? <circle class="among-dot" cx={x(own)} cy={13} r={6} />
        : <path class="among-dot" d={off > 0 ? `M${k_w - 14} 6L${k_w - 2} 13L${k_w - 14} 20Z` : "M14 6L2 13L14 20Z"} />}
    </svg>
  );
}

/// The verdict stands above already: "does not conform (open). over-range on ..." -> "Over-range on ..."
function reasonOf(words: string): string {
  const reason = words.replace(/^[^.]*\.\s+/, "");
  return sentence(reason);
}

/// "6 conform, 1 does not conform, 1 undecided."
function counted(read: Line[]): string {
  if (read.length === 0) return "Nothing was read yet.";
  const of = (verdict: string): number => read.filter((l) => l.judged && l.check.verdict === verdict).length;
  const out = read.filter((l) => l.judged && l.check.stands_out).length;
  const waits = read.filter((l) => l.waits).length;
  const parts = [
    of("conforms") > 0 ? `${of("conforms")} ${of("conforms") === 1 ? "conforms" : "conform"}` : "",
    of("does-not-conform") > 0 ? `${of("does-not-conform")} ${of("does-not-conform") === 1 ? "does" : "do"} not conform` : "",
    of("undecided") > 0 ? `${of("undecided")} undecided` : "",
    of("not-tested") > 0 ? `${of("not-tested")} not judged` : "",
    out > 0 ? `${out} ${out === 1 ? "stands" : "stand"} out from ${out === 1 ? "its" : "their"} siblings` : "",
    waits > 0 ? `${waits} ${waits === 1 ? "waits" : "wait"} for the connection` : "",
  ];
  return `${parts.filter((p) => p !== "").join(", ")}.`;
}

/// The insulation checks of the same position, wherever they are grouped.
function insulationOf(page: MeasureAnswer, group: CheckGroup): { group: string; check: CheckLine }[] {
  const positions = new Set(group.checks.map((c) => c.position).filter((p) => p !== ""));
  return page.groups.flatMap((g) => g.checks.filter((c) => c.kind === "insulation" && positions.has(c.position)).map((check) => ({ group: g.id, check })));
}
