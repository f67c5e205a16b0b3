/// Which changes to fly together: the owner's guesses on one side, the sheet of stages that follows
/// from them on the other. A change moved by hand shows its price at once.

import { useEffect, useState } from "preact/hooks";
import type { JSX } from "preact";
import type { Problem } from "../api/types";
import { useLive, type Live } from "../api/use";
import type { ChangeLine, WorkAnswer } from "../api/views";
import { keep, kept } from "../kit/keep";
import { Cautions } from "../look/answer";
import { address } from "../route/route";
import { GuessRow } from "./guess_row";
import { alike, figureTrouble, guessFor, moved, namesOf, planInput, startCosts, type Apart, type Arrangement, type Costs, type Guess } from "./guess";
import { StageSheet, type PlannedStage } from "./stage_sheet";

interface Plan {
  stages: PlannedStage[]; cost: number; proven: boolean; in_words: string; tie: boolean; runner_up_cost?: number; runner_up: string[];
  prices: { constraint: string; reason: string; price: number }[]; sensitivity: { guess: string; in_words: string }[]; notes: string[]; working: string[];
}
interface Typed { guesses: { [id: string]: Guess }; costs: Costs; apart: Apart[]; left_out: string[] }

const planOf = (live: Live): Plan | undefined => {
  const data = live.is === "answer" ? live.data : live.is === "working" ? live.before : undefined;
  return data ? (data.answer as unknown as Plan) : undefined;
};

export function StagingPage(props: { work: WorkAnswer; aircraft: string }): JSX.Element {
  const key = `staging ${props.aircraft}`;
  const [typed, setTyped] = useState<Typed>(() => kept<Typed>(key) ?? { guesses: {}, costs: startCosts, apart: [], left_out: [] });
  const [hand, setHand] = useState<Arrangement | undefined>(undefined);
  const put = (change: Partial<Typed>): void => { const next = { ...typed, ...change }; setTyped(next); keep(key, next); };

  const open = props.work.changes.filter((c) => c.state === "planned");
  const changes = open.filter((c) => !typed.left_out.includes(c.id));
  const guessOf = (c: ChangeLine): Guess => typed.guesses[c.id] ?? guessFor(c);
  const wanted = { changes, guesses: typed.guesses, costs: typed.costs, apart: typed.apart };
  const names = namesOf(changes);
  const idOf = new Map([...names].map(([id, name]) => [name, id]));

  const asked = planInput(wanted);
  const best = useLive("calc", "stage-plan", asked);
  const plan = planOf(best);
  const arranged: Arrangement = plan ? plan.stages.map((s) => s.changes.flatMap((n) => idOf.get(n) ?? [])) : [];
  // What was arranged by hand for other changes is no arrangement of these.
  const fits = hand !== undefined && hand.flat().length === changes.length && hand.flat().every((id) => names.has(id));
  useEffect(() => { if (hand && !fits) setHand(undefined); }, [fits]);
  const by_hand = useLive("calc", "stage-plan", fits && asked ? planInput(wanted, hand) : undefined);
  const own = planOf(by_hand);
  const shown = fits ? hand : arranged;
  const figures = fits ? own : plan;
  const byId = (id: string): Guess => { const c = changes.find((x) => x.id === id); return c ? guessOf(c) : { chance: "", look: "", fly: "", symptoms: "" }; };

  return (
    <div class="sheet staging">
      <section class="left">
        <p class="trail"><a href={address("work")}>Work</a></p>
        <h1>What flies together</h1>
        {open.length === 0 ? <p class="lead">No change is planned. <a href={address("work", ["act", "plan-change"], { back: "#/work/staging" })}>Plan a change</a> first.</p> : (
          <>
            <p class="lead">The figures are guesses, ours from memory to start with. Put your own.</p>
            <ul class="plain rows guesses">
              {open.map((c) => (
                <GuessRow key={c.id} change={c} guess={guessOf(c)} out={typed.left_out.includes(c.id)}
                  set={(g) => put({ guesses: { ...typed.guesses, [c.id]: g } })}
                  leave={(out) => put({ left_out: out ? [...typed.left_out, c.id] : typed.left_out.filter((id) => id !== c.id) })} />
              ))}
            </ul>
            <ApartList changes={changes} apart={typed.apart} set={(apart) => put({ apart })} />
            <CostFields costs={typed.costs} set={(costs) => put({ costs })} />
          </>
        )}
      </section>
      <section class="right" aria-live="polite">
        <h2>Stages</h2>
        {asked === undefined && changes.length > 0 ? <p class="trouble">A figure is missing or out of its range; the sheet follows when it is mended.</p> : null}
        <Wrong live={best} />
        {figures || fits ? (
          <>
            {plan ? <Price plan={plan} own={fits ? own : undefined} hand={fits} back={() => setHand(undefined)} /> : null}
            {fits ? <Wrong live={by_hand} /> : null}
            <ol class="plain stage-sheets">
              {shown.map((ids, i) => (
                <StageSheet key={ids.join(" ")} number={i + 1} of={shown.length} changes={ids.map((id) => ({ id, name: names.get(id) ?? id }))}
                  figures={figures?.stages.find((s) => sameSet(s.changes, ids.map((id) => names.get(id) ?? id)))}
                  alike={alike(ids, byId).map((a) => ({ symptom: a.symptom, names: a.changes.map((id) => names.get(id) ?? id) }))}
                  move={(id, to) => setHand(moved(shown, id, to))} />
              ))}
            </ol>
            {plan ? <Behind plan={plan} /> : null}
            <div class="form-acts"><button type="button" onClick={() => print()}>Print</button></div>
          </>
        ) : null}
        {best.is === "answer" ? <Cautions cautions={best.data.cautions} /> : null}
      </section>
    </div>
  );
}

