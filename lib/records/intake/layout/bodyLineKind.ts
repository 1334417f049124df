import type { SheetLayout } from '../types';
import { isDate, isValue } from './cellShape';

/** What a line under the header is. */
export type BodyLineKind = 'data' | 'repeated header' | 'totals' | 'footer' | 'blank';

const totalsWord =
  /^(?:(?:grand |sub-?)?totals?|sum|average|avg\.?|mean|median|minimum|maximum|min\.?|max\.?|count|std\.? ?dev\.?|summe|zwischensumme|gesamt(?:summe)?|insgesamt|mittel(?:wert)?|durchschnitt|anzahl|ø|sous-total|total général|somme|moyenne|nombre|suma|promedio|media|recuento|totalt|delsum|gjennomsnitt|gj\.?snitt|antall|итого|всего|сумма|среднее|количество)(?![\p{L}\p{N}-])/iu;
const footerWord =
  /^(?:page|seite|página|side|стр(?:аница|\.)?)\s*:?\s*\d|^(?:(?:printed|exported|created|generated|report (?:created|printed)|gedruckt|ausgedruckt|exportiert|erstellt|imprimé|exporté|édité|créé|impreso|exportado|generado|skrevet ut|utskrevet|eksportert|напечатано|распечатано|создано|выгружено)(?![\p{L}\p{N}-])|end of (?:report|list|file|data)|ende der|fin d[eu]|slutt på|конец )/iu;
const noteMark =
  /^(?:[*†‡]+\s*\p{L}|\d\)\s*\p{L}|(?:note|notes|remarks?|legend|anmerkung(?:en)?|hinweis|legende|remarque|nota|leyenda|merknad|примечани[ея])\s*:)/iu;
const rule = /^[-=_*#~\s]{4,}$/u;
const longText = 40;

/**
 * Tells a line of the body: data, or a header repeated, a line of totals, a note under the table, or nothing.
 *
 * When in doubt it is data, so that it is read or held with a reason: a line with a unit and a date always is.
 */
export function bodyLineKind(cells: readonly string[], layout: SheetLayout): BodyLineKind {
  const filled: { readonly text: string; readonly column: number }[] = [];
  cells.forEach((cell, column) => {
    const text = visible(cell);
    if (text !== '') filled.push({ text, column });
  });
  const [first, ...others] = filled;
  if (first === undefined) return 'blank';
  if (isRepeatedHeader(filled, layout)) return 'repeated header';
  const hasDate = filled.some(({ text }) => isDate(text));
  if (footerWord.test(first.text) && filled.length <= 3 && (!hasDate || filled.length === 2)) return 'footer';
  if (hasDate) return 'data';
  if (
    isTotals(
      first.text,
      others.map(({ text }) => text),
    )
  )
    return 'totals';
  if (layout.columns.length === 1) return 'data';
  if (noteMark.test(first.text) && filled.length <= 3 && !others.some(({ text }) => isValue(text)))
    return 'footer';
  if (others.length > 0) return 'data';
  if (rule.test(first.text)) return 'footer';
  // Text alone in a column further right goes on from the line above: it is kept and held, not passed over.
  const isLong = first.text.length >= longText || first.text.split(/\s+/).length >= 4;
  return isLong && first.column === 0 && /\p{L}{2}/u.test(first.text) ? 'footer' : 'data';
}

/** Without line breaks within and control characters (a DOS end-of-file mark is nothing). */
function visible(cell: string): string {
  return cell.replace(/\p{Cc}+/gu, ' ').trim();
}

/** Every filled cell is its column's name or one of the header rows that the name is joined of; the sheet's title may stand first. */
function isRepeatedHeader(
  filled: readonly { readonly text: string; readonly column: number }[],
  layout: SheetLayout,
): boolean {
  const parts = (column: number) => ` / ${visible(layout.columns[column] ?? '').toLowerCase()} / `;
  const matches = filled.filter(({ text, column }) => parts(column).includes(` / ${text.toLowerCase()} / `));
  if (matches.length === filled.length) return filled.length >= Math.min(2, layout.columns.length);
  const [other] = filled.filter((cell) => !matches.includes(cell));
  return matches.length >= 2 && matches.length === filled.length - 1 && other?.column === 0;
}

/** 'Total', 'Summe:', 'Mean of 12', or such a word with more words when only numbers follow. */
function isTotals(first: string, others: readonly string[]): boolean {
  const match = totalsWord.exec(first);
  if (match === null) return false;
  const rest = first.slice(match[0].length);
  return (
    /^[\s:=.()\d]*$/.test(rest) || (!/\d/.test(rest) && rest.length <= longText && others.every(isValue))
  );
}
