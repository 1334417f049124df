import type { Decision } from '../../records/decisions/Decision';
import { tablesPage } from '../../records/decisions/tableEdits';
import type { InputFile, Problem } from '../../records/importReport';
import { defaultDecisionSettings } from '../decisions/defaultDecisionSettings';
import { NoUsableReadings, openAnalysis } from '../openAnalysis';
import { type ChangedVerdict, changedVerdicts } from '../tables/changedVerdicts';
import { FleetAnswers } from './FleetAnswers';
import type { LazyDatabase } from './LazyDatabase';
import { nextTask } from './nextTask';
import { settingsOfOpening } from './OpenFleet';

/** What decisions would change of what is open. */
export interface Effect {
  readonly changed: readonly ChangedVerdict[];
  /** Units that would be judged. */
  readonly units: number;
  /** Edited cells that would be held. */
  readonly held: readonly Problem[];
}

/** Analyses own files with other decisions on a connection of its own: what is open stays as it is, whatever comes of it. */
export class EffectOfDecisions {
  private attempt = 0;

  constructor(private readonly database: LazyDatabase) {}

  /** Stops the comparison under way at its next step. */
  stop(): void {
    this.attempt++;
  }

  /**
   * Compares what is open with the same files under other decisions.
   *
   * @throws Error if it is stopped, or if no reading could be used
   */
  async of(open: FleetAnswers, files: readonly InputFile[], decisions: readonly Decision[]): Promise<Effect> {
    const attempt = ++this.attempt;
    const goOn = async () => {
      await nextTask();
      if (this.attempt !== attempt) throw new Error('The comparison was stopped. Nothing was changed.');
    };
    const connector = await this.database.connect();
    try {
      const analysis = await openAnalysis(connector, files, 'own', settingsOfOpening(decisions), goOn);
      const { fleet } = analysis;
      const judged = {
        margins: fleet.margins,
        decisions: await new FleetAnswers(analysis, goOn).decisions(defaultDecisionSettings),
      };
      await goOn();
      const before = {
        margins: open.analysis.fleet.margins,
        decisions: await open.decisions(defaultDecisionSettings),
      };
      await goOn();
      return {
        changed: changedVerdicts(before, judged),
        units: fleet.units.length,
        held: fleet.problems.filter(({ file, action }) => file === tablesPage && action === 'held'),
      };
    } catch (error) {
      if (!(error instanceof NoUsableReadings)) throw error;
      throw new Error(
        'With these edits no reading of your files could be used: look at the rows that you changed last. Nothing was changed.',
      );
    } finally {
      await connector.close();
    }
  }
}
