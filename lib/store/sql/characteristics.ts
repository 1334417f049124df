import { builtInCharacteristics } from '../../records/characteristics';
import { quoted } from './quoted';

/** All characteristics, built in or added by the user; an added one may not take a built-in code. */
export const allCharacteristicsSql = `
  CREATE TABLE all_characteristics AS SELECT * REPLACE (CAST(characteristic AS readings_characteristic) AS characteristic) FROM (
  SELECT * FROM (VALUES ${builtInCharacteristics
    .map((c) => `(${quoted(c.code)}, ${quoted(c.name)}, ${quoted(c.shape)}, ${c.neverNegative})`)
    .join(', ')}) AS built_in(characteristic, name, shape, never_negative)
  UNION ALL SELECT characteristic, name, shape, never_negative = 'yes' FROM characteristics
    WHERE characteristic NOT IN (${builtInCharacteristics.map((c) => quoted(c.code)).join(', ')}));`;
