/// After a symptom: what it may be, what to look at next. Walked with a phone beside the engine; each
/// answer moves the list.

import { useState } from "preact/hooks";
import type { JSX } from "preact";
import type { Figure } from "../api/types";
import { useLive, type Live } from "../api/use";
import type { WorkAnswer } from "../api/views";
import { keep, kept } from "../kit/keep";
import { newId } from "../kit/identity";
import { Cautions } from "../look/answer";
import { address } from "../route/route";
import { first, rankInput, reachWords, stops, suspectsOf, symptomsOf, type Found, type Own, type Seen, type Suspect } from "./suspects";

interface Ranked { name: string; kind: string; before: Figure; now: Figure; in_words: string }
interface Answer { ranking: Ranked[]; something_else: Figure; no_change: Figure; look_order: string[]; in_words: string; notes: string[]; working: string[] }
interface Walk { seen: { [symptom: string]: Seen }; done: Found[]; changes: string[] }

const k_shown = 6;
const percent = (f: Figure): string => `${f.value < 1 ? f.value.toFixed(1) : Math.round(f.value)} %`;

export function CausesPage(props: { work: WorkAnswer; aircraft: string; stage: string | undefined; about: string }): JSX.Element {
  const { work } = props;
  const key = `causes ${props.aircraft} ${props.stage ?? ""}`;
  const made = work.changes.filter((c) => c.state === "done");
  const last = props.stage ?? work.stages.find((s) => s.state !== "closed" && s.changes.some((id) => made.some((c) => c.id === id)))?.id;
  const start: Walk = { seen: {}, done: [], changes: made.filter((c) => last === undefined || c.stage === last).map((c) => c.id) };
  const [walk, setWalk] = useState<Walk>(() => kept<Walk>(key) ?? start);
  const [own, setOwn] = useState<Own[]>(() => kept<Own[]>("causes of mine") ?? []);
  const put = (change: Partial<Walk>): void => { const next = { ...walk, ...change }; setWalk(next); keep(key, next); };

  const all = suspectsOf(made.filter((c) => walk.changes.includes(c.id)), own);
  const input = rankInput(all, walk.seen, walk.done);
  const live = useLive("calc", "cause-rank", input);
  const data = live.is === "answer" ? live.data : live.is === "working" ? live.before : undefined;
  const answer = input && data ? (data.answer as unknown as Answer) : undefined;
  const warned = stops.filter((s) => walk.seen[s.symptom] === "seen");
  return (
    <div class="sheet causes">
      <section class="left">
        <p class="trail"><a href={address("work")}>Work</a></p>
        <h1>What it may be</h1>
        {props.about ? <p class="lead">{props.about}</p> : null}
        {warned.length > 0 ? <div class="trouble" role="alert">{warned.map((w) => <p key={w.symptom}><strong>{w.words}</strong></p>)}</div> : null}
        <details class="more" open={Object.keys(walk.seen).length === 0}>
          <summary>Before anything is opened</summary>
          <ul>{first.map((f) => <li key={f.ask}>{f.ask}</li>)}</ul>
        </details>
        <h2>What shows</h2>
        <ul class="plain rows">
          {symptomsOf(all).map((name) => <li key={name}><SymptomRow name={name} state={walk.seen[name] ?? "not-looked-for"} set={(s) => put({ seen: { ...walk.seen, [name]: s } })} /></li>)}
        </ul>
        {made.length > 0 ? (
          <details class="more">
            <summary>{`Changed lately (${walk.changes.length})`}</summary>
            <ul class="plain rows">
              {made.map((c) => (
                <li key={c.id}><label class="tick"><input type="checkbox" checked={walk.changes.includes(c.id)} onChange={(e) => put({ changes: e.currentTarget.checked ? [...walk.changes, c.id] : walk.changes.filter((id) => id !== c.id) })} /><span>{c.title} <span class="help">{c.grade}</span></span></label></li>
              ))}
            </ul>
          </details>
        ) : null}
        <OwnCauses own={own} symptoms={symptomsOf(all)} set={(o) => { setOwn(o); keep("causes of mine", o); }} />
      </section>
      <section class="right">
        <h2>Possible causes</h2>
        <div aria-live="polite">
          {input === undefined ? <p class="none">Say what was seen.</p> : null}
          <Wrong live={live} />
          {answer ? <Ranking answer={answer} all={all} done={walk.done} set={(done) => put({ done })} /> : null}
        </div>
        {live.is === "answer" ? <Cautions cautions={live.data.cautions} /> : null}
        <div class="form-acts"><button type="button" onClick={() => { setWalk(start); keep(key, start); }}>Begin anew</button></div>
      </section>
    </div>
  );
}

function SymptomRow(props: { name: string; state: Seen; set: (s: Seen) => void }): JSX.Element {
  const choice = (value: Seen, label: string): JSX.Element => (
    <button type="button" aria-label={`${label}: ${props.name}`} aria-pressed={props.state === value} class={props.state === value ? "chosen" : ""} onClick={() => props.set(props.state === value ? "not-looked-for" : value)}>{label}</button>
  );
  return <div class="symptom"><strong>{props.name}</strong><span class="pair">{choice("seen", "Seen")}{choice("not-seen", "Not seen")}</span></div>;
}

