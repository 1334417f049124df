import type { TextRow } from './csvText';
import type { Frame } from './stations';

export const partColumns = [
  'part',
  'name',
  'frame',
  'resets',
  'per_unit',
  'lead_time_weeks',
  'unit_cost',
  'currency',
  'on_hand',
  'on_order',
  'due',
];

interface PartKind {
  readonly code: string;
  readonly name: string;
  readonly resets: string;
  readonly perUnit: number;
  readonly leadTime_weeks: number;
  /** Cost of one piece for Lark, Heron, Osprey. */
  readonly cost: readonly [number, number, number];
  readonly onHand: readonly [number, number, number];
  readonly onOrder: readonly [number, number, number];
}

const frames: readonly Frame[] = ['Lark', 'Heron', 'Osprey'];

/** Parts without `resets` are consumables: fitted at every overhaul. Costs and stocks are invented. */
const kinds: readonly PartKind[] = [
  {
    code: 'TB',
    name: 'Thrust bearing',
    resets: 'thrust_play',
    perUnit: 1,
    leadTime_weeks: 18,
    cost: [1480, 2260, 3890],
    onHand: [2, 2, 1],
    onOrder: [0, 2, 0],
  },
  {
    code: 'SR',
    name: 'Shroud ring, turbine side',
    resets: 'tip_turbine_largest;tip_turbine_smallest',
    perUnit: 1,
    leadTime_weeks: 30,
    cost: [2350, 3720, 6140],
    onHand: [1, 1, 0],
    onOrder: [0, 0, 0],
  },
  {
    code: 'IR',
    name: 'Insert ring, compressor side',
    resets: 'tip_compressor_largest;tip_compressor_smallest',
    perUnit: 1,
    leadTime_weeks: 24,
    cost: [1120, 1790, 2950],
    onHand: [1, 1, 1],
    onOrder: [0, 0, 0],
  },
  {
    code: 'RS',
    name: 'Rotor shaft with turbine wheel',
    resets: 'runout',
    perUnit: 1,
    leadTime_weeks: 52,
    cost: [18_600, 29_400, 47_500],
    onHand: [0, 0, 0],
    onOrder: [0, 0, 0],
  },
  {
    code: 'GS',
    name: 'Gasket set',
    resets: '',
    perUnit: 1,
    leadTime_weeks: 6,
    cost: [210, 290, 415],
    onHand: [4, 5, 3],
    onOrder: [6, 8, 6],
  },
  {
    code: 'JB',
    name: 'Journal bearing bush',
    resets: '',
    perUnit: 2,
    leadTime_weeks: 16,
    cost: [540, 760, 1180],
    onHand: [6, 8, 4],
    onOrder: [0, 8, 8],
  },
];

const due = '2027-01-18';

/** Rows of parts.csv. */
export const partRows: readonly TextRow[] = kinds.flatMap((kind) =>
  frames.map((frame, index) => ({
    part: `${kind.code}-${frame.slice(0, 1)}`,
    name: kind.name,
    frame,
    resets: kind.resets,
    per_unit: String(kind.perUnit),
    lead_time_weeks: String(kind.leadTime_weeks),
    unit_cost: (kind.cost[index] ?? 0).toFixed(2),
    currency: 'EUR',
    on_hand: String(kind.onHand[index]),
    on_order: String(kind.onOrder[index]),
    due: (kind.onOrder[index] ?? 0) > 0 ? due : '',
  })),
);
