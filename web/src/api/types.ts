/// The shapes of the JSON API, as the page needs them.

export type Shape =
  | "text" | "yes_no" | "count" | "number" | "quantity" | "measured" | "any_quantity" | "choice"
  | "date" | "instant" | "record" | "list" | "optional" | "one_of" | "reference" | "attachment";

export interface Choice {
  value: string;
  label: string;
}

export interface Field {
  key: string;
  label: string;
  help?: string;
  shape: Shape;
  kind?: string;
  units?: string[];
  unit?: string;
  example?: string;
  needed?: boolean;
  /// May be left out as a whole, also where its own fields are needed.
  optional?: boolean;
  min?: string;
  max?: string;
  choices?: Choice[];
  fields?: Field[];
  of?: Field;
  alternatives?: Alternative[];
  refers_to?: string;
  /// "key=value": the field is asked only while its neighbour has this value.
  shown_when?: string;
}

export interface Alternative {
  word: string;
  label?: string;
  fields: Field[];
}

export interface Source {
  document: string;
  place?: string;
  provenance?: string;
}

export interface Caution {
  id: string;
  text: string;
  /// Must be so before anybody begins.
  first?: boolean;
}

export interface Shaped {
  title?: string;
  fields: Field[];
}

export type Face = "calc" | "act" | "view";

export interface Description {
  name: string;
  purpose: string;
  version?: number;
  kind?: string;
  input: Shaped;
  output?: Shaped;
  sources?: Source[];
  cautions?: Caution[];
  example?: Json;
}

export interface Entry {
  name: string;
  purpose: string;
  version?: number;
}

export interface Catalogue {
  calculations: Entry[];
  acts: Entry[];
  views: Entry[];
}

export interface Problem {
  path: string;
  kind?: string;
  what: string;
  expected?: string;
  example?: string;
  do_next?: string;
  source?: string;
}

export type Json = string | number | boolean | null | Json[] | { [key: string]: Json | undefined };
export type JsonObject = { [key: string]: Json | undefined };

/// A number as the server gives it: with its unit, and its uncertainty where there is one.
export interface Figure {
  value: number;
  unit: string;
  u?: number;
  U?: number;
  k?: number;
  /// Already rounded to what the inputs earn: "85.20 ohm +- 0.70 ohm".
  text?: string;
  /// As it was typed: "3 ft 4 1/2 in".
  typed?: string;
}

export interface CalcAnswer {
  answer: JsonObject;
  sources?: Source[];
  cautions?: Caution[];
  version?: number;
}

export interface ViewAnswer<T = JsonObject> {
  answer: T;
  sequence: number;
}

export interface Recorded {
  sequence: number;
  id: string;
  kind: string;
}

export interface ActAnswer {
  sequence: number;
  head: string;
  answer?: JsonObject;
  recorded?: Recorded[];
  cautions?: Caution[];
}

export function isFigure(value: unknown): value is Figure {
  return (
    typeof value === "object" && value !== null && !Array.isArray(value) &&
    typeof (value as Figure).value === "number" && typeof (value as Figure).unit === "string"
  );
}
