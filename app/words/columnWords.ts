import type { ColumnMeaning, FleetResult } from '../../lib/analysis/types';
import type { MeaningDecision } from '../../lib/records/decisions/Decision';
import { columnRole } from '../../lib/records/intake/columnRoles';
import { type LengthUnit, lengthUnits } from '../../lib/records/lengthUnits';
import { midSentence, seriesName } from './seriesName';

const roles: Readonly<Record<ColumnMeaning['role'], string>> = {
  overhaul: 'overhaul',
  unit: 'unit',
  frame: 'frame',
  date: 'date',
  unit_hours: 'hours of the unit',
  engine_hours: 'hours of the engine',
  site: 'site',
  engine: 'engine',
  bank: 'bank',
  workshop: 'workshop',
  kind: 'kind of overhaul',
  fitted: 'parts fitted',
  remarks: 'remarks',
  revision: 'revision',
  reading: 'reading',
  characteristic: 'characteristic',
  stage: 'as found or as left',
  clock: 'clock position',
  value: 'value of the reading',
  uom: 'unit of measure',
  lower: 'lower end of the reading',
  upper: 'upper end of the reading',
  unused: 'not used',
};

const units: Readonly<Record<LengthUnit, string>> = {
  mm: 'mm',
  um: 'µm',
  in: 'in',
  mil: 'mil',
  '0.01mm': '0.01\u00a0mm',
};

const lengthRoles: ReadonlySet<ColumnMeaning['role']> = new Set(['reading', 'value', 'lower', 'upper']);

function readingWords(meaning: ColumnMeaning, characteristics: FleetResult['characteristics']): string[] {
  const { characteristic, stage, clock, viewingEndOpen } = meaning;
  const words = [
    characteristic === null ? roles.reading : midSentence(seriesName(characteristic, characteristics)),
    stage === null ? 'as found or as left not in the header' : `as ${stage}`,
  ];
  if (clock !== null)
    words.push(`${clock} o’clock${viewingEndOpen ? ' if seen from the compressor end' : ''}`);
  return words;
}

/** A role in words. */
export function roleWords(role: ColumnMeaning['role']): string {
  return roles[role];
}

/** A unit of measure as it is written. */
export function uomWords(unit: LengthUnit): string {
  return units[unit];
}

/** What a column was read as: 'thrust play, as found, mm', 'date', 'not used'. */
export function columnWords(meaning: ColumnMeaning, characteristics: FleetResult['characteristics']): string {
  const words = meaning.role === 'reading' ? readingWords(meaning, characteristics) : [roles[meaning.role]];
  if (lengthRoles.has(meaning.role))
    words.push(meaning.uom === null ? 'unit of measure not in the header' : units[meaning.uom]);
  return words.join(', ');
}

/** What a person said a column is; an unknown role or unit of measure, from a file, stands as it is. */
export function saidWords(said: MeaningDecision): string {
  const unit = lengthUnits.find((one) => one === said.uom);
  const place = [
    said.characteristic?.replaceAll('_', ' '),
    said.stage === null ? undefined : `as ${said.stage}`,
    said.clock === null ? undefined : `${said.clock} o’clock`,
    unit === undefined ? (said.uom ?? undefined) : units[unit],
  ];
  const role = columnRole(said.role);
  return [role === null ? said.role : roles[role], ...place].filter((word) => word !== undefined).join(', ');
}

/** How sure a meaning is, in words: certain from 0.9, likely from 0.6, a guess below. */
export function surenessWords(sureness: number): 'certain' | 'likely' | 'a guess' {
  if (sureness >= 0.9) return 'certain';
  return sureness >= 0.6 ? 'likely' : 'a guess';
}
