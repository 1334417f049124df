import type { FitRow } from '../../lib/analysis/types';
import { fitSentences } from '../words/fitSentences';

/** How far the sister group's fit can be trusted, in sentences. */
export function FitNote({ fit }: { readonly fit: FitRow | null }) {
  const sentences =
    fit === null
      ? ['There is no fit: the sister group has no usable reading of this series.']
      : fitSentences(fit);
  return (
    <div>
      <h3>How far the fit can be trusted</h3>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </div>
  );
}
