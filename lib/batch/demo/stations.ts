/** Frames are named after birds; like every name here they are invented. Kestrel is the frame of the example sheet only. */
export type Frame = 'Lark' | 'Heron' | 'Osprey' | 'Kestrel';
export type Workshop = (typeof workshops)[number];

export const workshops = ['Merrow Works', 'Dunlin Service', 'Kittiwake Yard', 'Fulmar Rotor Shop'] as const;

/** One engine: its banks, first day, meter then, duty and the planned hours between overhauls. */
export interface Engine {
  readonly engine: string;
  readonly site: string;
  readonly frame: Frame;
  readonly mainWorkshop: Workshop;
  readonly banks: readonly string[];
  readonly commissioned: string;
  readonly meterAtStart_h: number;
  readonly hoursPerYear: number;
  readonly interval_h: number;
}

interface Station {
  readonly site: string;
  readonly code: string;
  readonly frame: Frame;
  readonly mainWorkshop: Workshop;
  /** Banks, first day, meter on that day, hours a year, interval. */
  readonly engines: readonly (readonly ['A' | 'AB', string, number, number, number])[];
}

const fleetStations: readonly Station[] = [
  {
    site: 'Skua Head',
    code: 'SKU',
    frame: 'Heron',
    mainWorkshop: 'Merrow Works',
    engines: [
      ['AB', '2014-01-20', 38, 7450, 12_000],
      ['AB', '2014-02-17', 41, 7300, 12_000],
      ['AB', '2014-03-17', 36, 6900, 12_000],
      ['AB', '2014-05-05', 40, 6450, 12_000],
      ['AB', '2014-06-16', 52, 6100, 14_000],
      ['AB', '2014-08-04', 44, 5850, 14_000],
    ],
  },
  {
    site: 'Port Merrow',
    code: 'MER',
    frame: 'Osprey',
    mainWorkshop: 'Merrow Works',
    engines: [
      ['AB', '2014-09-01', 60, 7100, 12_000],
      ['AB', '2014-09-29', 58, 7000, 12_000],
      ['AB', '2014-11-10', 63, 6600, 12_000],
      ['AB', '2015-01-12', 57, 6300, 12_000],
      ['AB', '2015-03-02', 66, 6000, 16_000],
      ['AB', '2015-04-13', 61, 5600, 16_000],
    ],
  },
  {
    site: 'Vellen Bay',
    code: 'VEL',
    frame: 'Lark',
    mainWorkshop: 'Dunlin Service',
    engines: [
      ['AB', '2014-02-03', 22, 5200, 8000],
      ['AB', '2014-02-24', 25, 5000, 8000],
      ['A', '2014-03-31', 24, 4700, 8000],
      ['A', '2014-04-28', 21, 4550, 10_000],
    ],
  },
  {
    // Engines far older than their turbochargers: the meter and the unit's hours differ by some 40,000 h.
    site: 'Auk Sound',
    code: 'AUK',
    frame: 'Heron',
    mainWorkshop: 'Kittiwake Yard',
    engines: [
      ['AB', '2015-02-09', 41_350, 6700, 12_000],
      ['AB', '2015-03-23', 39_870, 6500, 12_000],
      ['AB', '2015-05-11', 40_940, 6200, 10_000],
      ['AB', '2015-08-17', 37_620, 5900, 10_000],
      ['A', '2015-10-05', 36_110, 5400, 10_000],
    ],
  },
  {
    site: 'Greyling Ness',
    code: 'GRY',
    frame: 'Lark',
    mainWorkshop: 'Fulmar Rotor Shop',
    engines: [
      ['AB', '2014-06-09', 30, 6000, 10_000],
      ['AB', '2014-07-07', 27, 5800, 10_000],
      ['AB', '2014-08-25', 33, 5500, 10_000],
      ['AB', '2014-10-13', 29, 5100, 8000],
    ],
  },
  {
    site: 'Tarrow',
    code: 'TAR',
    frame: 'Osprey',
    mainWorkshop: 'Kittiwake Yard',
    engines: [
      ['AB', '2016-04-04', 55, 6800, 14_000],
      ['A', '2016-05-23', 49, 6500, 14_000],
      ['A', '2016-07-18', 51, 6200, 12_000],
    ],
  },
];

/** The station of the example sheet: not part of the fleet. */
const exampleStation: Station = {
  site: 'Gull Rock',
  code: 'GUL',
  frame: 'Kestrel',
  mainWorkshop: 'Dunlin Service',
  engines: [
    ['AB', '2019-03-11', 20, 6400, 14_000],
    ['AB', '2019-04-29', 18, 6100, 14_000],
    ['AB', '2019-06-17', 23, 5700, 12_000],
    ['AB', '2019-09-02', 19, 5300, 12_000],
  ],
};

function enginesOf({ site, code, frame, mainWorkshop, engines }: Station): readonly Engine[] {
  return engines.map(([banks, commissioned, meterAtStart_h, hoursPerYear, interval_h], index) => ({
    engine: `${code}-${index + 1}`,
    site,
    frame,
    mainWorkshop,
    banks: [...banks],
    commissioned,
    meterAtStart_h,
    hoursPerYear,
    interval_h,
  }));
}

export const fleetEngines: readonly Engine[] = fleetStations.flatMap(enginesOf);
export const exampleEngines: readonly Engine[] = enginesOf(exampleStation);

const serialPrefix: Readonly<Record<Frame, string>> = {
  Lark: 'L-11',
  Heron: 'H-20',
  Osprey: 'O-30',
  Kestrel: 'K-40',
};

/** Serial of the nth unit of a frame, from 1. */
export function serialOf(frame: Frame, number: number): string {
  return `${serialPrefix[frame]}${String(number).padStart(2, '0')}`;
}

/** The engine of that name. */
export function engineNamed(name: string): Engine {
  const found = fleetEngines.find((candidate) => candidate.engine === name);
  if (found === undefined) throw new Error(`engineNamed requires an engine of the demo fleet, got '${name}'`);
  return found;
}
