import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { searchedUnits, unitMatches } from '../../../app/search/unitMatches';
import { unit } from '../fixture';

const found = (text: string, ...units: readonly (readonly [string, string | null])[]) =>
  unitMatches(searchedUnits(units.map(([name, engine]) => unit({ unit: name, engine }))), text, 8).shown.map(
    (one) => one.unit,
  );

describe('units that match what is typed', () => {
  test('the serial itself first, then beginnings of serials, beginnings of engines, and what holds it', () => {
    expect(
      found(
        'ns1',
        ['L-NS-1', null],
        ['A-1', 'XNS-1'],
        ['B-1', 'NS-12'],
        ['NS-10', null],
        ['C', 'Q'],
        ['NS-1', null],
      ),
    ).toEqual(['NS-1', 'NS-10', 'B-1', 'L-NS-1', 'A-1']);
  });

  test('hyphens, spaces, capitals and accents do not matter', () => {
    for (const typed of ['l-1107', 'L1107', ' l 11-07 ', 'Ｌ1107'])
      expect(found(typed, ['L-1107', null])).toEqual(['L-1107']);
    expect(found('uber', ['A', 'Über 2'])).toEqual(['A']);
  });

  test('nothing typed, or only signs, matches nothing', () => {
    for (const typed of ['', '  ', '-', '*']) expect(found(typed, ['L-1107', 'NS-2'])).toEqual([]);
  });

  test('as many as a plain filter finds, each once, and eight of them at most', () => {
    const letter = fc.constantFrom('A', 'b', '1', '-', ' ');
    const name = fc.string({ unit: letter, minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.tuple(name, fc.option(name)), { selector: ([serial]) => serial, maxLength: 40 }),
        fc.string({ unit: letter, maxLength: 3 }),
        (units, typed) => {
          const plain = (text: string | null) => (text ?? '').toLowerCase().split(/[- ]/).join('');
          const expected = units.filter(
            ([serial, engine]) =>
              plain(typed) !== '' && [serial, engine].some((one) => plain(one).includes(plain(typed))),
          );
          const rows = units.map(([serial, engine]) => unit({ unit: serial, engine }));
          const matches = unitMatches(searchedUnits(rows), typed, 8);
          expect(matches.found).toBe(expected.length);
          expect(matches.shown).toHaveLength(Math.min(8, expected.length));
          const names = matches.shown.map((one) => one.unit);
          expect(new Set(names).size).toBe(names.length);
          for (const one of names) expect(expected.map(([serial]) => serial)).toContain(one);
        },
      ),
    );
  });
});
