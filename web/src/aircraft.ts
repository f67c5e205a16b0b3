/// Which aircraft the page is about.

import type { Figure } from "./api/types";
import { keep, kept } from "./kit/keep";
import { Store } from "./kit/store";

export interface Aircraft {
  id: string;
  name: string;
  registration: string;
  engine_hours?: Figure;
}

export interface Header {
  aircraft: Aircraft[];
  today?: string;
}

const k_key = "wm.aircraft";

export const chosenAircraft = new Store<string>(kept<string>(k_key) ?? "");
/// False until the server has said which aircraft there are: a remembered one may belong to
/// another binder, and a form must not start with it.
export const aircraftKnown = new Store<boolean>(false);
chosenAircraft.watch((id) => void keep(k_key, id));
