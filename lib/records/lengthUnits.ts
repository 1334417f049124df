/** Units of measure that a reading may be given in, with the factor to millimetres (exact by definition: 1 in = 25.4 mm). */
export const millimetresPer = {
  mm: 1,
  um: 0.001,
  in: 25.4,
  mil: 0.0254,
  '0.01mm': 0.01,
} as const;

export type LengthUnit = keyof typeof millimetresPer;

export const lengthUnits = Object.keys(millimetresPer) as [LengthUnit, ...LengthUnit[]];
