/// Joints: open ones first, worked one by one or several at once; bungs and the cowl.

import { useState } from "preact/hooks";
import type { JSX } from "preact";
import { useDescription } from "../api/use";
import type { JointLine, WorkAnswer } from "../api/views";
import { aircraftKnown, chosenAircraft, useAircraftView } from "../aircraft";
import { useStore } from "../kit/store";
import { dayInWords } from "../kit/time";
import { Cautions } from "../look/answer";
import { unitWords } from "../look/digits";
import { address, go } from "../route/route";
import { ActForm, type ActState } from "./act_form";
import { Trouble } from "./trouble";

/// The states that a joint still needs, as the words of the act. "seen by a second person" is
/// the state `seen`.
export function nextStates(joint: JointLine): string[] {
  if (joint.closed) return ["open"];
  return joint.needs.split(", ").map((n) => n.split(" ")[0] ?? "").filter((n) => n !== "");
}

export function JointRow(props: { joint: JointLine; pick?: { on: boolean; set: (on: boolean) => void } }): JSX.Element {
  const { joint, pick } = props;
  const facts = [
    joint.kind, joint.torque ? `torqued ${joint.torque}` : "", joint.torque_limits ? `wanted ${joint.torque_limits}` : "", joint.torque_table,
    joint.by ? `by ${joint.by}` : "", joint.since && !joint.closed ? `open since ${dayInWords(joint.since)}` : "",
  ].filter((t) => t !== "").join(" · ");
  return (
    <div class="joint-row">
      {pick ? <label class="tick bare"><input type="checkbox" aria-label={`Choose ${joint.name}`} checked={pick.on} onChange={(e) => pick.set(e.currentTarget.checked)} /><span /></label> : null}
      <a class="joint-link" href={address("work", ["joint", joint.id])}>
        {joint.number > 0 ? <strong class="joint-number">{joint.number}</strong> : null}
        <span>
          <strong>{joint.name}</strong>: {joint.state}{joint.needs && !joint.closed ? <span class="needs">, still to be {joint.needs}</span> : null}
          <span class="help line">{unitWords(facts)}</span>
        </span>
      </a>
    </div>
  );
}

export function JointsPage(props: { stage?: string | undefined }): JSX.Element {
  const seen = useAircraftView<WorkAnswer>("work");
  const [picked, setPicked] = useState<string[]>([]);
  const work = seen.data?.answer;
  if (!work) return <div class="one-column"><h1>Joints</h1><Trouble failed={seen.failed} /></div>;
  const stages = work.stages.filter((s) => s.state !== "closed" && (props.stage === undefined || s.id === props.stage));
  const inWork = new Set(work.changes.filter((c) => stages.some((s) => s.changes.includes(c.id))).flatMap((c) => c.joints));
  const open = work.joints.filter((j) => !j.closed).sort((a, b) => a.number - b.number);
  const stageJoints = work.joints.filter((j) => j.closed && inWork.has(j.id));
  const rest = work.joints.filter((j) => j.closed && !inWork.has(j.id));
  const rows = (list: JointLine[]): JSX.Element => (
    <ul class="plain rows">
      {list.map((j) => <li key={j.id}><JointRow joint={j} pick={{ on: picked.includes(j.id), set: (on) => setPicked(on ? [...picked, j.id] : picked.filter((p) => p !== j.id)) }} /></li>)}
    </ul>
  );
  const back = props.stage ? address("work", ["joints"], { stage: props.stage }) : "#/work/joints";
  const several = (state: string): string => address("work", ["act", "work-joints"], { joints: picked.join(","), state, back, ...(props.stage ? { stage: props.stage } : {}) });
  const { header } = work;
  return (
    <div class="one-column wide">
      <p class="trail"><a href={props.stage ? address("work", ["stage", props.stage]) : address("work")}>{props.stage ? "Stage" : "Work"}</a></p>
      <h1>Joints</h1>
      <p class="lead">Touch a joint to work on it, or tick several and bring them to one state.</p>
      <h2>Open: {open.length}</h2>
      {open.length === 0 ? <p class="none">No joint is open.</p> : rows(open)}
      {stageJoints.length > 0 ? <><h2>In the work that is planned</h2>{rows(stageJoints)}</> : null}
      <details class="more"><summary>{rest.length} other joints</summary>{rows(rest)}</details>
      {picked.length > 0 ? (
        <div class="bottom-bar several" role="group" aria-label={`${picked.length} joints chosen`}>
          <span>{picked.length} chosen:</span>
          {["open", "assembled", "torqued", "locked", "marked", "seen"].map((s) => <a key={s} class="button" href={several(s)}>{s}</a>)}
        </div>
      ) : null}
      <h2>Bungs, caps, tools and rags</h2>
      {work.bungs.length === 0 ? <p class="none">None is fitted.</p> : (
        <ul class="plain rows">
          {work.bungs.map((b) => (
            <li key={b.id} class="row-with-acts">
              <span><strong>{b.id}</strong> {b.where}<span class="help line">since {dayInWords(b.since)}</span></span>
              <a class="button" href={address("work", ["act", "count-bung"], { id: b.id, fitted: "false", back })}>Taken out</a>
            </li>
          ))}
        </ul>
      )}
      <p class="form-acts"><a class="button" href={address("work", ["act", "count-bung"], { fitted: "true", back })}>Count one in</a></p>
      <h2>Cowl: {header.cowl_closed ? "closed" : "open"}</h2>
      <p class="form-acts">
        {header.cowl_closed
          ? <a class="button" href={address("work", ["act", "move-cowl"], { closed: "false", back })}>Open the cowl</a>
          : <a class="button" href={address("work", ["act", "move-cowl"], { closed: "true", back })}>Close the cowl</a>}
      </p>
    </div>
  );
}

