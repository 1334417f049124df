import type { ColumnDraft } from './columnDraft';

/** One plain clause that says why a column means what it means: 'header says "Axialspiel": thrust play; …'. */
export function columnEvidence(draft: ColumnDraft): string {
  const { layers, uom } = draft.words;
  const [first, ...more] = draft.clauses;
  const lowest = layers.at(-1);
  const above = layers.slice(0, -1);
  if (lowest === undefined) return ['the header is empty', ...draft.clauses].join('; ');
  if (draft.isCanonical) return [`header says "${lowest}": ${first}`, ...more].join('; ');
  const upper = above.length === 0 ? [] : [`upper header says "${above.join(' / ')}"`];
  const meaning = first ?? 'no word that is known here';
  const isReading = draft.role === 'reading' || draft.role === 'value';
  const details = !isReading
    ? []
    : [
        ...(draft.stage === null ? [] : [`as ${draft.stage}`]),
        ...(draft.clock === null
          ? []
          : [`${draft.clock} o’clock${draft.viewingEndOpen ? ' if seen from the compressor end' : ''}`]),
        ...(draft.uom === null
          ? []
          : [`in ${draft.uom === 'um' ? 'µm' : draft.uom === '0.01mm' ? '1/100 mm' : draft.uom}`]),
        ...(uom === 'unknown' ? ['unit of measure not known here'] : []),
      ];
  const says = [`header says "${lowest}"`, ...upper].join(', ');
  return `${says}: ${[meaning, ...details, ...more].join('; ')}`;
}
