/// One position: what sits there, its limits, checks, joints and defects; and one check with its
/// readings over time.

import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import type { CheckHistory, CheckLine, DueRow, MeasureAnswer, PositionAnswer } from "../api/views";
import { chosenAircraft, useAircraftView } from "../aircraft";
import { useStore } from "../kit/store";
import { dayInWords } from "../kit/time";
import { verdictText } from "../look/answer";
import { Plot } from "../look/chart";
import type { PlotData } from "../look/chart_draw";
import { unitWords } from "../look/digits";
import { Printed } from "../look/figure";
import { StripeLine } from "../look/stripe";
import { address } from "../route/route";
import { DefectRow } from "./bay";
import { JointRow } from "./joints";
import { standingState, standingWords } from "./standing";
import { Trouble } from "./trouble";

export function PositionPage(props: { id: string }): JSX.Element {
  const seen = useAircraftView<PositionAnswer>("position", { position: props.id });
  const p = seen.data?.answer;
  if (!p) return <div class="one-column"><p class="trail"><a href={address("bay")}>Bay</a></p><h1>Position</h1><Trouble failed={seen.failed} /></div>;
  const back = address("bay", ["position", p.id]);
  const open = p.defects.filter((d) => !d.closed);
  return (
    <div class="sheet">
      <section class="left">
        <p class="trail"><a href={address("bay")}>Bay</a></p>
        <h1>{p.name}</h1>
        <p class="lead">{[p.system, p.chapter ? `system chapter ${p.chapter}` : "", p.area].filter((t) => t !== "").join(" · ")}{p.note ? <><br />{p.note}</> : null}</p>
        {p.redundant_with ? <p><a href={address("bay", ["position", p.redundant_with])}>The other half of a redundant pair</a></p> : null}
        <h2>Limits</h2>
        {p.limits.length === 0 ? <p class="none">No limit is entered for this place.</p> : <ul class="stripes">{p.limits.map((l) => <li key={l.id}><LimitLine row={l} /></li>)}</ul>}
        <h2>Checks</h2>
        {p.checks.length === 0 ? <p class="none">Nothing is read here.</p> : <ul class="stripes">{p.checks.map((c) => <li key={c.id}><CheckStripe check={c} /></li>)}</ul>}
        <div class="form-acts">
          <a class="button" href={address("work", ["act", "plan-change"], { "start.position": p.id, back: "#/work" })}>Plan a change here</a>
          <a class="button" href={address("bay", ["act", "note-defect"], { position: p.id, back })}>Defect here</a>
        </div>
      </section>
      <section class="right">
        <h2>What is fitted</h2>
        {p.installations.length === 0 ? <p class="none">Nothing on record.</p> : (
          <ol class="plain rows">
            {p.installations.map((i) => (
              <li key={i.part + i.from}>
                <strong>{i.description}</strong>{i.to === "" ? "" : " (taken out)"}
                <p class="help">{[i.serial ? `serial ${i.serial}` : "", i.cured ? `cured ${dayInWords(i.cured)}` : "", i.assembled ? `assembled ${dayInWords(i.assembled)}` : "", `fitted ${dayInWords(i.from)}`, i.to ? `until ${dayInWords(i.to)}` : "", i.hours ? `${i.hours} in place` : "", i.why_removed].filter((t) => t !== "").join(" · ")}</p>
              </li>
            ))}
          </ol>
        )}
        {p.installations.some((i) => i.to === "") ? <p class="form-acts"><a class="button" href={address("work", ["decide", p.id])}>Renew, watch or leave</a></p> : null}
        <h2>Joints</h2>
        {p.joints.length === 0 ? <p class="none">None on record.</p> : <ul class="plain rows">{p.joints.map((j) => <li key={j.id}><JointRow joint={j} /></li>)}</ul>}
        {p.defects.length > 0 ? <><h2>Defects</h2><ul class="plain rows">{[...open, ...p.defects.filter((d) => d.closed)].map((d) => <li key={d.id}><DefectRow defect={d} back={back} /></li>)}</ul></> : null}
        <p class="form-acts"><a class="button" href={address("record", ["history"], { about: p.id, of: p.name })}>History of this place</a></p>
      </section>
    </div>
  );
}

function LimitLine(props: { row: DueRow }): JSX.Element {
  const { row } = props;
  const note = [row.detail, row.due === "" ? "" : `due ${row.due}`, row.left === "" ? "" : `${row.left} left`, row.why_unknown, [row.authority, row.document].filter((t) => t !== "").join(": "), row.how_sure].filter((t) => t !== "").join(" · ");
  return <StripeLine state={standingState(row.standing, row.used)} name={row.title} words={standingWords(row.standing, row.used)} figure={row.figure} note={unitWords(note)} />;
}

function CheckStripe(props: { check: CheckLine }): JSX.Element {
  const { check } = props;
  return <StripeLine state={standingState(check.verdict, check.used)} name={check.title} href={address("measure", ["check", check.id])} words={standingWords(check.verdict, check.used)} figure={check.last || "not tested"} note={unitWords(check.last_when)} />;
}

