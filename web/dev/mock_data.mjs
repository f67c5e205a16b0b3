// Canned descriptions and answers. All invented; the aircraft are those of the demo.

const ohm = ["ohm", "kohm", "Mohm", "mohm"];
const length = ["in", "ft", "mm", "cm", "m"];
const mass = ["lb", "kg", "g"];
const defer = { id: "defer", text: "The maker's manual, the local authority and licensed practice decide." };

const calc = {
  "conformity": {
    description: {
      name: "conformity", version: 1, kind: "calculation",
      purpose: "Judge one reading against its limits, with its uncertainty",
      input: {
        title: "Reading and limits",
        fields: [
          { key: "reading", label: "Reading", help: "As the instrument shows it.", shape: "measured", kind: "resistance", units: ohm, unit: "kohm", example: "7.9 kohm +- 0.2 kohm", needed: true },
          { key: "lowest", label: "Lowest allowed", shape: "quantity", kind: "resistance", units: ohm, unit: "kohm", example: "3.0 kohm" },
          { key: "highest", label: "Highest allowed", shape: "quantity", kind: "resistance", units: ohm, unit: "kohm", example: "8.0 kohm" },
          { key: "rule", label: "Decision rule", shape: "choice", needed: true, example: "guarded", choices: [{ value: "simple", label: "simple acceptance" }, { value: "guarded", label: "guarded acceptance" }, { value: "probability", label: "probability of conformity" }] },
          { key: "limit_source", label: "Where the limit comes from", help: "Document and its revision.", shape: "text", example: "harness maker's sheet, rev. C" },
        ],
      },
      output: {
        title: "Verdict",
        fields: [
          { key: "verdict", label: "Verdict", shape: "choice", choices: [{ value: "conforms", label: "conforms" }, { value: "undecided", label: "undecided" }] },
          { key: "reading", label: "Reading", shape: "measured" },
          { key: "margin", label: "Distance to the nearest limit", shape: "quantity" },
          { key: "probability", label: "Probability that it is within", shape: "quantity" },
          { key: "do_next", label: "What to do next", shape: "list", of: { key: "", label: "", shape: "text" } },
          { key: "working", label: "Working", shape: "list", of: { key: "", label: "", shape: "text" } },
        ],
      },
      sources: [{ document: "JCGM 106:2012", place: "8.3", provenance: "memory" }],
      cautions: [{ id: "insulation", text: "A harness whose conductor conforms is not thereby insulated, and its leads can be crossed." }, defer],
      example: { reading: "7.9 kohm +- 0.2 kohm", lowest: "3.0 kohm", highest: "8.0 kohm", rule: "guarded", limit_source: "harness maker's sheet, rev. C" },
    },
    run: (input) => {
      const reading = parseFloat(input.reading);
      const U = parseFloat((/\+-\s*([\d.]+)/.exec(input.reading) ?? [])[1] ?? "0");
      const highest = parseFloat(input.highest ?? "1e9");
      return {
        verdict: reading + U <= highest ? "conforms" : reading - U > highest ? "does-not-conform" : "undecided",
        reading: { value: reading, unit: "kohm", ...(U ? { U, k: 2 } : {}) },
        band: { lower: 3, upper: highest, value: reading, ...(U ? { U } : {}), others: [5.2, 5.6, 5.9], lower_text: "lowest 3.0", upper_text: `highest ${highest} kohm`, value_text: `${reading}${U ? ` +- ${U}` : ""} kohm`, words: `Reading ${reading} kilohm between the limits 3.0 and ${highest}; siblings 5.2 to 5.9.` },
        margin: { value: highest - reading, unit: "kohm" },
        probability: { value: 84, unit: "%", text: "84 %" },
        do_next: ["Reseat the lead and read again.", "Swap with lead 4 bottom and read both."],
        working: [`highest ${highest} kohm less reading ${reading} kohm leaves ${(highest - reading).toFixed(1)} kohm`, `guard band is the expanded uncertainty, ${U} kohm`],
      };
    },
  },
  "mass-balance": {
    description: {
      name: "mass-balance", version: 2, kind: "calculation",
      purpose: "New empty mass and centre of gravity after items are added, removed or moved",
      input: {
        title: "Weighing and items",
        fields: [
          { key: "empty_mass", label: "Empty mass", shape: "quantity", kind: "mass", units: mass, unit: "lb", example: "1,120 lb", needed: true, min: "1 lb" },
          { key: "empty_arm", label: "Empty centre of gravity", help: "Aft of the datum.", shape: "quantity", kind: "length", units: length, unit: "in", example: "10.2 in", needed: true },
          { key: "weighed_on", label: "Weighed on", shape: "date", example: "2024-05-11" },
          { key: "items", label: "Items", help: "Each thing that was added or taken out.", shape: "list", needed: true,
            of: { key: "", label: "Item", shape: "record", fields: [
              { key: "name", label: "What", shape: "text", needed: true, example: "starter" },
              { key: "mass", label: "Mass", shape: "quantity", kind: "mass", units: mass, unit: "lb", needed: true, example: "9.4 lb" },
              { key: "arm", label: "Arm", shape: "quantity", kind: "length", units: length, unit: "in", needed: true, example: "-31 in" },
              { key: "how", label: "Change", shape: "choice", needed: true, choices: [{ value: "added", label: "added" }, { value: "removed", label: "removed" }] },
            ] } },
          { key: "include_unusable", label: "Does the empty mass include unusable fuel?", shape: "yes_no" },
        ],
      },
      output: { fields: [
        { key: "mass", label: "New empty mass", shape: "quantity" },
        { key: "arm", label: "New centre of gravity", shape: "quantity" },
        { key: "rows", label: "Working", shape: "list", of: { key: "", label: "Row", shape: "record", fields: [
          { key: "name", label: "Item", shape: "text" }, { key: "mass", label: "Mass", shape: "quantity" }, { key: "arm", label: "Arm", shape: "quantity" }, { key: "moment", label: "Moment", shape: "quantity" },
        ] } },
      ] },
      sources: [{ document: "AC 43.13-1B CHG 1", place: "chapter 10", provenance: "read" }],
      cautions: [defer],
      example: { empty_mass: "1120 lb", empty_arm: "10.2 in", weighed_on: "2024-05-11", items: [{ name: "starter, old", mass: "16.8 lb", arm: "-31 in", how: "removed" }, { name: "starter, new", mass: "9.4 lb", arm: "-2 ft 7 in", how: "added" }], include_unusable: true },
    },
    run: (input) => ({
      mass: { value: 1112.6, unit: "lb", text: "1112.6 lb" }, arm: { value: 10.47, unit: "in", text: "10.47 in" },
      rows: [
        { name: "aircraft empty", mass: { value: 1120, unit: "lb" }, arm: { value: 10.2, unit: "in" }, moment: { value: 11424, unit: "in-lb" } },
        ...input.items.map((i) => ({ name: i.name, mass: { value: parseFloat(i.mass), unit: "lb" }, arm: { value: -31, unit: "in" }, moment: { value: -291.4, unit: "in-lb" } })),
      ],
    }),
  },
  "line-element": {
    description: {
      name: "line-element", version: 1, kind: "calculation",
      purpose: "Pressure lost in one element of a line",
      input: { title: "Element", fields: [
        { key: "flow", label: "Flow", shape: "quantity", kind: "volume_flow", units: ["gal/h", "L/h"], unit: "gal/h", example: "9.4 gal/h", needed: true, max: "60 gal/h" },
        { key: "element", label: "Element", shape: "one_of", needed: true, alternatives: [
          { word: "pipe", label: "pipe", fields: [{ key: "length", label: "Length", shape: "quantity", kind: "length", units: length, unit: "in", example: "38 in", needed: true }, { key: "bore", label: "Bore", shape: "quantity", kind: "length", units: length, unit: "in", example: "3/8 in", needed: true }] },
          { word: "elbow", label: "elbow", fields: [{ key: "angle", label: "Angle", shape: "quantity", kind: "angle", units: ["deg"], unit: "deg", example: "90 deg", needed: true }] },
        ] },
        { key: "fluid", label: "Fluid", shape: "choice", choices: ["gasoline", "oil", "water", "air", "hydraulic fluid", "glycol"].map((v) => ({ value: v, label: v })) },
        { key: "count", label: "How many of them", shape: "count", example: "2" },
        { key: "factor", label: "Loss factor", shape: "number", example: "0.9" },
        { key: "extra", label: "Any other measured value", shape: "any_quantity", example: "28 psi" },
        { key: "measured_at", label: "Measured at", shape: "instant" },
        { key: "position", label: "Position", shape: "reference", refers_to: "position" },
        { key: "photo", label: "Photo", shape: "attachment" },
      ] },
      output: { fields: [{ key: "loss", label: "Pressure lost", shape: "quantity" }] },
      sources: [{ document: "line losses", place: "", provenance: "common-practice" }], cautions: [],
      example: { flow: "9.4 gal/h", element: { is: "pipe", length: "3 ft 2 in", bore: "3/8 in" }, fluid: "gasoline" },
    },
    run: () => ({ loss: { value: 0.0431, unit: "psi" } }),
  },
};

