/// An answer of any calculation, act or view, from its description alone.

import type { JSX } from "preact";
import { isFigure, type Caution, type Field, type Json, type JsonObject, type Source } from "../api/types";
import { dayInWords } from "../kit/time";
import { plainNumber, unitWords } from "./digits";
import { FigureText } from "./figure";

const verdictWords: { [word: string]: string } = {
  "conforms": "Conforms",
  "does-not-conform": "Does not conform",
  "undecided": "Undecided: too close to tell",
  "not-tested": "Not tested",
};

export function isVerdict(value: unknown): value is string {
  return typeof value === "string" && value in verdictWords;
}

export function verdictText(value: string): string {
  return verdictWords[value] ?? value;
}

export function Answer(props: { fields: Field[] | undefined; answer: JsonObject }): JSX.Element {
  const { answer } = props;
  const known = props.fields ?? [];
  const fields = known.length > 0 ? known : Object.keys(answer).map((k) => guessed(k, answer[k]));
  const extra = known.length > 0 ? Object.keys(answer).filter((k) => !known.some((f) => f.key === k)) : [];
  const rows = [...fields, ...extra.map((k) => guessed(k, answer[k]))].filter((f) => answer[f.key] !== undefined && answer[f.key] !== null);
  const simple = rows.filter((f) => !isWide(answer[f.key]));
  const wide = rows.filter((f) => isWide(answer[f.key]));
  return (
    <>
      {simple.length > 0 ? (
        <dl class="answer">
          {simple.map((f) => (
            <div key={f.key} class={isVerdict(answer[f.key]) ? "row verdict-row" : "row"}>
              <dt>{f.label}</dt>
              <dd><Value field={f} value={answer[f.key] as Json} /></dd>
            </div>
          ))}
        </dl>
      ) : null}
      {wide.map((f) => (
        <section key={f.key} class="answer-part">
          <h3>{f.label}</h3>
          <Wide field={f} value={answer[f.key] as Json} />
        </section>
      ))}
    </>
  );
}

function guessed(key: string, value: Json | undefined): Field {
  const label = key.replaceAll("_", " ");
  return { key, label: label.charAt(0).toUpperCase() + label.slice(1), shape: Array.isArray(value) ? "list" : "text" };
}

function isWide(value: Json | undefined): boolean {
  return typeof value === "object" && value !== null && !isFigure(value);
}

function Value(props: { field: Field; value: Json }): JSX.Element {
  const { field, value } = props;
  if (isFigure(value)) return <FigureText figure={value} />;
  if (typeof value === "boolean") return <>{value ? "Yes" : "No"}</>;
  if (typeof value === "number") return <span class="figure">{plainNumber(value)}</span>;
  if (isVerdict(value)) return <span class={`verdict is-${value}`}>{verdictText(value)}</span>;
  const text = String(value);
  const choice = field.choices?.find((c) => c.value === text);
  if (choice) return <>{choice.label}</>;
  if (field.shape === "date" || field.shape === "instant") return <span class="figure">{dayInWords(text)}</span>;
  return <>{unitWords(text)}</>;
}

function Wide(props: { field: Field; value: Json }): JSX.Element | null {
  const { field, value } = props;
  const of = field.shape === "optional" ? field.of : field;
  if (Array.isArray(value)) {
    if (value.length === 0) return <p class="none">None.</p>;
    if (value.every((v) => !isWide(v))) {
      return <ol class="lines">{value.map((v, i) => <li key={i}><Value field={of?.of ?? field} value={v} /></li>)}</ol>;
    }
    return <Table fields={of?.of?.fields} rows={value as JsonObject[]} />;
  }
  return <Answer fields={of?.fields ?? of?.alternatives?.flatMap((a) => a.fields)} answer={value as JsonObject} />;
}

/// Records as a table on the laptop and as a stack of entries on the phone (by the style sheet).
function Table(props: { fields: Field[] | undefined; rows: JsonObject[] }): JSX.Element {
  const keys = props.fields ?? [...new Set(props.rows.flatMap((r) => Object.keys(r)))].map((k) => guessed(k, props.rows[0]?.[k]));
  const used = keys.filter((f) => props.rows.some((r) => r[f.key] !== undefined && r[f.key] !== null));
  // More columns than a screen holds are told one record after the other.
  if (used.length > 7 || used.some((f) => props.rows.some((r) => isWide(r[f.key])))) {
    return <ol class="entries">{props.rows.map((r, i) => <li key={i}><Answer fields={keys} answer={r} /></li>)}</ol>;
  }
  return (
    <table class="stacking">
      <thead><tr>{used.map((f) => <th key={f.key} scope="col">{f.label}</th>)}</tr></thead>
      <tbody>
        {props.rows.map((r, i) => (
          <tr key={i}>
            {used.map((f) => (
              <td key={f.key} data-label={f.label}>
                {r[f.key] === undefined || r[f.key] === null ? <span class="none">not given</span> : <Value field={f} value={r[f.key] as Json} />}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const provenanceWords: { [word: string]: string } = {
  "read": "",
  "secondary": "quoted elsewhere",
  "derived": "derived",
  "computed": "computed",
  "memory": "from memory, unconfirmed",
  "common-practice": "common practice, no source",
  "common_practice": "common practice, no source",
};

export function Sources(props: { sources: Source[] | undefined }): JSX.Element | null {
  const sources = props.sources ?? [];
  if (sources.length === 0) return null;
  return (
    <section class="sources">
      <h2>Sources</h2>
      <ul class="plain">
        {sources.map((s) => {
          const how = provenanceWords[s.provenance ?? "read"] ?? s.provenance;
          return (
            <li key={`${s.document} ${s.place ?? ""}`}>
              {s.document}{s.place ? `, ${s.place}` : ""}{how ? <span class="source-note"> ({how})</span> : null}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

export function Cautions(props: { cautions: Caution[] | undefined; named?: string }): JSX.Element | null {
  const cautions = props.cautions ?? [];
  if (cautions.length === 0) return null;
  return (
    <section class="cautions" aria-label={props.named ?? "Cautions"}>
      <h2>{props.named ?? (cautions.length === 1 ? "Caution" : "Cautions")}</h2>
      <ul class="plain">{cautions.map((c) => <li key={c.id}>{c.text}</li>)}</ul>
    </section>
  );
}
