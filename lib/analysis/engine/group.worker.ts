import { expose } from 'comlink';
import type { MarginQuestion } from '../currentLine';
import { fitGroup, marginsOf } from '../groupWork';
import { packRows } from './packRows';

/** A second thread for what is long in an analysis; margins are packed, since row by row they are long in being copied. */
const computing = {
  fitGroup,
  marginsOf: (questions: readonly MarginQuestion[]) => packRows(marginsOf(questions)),
};

export type Computing = typeof computing;

expose(computing);
