import type { Characteristic } from '../../characteristics';
import type { ColumnRole } from '../types';
import { characteristicOfWord, clockOfWord, kindOfWord, stageOfWord } from './cellWords';
import type { ColumnDraft } from './columnDraft';
import { isFilled, looksLikeDate, looksLikeNumber, shareOf } from './columnShapes';
import { uomOfWord } from './uomWords';

type Shares = Readonly<
  Record<'date' | 'number' | 'digit' | 'characteristic' | 'stage' | 'clock' | 'kind' | 'uom', number>
>;

/** Holds a column's meaning against its texts: takes another role where they speak for it, or lowers the sureness. */
export function checkedByValues(
  draft: ColumnDraft,
  texts: readonly string[],
  characteristics: readonly Characteristic[],
): ColumnDraft {
  if (!isFilled(texts)) return draft;
  const shares = sharesOf(texts, characteristics);
  if (draft.isPartial && shares.stage < 0.9) return draft;
  const other = otherRole(draft, shares);
  if (other !== null) {
    const [role, sureness, why] = other;
    return {
      ...draft,
      role,
      sureness,
      isPartial: false,
      isSettled: role !== 'unused',
      clauses: [...draft.clauses, why],
    };
  }
  const doubt = doubtOf(draft.role, shares);
  return doubt === null
    ? draft
    : { ...draft, sureness: draft.sureness * 0.4, clauses: [...draft.clauses, doubt] };
}

function sharesOf(texts: readonly string[], characteristics: readonly Characteristic[]): Shares {
  // Few different words stand in a column of choices; more texts only cost time.
  const distinct = [...new Set(texts)].slice(0, 40);
  return {
    date: shareOf(texts, (text) => looksLikeDate(text) || /^\d{5}$/.test(text)),
    number: shareOf(texts, looksLikeNumber),
    digit: shareOf(texts, (text) => /\p{N}/u.test(text)),
    characteristic: shareOf(distinct, (text) => characteristicOfWord(text, characteristics) !== null),
    stage: shareOf(distinct, (text) => stageOfWord(text) !== null),
    clock: shareOf(distinct, (text) => clockOfWord(text) !== null),
    kind: shareOf(distinct, (text) => kindOfWord(text) !== null),
    uom: shareOf(distinct, (text) => uomOfWord(text) !== null),
  };
}

type Other = readonly [role: ColumnRole, sureness: number, why: string];

function otherRole(draft: ColumnDraft, shares: Shares): Other | null {
  const { role, isCanonical, isSettled, words } = draft;
  if (role === 'unit' && shares.uom > 0.5) return ['uom', 0.9, 'its texts are units of measure'];
  if (isCanonical) return null;
  const named = roleByTexts(shares);
  if (role === 'unused') {
    // Bare numbers under a header that says nothing may count anything.
    const isOpen = named === null || isSettled || (named[0] === 'clock' && shares.number > 0.5);
    return isOpen ? null : [named[0], named[1] * 0.8, named[2]];
  }
  if (role === 'overhaul' && shares.date > 0.5) return ['date', 0.75, 'its texts are dates'];
  if (role === 'uom' && shares.uom < 0.5) {
    return ['unused', 0.5, 'its texts are no units of measure'];
  }
  if (role === 'kind' || (role === 'frame' && words.concepts.has('type'))) {
    if (shares.kind > 0.5) return ['kind', 0.9, 'its texts say planned or unplanned'];
    if (role === 'kind' && shares.kind === 0)
      return ['unused', 0.5, 'none of its texts says planned or unplanned'];
  }
  const wants: readonly ColumnRole[] = ['characteristic', 'stage', 'clock'];
  if (wants.includes(role) || role === 'value' || (role === 'bank' && shares.clock > 0.7)) {
    if (named !== null) return named[0] === role ? null : named;
    if (!wants.includes(role)) return null;
    if (role === 'characteristic' && shares.number > 0.7) return ['value', 0.6, 'its texts are numbers'];
    if (shares[role as 'stage'] < 0.5) return ['unused', 0.5, `few of its texts name a ${whatOf(role)}`];
  }
  return null;
}

/** Role that the texts of a column show by themselves. */
function roleByTexts(shares: Shares): Other | null {
  if (shares.characteristic >= 0.7) return ['characteristic', 0.85, 'its texts name what was measured'];
  if (shares.stage >= 0.9 && shares.clock < 0.9) return ['stage', 0.85, 'its texts are stages'];
  if (shares.clock >= 0.9 && shares.stage < 0.9) return ['clock', 0.85, 'its texts are clock positions'];
  if (shares.uom >= 0.9) return ['uom', 0.85, 'its texts are units of measure'];
  return null;
}

function whatOf(role: ColumnRole): string {
  return role === 'clock' ? 'clock position' : role;
}

function doubtOf(role: ColumnRole, shares: Shares): string | null {
  if (role === 'date' && shares.date < 0.5) return 'but few of its texts look like dates';
  if ((role === 'unit_hours' || role === 'engine_hours') && shares.number < 0.5) {
    return 'but few of its texts are numbers';
  }
  if ((role === 'reading' || role === 'value') && shares.digit < 0.3)
    return 'but few of its texts are numbers';
  if (role === 'unit' && shares.date > 0.5) return 'but its texts look like dates';
  return null;
}
