/// Watches what other pages and programs record, so that phone and laptop stay in step.
///
/// Server-sent events first; while they cannot be had (too many streams, no connection) the
/// page asks every few seconds. `latest` is the last sequence number that we heard of: pages
/// ask for their views again when it moves.

import { ask, reached } from "./client";
import { Store } from "../kit/store";
import type { ViewAnswer } from "./types";

export type Link = "joining" | "live" | "asking" | "none";

export const link = new Store<Link>("joining");
export const latest = new Store<number>(0);
/// Grows whenever the views should be asked for again, also after the connection came back.
export const refresh = new Store<number>(0);

const k_ask_every_ms = 4_000;
const k_try_stream_again_ms = 15_000;

let stream: EventSource | undefined;
let asking: ReturnType<typeof setTimeout> | undefined;
let streamLater: ReturnType<typeof setTimeout> | undefined;

export function heard(sequence: number): void {
  if (!(sequence > latest.get())) return;
  latest.set(sequence);
  refresh.set(refresh.get() + 1);
}

function setLink(next: Link): void {
  const before = link.get();
  link.set(next);
  // Something may have been recorded while we were away.
  if (before === "none" && next !== "none") refresh.set(refresh.get() + 1);
}

function openStream(): void {
  stream?.close();
  clearTimeout(streamLater);
  stream = new EventSource(`/api/changes?after=${latest.get()}`);
  stream.onopen = () => {
    stopAsking();
    reached.set(true);
    setLink("live");
  };
  stream.addEventListener("recorded", (event) => {
    heard(Number((event as MessageEvent).lastEventId));
  });
  stream.onerror = () => {
    // CONNECTING: the browser tries again by itself, with Last-Event-ID. CLOSED: it gave up.
    if (stream?.readyState === EventSource.CLOSED) {
      streamLater = setTimeout(openStream, k_try_stream_again_ms);
    }
    startAsking();
  };
}

function startAsking(): void {
  if (asking !== undefined) return;
  const once = async (): Promise<void> => {
    const outcome = await ask<ViewAnswer>("/api/view/header", { body: {} });
    if (asking === undefined) return;
    if (outcome.is === "no-connection") {
      setLink("none");
    } else {
      if (outcome.is === "answer") heard(outcome.data.sequence);
      if (stream?.readyState === EventSource.OPEN) {
        stopAsking();
        setLink("live");
        return;
      }
      setLink("asking");
    }
    asking = setTimeout(() => void once(), k_ask_every_ms);
  };
  asking = setTimeout(() => void once(), 0);
}

function stopAsking(): void {
  clearTimeout(asking);
  asking = undefined;
}

export function startWatching(): void {
  openStream();
  window.addEventListener("online", () => {
    stopAsking();
    openStream();
    startAsking();
  });
  window.addEventListener("offline", () => {
    setLink("none");
    startAsking();
  });
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible" && link.get() !== "live") {
      stopAsking();
      openStream();
      startAsking();
    }
  });
  // A request that found nobody there knows sooner than the stream.
  reached.watch((yes) => {
    if (!yes) {
      setLink("none");
      startAsking();
    }
  });
}
