/// Which aircraft the page is about.

import { useView, type Seen } from "./api/use";
import type { FrontPage, Header } from "./api/views";
import type { JsonObject, ViewAnswer } from "./api/types";
import { keep, kept } from "./kit/keep";
import { Store, useStore } from "./kit/store";

const k_key = "wm.aircraft";

export const chosenAircraft = new Store<string>(kept<string>(k_key) ?? "");
/// False until the server has said which aircraft there are: a remembered one may belong to
/// another binder, and a form must not start with it.
export const aircraftKnown = new Store<boolean>(false);
chosenAircraft.watch((id) => void keep(k_key, id));

export function useFront(): FrontPage | undefined {
  return useView<FrontPage>("header").data?.answer;
}

export function useHeader(): Header | undefined {
  const front = useFront();
  const chosen = useStore(chosenAircraft);
  return front?.aircraft.find((a) => a.aircraft === chosen) ?? front?.aircraft[0];
}

/// A view of the chosen aircraft; `undefined` as long as it is not known which.
export function useAircraftView<T>(name: string, input: JsonObject = {}, wanted = true): Seen<ViewAnswer<T>> {
  const aircraft = useStore(chosenAircraft);
  const known = useStore(aircraftKnown);
  return useView<T>(name, { aircraft, ...input }, wanted && known && aircraft !== "");
}
