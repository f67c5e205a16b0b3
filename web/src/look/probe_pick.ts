/// Which drawing shows where the probes go. Most kinds of check say it; within a general kind it
/// is told from the words of its title and probes. Words that fit none get the
/// drawing of a part between two probes, or none: a wrong picture is worse than no picture.

export type Picture =
  | "lead" | "insulation" | "coil-primary" | "coil-secondary" | "coil-double-ended" | "plug-gap" | "plug-resistor" | "condenser"
  | "point-gap" | "timing" | "cable-drop" | "contactor-contacts" | "contactor-coil" | "bond" | "battery" | "speed-drop" | "two-ends";

type Rule = [RegExp, Picture];

const resistance: Rule[] = [
  [/contactor.*(?:coil|winding)|(?:coil|winding) of the .*contactor/, "contactor-coil"],
  [/contactor|relay/, "contactor-contacts"],
  [/double.ended|both (?:plug )?towers|tower to tower/, "coil-double-ended"],
  [/\bprimary\b/, "coil-primary"],
  [/\bsecondary\b/, "coil-secondary"],
  [/condenser|capacitor/, "condenser"],
  [/\bbond|ground strap|\bground(?:ing)?\b|airframe/, "bond"],
  [/\bplug\b(?!.*\b(?:end|hole)\b)/, "plug-resistor"],
];
const byKind: { [kind: string]: { rules: Rule[]; otherwise?: Picture } } = {
  "lead-resistance": { rules: [], otherwise: "lead" },
  "insulation": { rules: [[/condenser|capacitor/, "condenser"], [/\bleads?\b|harness|screen/, "insulation"]], otherwise: "two-ends" },
  "resistance": { rules: resistance, otherwise: "two-ends" },
  "voltage-drop": { rules: [[/contactor|relay/, "contactor-contacts"], [/strap|\bground|bond/, "bond"]], otherwise: "cable-drop" },
  "voltage": { rules: [[/battery|charging|\bbus\b/, "battery"]], otherwise: "two-ends" },
  "gap": { rules: [[/\bpoints?\b|breaker/, "point-gap"], [/plug/, "plug-gap"]] },
  "speed": { rules: [[/drop/, "speed-drop"]] },
  "coil-primary": { rules: [], otherwise: "coil-primary" },
  "coil-secondary": { rules: [], otherwise: "coil-secondary" },
  "coil-double-ended": { rules: [], otherwise: "coil-double-ended" },
  "condenser": { rules: [], otherwise: "condenser" },
  "point-gap": { rules: [], otherwise: "point-gap" },
  "magneto-timing": { rules: [], otherwise: "timing" },
  "speed-drop": { rules: [], otherwise: "speed-drop" },
  "plug-gap": { rules: [], otherwise: "plug-gap" },
  "plug-resistor": { rules: [], otherwise: "plug-resistor" },
  "contactor-coil": { rules: [], otherwise: "contactor-coil" },
  "contactor-contacts": { rules: [], otherwise: "contactor-contacts" },
  "bond": { rules: [], otherwise: "bond" },
  "other": { rules: [[/timing/, "timing"], [/condenser|capacitor|capacitance/, "condenser"]] },
};

export function pictureOf(kind: string, title: string, probes: string): Picture | undefined {
  const known = byKind[kind];
  if (!known) return undefined;
  const words = `${title} ${probes}`.toLowerCase();
  return known.rules.find(([pattern]) => pattern.test(words))?.[1] ?? known.otherwise;
}
