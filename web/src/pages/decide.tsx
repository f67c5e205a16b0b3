/// The way to "renew, watch or leave", which is loaded when it is opened.

import type { JSX } from "preact";
import { Door } from "./door";

const load = (): Promise<typeof import("../decide/page")> => import("../decide/page");

export function DecideDoor(props: { position: string | undefined }): JSX.Element {
  return (
    <Door title="Renew, watch or leave" load={load}>
      {(part) => (props.position === undefined ? <part.DecidePage /> : <part.DecideOnePage key={props.position} position={props.position} />)}
    </Door>
  );
}
