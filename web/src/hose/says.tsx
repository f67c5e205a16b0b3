/// What the sheet means: its length window, the verdict in words, the sum, files and the block to sign.

import { useState } from "preact/hooks";
import type { JSX } from "preact";
import type { CalcAnswer, Description, JsonObject, Problem } from "../api/types";
import { composeNumber, type NumberDraft, type RecordDraft } from "../form/draft";
import { sentence } from "../form/form";
import { Answer } from "../look/answer";
import { unitWords } from "../look/digits";
import { Printed, Worded } from "../look/figure";
import { fieldAt } from "./arrange";
import { Dial } from "./dial";
import { mmOf } from "./drawn";
import type { Told } from "./engine";
import { readDraft, writeLength } from "./lengths";
import { figureText } from "./model";
import { takeAlong, type FileKind } from "./take_along";
import { WindowStripe } from "./window_stripe";

export function Length(props: { told: Told; description: Description; draft: RecordDraft; newest: () => number | undefined; choose: (mm: number, at: number) => void; rest: () => void }): JSX.Element | null {
  const { told, description, draft } = props;
  const length = told.sheet?.answer["length"] as JsonObject | undefined;
  if (!length) return null;
  const out = description.output?.fields;
  const label = fieldAt(description.input.fields, "overall")?.label ?? fieldAt(out, "shape/overall")?.label ?? "";
  const typed = draft["overall"] as NumberDraft | undefined;
  const open = !typed || typed.n.trim() === "";
  const overall = told.shape?.["overall"];
  const chosen = (open ? undefined : readDraft(typed)) ?? mmOf(overall);
  const shortest = mmOf(length["shortest"]);
  const longest = mmOf(length["longest"]);
  const best = mmOf(length["best"]);
  const binding = String(length["binding"] ?? "");
  const overallText = !open && typed && readDraft(typed) !== undefined ? unitWords(composeNumber(typed) ?? "") : told.settled ? figureText(length["to_order"]) || figureText(overall) : figureText(overall);
  const unit = writeLength(0, String((overall as { unit?: string } | undefined)?.unit ?? "in")).u;
  return (
    <div class="hose-length">
      <h2>{label}</h2>
      {shortest !== undefined && longest !== undefined && best !== undefined && chosen !== undefined ? (
        <WindowStripe
          window={{ shortest, best, longest, chosen }} open={open} unit={unit} working={!told.settled && told.problems.length === 0 && told.trouble === undefined} label={label}
          words={{ shortest: figureText(length["shortest"]), best: figureText(length["best"]), longest: figureText(length["longest"]), chosen: overallText }}
          newest={props.newest} choose={props.choose} rest={props.rest}
        />
      ) : <p class="not-judged"><strong>No length is permitted here.</strong> Widest bend: <Printed text={figureText(length["best_radius"])} /> at <Printed text={figureText(length["best"])} />.</p>}
      {binding === "" ? null : <p class="binding"><Worded text={sentence(binding)} /></p>}
    </div>
  );
}

const k_shown = ["shape/overall", "shape/flexible", "shape/tightest_radius", "shape/tightest_inside", "shape/tightest_at", "shape/least_radius", "shape/in_hand", "length/straight_at_ends", "length/probability"];

