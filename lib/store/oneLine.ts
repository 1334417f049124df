/** A text as it stands in a normalised body, which keeps each row on one line: line breaks as in cells of a file. */
export function onOneLine(text: string): string {
  return text.replaceAll('\u001f', ' ').replaceAll(/\r\n?|\n/g, '\u001e');
}

/** SQL for the text that onOneLine was given, from a column of a body. */
export function withLinesSql(column: string): string {
  return `replace(${column}, chr(30), chr(10))`;
}
