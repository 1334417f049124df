import type { Cell } from '../../analysis/fleetTables';
import type { GroupBy } from '../../analysis/grouping/sisterGroupOf';
import type { ChartSides } from '../../stats/charts/ChartKind';
import type { Bundle } from './bundles';
import type { DataFile } from './readDataFolder';
import type { FleetFacts } from './surveyParts';

/** One part, or several together, to be analysed by a thread. */
export interface PartTask {
  readonly part: Bundle;
  readonly shared: readonly DataFile[];
  readonly groupBy: GroupBy;
  readonly facts: FleetFacts;
  /** Hash of the program, so that results of another one are not taken up. */
  readonly version: string;
  /** Where finished parts are kept until all are. */
  readonly partials: string;
  readonly memory_MB: number;
}

/** A finished part: where its results lie, and what the parts together are checked by. */
export interface FinishedPart {
  readonly kind: 'finished';
  readonly part: string;
  /** Folders of the input that it is made of. */
  readonly folders: readonly string[];
  readonly folder: string;
  /** Latest date in the part's own records. */
  readonly latestDate: string;
  /** Days of the first and last charted reading, null if there is none. */
  readonly firstCharted: string | null;
  readonly lastCharted: string | null;
  /** Readings with a z of every unit and series, by the sides of its charts. */
  readonly histories: Readonly<Record<ChartSides, readonly number[]>>;
  readonly units: number;
  readonly groups: readonly string[];
  readonly readingsUsed: number;
  readonly readingsHeld: number;
}

/** A part of which nothing can be used, with the reasons and the rows of problems.csv. */
export interface UnusablePart {
  readonly kind: 'unusable';
  readonly part: string;
  readonly reasons: readonly string[];
  readonly problems: readonly (readonly Cell[])[];
}

/** Parts that were analysed together and must not be, see mustBeApart. */
export interface PartsApart {
  readonly kind: 'apart';
}

export type PartOutcome = FinishedPart | UnusablePart | PartsApart;
