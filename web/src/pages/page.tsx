/// Which page an address means.

import type { JSX } from "preact";
import type { Route } from "../route/route";
import { BayPage } from "./bay";
import { BenchPage, CalculationPage } from "./bench";
import { ActPage } from "./act";
import { ViewPage } from "./view";
import { WaitingPage } from "./waiting";
import { MeasurePage, RecordPage, RunsPage, WorkPage } from "./places";

export function Page(props: { route: Route }): JSX.Element {
  const { place, rest } = props.route;
  const [first, name] = rest;
  if (first === "act" && name) return <ActPage name={name} place={place} query={props.route.query} />;
  if (first === "view" && name) return <ViewPage name={name} />;
  if (first === "bench") return name ? <CalculationPage name={name} /> : <BenchPage />;
  if (place === "record" && first === "waiting") return <WaitingPage />;
  switch (place) {
    case "bay":
      return <BayPage />;
    case "work":
      return <WorkPage />;
    case "measure":
      return <MeasurePage />;
    case "runs":
      return <RunsPage />;
    case "record":
      return <RecordPage />;
  }
}

export function titleOf(route: Route): string | undefined {
  const [first, name] = route.rest;
  if (first === "bench" && !name) return "Bench";
  if (name) return named(name);
  return undefined;
}

/// "torque-setting" -> "Torque setting"
export function named(name: string): string {
  const words = name.replaceAll("-", " ").replaceAll("_", " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}
