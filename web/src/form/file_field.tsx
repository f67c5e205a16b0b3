/// A photo or paper. It goes to the record at once; without a connection it waits here.

import { useState } from "preact/hooks";
import type { JSX } from "preact";
import { ask } from "../api/client";
import { keepBlob } from "../api/blobs";
import { newId } from "../kit/identity";
import type { FileDraft } from "./draft";
import type { FieldProps } from "./form";
import { Label, useNotes } from "./field";

export function FileField(props: FieldProps<FileDraft>): JSX.Element {
  const { field, path, draft, set } = props;
  const notes = useNotes(field, path);
  const [state, setState] = useState("");
  const take = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setState("Sending");
    const outcome = await ask<{ hash: string }>("/api/attachment", { raw: file });
    if (outcome.is === "answer") {
      set({ hash: outcome.data.hash, name: file.name });
      setState("");
      return;
    }
    if (outcome.is === "problems") {
      setState(outcome.problems.map((p) => p.what).join(" "));
      return;
    }
    const pending = newId();
    try {
      await keepBlob(pending, file);
      set({ pending, name: file.name });
      setState("");
    } catch {
      setState("No connection, and this browser can't keep the file: choose it again later.");
    }
  };
  return (
    <div class="field attachment">
      <Label field={field} for={notes.id} />
      {notes.help}
      <input
        id={notes.id}
        type="file"
        accept="image/*,application/pdf,text/plain"
        aria-describedby={notes.describedby}
        onChange={(e) => void take(e.currentTarget.files?.[0])}
      />
      {draft.hash ? (
        <p class="file-state">
          <a href={`/api/attachment/${draft.hash}`} target="_blank" rel="noopener">{draft.name ?? "the file"}</a>
          {" "}
          <button type="button" class="quiet" onClick={() => set({})}>Take away</button>
        </p>
      ) : null}
      {draft.pending ? (
        <p class="file-state">
          {draft.name}: kept here, goes with the entry when the connection is back{" "}
          <button type="button" class="quiet" onClick={() => set({})}>Take away</button>
        </p>
      ) : null}
      <p class="file-state" role="status">{state}</p>
      {notes.problem}
    </div>
  );
}

/// Several photos, one field: each choice adds one.
export function PhotosField(props: FieldProps<FileDraft[]>): JSX.Element {
  const { field, path, draft, set } = props;
  return (
    <div>
      {draft.map((one, i) => (
        <p class="file-state" key={one.hash ?? one.pending ?? i}>
          {one.name ?? "photo"}{one.pending ? ", kept here, goes with the entry when the connection is back" : ""}{" "}
          <button type="button" class="quiet" onClick={() => set(draft.filter((_, j) => j !== i))}>Take away</button>
        </p>
      ))}
      <FileField
        key={draft.length}
        field={{ ...field, shape: "attachment", needed: false }} path={path} draft={{}}
        set={(next) => (next.hash ?? next.pending) === undefined ? undefined : set([...draft, next])}
      />
    </div>
  );
}
