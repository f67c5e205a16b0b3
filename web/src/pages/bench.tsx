/// The bench: every calculation of the catalogue, from its description alone.

import { useRef, useState } from "preact/hooks";
import type { ComponentChildren, JSX } from "preact";
import { useCatalogue, useDescription, useLive, type Live } from "../api/use";
import type { CalcAnswer, Caution, Description, JsonObject } from "../api/types";
import { composeRecord, stillNeeded, untouched } from "../form/draft";
import { focusPath, sentence } from "../form/form";
import { Answer, Cautions, Sources } from "../look/answer";
import { apart } from "../look/pictures";
import { address } from "../route/route";
import type { ChangeLine, HoseAnswer } from "../api/views";
import { CutFor, KeepWithChange, useChange } from "./cut";
import { cutNote, startOfCut } from "./cut_note";
import { DescribedForm, useTouched } from "./described_form";
import { useDraft } from "./draft_state";
import { EndsToSheet } from "./ends_to_sheet";
import { startWith, takesHose } from "./hose_taken";
import { KeepInRecord, keptAddress } from "../hose/keep_hose";
import { useAircraftView } from "../aircraft";
import { named } from "./page";
import { Trouble } from "./trouble";

export function BenchPage(): JSX.Element {
  const seen = useCatalogue();
  const list = seen.data?.calculations;
  return (
    <div class="one-column">
      <h1>Bench</h1>
      <p class="lead">Any calculation by itself. Nothing here is written to the record.</p>
      {list ? (
        <ul class="index">
          {list.map((c) => (
            <li key={c.name}>
              <a href={c.name === "hose-sheet" ? address("work", ["hose"]) : address("work", ["bench", c.name])}>
                <strong>{named(c.name)}</strong>
                <span>{c.purpose}</span>
              </a>
            </li>
          ))}
        </ul>
      ) : <Trouble failed={seen.failed} />}
    </div>
  );
}

/// "?change=ID&back=...": for one change, whose words fill in what they can.
export function CalculationPage(props: { name: string; query: Record<string, string> }): JSX.Element {
  const seen = useDescription("calc", props.name);
  const wanted = props.query["change"];
  const change = useChange(wanted);
  const held = takesHose.has(props.name) ? props.query["hose"] : undefined;
  const kept = useAircraftView<HoseAnswer>("hose", { hose: held ?? "" }, held !== undefined).data?.answer;
  if (!seen.data || (wanted !== undefined && !change) || (held !== undefined && !kept)) {
    return (
      <div class="one-column">
        <h1>{named(props.name)}</h1>
        <Trouble failed={seen.failed} />
      </div>
    );
  }
  return <Calculation key={`${props.name} ${wanted ?? held ?? ""}`} description={seen.data} change={change} kept={kept} back={props.query["back"]?.startsWith("#/") ? props.query["back"] : undefined} />;
}

