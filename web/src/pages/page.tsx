/// Which page an address means.

import type { JSX } from "preact";
import type { Route } from "../route/route";
import { BayPage, DefectsPage } from "./bay";
import { BenchPage, CalculationPage } from "./bench";
import { ActPage } from "./act";
import { CausesDoor } from "./causes";
import { DecideDoor } from "./decide";
import { DefectPage } from "./defect";
import { HoseDoor, KeptHoseDoor } from "./hose";
import { JointPage, JointsPage } from "./joints";
import { MassPage } from "./mass";
import { MeasurePage, ReadingPage } from "./measure";
import { AllPage } from "./places";
import { CheckPage, DuePage, PositionPage } from "./position";
import { QuickPage } from "./quick";
import { CorrectPage, HistoryPage, RecordPage } from "./record";
import { SignPage } from "./sign";
import { StagingDoor } from "./staging";
import { ViewPage } from "./view";
import { WaitingPage } from "./waiting";
import { RunsPage, StagePage, WorkPage } from "./work";

export function Page(props: { route: Route }): JSX.Element {
  const { place, rest, query } = props.route;
  const [first, name, third] = rest;
  if (first === "act" && name === "revise-mass") return <MassPage query={query} />;
  if (first === "act" && name) return <ActPage name={name} place={place} query={query} />;
  if (first === "view" && name) return <ViewPage name={name} />;
  if (first === "bench") return name ? <CalculationPage name={name} query={query} /> : <BenchPage />;
  if (first === "all") return <AllPage place={place} />;
  if (first === "sign" && name && third) return <SignPage about={name} purpose={third} />;
  const back = query["back"]?.startsWith("#/") ? query["back"] : "#/record";
  switch (place) {
    case "bay":
      if (first === "position" && name) return <PositionPage id={name} />;
      if (first === "defect") return <DefectPage />;
      if (first === "due") return <DuePage />;
      if (first === "defects") return <DefectsPage />;
      return <BayPage />;
    case "work":
      if (first === "stage" && name) return <StagePage id={name} />;
      if (first === "joints") return <JointsPage stage={query["stage"]} />;
      if (first === "joint" && name) return <JointPage id={name} state={query["state"]} />;
      if (first === "causes") return <CausesDoor query={query} />;
      if (first === "staging") return <StagingDoor />;
      if (first === "decide") return <DecideDoor position={name} />;
      if (first === "quick") return <QuickPage />;
      if (first === "hose") return <HoseDoor query={query} />;
      if (first === "hoses" && name) return <KeptHoseDoor id={name} />;
      return <WorkPage />;
    case "measure":
      if (first === "group" && name) return <ReadingPage group={name} check={third} />;
      if (first === "check" && name) return <CheckPage id={name} />;
      return <MeasurePage />;
    case "runs":
      return <RunsPage />;
    case "record":
      if (first === "waiting") return <WaitingPage />;
      if (first === "history") return <HistoryPage about={query["about"] ?? ""} of={query["of"] ?? ""} />;
      if (first === "correct" && name) return <CorrectPage event={name} back={back} />;
      return <RecordPage />;
  }
}

const titles: { [first: string]: string } = {
  bench: "Bench", all: "Everything", defect: "Write down a defect", defects: "Open defects", due: "All that is due", joints: "Joints", quick: "Quick job", hose: "Hose sheet", hoses: "Hose", staging: "What flies together", causes: "What it may be", decide: "Renew, watch or leave",
  history: "History", waiting: "Not yet recorded", sign: "Sign", correct: "Correct", stage: "Stage", joint: "Joint", group: "Reading", check: "Check", position: "Position",
};

export function titleOf(route: Route): string | undefined {
  const [first, name] = route.rest;
  if ((first === "act" || first === "view" || first === "bench" || first === "position" || first === "joint" || first === "stage") && name) return named(name);
  return first === undefined ? undefined : titles[first];
}

/// "torque-setting" -> "Torque setting"
export function named(name: string): string {
  const words = name.replaceAll("-", " ").replaceAll("_", " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}
