/// Work: changes, the stages that they fly in, and the next thing to do in each.

import { useState } from "preact/hooks";
import type { JSX } from "preact";
import type { ChangeLine, HoseLine, Missing, Objection, StageLine, WorkAnswer } from "../api/views";
import { chosenAircraft, useAircraftView } from "../aircraft";
import { useStore } from "../kit/store";
import { dayInWords } from "../kit/time";
import { verdictText } from "../look/answer";
import { unitWords } from "../look/digits";
import { address } from "../route/route";
import { aboutHose } from "./cut";
import { JointRow } from "./joints";
import { Trouble } from "./trouble";

const k_work = "#/work";

export function WorkPage(): JSX.Element {
  const seen = useAircraftView<WorkAnswer>("work");
  const [picked, setPicked] = useState<string[]>([]);
  const work = seen.data?.answer;
  if (!work) return <div class="one-column"><h1>Work</h1><Trouble failed={seen.failed} /></div>;
  const live = work.changes.filter((c) => c.state !== "withdrawn");
  const free = live.filter((c) => c.stage === "" && c.state === "planned");
  const closed = work.stages.filter((s) => s.state === "closed");
  const open = work.stages.filter((s) => s.state !== "closed");
  const chosen = picked.filter((id) => free.some((c) => c.id === id));
  return (
    <div class="sheet work">
      <section class="left">
        <h1>Work</h1>
        {open.length === 0 ? <p class="lead">No stage is under way. Plan changes, then put those that fly together into a stage.</p> : null}
        {open.map((s) => <StageCard key={s.id} stage={s} work={work} />)}
        <h2>Changes in no stage</h2>
        {free.length === 0 ? <p class="none">None.</p> : (
          <ul class="plain rows">
            {free.map((c) => (
              <li key={c.id}>
                <ChangeRow change={c} hoses={work.hoses.filter((h) => h.change === c.id)} pick={{ on: chosen.includes(c.id), set: (on) => setPicked(on ? [...chosen, c.id] : chosen.filter((p) => p !== c.id)) }} />
              </li>
            ))}
          </ul>
        )}
        <div class="form-acts">
          <a class="button main" href={address("work", ["act", "plan-change"], { back: k_work })}>Plan a change</a>
          {free.length > 0 ? <a class="button" href={address("work", ["act", "plan-stage"], { ...(chosen.length > 0 ? { "start.changes": chosen.join(",") } : {}), back: k_work })}>{chosen.length > 0 ? `Put ${chosen.length} into a stage` : "Put changes into a stage"}</a> : null}
        </div>
        {work.hoses.length > 0 ? (
          <>
            <h2>Hoses drawn</h2>
            <ul class="plain rows">{work.hoses.map((h) => <li key={h.id}><HoseRow hose={h} /></li>)}</ul>
          </>
        ) : null}
        {closed.length > 0 ? (
          <details class="more">
            <summary>{closed.length === 1 ? "1 closed stage" : `${closed.length} closed stages`}</summary>
            <ul class="plain rows">{closed.map((s) => <li key={s.id}><a class="row-link" href={address("work", ["stage", s.id])}>{s.title}</a></li>)}</ul>
          </details>
        ) : null}
      </section>
      <section class="right">
        <h2>At hand</h2>
        <ul class="index">
          <Hand to={address("work", ["quick"])} name="Quick job" words="Oil, plugs, battery: one screen" />
          <Hand to={address("work", ["decide"])} name="Renew, watch or leave" words="Each part with what the record says about it" />
          <Hand to={address("work", ["staging"])} name="What flies together" words="Changes put into stages, with the price of every arrangement" />
          <Hand to={address("work", ["causes"])} name="What it may be" words="From a symptom to the next thing to look at" />
          <Hand to={address("work", ["joints"])} name="Joints, bungs, cowl" words={`${work.header.open_joints} open, ${work.header.bungs} fitted, cowl ${work.header.cowl_closed ? "closed" : "open"}`} />
          <Hand to={address("work", ["hose"])} name="Hose sheet" words="From two fittings to a hose that fits: drawn, judged, printed" />
          <Hand to={address("work", ["bench", "length-allowance"])} name="Cut length of a hose" words="From what was measured on the aircraft" />
          <Hand to={address("work", ["bench"])} name="Bench" words="Any calculation by itself" />
          <Hand to={address("work", ["act", "task-done"], { back: k_work })} name="Task done" words="Something that a limit asks for" />
          <Hand to={address("work", ["act", "read-counter"], { back: k_work })} name="Counters" words="Enter what the meters show" />
          <Hand to={address("work", ["act", "install-part"], { back: k_work })} name="Fit a part" words="With its counters" />
          <Hand to={address("work", ["act", "remove-part"], { back: k_work })} name="Take a part off" words="With the reason" />
          <Hand to={address("work", ["all"])} name="Everything that can be entered" words="From the catalogue" />
        </ul>
      </section>
    </div>
  );
}

