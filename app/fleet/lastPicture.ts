import type { FleetResult } from '../../lib/analysis/types';
import { forget, remember, remembered } from '../frame/smallMemory';
import { firstViewNames } from './fillFirstView.mjs';

const { lastPicture: name, fleetShown } = firstViewNames;

/** What the Fleet page showed of own files last: there before anything is opened. */
export interface LastPicture {
  readonly sentence: string;
  readonly remarks: readonly string[];
  readonly svg: string;
}

/** The last picture as SVG text; null if there is none, or the browser keeps nothing. */
export function lastPictureSvg(): string | null {
  try {
    const { svg } = JSON.parse(remembered(name) ?? 'null') ?? {};
    return typeof svg === 'string' ? svg : null;
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

/** Remembers whose fleet is shown, so that a page of own files does not begin with the one that comes with the site. */
export function noteFleetShown(source: FleetResult['source']): void {
  remember(fleetShown, source);
}

/** The picture that the first view shows of the fleet that comes with the site, as XML; null if it shows none. */
export function sitePictureSvg(): string | null {
  const picture = document.querySelector('[data-first-shown="site"] [data-first="picture"] svg');
  return picture === null ? null : new XMLSerializer().serializeToString(picture);
}
