import './measureText';
import { expose } from 'comlink';
import { drawPicture } from '../../lib/charts/drawSvg';

/** Pictures are drawn here, so that the page answers while one is under way. */
const drawing = { drawPicture };

export type Drawing = typeof drawing;

expose(drawing);
