/** What this browser remembers under a name, besides the store of the engine; null where it remembers nothing or refuses. */
export function remembered(name: string): string | null {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

/** Has this browser remember a text; false where it refuses. */
export function remember(name: string, text: string): boolean {
  try {
    localStorage.setItem(name, text);
    return true;
  } catch {
    return false;
  }
}

/** Has this browser forget what it remembers under a name; where it refuses, there is nothing. */
export function forget(name: string): void {
  try {
    localStorage.removeItem(name);
  } catch {
    // A browser that refuses has never remembered anything.
  }
}
