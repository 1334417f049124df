/** A text without the marks that stood before and after it, and a note for each. */
export interface Unmarked {
  readonly text: string;
  readonly notes: readonly string[];
}

const approximately =
  'ca|circa|approx|about|etwa|rund|env|environ|aprox|unos|omtrent|omkring|около|прибл|примерно';
const before = new RegExp(
  `^(?:\\(\\s*[*?!\\u2020\\u2021]+\\s*\\)|[*?!\\u2020\\u2021]+|[~\\u2248]|(?:${approximately})(?:\\.|(?=[\\s\\d])))\\s*`,
  'iu',
);
const after = /\s*(?:\(\s*[*?!\u2020\u2021]+\s*\)|[*?!\u2020\u2021]+\)?|[~\u2248])$/u;

function noteOf(mark: string): string {
  if (mark.includes('?')) return `'${mark}' taken off: marked doubtful`;
  return /[*!\u2020\u2021]/.test(mark)
    ? `'${mark}' taken off: a mark that may refer to a remark`
    : `'${mark}' taken off: marked approximate`;
}

/** Takes marks ('*', '?', '~', '(?)', 'ca.') off both ends of a tidied text; no digit is ever taken. */
export function takeOffMarks(text: string): Unmarked {
  const notes: string[] = [];
  let rest = text;
  for (const end of [before, after]) {
    for (let found = end.exec(rest); found !== null && found[0] !== ''; found = end.exec(rest)) {
      notes.push(noteOf(found[0].trim()));
      rest = rest.replace(end, '');
    }
  }
  return { text: rest.trim(), notes };
}
