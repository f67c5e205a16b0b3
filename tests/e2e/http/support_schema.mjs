// As much of JSON Schema 2020-12 as docs/openapi.json uses; a word that is not known here fails.

const known = new Set(["$ref", "type", "properties", "required", "items", "enum", "const", "oneOf", "allOf", "minimum", "maximum",
  "exclusiveMinimum", "minLength", "maxLength", "minItems", "maxItems", "format", "additionalProperties",
  "title", "description", "examples", "x-kind"]);

const types = {
  object: (v) => typeof v === "object" && v !== null && !Array.isArray(v),
  array: Array.isArray,
  string: (v) => typeof v === "string",
  number: (v) => typeof v === "number",
  integer: Number.isInteger,
  boolean: (v) => typeof v === "boolean",
  null: (v) => v === null,
};

/// What does not fit, each with its path; nothing when the value fits.
///
/// A member that no schema names is told too: an answer holds what is described and no more.
export function misfits(document, schema, value) {
  const follow = (ref) => ref.slice(2).split("/").reduce((at, key) => at?.[key], document);

  /// Every schema that says something about this one value.
  const all = (s) => [s, ...(s.$ref ? all(follow(s.$ref) ?? { lost: s.$ref }) : []), ...(s.allOf ?? []).flatMap(all)];

  const one = (s, v, path) => {
    const found = [];
    const say = (what) => found.push(`${path || "."}: ${what}`);
    const parts = all(s);
    for (const p of parts) {
      for (const key of Object.keys(p)) if (!known.has(key)) say(`the schema says ${key}`);
      const wanted = p.type === undefined ? [] : [p.type].flat();
      if (wanted.length > 0 && !wanted.some((t) => types[t](v))) say(`${JSON.stringify(v)?.slice(0, 60)} is no ${wanted}`);
      if (p.enum && !p.enum.includes(v)) say(`${v} is none of ${p.enum}`);
      if (p.const !== undefined && v !== p.const) say(`${v} is not ${p.const}`);
      if (typeof v === "number") {
        if (v < p.minimum || v > p.maximum || v <= p.exclusiveMinimum) say(`${v} is out of bounds`);
      }
      if (typeof v === "string") {
        if (v.length < p.minLength || v.length > p.maxLength) say(`a text of ${v.length}`);
        if (p.format === "date" && !/^\d{4}-\d\d-\d\d$/.test(v)) say(`${v} is no date`);
      }
      if (Array.isArray(v)) {
        if (v.length < p.minItems || v.length > p.maxItems) say(`${v.length} entries`);
        if (p.items) v.forEach((entry, i) => found.push(...one(p.items, entry, `${path}/${i}`)));
      }
      if (p.oneOf) {
        const fits = p.oneOf.filter((alternative) => one(alternative, v, path).length === 0);
        if (fits.length !== 1) say(`fits ${fits.length} of ${p.oneOf.length} alternatives`);
      }
      if (types.object(v)) {
        for (const key of p.required ?? []) if (v[key] === undefined) say(`${key} is missing`);
        for (const [key, inner] of Object.entries(p.properties ?? {})) {
          if (v[key] !== undefined) found.push(...one(inner, v[key], `${path}/${key}`));
        }
      }
    }
    const told = new Set(parts.flatMap((p) => Object.keys(p.properties ?? {})));
    const open = parts.some((p) => p.additionalProperties || p.oneOf) || told.size === 0;
    if (types.object(v) && !open) {
      for (const key of Object.keys(v)) if (!told.has(key)) say(`${key} is not described`);
    }
    return found;
  };
  return one(schema, value, "");
}