function HoseRow(props: { hose: HoseLine }): JSX.Element {
  const { hose } = props;
  const proof = hose.proof === "" ? "not proved" : hose.drawn_since ? "drawn anew since its proof test" : `${verdictText(hose.verdict).toLowerCase()}: ${hose.proof}`;
  return (
    <>
      <a class="row-link" href={address("work", ["hoses", hose.id])}>{hose.title}</a>
      <p class="help">{unitWords([[hose.family, hose.size].filter((t) => t !== "").join(" "), `overall ${hose.overall}`, proof].filter((t) => t !== "").join(" · "))}</p>
    </>
  );
}

function Hand(props: { to: string; name: string; words: string }): JSX.Element {
  return <li><a href={props.to}><strong>{props.name}</strong><span>{props.words}</span></a></li>;
}

function ChangeRow(props: { change: ChangeLine; pick?: { on: boolean; set: (on: boolean) => void }; back?: string; stage?: StageLine; hoses?: HoseLine[] }): JSX.Element {
  const { change, pick, stage } = props;
  const back = props.back ?? k_work;
  const movable = stage === undefined || stage.state === "planned" || stage.state === "held";
  return (
    <div class="row-with-acts">
      <div class="joint-row">
        {pick ? <label class="tick bare"><input type="checkbox" aria-label={`Choose ${change.title}`} checked={pick.on} onChange={(e) => pick.set(e.currentTarget.checked)} /><span /></label> : null}
        <div>
          <strong>{change.title}</strong>{change.state === "done" ? " · done" : ""}
          <p class="help">{[change.position_name, change.system, change.grade, change.joints.length > 0 ? `${change.joints.length} ${change.joints.length === 1 ? "joint" : "joints"}` : "", change.new_part, change.document].filter((t) => t !== "").join(" · ")}</p>
          {change.note ? <p class="help entry-note">{change.note}</p> : null}
          {(props.hoses ?? []).map((h) => <p key={h.id} class="help"><a href={address("work", ["hoses", h.id])}>{h.title}</a>{unitWords(`, overall ${h.overall}${h.proof === "" ? ", not proved" : ""}`)}</p>)}
        </div>
      </div>
      <div class="form-acts">
        {change.state === "done" ? null : <a class="button" href={address("work", ["act", "change-done"], { change: change.id, back })} aria-label={`Done: ${change.title}`}>Done</a>}
        {change.state === "done" || !aboutHose(change) ? null : <a class="button" href={address("work", ["bench", "length-allowance"], { change: change.id, back })} aria-label={`Cut length: ${change.title}`}>Cut length</a>}
        {change.state === "done" || !aboutHose(change) ? null : <a class="button" href={address("work", ["hose"], { change: change.id, back })} aria-label={`Hose sheet: ${change.title}`}>Hose sheet</a>}
        {change.state === "done" || !movable ? null : <a class="button quiet-button" href={address("work", ["act", "withdraw-change"], { change: change.id, back })} aria-label={`Take back: ${change.title}`}>Take back</a>}
      </div>
    </div>
  );
}

/// A card as PDF, on the paper of the owner.
export function Card(props: { kind: "work" | "stage" | "entry"; id: string; words: string; about: string }): JSX.Element {
  const aircraft = useStore(chosenAircraft);
  const query = new URLSearchParams({ aircraft, paper: "a4" });
  return <a class="button quiet-button" href={`/api/print/${props.kind}/${encodeURIComponent(props.id)}.pdf?${query}`} target="_blank" rel="noopener" aria-label={`${props.words} as PDF: ${props.about}`}>{props.words}</a>;
}

