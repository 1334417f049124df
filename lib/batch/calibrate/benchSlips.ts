import { checkReadings } from '../../analysis/bench/checkReadings';
import { typedReading } from '../../analysis/bench/typedReading';
import { type MadeOverhaul, madeOverhauls } from './madeOverhauls';
import { seededDraws } from './seededDraws';

/** Slips of one kind that change a reading by more than 5 noise standard deviations, and how many were questioned. */
export interface SlipsCaught {
  readonly slip: string;
  readonly slips: number;
  readonly caught: number;
}

/** What the check of typed readings does with slips and with right readings. */
export interface BenchSlips {
  readonly fleets: number;
  readonly units: number;
  readonly rows: readonly SlipsCaught[];
  readonly rightReadings: number;
  readonly rightQuestioned: number;
}

/** Slips at or below this are within what gauges scatter, noise SDs. */
const leastSlip_sd = 5;

type Texts = ReadonlyMap<string, string>;
/** Texts that are typed in place of the right ones, or null where the slip does not apply. */
type Slip = (texts: Texts, overhaul: MadeOverhaul, uniform: () => number) => Texts | null;

function oneOf<T>(all: readonly T[], uniform: () => number): T | undefined {
  return all[Math.floor(uniform() * all.length)];
}

function scaledBy(factor: number): Slip {
  return (texts, { right }, uniform) => {
    const box = oneOf([...texts.keys()], uniform) ?? '';
    const value = (right.get(box) ?? 0) * factor;
    return value > 0 ? new Map([[box, String(Number(value.toPrecision(4)))]]) : null;
  };
}

function clocksExchanged(one: string, other: string): Slip {
  return (texts, { basis }, uniform) => {
    const stage = uniform() < 0.5 ? 'found' : 'left';
    const [a, b] = [one, other].map((clock) => `${basis.characteristic} ${stage} ${clock}`) as [
      string,
      string,
    ];
    const [first, second] = [texts.get(a), texts.get(b)];
    return first === undefined || second === undefined
      ? null
      : new Map([
          [a, second],
          [b, first],
        ]);
  };
}

const stagesExchanged: Slip = (texts) => {
  const turned = [...texts.keys()].map(
    (box) =>
      [
        box,
        texts.get(box.includes(' found') ? box.replace(' found', ' left') : box.replace(' left', ' found')) ??
          '',
      ] as const,
  );
  return new Map(turned);
};

const digitsExchanged: Slip = (texts, _, uniform) => {
  const box = oneOf([...texts.keys()], uniform) ?? '';
  const text = texts.get(box) ?? '';
  const at = Math.floor(uniform() * (text.length - 1));
  const next = text[at + 1] === '.' ? at + 2 : at + 1;
  if (text[at] === '.' || text[next] === undefined || text[at] === text[next]) return null;
  return new Map([
    [box, `${text.slice(0, at)}${text[next]}${text.slice(at + 1, next)}${text[at]}${text.slice(next + 1)}`],
  ]);
};

const slips: readonly (readonly [name: string, kinds: readonly Slip[]])[] = [
  ['Scale: 10, 100 or 1000 times, or a part of it', [10, 100, 1000, 0.1, 0.01, 0.001].map(scaledBy)],
  ['Scale: inches or thou for millimetres', [1 / 25.4, 1000 / 25.4].map(scaledBy)],
  ['Opposite clock positions exchanged', [clocksExchanged('12', '6'), clocksExchanged('3', '9')]],
  [
    'Neighbouring clock positions exchanged',
    [['12', '3'] as const, ['3', '6'] as const, ['6', '9'] as const, ['9', '12'] as const].map(([a, b]) =>
      clocksExchanged(a, b),
    ),
  ],
  ['As found and as left exchanged', [stagesExchanged]],
  ['Two digits exchanged', [digitsExchanged]],
];

/** Names of the boxes that the check questions when these texts are typed. */
function questioned({ basis }: MadeOverhaul, texts: Texts): ReadonlySet<string> {
  const typed = new Map([...texts].map(([box, text]) => [box, typedReading(text, 'mm')]));
  const checks = checkReadings([basis], typed);
  return new Set(
    checks.filter(({ doubts, unreadable }) => doubts.length > 0 || unreadable !== null).map(({ box }) => box),
  );
}

/**
 * Types the next overhaul of every unit of made-up groups right and with one slip of each kind, and counts what is questioned.
 *
 * A slip counts if it changes a reading by more than 5 of the standard deviations that its gauge truly has; it is caught if
 * one of the boxes that it changes is questioned.
 */
export function benchSlips(fleets: number, units: number, seed = 1): BenchSlips {
  const { uniform } = seededDraws(seed + 7_000);
  const counts = slips.map(([slip]) => ({ slip, slips: 0, caught: 0 }));
  let [rightReadings, rightQuestioned] = [0, 0];
  for (let fleet = 0; fleet < fleets; fleet++) {
    for (const overhaul of madeOverhauls(1_000 * seed + fleet, units)) {
      const texts = new Map(
        [...overhaul.right].map(([box, value]) => [box, value.toFixed(overhaul.decimals)]),
      );
      rightReadings += texts.size;
      rightQuestioned += questioned(overhaul, texts).size;
      slips.forEach(([, kinds], index) => {
        const changed = oneOf(kinds, uniform)?.(texts, overhaul, uniform) ?? null;
        const count = counts[index];
        if (changed === null || count === undefined || !isLarge(changed, overhaul)) return;
        const asked = questioned(overhaul, new Map([...texts, ...changed]));
        count.slips += 1;
        if ([...changed.keys()].some((box) => asked.has(box))) count.caught += 1;
      });
    }
  }
  return { fleets, units, rows: counts, rightReadings, rightQuestioned };
}

function isLarge(changed: Texts, { right, noise_mm }: MadeOverhaul): boolean {
  return [...changed].some(
    ([box, text]) => Math.abs(Number(text) - (right.get(box) ?? 0)) > leastSlip_sd * noise_mm,
  );
}
