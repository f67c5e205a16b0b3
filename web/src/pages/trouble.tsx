/// What a page shows when it has no data to show: the reason, and what happens next.

import type { JSX } from "preact";
import type { Outcome } from "../api/client";

export function Trouble(props: { failed: Exclude<Outcome<unknown>, { is: "answer" }> | undefined }): JSX.Element | null {
  const { failed } = props;
  if (!failed || failed.is === "stopped") return <p class="help">Fetching.</p>;
  if (failed.is === "no-connection") {
    return <p class="trouble">No connection. The page fills in by itself when the server answers again.</p>;
  }
  if (failed.is === "fault") {
    return <p class="trouble">{failed.what} Nothing was written. If it stays so, look at the window in which the server runs.</p>;
  }
  return (
    <div class="trouble">
      {failed.problems.map((p) => <p key={p.what}>{p.what}{p.do_next ? ` ${p.do_next}` : ""}</p>)}
    </div>
  );
}
