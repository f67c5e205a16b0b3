/// Asks the server while a fitting moves and when it has come to rest. One request is under way at
/// a time; of what is wanted meanwhile only the newest is asked next. While it moves, the shape
/// alone ("hose-shape", moving); at rest everything ("hose-sheet").

import { ask as askServer, type Outcome } from "../api/client";
import { Store } from "../kit/store";
import type { CalcAnswer, Json, JsonObject, Problem } from "../api/types";

export interface Told {
  /// The newest shape that was found, and whether it belongs to what stands in the fields now.
  shape?: JsonObject;
  current: boolean;
  /// The newest answer about everything; `settled` when it is about this very input.
  sheet?: CalcAnswer;
  settled: boolean;
  problems: Problem[];
  trouble?: "no-connection" | "fault";
  fault?: string;
  /// When the pointer moved to which the newest shape belongs (performance clock).
  moved?: number;
}

interface Wanted {
  input: JsonObject;
  moving: boolean;
  moved?: number;
}

type Ask = (path: string, options: { body?: unknown; signal?: AbortSignal }) => Promise<Outcome<CalcAnswer>>;

export const k_rest_ms = 150;
const k_typing_ms = 120;
const k_shape_keys = ["near_end", "far_end", "outside_diameter", "least_radius", "radius_to", "clamps", "weight"];
const k_points = 33;
const k_long_ms = 300;

export const nothingTold: Told = { current: false, settled: false, problems: [] };

export class Engine {
  readonly told = new Store<Told>(nothingTold);
  private wanted: Wanted | undefined;
  private busy = false;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private stop: AbortController | undefined;
  private stopped = false;

  constructor(private ask: Ask = askServer) {}

  /// From a pointer or an arrow key: at once, and the whole sheet when it comes to rest.
  move(input: JsonObject, moved: number): void {
    this.stopped = false;
    this.unsettle();
    this.next({ input, moving: true, moved });
    this.later(input, k_rest_ms);
  }

  /// From the fields.
  typed(input: JsonObject): void {
    this.stopped = false;
    this.unsettle();
    this.later(input, k_typing_ms);
  }

  clear(): void {
    this.end();
    this.told.set(nothingTold);
  }

  end(): void {
    this.stopped = true;
    clearTimeout(this.timer);
    this.wanted = undefined;
    this.stop?.abort();
  }

  private unsettle(): void {
    const now = this.told.get();
    // Without a word to those who watch: the next answer tells them, a moment later.
    if (now.settled) now.settled = false;
  }

  private later(input: JsonObject, pause: number): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.next({ input, moving: false }), pause);
  }

  private next(wanted: Wanted): void {
    // A long sum about everything is of no use any more once the fitting moves on.
    if (this.busy && wanted.moving && this.wanted === undefined && this.slow) this.stop?.abort();
    this.wanted = wanted;
    if (!this.busy) void this.run();
  }

  private slow = false;
  /// How long the last whole sheet took.
  private took = 0;

  private async run(): Promise<void> {
    this.busy = true;
    while (this.wanted && !this.stopped) {
      const { input, moving, moved } = this.wanted;
      this.wanted = undefined;
      // Clamps and motion make the whole sheet a matter of seconds: then the shape comes first.
      const length = moving || this.took > k_long_ms ? this.lengthFor(input) : undefined;
      if (length === undefined) {
        await this.whole(input, moved);
        continue;
      }
      const outcome = await this.one("hose-shape", { ...pick(input, k_shape_keys), overall: length, fineness: "moving", points: k_points });
      if (outcome.is === "answer") this.say({ shape: outcome.data.answer, current: true, problems: [] }, moved);
      // Nobody chose a length: the one of before does not reach here, another may.
      else if (outcome.is === "problems" && input["overall"] === undefined) await this.whole(input, moved);
      else this.refused(outcome);
      if (!moving && outcome.is === "answer" && !this.wanted) await this.whole(input, moved);
    }
    this.busy = false;
  }

  /// The chosen length, or the one that the sheet took last.
  private lengthFor(input: JsonObject): Json | undefined {
    if (input["overall"] !== undefined) return this.told.get().sheet ? input["overall"] : undefined;
    const last = this.told.get().sheet?.answer["shape"] as JsonObject | undefined;
    const overall = last?.["overall"] as { value: number; unit: string } | undefined;
    return overall ? `${overall.value} ${overall.unit}` : undefined;
  }

  private async whole(input: JsonObject, moved: number | undefined): Promise<void> {
    this.slow = moved === undefined;
    const began = performance.now();
    const outcome = await this.one("hose-sheet", input);
    if (outcome.is === "answer") this.took = performance.now() - began;
    this.slow = false;
    if (outcome.is === "answer") {
      this.say({ shape: outcome.data.answer["shape"] as JsonObject, current: true, sheet: outcome.data, settled: this.wanted === undefined, problems: [] }, moved);
    } else this.refused(outcome);
  }

  private async one(name: string, body: JsonObject): Promise<Outcome<CalcAnswer>> {
    this.stop = new AbortController();
    return this.ask(`/api/calc/${name}`, { body, signal: this.stop.signal });
  }

  private say(what: Partial<Told>, moved: number | undefined): void {
    if (this.stopped) return;
    const { sheet, shape } = this.told.get();
    const told: Told = { current: false, settled: false, problems: [], ...(sheet ? { sheet } : {}), ...(shape ? { shape } : {}), ...what };
    if (moved !== undefined) told.moved = moved;
    this.told.set(told);
  }

  private refused(outcome: Exclude<Outcome<CalcAnswer>, { is: "answer" }>): void {
    if (outcome.is === "stopped") return;
    if (outcome.is === "problems") this.say({ problems: outcome.problems }, undefined);
    else if (outcome.is === "fault") this.say({ trouble: "fault", fault: outcome.what }, undefined);
    else this.say({ trouble: "no-connection" }, undefined);
  }
}

function pick(input: JsonObject, keys: string[]): JsonObject {
  const out: JsonObject = {};
  for (const key of keys) if (input[key] !== undefined) out[key] = input[key];
  return out;
}
