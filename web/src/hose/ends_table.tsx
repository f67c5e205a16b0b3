/// Both ends as figures, for paper and for those who can't see the drawing.

import type { JSX } from "preact";
import type { Field, JsonObject } from "../api/types";
import { Printed } from "../look/figure";
import { fieldAt } from "./arrange";

export function EndsTable(props: { fields: Field[]; input: JsonObject }): JSX.Element | null {
  const { fields, input } = props;
  const ends = (["near_end", "far_end"] as const).filter((key) => typeof input[key] === "object");
  if (ends.length < 2) return null;
  const label = (path: string): string => fieldAt(fields, path)?.label ?? path;
  const of = (key: string, inner: string): JsonObject => ((input[key] as JsonObject)[inner] ?? {}) as JsonObject;
  const way = (key: string): string => ["x", "y", "z"].map((k) => String(of(key, "leaves")[k] ?? 0)).join(", ");
  const form = (key: string): string => {
    const now = (input[key] as JsonObject)["form"] ?? fieldAt(fields, `${key}/form`)?.example;
    return fieldAt(fields, `${key}/form`)?.choices?.find((c) => c.value === now)?.label ?? "";
  };
  const at = (key: string): string => String(input[key === "near_end" ? "near_at" : "far_at"] ?? "");
  return (
    <table class="ends-table">
      <caption class="visually-hidden">Both ends</caption>
      <thead>
        <tr>
          <td />
          {["x", "y", "z"].map((k) => <th key={k} scope="col">{label(`near_end/seat/${k}`)}</th>)}
          <th scope="col">{label("near_end/leaves")}: {["x", "y", "z"].map((k) => label(`near_end/leaves/${k}`).toLowerCase()).join(", ")}</th>
          <th scope="col">{label("near_end/rigid")}</th>
        </tr>
      </thead>
      <tbody>
        {ends.map((key) => (
          <tr key={key}>
            <th scope="row">{label(key)}<span class="stripe-note"> {[form(key), at(key)].filter((t) => t !== "").join(", ")}</span></th>
            {["x", "y", "z"].map((k) => <td key={k}><Printed text={String(of(key, "seat")[k] ?? "")} /></td>)}
            <td class="figure">{way(key)}</td>
            <td><Printed text={String((input[key] as JsonObject)["rigid"] ?? "")} /></td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
