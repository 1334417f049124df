import { formatCount } from '../../lib/charts/format';

/** A count with its noun in the right number: '1 unit', '2 units', '0 files'. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${formatCount(count)} ${count === 1 ? one : many}`;
}
