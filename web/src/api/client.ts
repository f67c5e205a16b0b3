/// One way to ask the server, with every outcome named: an answer, problems with what was
/// typed, no connection, or a fault of the machine at the other end.

import type { Problem } from "./types";
import { Store } from "../kit/store";

export type Outcome<T> =
  | { is: "answer"; data: T }
  | { is: "problems"; problems: Problem[]; conflict: boolean }
  | { is: "no-connection" }
  | { is: "stopped" }
  | { is: "fault"; what: string };

/// Whether the last thing that we tried reached the server.
export const reached = new Store<boolean>(true);

const k_patience_ms = 20_000;

export async function ask<T>(
  path: string,
  options: { body?: unknown; raw?: Blob; signal?: AbortSignal } = {},
): Promise<Outcome<T>> {
  const stop = new AbortController();
  const timer = setTimeout(() => stop.abort(), k_patience_ms);
  const outer = options.signal;
  const onOuter = (): void => stop.abort();
  if (outer?.aborted) stop.abort();
  outer?.addEventListener("abort", onOuter);
  try {
    const init: RequestInit = { signal: stop.signal, cache: "no-store" };
    if (options.raw) {
      init.method = "POST";
      init.body = options.raw;
      init.headers = {
        "Content-Type": options.raw.type || "application/octet-stream",
        "X-Witnessmark": "1",
      };
    } else if (options.body !== undefined) {
      init.method = "POST";
      init.body = JSON.stringify(options.body);
      init.headers = { "Content-Type": "application/json", "X-Witnessmark": "1" };
    }
    const response = await fetch(path, init);
    reached.set(true);
    return await readResponse<T>(response);
  } catch {
    if (outer?.aborted) return { is: "stopped" };
    reached.set(false);
    return { is: "no-connection" };
  } finally {
    clearTimeout(timer);
    outer?.removeEventListener("abort", onOuter);
  }
}

async function readResponse<T>(response: Response): Promise<Outcome<T>> {
  let data: unknown;
  try {
    data = await response.json();
  } catch (error) {
    // Cut off in the middle of an answer: as good as no connection.
    if (response.ok && !(error instanceof SyntaxError)) throw error;
    data = undefined;
  }
  if (response.ok && data !== undefined) return { is: "answer", data: data as T };
  const problems = (data as { problems?: Problem[] } | undefined)?.problems;
  if (Array.isArray(problems) && problems.length > 0) {
    return { is: "problems", problems, conflict: response.status === 409 };
  }
  return {
    is: "fault",
    what: `The server answered ${response.status} ${response.statusText || "without a reason"}.`,
  };
}
