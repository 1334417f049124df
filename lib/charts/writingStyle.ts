/** How numbers may be written: the sign before decimals and what parts thousands; four digits are parted too. */
export const numberStyles = {
  'space-point': { thousands: '\u202f', decimal: '.' },
  'comma-point': { thousands: ',', decimal: '.' },
  'apostrophe-point': { thousands: '\u2019', decimal: '.' },
  'plain-point': { thousands: '', decimal: '.' },
  'space-comma': { thousands: '\u202f', decimal: ',' },
  'point-comma': { thousands: '.', decimal: ',' },
  'plain-comma': { thousands: '', decimal: ',' },
} as const;

/** How days may be written: ISO 8601, or day, month, year with points, strokes or the name of the month. */
export const dateStyles = ['iso', 'points', 'strokes', 'named'] as const;

export type NumberStyleName = keyof typeof numberStyles;
export type DateStyleName = (typeof dateStyles)[number];

/** How numbers and days are written on every page. */
export interface WritingStyle {
  readonly numbers: NumberStyleName;
  readonly dates: DateStyleName;
}

/** The style of the first visit, and of whatever leaves the pages as a file. */
export const plainWriting: WritingStyle = { numbers: 'space-point', dates: 'iso' };

let inForce: WritingStyle = plainWriting;

/** The style in force on this page. */
export function writingInForce(): WritingStyle {
  return inForce;
}

/** Puts a style in force for all that is written from now on; what is on screen has to be written anew. */
export function setWriting(style: WritingStyle): void {
  inForce = style;
}

/** What `write` gives with another style in force while it runs. */
export function writtenIn<Result>(style: WritingStyle, write: () => Result): Result {
  const before = inForce;
  inForce = style;
  try {
    return write();
  } finally {
    inForce = before;
  }
}
