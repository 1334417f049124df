import type { FleetResult, MarginRow, UnitRow } from '../types';
import type { OpenOutcome } from './EngineApi';
import { type PackedRows, rowViews, unpackRows } from './packedRows';
import { packRows } from './packRows';

/** A result as it is kept and handed to the page: units and margins by column. */
export interface PackedFleet extends Omit<FleetResult, 'margins' | 'units'> {
  readonly margins: PackedRows;
  readonly units: PackedRows;
}

/** An outcome with its result packed. */
export type PackedOutcome =
  | (Omit<Extract<OpenOutcome, { readonly ok: true }>, 'fleet'> & { readonly fleet: PackedFleet })
  | Extract<OpenOutcome, { readonly ok: false }>;

/** Packs a result. */
export function packFleet(fleet: FleetResult): PackedFleet {
  return { ...fleet, units: packRows(fleet.units), margins: packRows(fleet.margins) };
}

/** The result as it was packed; margins are read when they are asked for, see rowViews. */
export function unpackFleet(packed: PackedFleet): FleetResult {
  return {
    ...packed,
    units: unpackRows<UnitRow>(packed.units),
    margins: rowViews<MarginRow>(packed.margins),
  };
}

/** Packs what an opening came to. */
export function packOutcome(outcome: OpenOutcome): PackedOutcome {
  return outcome.ok ? { ...outcome, fleet: packFleet(outcome.fleet) } : outcome;
}

/** What an opening came to, as it was packed. */
export function unpackOutcome(outcome: PackedOutcome): OpenOutcome {
  return outcome.ok ? { ...outcome, fleet: unpackFleet(outcome.fleet) } : outcome;
}
