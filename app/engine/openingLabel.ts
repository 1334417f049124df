import { counted } from '../words/counted';
import { siteFleetName } from '../words/siteFleet';
import type { OpeningName, OpeningWords } from './engineClient';

type Labels = { readonly [Name in OpeningName]: (...words: OpeningWords<Name>) => string };

const labels: Labels = {
  open: () => 'Opening',
  openDemo: () => `Opening the ${siteFleetName()}`,
  openOwn: () => 'Opening your files',
  forgetOwn: () => 'Removing your files from this browser',
  openWorkspace: ({ how }) => (how === 'merge' ? 'Merging the workspace' : 'Opening the workspace'),
  takeOver: () => 'Taking over writing',
  addFiles: (files) => `Reading ${counted(files.length, 'file')}`,
  removeFiles: (names) => `Reading your files again without ${counted(names.length, 'file')}`,
  decide: (decisions) => `Reading your files again with ${counted(decisions.length, 'decision')}`,
  takeBack: (ids) => `Reading your files again without ${counted(ids.length, 'decision')}`,
  undo: () => 'Reading your files again as before',
  redo: () => 'Reading your files again with what was undone',
};

/** What an opening does, for the reader. */
export function openingLabel<Name extends OpeningName>(opening: Name, words: OpeningWords<Name>): string {
  // The compiler does not see that a label takes what its opening is told.
  return (labels[opening] as (...said: readonly unknown[]) => string)(...words);
}

/** Whether an opening reads the files of the last attempt again. */
export function readsAgain(opening: OpeningName): boolean {
  return ['decide', 'takeBack', 'undo', 'redo'].includes(opening);
}
