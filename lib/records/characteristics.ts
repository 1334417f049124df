/** What is measured at an overhaul, and the series that follow from it. */
export interface Characteristic {
  readonly code: string;
  readonly name: string;
  readonly shape: 'single' | 'four_clock';
  readonly neverNegative: boolean;
}

export const clockPositions = ['12', '3', '6', '9'] as const;

/** Series that four clock positions give, as suffix of the characteristic's code. */
export const fourClockSeries = ['largest', 'smallest', 'mean', 'offset'] as const;

export const builtInCharacteristics: readonly Characteristic[] = [
  { code: 'thrust_play', name: 'Thrust play', shape: 'single', neverNegative: true },
  { code: 'runout', name: 'Runout', shape: 'single', neverNegative: true },
  { code: 'tip_compressor', name: 'Tip clearance, compressor', shape: 'four_clock', neverNegative: true },
  { code: 'tip_turbine', name: 'Tip clearance, turbine', shape: 'four_clock', neverNegative: true },
  { code: 'nut_stand_out', name: 'Nut stand-out', shape: 'single', neverNegative: false },
];

/** Series codes of one characteristic: its own code if single, else one per largest, smallest, mean and offset. */
export function seriesOf(characteristic: Characteristic): readonly string[] {
  return characteristic.shape === 'single'
    ? [characteristic.code]
    : fourClockSeries.map((suffix) => `${characteristic.code}_${suffix}`);
}
