/// The draft of one form: kept in this browser on every change, forgotten once recorded.

import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import type { Field, JsonObject } from "../api/types";
import { emptyRecord, mended, recordFrom, untouched, type RecordDraft } from "../form/draft";
import { forget, keep, kept } from "../kit/keep";

export interface DraftState {
  draft: RecordDraft;
  set: (next: RecordDraft) => void;
  clear: () => void;
  /// As on a first visit: nothing kept, the given values filled in. With `sent`, what the form held
  /// when it was sent: fields that were changed since keep what was typed.
  restart: (input: JsonObject, sent?: RecordDraft) => void;
  show: (input: JsonObject) => void;
  /// True when the page opened with what was typed earlier.
  resumed: boolean;
}

const k_pause_ms = 120;

/// @param done whether a kept draft has already become an entry: it is then not taken up again.
export function useDraft(key: string, fields: Field[], start: JsonObject = {}, done?: (kept: RecordDraft) => boolean): DraftState {
  const found = useRef<RecordDraft | undefined>(undefined);
  const looked = useRef(false);
  if (!looked.current) {
    looked.current = true;
    const before = kept<RecordDraft>(key);
    if (before && done?.(mended(fields, before))) forget(key);
    else found.current = before;
  }
  const [draft, setDraft] = useState<RecordDraft>(() =>
    found.current ? mended(fields, found.current) : recordFrom(fields, start));
  const newest = useRef(draft);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);

  const write = useCallback(() => {
    clearTimeout(timer.current);
    timer.current = undefined;
    if (untouched(fields, newest.current)) forget(key);
    else keep(key, newest.current);
  }, [key, fields]);

  useEffect(() => {
    // A phone may close the page without a word: write when it is hidden, not only later.
    const now = (): void => {
      if (timer.current !== undefined) write();
    };
    window.addEventListener("pagehide", now);
    document.addEventListener("visibilitychange", now);
    return () => {
      now();
      window.removeEventListener("pagehide", now);
      document.removeEventListener("visibilitychange", now);
    };
  }, [write]);

  const set = useCallback((next: RecordDraft) => {
    newest.current = next;
    setDraft(next);
    clearTimeout(timer.current);
    timer.current = setTimeout(write, k_pause_ms);
  }, [write]);

  const clear = useCallback(() => {
    clearTimeout(timer.current);
    timer.current = undefined;
    forget(key);
    newest.current = emptyRecord(fields);
    setDraft(newest.current);
  }, [key, fields]);

  const restart = useCallback((input: JsonObject, sent?: RecordDraft) => {
    const next = recordFrom(fields, input);
    const typed = sent ? fields.filter((f) => JSON.stringify(newest.current[f.key]) !== JSON.stringify(sent[f.key])) : [];
    for (const { key: at } of typed) next[at] = newest.current[at] ?? "";
    newest.current = next;
    setDraft(next);
    if (typed.length > 0) return write();
    clearTimeout(timer.current);
    timer.current = undefined;
    forget(key);
  }, [key, fields, write]);

  const show = useCallback((input: JsonObject) => set(recordFrom(fields, input)), [set, fields]);

  return { draft, set, clear, restart, show, resumed: found.current !== undefined };
}
