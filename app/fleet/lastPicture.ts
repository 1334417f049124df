const name = 'endfloat last picture';

/** The picture and the answer that the Fleet page showed of own files last: there before anything is opened. */
export interface LastPicture {
  readonly sentence: string;
  readonly svg: string;
}

/** The last picture; null if there is none, or the browser keeps nothing. */
export function lastPicture(): LastPicture | null {
  try {
    const { sentence, svg } = JSON.parse(localStorage.getItem(name) ?? 'null') ?? {};
    return typeof sentence === 'string' && typeof svg === 'string' ? { sentence, svg } : null;
  } catch {
    return null;
  }
}

/** Keeps the picture for the next opening; a browser that keeps nothing goes without. */
export function keepLastPicture(picture: LastPicture): void {
  try {
    localStorage.setItem(name, JSON.stringify(picture));
  } catch {
    forgetLastPicture();
  }
}

/** Forgets the picture: it is of files that are not open any more. */
export function forgetLastPicture(): void {
  try {
    localStorage.removeItem(name);
  } catch {
    // There is none then.
  }
}
