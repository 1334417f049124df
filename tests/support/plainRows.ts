/** Rows with properties of their own in place of views, so that they compare. */
export function plainRows<Row extends object>(rows: readonly Row[]): readonly Row[] {
  return rows.map((row) => {
    const plain: Record<string, unknown> = {};
    for (const name in row) plain[name] = row[name];
    return plain as Row;
  });
}
