import { renderToStaticMarkup } from 'react-dom/server';
import { expect, it } from 'vitest';
import { SpeedMethods } from '../../../app/methods/SpeedMethods';
import { type BenchFigures, benchFigures } from '../../../lib/analysis/calibration/benchFigures';

const textOf = (figures: BenchFigures) =>
  renderToStaticMarkup(<SpeedMethods figures={figures} />)
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ');

const made: BenchFigures = {
  machine: { cores: 2, memory_GiB: 24 },
  unitsPerGroup: 100,
  imports: [],
  fleets: [
    {
      units: 1_000,
      readings: 200_000,
      batch_s: 31.4,
      batchCpu_s: 20,
      peak_MiB: 812,
      steps: { import_s: 3.1, fit_s: 3.2, forecasts_s: 1.3, sisters_s: 0.9, signals_s: 4.7, spares_s: 1.9 },
      peer: { cut_s: 11, fit_s: 180, whole_s: 195, wholeCpu_s: 69 },
      compared: { fits: 100, reml: 1.5e-9, slopes: 7e-7, sds: 8.7e-5 },
    },
    {
      units: 100_000,
      readings: 20_000_000,
      batch_s: 4_000,
      batchCpu_s: 1_400,
      peak_MiB: 2_900,
      steps: null,
      peer: null,
      compared: null,
    },
  ],
  growth: 0.93,
};

it('shows times, memory, the ratio to the script by processor time, growth, and how near the fits are', () => {
  const text = textOf(made);
  for (const part of ['31.4', '812', '3.45', 'to the power 0.93', '4.7', 'the same 2 cores', 'groups of 100'])
    expect(text).toContain(part);
  expect(text).toContain('not measured');
  expect(text).not.toContain('What a person waits for');
  for (const never of ['NaN', 'Infinity', 'undefined', 'null']) expect(text).not.toContain(never);
});

it('shows waits in the pages where they were measured', () => {
  const page = [{ interaction: 'Opening a unit', fleet: 'demo, 52 units', milliseconds: 140 }];
  const text = textOf({ ...made, page });
  expect(text).toContain('What a person waits for in the pages');
  expect(text).toMatch(/Opening a unit demo, 52 units 140/);
});

it('the figures that are kept are shown whole', () => {
  const text = textOf(benchFigures);
  for (const { units } of benchFigures.fleets)
    expect(text.replaceAll(/(?<=\d)\D(?=\d{3})/g, '')).toContain(String(units));
  for (const never of ['NaN', 'Infinity', 'undefined', 'null']) expect(text).not.toContain(never);
});