/// Every limit, past ones first.
export function DuePage(): JSX.Element {
  const seen = useAircraftView<{ rows: DueRow[]; past_limit: number; unknown: number }>("due");
  const due = seen.data?.answer;
  return (
    <div class="one-column wide">
      <p class="trail"><a href={address("bay")}>Bay</a></p>
      <h1>All that is due</h1>
      {due ? (
        <>
          <p class="lead">{due.past_limit} past limit, {due.unknown} unknown, {due.rows.length} in all</p>
          <ul class="stripes">{due.rows.map((r) => <li key={r.id}><LimitLine row={r} /></li>)}</ul>
        </>
      ) : <Trouble failed={seen.failed} />}
    </div>
  );
}

export function CheckPage(props: { id: string }): JSX.Element {
  const seen = useAircraftView<CheckHistory>("check-history", { check: props.id });
  const measure = useAircraftView<MeasureAnswer>("measure").data?.answer;
  const h = seen.data?.answer;
  const plot = useMemo(() => (h ? plotOf(h) : undefined), [h]);
  const aircraft = useStore(chosenAircraft);
  if (!h) return <div class="one-column"><p class="trail"><a href={address("measure")}>Measure</a></p><h1>Check</h1><Trouble failed={seen.failed} /></div>;
  const { check } = h;
  const group = measure?.groups.find((g) => g.checks.some((c) => c.id === check.id));
  const limits = [check.lowest ? `lowest ${check.lowest}` : "", check.highest ? `highest ${check.highest}` : ""].filter((t) => t !== "").join(", ");
  return (
    <div class="sheet">
      <section class="left">
        <p class="trail"><a href={address("measure")}>Measure</a></p>
        <h1>{check.title}</h1>
        <StripeLine state={standingState(check.verdict, check.used)} name={verdictText(check.verdict)} words={standingWords(check.verdict, check.used)} figure={check.last || "not tested"} note={unitWords(check.last_when)} />
        <p>{limits === "" ? "" : unitWords(`${limits}. `)}<span class="help">{check.limit_source}</span></p>
        {h.trend_lines.map((line) => <p key={line}><strong>{unitWords(line)}</strong></p>)}
        {plot ? <Plot data={plot.data} words={plot.words} /> : null}
        {h.trend_notes.map((note) => <p key={note} class="help">{unitWords(note)}</p>)}
        {check.kind === "lead-resistance" ? <p><strong>Insulation: not tested.</strong></p> : null}
        {plot ? <p class="form-acts"><a class="button quiet-button" href={`/api/print/trend/${encodeURIComponent(check.id)}.pdf?${new URLSearchParams({ aircraft, paper: "a4" })}`} target="_blank" rel="noopener">On paper</a></p> : null}
        {group ? <p class="form-acts"><a class="button main" href={address("measure", ["group", group.id, check.id])}>Read it now</a>{check.position ? <a class="button" href={address("bay", ["position", check.position])}>Where it is</a> : null}<a class="button" href={address("record", ["history"], { about: check.id, of: check.title })}>History of this check</a></p> : null}
      </section>
      <section class="right">
        <h2>Readings, newest first</h2>
        {h.points.length === 0 ? <p class="none">Not read yet.</p> : (
          <ol class="plain rows">
            {[...h.points].reverse().map((p) => (
              <li key={p.event}>
                <div class="row-with-acts">
                  <div>
                    <strong class="figure"><Printed text={p.value || "no value"} /></strong> {unitWords(p.words || verdictText(p.verdict))}{p.corrected ? " · corrected" : ""}
                    <p class="help">{[dayInWords(p.day), p.engine_hours === undefined ? "" : `${p.engine_hours.toFixed(1)} h`, measure?.instruments.find((i) => i.id === p.instrument)?.name ?? p.instrument, unitWords(p.range)].filter((t) => t !== "").join(" · ")}</p>
                  </div>
                  <div class="form-acts"><a class="button" href={address("record", ["correct", p.event], { back: address("measure", ["check", check.id]) })} aria-label={`Correct the reading of ${p.day}`}>Correct</a></div>
                </div>
              </li>
            ))}
          </ol>
        )}
      </section>
    </div>
  );
}

function plotOf(h: CheckHistory): { data: PlotData; words: string } | undefined {
  const points = h.points.filter((p) => p.number !== undefined);
  if (points.length < 2) return undefined;
  const hours = points.every((p) => p.engine_hours !== undefined);
  const unit = unitWords(h.check.unit);
  return {
    data: {
      x: hours ? { label: "engine hours", unit: "h" } : { label: "day since the first", unit: "d" },
      y: { label: "reading", unit },
      points: points.map((p) => ({ x: hours ? p.engine_hours! : (Date.parse(p.day) - Date.parse(points[0]!.day)) / 86_400_000, y: p.number!, ...(p.uncertainty === undefined ? {} : { U: p.uncertainty }) })),
      ...(h.line ? { fit: [{ x: h.line.from_at, y: h.line.from_value }, { x: h.line.to_at, y: h.line.to_value }] } : {}),
      limits: [
        ...(h.lowest === undefined ? [] : [{ y: h.lowest, label: `lowest ${unitWords(h.check.lowest)}` }]),
        ...(h.highest === undefined ? [] : [{ y: h.highest, label: `highest ${unitWords(h.check.highest)}` }]),
      ],
    },
    words: `${points.length} readings from ${dayInWords(points[0]!.day)} to ${dayInWords(points.at(-1)!.day)}, each with its uncertainty, between the limits.`,
  };
}
