'use client';

import { keptSiteWords } from '../words/keptSiteWords';
import { useKeptSite } from './useKeptSite';

/** Says that the page can be used without the network, once it can. */
export function KeptSentence() {
  return <span role="status">{useKeptSite().kept === 'kept' && ` ${keptSiteWords.kept}`}</span>;
}
