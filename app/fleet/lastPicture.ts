import { forget, remember, remembered } from '../frame/smallMemory';

const name = 'endfloat last picture';

/** The picture and the answer that the Fleet page showed of own files last: there before anything is opened. */
export interface LastPicture {
  readonly sentence: string;
  readonly svg: string;
}

/** The last picture; null if there is none, or the browser keeps nothing. */
export function lastPicture(): LastPicture | null {
  try {
    const { sentence, svg } = JSON.parse(remembered(name) ?? 'null') ?? {};
    return typeof sentence === 'string' && typeof svg === 'string' ? { sentence, svg } : null;
  } catch {
    return null;
  }
}

/** Keeps the picture for the next opening; a browser that keeps nothing goes without. */
export function keepLastPicture(picture: LastPicture): void {
  if (!remember(name, JSON.stringify(picture))) forget(name);
}

/** Forgets the picture: it is of files that are not open any more. */
export function forgetLastPicture(): void {
  forget(name);
}