/// Where the next missing thing is entered, and the words on its button.
export function wayTo(missing: Missing | undefined, stage: StageLine, work: WorkAnswer): { to: string; words: string } {
  const back = address("work", ["stage", stage.id]);
  const act = (name: string, query: Record<string, string>): string => address("work", ["act", name], { ...query, back });
  if (!missing) {
    const closes = stage.state === "open" || stage.ground_only;
    return { to: address("work", ["sign", stage.id, closes ? "closes-stage" : "opens-stage"]), words: closes ? "Read and sign it closed" : "Read and sign it open" };
  }
  switch (missing.where) {
    case "rules": {
      const rule = stage.objections.find((o) => !o.settled);
      return { to: act("answer-objection", { stage: stage.id, ...(rule ? { rule: rule.rule } : {}) }), words: "Answer the objection" };
    }
    case "changes": {
      const planned = work.changes.filter((c) => stage.changes.includes(c.id) && c.state === "planned");
      // The one that the line names; a title may hold another: the longest that fits.
      const meant = planned.filter((c) => missing.what.includes(c.title)).sort((a, b) => b.title.length - a.title.length);
      const change = meant[0] ?? planned[0];
      return { to: act("change-done", change ? { change: change.id } : {}), words: change ? `Done: ${change.title}` : "Record it as done" };
    }
    case "joints": {
      const open = work.joints.filter((j) => !j.closed).sort((a, b) => a.number - b.number)[0];
      return open ? { to: address("work", ["joint", open.id]), words: `Work on joint ${open.number}` } : { to: address("work", ["joints"], { stage: stage.id }), words: "Record the joints" };
    }
    case "bungs":
      return { to: address("work", ["joints"], { stage: stage.id }), words: "Count the bungs out" };
    case "mass":
      return { to: act("revise-mass", { stage: stage.id }), words: "Revise mass and balance" };
    case "defects":
      return { to: address("bay", ["defects"]), words: "See the defect" };
    case "cowl":
      return { to: act("move-cowl", { closed: "true" }), words: "Close the cowl" };
    case "entry":
      return { to: address("work", ["sign", stage.id, "opens-stage"]), words: "Read and sign it open" };
    default:
      return { to: act("stage-step", { stage: stage.id, step: missing.where }), words: "Enter it" };
  }
}

export function missingOf(stage: StageLine): Missing[] {
  return stage.state === "open" || stage.ground_only ? stage.missing_to_close : stage.missing_to_open;
}

function NextAct(props: { stage: StageLine; work: WorkAnswer }): JSX.Element {
  const { stage, work } = props;
  if (stage.state === "held") {
    return <p class="form-acts"><a class="button main" href={address("work", ["act", "resume-stage"], { stage: stage.id, back: k_work })}>Go on with it</a></p>;
  }
  const missing = missingOf(stage);
  const way = wayTo(missing[0], stage, work);
  // The objection stands in full beside it.
  const words = missing[0]?.where === "rules" ? "Answer the objection, or change the stage." : unitWords(stage.next);
  return (
    <div class="next-act">
      <p><strong>Next:</strong> {words}</p>
      <a class="button main" href={way.to}>{way.words}</a>
    </div>
  );
}

function StageCard(props: { stage: StageLine; work: WorkAnswer }): JSX.Element {
  const { stage, work } = props;
  const missing = missingOf(stage);
  const against = stage.objections.filter((o) => !o.settled);
  return (
    <article class="stage-card" aria-labelledby={`stage-${stage.id}`}>
      <h2 id={`stage-${stage.id}`}><a href={address("work", ["stage", stage.id])}>{stage.title}</a></h2>
      <p class="help">{stage.state_label}{stage.ground_only ? " · ground only" : ""} · {stage.changes.length === 1 ? "1 change" : `${stage.changes.length} changes`}{missing.length > 0 && stage.state !== "held" ? ` · ${missing.length} missing before signing` : ""}</p>
      {against.map((o) => <ObjectionBox key={o.rule} objection={o} stage={stage} work={work} />)}
      <NextAct stage={stage} work={work} />
    </article>
  );
}

