/** A text as a ClickHouse literal. */
export function quotedText(text: string): string {
  return `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'")}'`;
}

/** A list of texts as an Array(String), the empty one too. */
export function textArray(texts: readonly string[]): string {
  return texts.length === 0 ? 'emptyArrayString()' : `[${texts.map(quotedText).join(', ')}]`;
}

const escapes: Readonly<Record<string, string>> = { t: '\t', n: '\n', r: '\r', b: '\b', f: '\f', '0': '\0' };

/** The text of a cell of TabSeparated. */
export function textOfTabCell(cell: string): string {
  return cell.includes('\\') ? cell.replaceAll(/\\(.)/gs, (_, mark: string) => escapes[mark] ?? mark) : cell;
}
