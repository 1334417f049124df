import type { KeptState } from '../../lib/analysis/engine/kept/KeptState';
import { counted } from './counted';

const saveTheFile = 'Save the workspace file on the Records page, so that nothing is lost.';

/** What is kept in this browser, in a few words for the head of every page; null where there is nothing of one's own. */
export function keptWords({ saving, writes, files, entries }: KeptState): string | null {
  if (saving === 'not saved') return 'not saved';
  if (!writes) return 'another tab writes';
  if (files + entries === 0) return null;
  return saving === 'saving' ? 'saving' : 'saved in this browser';
}

/** Said where files were kept and the browser has cleared them. */
export const clearedSentence =
  'Your files were kept in this browser, and it has cleared them: open the workspace file that you saved last, or add your files again, on the Records page.';

/** What stands in the way of keeping and what to do, as sentences; none where all is well. */
export function keptSentences(kept: KeptState): readonly string[] {
  return [notKeptSentence(kept), newerSentence(kept), tabSentence(kept), asideSentence(kept)].filter(
    (sentence) => sentence !== null,
  );
}

function notKeptSentence({ saving, notKept }: KeptState): string | null {
  if (saving !== 'not saved' || notKept === null || notKept.cause === 'elsewhere') return null;
  const why =
    notKept.cause === 'full'
      ? 'The storage that this browser gives to this page is full'
      : 'This browser refuses to keep anything for this page, as in a private window';
  return `${why} (${notKept.detail}). What you do is held until the page is closed. ${saveTheFile}`;
}

function newerSentence({ changedElsewhere }: KeptState): string | null {
  return changedElsewhere
    ? 'Another tab of this browser has kept newer files or decisions than are open here: open them before you go on.'
    : null;
}

function tabSentence({ writes, takenOver }: KeptState): string | null {
  if (writes) return null;
  return takenOver
    ? 'Another tab of this browser has taken over writing: this one shows everything, and changes nothing.'
    : 'Another tab of this browser has this page open and writes: this one shows everything, and changes nothing.';
}

const values = {
  files: 'your files',
  journal: 'the journal of decisions',
  source: 'what was open last',
  initials: 'your initials',
} as const;

function asideSentence({ aside }: KeptState): string | null {
  if (aside.length === 0) return null;
  const what = aside.map(({ name, parts, reason }) => {
    const some = parts === null ? values[name] : `${counted(parts, 'part')} of ${values[name]}`;
    return `${some} (${reason})`;
  });
  return `What was kept here could not be read in full: ${what.join('; ')}. It was set aside in this browser and is not in use: open the workspace file that you saved last.`;
}