/// Why the program objects, and what would settle it: each answer leads to its form. The other
/// way out is to change the stage.
function ObjectionBox(props: { objection: Objection; stage: StageLine; work: WorkAnswer }): JSX.Element {
  const { objection, stage, work } = props;
  const back = address("work", ["stage", stage.id]);
  const name = (id: string): string => work.changes.find((c) => c.id === id)?.title ?? id;
  if (objection.settled) return <div class="objection settled"><p><strong>Settled.</strong> {objection.words}</p><p class="help">{objection.settled_by}</p></div>;
  return (
    <div class="objection">
      <h2 class="objection-head">Objection</h2>
      <p>{objection.words}</p>
      {objection.changes.length > 0 ? <ul class="lines-list">{objection.changes.map((c) => <li key={c}>{name(c)}</li>)}</ul> : null}
      <p><strong>What settles it:</strong> {objection.answer}</p>
      {objection.source ? <p class="help">{objection.source}</p> : null}
      <div class="form-acts">
        {objection.accepted.map((a) => (
          <a key={a} class="button" href={address("work", ["act", "answer-objection"], { stage: stage.id, rule: objection.rule, answer: a, back })}>{(a.charAt(0).toUpperCase() + a.slice(1)).replaceAll("-", " ")}</a>
        ))}
        <a class="button" href={changeStage(stage, back)}>Change the stage</a>
      </div>
    </div>
  );
}

function changeStage(stage: StageLine, back: string): string {
  return address("work", ["act", "plan-stage"], { id: stage.id, "start.title": stage.title, "start.changes": stage.changes.join(","), ...(stage.ground_only ? { "start.ground_only": "true" } : {}), back });
}

export function StagePage(props: { id: string }): JSX.Element {
  const seen = useAircraftView<WorkAnswer>("work");
  const work = seen.data?.answer;
  const stage = work?.stages.find((s) => s.id === props.id);
  if (!work) return <div class="one-column"><h1>Stage</h1><Trouble failed={seen.failed} /></div>;
  if (!stage) return <div class="one-column"><p class="trail"><a href={k_work}>Work</a></p><h1>Stage</h1><p class="trouble">There is no such stage.</p></div>;
  const back = address("work", ["stage", stage.id]);
  const changes = work.changes.filter((c) => stage.changes.includes(c.id));
  const joints = work.joints.filter((j) => changes.some((c) => c.joints.includes(j.id)));
  const missing = missingOf(stage);
  const signed = stage.state === "open" || stage.state === "closed";
  return (
    <div class="sheet">
      <section class="left">
        <p class="trail"><a href={k_work}>Work</a></p>
        <h1>{stage.title}</h1>
        <p class="lead">{stage.state_label}{stage.reason ? `: ${stage.reason}` : ""}{stage.ground_only ? " · ground only, ends after its run" : ""}</p>
        {stage.state === "closed" ? null : <NextAct stage={stage} work={work} />}
        {stage.objections.map((o) => <ObjectionBox key={o.rule} objection={o} stage={stage} work={work} />)}
        <h2>Changes</h2>
        <ul class="plain rows">{changes.map((c) => <li key={c.id}><ChangeRow change={c} hoses={work.hoses.filter((h) => h.change === c.id)} back={back} stage={stage} /></li>)}</ul>
        <h2>Joints</h2>
        {joints.length === 0 ? <p class="none">The changes name none.</p> : <ul class="plain rows">{joints.map((j) => <li key={j.id}><JointRow joint={j} /></li>)}</ul>}
        {joints.length > 0 ? <p class="form-acts"><a class="button" href={address("work", ["joints"], { stage: stage.id })}>Several at once, bungs, cowl</a></p> : null}
        <StepList stage={stage} back={back} />
      </section>
      <section class="right">
        {stage.state === "closed" ? null : (
          <>
            <h2>Missing before it is signed {stage.state === "open" || stage.ground_only ? "closed" : "open"}</h2>
            {missing.length === 0 ? <p>Nothing. It can be read and signed.</p> : (
              <ol class="missing">
                {missing.map((m, i) => {
                  const way = wayTo(m, stage, work);
                  return <li key={i}><span>{unitWords(m.what)}</span> <a class="button quiet-button" href={way.to}>{way.words}</a></li>;
                })}
              </ol>
            )}
          </>
        )}
        <h2>Mass and balance</h2>
        <p>{stage.mass ? unitWords(stage.mass) : <span class="none">Not revised for this stage.</span>}</p>
        {stage.abort_values.length > 0 ? <><h2>Come back when</h2><ul class="plain rows">{stage.abort_values.map((a) => <li key={a.what}><strong>{a.what}</strong> {unitWords(a.limit)}</li>)}</ul></> : null}
        <div class="form-acts">
          {signed ? null : <a class="button" href={changeStage(stage, back)}>Change the stage</a>}
          {stage.state === "closed" ? null : <a class="button" href={address("work", ["act", "revise-mass"], { stage: stage.id, back })}>Revise mass and balance</a>}
          <Card kind="work" id={stage.id} words="Work card" about={stage.title} />
          <Card kind="stage" id={stage.id} words="Stage card" about={stage.title} />
          {stage.entries.map((e) => <Card key={e} kind="entry" id={e} words="Signed entry" about={e} />)}
          {stage.state === "closed" || stage.state === "held" ? null : <a class="button quiet-button" href={address("work", ["act", "hold-stage"], { stage: stage.id, back })}>Hold the stage</a>}
        </div>
      </section>
    </div>
  );
}

