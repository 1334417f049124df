import { z } from 'zod';
import type { Connector } from '../../store/Connector';
import { queryRows } from '../../store/queryRows';
import type { WarehouseQuestion } from './Warehouse';

/** Rules of every frame with the parts that start a run; a rule that 'assembly' belongs to needs no part. */
const rulesSql = `
  SELECT DISTINCT rule, frame, CASE WHEN list_contains(codes, 'assembly') THEN '' ELSE coalesce(array_to_string(codes, ';'), '') END AS codes
  FROM reset_rules ORDER BY rule`;

const measuredSql = `
  SELECT r.frame, CAST(r.characteristic AS VARCHAR) AS characteristic, r.rule, (c.shape = 'four_clock')::INTEGER AS is_four_clock,
    c.never_negative::INTEGER AS is_never_negative
  FROM reset_rules r JOIN all_characteristics c USING (characteristic) ORDER BY r.frame, 2`;

const ruleRow = z.object({ rule: z.number(), frame: z.string(), codes: z.string() });
const measuredRow = z.object({
  frame: z.string(),
  characteristic: z.string(),
  rule: z.number(),
  is_four_clock: z.number(),
  is_never_negative: z.number(),
});

/** What a warehouse is told: the day, and the rules and characteristics of the tables beside it. */
export async function warehouseQuestion(connector: Connector, asOf: string): Promise<WarehouseQuestion> {
  const rules = await queryRows(connector, rulesSql, ruleRow);
  const measured = await queryRows(connector, measuredSql, measuredRow);
  return {
    asOf,
    rules: rules.map(({ rule, frame, codes }) => ({
      rule,
      frame,
      partCodes: codes === '' ? [] : codes.split(';'),
    })),
    measured: measured.map(({ frame, characteristic, rule, is_four_clock, is_never_negative }) => ({
      frame,
      characteristic,
      rule,
      isFourClock: is_four_clock === 1,
      isNeverNegative: is_never_negative === 1,
    })),
  };
}
