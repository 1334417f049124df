'use client';

import type { FitRow, FleetResult } from '../../lib/analysis/types';
import { rewritten } from '../../lib/charts/rewritten';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import { fitSentences } from '../words/fitSentences';

/** How far the sister group's fit can be trusted, in sentences. */
export function FitNote({ fleet, fit }: { readonly fleet: FleetResult; readonly fit: FitRow | null }) {
  return (
    <div>
      <h3>How far the fit can be trusted</h3>
      {fit === null ? (
        <p>There is no fit: the sister group has no usable reading of this series.</p>
      ) : (
        <>
          <Sentences sentences={fitSentences(fit)} />
          <FitChecks fleet={fleet} fit={fit} />
        </>
      )}
    </div>
  );
}

/** What the readings themselves say against the fit: computed for the group that is looked at. */
function FitChecks({ fleet, fit }: { readonly fleet: FleetResult; readonly fit: FitRow }) {
  const asked = useAsked(fleet, 'fitChecks', fit.group, fit.series);
  return <WithAnswer asked={asked}>{(checks) => <Sentences sentences={checks.map(rewritten)} />}</WithAnswer>;
}

function Sentences({ sentences }: { readonly sentences: readonly string[] }) {
  if (sentences.length === 0) return null;
  return (
    <ul>
      {sentences.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}
