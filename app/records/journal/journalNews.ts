const listeners = new Set<() => void>();

/** Tells that the journal was written to without any file being read again. */
export function tellOfJournal(): void {
  for (const listener of listeners) listener();
}

/** Calls whenever that is told; returns how to stop. */
export function listenToJournal(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
