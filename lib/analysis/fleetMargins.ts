import { group } from 'd3-array';
import type { MarginQuestion } from './currentLine';
import type { GroupWork, OnTask } from './groupWork';
import type { QuestionIndex } from './questionIndex';
import type { MarginRow } from './types';
import type { UnitNow } from './unitNow';

/** Most questions that are answered between two looks at whether to stop: some quarter of a second. */
const longestList = 2_000;

/**
 * Margins of every unit, in the order of units, series and limits.
 *
 * @param limitedOnly leaves those of series without a limit out
 */
export async function fleetMargins(
  units: ReadonlyMap<string, UnitNow>,
  index: QuestionIndex,
  limitedOnly: boolean,
  work: GroupWork,
  onShare: (share: number) => Promise<void>,
): Promise<readonly MarginRow[]> {
  const asked: { readonly place: number; readonly question: MarginQuestion }[] = [];
  for (const unit of units.values()) {
    for (const question of index.questionsOf(unit))
      if (question.limit !== null || !limitedOnly) asked.push({ place: asked.length, question });
  }
  // Those of one group and series share a fit.
  const lists = [...group(asked, ({ question }) => question.fit ?? question.series).values()].flatMap(cut);
  const onTask: OnTask = (place) => onShare(place / lists.length);
  const found = await work.margins(
    lists.map((list) => list.map(({ question }) => question)),
    onTask,
  );
  const margins: MarginRow[] = new Array(asked.length);
  for (const [place, rows] of found.entries())
    for (const [line, row] of rows.entries()) margins[lists[place]?.[line]?.place as number] = row;
  return margins;
}

function cut<Item>(list: readonly Item[]): readonly (readonly Item[])[] {
  const count = Math.ceil(list.length / longestList);
  return Array.from({ length: count }, (_, part) => list.slice(part * longestList, (part + 1) * longestList));
}
