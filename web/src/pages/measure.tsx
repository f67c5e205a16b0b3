/// Measure: the groups, then one reading at a time. The verdict is the server's, as it is typed.

import { useEffect, useState } from "preact/hooks";
import type { JSX } from "preact";
import { latest } from "../api/changes";
import { announce, submit } from "../api/outbox";
import { useDescription, useLive } from "../api/use";
import type { CheckGroup, CheckLine, InstrumentLine, Judged, MeasureAnswer } from "../api/views";
import type { Field, JsonObject, Problem } from "../api/types";
import { chosenAircraft, useAircraftView, useFront } from "../aircraft";
import { bare } from "../form/draft";
import { sentence } from "../form/form";
import { newId } from "../kit/identity";
import { forget, keep, kept } from "../kit/keep";
import { useStore } from "../kit/store";
import { instant } from "../kit/time";
import { Cautions, verdictText } from "../look/answer";
import { AcceptanceBand } from "../look/band";
import { unitWords } from "../look/digits";
import { Printed } from "../look/figure";
import { Probes } from "../look/probes";
import { Stripe } from "../look/stripe";
import { address, go } from "../route/route";
import { named } from "./page";
import { standingState, standingWords } from "./standing";
import { Trouble } from "./trouble";

export function MeasurePage(): JSX.Element {
  const seen = useAircraftView<MeasureAnswer>("measure");
  const page = seen.data?.answer;
  return (
    <div class="one-column wide">
      <h1>Measure</h1>
      {page ? <Groups page={page} /> : <Trouble failed={seen.failed} />}
    </div>
  );
}

