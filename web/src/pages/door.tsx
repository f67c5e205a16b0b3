/// The way to a page that is loaded when it is opened: its heading stands at once.

import { useEffect, useState } from "preact/hooks";
import type { ComponentChildren, JSX } from "preact";

/// What `load` gave, "failed" without a connection, nothing while it is on its way.
export function useLoaded<T>(load: () => Promise<T>): { part?: T; failed: boolean; again: () => void } {
  const [loaded, setLoaded] = useState<{ part: T } | "failed" | undefined>(undefined);
  const [tries, setTries] = useState(0);
  useEffect(() => {
    let gone = false;
    load().then((part) => { if (!gone) setLoaded({ part }); }).catch(() => { if (!gone) setLoaded("failed"); });
    return () => { gone = true; };
  }, [tries]);
  const again = (): void => {
    setLoaded(undefined);
    setTries(tries + 1);
  };
  return loaded === "failed" ? { failed: true, again } : { failed: false, again, ...(loaded === undefined ? {} : { part: loaded.part }) };
}

export function Door<T>(props: { title: string; load: () => Promise<T>; waits?: ComponentChildren; children: (part: T) => JSX.Element | null }): JSX.Element {
  const { part, failed, again } = useLoaded(props.load);
  const inside = part === undefined ? null : props.children(part);
  if (inside) return inside;
  return (
    <div class="one-column">
      <h1>{props.title}</h1>
      {failed ? <><p class="trouble">The page could not be loaded: no connection.</p><button type="button" onClick={again}>Try again</button></> : props.waits}
    </div>
  );
}
