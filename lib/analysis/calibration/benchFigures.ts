import { z } from 'zod';
import written from './bench.json';

const amount = z.number().positive();
const stepSeconds = z.object({
  import_s: amount,
  fit_s: amount,
  forecasts_s: amount,
  sisters_s: amount,
  signals_s: amount,
  spares_s: amount,
});

const benchSchema = z.object({
  machine: z.object({ cores: z.int(), memory_GiB: z.int() }),
  unitsPerGroup: z.int(),
  imports: z.array(z.object({ bench: z.string(), peer: z.string(), peer_s: amount, ours_s: amount })),
  fleets: z.array(
    z.object({
      units: z.int(),
      readings: z.int(),
      batch_s: amount,
      batchCpu_s: amount.nullable(),
      peak_MiB: amount.nullable(),
      /** Processor time of each step in one process; null where a fleet is too large for one. */
      steps: stepSeconds.nullable(),
      peer: z
        .object({ cut_s: amount, fit_s: amount, whole_s: amount, wholeCpu_s: amount.nullable() })
        .nullable(),
      compared: z.object({ fits: z.int(), reml: z.number(), slopes: z.number(), sds: z.number() }).nullable(),
    }),
  ),
  /** Exponent by which the batch's processor time grows with units. */
  growth: z.number().nullable(),
  /** Times that a person waits for in the pages, measured in a browser. */
  page: z.array(z.object({ interaction: z.string(), fleet: z.string(), milliseconds: amount })).optional(),
});

export type BenchFigures = z.output<typeof benchSchema>;

/** What the batch took on made fleets, as `npm run -s bench -- --write` wrote it. */
export const benchFigures: BenchFigures = benchSchema.parse(written);
