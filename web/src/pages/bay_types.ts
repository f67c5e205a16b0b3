/// What the Bay page needs from its view.

import type { StripeState } from "../look/stripe_shape";

export interface Mark {
  id: string;
  /// Item number on the plan.
  number?: number;
  name: string;
  state: "within" | "past" | "undecided" | "unknown";
  used?: number;
  spread?: number;
  words?: string;
  figure?: string;
  note?: string;
  /// Where on the plan, in shares of its width and height.
  at?: { x: number; y: number };
}

export interface BayAnswer {
  plan: { cylinders: number };
  marks: Mark[];
  open_joints: number;
  defects: string;
  title_block: string[];
  today: string;
  ahead: AheadItem[];
}

export interface AheadItem {
  name: string;
  /// The day, or the most probable one.
  on: string;
  earliest?: string;
  latest?: string;
  note?: string;
}

export function stateOf(mark: Mark): StripeState {
  switch (mark.state) {
    case "past":
      return { is: "past", used: mark.used ?? 1 };
    case "undecided":
      return { is: "undecided", used: mark.used ?? 1, spread: mark.spread ?? 0 };
    case "within":
      return { is: "within", used: mark.used ?? 0 };
    case "unknown":
      return { is: "unknown" };
  }
}
