/// What the record knows of the masses of a stage, change by change. It adds nothing up: the
/// mass-balance calculation does.

import { isFigure, type Json, type JsonObject } from "../api/types";
import type { ChangePlan, Plans } from "../api/plans";
import type { ChangeLine } from "../api/views";

export interface SheetPart { id: string; type: string; description: string; position: string; fitted: string; mass?: Json }
export interface MassItem { what: string; added: boolean; mass: string; arm: string }
export interface ChangeMasses {
  title: string;
  items: MassItem[];
  /// What is known though an item can't be made of it.
  known: string[];
  missing: string[];
}

/// Grades that put another part in, by the words of the description.
const k_renewing = new Set(["renewed", "redesigned"]);

export function typedOf(value: Json | undefined): string {
  if (typeof value === "string") return value;
  if (!isFigure(value)) return "";
  const as = (value as unknown as { as_typed?: string; typed?: string; text?: string });
  return as.as_typed ?? as.typed ?? as.text ?? `${value.value} ${value.unit}`;
}

function text(body: JsonObject, key: string): string {
  return typedOf(body[key]);
}

export function massesOf(change: ChangeLine, plan: ChangePlan | undefined, parts: SheetPart[]): ChangeMasses {
  const out: ChangeMasses = { title: change.title, items: [], known: [], missing: [] };
  if (!plan) {
    out.missing.push("its masses and arm (its plan was corrected or can't be read here)");
    return out;
  }
  const { body } = plan;
  const renews = k_renewing.has(String(body["grade"] ?? ""));
  let massOut = text(body, "mass_out");
  let massIn = text(body, "mass_in");
  const arm = text(body, "arm");
  if (!renews && massOut === "" && massIn === "") return out;
  const part = parts.find((p) => p.position === change.position);
  const weight = part ? typedOf(part.mass) : "";
  let oldName = `${change.position_name}, old`;
  if (part && weight !== "") {
    // Fitted before the change was planned: that is what comes off; after it: what went in.
    const old = part.fitted !== "" && part.fitted.slice(0, 10) < plan.happened.slice(0, 10);
    if (old && massOut === "") {
      massOut = weight;
      oldName = `${part.type || change.position_name} ${part.id}, old`;
    }
    if (!old && massIn === "") massIn = weight;
  }
  const newName = change.new_part !== "" ? change.new_part : `${change.position_name}, new`;
  const put = (what: string, added: boolean, mass: string): void => {
    if (mass === "") return;
    if (arm === "") out.known.push(`${mass} ${added ? "goes in" : "comes out"} (${what})`);
    else out.items.push({ what, added, mass, arm });
  };
  put(oldName, false, massOut);
  put(newName, true, massIn);
  if (renews && massOut === "") out.missing.push("mass taken out");
  if (renews && massIn === "") out.missing.push("mass put in");
  if (arm === "") out.missing.push("arm from the datum");
  return out;
}

export function stageMasses(changes: ChangeLine[], plans: Plans, parts: SheetPart[]): ChangeMasses[] {
  return changes.filter((c) => c.state !== "withdrawn").map((c) => massesOf(c, plans[c.id], parts));
}

/// The input of the mass-balance calculation; items that lack something are left out.
export function balanceInput(last: { mass: string; arm: string }, items: Json | undefined): JsonObject {
  const list = Array.isArray(items) ? (items as JsonObject[]) : [];
  const whole = list.filter((i) => typedOf(i["mass"]) !== "" && typedOf(i["arm"]) !== "");
  return {
    empty_mass: last.mass,
    empty_arm: last.arm,
    changes: whole.map((i) => ({ what: String(i["what"] ?? "") || "item", kind: i["added"] === false ? "removed" : "added", mass: typedOf(i["mass"]), arm: typedOf(i["arm"]) })),
  };
}
