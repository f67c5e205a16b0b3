/// A style sheet that only one page needs, loaded with it. Its hashed name stands in index.html.

const loading = new Map<string, Promise<void>>();

export function styleOf(page: string): Promise<void> {
  const known = loading.get(page);
  if (known) return known;
  const href = document.querySelector<HTMLMetaElement>(`meta[name="style-of-${page}"]`)?.content;
  if (href === undefined) return Promise.resolve();
  const wait = new Promise<void>((resolve, reject) => {
    const link = document.createElement("link");
    link.rel = "stylesheet";
    link.href = href;
    link.onload = () => resolve();
    link.onerror = () => {
      link.remove();
      loading.delete(page);
      reject(new Error("no connection"));
    };
    document.head.append(link);
  });
  loading.set(page, wait);
  return wait;
}
