import type { KeyboardEvent } from 'react';

/** Enter moves to the next field of the page, as the Next key of a phone does. */
export function toNextBox(event: KeyboardEvent<HTMLInputElement>): void {
  if (event.key !== 'Enter' || event.nativeEvent.isComposing) return;
  event.preventDefault();
  const fields = [...document.querySelectorAll<HTMLElement>('main input, main select, main textarea')].filter(
    (field) => field.closest('form') === null,
  );
  const next = fields[fields.indexOf(event.currentTarget) + 1];
  next?.focus();
  if (next instanceof HTMLInputElement && next.type !== 'checkbox') next.select();
}
