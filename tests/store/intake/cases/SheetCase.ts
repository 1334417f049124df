/** What must come of a sheet; written by hand. */
export interface Outcome {
  /** 'unit date hours characteristic stage clock millimetres', in any order. */
  readonly used: readonly string[];
  readonly held?: readonly string[];
  /** 'column | question | choices | cells waiting'. */
  readonly asked?: readonly string[];
  /** Cells of reading columns with something in them, and how many of them are used and say that there is none. */
  readonly cells: readonly [inSheet: number, used: number, none: number];
  /** Some of the interpretations that must be listed. */
  readonly noted?: readonly string[];
}

/** A dirty sheet and what must come of it, unanswered and answered. */
export interface SheetCase extends Outcome {
  readonly title: string;
  readonly text: string;
  readonly answered?: readonly (Outcome & { readonly answers: Readonly<Record<string, string>> })[];
}

const viewing =
  'Left and right: seen from which end? The right side seen from the compressor end is 3 o’clock. | compressor end/turbine end';
/** The question for the viewing end. */
export const viewingEndOf = (columns: string, cells: number) => `${columns} | ${viewing} | ${cells}`;
