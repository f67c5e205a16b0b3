/// One reading: number, verdict as it is typed, Keep, next. The verdict is the server's.

import { useEffect, useState } from "preact/hooks";
import type { JSX } from "preact";
import { latest } from "../api/changes";
import { announce, submit, waiting } from "../api/outbox";
import { useLive } from "../api/use";
import type { CheckGroup, CheckLine, InstrumentLine, Judged } from "../api/views";
import type { Field, JsonObject, Problem } from "../api/types";
import { chosenAircraft, useFront } from "../aircraft";
import { bare } from "../form/draft";
import { sentence } from "../form/form";
import { newId } from "../kit/identity";
import { forget, keep, kept } from "../kit/keep";
import { useStore } from "../kit/store";
import { instant } from "../kit/time";
import { Cautions } from "../look/answer";
import { Probes } from "../look/probes";
import { named } from "../pages/page";
import { address, go } from "../route/route";
import { handsFree, useHandsFree } from "./hands_free";
import { KeptBar } from "./kept_bar";
import { MeterChoice, UnitChoice, type Meter } from "./meter";
import { readMeter } from "./meter_text";
import { Repeats } from "./repeats";
import { linesOf, nextUnread, noteReading, sessionOf, sessionTick } from "./session";
import { Along, Strip } from "./strip";
import { Before, Meaning, spoken, Verdict } from "./verdict";

interface Typed { n: string; u: string; over: boolean; note: string; repeats: string[] }

