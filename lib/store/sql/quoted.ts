/** A text as an SQL literal. */
export function quoted(value: string): string {
  return `'${value.replaceAll("'", "''")}'`;
}
