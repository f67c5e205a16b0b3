/// A plot with few lines: loaded only when a page has one to show.

import { useEffect, useRef, useState } from "preact/hooks";
import type { JSX } from "preact";
import type { PlotData } from "./chart_draw";

export function Plot(props: { data: PlotData; words: string }): JSX.Element {
  const place = useRef<HTMLDivElement>(null);
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    let end: (() => void) | undefined;
    let gone = false;
    import("./chart_draw")
      .then(({ drawPlot }) => {
        if (!gone && place.current) end = drawPlot(place.current, props.data);
      })
      .catch(() => setFailed(true));
    return () => {
      gone = true;
      end?.();
    };
  }, [props.data]);
  return (
    <figure class="plot">
      <div ref={place} role="img" aria-label={props.words} />
      <figcaption>{failed ? `The plot could not be loaded. ${props.words}` : props.words}</figcaption>
    </figure>
  );
}