const act = {
  "defect": {
    description: {
      name: "defect", version: 1, kind: "act", purpose: "Write down something seen, heard or smelt",
      input: { title: "Defect", fields: [
        { key: "aircraft", label: "Aircraft", shape: "text", needed: true, example: "Q-PEB" },
        { key: "what", label: "What was noticed", shape: "text", needed: true, example: "oil on the firewall below the cooler, about a spoonful" },
        { key: "where", label: "Where", shape: "text", refers_to: "position" },
        { key: "ground", label: "Must it be looked at before the next flight?", shape: "yes_no", needed: true },
        { key: "photo", label: "Photo", shape: "attachment" },
      ] },
      output: { fields: [{ key: "number", label: "Defect number", shape: "text" }] }, sources: [], cautions: [defer],
    },
    check: (input) => (input.what?.length > 200 ? [{ path: "what", kind: "out_of_bounds", what: "the text is longer than 200 letters", expected: "at most 200 letters" }] : []),
    run: () => ({ number: "D-7" }),
  },
  "note-defect": {
    description: {
      name: "note-defect", version: 1, kind: "act", purpose: "Write down something seen, heard or smelt",
      input: { title: "Defect", fields: [
        { key: "aircraft", label: "Aircraft", shape: "text", needed: true, refers_to: "aircraft" },
        { key: "text", label: "What was seen, heard or smelt", shape: "text", needed: true, example: "oil film below the left rear cylinder" },
        { key: "position", label: "Where", shape: "text", refers_to: "position" },
        { key: "photos", label: "Photos", shape: "list", refers_to: "attachment", of: { shape: "text" } },
        { key: "decision", label: "Fly or stay on the ground", shape: "choice", choices: [{ value: "undecided", label: "not decided yet" }] },
      ] },
      output: { fields: [] }, sources: [], cautions: [defer],
    },
    run: () => ({ words: "Defect written down.", id: "defect-2", notes: [] }),
  },
  "measure": {
    description: {
      name: "measure", version: 1, kind: "act", purpose: "Enter a reading and get its verdict",
      input: { title: "Reading", fields: [
        { key: "aircraft", label: "Aircraft", shape: "text", needed: true, refers_to: "aircraft" },
        { key: "check", label: "Check", shape: "text", refers_to: "check", needed: true },
        { key: "value", label: "Reading", shape: "any_quantity", example: "7.9 kohm" },
        { key: "over_range", label: "The display shows over-range", shape: "yes_no" },
        { key: "instrument", label: "Instrument", shape: "text", refers_to: "instrument" },
        { key: "range", label: "Range used", shape: "text" },
        { key: "leads", label: "Test leads", shape: "choice", choices: [{ value: "not-stated", label: "not stated" }, { value: "nulled", label: "nulled" }] },
        { key: "note", label: "Note", shape: "text" },
      ] },
      output: { fields: [{ key: "verdict", label: "Verdict", shape: "text" }] }, sources: [], cautions: [],
    },
    run: () => ({ verdict: "undecided" }),
  },
};

