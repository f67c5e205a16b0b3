/// Which problem belongs to which field.

import type { Problem } from "../api/types";

/// Ids in the page are made from paths: "leads/2/reading" -> "f-leads-2-reading".
export function fieldId(path: string): string {
  return `f-${path.replace(/[^A-Za-z0-9_]+/g, "-")}`;
}

/// Problems for each rendered path. One whose path is not on the page goes to the nearest
/// field around it, and to "" (the whole form) when there is none.
export function place(problems: Problem[], paths: Set<string>): Map<string, Problem[]> {
  const out = new Map<string, Problem[]>();
  for (const problem of problems) {
    let path = problem.path;
    while (path !== "" && !paths.has(path)) {
      path = path.includes("/") ? path.slice(0, path.lastIndexOf("/")) : "";
    }
    const list = out.get(path) ?? [];
    list.push(problem);
    out.set(path, list);
  }
  return out;
}

/// While somebody is still typing, an empty field is no mistake yet, and neither is a field that
/// was not reached. After "record" everything is shown.
export function worthShowing(problems: Problem[], touched: Set<string>, all: boolean): Problem[] {
  if (all) return problems;
  return problems.filter((p) => p.kind !== "missing" && touched.has(p.path));
}