export function Says(props: { told: Told; description: Description; empty: boolean }): JSX.Element {
  const { told, description } = props;
  const { sheet } = told;
  if (!sheet) return <p class="not-judged">{props.empty ? "The verdict appears here once both ends are known." : told.problems.length > 0 || told.trouble !== undefined ? "No answer yet." : "Working it out."}</p>;
  const lines = (sheet.answer["lines"] ?? []) as string[];
  const shape = (told.current ? told.shape : undefined) ?? (sheet.answer["shape"] as JsonObject);
  const length = sheet.answer["length"] as JsonObject;
  const fields = k_shown.flatMap((path) => fieldAt(description.output?.fields, path) ?? []);
  const figures: JsonObject = {};
  for (const path of k_shown) {
    const [part, key] = path.split("/") as ["shape" | "length", string];
    const value = (part === "shape" ? shape : length)[key];
    if (value !== undefined && value !== null) figures[key] = value;
  }
  const clocking = shape["clocking"] as { value?: number } | null | undefined;
  const tolerance = shape["clocking_tolerance"] as { value?: number } | null | undefined;
  const others = (shape["other_shapes"] ?? []) as JsonObject[];
  // It stands beside the stripe already.
  const binding = sentence(String(length["binding"] ?? ""));
  const stale = told.problems.length > 0 || told.trouble !== undefined;
  const late = !told.settled && !stale;
  return (
    <div class={`answer-body${late ? " working" : ""}`}>
      <div role="status" class="visually-hidden">{told.settled ? lines[0] ?? "" : ""}</div>
      {late ? <p class="visually-hidden">Working it out.</p> : null}
      {stale ? <p class="not-judged"><strong>Not up to date:</strong> this is about the hose as it was.</p> : null}
      <ul class="plain hose-lines" id="hose-lines">{lines.map((l) => <li key={l} class={l === binding ? "print-only" : undefined}><Worded text={l} /></li>)}</ul>
      {clocking?.value !== undefined ? <Dial degrees={clocking.value} tolerance={tolerance?.value ?? 0} text={`${Math.round(clocking.value)}° ± ${Math.round(tolerance?.value ?? 0)}°`} words={String(shape["clocking_read"] ?? "")} /> : null}
      {others.length > 0 ? (
        <section class="answer-part">
          <h3>{fieldAt(description.output?.fields, "shape/other_shapes")?.label ?? ""}</h3>
          <Answer fields={[fieldAt(description.output?.fields, "shape/other_shapes")!]} answer={{ other_shapes: others }} />
        </section>
      ) : null}
      <Answer fields={fields} answer={figures} />
    </div>
  );
}

export function TakeAlong(props: { input: JsonObject; ready: boolean; printable: boolean }): JSX.Element {
  const [said, setSaid] = useState("");
  const [problems, setProblems] = useState<Problem[]>([]);
  const [busy, setBusy] = useState(false);
  const take = async (kind: FileKind): Promise<void> => {
    if (busy) return;
    setBusy(true);
    setSaid("Making it");
    const taken = await takeAlong(props.input, kind);
    setBusy(false);
    setProblems(taken.is === "problems" ? taken.problems : []);
    setSaid(taken.is === "saved" ? `Saved as ${taken.name}.` : taken.is === "not-made" ? taken.what : "Not made:");
  };
  return (
    <div class="take-along screen-only">
      <h3>The sheet on paper and as a file</h3>
      <div class="form-acts">
        <button type="button" class="main wide-only" disabled={!props.printable} onClick={() => window.print()}>Print</button>
        {(["pdf", "svg", "csv", "dxf"] as const).map((kind) => (
          <button key={kind} type="button" class="quiet-button" disabled={!props.ready || busy} onClick={() => void take(kind)}>{kind.toUpperCase()}</button>
        ))}
      </div>
      <p role="status" class="help">{said}{problems.map((p) => ` ${sentence(p.what)}`).join("")}</p>
    </div>
  );
}

export function Working(props: { sheet: CalcAnswer | undefined }): JSX.Element | null {
  const { sheet } = props;
  if (!sheet) return null;
  const part = (name: string): JsonObject => (sheet.answer[name] ?? {}) as JsonObject;
  const of = (key: string): string[] => [...new Set([...((part("shape")[key] ?? []) as string[]), ...((part("length")[key] ?? []) as string[])])];
  return (
    <>
      <details class="more screen-only">
        <summary>The sum, step by step</summary>
        <ol class="lines">{of("working").map((l) => <li key={l}>{unitWords(l)}</li>)}</ol>
      </details>
      <ul class="plain hose-notes">{of("notes").map((n) => <li key={n}>{sentence(n)}</li>)}</ul>
    </>
  );
}

export function SignBlock(props: { input: JsonObject; description: Description }): JSX.Element {
  const { input, description } = props;
  const row = (key: string): JSX.Element => (
    <div key={key}><span>{fieldAt(description.input.fields, key)?.label ?? key}</span><strong>{unitWords(String(input[key] ?? ""))}</strong></div>
  );
  return (
    <div class="sign-block print-only">
      {["family", "size", "outside_diameter", "least_radius", "radius_source", "working_pressure", "proof_pressure", "proof_source", "drawn_by", "drawn_on"].map(row)}
      <div class="sign-line"><span>Checked by, date</span><strong /></div>
      <div class="sign-line"><span>Signature</span><strong /></div>
    </div>
  );
}
