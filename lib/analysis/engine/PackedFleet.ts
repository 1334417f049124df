import type { FleetResult, MarginRow } from '../types';
import { type PackedRows, packRows, unpackRows } from './packedRows';

/** A result as it is kept and handed between threads: of its bytes nine in ten are margins. */
export interface PackedFleet extends Omit<FleetResult, 'margins'> {
  readonly margins: PackedRows;
}

/** Packs a result. */
export function packFleet(fleet: FleetResult): PackedFleet {
  return { ...fleet, margins: packRows(fleet.margins) };
}

/** The result as it was packed. */
export function unpackFleet(packed: PackedFleet): FleetResult {
  return { ...packed, margins: unpackRows<MarginRow>(packed.margins) };
}
