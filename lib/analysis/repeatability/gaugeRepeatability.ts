import { group } from 'd3-array';
import { z } from 'zod';
import { type PooledRepeatability, pooledRepeatability } from '../../stats/repeatability/repeatability';
import type { Connector } from '../../store/Connector';
import { queryRows } from '../../store/queryRows';
import { sameStatePairsSql } from '../../store/sql/clockSets';

/** How far readings of one series repeat, by workshop and pooled. */
export interface GaugeRepeatability extends PooledRepeatability {
  readonly series: string;
}

const pairRow = z.object({ series: z.string(), workshop: z.string().nullable(), difference_mm: z.number() });

/** Name under which readings without a workshop stand. */
export const unnamedWorkshop = 'workshop not given';

/** Gauge repeatability of every series that has pairs of readings of one state, mm. */
export async function gaugeRepeatability(
  connector: Connector,
  asOf: string,
): Promise<readonly GaugeRepeatability[]> {
  const pairs = await queryRows(connector, sameStatePairsSql, pairRow, [asOf]);
  return [...group(pairs, ({ series }) => series)].map(([series, own]) => ({
    series,
    ...pooledRepeatability(
      [...group(own, ({ workshop }) => workshop ?? unnamedWorkshop)].map(([workshop, of]) => ({
        workshop,
        differences_mm: of.map(({ difference_mm }) => difference_mm),
      })),
    ),
  }));
}
