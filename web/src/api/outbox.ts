/// Acts on their way to the record. Each is written down in this browser before it is sent and
/// struck off only when the server says that it is recorded; a second sending carries the same
/// id and is harmless.

import { ask } from "./client";
import { heard, link } from "./changes";
import { newId } from "../kit/identity";
import { forget, keep, kept, keptKeys } from "../kit/keep";
import { Store } from "../kit/store";
import { blobOf, forgetBlob } from "./blobs";
import type { ActAnswer, Json, JsonObject, Problem } from "./types";

export interface Waiting {
  id: string;
  act: string;
  /// What a person reads in the list: the act's purpose or title.
  title: string;
  /// The last sequence number that the page had seen.
  seen: number;
  happened: string;
  input: JsonObject;
  entered: string;
  /// Where its form is, and under which key that form keeps its draft: to open it again.
  from: string;
  draft: string;
  /// The server refused it: with its reasons, until a person decides.
  problems?: Problem[];
  conflict?: boolean;
}

const k_prefix = "wm.outbox.";

export const waiting = new Store<Waiting[]>(read());
/// What was recorded last, for the live region: text and a number that grows.
export const announced = new Store<{ text: string; count: number }>({ text: "", count: 0 });
/// False when the browser refused to store: what is typed lives as long as this page.
export const storageWorks = new Store<boolean>(true);

function read(): Waiting[] {
  return keptKeys(k_prefix)
    .map((key) => kept<Waiting>(key))
    .filter((w): w is Waiting => w !== undefined && typeof w.id === "string");
}

function write(entry: Waiting): void {
  storageWorks.set(keep(k_prefix + entry.id, entry));
  waiting.set(read());
}

export function strike(id: string): void {
  forget(k_prefix + id);
  waiting.set(read());
}

export function announce(text: string): void {
  announced.set({ text, count: announced.get().count + 1 });
}

export type Sent =
  | { is: "recorded"; data: ActAnswer }
  | { is: "waiting" }
  | { is: "problems"; problems: Problem[]; conflict: boolean }
  | { is: "fault"; what: string };

/// Enter an act. Given an `id` again (a retry by hand) the same entry is meant.
export async function submit(entry: Omit<Waiting, "id" | "entered"> & { id?: string; entered: string }): Promise<Sent> {
  const whole: Waiting = { ...entry, id: entry.id ?? newId() };
  write(whole);
  const sent = await send(whole);
  // The form is in front of the person: problems go there, not into the list.
  if (sent.is === "problems") strike(whole.id);
  return sent;
}

const underWay = new Set<string>();

async function send(entry: Waiting): Promise<Sent> {
  if (underWay.has(entry.id)) return { is: "waiting" };
  underWay.add(entry.id);
  try {
    const input = await withAttachments(entry.input);
    if (input === undefined) return { is: "waiting" };
    const { id, seen, happened } = entry;
    const outcome = await ask<ActAnswer>(`/api/act/${entry.act}`, { body: { id, seen, happened, input } });
    switch (outcome.is) {
      case "answer":
        strike(id);
        announce(`Recorded: ${entry.title}`);
        heard(outcome.data.sequence);
        return { is: "recorded", data: outcome.data };
      case "problems":
        return { is: "problems", problems: outcome.problems, conflict: outcome.conflict };
      case "fault":
        return { is: "fault", what: outcome.what };
      default:
        return { is: "waiting" };
    }
  } finally {
    underWay.delete(entry.id);
  }
}

/// Photos chosen without a connection stand as {"pending": key}; they go first.
/// @return undefined when one could not be sent yet.
async function withAttachments(input: JsonObject): Promise<JsonObject | undefined> {
  let missing = false;
  const done: string[] = [];
  const walk = async (value: Json | undefined): Promise<Json | undefined> => {
    if (Array.isArray(value)) {
      const all: Json[] = [];
      for (const one of value) all.push((await walk(one)) ?? null);
      return all;
    }
    if (typeof value !== "object" || value === null) return value;
    const pending = value["pending"];
    if (typeof pending === "string") {
      const blob = await blobOf(pending);
      if (!blob) return undefined;
      const outcome = await ask<{ hash: string }>("/api/attachment", { raw: blob });
      if (outcome.is === "answer") {
        done.push(pending);
        return outcome.data.hash;
      }
      missing = true;
      return undefined;
    }
    const out: JsonObject = {};
    for (const [key, one] of Object.entries(value)) {
      const next = await walk(one);
      if (next !== undefined) out[key] = next;
    }
    return out;
  };
  const whole = (await walk(input)) as JsonObject;
  if (missing) return undefined;
  for (const key of done) await forgetBlob(key);
  return whole;
}

let emptying = false;

/// Send what waits, oldest first. A refused one stays, with its reasons, and does not hold up
/// the others.
export async function empty(): Promise<void> {
  if (emptying) return;
  emptying = true;
  try {
    for (const entry of read()) {
      if (entry.problems) continue;
      const sent = await send(entry);
      if (sent.is === "problems") {
        write({ ...entry, problems: sent.problems, conflict: sent.conflict });
        announce(`Not recorded: ${entry.title}. See what is wrong with it.`);
      }
      if (sent.is === "waiting") break;
    }
  } finally {
    emptying = false;
  }
}

export function startOutbox(): void {
  link.watch((now) => {
    if (now === "live" || now === "asking") void empty();
  });
  // Another tab of this browser may have written or sent something.
  window.addEventListener("storage", (event) => {
    if (event.key?.startsWith(k_prefix)) waiting.set(read());
  });
  void empty();
}
