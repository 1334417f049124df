/**
 * Gives a worker the one thing that drawing asks of a document: a canvas by which the width of words is measured. Without
 * it widths are guessed from the number of letters, and labels are cut or placed wrongly. Import before the drawing code.
 */
Object.assign(globalThis, { document: { createElement: () => new OffscreenCanvas(1, 1) } });

export {};
