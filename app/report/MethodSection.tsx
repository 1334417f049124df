import Link from 'next/link';
import type { Paper } from '../../lib/analysis/report/types';
import { isWholeFleet } from '../../lib/analysis/scope';
import { budgetSentence } from '../words/driftSentence';
import { paperMethod } from '../words/paperMethod';
import { planSentence } from '../words/sparesSentence';

/** How the paper's numbers are made and with which settings. */
export function MethodSection({ paper }: { readonly paper: Paper }) {
  // Signals by chance are foretold for the whole fleet only.
  const isWhole = isWholeFleet(paper.scope);
  return (
    <section aria-label="Method">
      <h2>Method</h2>
      <ul>
        {paperMethod(paper.fleet.fits).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
        {isWhole && paper.drift.readings > 0 && <li>{budgetSentence(paper.drift)}</li>}
        <li>
          {isWhole ? '' : 'Of the whole fleet: '}
          {planSentence(paper.spares)}
        </li>
        <li>
          Formulas, assumptions and how far each number can be trusted: <Link href="/methods/">Methods</Link>.
        </li>
      </ul>
    </section>
  );
}
