/// A hose sheet or a proof test goes into the record.

import { useState } from "preact/hooks";
import type { JSX } from "preact";
import { latest } from "../api/changes";
import { announce, submit } from "../api/outbox";
import type { JsonObject, Problem } from "../api/types";
import { chosenAircraft } from "../aircraft";
import { sentence } from "../form/form";
import { newId } from "../kit/identity";
import { useStore } from "../kit/store";
import { instant } from "../kit/time";
import { address, go } from "../route/route";

export function KeepInRecord(props: { act: string; title: string; words: string; input: JsonObject; draft: string; onward: (id: string) => string; ready: boolean }): JSX.Element {
  const aircraft = useStore(chosenAircraft);
  const [id, setId] = useState(newId);
  const [sending, setSending] = useState(false);
  const [problems, setProblems] = useState<Problem[]>([]);
  const keep = async (): Promise<void> => {
    if (sending) return;
    setSending(true);
    const outcome = await submit({
      id, act: props.act, title: props.title, seen: latest.get(), happened: instant(),
      input: { aircraft, ...props.input }, entered: instant(), from: location.hash, draft: props.draft,
    });
    setSending(false);
    if (outcome.is === "problems") return setProblems(outcome.problems);
    if (outcome.is === "fault") return setProblems([{ path: "", what: outcome.what }]);
    setProblems([]);
    setId(newId());
    if (outcome.is !== "recorded") return;
    announce(String(outcome.data.answer?.["words"] ?? "Kept."));
    go(props.onward(String(outcome.data.answer?.["id"] ?? "")));
  };
  return (
    <div class="keep-with screen-only">
      {problems.length > 0 ? <div class="problem" role="alert">{problems.map((p) => <p key={p.path + p.what}><strong>{sentence(p.what)}</strong>{p.do_next ? ` ${sentence(p.do_next)}` : ""}</p>)}</div> : null}
      <p class="form-acts"><button type="button" class="main" disabled={sending || !props.ready} onClick={() => void keep()}>{sending ? "Keeping" : props.words}</button></p>
    </div>
  );
}

export function keptAddress(id: string): string {
  return id === "" ? address("work") : address("work", ["hoses", id]);
}
