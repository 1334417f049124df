import type { SortingState } from '@tanstack/react-table';

/** Sorting as an address carries it: 'column', '-column' for descending, '' for the order as given. */
export function sortToText(sorting: SortingState): string {
  const first = sorting[0];
  if (first === undefined) return '';
  return first.desc ? `-${first.id}` : first.id;
}

/** The sorting that an address names. */
export function sortFromText(text: string): SortingState {
  if (text === '') return [];
  return text.startsWith('-') ? [{ id: text.slice(1), desc: true }] : [{ id: text, desc: false }];
}
