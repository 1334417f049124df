import { drawsFor } from './draws';
import type { Visit } from './installations';
import { changedEarly, feelerReadings, missingAsLeft, move, names, ranOn, vanishingRunout } from './oddities';
import { visitAt } from './trueRuns';

const planned = [
  'nozzle ring cleaned',
  'deposits on turbine blades, washed',
  'oil traces on turbine side',
  'compressor wheel washed',
  'light rub marks on shroud, dressed',
  'balanced, residual "as table"',
];
const unplanned = ['opened after surging', 'opened after oil leak', 'opened after high vibration'];
const shareWithRemark = 0.15;

/** What the workshop wrote beside the readings; mostly nothing. */
export function remarkOf(visits: readonly Visit[], index: number): string {
  const { unit, opening } = visitAt(visits, index);
  if (opening === null) return 'delivery record';
  if (names(ranOn, unit, index)) return 'thrust bearing worn, none in stock, left in';
  if (names(changedEarly, unit, index)) return 'thrust bearing changed early after the last one';
  if (unit === vanishingRunout.unit && index === vanishingRunout.visit) return 'contact faces dirty, cleaned';
  if (
    names(
      missingAsLeft.filter(([, , code]) => code === undefined),
      unit,
      index,
    )
  )
    return 'as-left sheet lost';
  if (names(feelerReadings, unit, index)) return 'dial gauge broken, feelers used';
  if (unit === move.unit && index === move.from.visit) return `unit to store, ${move.replacedBy} fitted`;
  if (unit === move.leftInStore && index === visits.length - 1) return `unit to store, ${move.unit} fitted`;
  const draws = drawsFor(`remark/${unit}/${index}`);
  const phrases = opening.kind === 'unplanned' ? unplanned : planned;
  if (opening.kind === 'planned' && draws.uniform() > shareWithRemark) return '';
  return phrases[Math.floor(draws.uniform() * phrases.length)] ?? '';
}
