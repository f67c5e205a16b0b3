/// What was typed is kept in this browser until it is recorded. A browser that refuses storage
/// (full, or forbidden) must not stop anybody from working: then it lives in memory only.

const memory = new Map<string, string>();

export function keep(key: string, value: unknown): boolean {
  const text = JSON.stringify(value);
  memory.set(key, text);
  try {
    localStorage.setItem(key, text);
    return true;
  } catch {
    return false;
  }
}

export function kept<T>(key: string): T | undefined {
  let text: string | null | undefined;
  try {
    text = localStorage.getItem(key);
  } catch {
    text = undefined;
  }
  text ??= memory.get(key);
  if (text === undefined || text === null) return undefined;
  try {
    return JSON.parse(text) as T;
  } catch {
    return undefined;
  }
}

export function forget(key: string): void {
  memory.delete(key);
  try {
    localStorage.removeItem(key);
  } catch {
    // nothing was stored, so nothing is left behind
  }
}

export function keptKeys(prefix: string): string[] {
  const found = new Set([...memory.keys()].filter((k) => k.startsWith(prefix)));
  try {
    for (let i = 0; i < localStorage.length; i++) {
      const key = localStorage.key(i);
      if (key?.startsWith(prefix)) found.add(key);
    }
  } catch {
    // memory is all there is
  }
  return [...found].sort();
}
