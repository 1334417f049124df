import { expose } from 'comlink';
import { fitGroup } from '../fitGroups';

/** A second thread for fits. */
const fitting = { fitGroup };

export type Fitting = typeof fitting;

expose(fitting);
