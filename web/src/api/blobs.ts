/// Photos that could not be sent yet, kept in IndexedDB (which plain-http pages have too).

function open(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open("witnessmark", 1);
    request.onupgradeneeded = () => request.result.createObjectStore("blobs");
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

async function act<T>(mode: IDBTransactionMode, make: (s: IDBObjectStore) => IDBRequest<T>): Promise<T> {
  const db = await open();
  try {
    return await new Promise<T>((resolve, reject) => {
      const transaction = db.transaction("blobs", mode);
      const request = make(transaction.objectStore("blobs"));
      transaction.oncomplete = () => resolve(request.result);
      transaction.onerror = () => reject(transaction.error);
      transaction.onabort = () => reject(transaction.error);
    });
  } finally {
    db.close();
  }
}

export async function keepBlob(key: string, blob: Blob): Promise<void> {
  await act("readwrite", (s) => s.put(blob, key));
}

export async function blobOf(key: string): Promise<Blob | undefined> {
  try {
    return await act<Blob | undefined>("readonly", (s) => s.get(key) as IDBRequest<Blob | undefined>);
  } catch {
    return undefined;
  }
}

export async function forgetBlob(key: string): Promise<void> {
  try {
    await act("readwrite", (s) => s.delete(key));
  } catch {
    // left behind in the browser; harmless
  }
}
