/// The answers of the views, as the pages need them; keys as in the descriptions.

import type { Figure } from "./types";

export interface Header {
  aircraft: string; name: string; registration: string; engine_hours: string;
  cowl_closed: boolean; open_joints: number; bungs: number; open_defects: number; grounding_defects: number;
  flight_due: string[];
}
export interface FrontPage { aircraft: Header[]; today: string }
export interface Mark {
  id: string; title: string; position: string; of: "limit" | "check"; standing: string;
  used?: number; uncertainty?: number; figure: string; detail: string; trend: string; limit: string;
}
export interface PlanSpot { position: string; name: string; system: string; x: number; y: number; part: string; standing: string; used?: number }
export interface DueRow {
  id: string; title: string; position: string; position_name: string; part: string; standing: string; used?: number;
  figure: string; detail: string; due: string; left: string; due_on?: string; expected?: string; early?: string; late?: string;
  how_sure: string; authority: string; document: string; binding: boolean; why_unknown: string;
}
export interface JointLine {
  id: string; name: string; position: string; kind: string; state: string; number: number; closed: boolean;
  torque: string; torque_limits: string; torque_table: string; by: string; since: string; needs: string;
}
export interface DefectLine {
  id: string; text: string; position: string; happened: string; decision: string; reason: string; until: string;
  closed: boolean; how: string; photos: string[];
}
export interface BungLine { id: string; where: string; since: string }
export interface BayAnswer {
  header: Header; past_limit: number; doubtful: number; unknown: number; within: number;
  marks: Mark[]; plan: PlanSpot[]; ahead: DueRow[]; open_joints: JointLine[]; bungs: BungLine[]; defects: DefectLine[];
  oddities: string[];
}
export interface EvidenceLine { topic: string; words: string; source: string; leans?: string }
export interface PartEvidence {
  position: string; position_name: string; system: string; part: string; description: string; grave: boolean; leans: string; because: string;
  lines: EvidenceLine[]; decided: string; decided_on: string; decided_why: string; look_again_due: boolean; stage: string;
}
export interface DecideAnswer { header: Header; parts: PartEvidence[]; renew: number; watch: number; leave: number }
export interface ChangeLine {
  id: string; title: string; position: string; position_name: string; system: string; grade: string; kind: string;
  stage: string; state: string; new_part: string; document: string; note: string;
  joints: string[]; after: string[]; together: string[];
}
export interface StepLine {
  stage: string; step: string; label: string; result: string; happened: string; text: string; by: string; air: string;
  flight_time: string; readings: string[]; event: string;
}
export interface Objection {
  rule: string; words: string; answer: string; source: string; changes: string[]; accepted: string[]; settled: boolean; settled_by: string;
}
export interface Missing { what: string; where: string }
export interface StageLine {
  id: string; title: string; state: string; state_label: string; reason: string; ground_only: boolean; changes: string[];
  objections: Objection[]; missing_to_open: Missing[]; missing_to_close: Missing[]; steps: StepLine[];
  abort_values: { what: string; limit: string }[]; entries: string[]; mass: string; next: string;
}
export interface HoseLine {
  id: string; title: string; position: string; change: string; family: string; size: string; near_at: string; far_at: string;
  overall: string; tightest_radius: string; least_radius: string; clocking: string; binding: string; drawn: string;
  verdict: string; proof: string; drawn_since: boolean; event: string;
}
export interface ProofLine {
  day: string; verdict: string; words: string; pressure: string; pressure_from: string; held: string; medium: string; by: string;
  part: string; assembled: string; note: string; criteria: string[]; test: string; of_this_drawing: boolean;
}
export interface HoseAnswer {
  hose: HoseLine; clocking_read: string; working_pressure: string; proof_pressure: string; note: string; lines: string[]; sheet: string; proofs: ProofLine[];
}
export interface WorkAnswer { header: Header; changes: ChangeLine[]; stages: StageLine[]; joints: JointLine[]; bungs: BungLine[]; hoses: HoseLine[] }
export interface CheckLine {
  id: string; title: string; position: string; kind: string; unit: string; probes: string; procedure: string;
  lowest: string; highest: string; limit_source: string; last: string; last_when: string; last_words: string; last_event: string;
  verdict: string; used?: number; lowest_number?: number; highest_number?: number; last_number?: number;
  /// Its latest reading among those of its siblings; a word to look, never a verdict.
  among?: string; stands_out?: boolean;
  /// What a conforming reading leaves open, and the calculation that goes further; both may be "".
  not_tested?: string; calculation?: string;
  /// To be read before it is begun; may be "".
  caution?: string;
}
export interface CheckGroup { id: string; title: string; checks: CheckLine[] }
export interface InstrumentLine {
  id: string; name: string; serial: string; calibrated: string; calibration_due: string; state: string; found_bad: string;
  ranges: string[]; range_accuracy: string[];
}
export interface MeasureAnswer { header: Header; groups: CheckGroup[]; instruments: InstrumentLine[] }
export interface Judged {
  verdict: string; words: string; reason: string; next: string; risk: string;
  value?: Figure; lowest?: Figure; highest?: Figure; allowance_used?: number; probability_within?: number;
  meter_good_enough: boolean; limit_source: string; rule: string; last_time: string; siblings: string; not_tested: string;
  sibling_readings: { check: string; title: string; value: string; verdict: string }[]; working: string[];
}
export interface CheckHistory {
  check: CheckLine; lowest?: number; highest?: number; trend: string; trend_lines: string[]; trend_notes: string[];
  line?: { from_at: number; to_at: number; from_value: number; to_value: number };
  points: { event: string; day: string; part: string; value: string; verdict: string; words: string; instrument: string; range: string;
    number?: number; uncertainty?: number; engine_hours?: number; corrected: boolean }[];
}
export interface EntryLine {
  id: string; about: string; purpose: string; text: string; name: string; signer: string; certificate: string; happened: string;
  event: string; sequence: number; amended_after_signature: boolean;
}
export interface DraftAnswer { text: string; missing: Missing[]; unsigned_notes: string[] }
export interface HistoryLine {
  sequence: number; event: string; kind: string; kind_label: string; happened: string; recorded: string; author: string; words: string;
  refers_to: string; corrected: boolean; corrected_words: string; correction_reason: string;
}
export interface PositionAnswer {
  id: string; name: string; system: string; chapter: string; area: string; redundant_with: string; note: string;
  installations: { part: string; description: string; serial: string; cured: string; assembled: string; from: string; to: string; hours: string; why_removed: string }[];
  limits: DueRow[]; checks: CheckLine[]; joints: JointLine[]; defects: DefectLine[];
}
export interface NamedChoices { choices: { value: string; label: string; note?: string }[] }
