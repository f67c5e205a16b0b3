/// Hooks: a view that follows the record, a description, a live answer.

import { useEffect, useRef, useState } from "preact/hooks";
import { ask, type Outcome } from "./client";
import { heard, refresh } from "./changes";
import { useStore } from "../kit/store";
import type { CalcAnswer, Catalogue, Description, Face, JsonObject, ViewAnswer } from "./types";

export type Seen<T> = {
  data?: T;
  /// Shown data may be old: the last try found no connection.
  stale: boolean;
  failed?: Exclude<Outcome<unknown>, { is: "answer" }>;
};

const lastGood = new Map<string, unknown>();

function useAsked<T>(path: string, body: JsonObject | undefined, follow: boolean, wanted = true): Seen<T> {
  const key = `${path} ${body ? JSON.stringify(body) : ""}`;
  const tick = useStore(refresh);
  const [seen, setSeen] = useState<Seen<T> & { key: string }>(() => fromKept<T>(key));
  useEffect(() => {
    const stop = new AbortController();
    if (seen.key !== key) setSeen(fromKept<T>(key));
    if (!wanted) return () => stop.abort();
    void (async () => {
      const outcome = await ask<T>(path, body ? { body, signal: stop.signal } : { signal: stop.signal });
      if (stop.signal.aborted || outcome.is === "stopped") return;
      if (outcome.is === "answer") {
        lastGood.set(key, outcome.data);
        setSeen({ key, data: outcome.data, stale: false });
      } else {
        const kept = lastGood.get(key) as T | undefined;
        setSeen({ key, stale: kept !== undefined, failed: outcome, ...(kept === undefined ? {} : { data: kept }) });
      }
    })();
    return () => stop.abort();
  }, [key, follow ? tick : 0, wanted]);
  return seen.key === key ? seen : fromKept<T>(key);
}

function fromKept<T>(key: string): Seen<T> & { key: string } {
  const kept = lastGood.get(key) as T | undefined;
  return kept === undefined ? { key, stale: false } : { key, data: kept, stale: false };
}

/// A view of the record, asked for again whenever something is recorded anywhere; not at all
/// while it is not `wanted` (its input is not known yet).
export function useView<T = JsonObject>(name: string, input: JsonObject = {}, wanted = true): Seen<ViewAnswer<T>> {
  const seen = useAsked<ViewAnswer<T>>(`/api/view/${name}`, input, true, wanted);
  const sequence = seen.data?.sequence;
  useEffect(() => {
    if (sequence !== undefined) heard(sequence);
  }, [sequence]);
  return seen;
}

export function useCatalogue(): Seen<Catalogue> {
  return useAsked<Catalogue>("/api/catalogue", undefined, true);
}

export function useDescription(face: Face, name: string): Seen<Description> {
  return useAsked<Description>(`/api/${face}/${encodeURIComponent(name)}`, undefined, true);
}

export type Live =
  | { is: "nothing" }
  | { is: "working"; before?: CalcAnswer }
  /// `of`: the input that it answers, as JSON.
  | { is: "answer"; data: CalcAnswer; of: string }
  | Exclude<Outcome<CalcAnswer>, { is: "answer" }>;

const k_pause_ms = 120;

/// The answer to what is typed right now: asked a moment after the last key, latest wins.
export function useLive(face: "calc" | "view", name: string, input: JsonObject | undefined): Live {
  const [live, setLive] = useState<Live>({ is: "nothing" });
  const last = useRef<CalcAnswer | undefined>(undefined);
  const key = input === undefined ? "" : JSON.stringify(input);
  const tick = useStore(refresh);
  useEffect(() => {
    if (input === undefined) {
      last.current = undefined;
      setLive({ is: "nothing" });
      return;
    }
    const stop = new AbortController();
    const timer = setTimeout(() => {
      setLive((now) => (now.is === "answer" ? { is: "working", before: now.data } : now));
      void ask<CalcAnswer>(`/api/${face}/${encodeURIComponent(name)}`, { body: input, signal: stop.signal }).then((o) => {
        if (stop.signal.aborted || o.is === "stopped") return;
        if (o.is === "answer") last.current = o.data;
        setLive(o.is === "answer" ? { is: "answer", data: o.data, of: key } : o);
      });
    }, k_pause_ms);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [face, name, key, tick]);
  return live;
}

/// Any other JSON of the API: an event, the result of verifying.
export function useAnswer<T>(path: string, wanted = true): Seen<T> {
  return useAsked<T>(path, undefined, true, wanted);
}
