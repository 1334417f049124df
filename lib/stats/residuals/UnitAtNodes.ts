import { absorbUnits, RUN, UNIT } from '../wear/absorb';
import type { StudentTable } from '../wear/types';
import type { KnownRuns } from './KnownRuns';
import { fillLevel, type LevelAtNodes, levelOver, weighNodes } from './levelAtNodes';
import { addRun, addRuns, clearUnit, type NodeBase, UNIT_SUMS } from './NodeBase';
import { NODE_SUMS } from './nodeSums';

/**
 * The sums of one unit at the nodes of a base while its readings become known one by one, and the level that follows from them
 * and from the readings of all other units. Made once a base; nothing is allocated for a reading.
 */
export class UnitAtNodes {
  /** The level asked for last. */
  readonly level: LevelAtNodes;
  /** Sums of the other units' readings, as nodeSums has them. */
  private readonly others: Float64Array;
  /** Sums of the unit's known runs, and of those but the open one. */
  private known: Float64Array;
  private closed: Float64Array;
  private open = -1;
  private readings = 0;
  private readonly ofUnit: Float64Array;

  constructor(readonly base: NodeBase) {
    const size = base.posterior.weight.length;
    this.others = new Float64Array(NODE_SUMS * size);
    this.known = new Float64Array(UNIT_SUMS * size);
    this.closed = new Float64Array(UNIT_SUMS * size);
    this.ofUnit = new Float64Array(UNIT);
    this.level = levelOver(base);
  }

  /**
   * Turns to a unit of which nothing is known yet.
   *
   * @param runs its runs in what the base was made from, as fillRun writes them, from one up to but without another
   */
  begin(runs: Float64Array, from: number, to: number): void {
    const { all, squared } = this.base;
    addRuns(this.base, runs, from, to, this.known);
    const group = new Float64Array(6);
    const unit = { units: this.ofUnit, group };
    for (let k = 0, o = 0, p = 0; p < all.length; k += 4, o += UNIT_SUMS, p += NODE_SUMS) {
      for (let j = 0; j < UNIT; j++) this.ofUnit[j] = this.known[o + j] as number;
      const logDeterminant = absorbUnits(unit, squared[k + 2] as number, squared[k + 3] as number);
      for (let j = 0; j < 6; j++) this.others[p + j] = (all[p + j] as number) - (group[j] as number);
      const ofRuns = Math.log(this.known[o + 6] as number) + (this.known[o + 7] as number);
      this.others[p + 6] = (all[p + 6] as number) - logDeterminant - ofRuns;
    }
    this.forget();
  }

  /** Has nothing known of the unit again. */
  forget(): void {
    clearUnit(this.known);
    clearUnit(this.closed);
    this.open = -1;
    this.readings = 0;
  }

  /** Takes over what has become known of the unit. */
  follow(runs: KnownRuns): void {
    if (runs.open < 0) return;
    if (runs.open !== this.open) {
      if (runs.readingsOf(runs.open) === 1 && this.readings === runs.readings - 1)
        [this.closed, this.known] = [this.known, this.closed];
      else this.closeAllBut(runs);
      this.open = runs.open;
    }
    this.readings = runs.readings;
    addRun(this.base, this.closed, runs.records, RUN * runs.open, this.known);
  }

  private closeAllBut({ open, runs, records }: KnownRuns): void {
    const others = records.slice(0, RUN * runs);
    others.fill(0, RUN * open, RUN * (open + 1));
    addRuns(this.base, others, 0, runs, this.closed);
  }

  /**
   * Puts into `level` the level of a run, counted from the unit's first, at x.
   *
   * @param runs the unit's runs as far as they are known
   * @param table Student's t with as many degrees of freedom as readings are known of all units, less 4
   */
  foretell({ records }: KnownRuns, run: number, x: number, table: StudentTable): void {
    const { others, known, base, level } = this;
    fillLevel(level, base, others, known, records, run, x, table);
    weighNodes(level, base);
  }
}
