import fc from 'fast-check';

/**
 * Small fleets of coarse readings: 1 to 4 units of 1 to 3 runs with 1 to 4 readings, on few run hours and three
 * steps of a gauge, with some runs without scatter, so that every kind of degenerate data comes up.
 */
export const coarseReadings = fc
  .record({
    hours: fc.constantFrom([0, 1], [0, 0.9, 2.1], [0.5, 1.5, 2.5, 3.1], [1.2]),
    slope: fc.constantFrom(0, 0.1),
    scatter: fc.constantFrom(0, 0, 1, 2),
    spread: fc.constantFrom('none', 'units', 'runs', 'rates'),
    units: fc.array(
      fc.array(
        fc.array(fc.record({ hour: fc.nat(20), step: fc.integer({ min: -1, max: 1 }) }), {
          minLength: 1,
          maxLength: 4,
        }),
        { minLength: 1, maxLength: 3 },
      ),
      { minLength: 1, maxLength: 4 },
    ),
  })
  .map(({ hours, slope, scatter, spread, units }) =>
    units.flatMap((runs, i) =>
      runs.flatMap((readings, j) =>
        readings.map(({ hour, step }) => {
          const x = hours[hour % hours.length] as number;
          const start =
            0.2 + (spread === 'units' ? 0.03 * i * i : 0) + (spread === 'runs' ? 0.02 * (i + 3 * j) ** 2 : 0);
          const rate = slope + (spread === 'rates' ? 0.03 * (i + 3 * j) ** 2 : 0);
          return { unit: `U${i + 1}`, run: `${j}`, x, y: start + rate * x + 0.01 * scatter * step };
        }),
      ),
    ),
  );
