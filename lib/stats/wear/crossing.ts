import { chanceToFill, fillChance } from './mixtureChance';
import { newtonRoot } from './newtonRoot';
import type { LimitSide, LineMixture } from './types';

/** Points at which the chance is looked at; they lie closer near the start of the range. */
const POINTS = 24;
/** Last step of a search, in x: a tenth of a run hour. */
const PRECISION = 1e-5;

interface Look {
  readonly x: number;
  readonly chance: number;
}

/**
 * First x at which the chance of being past the limit reaches each of the given chances, from 'from' to 'to'
 * (x = run hours / 10,000); null if it does not reach it there.
 *
 * The chance need not rise with x: where the slope may be zero or negative it can level off below a given
 * chance or fall again, so the range is looked through from its start and only a crossing that is seen is
 * refined. A chance already reached at 'from' gives 'from'. Throws unless from <= to, both finite.
 */
export function crossings(
  mixture: LineMixture,
  limit_mm: number,
  side: LimitSide,
  chances: readonly number[],
  from: number,
  to: number,
): readonly (number | null)[] {
  if (!(from <= to) || !Number.isFinite(to - from)) {
    throw new Error(`crossings requires a finite range from <= to, got ${from} to ${to}`);
  }
  const found = chanceToFill();
  const direction = side === 'upper' ? -1 : 1;
  const chanceAt = (x: number) => {
    fillChance(found, mixture, x, limit_mm, direction, 0, 0);
    return found.chance;
  };
  const looks = lookThrough(chanceAt, from, to, Math.max(...chances));
  return chances.map((chance) => {
    const after = looks.findIndex((look) => look.chance >= chance);
    if (after < 0) return null;
    const reached = looks[after] as Look;
    const before = looks[after - 1];
    if (!before) return reached.x;
    const share = (chance - before.chance) / (reached.chance - before.chance);
    return newtonRoot(
      (x) => chanceAt(x) - chance,
      () => found.byX,
      before.x + share * (reached.x - before.x),
      before.x,
      reached.x,
      true,
      PRECISION,
    );
  });
}

/** Looks from the start until the highest chance wanted is reached; a peak between looks is looked at too. */
function lookThrough(
  chanceAt: (x: number) => number,
  from: number,
  to: number,
  highest: number,
): readonly Look[] {
  const looks: Look[] = [];
  for (let point = 0; point <= POINTS; point++) {
    const x = from + (to - from) * (point / POINTS) ** 2;
    const look = { x, chance: chanceAt(x) };
    const top = peakBetween(looks.at(-2), looks.at(-1), look);
    if (top !== null)
      looks.splice(top > (looks.at(-1) as Look).x ? looks.length : -1, 0, { x: top, chance: chanceAt(top) });
    looks.push(look);
    if (look.chance >= highest) break;
  }
  return looks;
}

/** Top of the parabola through three looks whose middle one is the highest; null if it is not. */
function peakBetween(one: Look | undefined, two: Look | undefined, three: Look): number | null {
  if (!one || !two || two.chance <= one.chance || two.chance <= three.chance) return null;
  const left = (two.chance - one.chance) / (two.x - one.x);
  const right = (three.chance - two.chance) / (three.x - two.x);
  const bend = (right - left) / (three.x - one.x);
  return (one.x + two.x - left / bend) / 2;
}
