import type { Characteristic } from '../../characteristics';
import { viewingEndOpen } from './cellWords';
import { type ColumnDraft, endWords } from './columnDraft';
import { mirrored } from './readingWords';

/**
 * Settles what columns say only together: a characteristic or stage carried to the right ('Spalt Verdichter 12 Uhr',
 * '3 Uhr'), 'left' as stage or side, and columns of a stage or position as values where another column names what was
 * measured.
 */
export function settledByNeighbours(
  drafts: readonly ColumnDraft[],
  characteristics: readonly Characteristic[],
): readonly ColumnDraft[] {
  const isLong = drafts.some((draft) => draft.role === 'characteristic');
  const carried = isLong ? drafts.map(asValue) : carryCharacteristic(drafts, characteristics);
  const resolved = carried.map((draft) => resolveLeft(draft, carried, characteristics));
  return (isLong ? resolved : carryStage(resolved)).map(placed);
}

function asValue(draft: ColumnDraft): ColumnDraft {
  if (!draft.isPartial) return draft;
  return {
    ...draft,
    role: draft.end ?? 'value',
    stage: draft.words.reading.stage,
    clock: draft.words.reading.clock,
    sureness: 0.85,
    clauses: ['value of the reading that its row names'],
  };
}

function shapeOf(
  code: string | null,
  characteristics: readonly Characteristic[],
): 'single' | 'four_clock' | null {
  return characteristics.find((candidate) => candidate.code === code)?.shape ?? null;
}

function carryCharacteristic(
  drafts: readonly ColumnDraft[],
  characteristics: readonly Characteristic[],
): readonly ColumnDraft[] {
  let leader: ColumnDraft | null = null;
  let before: ColumnDraft | null = null;
  const carried = (draft: ColumnDraft): ColumnDraft => {
    if (!draft.isPartial) {
      leader = draft.role === 'reading' ? draft : null;
      return draft;
    }
    const words = draft.words.reading;
    const from =
      words.wheel === null
        ? leader
        : (drafts.find(
            (other) => other.role === 'reading' && other.characteristic === `tip_${words.wheel}`,
          ) ?? null);
    if (from === null) return draft;
    const isSingle = shapeOf(from.characteristic, characteristics) === 'single';
    const saysPlace =
      words.clock !== null || draft.words.concepts.has('tip') || draft.words.concepts.has('gap');
    if (isSingle && saysPlace) return draft;
    return {
      ...draft,
      role: 'reading' as const,
      characteristic: from.characteristic,
      stage: words.stage,
      clock: words.clock,
      uom: draft.uom ?? from.uom,
      sureness: from.sureness * 0.9,
      clauses: [
        ...from.clauses.slice(0, 1),
        ...(draft.end === null ? [] : [endWords[draft.end]]),
        `carried from column "${from.name}"`,
      ],
      isSettled: true,
    };
  };
  return drafts.map((draft) => {
    before = otherEnd(draft, before) ?? carried(draft);
    return before;
  });
}

/** 'does not go' alone beside 'thrust play found goes' is the other end of that reading. */
function otherEnd(draft: ColumnDraft, before: ColumnDraft | null): ColumnDraft | null {
  const isBareEnd = draft.role === draft.end && draft.characteristic === null && !draft.isCanonical;
  if (
    !isBareEnd ||
    draft.end === null ||
    before?.role !== 'reading' ||
    before.end === null ||
    before.end === draft.end
  )
    return null;
  return {
    ...before,
    index: draft.index,
    name: draft.name,
    words: { ...before.words, layers: draft.words.layers },
    end: draft.end,
    uom: draft.uom ?? before.uom,
    uomUnknown: draft.uomUnknown || (draft.uom === null && before.uomUnknown),
    sureness: before.sureness * 0.9,
    clauses: [...before.clauses.slice(0, 1), endWords[draft.end], `carried from column "${before.name}"`],
  };
}

/** English 'left': the side where its neighbours are sides or the stage is said already, else the stage. */
function resolveLeft(
  draft: ColumnDraft,
  all: readonly ColumnDraft[],
  characteristics: readonly Characteristic[],
): ColumnDraft {
  const { lefts, seenFrom } = draft.words.reading;
  if (draft.isCanonical || lefts === 0 || (draft.role !== 'reading' && draft.role !== 'value')) return draft;
  const asStage: ColumnDraft = { ...draft, stage: 'left' };
  const side = seenFrom === 'turbine' ? mirrored('9') : '9';
  const asSide: ColumnDraft = { ...draft, clock: side, viewingEndOpen: viewingEndOpen(side, true, seenFrom) };
  if (lefts > 1) return { ...asSide, stage: 'left' };
  if (shapeOf(draft.characteristic, characteristics) === 'single')
    return draft.stage === null ? asStage : draft;
  if (draft.clock !== null) return draft.stage === null ? asStage : draft;
  if (draft.stage !== null) return asSide;
  const sisters = all.filter(
    (other) => other !== draft && other.role === draft.role && other.characteristic === draft.characteristic,
  );
  if (sisters.some((other) => other.stage === null && other.clock !== null)) {
    return {
      ...asSide,
      clauses: [...draft.clauses, '"left" is the side, as the columns beside it name sides'],
    };
  }
  if (sisters.some((other) => other.stage === 'found' && other.clock === null)) return asStage;
  if (all.some((other) => other.role === 'stage')) return asSide;
  return { ...draft, sureness: 0.3, clauses: [...draft.clauses, '"left" may be the stage or the side'] };
}

function carryStage(drafts: readonly ColumnDraft[]): readonly ColumnDraft[] {
  let stage: ColumnDraft['stage'] = null;
  return drafts.map((draft) => {
    if (draft.role !== 'reading') {
      stage = null;
      return draft;
    }
    if (
      draft.isPartial &&
      draft.stage === null &&
      draft.clock !== null &&
      !draft.words.reading.stageContradicts
    ) {
      return { ...draft, stage };
    }
    stage = draft.stage;
    return draft;
  });
}

function placed(draft: ColumnDraft): ColumnDraft {
  const { clockBySide, seenFrom } = draft.words.reading;
  if (draft.isCanonical || draft.clock === null || draft.viewingEndOpen) return draft;
  const bySide = clockBySide && draft.words.reading.clock === draft.clock;
  return { ...draft, viewingEndOpen: viewingEndOpen(draft.clock, bySide, seenFrom) };
}