export function Reading(props: { group: CheckGroup; check: CheckLine; instruments: InstrumentLine[]; fields: Field[]; cautions: { id: string; text: string }[] }): JSX.Element {
  const { group, check, instruments, fields } = props;
  const aircraft = useStore(chosenAircraft);
  const front = useFront();
  useStore(sessionTick);
  const outbox = useStore(waiting);
  const free = useStore(handsFree);
  const draftKey = `wm.draft.reading.${aircraft}.${check.id}`;
  const meterKey = `wm.meter.${group.id}`;
  const empty: Typed = { n: "", u: check.unit, over: false, note: "", repeats: [] };
  const [typed, setTyped] = useState<Typed>(() => ({ ...empty, ...kept<Typed>(draftKey) }));
  const [meter, setMeter] = useState<Meter>(() => kept<Meter>(meterKey) ?? { instrument: "", range: "", leads: "" });
  const [id, setId] = useState(newId);
  const [refused, setRefused] = useState<Problem[]>([]);
  const [unclear, setUnclear] = useState("");
  const [sending, setSending] = useState(false);
  const put = (change: Partial<Typed>): void => {
    const next = { ...typed, ...change };
    setTyped(next);
    setRefused([]);
    setUnclear("");
    if (next.n === "" && !next.over && next.note === "" && next.repeats.length === 0) forget(draftKey);
    else keep(draftKey, next);
  };
  const choose = (change: Partial<Meter>): void => {
    const next = { ...meter, ...change };
    setMeter(next);
    keep(meterKey, next);
  };
  useEffect(() => document.getElementById("reading")?.focus({ preventScroll: true }), []);

  const chosen = instruments.find((i) => i.id === meter.instrument);
  const number = typed.n.trim();
  const now = typed.over || number === "" ? undefined : bare(typed.n) && typed.u !== "" ? `${number} ${typed.u}` : number;
  const figures = now === undefined ? typed.repeats : [...typed.repeats, now];
  const input: JsonObject = { aircraft, check: check.id };
  if (typed.over) input["over_range"] = true;
  else if (figures.length > 0) input["value"] = figures[0];
  if (!typed.over && figures.length > 1) input["repeats"] = figures.slice(1);
  if (chosen) input["instrument"] = chosen.id;
  if (chosen && meter.range !== "" && chosen.ranges.includes(meter.range)) input["range"] = meter.range;
  if (meter.leads !== "") input["leads"] = meter.leads;
  const something = typed.over || figures.length > 0;
  const live = useLive("view", "judge-reading", something ? input : undefined);
  const judged = live.is === "answer" ? (live.data.answer as unknown as Judged) : live.is === "working" ? (live.before?.answer as unknown as Judged | undefined) : undefined;
  const fresh = live.is === "answer" && live.of === JSON.stringify(input);
  const problems = refused.length > 0 ? refused : live.is === "problems" ? live.problems : [];

  const lines = linesOf(group, sessionOf(aircraft, group.id), front?.today ?? "", outbox.map((w) => w.id));
  const next = nextUnread(lines, check.id);
  const alone = group.checks.length === 1;
  const onward = next ? address("measure", ["group", group.id, next.id]) : alone ? address("measure") : address("measure", ["group", group.id, "summary"]);

  // An open lead that read well before it was flexed: the earlier figures go along in words.
  const noteToSend = [typed.note.trim(), typed.over && typed.repeats.length > 0 ? `before it was over range: ${typed.repeats.join(", ")}` : ""].filter((t) => t !== "").join("; ");
  const record = async (): Promise<void> => {
    if (sending || !something) return;
    setSending(true);
    const whole = noteToSend === "" ? input : { ...input, note: noteToSend };
    const at = instant();
    const outcome = await submit({
      id, act: "measure", title: check.title, seen: latest.get(), happened: at, input: whole, entered: at,
      from: location.hash, draft: `wm.draft.act.measure.check=${check.id}`,
    });
    setSending(false);
    if (outcome.is === "problems") return setRefused(outcome.problems);
    if (outcome.is === "fault") return setRefused([{ path: "", what: outcome.what }]);
    if (outcome.is === "recorded") announce(`Kept: ${check.title}: ${String(outcome.data.answer?.["words"] ?? "")}`);
    noteReading(aircraft, group.id, check.id, { event: id, before: check.last_event, at, text: typed.over ? "over range" : String(figures[0]), repeats: typed.over ? 0 : figures.length - 1 });
    forget(draftKey);
    setTyped(empty);
    setId(newId());
    hands.typedByHand("");
    if (location.hash === onward) document.getElementById("reading")?.focus();
    else go(onward);
  };

  const noTrouble = judged !== undefined && !typed.over && (judged.verdict === "conforms" || (judged.verdict === "not-tested" && !judged.lowest && !judged.highest));
  const settled = fresh || live.is === "problems" || live.is === "no-connection" || live.is === "fault";
  const fate = !something ? "nothing" : unclear !== "" ? "look" : !settled ? "wait" : fresh && noTrouble && refused.length === 0 ? "fine" : "look";
  const hands = useHandsFree(free && !sending, fate, {
    typed: (text) => put({ n: text, u: check.unit, over: false }),
    ended: (text) => {
      const heard = readMeter(text, check.unit);
      if (heard.is === "over") return put({ n: "", u: check.unit, over: true });
      if (heard.is === "text") return put({ n: heard.text, u: check.unit, over: false });
      put({ n: heard.n, u: heard.u, over: false });
      if (heard.is === "unclear") setUnclear(heard.why);
    },
    keep: () => void record(),
  });
  /// At once, not with the next drawing of the page: the next figure may come straight away.
  const emptyField = (): void => {
    hands.typedByHand("");
    const field = document.getElementById("reading") as HTMLInputElement | null;
    if (!field) return;
    field.value = "";
    field.focus();
  };
  const again = (): void => {
    if (now === undefined) return;
    put({ n: "", repeats: [...typed.repeats, now] });
    emptyField();
  };
  const clear = (): void => {
    put({ n: "", over: false });
    emptyField();
  };

  const label = (key: string): string => fields.find((f) => f.key === key)?.label ?? key;
  return (
    <div class="sheet reading">
      <section class="left">
        <div class="reading-head">
          <p class="trail"><a href={address("measure")}>Measure: {named(group.title)}</a></p>
          <h1>{check.title}</h1>
          {alone ? null : <Along lines={lines} now={check.id} />}
        </div>
        <KeptBar group={group} lines={lines} />
        {check.caution ? <p class="caution-first"><strong>First:</strong> {check.caution}</p> : null}
        <Probes kind={check.kind} title={check.title} probes={check.probes} />
        <form class="described" noValidate onSubmit={(e) => { e.preventDefault(); void record(); }}>
          <div class="field quantity">
            <label for="reading">{label("value")}</label>
            <div class="with-unit big-number">
              <span class="clearable">
              <input
                id="reading" class="number" type="text" inputMode={free ? "none" : "decimal"} autocomplete="off" enterkeyhint="done" disabled={typed.over}
                value={typed.over ? "" : typed.n} placeholder={typed.over ? "over range" : undefined} aria-invalid={problems.some((p) => p.path === "value") || undefined} aria-describedby="reading-problems"
                onInput={(e) => { hands.typedByHand(e.currentTarget.value); put({ n: e.currentTarget.value }); }}
              />
              {number === "" || typed.over ? null : <button type="button" class="quiet clear" aria-label="Clear the reading" onClick={clear}>×</button>}
              </span>
              <UnitChoice unit={check.unit} value={typed.u} set={(u) => put({ u })} />
            </div>
          </div>
          <Repeats repeats={typed.repeats} now={now} takeAway={(at) => { put({ repeats: typed.repeats.filter((_, i) => i !== at) }); document.getElementById("reading")?.focus(); }} />
          <div class="reading-ticks">
            <label class={`tick over${typed.over ? " on" : ""}`}>
              <input type="checkbox" checked={typed.over} onChange={(e) => { hands.stop(); put({ over: e.currentTarget.checked }); }} />
              <span>{label("over_range")}</span>
            </label>
            <label class={`tick over${free ? " on" : ""}`}>
              <input type="checkbox" role="switch" checked={free} onChange={(e) => { handsFree.set(e.currentTarget.checked); document.getElementById("reading")?.focus(); }} />
              <span>Hands-free</span>
            </label>
          </div>
          <div id="reading-problems" class={problems.length > 0 || unclear !== "" ? "problem" : ""} role={refused.length > 0 ? "alert" : undefined}>
            {unclear === "" ? null : <p><strong>{unclear}</strong></p>}
            {problems.map((p) => <p key={p.path + p.what}><strong>{sentence(p.what)}</strong>{p.expected ? ` Expected: ${p.expected}.` : ""}{p.do_next ? ` ${sentence(p.do_next)}` : ""}</p>)}
          </div>
          {live.is === "no-connection" ? <p class="not-judged"><strong>Not judged: no connection.</strong> What you typed is kept here.</p> : null}
          <div class="visually-hidden" role="status" data-says="verdict">{fresh && judged && something ? spoken(judged) : ""}</div>
          {free ? <HandsFreeState left={hands.left} held={hands.ended && fate === "look"} idle={!something} stop={hands.stop} /> : null}
          <div class={live.is === "working" ? "answer-body working" : "answer-body"}>
            {judged && something ? <Verdict judged={judged} check={check} over={typed.over} text={figures.length > 1 ? undefined : bare(figures[0] ?? "") ? figures[0] : number || undefined} /> : <Before check={check} />}
          </div>
          <MeterChoice instruments={instruments} fields={fields} meter={meter} choose={choose} />
          <details class="more">
            <summary>{label("note")}{check.procedure ? ", how to read it" : ""}</summary>
            {check.probes ? <p><strong>Probes:</strong> {check.probes}.</p> : null}
            {check.procedure ? <p>{check.procedure}</p> : null}
            <div class="field"><label for="note">{label("note")}</label><input id="note" type="text" value={typed.note} onInput={(e) => put({ note: e.currentTarget.value })} /></div>
          </details>
          <div class="bottom-bar">
            <button type="button" disabled={now === undefined} onClick={again}>Read again / flex it</button>
            <button type="submit" class="main" disabled={sending || !something}>{sending ? "Keeping" : next ? "Keep, next" : "Keep"}</button>
          </div>
        </form>
      </section>
      <section class="right" aria-label="What it means">
        {alone ? null : (
          <>
            <h2>{named(group.title)}: {lines.filter((l) => l.read).length} of {lines.length} read</h2>
            <Strip group={group} lines={lines} now={check.id} />
            <p class="form-acts"><a class="button" href={address("measure", ["group", group.id, "summary"])}>Summary</a></p>
          </>
        )}
        <Meaning judged={something ? judged : undefined} check={check} />
        <Cautions cautions={props.cautions} />
      </section>
    </div>
  );
}

/// What the page is about to do by itself, large enough to be seen from the engine.
function HandsFreeState(props: { left: number | undefined; held: boolean; idle: boolean; stop: () => void }): JSX.Element {
  const { left, held } = props;
  const counting = left !== undefined;
  return (
    <div class={counting ? "hands-free counting" : held ? "hands-free held" : "hands-free"}>
      <div class="visually-hidden" role="status" data-says="hands-free">
        {counting ? "It will be kept in a moment. Press any key to stop." : held ? "Not kept by itself. Enter keeps it, a new reading takes its place." : ""}
      </div>
      {counting ? (
        <>
          <span aria-hidden="true">Kept in <strong>{(left / 1000).toFixed(1)} s</strong>; any key stops it</span>
          <button type="button" onClick={props.stop}>Stop</button>
          <svg class="count-line" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true"><rect x={0} y={0} width={Math.max(0, left / 15)} height={4} /></svg>
        </>
      ) : held ? <span aria-hidden="true"><strong>Look at this one.</strong> Enter keeps it, a new reading takes its place.</span>
        : <span>{props.idle ? "The meter may type. Enter or Tab ends a reading." : "Enter or Tab ends the reading."}</span>}
    </div>
  );
}
