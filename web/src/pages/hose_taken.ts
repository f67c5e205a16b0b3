/// What a kept hose sheet says for the next step: cutting, ordering, taking in, proving, and later its
/// age and the look on condition.

import type { JsonObject } from "../api/types";
import type { HoseAnswer } from "../api/views";

/// The calculations that begin with a kept hose.
export const takesHose = new Set(["hose-cut", "hose-order", "hose-incoming", "proof-test", "hose-age", "hose-condition"]);

/// The standards name the families; anything else is for the owner to choose.
function proofFamily(family: string): string | undefined {
  if (/\b8794\b/.test(family)) return "medium-elastomer";
  if (/\b8788\b/.test(family)) return "high-elastomer";
  return /\b25579\b/.test(family) ? "ptfe-swivel" : undefined;
}

/// Where the family says so itself; anything else is for the owner to choose.
function kindOf(family: string): string | undefined {
  if (/\bPTFE\b|\b25579\b/i.test(family)) return "ptfe";
  return /\b87(94|88)\b/.test(family) ? "elastomer" : undefined;
}

function some(input: { [key: string]: string | undefined }): JsonObject {
  const out: JsonObject = {};
  for (const [key, value] of Object.entries(input)) if (value !== undefined && value.trim() !== "") out[key] = value;
  return out;
}

const text = (value: unknown): string | undefined => (typeof value === "string" ? value : undefined);
const record = (value: unknown): JsonObject => (value && typeof value === "object" && !Array.isArray(value) ? (value as JsonObject) : {});

export function sheetOf(kept: HoseAnswer): JsonObject {
  try {
    return record(JSON.parse(kept.sheet));
  } catch {
    return {};
  }
}

export function startWith(calculation: string, kept: HoseAnswer): JsonObject {
  const sheet = sheetOf(kept);
  const { hose } = kept;
  const end = (key: string): JsonObject => some({ form: text(record(sheet[key])["form"]), rigid: text(record(sheet[key])["rigid"]) });
  const form = (key: string): JsonObject => some({ form: text(record(sheet[key])["form"]) });
  const proof = proofFamily(hose.family);
  const both = { size: hose.size, clocking: hose.clocking };
  const last = kept.proofs[0];
  const order = (): JsonObject => ({
    ...some({ ...both, specification: hose.family, position: hose.title, overall: hose.overall, working_pressure: kept.working_pressure, proof_pressure: kept.proof_pressure, proof_source: text(sheet["proof_source"]), family: proof }),
    near_end: form("near_end"), far_end: form("far_end"),
  });
  switch (calculation) {
    case "hose-cut":
      return {
        assemblies: [{
          ...some({ ...both, name: hose.title, family: hose.family, overall: hose.overall, proof_family: proof }),
          near_end: end("near_end"), far_end: end("far_end"),
        }],
      };
    case "hose-order":
      return order();
    case "hose-incoming":
      return { ordered: order() };
    case "hose-age":
      return some({ family: hose.family, assembly: last?.assembled, proof: last?.day });
    case "hose-condition":
      return some({ kind: kindOf(hose.family), operating: kept.working_pressure });
    case "proof-test":
      return some({ size: hose.size, length: hose.overall, family: proof, system_pressure: kept.working_pressure });
    default:
      return {};
  }
}
