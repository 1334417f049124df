import type { Decision } from '../../records/decisions/Decision';
import type { RulingOutcome } from '../../records/decisions/rulings';
import type { InputFile } from '../../records/importReport';
import { type GroupWork, workHere } from '../groupWork';
import { type AnalysisSettings, NoUsableReadings, openAnalysis } from '../openAnalysis';
import type { FleetResult, Progress } from '../types';
import type { OpenOutcome, ReportProgress } from './EngineApi';
import { FleetAnswers } from './FleetAnswers';
import { Cancelled, failure } from './failure';
import { heldCsv } from './heldCsv';
import type { LazyDatabase } from './LazyDatabase';
import { nextTask } from './nextTask';

/** Problems that a page lists; the others are counted, and all are in the batch command's problems.csv. */
const problemsListed = 5_000;

/** Least time between two reports of progress of one kind: the page lays itself out and paints for each, which cost a third of a core at 40 ms. */
const betweenReports_ms = 250;

/** Least time between two turns of others, such as a question of the page or a word to stop. */
const betweenTurns_ms = 40;

/** How the page opens files. */
export function settingsOfOpening(decisions: readonly Decision[]): AnalysisSettings {
  return { asOf: null, groupBy: 'frame', problemsListed, limitedOnly: true, decisions };
}

/** The analysed fleet that is open, and attempts to open another in its place: a failed or cancelled one leaves it as it was. */
export class OpenFleet {
  answers: FleetAnswers | null = null;
  /** What came of the rulings when files were read last. */
  rulings: readonly RulingOutcome[] = [];
  /** Held rows of the last attempt as CSV, if it opened nothing. */
  private attemptHeld: string | null = null;
  private attempt = 0;

  constructor(
    private readonly database: LazyDatabase,
    private readonly work: GroupWork = workHere,
  ) {}

  get fleet(): FleetResult | null {
    return this.answers?.analysis.fleet ?? null;
  }

  /** Stops the attempt under way at its next step. */
  cancel(): void {
    this.attempt++;
  }

  /** Leaves what a failed attempt has read. */
  leaveAttempt(): void {
    this.attemptHeld = null;
  }

  /** Every held row and cell as CSV; those of the last attempt if it opened nothing. */
  async heldRows(): Promise<string> {
    return this.attemptHeld ?? heldCsv(this.answers?.analysis.connector);
  }

  async open(
    source: FleetResult['source'],
    files: () => Promise<readonly InputFile[]>,
    decisions: readonly Decision[],
    onProgress: ReportProgress,
  ): Promise<OpenOutcome> {
    const attempt = ++this.attempt;
    let [reportedAt, turnAt] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
    let kind = '';
    const report = async (progress: Progress): Promise<void> => {
      const now = performance.now();
      const [begins = ''] = progress.step.split(' ');
      // A step may be shorter than letting others in takes; a stop is heeded at each.
      const isTurn = now - turnAt >= betweenTurns_ms;
      if (now - reportedAt >= betweenReports_ms || (isTurn && begins !== kind)) {
        reportedAt = now;
        kind = begins;
        onProgress(progress);
      }
      if (isTurn) {
        turnAt = now;
        await nextTask();
      }
      if (this.attempt !== attempt) throw new Cancelled();
    };
    try {
      await report({ step: 'Starting the database engine', share: 0 });
      const connector = await this.database.connect();
      try {
        const settings = { ...settingsOfOpening(decisions), work: this.work };
        const analysis = await openAnalysis(connector, await files(), source, settings, report);
        const previous = this.answers;
        this.answers = new FleetAnswers(analysis, nextTask);
        this.rulings = analysis.imported.rulings;
        this.attemptHeld = null;
        await previous?.analysis.connector.close();
        return { ok: true, fleet: analysis.fleet, message: null };
      } catch (error) {
        if (error instanceof NoUsableReadings) {
          this.rulings = error.imported.rulings;
          this.attemptHeld = await heldCsv(connector);
        }
        await connector.close();
        throw error;
      }
    } catch (error) {
      return failure(error, this.answers !== null);
    }
  }
}
