const numberText = String.raw`[-+−–(]?\s*\d[\d\s.,'’]*\)?`;
const number = new RegExp(
  String.raw`^[<>≤≥~*?]*\s*${numberText}(?:\s*(?:-|–|…|\.\.\.?)\s*${numberText})?\s*(?:h|hrs?|std|ч|mm|µm|μm|um|мм|мкм|mil|thou|in|"|%)?\.?\s*[*?~]*$`,
  'iu',
);
const dayMonthYear = /^\d{1,4}\s*[./-]\s*\d{1,2}\s*[./-]\s*\d{1,4}(?:[ T].*)?$/u;
const monthName = /^(?:\d{1,2}[.\s-]*\p{L}{3,}\.?[\s,.-]*\d{2,4}|\p{L}{3,}\.?\s+\d{1,2},?\s+\d{4})$/u;
const nothing =
  /^(?:-+|–|—|n\/?a|n\.a\.|nil|none|ok|i\.?o\.?|k\.? ?a\.?|s\/o|n\/d|нет|н\/д|ikke målt|not measured)$/iu;
const unit =
  /^[[(]?\s*(?:mm|cm|m|µm|μm|um|my|mym|h|hrs?|std\.?|hours?|heures?|horas?|timer?|thou|mils?|in|inch|zoll|"|(?:1\/100|0[.,]01) ?mm|mm\/100|мм|мкм|ч|час\.?|°c|rpm|1\/min|-|[dty]{2,4}[./-][m]{2}[./-][jyadt]{2,4}|[dtj]{1,2}\.?m{1,2}\.?[jya]{2,4})\s*[\])]?$/iu;

/** A whole cell that is a date: numbers in date form, or with the month's name. */
export function isDate(cell: string): boolean {
  return dayMonthYear.test(cell) || monthName.test(cell);
}

/** A whole cell that is a number, range or date, marks and units of measure included: what stands in a body, not in a header. */
export function isValue(cell: string): boolean {
  // Longer texts are notes; the bound also keeps the patterns' cost down.
  return cell.length <= 40 && /\d/.test(cell) && (number.test(cell) || isDate(cell));
}

/** A word that a fitter writes where nothing was measured. */
export function isNothingWord(cell: string): boolean {
  return cell.length <= 20 && nothing.test(cell);
}

/** A cell of a header's row of units of measure: 'mm', '[h]', '(1/100 mm)', 'yyyy-mm-dd'. */
export function isUnitOfMeasure(cell: string): boolean {
  return cell.length <= 20 && unit.test(cell);
}

/** Pattern of a cell: 'H-2051' and 'H-7' are both 'A-9'; serials, dates and numbers of one column share theirs. */
export function shapeOf(cell: string): string {
  return cell
    .slice(0, 80)
    .replace(/\d+/g, '9')
    .replace(/\p{L}+/gu, 'A')
    .replace(/\s+/g, ' ');
}
