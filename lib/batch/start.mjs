import { checkNode } from './checkNode.mjs';

checkNode();
import('./startSite.mjs').then(({ startSite }) => startSite(process.argv.slice(2)));
