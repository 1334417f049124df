export function buildProgram(
  root: string,
  entries: Readonly<Record<string, string>>,
  hash: string,
): Promise<string>;
