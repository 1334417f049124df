import type { Problem } from '../../lib/analysis/types';
import { formatCount, formatDate, formatMoment } from '../../lib/charts/format';
import type { Decision, JournalEntry, RulingDecision } from '../../lib/records/decisions/Decision';
import { saidWords } from './columnWords';
import { counted } from './counted';
import { changedWords, rowName, rowWords } from './rowWords';
import { siteFleetName } from './siteFleet';

/** Where a ruling or a held row belongs: 'line 3 of a.csv, column ‘value’'. */
export function placeWords(file: string, line: number, column: string): string {
  return `line ${line} of ${file}, ${column === '' ? 'the whole line' : `column ‘${column}’`}`;
}

/** What is ruled, without its reason: 'to be read as ‘0.31’'. */
export function ruledWords({ ruling, text }: Pick<RulingDecision, 'ruling' | 'text'>): string {
  if (ruling === 'edit') return text === '' ? 'read as empty' : `read as ‘${text}’`;
  return ruling === 'release' ? 'used as it stands' : 'left out';
}

/** What a decision is about. */
export function aboutWords(decision: Decision): string {
  switch (decision.kind) {
    case 'answer':
      return `${decision.question} (${decision.file}${decision.column === '' ? '' : `, column ‘${decision.column}’`})`;
    case 'meaning':
      return `what column ‘${decision.column}’ of ${decision.file} holds`;
    case 'acknowledgement':
      return `signals of ${decision.unit}, ${decision.series.replaceAll('_', ' ')}, up to ${formatDate(decision.upTo)}${decision.source === 'demo' ? ` (${siteFleetName()})` : ''}`;
    case 'ruling': {
      const { file, line, column, raw } = decision;
      return `${placeWords(file, line, column)}: ${raw === '' ? 'empty' : `‘${raw}’`}`;
    }
    case 'table':
      return `row ${rowName(decision.key)} of ${decision.table}`;
  }
}

/** What was decided. */
export function decidedWords(decision: Decision): string {
  switch (decision.kind) {
    case 'answer':
      return decision.answer;
    case 'meaning':
      return saidWords(decision);
    case 'acknowledgement':
      return `acknowledged: ${decision.remark}`;
    case 'ruling':
      return `${ruledWords(decision)}: ${decision.reason}`;
    case 'table':
      return rowWords(decision.table, decision.cells);
  }
}

/** What was done with an entry of the journal: 'decided', or 'undone (what was done with number 4)'. */
export function actWords({ act, undoes, redoes }: JournalEntry): string {
  if (undoes !== undefined) return `undone (what was done with number ${undoes})`;
  return redoes === undefined ? act : `done again (what was done with number ${redoes})`;
}

/** What held before an entry of the journal. */
export function beforeWords({ before, act, decision }: JournalEntry): string {
  if (decision.kind === 'table') return changedWords(decision, act, before).before;
  return before === null ? 'nothing decided' : decidedWords(before);
}

/** What holds after an entry of the journal. */
export function afterWords({ act, decision, before }: JournalEntry): string {
  if (decision.kind === 'table') return changedWords(decision, act, before).after;
  return act === 'decided' ? decidedWords(decision) : 'nothing decided';
}

/** A journal's time: '2026-03-01 08:00 UTC'. */
export function timeWords(at: string): string {
  return formatMoment(at);
}

/** How far the ruling has come: '2 rulings are not applied yet.' */
export function ruledSentence(ruled: number, selected: number): string {
  const rulings =
    ruled === 0
      ? 'No ruling is made: nothing would change.'
      : `${counted(ruled, 'ruling is', 'rulings are')} not applied yet.`;
  return selected === 0 ? rulings : `${formatCount(selected)} selected. ${rulings}`;
}

/** Why held rows can or cannot be used as they stand. */
export function releaseWords(problems: readonly Problem[]): string {
  const doubtful = problems.filter(({ releasable }) => releasable === true).length;
  if (doubtful === problems.length)
    return problems.length === 1
      ? 'It can be read and is only in doubt.'
      : 'They can all be read and are only in doubt.';
  const others = problems.length - doubtful;
  return problems.length === 1
    ? 'What holds it is no mere doubt, so it cannot be used as it stands: only edited or left out.'
    : `${formatCount(others)} of them ${others === 1 ? 'is' : 'are'} held by more than a doubt, so they cannot all be used as they stand.`;
}