function Groups(props: { page: MeasureAnswer }): JSX.Element {
  const { groups, instruments } = props.page;
  return (
    <>
      <p class="lead">Choose what to read. Nothing is recorded before you press Keep.</p>
      <ul class="groups">
        {groups.map((g) => (
          <li key={g.id}>
            {g.checks.length === 1 ? null : (
              <a class="group-head" href={address("measure", ["group", g.id])}>
                <strong>{named(g.title)}</strong>
                <span>Read all {g.checks.length}</span>
              </a>
            )}
            <ul class="plain checks">
              {g.checks.map((c) => (
                <li key={c.id}>
                  <a class="check-line" href={address("measure", ["check", c.id])}>
                    <Stripe state={standingState(c.verdict, c.used)} size="small" />
                    <span class="check-name">{c.title}</span>
                    <span class="check-last">{c.last === "" ? null : <Printed text={c.last} />}<span class="stripe-note"> {standingWords(c.verdict)}</span></span>
                  </a>
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
      <h2>Instruments</h2>
      <ul class="plain rows">
        {instruments.map((i) => (
          <li key={i.id}>
            <strong>{i.name}</strong> <span class="help">{i.serial} · {i.state}{i.found_bad ? `: ${i.found_bad}` : ""}</span>
          </li>
        ))}
      </ul>
      <p class="form-acts">
        <a class="button" href={address("measure", ["act", "register-instrument"], { back: "#/measure" })}>Register an instrument</a>
        <a class="button" href={address("measure", ["act", "instrument-found-bad"], { back: "#/measure" })}>An instrument was found bad</a>
        <a class="button" href={address("measure", ["act", "describe-check"], { back: "#/measure" })}>Describe a check</a>
      </p>
    </>
  );
}

export function ReadingPage(props: { group: string; check?: string | undefined }): JSX.Element {
  const seen = useAircraftView<MeasureAnswer>("measure");
  const act = useDescription("act", "measure");
  const page = seen.data?.answer;
  const group = page?.groups.find((g) => g.id === props.group);
  if (!page || !act.data) return <div class="one-column"><h1>Measure</h1><Trouble failed={seen.failed ?? act.failed} /></div>;
  const check = group?.checks.find((c) => c.id === props.check) ?? group?.checks[0];
  if (!group || !check) {
    return <div class="one-column"><h1>Measure</h1><p class="trouble">There is no such group of readings. <a href={address("measure")}>See all</a></p></div>;
  }
  return <Reading key={check.id} group={group} check={check} instruments={page.instruments} fields={act.data.input.fields} cautions={act.data.cautions ?? []} />;
}

interface Typed { n: string; u: string; over: boolean; note: string }
interface Meter { instrument: string; range: string; leads: string }

function Reading(props: { group: CheckGroup; check: CheckLine; instruments: InstrumentLine[]; fields: Field[]; cautions: { id: string; text: string }[] }): JSX.Element {
  const { group, check, instruments, fields } = props;
  const aircraft = useStore(chosenAircraft);
  const front = useFront();
  const draftKey = `wm.draft.reading.${aircraft}.${check.id}`;
  const meterKey = `wm.meter.${group.id}`;
  const empty: Typed = { n: "", u: check.unit, over: false, note: "" };
  const [typed, setTyped] = useState<Typed>(() => kept<Typed>(draftKey) ?? empty);
  const [meter, setMeter] = useState<Meter>(() => kept<Meter>(meterKey) ?? { instrument: "", range: "", leads: "" });
  const [id, setId] = useState(newId);
  const [refused, setRefused] = useState<Problem[]>([]);
  const [sending, setSending] = useState(false);
  const put = (change: Partial<Typed>): void => {
    const next = { ...typed, ...change };
    setTyped(next);
    setRefused([]);
    if (next.n === "" && !next.over && next.note === "") forget(draftKey);
    else keep(draftKey, next);
  };
  const choose = (change: Partial<Meter>): void => {
    const next = { ...meter, ...change };
    setMeter(next);
    keep(meterKey, next);
  };
  useEffect(() => document.getElementById("reading")?.focus({ preventScroll: true }), []);

  const chosen = instruments.find((i) => i.id === meter.instrument);
  // Open until the meter has been said once; it stays open while it is being said.
  const [unsaid] = useState(chosen === undefined);
  const input: JsonObject = { aircraft, check: check.id };
  if (typed.over) input["over_range"] = true;
  else if (typed.n.trim() !== "") input["value"] = bare(typed.n) && typed.u !== "" ? `${typed.n.trim()} ${typed.u}` : typed.n.trim();
  if (chosen) input["instrument"] = chosen.id;
  if (chosen && meter.range !== "" && chosen.ranges.includes(meter.range)) input["range"] = meter.range;
  if (meter.leads !== "") input["leads"] = meter.leads;
  const something = typed.over || typed.n.trim() !== "";
  const live = useLive("view", "judge-reading", something ? input : undefined);
  const judged = live.is === "answer" ? (live.data.answer as unknown as Judged) : live.is === "working" ? (live.before?.answer as unknown as Judged | undefined) : undefined;
  const problems = refused.length > 0 ? refused : live.is === "problems" ? live.problems : [];

  const at = group.checks.findIndex((c) => c.id === check.id);
  const next = group.checks[at + 1];
  const onward = next ? address("measure", ["group", group.id, next.id]) : address("measure");
  const done = (c: CheckLine): boolean => front !== undefined && c.last_when.startsWith(front.today);

  const record = async (): Promise<void> => {
    if (sending) return;
    setSending(true);
    const whole = typed.note.trim() === "" ? input : { ...input, note: typed.note.trim() };
    const outcome = await submit({
      id, act: "measure", title: check.title, seen: latest.get(), happened: instant(), input: whole, entered: instant(),
      from: location.hash, draft: `wm.draft.act.measure.check=${check.id}`,
    });
    setSending(false);
    if (outcome.is === "problems") return setRefused(outcome.problems);
    if (outcome.is === "fault") return setRefused([{ path: "", what: outcome.what }]);
    if (outcome.is === "recorded") announce(`Kept: ${check.title}: ${String(outcome.data.answer?.["words"] ?? "")}`);
    forget(draftKey);
    setTyped(empty);
    setId(newId());
    go(onward);
  };

  const leads = fields.find((f) => f.key === "leads");
  const label = (key: string): string => fields.find((f) => f.key === key)?.label ?? key;
  return (
    <div class="sheet reading">
      <section class="left">
        <div class="reading-head">
          <p class="trail"><a href={address("measure")}>Measure: {named(group.title)}, {at + 1} of {group.checks.length}</a></p>
          <h1>{check.title}</h1>
          {group.checks.length > 1 ? (
            <ol class="progress" aria-label={`Readings of ${named(group.title)}`}>
              {group.checks.map((c) => (
                <li key={c.id}>
                  <a href={address("measure", ["group", group.id, c.id])} aria-current={c.id === check.id ? "step" : undefined} class={done(c) ? "done" : ""} aria-label={`${c.title}${done(c) ? ", read today" : ""}`}><span /></a>
                </li>
              ))}
            </ol>
          ) : null}
        </div>
        <Probes kind={check.kind} probes={check.probes} />
        <form class="described" noValidate onSubmit={(e) => { e.preventDefault(); void record(); }}>
          <div class="field quantity">
            <label for="reading">{label("value")}</label>
            <div class="with-unit big-number">
              <input
                id="reading" class="number" type="text" inputMode="decimal" autocomplete="off" disabled={typed.over}
                value={typed.over ? "" : typed.n} aria-invalid={problems.some((p) => p.path === "value") || undefined} aria-describedby="reading-problems"
                onInput={(e) => put({ n: e.currentTarget.value })}
              />
              <UnitChoice unit={check.unit} value={typed.u} set={(u) => put({ u })} />
            </div>
          </div>
          <label class={`tick over${typed.over ? " on" : ""}`}>
            <input type="checkbox" checked={typed.over} onChange={(e) => put({ over: e.currentTarget.checked })} />
            <span>{label("over_range")}</span>
          </label>
          <div id="reading-problems" class={problems.length > 0 ? "problem" : ""} role={refused.length > 0 ? "alert" : undefined}>
            {problems.map((p) => <p key={p.path + p.what}><strong>{sentence(p.what)}</strong>{p.expected ? ` Expected: ${p.expected}.` : ""}{p.do_next ? ` ${sentence(p.do_next)}` : ""}</p>)}
          </div>
          {live.is === "no-connection" ? <p class="not-judged"><strong>Not judged: no connection.</strong> What you typed is kept here.</p> : null}
          <div class="visually-hidden" role="status" data-says="verdict">{live.is === "answer" && judged && something ? spoken(judged) : ""}</div>
          <div class={live.is === "working" ? "answer-body working" : "answer-body"}>
            {judged && something ? <Verdict judged={judged} check={check} typed={typed} /> : <Before check={check} />}
          </div>
          <details class="more meter-more" open={unsaid}>
            <summary>{chosen ? <>{label("instrument")}: <strong>{chosen.name}{meter.range ? `, ${unitWords(meter.range)}` : ""}</strong></> : label("instrument")}</summary>
          <div class="meter">
            <div class="field">
              <label for="instrument">{label("instrument")}</label>
              <select id="instrument" value={chosen?.id ?? ""} onChange={(e) => choose({ instrument: e.currentTarget.value, range: "" })}>
                <option value="">Not said</option>
                {instruments.map((i) => <option key={i.id} value={i.id}>{i.name}{i.found_bad ? " (found bad)" : ""}</option>)}
              </select>
            </div>
            {chosen && chosen.ranges.length > 0 ? (
              <div class="field">
                <label for="range">{label("range")}</label>
                <select id="range" value={meter.range} onChange={(e) => choose({ range: e.currentTarget.value })}>
                  <option value="">Not said</option>
                  {chosen.ranges.map((r, i) => <option key={r} value={r}>{unitWords(r)}, {chosen.range_accuracy[i]?.replaceAll("+-", "±")}</option>)}
                </select>
              </div>
            ) : null}
            {chosen && leads ? (
              <div class="field">
                <label for="leads">{leads.label}</label>
                <select id="leads" value={meter.leads} onChange={(e) => choose({ leads: e.currentTarget.value })}>
                  {meter.leads === "" ? <option value="">{leads.choices?.[0]?.label ?? "Not said"}</option> : null}
                  {(leads.choices ?? []).slice(meter.leads === "" ? 1 : 0).map((c) => <option key={c.value} value={c.value}>{c.label}</option>)}
                </select>
              </div>
            ) : null}
          </div>
          </details>
          <details class="more">
            <summary>{label("note")}{check.procedure ? ", how to read it" : ""}</summary>
            {check.procedure ? <p>{check.procedure}</p> : null}
            <div class="field"><label for="note">{label("note")}</label><input id="note" type="text" value={typed.note} onInput={(e) => put({ note: e.currentTarget.value })} /></div>
          </details>
          <div class="bottom-bar">
            <button type="button" onClick={() => { put({ n: "", over: false }); document.getElementById("reading")?.focus(); }}>Again</button>
            <button type="submit" class="main" disabled={sending || !something}>{sending ? "Keeping" : next ? "Keep, next" : "Keep"}</button>
          </div>
        </form>
      </section>
      <section class="right" aria-label="What it means">
        <Meaning judged={something ? judged : undefined} check={check} />
        <Cautions cautions={props.cautions} />
      </section>
    </div>
  );
}

/// Tenfold and thousandfold neighbours of the unit that the check is read in: what a display shows.
const neighbours: { [unit: string]: string[] } = { kohm: ["ohm", "kohm", "Mohm"], ohm: ["mohm", "ohm", "kohm", "Mohm"], mohm: ["mohm", "ohm"], Mohm: ["kohm", "Mohm"], V: ["mV", "V"], mV: ["mV", "V"] };

function UnitChoice(props: { unit: string; value: string; set: (u: string) => void }): JSX.Element {
  const units = neighbours[props.unit] ?? [props.unit];
  if (units.length === 1) return <span class="unit-only">{unitWords(props.unit)}</span>;
  return (
    <select class="unit-choice" aria-label="Unit of the reading" value={props.value} onChange={(e) => props.set(e.currentTarget.value)}>
      {units.map((u) => <option key={u} value={u}>{unitWords(u)}</option>)}
    </select>
  );
}

function headline(judged: Judged): string {
  return judged.verdict === "undecided" ? verdictText(judged.verdict) : sentence(judged.words).slice(0, -1);
}

/// For a screen reader, politely and whole; only the answer to what stands in the field now.
function spoken(judged: Judged): string {
  return [headline(judged), judged.reason, judged.next ? `Next: ${judged.next}` : ""].filter((t) => t !== "").map((t) => unitWords(sentence(t))).join(" ");
}

function Verdict(props: { judged: Judged; check: CheckLine; typed: Typed }): JSX.Element {
  const { judged, check, typed } = props;
  return (
    <div class="live-verdict">
      <Band judged={judged} check={check} typed={typed} />
      <p class={`verdict is-${judged.verdict}`}>{headline(judged)}</p>
      <p>{unitWords(judged.reason)}</p>
      {judged.next ? <p><strong>Next:</strong> {unitWords(judged.next)}</p> : null}
      {judged.not_tested ? <p class="help">{unitWords(judged.not_tested)}</p> : null}
    </div>
  );
}

/// The server answers in the owner's unit set; a lead is read in kΩ. The scale of the picture is
/// taken from a limit that is known in both.
function Band(props: { judged: Judged; check: CheckLine; typed: Typed }): JSX.Element | null {
  const { judged, check, typed } = props;
  const { lowest, highest, value } = judged;
  if (!lowest && !highest) return null;
  const scale = highest && check.highest_number ? check.highest_number / highest.value : lowest && check.lowest_number ? check.lowest_number / lowest.value : 1;
  const U = value?.U === undefined ? undefined : value.U * scale;
  const spread = U === undefined ? "" : ` ± ${Number(U.toPrecision(2))}`;
  const text = typed.over ? "over range" : `${typed.n.trim()}${spread}`;
  return (
    <AcceptanceBand
      lower={check.lowest_number} upper={check.highest_number} value={value ? value.value * scale : undefined} U={U}
      others={judged.sibling_readings.map((s) => Number.parseFloat(s.value)).filter((n) => Number.isFinite(n))}
      {...(check.lowest ? { lowerText: `lowest ${unitWords(check.lowest)}` } : {})}
      {...(check.highest ? { upperText: `highest ${unitWords(check.highest)}` } : {})}
      {...(value ? { valueText: text } : {})}
      words={`Reading between its limits. ${judged.reason}`}
    />
  );
}

function Before(props: { check: CheckLine }): JSX.Element {
  const { check } = props;
  return check.lowest_number === undefined && check.highest_number === undefined
    ? <p class="help">No limit is entered for this check.</p>
    : (
      <AcceptanceBand
        lower={check.lowest_number} upper={check.highest_number} {...(check.last_number === undefined ? {} : { others: [check.last_number] })}
        {...(check.lowest ? { lowerText: `lowest ${unitWords(check.lowest)}` } : {})}
        {...(check.highest ? { upperText: `highest ${unitWords(check.highest)}` } : {})}
        words={`Limits: ${check.lowest ? `lowest ${check.lowest} ` : ""}${check.highest ? `highest ${check.highest}` : ""}`}
      />
    );
}

function Meaning(props: { judged: Judged | undefined; check: CheckLine }): JSX.Element {
  const { judged, check } = props;
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
      {check.kind === "lead-resistance" ? <p><strong>Insulation: not tested.</strong></p> : null}
      {judged && judged.working.length > 0 ? <details class="more"><summary>How it was reckoned</summary><ol class="lines">{judged.working.map((w) => <li key={w}>{unitWords(w)}</li>)}</ol></details> : null}
      <p class="form-acts"><a class="button" href={address("measure", ["check", check.id])}>All readings of this check</a></p>
    </>
  );
}
