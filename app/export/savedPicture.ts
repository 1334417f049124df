import type { ChartTheme } from '../../lib/charts/theme';
import { drawInWorker } from '../chart/drawingClient';
import { readTheme } from '../chart/readTheme';
import type { BuildSpec } from '../chart/useDrawing';
import { standAlone } from './standAlone';

/** Width of a saved picture, px, unless the picture keeps its own. */
const width_px = 900;
/** Pixels of a PNG for each of the picture's. */
const scale = 2;

/** What a saved picture says of itself. */
export interface PictureWords {
  readonly title: string;
  readonly description: string;
}

/** The picture as SVG text that stands alone, in the colours of paper; rejects if it cannot be drawn. */
export async function savedSvg(build: BuildSpec, words: PictureWords): Promise<string> {
  const theme: ChartTheme = readTheme('paperTheme');
  const { svg } = await drawInWorker(build(theme, false), width_px);
  return standAlone(svg, words);
}

/**
 * The same picture as PNG, twice as many pixels each way.
 *
 * @throws Error if the browser cannot draw it
 */
export async function savedPng(svg: string): Promise<Blob> {
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(image.naturalWidth * scale);
    canvas.height = Math.round(image.naturalHeight * scale);
    const context = canvas.getContext('2d');
    if (context === null) throw new Error('the browser gives no canvas to draw on');
    context.drawImage(image, 0, 0, canvas.width, canvas.height);
    const png = await new Promise<Blob | null>((given) => canvas.toBlob(given, 'image/png'));
    if (png === null) throw new Error('the picture is larger than the browser can draw');
    return png;
  } finally {
    URL.revokeObjectURL(address);
  }
}
