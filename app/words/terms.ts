/** What a term of the house means, and the paragraph of Methods that says more, if one does. */
export interface TermMeaning {
  readonly word: string;
  readonly says: string;
  readonly methods: string | null;
}

/** The words that pages, files and code share; each one means this and nothing else. */
export const terms = {
  unit: {
    word: 'unit',
    says: 'One rotating assembly of a turbocharger, known by its serial. It may sit on several engines in its life.',
    methods: null,
  },
  position: {
    word: 'position',
    says: 'A place where a unit is installed: site, engine and, where an engine has more than one, the bank.',
    methods: null,
  },
  frame: {
    word: 'frame',
    says: 'The type and size of a unit. Limits and spare parts belong to a frame.',
    methods: null,
  },
  sisterGroup: {
    word: 'sister group',
    says: 'Units that are compared with each other and learn from each other: those of one frame, or of one frame and site, or of one frame and duty.',
    methods: 'sisters',
  },
  overhaul: {
    word: 'overhaul',
    says: 'One opening of one unit, with its date, its hours, the workshop, the parts fitted and the readings taken.',
    methods: null,
  },
  stage: {
    word: 'as found / as left',
    says: 'When a reading was taken: as found, before the unit is stripped, or as left, after it is put together again.',
    methods: 'runs',
  },
  characteristic: {
    word: 'characteristic',
    says: 'What is measured, such as thrust play, runout or a tip clearance.',
    methods: 'series',
  },
  clockPosition: {
    word: 'clock position',
    says: 'Where round the casing a gap is read: 12, 3, 6 or 9 o’clock, seen from the compressor end.',
    methods: 'clearance-circle',
  },
  series: {
    word: 'series',
    says: 'One number followed over time. A characteristic read at four clock positions gives four: the largest, the smallest, the mean and the offset.',
    methods: 'series',
  },
  run: {
    word: 'run',
    says: 'Hours over which a series moves steadily: from the assembly or the new part that resets it to the next one.',
    methods: 'runs',
  },
  runHours: {
    word: 'run hours',
    says: 'Hours since the run started.',
    methods: 'runs',
  },
  limit: {
    word: 'limit',
    says: 'The value of the table that a series must not pass, upwards or downwards. For readings as left the table gives a range for assembly, too.',
    methods: 'margin',
  },
  margin: {
    word: 'margin',
    says: 'What is left: from the level to the limit, in mm. It is below zero once the limit is passed.',
    methods: 'margin',
  },
  level: {
    word: 'level',
    says: 'What the series stands at now by the model, without the noise of the gauge. ± is one standard deviation.',
    methods: 'gauge-noise',
  },
  early: {
    word: 'early',
    says: 'The hours or the date by which the limit is met with a chance of 10 %: nine times in ten it comes later.',
    methods: 'margin',
  },
  median: {
    word: 'median',
    says: 'The hours or the date by which the limit is met with a chance of 50 %: as likely before as after.',
    methods: 'margin',
  },
  late: {
    word: 'late',
    says: 'The hours or the date by which the limit is met with a chance of 90 %: one time in ten it comes later still.',
    methods: 'margin',
  },
  chance: {
    word: 'chance',
    says: 'The probability that the level is at or past the limit by a date, mostly that of the next planned overhaul.',
    methods: 'chance-of-a-unit',
  },
  verdict: {
    word: 'verdict',
    says: 'What the margin and the chance say about a series against its limit. Without a limit there is none.',
    methods: 'decisions',
  },
  drift: {
    word: 'drift',
    says: 'Readings that keep away from what the unit’s own history and its sisters foretell.',
    methods: 'forecast-residuals',
  },
  signal: {
    word: 'signal',
    says: 'A rule of a chart was broken. It names the rule, the readings and the date.',
    methods: 'charts',
  },
  heldRow: {
    word: 'held row',
    says: 'A row, or one of its cells, that is not used until a person decides. It is always listed with the reason.',
    methods: null,
  },
  workspace: {
    word: 'workspace',
    says: 'Your files, decisions, limits, parts and plans together: kept in this browser, saved to one file and opened from it.',
    methods: null,
  },
} as const satisfies Readonly<Record<string, TermMeaning>>;

export type TermName = keyof typeof terms;

/** All terms, in the order of the list. */
export const termNames = Object.keys(terms) as readonly TermName[];

/** Name of a term in the list of Methods, as an address carries it. */
export function termId(name: TermName): string {
  return `word-${terms[name].word.replaceAll(/[^a-z]+/g, '-')}`;
}
