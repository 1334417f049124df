import { dayOf } from './days';
import { drawsFor } from './draws';
import { dayAtHours } from './meters';
import { type Engine, type Workshop, workshops } from './stations';

/** One opening of one or both turbochargers of an engine. */
export interface Opening {
  readonly engine: Engine;
  readonly day: number;
  readonly banks: readonly string[];
  readonly kind: 'planned' | 'unplanned';
  readonly workshop: Workshop;
}

/** No record of the demo fleet is later than this. */
export const horizon = '2026-10-30';

const shareElsewhere = 0.25;
const chanceUnplanned = 0.06;

/** Openings of an engine until the horizon: one interval after another, 5 % early or late, never outside 8,000 to 16,000 h. */
export function openingsOf(engine: Engine): readonly Opening[] {
  const draws = drawsFor(`schedule/${engine.engine}`);
  const openings: Opening[] = [];
  for (let hours = 0; ; ) {
    const drawn = engine.interval_h * draws.normal(1, 0.05);
    const interval = Math.min(16_000, Math.max(8000, Math.round(drawn)));
    const unplannedAt = hours + interval * (0.3 + 0.4 * draws.uniform());
    const unplannedBank = draws.uniform() < 0.5 ? engine.banks.slice(0, 1) : engine.banks.slice(-1);
    const plannedAt = workshopOf(engine, draws.uniform(), draws.uniform());
    const unplanned = draws.uniform() < chanceUnplanned;
    const unplannedDay = dayAtHours(engine, unplannedAt);
    if (unplanned && unplannedDay <= dayOf(horizon)) {
      openings.push({
        engine,
        day: unplannedDay,
        banks: unplannedBank,
        kind: 'unplanned',
        workshop: engine.mainWorkshop,
      });
    }
    hours += interval;
    const day = dayAtHours(engine, hours);
    if (day > dayOf(horizon)) return openings;
    openings.push({ engine, day, banks: engine.banks, kind: 'planned', workshop: plannedAt });
  }
}

function workshopOf(engine: Engine, elsewhere: number, which: number): Workshop {
  const others = workshops.filter((workshop) => workshop !== engine.mainWorkshop);
  return elsewhere < shareElsewhere
    ? (others[Math.floor(which * others.length)] ?? engine.mainWorkshop)
    : engine.mainWorkshop;
}
