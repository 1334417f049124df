import { noValue } from '../../lib/charts/format';
import { NoValue } from './NoValue';

/** A formatted text, or an en dash with the reason where there is none. */
export function Written({ text, reason }: { readonly text: string | null; readonly reason: string }) {
  return text === null || text === '' || text === noValue ? <NoValue reason={reason} /> : text;
}
