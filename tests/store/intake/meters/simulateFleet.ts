/** A meter as it stands: true hours of the engine less what the meter shows. */
interface Engine {
  readonly name: string;
  readonly rate_h_per_day: number;
  true_h: number;
  offset_h: number;
  unit: Unit;
  /** Notes that the next overhaul on the engine carries. */
  notes: string[];
}

interface Unit {
  readonly name: string;
  hours: number;
  /** True hours of the engine and unit hours when it was fitted last. */
  engineAtFit_h: number;
  hoursAtFit: number;
  /** Note on its last fitting, which its next overhaul carries. */
  note: string | null;
  engine: string | null;
}

export interface Stay {
  readonly unit: string;
  readonly engine: string;
  readonly from: string;
  to: string | null;
  readonly meter_h: number;
  readonly unit_h: number;
}

/** What a fleet of engines left behind: readings of meters with their remarks, stays, events, and the true unit hours. */
export interface SimulatedFleet {
  readonly overhauls: readonly {
    readonly unit: string;
    readonly engine: string;
    readonly date: string;
    readonly meter_h: number;
    readonly remarks: string;
    readonly true_h: number;
  }[];
  readonly stays: readonly Stay[];
  readonly events: readonly {
    readonly date: string;
    readonly engine: string;
    readonly kind: string;
    readonly value: number;
  }[];
}

/** One day's happening on one engine. */
export interface Happening {
  readonly days: number;
  readonly engine: number;
  readonly kind: 'overhaul' | 'replace' | 'correct' | 'exchange';
  /** 0 to 1: hours of a new meter, of a correction, of a unit that is new to the fleet. */
  readonly size: number;
  /** Whether an exchange takes a unit from the shelf rather than one new to the fleet. */
  readonly fromShelf: boolean;
}

const dayOf = (day: number) => new Date(Date.UTC(2010, 0, 1 + day)).toISOString().slice(0, 10);
const quarters = (hours: number) => Math.round(hours * 4) / 4;

/**
 * Runs engines and their units forward day by day. Hours are multiples of a quarter, so that sums are exact; every engine
 * and its first unit start at 0 h, units that leave go to a shelf and are read on the day.
 *
 * @param rates_h_per_day running hours a day of each engine, multiples of a quarter above 0
 */
export function simulateFleet(
  rates_h_per_day: readonly number[],
  happenings: readonly Happening[],
): SimulatedFleet {
  const overhauls: SimulatedFleet['overhauls'][number][] = [];
  const stays: Stay[] = [];
  const events: SimulatedFleet['events'][number][] = [];
  const shelf: Unit[] = [];
  let units = 0;
  let today = 0;
  const newUnit = (hours: number): Unit => ({
    name: `P-${++units}`,
    hours,
    engineAtFit_h: 0,
    hoursAtFit: hours,
    note: null,
    engine: null,
  });
  const engines = rates_h_per_day.map((rate_h_per_day, index): Engine => {
    const unit = newUnit(0);
    const name = `ENG-${index + 1}`;
    stays.push({ unit: unit.name, engine: name, from: dayOf(0), to: null, meter_h: 0, unit_h: 0 });
    unit.engine = name;
    return { name, rate_h_per_day, true_h: 0, offset_h: 0, unit, notes: [] };
  });
  const meterOf = (engine: Engine) => engine.true_h - engine.offset_h;
  const overhaul = (engine: Engine) => {
    const { unit } = engine;
    const remarks = [...engine.notes, ...(unit.note === null ? [] : [unit.note])].join('. ');
    engine.notes = [];
    unit.note = null;
    const true_h = unit.hoursAtFit + engine.true_h - unit.engineAtFit_h;
    overhauls.push({
      unit: unit.name,
      engine: engine.name,
      date: dayOf(today),
      meter_h: meterOf(engine),
      remarks,
      true_h,
    });
    unit.hours = true_h;
  };
  const exchange = (engine: Engine, { size, fromShelf }: Happening) => {
    overhaul(engine);
    const leaving = engine.unit;
    (stays.findLast((stay) => stay.unit === leaving.name) as Stay).to = dayOf(today);
    const known = fromShelf ? shelf.shift() : undefined;
    const coming = known ?? newUnit(quarters(size * 40_000));
    const meter_h = meterOf(engine);
    coming.note =
      known === undefined
        ? `unit exchanged ${dayOf(today)}; this one came with ${coming.hours} h`
        : `was on ${coming.engine}; fitted here ${dayOf(today)} at ${meter_h}`;
    coming.engineAtFit_h = engine.true_h;
    coming.hoursAtFit = coming.hours;
    coming.engine = engine.name;
    stays.push({
      unit: coming.name,
      engine: engine.name,
      from: dayOf(today),
      to: null,
      meter_h,
      unit_h: coming.hours,
    });
    engine.unit = coming;
    shelf.push(leaving);
  };
  const run = (days: number) => {
    today += days;
    for (const engine of engines) engine.true_h += days * engine.rate_h_per_day;
  };
  for (const happening of happenings) {
    run(happening.days);
    const engine = engines[happening.engine % engines.length] as Engine;
    const meter_h = meterOf(engine);
    if (happening.kind === 'overhaul') overhaul(engine);
    if (happening.kind === 'exchange') exchange(engine, happening);
    if (happening.kind === 'replace') {
      const start_h = quarters(happening.size * Math.min(50, meter_h / 2));
      events.push({
        date: dayOf(today),
        engine: engine.name,
        kind: 'meter_replaced',
        value: meter_h - start_h,
      });
      engine.notes.push(`meter replaced ${dayOf(today)} at ${meter_h} h; the new one starts at ${start_h} h`);
      engine.offset_h = engine.true_h - start_h;
    }
    if (happening.kind === 'correct') {
      const value = quarters((happening.size - 0.5) * Math.min(600, meter_h));
      events.push({ date: dayOf(today), engine: engine.name, kind: 'meter_corrected', value });
      engine.notes.push(`meter corrected by ${value < 0 ? '' : '+'}${value} h on ${dayOf(today)}`);
      engine.offset_h += value;
    }
  }
  for (const engine of engines) {
    run(1);
    overhaul(engine);
  }
  return { overhauls, stays, events };
}