function Calculation(props: { description: Description; change: ChangeLine | undefined; kept: HoseAnswer | undefined; back: string | undefined }): JSX.Element {
  const { description, change, kept, back } = props;
  const { fields } = description.input;
  const draftKey = `wm.draft.calc.${description.name}${kept ? `.hose=${kept.hose.id}` : change ? `.change=${change.id}` : ""}`;
  const state = useDraft(draftKey, fields, kept ? startWith(description.name, kept) : change ? startOfCut(change.new_part) : {});
  const touched = useTouched();
  const [refusals, setRefusals] = useState(0);
  const result = useRef<HTMLElement>(null);
  const empty = untouched(fields, state.draft);
  const lacking = stillNeeded(fields, state.draft);
  const input = composeRecord(fields, state.draft);
  const live = useLive("calc", description.name, empty ? undefined : input);
  const problems = live.is === "problems" ? live.problems : [];
  const example = description.example as JsonObject | undefined;
  const show = (): void => {
    if (live.is === "problems") {
      setRefusals((n) => n + 1);
      return;
    }
    const first = lacking[0];
    if (empty && first) focusPath(first.key);
    else result.current?.focus();
  };
  return (
    <div class="sheet">
      <section class="left">
        <p class="trail"><a href={back ?? address("work", ["bench"])}>{back ? "Back" : "Bench"}</a></p>
        <h1>{named(description.name)}</h1>
        <p class="lead">{description.purpose}</p>
        <Cautions cautions={first(description.cautions)} named="First" />
        {change ? <CutFor change={change} /> : null}
        {kept ? <p>For the hose <a href={keptAddress(kept.hose.id)}>{kept.hose.title}</a>, overall {kept.hose.overall}. What its sheet says is filled in.</p> : null}
        <DescribedForm
          fields={fields} draft={state.draft} problems={problems} touched={touched} refusals={refusals}
          onSubmit={show}
          set={(next) => {
            state.set(next);
            // What was put right must not stay marked: live answers take over again.
            if (refusals > 0 && problems.length === 0) setRefusals(0);
          }}
        >
          <div class="form-acts">
            {example ? <button type="button" onClick={() => { state.show(example); setRefusals(0); }}>Fill in the example</button> : null}
            <button type="button" class="quiet" disabled={empty} onClick={() => { state.clear(); touched.reset(); setRefusals(0); }}>Clear</button>
          </div>
          <div class="bottom-bar">
            <button type="submit" class="main">Show the answer</button>
          </div>
        </DescribedForm>
      </section>
      <section class="right" ref={result} tabIndex={-1} aria-labelledby="answer-heading">
        <h2 id="answer-heading">Answer</h2>
        <div role="status" class="visually-hidden">{spoken(live)}</div>
        <LiveAnswer
          live={live} description={description} lacking={lacking.map((f) => f.label)}
          keep={kept && description.name === "proof-test" ? (
            <KeepInRecord
              act="prove-hose" title={`Proof test: ${kept.hose.title}`} words="Keep this proof test" draft={draftKey}
              input={{ hose: kept.hose.id, test: input }} onward={keptAddress} ready={live.is === "answer"}
            />
          ) : live.is !== "answer" ? null : description.name === "hose-ends" ? <EndsToSheet input={input} answer={live.data} change={change} back={back} />
            : change && change.state === "planned" && description.name === "length-allowance" ? <KeepWithChange change={change} note={cutNote(fields, input, live.data)} title="Cut length" back={back ?? "#/work"} /> : null}
        />
      </section>
    </div>
  );
}

// What must be so before anybody begins stands before the form; the others beside the answer.
const first = (cautions: Caution[] | undefined): Caution[] => (cautions ?? []).filter((c) => c.first);
const rest = (cautions: Caution[] | undefined): Caution[] => (cautions ?? []).filter((c) => !c.first);

function spoken(live: Live): string {
  switch (live.is) {
    case "answer":
      return "The answer is up to date.";
    case "no-connection":
      return "Not judged: no connection.";
    default:
      return "";
  }
}

function LiveAnswer(props: { live: Live; description: Description; lacking: string[]; keep?: ComponentChildren }): JSX.Element {
  const { live, description, lacking } = props;
  const answer: CalcAnswer | undefined = live.is === "answer" ? live.data : live.is === "working" ? live.before : undefined;
  const shown = answer ? apart(answer.answer) : undefined;
  return (
    <>
      {answer ? (
        <div class={live.is === "working" ? "answer-body working" : "answer-body"}>
          {shown?.pictures}
          <Answer fields={description.output?.fields} answer={shown?.rest ?? {}} />
        </div>
      ) : null}
      {live.is === "no-connection" ? <p class="not-judged"><strong>Not judged: no connection.</strong> What you typed is kept here.</p> : null}
      {live.is === "fault" ? <p class="not-judged"><strong>Not judged.</strong> {live.what}</p> : null}
      {live.is === "problems" ? (
        <p class="not-judged">
          {lacking.length > 0
            ? <>Still needed: {lacking.join(", ")}.</>
            : <><strong>No answer yet.</strong> {live.problems.slice(0, 3).map((p) => sentence(p.what)).join(" ")}</>}
        </p>
      ) : null}
      {live.is === "nothing" ? <p class="not-judged">The answer appears here as you type.</p> : null}
      {props.keep}
      <Cautions cautions={rest(answer?.cautions ?? description.cautions)} />
      <Sources sources={answer?.sources ?? description.sources} />
      <p class="version">{description.name}, version {answer?.version ?? description.version ?? 1}</p>
    </>
  );
}
