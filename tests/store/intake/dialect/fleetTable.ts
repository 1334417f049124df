import fc from 'fast-check';

export const quantities = ['thrust_play', 'runout', 'tip_turbine'] as const;
export const stages = ['found', 'left'] as const;
export const clocks = ['12', '3', '6', '9'] as const;

/** One place of a sheet where a reading may stand. */
export interface Place {
  readonly quantity: (typeof quantities)[number];
  readonly stage: (typeof stages)[number];
  readonly clock: (typeof clocks)[number] | null;
}

export const places: readonly Place[] = quantities.flatMap((quantity) =>
  stages.flatMap((stage): Place[] =>
    quantity === 'tip_turbine'
      ? clocks.map((clock) => ({ quantity, stage, clock }))
      : [{ quantity, stage, clock: null }],
  ),
);

/** An overhaul with a reading in micrometres for every place, null where it is empty, 'nothing' where a word says so. */
export interface TrueOverhaul {
  readonly unit: number;
  readonly day: Date;
  readonly hours: number;
  readonly sizes_um: readonly (number | null | 'nothing')[];
}

const sizeRange = { thrust_play: [110, 330], runout: [6, 40], tip_turbine: [600, 1400] } as const;

function size({ quantity }: Place): fc.Arbitrary<number | 'nothing'> {
  const [min, max] = sizeRange[quantity];
  return fc.oneof(
    { weight: 9, arbitrary: fc.integer({ min, max }) },
    { weight: 1, arbitrary: fc.constant('nothing' as const) },
  );
}

/** Clock readings stand all four or not at all; others may be missing one by one. */
const sizes = fc
  .tuple(
    fc.tuple(...places.map(size)),
    fc.tuple(...places.map(() => fc.integer({ min: 0, max: 9 }))),
    fc.tuple(fc.boolean(), fc.boolean()),
  )
  .map(([all, chance, tips]) =>
    all.map((one, index) => {
      const place = places[index] as Place;
      if (place.quantity === 'tip_turbine') {
        if (!tips[stages.indexOf(place.stage)]) return null;
        return one === 'nothing' ? 777 : one;
      }
      return chance[index] === 0 ? null : one;
    }),
  );

/** Overhauls of up to 3 units with dates and hours that rise. */
export const fleetTable: fc.Arbitrary<readonly TrueOverhaul[]> = fc
  .array(
    fc.array(
      fc.record({
        days: fc.integer({ min: 120, max: 900 }),
        hours: fc.integer({ min: 1500, max: 14_000 }),
        sizes,
      }),
      {
        minLength: 1,
        maxLength: 3,
      },
    ),
    { minLength: 1, maxLength: 3 },
  )
  .map((units) =>
    units.flatMap((jobs, unit) => {
      let [day, hours] = [Date.UTC(2011, 2, 5), 0];
      return jobs.map((job) => {
        day += job.days * 86_400_000;
        hours += job.hours;
        return { unit, day: new Date(day), hours, sizes_um: job.sizes };
      });
    }),
  );
