import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readRemark } from '../../../../lib/records/intake/remarks/readRemark';

const engines = ['SKU-2', 'AUK-1', 'ME 3', '2'];

/** The facts of a remark as short texts: kind | day (or other day) | hours. */
function factsOf(text: string): readonly string[] {
  return readRemark(text, engines).map((fact) => {
    const other = fact.date?.otherwise ? ` or ${fact.date.otherwise}` : '';
    const day = `${fact.date?.iso ?? 'no day'}${other}`;
    if (fact.kind === 'meter replaced')
      return `${fact.kind} | ${day} | ${fact.lastHours ?? 'no hours'}, new from ${fact.newMeterHours}`;
    if (fact.kind === 'meter corrected') return `${fact.kind} | ${day} | ${fact.hours ?? 'no hours'}`;
    return `${fact.kind} | ${day} | engine ${fact.engineHours ?? '-'}, unit ${fact.unitHours ?? '-'}, from ${fact.fromEngine ?? '-'}`;
  });
}

describe('a remark on the hour meter', () => {
  it.each([
    ['hour meter replaced 2015-11-08 at 26140', 'meter replaced | 2015-11-08 | 26140, new from 0'],
    ['Meter renewed on 8 November 2015 at 26,140 h', 'meter replaced | 2015-11-08 | 26140, new from 0'],
    [
      'Betriebsstundenzähler am 08.11.2015 bei 26.140 h getauscht',
      'meter replaced | 2015-11-08 | 26140, new from 0',
    ],
    [
      'Zähler getauscht am 21.11.2015, alter Stand 26.140 Std., neuer beginnt bei 35 h',
      'meter replaced | 2015-11-21 | 26140, new from 35',
    ],
    ['compteur remplacé le 21/11/2015 à 26 140 h', 'meter replaced | 2015-11-21 | 26140, new from 0'],
    ['horómetro cambiado el 21/11/2015 a las 26.140 h', 'meter replaced | 2015-11-21 | 26140, new from 0'],
    ['timeteller byttet 21.11.2015 ved 26 140 timer', 'meter replaced | 2015-11-21 | 26140, new from 0'],
    ['счётчик заменён 21.11.2015 при 26 140 ч', 'meter replaced | 2015-11-21 | 26140, new from 0'],
    ['meter corrected by +312 h on 2021-09-03', 'meter corrected | 2021-09-03 | 312'],
    ['Zähler am 03.09.2021 um -312 h korrigiert', 'meter corrected | 2021-09-03 | -312'],
    ['compteur corrigé de 40 h le 21/09/2021', 'meter corrected | 2021-09-21 | 40'],
  ])('%s', (text, fact) => {
    expect(factsOf(text)).toEqual([fact]);
  });

  it('keeps both days that a date with slashes may mean', () => {
    expect(factsOf('meter replaced 08/11/2015 at 26140')).toEqual([
      'meter replaced | 2015-11-08 or 2015-08-11 | 26140, new from 0',
    ]);
  });

  it('leaves out what is not said, and a number that may be one of several', () => {
    expect(factsOf('meter replaced')).toEqual(['meter replaced | no day | no hours, new from 0']);
    expect(factsOf('meter replaced in 2015')).toEqual(['meter replaced | no day | no hours, new from 0']);
    expect(factsOf('meter replaced at 26140 h, at 27000 h')).toEqual([
      'meter replaced | no day | no hours, new from 0',
    ]);
    expect(factsOf('meter replaced, order 20177, at 26140 h')).toEqual([
      'meter replaced | no day | 26140, new from 0',
    ]);
  });
});

