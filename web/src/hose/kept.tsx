/// One hose of the record: its drawing, its proof tests, and the next thing to do with it.

import type { JSX } from "preact";
import type { HoseAnswer, ProofLine } from "../api/views";
import { chosenAircraft, useAircraftView } from "../aircraft";
import { useStore } from "../kit/store";
import { dayInWords } from "../kit/time";
import { unitWords } from "../look/digits";
import { verdictText } from "../look/answer";
import { address } from "../route/route";
import { Trouble } from "../pages/trouble";

export function KeptHosePage(props: { id: string }): JSX.Element {
  const seen = useAircraftView<HoseAnswer>("hose", { hose: props.id });
  const page = seen.data?.answer;
  if (!page) return <div class="one-column"><p class="trail"><a href={address("work")}>Work</a></p><h1>Hose</h1><Trouble failed={seen.failed} /></div>;
  const { hose } = page;
  const back = address("work", ["hoses", hose.id]);
  const next = (name: string): string => address("work", ["bench", name], { hose: hose.id, back });
  const rows: [string, string][] = [
    ["Between", [hose.near_at, hose.far_at].filter((t) => t !== "").join(" and ")],
    ["Hose", [hose.family, hose.size].filter((t) => t !== "").join(" ")],
    ["Overall length", hose.overall],
    ["Tightest bend", `${hose.tightest_radius} to the centreline; at least ${hose.least_radius}`],
    ["Clocking", hose.clocking === "" ? "" : `${hose.clocking}, ${page.clocking_read}`],
    ["What bounds its length", hose.binding],
    ["Working pressure", page.working_pressure],
    ["Proof pressure", page.proof_pressure],
    ["Drawn", dayInWords(hose.drawn)],
    ["Note", page.note],
  ];
  return (
    <div class="sheet">
      <section class="left">
        <p class="trail"><a href={address("work")}>Work</a></p>
        <h1>{hose.title}</h1>
        <p class={`verdict is-${hose.drawn_since ? "not-tested" : hose.verdict}`}>{standing(page)}</p>
        <dl class="answer">
          {rows.filter(([, v]) => v !== "").map(([k, v]) => <div class="row" key={k}><dt>{k}</dt><dd>{unitWords(v)}</dd></div>)}
        </dl>
        <h2>Next</h2>
        <div class="form-acts">
          <a class="button" href={next("hose-cut")}>Cut it</a>
          <a class="button" href={next("hose-order")}>Order it</a>
          <a class="button main" href={next("proof-test")}>Prove it</a>
          <a class="button" href={address("work", ["hose"], { hose: hose.id, back })}>Open the sheet</a>
        </div>
        <h2>As it comes, and later</h2>
        <div class="form-acts">
          <a class="button" href={next("hose-incoming")}>Take it in</a>
          <a class="button" href={next("hose-condition")}>Look at it</a>
          <a class="button" href={next("hose-age")}>Its age</a>
        </div>
        <h2>On paper</h2>
        <div class="form-acts">
          <Paper kind="hose" id={hose.id} words="Sheet" about={hose.title} />
          <Paper kind="tag" id={hose.id} words="Tag" about={hose.title} />
        </div>
      </section>
      <section class="right">
        <h2>Proof tests</h2>
        {page.proofs.length === 0 ? <p class="none">None on record.</p> : <ol class="plain rows">{page.proofs.map((p) => <li key={p.day + p.words}><Proof proof={p} /></li>)}</ol>}
        <h2>What the sheet said</h2>
        <ul class="lines-list">{page.lines.map((l) => <li key={l}>{unitWords(l)}</li>)}</ul>
        <p class="form-acts"><a class="button" href={address("record", ["history"], { about: hose.id, of: hose.title })}>History of this hose</a></p>
      </section>
    </div>
  );
}

function standing(page: HoseAnswer): string {
  if (page.proofs.length === 0) return "Not proved";
  return page.hose.drawn_since ? "Drawn anew since its proof test: not proved" : `Proof test: ${verdictText(page.hose.verdict).toLowerCase()}`;
}

function Proof(props: { proof: ProofLine }): JSX.Element {
  const { proof } = props;
  const words = [proof.pressure, proof.held, proof.medium, proof.by, proof.part, proof.assembled ? `assembled ${dayInWords(proof.assembled)}` : ""].filter((t) => t !== "");
  return (
    <>
      <strong>{dayInWords(proof.day)}: {verdictText(proof.verdict).toLowerCase()}</strong>{proof.of_this_drawing ? "" : " (of an earlier drawing)"}
      <p class="help">{unitWords(words.join(" · "))}</p>
      {proof.criteria.length > 0 ? <details class="more"><summary>What was judged</summary><ul class="lines-list">{proof.criteria.map((c) => <li key={c}>{unitWords(c)}</li>)}</ul></details> : null}
      {proof.note ? <p>{proof.note}</p> : null}
    </>
  );
}

function Paper(props: { kind: "hose" | "tag"; id: string; words: string; about: string }): JSX.Element {
  const aircraft = useStore(chosenAircraft);
  const query = new URLSearchParams({ aircraft, paper: "a4" });
  return <a class="button quiet-button" href={`/api/print/${props.kind}/${encodeURIComponent(props.id)}.pdf?${query}`} target="_blank" rel="noopener" aria-label={`${props.words} as PDF: ${props.about}`}>{props.words}</a>;
}