function Ranking(props: { answer: Answer; all: Suspect[]; done: Found[]; set: (d: Found[]) => void }): JSX.Element {
  const { answer, done } = props;
  const [more, setMore] = useState(false);
  const rows = more ? answer.ranking : answer.ranking.slice(0, k_shown);
  const looked = (name: string): Found | undefined => done.find((d) => d.suspect === name);
  const say = (suspect: string, fault_found: boolean): void => props.set([...done.filter((d) => d.suspect !== suspect), { suspect, fault_found }]);
  // The calculation knows costs, not that a thing was looked at a minute ago.
  const next = answer.look_order.find((n) => !looked(n));
  const found = done.find((d) => d.fault_found);
  const about = (name: string): Suspect | undefined => props.all.find((s) => s.name === name);
  return (
    <>
      {found ? <p class="price"><strong>Found: {found.suspect}.</strong> Put it right, prove it, and look once more whether the symptom is gone.</p> : next ? <p class="price">Look next at: <strong>{next}</strong>, {reachWords[about(next)?.reach ?? "cowl"]}.<br /><span class="help">{about(next)?.look}</span></p> : <p class="price">All that is listed was looked at. Something else has a part in it: {percent(answer.something_else)}.</p>}
      <ol class="plain rows ranking">
        {rows.map((r) => {
          const d = looked(r.name);
          return (
            <li key={r.name}>
              <p><strong class="chance">{percent(r.now)}</strong> {r.name}{r.kind === "change" ? " (changed)" : ""}</p>
              <p class="help">{r.in_words}. Where to look, {reachWords[about(r.name)?.reach ?? "cowl"]}: {about(r.name)?.look}</p>
              {d ? <p>{d.fault_found ? "Fault found." : "Looked at, nothing found."} <button type="button" aria-label={`Take back: ${r.name}`} onClick={() => props.set(done.filter((x) => x !== d))}>Take back</button></p> : (
                <div class="pair"><button type="button" aria-label={`Nothing found: ${r.name}`} onClick={() => say(r.name, false)}>Nothing found</button><button type="button" aria-label={`This is it: ${r.name}`} onClick={() => say(r.name, true)}>This is it</button></div>
              )}
            </li>
          );
        })}
      </ol>
      {answer.ranking.length > k_shown ? <button type="button" onClick={() => setMore(!more)}>{more ? "Fewer" : `All ${answer.ranking.length}`}</button> : null}
      <p>Something not listed: {percent(answer.something_else)}. No change at fault: {percent(answer.no_change)}.</p>
      <p class="help">Chances are guesses that rank where to look; they prove nothing.</p>
      <details class="more"><summary>How it was reckoned</summary><ul>{answer.notes.map((n) => <li key={n}>{n}</li>)}</ul><ol class="lines">{answer.working.map((w) => <li key={w}>{w}</li>)}</ol></details>
    </>
  );
}

function OwnCauses(props: { own: Own[]; symptoms: string[]; set: (o: Own[]) => void }): JSX.Element {
  const [name, setName] = useState("");
  const [chance, setChance] = useState("2");
  const [symptoms, setSymptoms] = useState<string[]>([]);
  const value = Number(chance.replace(",", "."));
  const good = name.trim() !== "" && symptoms.length > 0 && value >= 0 && value <= 100 && chance.trim() !== "";
  return (
    <details class="more">
      <summary>A cause of your own{props.own.length > 0 ? ` (${props.own.length})` : ""}</summary>
      <ul class="plain rows">{props.own.map((o) => <li key={o.id}>{o.name}: {o.symptoms.join(", ")} <button type="button" aria-label={`Take away: ${o.name}`} onClick={() => props.set(props.own.filter((x) => x !== o))}>Take away</button></li>)}</ul>
      <label>What it is<input type="text" value={name} onInput={(e) => setName(e.currentTarget.value)} /></label>
      <label>Chance, before anything is seen (%)<input class="number" inputMode="decimal" value={chance} onInput={(e) => setChance(e.currentTarget.value)} /></label>
      <fieldset><legend>It shows as</legend>{props.symptoms.map((s) => <label class="tick" key={s}><input type="checkbox" checked={symptoms.includes(s)} onChange={(e) => setSymptoms(e.currentTarget.checked ? [...symptoms, s] : symptoms.filter((x) => x !== s))} /><span>{s}</span></label>)}</fieldset>
      <div class="form-acts"><button type="button" disabled={!good} onClick={() => { props.set([...props.own, { id: newId(), name: name.trim(), percent: value, hours: 1, symptoms }]); setName(""); setSymptoms([]); }}>Add it</button></div>
    </details>
  );
}

function Wrong(props: { live: Live }): JSX.Element | null {
  const { live } = props;
  if (live.is === "no-connection") return <p class="trouble">No connection. The list follows when the server answers again.</p>;
  if (live.is === "fault") return <p class="trouble">{live.what}</p>;
  return live.is === "problems" ? <div class="trouble" role="alert">{live.problems.map((p) => <p key={p.what}>{p.what}</p>)}</div> : null;
}
