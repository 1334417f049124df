import type { Characteristic } from '../characteristics';
import type { MeaningDecision } from '../decisions/Decision';
import type { ColumnMeaning } from './types';
import { type ColumnDraft, columnDraft } from './words/columnDraft';
import { columnEvidence } from './words/columnEvidence';
import { checkedByValues } from './words/columnValues';
import { saidOn, withDecided } from './words/decidedColumns';
import { settledByNeighbours } from './words/neighbourColumns';
import { doubtedReadings, filledByValues, oneColumnARole, onlyWithReadings } from './words/sheetChecks';

/**
 * Says what each column of a sheet holds, from its header in six languages, its texts and the columns beside it.
 *
 * `columns` are the names as the layout gives them, header rows joined with ' / ' from top to bottom; `samples` some
 * raw texts of each column, in the same order. In a sheet with a characteristic column, columns of a stage or clock
 * position have the role 'value' with that stage and clock. A sheet without readings gets no roles at all.
 *
 * What a person `decided` about a column goes before all of this, and the columns beside it are read in its light.
 *
 * Sureness: 1 canonical name or decided; about 0.95 a trade word without doubt; 0.7 to 0.85 a word with another common meaning
 * ('hours' as the unit's own); each unknown word in the header takes off 15 %, being carried from a neighbour 10 %;
 * at most 0.5 if the stage is not said, 0.4 if the clock position is not said, the unit of measure cannot be taken or
 * a role rests on the texts alone, 0.3 if two columns seem to hold the same reading. Never throws.
 */
export function columnMeanings(
  columns: readonly string[],
  samples: readonly (readonly string[])[],
  characteristics: readonly Characteristic[],
  decided: readonly MeaningDecision[] = [],
): readonly ColumnMeaning[] {
  const byHeader = columns.map((name, index) => columnDraft(index, name, characteristics));
  const byTexts = byHeader.map((draft) =>
    checkedByValues(draft, samples[draft.index] ?? [], characteristics),
  );
  const guesses = settledByNeighbours(byTexts, characteristics);
  const together =
    decided.length === 0
      ? guesses
      : settledByNeighbours(withDecided(byTexts, guesses, decided), characteristics);
  const filled = hasReadings(together) ? filledByValues(together, samples) : together;
  const kept = withDecided(onlyWithReadings(oneColumnARole(filled)), guesses, decided);
  const said = new Map(decided.map(({ index, file }) => [index, saidOn(file)]));
  return doubtedReadings(kept, characteristics)
    .map(meaningOf)
    .map((meaning) => ({ ...meaning, evidence: said.get(meaning.index) ?? meaning.evidence }));
}

function hasReadings(drafts: readonly ColumnDraft[]): boolean {
  return drafts.some((draft) => draft.role === 'reading' || draft.role === 'characteristic');
}

function meaningOf(draft: ColumnDraft): ColumnMeaning {
  const isLength = ['reading', 'value', 'lower', 'upper'].includes(draft.role);
  return {
    index: draft.index,
    name: draft.name,
    role: draft.role === 'reading' ? (draft.end ?? 'reading') : draft.role,
    characteristic: draft.characteristic,
    stage: draft.stage,
    clock: draft.clock,
    viewingEndOpen: draft.viewingEndOpen,
    uom: isLength ? draft.uom : null,
    uomUnknown: isLength && draft.uomUnknown,
    evidence: columnEvidence(draft),
    sureness: Math.round(draft.sureness * 100) / 100,
  };
}
