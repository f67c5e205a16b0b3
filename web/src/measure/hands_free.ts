/// Hands-free: a meter types, Enter ends a reading, and one whose verdict is no trouble is kept by
/// itself after a pause that any key stops.

import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { keep, kept } from "../kit/keep";
import { Store } from "../kit/store";
import { nothing, take, type Gathered } from "./keys";

const k_key = "wm.hands-free";
/// Per device: the meter hangs on this one.
export const handsFree = new Store<boolean>(kept<boolean>(k_key) ?? false);
handsFree.watch((on) => void keep(k_key, on));

export const k_pause_ms = 1500;
const k_step_ms = 100;

export interface HandsFree {
  /// Milliseconds until it is kept by itself; undefined while nothing is counted.
  left: number | undefined;
  /// A reading has ended and waits for its verdict, or for a person.
  ended: boolean;
  stop: () => void;
  /// What stands in the field was put there by hand: the meter goes on from it.
  typedByHand: (text: string) => void;
}

/// @param fate  of what stands in the field: "wait" for the answer, "fine" may be kept by itself,
///              "look" asks for a person.
export function useHandsFree(on: boolean, fate: "nothing" | "wait" | "fine" | "look", does: { typed: (text: string) => void; ended: (text: string) => void; keep: () => void }): HandsFree {
  const gathered = useRef<Gathered>(nothing);
  const [ended, setEnded] = useState(false);
  const [left, setLeft] = useState<number | undefined>(undefined);
  const acts = useRef(does);
  acts.current = does;
  const now = useRef({ ended, left, fate });
  now.current = { ended, left, fate };

  const stop = (): void => {
    // The figure stays; a person keeps it, or the next reading takes its place.
    setLeft(undefined);
    setEnded(false);
  };

  // Before the page is painted: a meter may type as soon as it is seen.
  useLayoutEffect(() => {
    if (!on) return;
    const listen = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing) return;
      const target = event.target instanceof HTMLElement ? event.target : undefined;
      const field = target?.id === "reading" ? (target as HTMLInputElement) : undefined;
      if (!field && target?.matches("input:not([type=checkbox]), select, textarea")) return;
      // In the middle of a figure a person mends it.
      if (field && !gathered.current.ended && field.selectionStart !== field.value.length) return;
      const counting = now.current.left !== undefined;
      const step = take(gathered.current, event.key, performance.now());
      gathered.current = step.now;
      if (step.does === "again") return event.preventDefault();
      if (counting) {
        stop();
        if (step.does === "passed" && ["Enter", "Tab", "Escape", " "].includes(event.key)) event.preventDefault();
      }
      switch (step.does) {
        case "typed":
          event.preventDefault();
          setEnded(false);
          return acts.current.typed(step.now.text);
        case "ended":
          event.preventDefault();
          setEnded(true);
          return acts.current.ended(step.now.text);
        default:
          // The second Enter, by a person: this one is kept as it is.
          if (event.key !== "Enter" || counting || now.current.fate === "nothing" || target?.closest("a, button, summary")) return;
          event.preventDefault();
          acts.current.keep();
      }
    };
    document.addEventListener("keydown", listen, true);
    return () => document.removeEventListener("keydown", listen, true);
  }, [on]);

  const start = on && ended && fate === "fine";
  useEffect(() => {
    if (!start) {
      setLeft(undefined);
      return;
    }
    const until = performance.now() + k_pause_ms;
    setLeft(k_pause_ms);
    const timer = setInterval(() => {
      const rest = until - performance.now();
      if (rest > 0) return setLeft(rest);
      clearInterval(timer);
      // Nobody watches a page that is hidden.
      const seen = document.visibilityState === "visible";
      setLeft(undefined);
      setEnded(false);
      if (seen) acts.current.keep();
    }, k_step_ms);
    return () => clearInterval(timer);
  }, [start]);

  return {
    left: start ? left : undefined, ended, stop,
    typedByHand: (text) => {
      gathered.current = { text, ended: text === "", at: 0 };
      setEnded(false);
    },
  };
}
