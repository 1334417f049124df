import type { DriftFinding } from '../../lib/analysis/drift/types';
import type { Paper, Report } from '../../lib/analysis/report/types';
import type { FleetRow } from '../fleet/fleetRows';
import { Prose } from '../frame/Prose';
import { fleetRemarks } from '../words/fleetSentence';
import { changesSentence } from '../words/paperChangeWords';
import { heldSentence, paperDriftSentence } from '../words/reportWords';
import { sparesSentence } from '../words/sparesSentence';
import styles from './report.module.css';
import type { Sources } from './sources';

interface AnswerSectionProps {
  /** The answer of the Fleet page for the units of the paper. */
  readonly answer: string;
  readonly paper: Paper;
  readonly compared: Report['compared'];
  readonly rows: readonly FleetRow[];
  /** Open findings, the strongest first. */
  readonly open: readonly DriftFinding[];
  readonly sources: Sources;
}

/** The answer in sentences, each with the table that it comes from. */
export function AnswerSection({ answer, paper, compared, rows, open, sources }: AnswerSectionProps) {
  const sentences = [
    { text: answer, source: sources.fleet },
    ...fleetRemarks(rows).map((text) => ({ text, source: sources.fleet })),
    { text: sparesSentence(paper.spares), source: sources.spares },
    { text: paperDriftSentence(paper, open), source: sources.drift },
    { text: heldSentence(paper), source: sources.records },
    ...(compared === null
      ? []
      : [
          {
            text: changesSentence(compared.changes, compared.since),
            source: <span className={styles.source}>From the table ‘What changed’ below.</span>,
          },
        ]),
  ];
  return (
    <section aria-label="The answer">
      <h2>The answer</h2>
      <ul className={styles.answer}>
        {sentences.map(({ text, source }, index) => (
          <li key={text} className={index === 0 ? 'answer' : undefined}>
            <Prose text={text} /> {source}
          </li>
        ))}
      </ul>
    </section>
  );
}
