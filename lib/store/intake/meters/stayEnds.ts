import { questionId } from '../../../records/intake/Answers';
import { cellsOf, isSamePosition, type MeterOverhaul } from './meterRecords';
import type { PlaceRecords, Stay } from './unitPlaces';

/** Gives every stay its last day: another unit came into the position, or the unit's own next stay began. */
export function withEnds(
  stays: readonly Stay[],
  rows: readonly MeterOverhaul[],
  { overhauls, asked, questions }: PlaceRecords,
): readonly Stay[] {
  const fittings = asked
    .filter(({ fact, answer, day }) => fact.kind === 'unit fitted' && answer === 'yes' && day !== null)
    .sort((a, b) => ((a.day as string) < (b.day as string) ? -1 : 1));
  return stays.map((stay, index) => {
    const next = stays[index + 1];
    // The first of them that came: others may have come after it, before the unit itself came back.
    const successor = fittings.find(
      ({ overhaul, day }) =>
        overhaul.unit !== stay.told.unit &&
        isSamePosition(overhaul, stay.told) &&
        // A stay from new is told by its first overhaul, on whose day the unit may have left.
        (stay.isFromNew ? (day as string) >= stay.from : (day as string) > stay.from) &&
        (next === undefined || (day as string) <= next.from),
    );
    const last = rows.findLast(({ date }) => date >= stay.from && (next === undefined || date < next.from));
    if (successor !== undefined && (last === undefined || last.date <= (successor.day as string)))
      return { ...stay, to: successor.day };
    if (next === undefined || last === undefined) return stay;
    if (next.unitHoursAtFit !== null) return { ...stay, to: last.date };
    const answer = questions.ask({
      id: questionId('unit left', last.file, last.hoursColumn, `${last.unit} ${last.engine} ${last.date}`),
      file: last.file,
      column: last.hoursColumn,
      question: `Was ${last.unit} taken off ${last.engine} at its overhaul of ${last.date}, so that it came to ${next.told.engine} with the hours of that day?`,
      choices: ['yes', 'no'],
      guess: '',
      cellsWaiting: cellsOf(overhauls.filter((one) => one.unit === last.unit && one.date >= next.from)),
    });
    return answer === 'yes' ? { ...stay, to: last.date } : stay;
  });
}
