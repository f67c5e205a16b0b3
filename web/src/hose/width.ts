/// How wide a place is: drawings are laid out in its own pixels, so that letters and targets keep
/// their size.

import { useLayoutEffect, useState } from "preact/hooks";

export function useWidth(place: { current: HTMLElement | null }, first: number): number {
  const [width, setWidth] = useState(first);
  useLayoutEffect(() => {
    const element = place.current;
    if (!element) return;
    const take = (): void => {
      const now = Math.round(element.clientWidth);
      if (now > 0) setWidth(now);
    };
    take();
    const watch = new ResizeObserver(take);
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return width;
}
