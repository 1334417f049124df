import {
  dateStyles,
  numberStyles,
  plainWriting,
  setWriting,
  type WritingStyle,
  writingInForce,
} from '../../lib/charts/writingStyle';
import { remember, remembered } from '../frame/smallMemory';

const name = 'endfloat writing';
const listeners = new Set<() => void>();

/** The style that a text names as it is kept here; the plain one for what it does not name. */
export function writingFrom(text: string | null): WritingStyle {
  const [numbers, dates] = (text ?? '').split(' ');
  return {
    numbers: Object.keys(numberStyles).find((style) => style === numbers) ?? plainWriting.numbers,
    dates: dateStyles.find((style) => style === dates) ?? plainWriting.dates,
  } as WritingStyle;
}

function change(style: WritingStyle): void {
  const before = writingInForce();
  if (style.numbers === before.numbers && style.dates === before.dates) return;
  setWriting(style);
  for (const listener of listeners) listener();
}

/** Puts a style in force on every page of this browser and keeps it; where the browser keeps nothing, until the page is closed. */
export function chooseWriting(style: WritingStyle): void {
  remember(name, `${style.numbers} ${style.dates}`);
  change(style);
}

/** Puts the style kept in this browser in force, and follows a choice made in another tab; the returned function ends that. */
export function followKeptWriting(): () => void {
  const follow = (event: StorageEvent) => {
    if (event.key === name) change(writingFrom(event.newValue));
  };
  change(writingFrom(remembered(name) ?? `${writingInForce().numbers} ${writingInForce().dates}`));
  window.addEventListener('storage', follow);
  return () => window.removeEventListener('storage', follow);
}

/** Calls back whenever another style is in force; the returned function ends that. */
export function onWritingChange(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
