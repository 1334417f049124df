import './measureText';
import { expose } from 'comlink';
import { drawSvg } from '../../lib/charts/drawSvg';

/** Pictures are drawn here, so that the page answers while one is under way. */
const drawing = { drawSvg };

export type Drawing = typeof drawing;

expose(drawing);
