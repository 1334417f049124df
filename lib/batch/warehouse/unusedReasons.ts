/** Why readings are in no series, as import would hold them too: the analysis goes on and says how many. */
export const unusedReasons = {
  later: 'of overhauls after the day',
  noHours: 'of overhauls whose hours are not known',
  incomplete: 'of fewer than three clock positions',
  unknownStart: 'of runs that begin at an overhaul whose hours are not known',
  firstRun: 'of first runs whose start is not known',
} as const;

/** What a cleaned readings table does not hold: found in one, the analysis stops, since import would ask or hold singly. */
export const refusedReasons = {
  noValue: 'without a usable value: value_mm, or both lower_mm and upper_mm, must be numbers',
  interval: 'with lower_mm above upper_mm, or value_mm outside them',
  stage: 'with another stage than found or left',
  clock: 'with another clock position than 12, 3, 6 or 9',
  unplaced: 'of an overhaul, unit or characteristic that the tables do not have',
  shape: 'with a clock position where there is one reading, or without one where there are four',
  negative: 'below zero, which their characteristic can never be',
  twice: 'given twice for one overhaul, characteristic, stage and clock position',
} as const;
