/// The sheet as a file, made by the server from the same input.

import { reached } from "../api/client";
import type { JsonObject, Problem } from "../api/types";

export type FileKind = "pdf" | "svg" | "csv" | "dxf";

export type Taken = { is: "saved"; name: string } | { is: "problems"; problems: Problem[] } | { is: "not-made"; what: string };

const k_words: Record<FileKind, string> = { pdf: "a PDF", svg: "an SVG drawing", csv: "a table of the centreline", dxf: "a DXF drawing" };

export function fileName(title: string, kind: FileKind): string {
  const plain = title.normalize("NFKD").replace(/[^A-Za-z0-9]+/g, "-").replace(/^-+|-+$/g, "").toLowerCase();
  return `${plain === "" ? "hose" : plain.slice(0, 60)}.${kind}`;
}

export async function takeAlong(input: JsonObject, kind: FileKind): Promise<Taken> {
  let response: Response;
  try {
    response = await fetch(`/api/sheet/hose-sheet?as=${kind}`, {
      method: "POST", cache: "no-store", body: JSON.stringify(input),
      headers: { "Content-Type": "application/json", "X-Witnessmark": "1" },
    });
    reached.set(true);
  } catch {
    reached.set(false);
    return { is: "not-made", what: "No connection: nothing was made." };
  }
  if (response.status === 404 || response.status === 405) return { is: "not-made", what: `This server does not make ${k_words[kind]} of the sheet. "Print" works without it.` };
  if (!response.ok) {
    const data = (await response.json().catch(() => undefined)) as { problems?: Problem[] } | undefined;
    if (data?.problems && data.problems.length > 0) return { is: "problems", problems: data.problems };
    return { is: "not-made", what: `The server answered ${response.status} ${response.statusText}. Nothing was made.` };
  }
  const name = fileName(String(input["title"] ?? ""), kind);
  const url = URL.createObjectURL(await response.blob());
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
  return { is: "saved", name };
}