/// One joint: what was done, and the next state as the main button's form.
export function JointPage(props: { id: string; state?: string | undefined }): JSX.Element {
  const seen = useAircraftView<WorkAnswer>("work");
  const act = useDescription("act", "work-joint");
  const aircraft = useStore(chosenAircraft);
  const known = useStore(aircraftKnown);
  const [done, setDone] = useState<ActState>({ is: "filling" });
  const work = seen.data?.answer;
  const joint = work?.joints.find((j) => j.id === props.id);
  if (!work || !act.data || !known) return <div class="one-column"><h1>Joint</h1><Trouble failed={seen.failed ?? act.failed} /></div>;
  if (!joint) return <div class="one-column"><h1>Joint</h1><p class="trouble">There is no such joint.</p></div>;
  const states = nextStates(joint);
  const words = act.data.input.fields.find((f) => f.key === "state")?.choices ?? [];
  const wanted = props.state ?? states[0] ?? "open";
  const stage = work.stages.find((s) => s.state !== "closed" && work.changes.some((c) => s.changes.includes(c.id) && c.joints.includes(joint.id)));
  const torqued = wanted === "torqued";
  const notes = done.is === "recorded" && Array.isArray(done.data.answer?.["notes"]) ? (done.data.answer["notes"] as string[]) : [];
  const others = work.joints.filter((j) => !j.closed && j.id !== joint.id);
  return (
    <div class="one-column">
      <p class="trail"><a href={address("work", ["joints"], stage ? { stage: stage.id } : {})}>Joints</a></p>
      <h1>{joint.number > 0 ? <span class="joint-number">{joint.number}</span> : null} {joint.name}</h1>
      <p class="lead">{unitWords([joint.kind, joint.state, joint.torque ? `torqued ${joint.torque}` : "", joint.torque_limits ? `wanted ${joint.torque_limits}` : "", joint.torque_table].filter((t) => t !== "").join(" · "))}</p>
      {notes.length > 0 ? <div class="told" role="status">{notes.map((n) => <p key={n}>{n}</p>)}</div> : null}
      <nav class="states" aria-label="Bring it to">
        {words.map((w) => (
          <a key={w.value} class="button" aria-current={w.value === wanted ? "true" : undefined} href={address("work", ["joint", joint.id], { state: w.value })}>{w.value}</a>
        ))}
      </nav>
      <ActForm
        key={`${joint.id} ${wanted}`}
        description={act.data} scope={`joint=${joint.id} ${wanted}`}
        fixed={{ aircraft, joint: joint.id, state: wanted, ...(stage ? { stage: stage.id } : {}) }}
        start={{ ...(torqued && joint.torque_table ? { torque_table: joint.torque_table } : {}) }}
        first={torqued ? ["torque", "torque_table", "instrument", "by"] : ["by"]}
        button={`Record: ${wanted}`}
        withoutDay
        onState={(next) => {
          setDone(next);
          if (next.is !== "recorded" && next.is !== "waiting") return;
          const rest = states.filter((s) => s !== wanted);
          const other = others[0];
          if (wanted !== "open" && rest[0]) go(address("work", ["joint", joint.id], { state: rest[0] }));
          else if (wanted !== "open" && other) go(address("work", ["joint", other.id]));
          else go(address("work", ["joints"], stage ? { stage: stage.id } : {}));
        }}
      />
      <Cautions cautions={act.data.cautions} />
    </div>
  );
}
