import type { Characteristic } from '../../characteristics';
import type { ColumnRole } from '../types';
import type { ColumnDraft } from './columnDraft';
import { lookLikeHours, looksLikeCode, looksLikeDate, looksLikeNumber, shareOf } from './columnShapes';

/** Gives a missing date, unit, hours or value to the one column whose texts look like it and whose header says nothing. */
export function filledByValues(
  drafts: readonly ColumnDraft[],
  samples: readonly (readonly string[])[],
): readonly ColumnDraft[] {
  const lookFor: readonly (readonly [ColumnRole, string, (texts: readonly string[]) => boolean])[] = [
    ['date', 'its texts look like dates', (texts) => shareOf(texts, looksLikeDate) >= 0.8],
    ['unit', 'its texts look like serials that return', repeatingCodes],
    ['unit_hours', 'its texts are large whole numbers, taken as hours of the unit', lookLikeHours],
    ['value', 'its texts are numbers', (texts) => shareOf(texts, looksLikeNumber) >= 0.8],
  ];
  return lookFor.reduce((current, [role, why, test]) => {
    const isWanted =
      role === 'value'
        ? has(current, 'characteristic') && !has(current, 'value')
        : !has(current, role) && !(role === 'unit_hours' && has(current, 'engine_hours'));
    const able = current.filter(
      (draft) =>
        draft.role === 'unused' &&
        !draft.isSettled &&
        (!draft.isPartial || draft.words.reading.clockIsBare) &&
        test(samples[draft.index] ?? []),
    );
    const [only] = able;
    if (!isWanted || able.length !== 1 || only === undefined) return current;
    return current.map((draft) =>
      draft === only
        ? { ...draft, role, sureness: 0.4, clauses: [...draft.clauses, why], isSettled: true }
        : draft,
    );
  }, drafts);
}

function has(drafts: readonly ColumnDraft[], role: ColumnRole): boolean {
  return drafts.some((draft) => draft.role === role);
}

function repeatingCodes(texts: readonly string[]): boolean {
  const filled = texts.filter((text) => text.trim() !== '');
  return shareOf(filled, looksLikeCode) >= 0.8 && new Set(filled).size < filled.length;
}

/** Takes every role back from a sheet without readings, and such roles as have nothing to stand for. */
export function onlyWithReadings(drafts: readonly ColumnDraft[]): readonly ColumnDraft[] {
  const isLong = has(drafts, 'characteristic');
  const lengths: readonly ColumnRole[] = ['value', 'lower', 'upper', 'uom'];
  const fits = drafts.map((draft) => {
    const without =
      lengths.includes(draft.role) && !draft.isCanonical && !isLong && !isIntervalEnd(draft)
        ? unused(draft, 'but no column says what was measured')
        : draft;
    return draft.isPartial && draft.role === 'unused'
      ? unused(without, 'a stage or position without a characteristic')
      : without;
  });
  const hasReadings = has(fits, 'reading') || (isLong && lengths.some((role) => has(fits, role)));
  const canonical = fits.filter((draft) => draft.isCanonical).map((draft) => draft.role);
  const isOverhaulTable = ['unit', 'date', 'overhaul'].every((role) =>
    canonical.includes(role as ColumnRole),
  );
  return hasReadings || isOverhaulTable
    ? fits
    : fits.map((draft) =>
        draft.role === 'unused'
          ? draft
          : unused(draft, 'but no column holds readings of a known characteristic'),
      );
}

function isIntervalEnd(draft: ColumnDraft): boolean {
  return (draft.role === 'lower' || draft.role === 'upper') && draft.characteristic !== null;
}

function unused(draft: ColumnDraft, why: string): ColumnDraft {
  return {
    ...draft,
    role: 'unused',
    characteristic: null,
    stage: null,
    clock: null,
    viewingEndOpen: false,
    uom: null,
    sureness: Math.min(draft.sureness, 0.5),
    clauses: [...draft.clauses, why],
  };
}

const shared: readonly ColumnRole[] = ['unused', 'remarks', 'reading', 'lower', 'upper'];

/** Of two columns with one role the surer keeps it (the first of equals), the other says why not. */
export function oneColumnARole(drafts: readonly ColumnDraft[]): readonly ColumnDraft[] {
  return drafts.map((draft) => {
    if (shared.includes(draft.role)) return draft;
    const rivals = drafts.filter((other) => other !== draft && roleKey(other) === roleKey(draft));
    const winner = rivals.find(
      (other) =>
        other.sureness > draft.sureness || (other.sureness === draft.sureness && other.index < draft.index),
    );
    return winner === undefined
      ? draft
      : unused(draft, `but column "${winner.name}" is surer or comes first`);
  });
}

function roleKey(draft: ColumnDraft): string {
  return [draft.role, draft.stage, draft.clock].join(' ');
}

/** Lowers the sureness of readings that leave open what the sheet says nowhere, or that stand there twice. */
export function doubtedReadings(
  drafts: readonly ColumnDraft[],
  characteristics: readonly Characteristic[],
): readonly ColumnDraft[] {
  const readings = drafts.filter((draft) => draft.role === 'reading');
  const keyOf = (draft: ColumnDraft) => [draft.characteristic, draft.stage, draft.clock, draft.end].join(' ');
  return drafts.map((draft) => {
    if (draft.role !== 'reading' || draft.isCanonical) return draft;
    const { reading, uom } = draft.words;
    const isSingle =
      characteristics.find((candidate) => candidate.code === draft.characteristic)?.shape === 'single';
    const twin = readings.find((other) => other !== draft && keyOf(other) === keyOf(draft));
    const doubts: readonly (readonly [boolean, number, string])[] = [
      [reading.stageContradicts, 0.4, 'as found and as left are both named'],
      [draft.stage === null && !has(drafts, 'stage'), 0.5, 'as found or as left is not said'],
      [!isSingle && draft.clock === null && !has(drafts, 'clock'), 0.4, 'the clock position is not said'],
      [
        isSingle && reading.clock !== null && !reading.clockIsBare,
        0.4,
        'a clock position of a single reading',
      ],
      [uom === 'unknown', 0.4, 'its unit of measure is none that readings are taken in'],
      [twin !== undefined, 0.3, `column "${twin?.name ?? ''}" seems to hold the same reading`],
    ];
    const held = doubts.filter(([applies]) => applies);
    return {
      ...draft,
      clock: isSingle ? null : draft.clock,
      viewingEndOpen: isSingle ? false : draft.viewingEndOpen,
      sureness: Math.min(draft.sureness, ...held.map(([, most]) => most)),
      clauses: [...draft.clauses, ...held.map(([, , why]) => why)],
    };
  });
}