const sameSet = (a: string[], b: string[]): boolean => a.length === b.length && a.every((x) => b.includes(x));
const hours = (cost: number): string => `${cost.toFixed(1)} h`;

function Price(props: { plan: Plan; own: Plan | undefined; hand: boolean; back: () => void }): JSX.Element {
  const { plan, own } = props;
  if (!props.hand) {
    return (
      <>
        <p class="price"><strong>{hours(plan.cost)}</strong> of work expected{plan.proven ? "; no plan within the rules costs less." : "; not proven the least."}</p>
        {plan.tie ? <p class="help"><strong>A tie</strong>: within the guesses another plan is as good. Choose by what the sums do not hold.</p> : null}
      </>
    );
  }
  const more = own ? own.cost - plan.cost : undefined;
  return (
    <div class="price-by-hand">
      <p class="price">{own ? <><strong>{hours(own.cost)}</strong> as arranged by hand: {more! < 0.05 ? "as good as the least." : `${hours(more!)} more than the least.`}</> : "Arranged by hand."}</p>
      <button type="button" onClick={props.back}>Back to the least</button>
    </div>
  );
}

function Behind(props: { plan: Plan }): JSX.Element {
  const { plan } = props;
  const paid = plan.prices.filter((p) => p.price > 0);
  return (
    <details class="more">
      <summary>Behind the plan</summary>
      <p>{plan.in_words}</p>
      {plan.runner_up.length > 0 ? <><h3>The next best</h3><ol>{plan.runner_up.map((r) => <li key={r}>{r}</li>)}</ol>{plan.runner_up_cost === undefined ? null : <p class="help">{hours(plan.runner_up_cost)}</p>}</> : null}
      <h3>Price of the rules</h3>
      {paid.length === 0 ? <p class="none">No rule makes the plan dearer.</p> : <ul>{paid.map((p) => <li key={p.constraint}>{p.constraint}: {hours(p.price)}{p.reason ? ` (${p.reason})` : ""}</li>)}</ul>}
      <h3>If the guesses are wrong</h3>
      <ul>{plan.sensitivity.map((s) => <li key={s.guess}>{s.guess}: {s.in_words}</li>)}</ul>
      {plan.notes.length > 0 ? <ul>{plan.notes.map((n) => <li key={n}>{n}</li>)}</ul> : null}
    </details>
  );
}

function Wrong(props: { live: Live }): JSX.Element | null {
  const { live } = props;
  if (live.is === "no-connection") return <p class="trouble">No connection. The sheet follows when the server answers again.</p>;
  if (live.is === "fault") return <p class="trouble">{live.what}</p>;
  if (live.is !== "problems") return null;
  return <div class="trouble" role="alert">{live.problems.map((p: Problem) => <p key={p.what}>{p.what}{p.expected ? ` Expected: ${p.expected}.` : ""}</p>)}</div>;
}

function CostFields(props: { costs: Costs; set: (c: Costs) => void }): JSX.Element {
  const rows: [keyof Costs, string, string][] = [
    ["stage", "Once a stage: cowl, paper", "hours of work"], ["air", "A test hour in the air costs", "hours of work"],
    ["ground", "An hour of ground run costs", "hours of work"], ["most", "Most changes in a stage", "left empty: any"],
  ];
  return (
    <fieldset class="costs">
      <legend>What it costs</legend>
      {rows.map(([name, label, unit]) => {
        const text = props.costs[name];
        const wrong = name === "most" ? (text.trim() === "" ? undefined : /^[1-9]\d?$/.test(text.trim()) ? undefined : "a whole number, 1 to 99") : figureTrouble(text, 0, 1000);
        return (
          <label key={name}>{label} <span class="help">({unit})</span>
            <input class="number" inputMode="decimal" value={text} aria-invalid={wrong !== undefined || undefined} onInput={(e) => props.set({ ...props.costs, [name]: e.currentTarget.value })} />
            {wrong ? <span class="wrong">{wrong}</span> : null}
          </label>
        );
      })}
    </fieldset>
  );
}

function ApartList(props: { changes: ChangeLine[]; apart: Apart[]; set: (a: Apart[]) => void }): JSX.Element {
  const { changes, apart } = props;
  const [one, setOne] = useState("");
  const [other, setOther] = useState("");
  const [reason, setReason] = useState("");
  const title = (id: string): string => changes.find((c) => c.id === id)?.title ?? id;
  const choose = (label: string, value: string, set: (v: string) => void): JSX.Element => (
    <label>{label}<select value={value} onChange={(e) => set(e.currentTarget.value)}><option value="">choose</option>{changes.map((c) => <option key={c.id} value={c.id}>{c.title}</option>)}</select></label>
  );
  return (
    <details class="more">
      <summary>Never in one stage{apart.length > 0 ? ` (${apart.length})` : ""}</summary>
      <ul class="plain rows">{apart.map((p, i) => <li key={`${p.one} ${p.other}`}>{title(p.one)} and {title(p.other)}{p.reason ? `: ${p.reason}` : ""} <button type="button" onClick={() => props.set(apart.filter((_, k) => k !== i))}>Take away</button></li>)}</ul>
      {choose("This change", one, setOne)}
      {choose("Never with", other, setOther)}
      <label>Because<input type="text" value={reason} placeholder="one mistake made twice takes both" onInput={(e) => setReason(e.currentTarget.value)} /></label>
      <div class="form-acts"><button type="button" disabled={one === "" || other === "" || one === other} onClick={() => { props.set([...apart, { one, other, reason }]); setOne(""); setOther(""); setReason(""); }}>Keep them apart</button></div>
    </details>
  );
}