const view = {
  "trend": {
    description: {
      name: "trend", version: 1, kind: "view", purpose: "A reading over engine hours",
      input: { title: "Which", fields: [{ key: "position", label: "Position", shape: "text", refers_to: "position", needed: true }] },
      output: { fields: [{ key: "slope", label: "Change", shape: "text" }] },
    },
    run: () => ({
      slope: "+0.4 kohm a year",
      plot: {
        words: "Five readings of the lead rise from 5.2 to 7.9 kilohm between 850 and 1140 hours; the limit is 8.0.",
        x: { label: "engine hours", unit: "h" }, y: { label: "resistance", unit: "kΩ" },
        points: [{ x: 850, y: 5.2, U: 0.2 }, { x: 930, y: 5.9, U: 0.2 }, { x: 1010, y: 6.4, U: 0.2 }, { x: 1062, y: 7.1, U: 0.2 }, { x: 1140, y: 7.9, U: 0.2 }],
        limits: [{ y: 8.0, label: "highest 8.0 kΩ, harness maker's sheet" }],
        fit: [{ x: 850, y: 5.15, low: 4.9, high: 5.4 }, { x: 1000, y: 6.45, low: 6.3, high: 6.6 }, { x: 1140, y: 7.8, low: 7.5, high: 8.1 }],
      },
    }),
  },
};

export const descriptions = { calc, act, view };
