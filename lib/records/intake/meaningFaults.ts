import type { Characteristic } from '../characteristics';
import type { MeaningDecision } from '../decisions/Decision';
import { lengthUnits } from '../lengthUnits';
import { columnRole, partsOf, placeOf } from './columnRoles';
import type { ColumnMeaning } from './types';

/**
 * Why decided meanings cannot hold together, in sentences; empty if they can.
 *
 * @param meanings the columns with the decided meanings in their places
 */
export function meaningFaults(
  meanings: readonly ColumnMeaning[],
  decided: readonly MeaningDecision[],
  characteristics: readonly Characteristic[],
): readonly string[] {
  const known = decided.filter(
    ({ index, role, uom }) =>
      meanings.some((meaning) => meaning.index === index) &&
      columnRole(role) !== null &&
      (uom === null || lengthUnits.some((unit) => unit === uom)),
  );
  const unknown = decided
    .filter((decision) => !known.includes(decision))
    .map(
      ({ column, index, role, uom }) =>
        `‘${column}’ (column ${index + 1}) is said to be ‘${role}’${uom === null ? '' : ` in ‘${uom}’`}, which is not known here.`,
    );
  const said = meanings.filter((meaning) => known.some(({ index }) => index === meaning.index));
  const hasClock = meanings.some(({ role }) => role === 'clock');
  const namesMeasured = meanings.some(({ role }) => role === 'characteristic');
  return [
    ...unknown,
    ...twice(said, placeOf, (role) => `one column only can be read as ${role.replaceAll('_', ' ')}`),
    ...twice(said, readingKey, () => 'they are said to hold the same reading'),
    ...said.flatMap((meaning) => readingFaults(meaning, characteristics, hasClock, namesMeasured)),
  ];
}

function readingKey({ role, characteristic, stage, clock }: ColumnMeaning): string | null {
  return role === 'reading' && characteristic !== null ? [characteristic, stage, clock].join(' ') : null;
}

function twice(
  said: readonly ColumnMeaning[],
  keyOf: (meaning: ColumnMeaning) => string | null,
  why: (role: string) => string,
): readonly string[] {
  const first = new Map<string, ColumnMeaning>();
  return said.flatMap((meaning) => {
    const key = keyOf(meaning);
    if (key === null) return [];
    const before = first.get(key);
    first.set(key, before ?? meaning);
    return before === undefined
      ? []
      : [`‘${before.name}’ and ‘${meaning.name}’: ${why(meaning.role)}. Choose one of them.`];
  });
}

function readingFaults(
  { name, role, characteristic, clock }: ColumnMeaning,
  characteristics: readonly Characteristic[],
  hasClock: boolean,
  namesMeasured: boolean,
): readonly string[] {
  if (!partsOf(role).includes('characteristic')) return [];
  if (characteristic === null) {
    if (role === 'reading') return [`‘${name}’: say which characteristic the reading is of.`];
    return namesMeasured
      ? []
      : [`‘${name}’: say which characteristic the value is of, or which column names it.`];
  }
  const known = characteristics.find(({ code }) => code === characteristic);
  if (known === undefined)
    return [`‘${name}’: the characteristic ‘${characteristic}’ is not known; add it in characteristics.csv.`];
  if (known.shape === 'single' && clock !== null)
    return [`‘${name}’: ${known.name} is one reading and has no clock position.`];
  if (known.shape === 'four_clock' && clock === null && !hasClock)
    return [`‘${name}’: ${known.name} is read at four clock positions; say at which this one was.`];
  return [];
}
