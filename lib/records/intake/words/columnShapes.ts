/** Share (0 to 1) of the filled texts for which the test holds; 0 if none is filled. */
export function shareOf(texts: readonly string[], test: (text: string) => boolean): number {
  const filled = texts.map((text) => text.trim()).filter((text) => text !== '' && text !== '-');
  return filled.length === 0 ? 0 : filled.filter(test).length / filled.length;
}

/** Whether any text of the column is filled. */
export function isFilled(texts: readonly string[]): boolean {
  return texts.some((text) => text.trim() !== '');
}

/** A date in figures with separators, or with the name of a month; a serial number of a spreadsheet is none. */
export function looksLikeDate(text: string): boolean {
  return (
    /^\d{4}([-./ ])\d{1,2}\1\d{1,2}(?!\d)/.test(text) ||
    /^\d{1,2}([-./ ])\d{1,2}\1(\d{4}|\d{2})(?!\d)/.test(text) ||
    /^\d{1,2}[ .-]*(de )?\p{L}{3,10}\.?[ .,-]*(de )?(\d{4}|\d{2})(?!\d)/u.test(text) ||
    /^\p{L}{3,10}\.? \d{1,2},? \d{4}$/u.test(text)
  );
}

/** A number with any signs, marks and separators; letters only as a unit of up to four after it. */
export function looksLikeNumber(text: string): boolean {
  return /^[^\p{L}\p{N}]{0,3}\p{N}[\p{N}\s.,'’/…–-]*\s*[^\p{N}]{0,4}$/u.test(text) && !looksLikeDate(text);
}

/** A code such as 'H-2051': letters and figures, no decimal sign. */
export function looksLikeCode(text: string): boolean {
  return /^(?=.*\p{L})(?=.*\p{N})[\p{L}\p{N}/ _-]{2,20}$/u.test(text) && !looksLikeDate(text);
}

/** Hours as whole numbers: at least half from 1,000 to 300,000, and most of them different. */
export function lookLikeHours(texts: readonly string[]): boolean {
  const filled = texts.map((text) => text.replace(/[\s.,'’hH]/g, '')).filter((text) => text !== '');
  if (filled.length < 3) return false;
  const large = filled.filter(
    (text) => /^\d{4,6}$/.test(text) && Number(text) >= 1000 && Number(text) <= 300_000,
  );
  return large.length >= filled.length / 2 && new Set(filled).size > filled.length / 2;
}
