/// The plan of a change as it was entered last, with the values that no view shows: its masses,
/// its arm.

import { useEffect, useState } from "preact/hooks";
import { refresh } from "./changes";
import { ask } from "./client";
import { useStore } from "../kit/store";
import type { JsonObject, ViewAnswer } from "./types";
import type { HistoryLine } from "./views";

export interface ChangePlan {
  happened: string;
  body: JsonObject;
}
/// A change without a plan here: it was corrected since, and only the record knows the whole.
export type Plans = { [change: string]: ChangePlan | undefined };

const k_most = 200;

/// @return undefined while it is not known; a change whose plan was corrected is left out.
export function usePlans(aircraft: string, changes: string[]): Plans | undefined {
  const key = `${aircraft} ${changes.join(" ")}`;
  const tick = useStore(refresh);
  const [seen, setSeen] = useState<{ key: string; plans: Plans } | undefined>(undefined);
  useEffect(() => {
    const stop = new AbortController();
    void Promise.all(changes.map(async (id) => [id, await planOf(aircraft, id, stop.signal)] as const)).then((found) => {
      if (!stop.signal.aborted) setSeen({ key, plans: Object.fromEntries(found) });
    });
    return () => stop.abort();
  }, [key, tick]);
  return seen?.key === key ? seen.plans : undefined;
}

async function planOf(aircraft: string, change: string, signal: AbortSignal): Promise<ChangePlan | undefined> {
  const history = await ask<ViewAnswer<{ lines: HistoryLine[] }>>("/api/view/history", { body: { aircraft, about: change, most: k_most }, signal });
  if (history.is !== "answer") return undefined;
  const lines = history.data.answer.lines.filter((l) => l.kind === "change-planned").sort((a, b) => b.sequence - a.sequence);
  for (const line of lines) {
    const event = await ask<{ happened: string; body: JsonObject }>(`/api/event/${encodeURIComponent(line.event)}`, { signal });
    if (event.is !== "answer") return undefined;
    // Plans of others are found too: those that come after this one.
    if (event.data.body["id"] !== change) continue;
    return line.corrected ? undefined : { happened: event.data.happened, body: event.data.body };
  }
  return undefined;
}