const steps: [string, string][] = [
  ["leak-run-static", "Leak run, engine stopped"], ["leak-run-engine", "Leak run, engine running"], ["ground-run", "Ground run"],
  ["check-flight", "Check flight"], ["second-look", "Second look"],
];

export function StepList(props: { stage: StageLine; back: string }): JSX.Element {
  const { stage, back } = props;
  return (
    <section>
      <h2>Runs and checks</h2>
      {stage.steps.length === 0 ? <p class="none">None entered yet.</p> : (
        <ol class="plain rows">
          {stage.steps.map((s) => (
            <li key={s.event}>
              <strong>{s.label.charAt(0).toUpperCase() + s.label.slice(1)}: {s.result}</strong>
              <p class="help">{unitWords([dayInWords(s.happened), s.air, s.flight_time, s.by].filter((t) => t !== "").join(" · "))}</p>
              {s.text ? <p>{s.text}</p> : null}
              {s.readings.length > 0 ? <p>{unitWords(s.readings.join(" · "))}</p> : null}
            </li>
          ))}
        </ol>
      )}
      {stage.state === "closed" ? null : (
        <details class="more">
          <summary>Enter a run or check</summary>
          <p class="form-acts">{steps.map(([step, name]) => <a key={step} class="button" href={address("work", ["act", "stage-step"], { stage: stage.id, step, back })}>{name}</a>)}</p>
          <p class="form-acts"><a class="button" href={address("work", ["causes"], { stage: stage.id, about: stage.title })}>Something is wrong: what it may be</a></p>
        </details>
      )}
    </section>
  );
}

export function RunsPage(): JSX.Element {
  const seen = useAircraftView<WorkAnswer>("work");
  const work = seen.data?.answer;
  if (!work) return <div class="one-column"><h1>Runs</h1><Trouble failed={seen.failed} /></div>;
  const stages = [...work.stages].reverse();
  const runs = stages.filter((s) => s.state !== "closed");
  const before = stages.filter((s) => s.state === "closed");
  return (
    <div class="one-column wide">
      <h1>Runs</h1>
      {runs.length === 0 ? <p class="lead">No stage is waiting for a run or a check flight.</p> : null}
      {runs.map((s) => (
        <article key={s.id} class="stage-card">
          <h2><a href={address("work", ["stage", s.id])}>{s.title}</a></h2>
          <p class="help">{s.state_label}</p>
          <NextAct stage={s} work={work} />
          <StepList stage={s} back="#/runs" />
        </article>
      ))}
      {before.length > 0 ? <h2>Closed stages</h2> : null}
      {before.map((s) => (
        <article key={s.id} class="stage-card">
          <h2><a href={address("work", ["stage", s.id])}>{s.title}</a></h2>
          <StepList stage={s} back="#/runs" />
        </article>
      ))}
    </div>
  );
}
