/// Where we are, kept in the address after "#": "#/work/bench/torque-setting?aircraft=Q-PEB".

import { Store } from "../kit/store";

export const places = ["bay", "work", "measure", "runs", "record"] as const;
export type Place = (typeof places)[number];

export interface Route {
  place: Place;
  rest: string[];
  query: Record<string, string>;
}

export function parseRoute(hash: string): Route {
  const text = hash.replace(/^#?\/?/, "");
  const [path = "", tail = ""] = text.split("?", 2);
  const parts = path.split("/").filter((p) => p !== "").map(decode);
  const place = places.find((p) => p === parts[0]) ?? "bay";
  const query: Record<string, string> = {};
  for (const [key, value] of new URLSearchParams(tail)) query[key] = value;
  return { place, rest: places.some((p) => p === parts[0]) ? parts.slice(1) : [], query };
}

function decode(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

export function address(place: Place, rest: string[] = [], query: Record<string, string> = {}): string {
  const path = ["#", place, ...rest.map(encodeURIComponent)].join("/");
  const tail = new URLSearchParams(query).toString();
  return tail === "" ? path : `${path}?${tail}`;
}

export const route = new Store<Route>(parseRoute(typeof location === "undefined" ? "" : location.hash));

export function go(to: string): void {
  location.hash = to;
}

export function startRouting(): void {
  window.addEventListener("hashchange", () => route.set(parseRoute(location.hash)));
}
