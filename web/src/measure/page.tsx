/// The place where one stands with a meter: one reading at a time along a group, and what came of
/// the whole. Loaded when it is opened.

import type { JSX } from "preact";
import { useDescription } from "../api/use";
import type { MeasureAnswer } from "../api/views";
import { useAircraftView } from "../aircraft";
import { Trouble } from "../pages/trouble";
import { address } from "../route/route";
import { Reading } from "./reading";
import { Summary } from "./summary";

export function GroupPage(props: { group: string; check?: string | undefined }): JSX.Element {
  const seen = useAircraftView<MeasureAnswer>("measure");
  const act = useDescription("act", "measure");
  const page = seen.data?.answer;
  const group = page?.groups.find((g) => g.id === props.group);
  if (!page || !act.data) return <div class="one-column"><h1>Measure</h1><Trouble failed={seen.failed ?? act.failed} /></div>;
  if (group && props.check === "summary") return <Summary page={page} group={group} />;
  const check = group?.checks.find((c) => c.id === props.check) ?? group?.checks[0];
  if (!group || !check) {
    return <div class="one-column"><h1>Measure</h1><p class="trouble">There is no such group of readings. <a href={address("measure")}>See all</a></p></div>;
  }
  return <Reading key={check.id} group={group} check={check} instruments={page.instruments} fields={act.data.input.fields} cautions={act.data.cautions ?? []} />;
}
