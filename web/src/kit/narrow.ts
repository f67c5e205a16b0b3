/// Is this a phone's width? Drawings are laid out anew for it, not only shrunk.

import { useEffect, useState } from "preact/hooks";

const k_query = "(max-width: 36rem)";

export function useNarrow(): boolean {
  const [narrow, setNarrow] = useState(() => matchMedia(k_query).matches);
  useEffect(() => {
    const list = matchMedia(k_query);
    const change = (): void => setNarrow(list.matches);
    list.addEventListener("change", change);
    return () => list.removeEventListener("change", change);
  }, []);
  return narrow;
}
