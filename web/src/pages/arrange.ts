/// How the form of an act is laid out: what is asked at once, what waits behind "More", and the
/// words on its button. Labels, units and limits stay those of the description.

export interface Arrangement {
  first: string[];
  button?: string;
  /// A plan or decision: it is made now.
  now?: boolean;
  /// Filled in with what was entered there last on this device.
  remember?: string[];
}

export const arrangements: { [act: string]: Arrangement } = {
  "measure": { first: ["check", "value", "over_range"] },
  "plan-change": { now: true, first: ["title", "position", "grade", "joints", "new_part", "document"], button: "Plan it" },
  "plan-stage": { now: true, first: ["title", "changes", "ground_only", "abort_values"], button: "Make the stage" },
  "answer-objection": { now: true, first: ["answer", "by", "certificate", "text"], button: "Answer it" },
  "change-done": { first: ["text", "proof", "parts_off", "parts_on", "by"], button: "Done", remember: ["by"] },
  "work-joint": { first: ["joint", "state", "torque", "torque_table", "reason_outside_band", "by"], button: "Record the joint", remember: ["by"] },
  "work-joints": { first: ["joints", "state", "torque", "torque_table", "reason_outside_band", "by"], button: "Record the joints", remember: ["by"] },
  "count-bung": { first: ["id", "where", "fitted"], button: "Count it" },
  "move-cowl": { first: ["closed", "by"], remember: ["by"] },
  "revise-mass": { first: ["items", "empty_mass", "empty_arm", "document"], button: "Revise mass and balance" },
  "stage-step": { first: ["step", "result", "text", "ambient_temperature", "ambient_pressure", "flight_time", "by"], remember: ["by"] },
  "quick-job": { first: ["what", "limits", "quantity", "text", "by"], button: "Job done", remember: ["by"] },
  "note-defect": { first: ["text"], button: "Keep" },
  "decide-defect": { now: true, first: ["decision", "reason", "until"], button: "Decide" },
  "decide-part": { now: true, first: ["decision", "reason", "look_again", "cost", "by"], button: "Decide", remember: ["by"] },
  "close-defect": { first: ["how", "change"], button: "Close the defect" },
  "open-stage": { first: ["name", "signer", "certificate"], button: "Sign it open", remember: ["name", "signer", "certificate"] },
  "close-stage": { first: ["name", "signer", "certificate"], button: "Sign it closed", remember: ["name", "signer", "certificate"] },
  "sign-entry": { first: ["name", "signer", "certificate"], button: "Sign", remember: ["name", "signer", "certificate"] },
  "hold-stage": { now: true, first: ["reason"], button: "Hold the stage" },
  "resume-stage": { now: true, first: ["reason"], button: "Go on" },
  "withdraw-change": { now: true, first: ["reason"], button: "Take it back" },
  "task-done": { first: ["limit", "text", "document"] },
  "instrument-found-bad": { first: ["instrument", "why", "last_known_good"] },
};

/// Each run asks first for what belongs to it; a ground run without air temperature and pressure
/// is not complete.
const k_of_step: { [step: string]: string[] } = {
  "leak-run-static": ["result", "text", "by"],
  "leak-run-engine": ["result", "text", "by", "readings"],
  "ground-run": ["result", "ambient_temperature", "ambient_pressure", "text", "by", "readings"],
  "check-flight": ["result", "flight_time", "text", "by", "readings"],
  "second-look": ["result", "text", "by"],
};

export function firstAsked(act: string, fixed: { [key: string]: unknown }): string[] | undefined {
  const step = fixed["step"];
  if (act === "stage-step" && typeof step === "string") return k_of_step[step];
  return arrangements[act]?.first;
}
