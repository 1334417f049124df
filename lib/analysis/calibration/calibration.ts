import { z } from 'zod';
import written from './calibration.json';

const share = z.number().min(0).max(1);

const calibrationSchema = z.object({
  coverage: z.array(z.object({ units: z.int(), runs: z.int(), crossing: share, reading: share })),
  falseSignals: z.object({
    units: z.int(),
    years: z.number(),
    fleets: z.int(),
    rows: z.array(
      z.object({ budget_per_year: z.number(), found_per_year: z.number(), standardError: z.number() }),
    ),
  }),
  detection: z.object({
    fleets: z.int(),
    falseShare: z.object({ charts: share, spread: share, trend: share }),
    rows: z.array(
      z.object({
        perOverhaul_sd: z.number(),
        withinOverhauls: z.int(),
        charts: share,
        spread: share,
        trend: share,
      }),
    ),
  }),
  benchSlips: z.object({
    fleets: z.int(),
    units: z.int(),
    rows: z.array(z.object({ slip: z.string(), slips: z.int(), caught: z.int() })),
    rightReadings: z.int(),
    rightQuestioned: z.int(),
  }),
});

export type Calibration = z.output<typeof calibrationSchema>;

/** What simulations of known truth gave, as `npm run -s calibrate` wrote it. */
export const calibration: Calibration = calibrationSchema.parse(written);
