/// A value that several parts of the page watch.

import { useEffect, useState } from "preact/hooks";

export class Store<T> {
  private watchers = new Set<(value: T) => void>();
  constructor(private value: T) {}
  get(): T {
    return this.value;
  }
  set(value: T): void {
    if (Object.is(value, this.value)) return;
    this.value = value;
    for (const watcher of [...this.watchers]) watcher(value);
  }
  /// @return a function that ends the watch.
  watch(watcher: (value: T) => void): () => void {
    this.watchers.add(watcher);
    return () => this.watchers.delete(watcher);
  }
}

export function useStore<T>(store: Store<T>): T {
  const [value, setValue] = useState(store.get());
  useEffect(() => {
    setValue(store.get());
    return store.watch((next) => setValue(() => next));
  }, [store]);
  return value;
}
