import { formatCount } from '../../lib/charts/format';

/** Names in a row, with the number of those left out: 'A, B and 3 more'. */
export function namesWords(names: readonly string[], most: number): string {
  return names.length <= most
    ? names.join(', ')
    : `${names.slice(0, most).join(', ')} and ${formatCount(names.length - most)} more`;
}
