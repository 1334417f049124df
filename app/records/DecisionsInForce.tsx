'use client';

import { useMayDecide } from '../workspace/useKeptState';
import { AnswersGiven } from './AnswersGiven';
import { RulingsGiven } from './held/RulingsGiven';
import { MeaningsGiven } from './meanings/MeaningsGiven';
import { TableEditsGiven } from './TableEditsGiven';
import { useDecisionsInForce } from './useDecisionsInForce';

/** Every answer, column meaning, ruling and edited row in force, each with the way to take it back. */
export function DecisionsInForce({ onTakeBack }: { readonly onTakeBack: (ids: readonly string[]) => void }) {
  const inForce = useDecisionsInForce();
  const busy = !useMayDecide();
  const answers = inForce.filter((one) => one.kind === 'answer');
  const meanings = inForce.filter((one) => one.kind === 'meaning');
  const rulings = inForce.filter((one) => one.kind === 'ruling');
  const edits = inForce.filter((one) => one.kind === 'table');
  if (answers.length + meanings.length + rulings.length + edits.length === 0) return null;
  return (
    <section aria-labelledby="decisions">
      <h2 id="decisions">Decisions in force</h2>
      <p>They are kept in this browser with your files and applied whenever those are read.</p>
      <AnswersGiven answers={answers} busy={busy} onTakeBack={onTakeBack} />
      <MeaningsGiven meanings={meanings} busy={busy} onTakeBack={onTakeBack} />
      <RulingsGiven rulings={rulings} busy={busy} onTakeBack={onTakeBack} />
      <TableEditsGiven edits={edits} busy={busy} onTakeBack={onTakeBack} />
    </section>
  );
}
