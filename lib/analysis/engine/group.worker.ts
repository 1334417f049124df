import { expose } from 'comlink';
import { fitGroup, marginsOf } from '../groupWork';
import type { MarginQuestion } from '../marginRow';
import { packRows } from './packRows';

/** A second thread for what is long in an analysis; margins are packed, since row by row they are long in being copied. */
const computing = {
  fitGroup,
  marginsOf: (questions: readonly MarginQuestion[]) => packRows(marginsOf(questions)),
};

export type Computing = typeof computing;

expose(computing);