describe('a remark on where the unit sat', () => {
  it.each([
    ['unit exchanged 2016-05-21; this one came with 16200 h', '2016-05-21 | engine -, unit 16200, from -'],
    [
      'unit exchanged 2016-05-21 at 3310, new one with 16,200 h',
      '2016-05-21 | engine 3310, unit 16200, from -',
    ],
    ['was on SKU-2; fitted here 2016-08-19 at 36250', '2016-08-19 | engine 36250, unit -, from SKU-2'],
    ['moved from engine 2, fitted here 2016-08-19 at 36250', '2016-08-19 | engine 36250, unit -, from 2'],
    [
      'Läufer getauscht am 21.05.2016; dieser kam mit 16.200 Std.',
      '2016-05-21 | engine -, unit 16200, from -',
    ],
    [
      'war auf ME 3; hier eingebaut am 19.08.2016 bei 36.250 h',
      '2016-08-19 | engine 36250, unit -, from ME 3',
    ],
    [
      'turbocompresseur échangé le 21/05/2016 ; celui-ci est arrivé avec 16 200 h',
      '2016-05-21 | engine -, unit 16200, from -',
    ],
    ['était sur AUK-1 ; monté ici le 19/08/2016 à 36 250 h', '2016-08-19 | engine 36250, unit -, from AUK-1'],
    ['turbo cambiado 21/05/2016; este llegó con 16.200 horas', '2016-05-21 | engine -, unit 16200, from -'],
    [
      'estaba en AUK-1; montado aquí el 19/08/2016 a 36.250 h',
      '2016-08-19 | engine 36250, unit -, from AUK-1',
    ],
    ['aggregat byttet 21.05.2016; denne kom med 16 200 timer', '2016-05-21 | engine -, unit 16200, from -'],
    [
      'var på SKU-2; montert her 19.08.2016 ved 36 250 timer',
      '2016-08-19 | engine 36250, unit -, from SKU-2',
    ],
    ['ротор заменён 21.05.2016; этот пришёл с 16 200 ч', '2016-05-21 | engine -, unit 16200, from -'],
    [
      'был на SKU-2; установлен здесь 19.08.2016 при 36 250 ч',
      '2016-08-19 | engine 36250, unit -, from SKU-2',
    ],
  ])('%s', (text, fact) => {
    expect(factsOf(text)).toEqual([`unit fitted | ${fact}`]);
  });
});

describe('a remark on other things', () => {
  it.each([
    'delivery record',
    'thrust bearing replaced at 26140',
    'Axiallager erneuert bei 26.140 h',
    'nozzle ring exchanged; shaft polished',
    'TB-L fitted at 26140 h',
    'oil changed, filter new',
    'meter not replaced',
    'meter to be replaced at 30000 h',
    'Zähler muss getauscht werden',
    'compteur à remplacer',
    'rotor balanced to 0.5 g',
    'runout high at 12, 0.05 mm, cleaned with 3 h soak',
    'engine at 75 % load for 200 h',
  ])('%s: no fact', (text) => {
    expect(factsOf(text)).toEqual([]);
  });

  it('never throws, and never makes hours or days that are none', () => {
    const bits = fc.constantFrom(
      'meter',
      'replaced',
      'unit',
      'exchanged',
      'fitted here',
      '§h9§',
      '§d7§',
      '§e3§',
      '31.04.2016',
      '2016-02-30',
      '1e9 h',
      'at',
      '-5',
      '99999999999 h',
      ';',
      '.',
      'SKU-2',
    );
    fc.assert(
      fc.property(fc.array(fc.oneof(bits, fc.string()), { maxLength: 12 }), (parts) => {
        for (const fact of readRemark(parts.join(' '), engines)) {
          if (fact.date !== null)
            expect(new Date(fact.date.iso).toISOString().slice(0, 10)).toBe(fact.date.iso);
          const numbers =
            fact.kind === 'meter replaced'
              ? [fact.lastHours, fact.newMeterHours]
              : fact.kind === 'meter corrected'
                ? [fact.hours]
                : [fact.engineHours, fact.unitHours];
          for (const hours of numbers)
            if (hours !== null) expect(Math.abs(hours)).toBeLessThanOrEqual(1_000_000);
        }
      }),
      { numRuns: 2000, seed: 20260103 },
    );
  });
});
