/// From measured ends to the hose sheet, with the same change and the same way back.

import type { JSX } from "preact";
import type { CalcAnswer, JsonObject } from "../api/types";
import { useDescription } from "../api/use";
import type { ChangeLine } from "../api/views";
import type { RecordDraft } from "../form/draft";
import { keep, kept } from "../kit/keep";
import { address, go } from "../route/route";
import { endsTaken } from "./ends_taken";

export function EndsToSheet(props: { input: JsonObject; answer: CalcAnswer; change: ChangeLine | undefined; back: string | undefined }): JSX.Element {
  const { input, answer, change, back } = props;
  const sheet = useDescription("calc", "hose-sheet").data;
  const key = `wm.draft.calc.hose-sheet${change ? `.change=${change.id}` : ""}`;
  const begun = kept<RecordDraft>(key);
  const title = typeof begun?.["title"] === "string" ? begun["title"].trim() : "";
  const draw = (): void => {
    if (!sheet) return;
    keep(key, endsTaken(sheet.input.fields, kept<RecordDraft>(key), change ? { title: change.title } : {}, input, answer.answer));
    const here = address("work", ["bench", "hose-ends"]);
    go(address("work", ["hose"], { ...(change ? { change: change.id } : {}), back: back ?? (change ? "#/work" : here) }));
  };
  return (
    <div class="keep-with">
      {begun ? <p class="help">The hose sheet that was begun{title === "" ? "" : ` (${title})`} gets these ends in place of its own; its other figures stay.</p> : null}
      <p class="form-acts"><button type="button" class="main" disabled={!sheet} onClick={draw}>Draw a hose between these ends</button></p>
    </div>
  );
}
