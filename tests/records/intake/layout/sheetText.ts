/** A sheet to be written: rows of cells between lines that are written as they are. */
export interface SheetText {
  readonly delimiter: string;
  readonly lineEnd: string;
  readonly quoteAll: boolean;
  /** Each part is a ready line, or the cells of one. */
  readonly parts: readonly (string | readonly string[])[];
  readonly endsWithLineEnd: boolean;
}

/** Text of a sheet after RFC 4180, and the line at which each part starts. */
export function sheetText(sheet: SheetText): {
  readonly text: string;
  readonly startLines: readonly number[];
} {
  const { delimiter, lineEnd, quoteAll, parts } = sheet;
  const startLines: number[] = [];
  let line = 1;
  const lines = parts.map((part) => {
    startLines.push(line);
    const written =
      typeof part === 'string'
        ? part
        : part
            .map((cell) => {
              const needsQuotes = quoteAll || cell.includes(delimiter) || /["\r\n]/.test(cell);
              return needsQuotes ? `"${cell.replace(/"/g, '""')}"` : cell;
            })
            .join(delimiter);
    line += 1 + (written.match(/\n/g)?.length ?? 0);
    return written;
  });
  return { text: lines.join(lineEnd) + (sheet.endsWithLineEnd ? lineEnd : ''), startLines };
}
