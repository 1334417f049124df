import { expect } from 'vitest';
import type { LayeredSpec } from '../../lib/charts/theme';
import { draw, schemaComplaints } from './checkSpec';

/** A picture that keeps to the schema, draws without a complaint and holds no broken number. */
export async function drawn(spec: LayeredSpec): Promise<string> {
  expect(schemaComplaints(spec)).toEqual([]);
  const { svg, complaints } = await draw(spec);
  expect(complaints).toEqual([]);
  expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  return svg;
}
