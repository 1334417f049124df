import { questionId } from '../../../records/intake/Answers';
import { cellsOf, isSamePosition, type MeterOverhaul } from './meterRecords';
import type { PlaceRecords, Stay } from './unitPlaces';

/** Gives every stay its last day: another unit came into the position, or the unit's own next stay began. */
export function withEnds(
  stays: readonly Stay[],
  rows: readonly MeterOverhaul[],
  { overhauls, asked, questions }: PlaceRecords,
): readonly Stay[] {
  return stays.map((stay, index) => {
    const next = stays[index + 1];
    const successor = asked.find(
      ({ fact, answer, overhaul, day }) =>
        fact.kind === 'unit fitted' &&
        answer === 'yes' &&
        overhaul.unit !== stay.told.unit &&
        isSamePosition(overhaul, stay.told) &&
        (day as string) > stay.from &&
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
