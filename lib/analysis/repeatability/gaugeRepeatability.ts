import { group } from 'd3-array';
import { z } from 'zod';
import { pooledRepeatability, type Repeatability } from '../../stats/repeatability/repeatability';
import type { Connector } from '../../store/Connector';
import { queryRows } from '../../store/queryRows';
import { sameStatePairsSql } from '../../store/sql/clockSets';

/** How far one workshop's readings of one state repeat. */
export interface WorkshopRepeatability {
  readonly workshop: string;
  readonly pairs: number;
  /** Null where all readings of each pair are the same: then their resolution was seen, not their noise. */
  readonly result: Repeatability | null;
}

/** How far readings of one series repeat, by workshop and pooled. */
export interface GaugeRepeatability {
  readonly series: string;
  readonly pairs: number;
  readonly pooled: Repeatability | null;
  readonly workshops: readonly WorkshopRepeatability[];
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
  return [...group(pairs, ({ series }) => series)].map(([series, own]) => {
    const given = [...group(own, ({ workshop }) => workshop ?? unnamedWorkshop)].map(([workshop, of]) => ({
      workshop,
      differences_mm: of.map(({ difference_mm }) => difference_mm),
    }));
    const { pooled, workshops } = pooledRepeatability(given);
    return {
      series,
      pairs: own.length,
      pooled,
      workshops: workshops.map(({ workshop, result }, index) => ({
        workshop,
        pairs: given[index]?.differences_mm.length ?? 0,
        result,
      })),
    };
  });
}
