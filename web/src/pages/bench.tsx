/// The bench: every calculation of the catalogue, from its description alone.

import { useRef, useState } from "preact/hooks";
import type { JSX } from "preact";
import { useCatalogue, useDescription, useLive, type Live } from "../api/use";
import type { CalcAnswer, Description, JsonObject } from "../api/types";
import { composeRecord, stillNeeded, untouched } from "../form/draft";
import { focusPath } from "../form/form";
import { Answer, Cautions, Sources } from "../look/answer";
import { apart } from "../look/pictures";
import { address } from "../route/route";
import { DescribedForm, useTouched } from "./described_form";
import { useDraft } from "./draft_state";
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
              <a href={address("work", ["bench", c.name])}>
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

export function CalculationPage(props: { name: string }): JSX.Element {
  const seen = useDescription("calc", props.name);
  if (!seen.data) {
    return (
      <div class="one-column">
        <h1>{named(props.name)}</h1>
        <Trouble failed={seen.failed} />
      </div>
    );
  }
  return <Calculation key={props.name} description={seen.data} />;
}

function Calculation(props: { description: Description }): JSX.Element {
  const { description } = props;
  const { fields } = description.input;
  const state = useDraft(`wm.draft.calc.${description.name}`, fields);
  const touched = useTouched();
  const [refusals, setRefusals] = useState(0);
  const result = useRef<HTMLElement>(null);
  const empty = untouched(fields, state.draft);
  const lacking = stillNeeded(fields, state.draft);
  const live = useLive("calc", description.name, empty ? undefined : composeRecord(fields, state.draft));
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
        <p class="trail"><a href={address("work", ["bench"])}>Bench</a></p>
        <h1>{named(description.name)}</h1>
        <p class="lead">{description.purpose}</p>
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
        <LiveAnswer live={live} description={description} lacking={lacking.map((f) => f.label)} />
      </section>
    </div>
  );
}

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

function LiveAnswer(props: { live: Live; description: Description; lacking: string[] }): JSX.Element {
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
            : <strong>No answer yet: see what is marked.</strong>}
        </p>
      ) : null}
      {live.is === "nothing" ? <p class="not-judged">The answer appears here as you type.</p> : null}
      <Cautions cautions={answer?.cautions ?? description.cautions} />
      <Sources sources={answer?.sources ?? description.sources} />
      <p class="version">{description.name}, version {answer?.version ?? description.version ?? 1}</p>
    </>
  );
}
