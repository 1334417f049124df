import { tidyText } from './tidyText';

export const formulaReason = 'a formula, never evaluated';

/**
 * True for a text that a spreadsheet would compute: first character '=' or '@', or '+' before anything but one
 * plain number ('+0.02' is a signed reading, '+A1' and '+1+1' are formulas).
 */
export function isFormula(text: string): boolean {
  const tidy = tidyText(text).replace(/^'/, '');
  return (
    /^[=@]/.test(tidy) || (tidy.startsWith('+') && !/^\+[\d.,' ]*\d[.,]?(?![\d.,])[^+\-=@\d(]*$/.test(tidy))
  );
}
