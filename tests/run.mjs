import { checkNode } from '../lib/batch/checkNode.mjs';

checkNode();
import('./stages.mjs').then(({ runStages }) => runStages());
