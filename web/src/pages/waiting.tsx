/// Entries that are not in the record yet: waiting for a connection, or refused.

import type { JSX } from "preact";
import { empty, strike, waiting, type Waiting } from "../api/outbox";
import { useDescription } from "../api/use";
import { recordFrom } from "../form/draft";
import { labelOf, sentence } from "../form/form";
import { keep } from "../kit/keep";
import { useStore } from "../kit/store";
import { dayInWords } from "../kit/time";
import { go } from "../route/route";

export function WaitingPage(): JSX.Element {
  const list = useStore(waiting);
  return (
    <div class="one-column">
      <h1>Not yet recorded</h1>
      {list.length === 0
        ? <p class="lead">Nothing waits: everything entered here is in the record.</p>
        : <p class="lead">These are kept in this browser only. They go to the record when there is a connection.</p>}
      <ol class="entries">{list.map((w) => <li key={w.id}><One entry={w} /></li>)}</ol>
      {list.some((w) => !w.problems) ? <button type="button" onClick={() => void empty()}>Try to send now</button> : null}
    </div>
  );
}

function One(props: { entry: Waiting }): JSX.Element {
  const { entry } = props;
  const seen = useDescription("act", entry.act);
  const fields = seen.data?.input.fields ?? [];
  const reopen = (): void => {
    // Back into its form, as it was typed.
    keep(entry.draft, recordFrom(fields, entry.input));
    strike(entry.id);
    go(entry.from);
  };
  return (
    <div>
      <h2>{entry.title}</h2>
      <p>{entry.problems ? "Refused" : "Waiting for a connection"}; happened {dayInWords(entry.happened)}.</p>
      {entry.problems ? (
        <ul>{entry.problems.map((p) => <li key={p.path + p.what}>{p.path ? `${labelOf(fields, p.path)}: ` : ""}{sentence(p.what)}</li>)}</ul>
      ) : null}
      <div class="form-acts">
        <button type="button" disabled={fields.length === 0} onClick={reopen}>Open it again</button>
      </div>
    </div>
  );
}
