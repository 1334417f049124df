import chiSquareQuantile from '@stdlib/stats-base-dists-chisquare-quantile';
import type { ClockForecast } from './clockForecast';

/** What is wrong with a set of clock readings, by the look of it. Positions count from 0: 12, 3, 6, 9 o'clock. */
export type ClockSetDoubt =
  | { readonly kind: 'exchanged'; readonly positions: readonly [number, number] }
  | {
      readonly kind: 'position';
      readonly position: number;
      /** What the other positions say of it, mm. */
      readonly expected_mm: number;
      readonly sd_mm: number;
    };

/** A right set is doubted as often as a normal score lies beyond 3. */
const doubted = 0.9973;
/** Share of right sets that an explanation would be accepted for. */
const explained = 0.95;
const critical = [0, 1, 2, 3].map((df) => (df === 0 ? 0 : chiSquareQuantile(doubted, df)));
const usual = [0, 1, 2, 3].map((df) => (df === 0 ? 0 : chiSquareQuantile(explained, df)));

/**
 * Whether the positions of a set fit each other: chi-square of the readings less their expected departures about their mean, with
 * one degree of freedom less than there are readings, beyond its 99.73 % point.
 *
 * Two positions are named as exchanged if the set fits (95 % point) the other way round and not without one of them; else
 * the position without which the rest fits best. Null where the set fits or holds under 3 readings.
 *
 * @param readings_mm in order of 12, 3, 6, 9 o'clock; null where there is none
 */
export function clockSetDoubt(
  readings_mm: readonly (number | null)[],
  { departures_mm, sd_mm }: ClockForecast,
): ClockSetDoubt | null {
  const read = readings_mm.flatMap((value, position) => (value === null ? [] : [{ position, value }]));
  if (read.length < 3) return null;
  const rest = (all: typeof read) => all.map((one) => one.value - (departures_mm[one.position] ?? 0));
  const written = misfit(rest(read), sd_mm);
  if (!(written > (critical[read.length - 1] as number))) return null;
  const without = read
    .map(({ position }) => ({
      position,
      misfit: misfit(rest(read.filter((one) => one.position !== position)), sd_mm),
    }))
    .reduce((best, one) => (one.misfit < best.misfit ? one : best));
  const turned = read
    .flatMap((one, index) => read.slice(index + 1).map((other) => [one, other] as const))
    .map(([one, other]) => ({
      positions: [one.position, other.position] as const,
      misfit: misfit(
        rest(
          read.map((each) =>
            each === one
              ? { ...each, value: other.value }
              : each === other
                ? { ...each, value: one.value }
                : each,
          ),
        ),
        sd_mm,
      ),
    }))
    .reduce((best, one) => (one.misfit < best.misfit ? one : best));
  const fitsTurned = turned.misfit <= (usual[read.length - 1] as number);
  const fitsWithout = without.misfit <= (usual[read.length - 2] as number);
  if (fitsTurned && !fitsWithout) return { kind: 'exchanged', positions: turned.positions };
  const others = rest(read.filter((one) => one.position !== without.position));
  const mean = others.reduce((sum, one) => sum + one, 0) / others.length;
  return {
    kind: 'position',
    position: without.position,
    expected_mm: mean + (departures_mm[without.position] ?? 0),
    sd_mm: sd_mm * Math.sqrt(1 + 1 / others.length),
  };
}

/** Sum of squares about the mean, in variances. */
function misfit(values: readonly number[], sd: number): number {
  const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
  return values.reduce((sum, one) => sum + ((one - mean) / sd) ** 2, 0);
}
