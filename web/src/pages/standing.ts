/// A standing or verdict of the record as the state of a stripe. It draws; it judges nothing.

import type { StripeState } from "../look/stripe_shape";

export function standingState(standing: string, used?: number, uncertainty?: number): StripeState {
  switch (standing) {
    case "past-limit":
    case "does-not-conform":
      return { is: "past", used: Math.max(used ?? 1.05, 1.02) };
    case "undecided":
      return { is: "undecided", used: used ?? 1, spread: uncertainty ?? 0 };
    case "valid":
    case "in-tolerance":
    case "conforms":
      return used === undefined ? { is: "unknown" } : { is: "within", used };
    default:
      return { is: "unknown" };
  }
}

const words: { [standing: string]: string } = {
  "past-limit": "past limit", "does-not-conform": "does not conform", "undecided": "undecided", "unknown": "unknown",
  "not-tested": "not tested", "on-condition": "on condition", "conforms": "conforms", "in-tolerance": "in the tolerance", "valid": "",
};

/// "45 % used"; the standing where there is no share.
export function standingWords(standing: string, used?: number): string {
  if ((standing === "valid" || standing === "conforms") && used !== undefined) {
    return `${Math.min(99, Math.max(0, Math.floor(used * 100 + 1e-9)))} % used`;
  }
  return words[standing] ?? standing;
}
