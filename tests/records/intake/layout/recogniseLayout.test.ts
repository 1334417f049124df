import { describe, expect, it } from 'vitest';
import { recogniseLayout } from '../../../../lib/records/intake/recogniseLayout';
import { encodeAs } from './encodeAs';
import { mustRead } from './readSheet';
import { workshopSheets } from './workshopSheets';

const layoutOf = (...rows: readonly string[]) => {
  const layout = recogniseLayout(encodeAs(rows.join('\n'), 'UTF-8'));
  if ('reason' in layout) throw new Error(layout.reason);
  return layout;
};
const reasonOf = (...rows: readonly string[]) => {
  const layout = recogniseLayout(encodeAs(rows.join('\n'), 'UTF-8'));
  return 'reason' in layout ? layout.reason : `recognised as ${layout.columns.join(',')}`;
};

describe('whole exports', () => {
  it('joins two header rows; the title in the first cell names no column, remarks belong to no group', () => {
    const { decoded, layout, lines } = mustRead(workshopSheets.grouped);
    expect(decoded.encoding).toBe('windows-1252');
    expect(layout).toMatchObject({ delimiter: ';', preambleLines: 0, headerRecords: 2, firstBodyLine: 3 });
    expect(layout.columns.slice(0, 7)).toEqual([
      'Motor',
      'Lader-Nr.',
      'Datum',
      'Stunden',
      'Befund / Längsspiel',
      'Befund / Schlag',
      'Befund / Spalt Turbine 12 Uhr',
    ]);
    expect(layout.columns.slice(9, 12)).toEqual([
      'Befund / 9 Uhr',
      'Zusammenbau / Längsspiel',
      'Zusammenbau / Schlag',
    ]);
    expect(layout.columns.slice(15)).toEqual(['Zusammenbau / 9 Uhr', 'Notiz']);
    expect(layout.evidence.join('\n')).toContain("'Werk Süd' in the first cell of line 1");
    expect(lines.map(({ kind }) => kind)).toEqual(['data', 'data', 'data', 'totals']);
    expect(lines[0]?.cells[4]).toBe('0,41');
  });

  it('reads a long sheet with decimal points and a comma', () => {
    const { layout, lines } = mustRead(workshopSheets.longForm);
    expect(layout).toMatchObject({ delimiter: ',', headerRecords: 1, firstBodyLine: 2 });
    expect(layout.columns[6]).toBe('reading (1/100 mm)');
    expect(lines).toHaveLength(5);
  });

  it('keeps quoted commas and line breaks in their cells', () => {
    const { decoded, layout, lines } = mustRead(workshopSheets.textInCells);
    expect(decoded.encoding).toBe('UTF-8 with byte order mark');
    expect(layout.columns[0]).toBe('Rotor');
    expect(lines.map(({ line }) => line)).toEqual([2, 3, 4, 6]);
    expect(lines[0]?.cells[2]).toBe('11,300');
    expect(lines[2]?.cells[4]).toBe('=2+2');
    expect(lines[2]?.cells[6]).toBe('plate "C" used,\u001ereplace next time');
  });

  it('reads UTF-16 with tabs', () => {
    const { decoded, layout, lines } = mustRead(workshopSheets.wide16);
    expect(decoded.encoding).toBe('UTF-16 LE');
    expect(layout).toMatchObject({ delimiter: '\t', headerRecords: 1 });
    expect(lines[1]?.cells).toEqual(['T-9', '2017-03-01', '25\u00a0110', '\u221210', '']);
  });

  it('passes over title, notes, page numbers, the header again and the average', () => {
    const { layout, lines } = mustRead(workshopSheets.printed);
    expect(layout).toMatchObject({ delimiter: ';', preambleLines: 3, headerRecords: 2, firstBodyLine: 6 });
    expect(layout.columns).toEqual(['Unit', 'Date', 'Hours / h', 'Play found / mm', 'Play left / mm']);
    expect(lines.map(({ line, kind }) => [line, kind])).toEqual([
      [6, 'data'],
      [7, 'data'],
      [8, 'footer'],
      [9, 'repeated header'],
      [10, 'repeated header'],
      [11, 'data'],
      [12, 'totals'],
      [14, 'footer'],
      [15, 'footer'],
    ]);
  });
});

describe('delimiter', () => {
  it('is not misled by decimal commas that part every line alike', () => {
    const layout = layoutOf('unit, no.;play, found', 'S-1;0,31', 'S-2;0,29', 'S-3;0,30');
    expect(layout).toMatchObject({ delimiter: ';', columns: ['unit, no.', 'play, found'] });
  });

  it('is not misled where decimal commas part even the header like the lines', () => {
    const layout = layoutOf('unit;play, found;runout, found', 'S-1;0,31;0,02', 'S-2;0,29;0,03');
    expect(layout).toMatchObject({ delimiter: ';', columns: ['unit', 'play, found', 'runout, found'] });
  });

  it('is what the sep= line says where two would do', () => {
    const rows = [
      'unit,name,site,bank;play',
      ...Array.from({ length: 20 }, (_, row) => `S,one,east,a;${row}`),
    ];
    expect(layoutOf(...rows).delimiter).toBe(',');
    expect(layoutOf('sep=;', ...rows)).toMatchObject({
      delimiter: ';',
      columns: ['unit,name,site,bank', 'play'],
    });
  });

  it('is taken from a sep= line, which is no header', () => {
    const layout = layoutOf('sep=|', 'unit|date|play', 'S-1|2020-01-02|0,31');
    expect(layout).toMatchObject({ delimiter: '|', preambleLines: 1, firstBodyLine: 3 });
    expect(layout.columns).toEqual(['unit', 'date', 'play']);
  });

  it('stands by what the lines say where the sep= line is wrong', () => {
    expect(layoutOf('sep=;', 'unit,date,play', 'S-1,2020-01-02,0.31').delimiter).toBe(',');
  });

  it('is found though lines are short or have one cell too many', () => {
    const layout = layoutOf('a,b,c,d', 'S-1,1,2,3', 'S-2,1', 'S-3,1,2', 'S-4,1,0,31,2', 'S-5,1,2,3');
    expect(layout).toMatchObject({ delimiter: ',', columns: ['a', 'b', 'c', 'd'] });
  });

  it('is none for a single column, with decimal commas or without', () => {
    expect(layoutOf('play', '0,31', '0,29', '0,33').columns).toEqual(['play']);
    expect(layoutOf('play', '0,31', '0,29', '0,33').delimiter).not.toBe(',');
    expect(layoutOf('serial', 'S-1', 'S-2').columns).toEqual(['serial']);
  });
});

describe('header', () => {
  it('has three rows: group, name, unit of measure', () => {
    const layout = layoutOf(
      ';;As found;;As left;',
      'Unit;Date;Play;Runout;Play;Runout',
      ';dd.mm.yyyy;[mm];[µm];[mm];[µm]',
      'S-1;02.01.2020;0,31;20;0,18;10',
    );
    expect(layout).toMatchObject({ headerRecords: 3, firstBodyLine: 4 });
    expect(layout.columns).toEqual([
      'Unit',
      'Date / dd.mm.yyyy',
      'As found / Play / [mm]',
      'As found / Runout / [µm]',
      'As left / Play / [mm]',
      'As left / Runout / [µm]',
    ]);
  });

  it('may name clock positions by numbers alone', () => {
    const layout = layoutOf(
      'Unit,Date,Tip clearance,,,,Remarks',
      ',,12,3,6,9,',
      'S-1,2020-01-02,0.61,0.60,0.58,0.62,',
      'S-2,2020-01-03,0.60,0.60,0.57,0.61,ok then',
    );
    expect(layout.columns).toEqual([
      'Unit',
      'Date',
      'Tip clearance / 12',
      'Tip clearance / 3',
      'Tip clearance / 6',
      'Tip clearance / 9',
      'Remarks',
    ]);
  });

  it('keeps repeated and empty names as they stand', () => {
    expect(layoutOf('unit,play,play,', 'S-1,0.3,0.2,x', 'S-2,0.4,0.1,').columns).toEqual([
      'unit',
      'play',
      'play',
      '',
    ]);
  });

  it('does not take a first row without a number for a header row', () => {
    const layout = layoutOf(
      'unit,play,runout,state',
      'S-1,n/a,n/a,planned',
      'S-2,0.31,0.02,planned',
      'S-3,0.30,0.01,unplanned',
    );
    expect(layout).toMatchObject({ headerRecords: 1, firstBodyLine: 2 });
  });

  it('is what stands first where it comes again after a first row unlike the others', () => {
    const names = 'unit,date,hours,play,runout';
    const layout = layoutOf(
      names,
      'Q,14 Mar 2019,,,',
      names,
      'S-1,2019-03-14,9120,0.3,0.02',
      'S-2,2019-03-15,9,0.3,0.02',
    );
    expect(layout).toMatchObject({ preambleLines: 0, firstBodyLine: 2 });
  });

  it('lies above a section line, which belongs to the body', () => {
    const layout = layoutOf(
      'Unit;Date;Play',
      'Engine room north;;',
      'S-1;2020-01-02;0,31',
      'S-2;2020-01-03;0,32',
    );
    expect(layout).toMatchObject({ headerRecords: 1, firstBodyLine: 2, columns: ['Unit', 'Date', 'Play'] });
  });

  it('is the first record where all is words', () => {
    const layout = layoutOf('Our own list', '', 'code,name,shape', 'gap,Gap of the plate,single');
    expect(layout).toMatchObject({ preambleLines: 2, columns: ['code', 'name', 'shape'] });
  });

  it('counts lines as the file has them where a name goes over two', () => {
    expect(layoutOf('unit,date,"play\n(mm)"', 'S-1,2020-01-02,0.31')).toMatchObject({
      firstBodyLine: 3,
      columns: ['unit', 'date', 'play (mm)'],
    });
  });

  it('is asked for where there is none', () => {
    expect(reasonOf('S-1,2020-01-02,0.31', 'S-2,2020-01-03,0.30')).toMatch(/no line with column names/);
    expect(reasonOf('', '  ', ',,')).toMatch(/no line with anything in it/);
    expect(reasonOf('sep=;')).toMatch(/nothing but its sep= line/);
    expect(reasonOf(Array.from({ length: 5000 }, () => 'n').join(','), '1,2')).toMatch(/5000 cells/);
  });
});

describe('names that look like body texts', () => {
  it.each([
    [
      'years as names',
      ['Serial;Date;Hours;2019;2020', 'H-1;14.03.2019;12480;0,31;0,33', 'H-2;15.03.2019;12481;0,32;0,34'],
      ['Serial', 'Date', 'Hours', '2019', '2020'],
      1,
    ],
    [
      'numbered names over numbered units',
      [
        'No. 1;Rotor 1;Date;Hours;Play (mm)',
        'No. 7;Rotor 4;2019-03-14;12480;0.31',
        'No. 8;Rotor 5;2019-04-14;12490;0.33',
      ],
      ['No. 1', 'Rotor 1', 'Date', 'Hours', 'Play (mm)'],
      1,
    ],
    [
      'names shaped like serials',
      ['TC-1;DATE-2;HOURS-3;PLAY-4', 'H-1;2019-03-14;12480;0.31', 'H-2;2019-04-14;12490;0.33'],
      ['TC-1', 'DATE-2', 'HOURS-3', 'PLAY-4'],
      1,
    ],
    [
      'units across the top',
      ['Measurement;Lark 1;Lark 2;Lark 3', 'Thrust play;0.31;0.32;0.33', 'Runout;0.01;0.02;0.01'],
      ['Measurement', 'Lark 1', 'Lark 2', 'Lark 3'],
      1,
    ],
    [
      'a date among the names',
      [
        'Serial;Date;Hours;Play;14.03.2020',
        'H-1;14.03.2019;12480;0,31;0,33',
        'H-2;15.03.2019;12481;0,32;0,34',
      ],
      ['Serial', 'Date', 'Hours', 'Play', '14.03.2020'],
      1,
    ],
    [
      'a name that says nothing, and stands below',
      ['Serial;Date;Hours;Play found;OK', 'H-1;14.03.2019;12480;0,31;OK', 'H-2;15.03.2019;12481;0,32;n/a'],
      ['Serial', 'Date', 'Hours', 'Play found', 'OK'],
      1,
    ],
    [
      'columns numbered above the names',
      ['1;2;3;4', 'Serial;Date;Hours;Play', 'H-1;14.03.2019;12480;0,31', 'H-2;15.03.2019;12481;0,32'],
      ['Serial', 'Date', 'Hours', 'Play'],
      2,
    ],
    [
      'columns numbered under the names',
      ['Serial;Date;Hours;Play', '1;2;3;4', 'H-1;14.03.2019;12480;0,31', 'H-2;15.03.2019;12481;0,32'],
      ['Serial', 'Date', 'Hours', 'Play'],
      1,
    ],
  ] as const)('%s', (_, rows, columns, headerLine) => {
    const layout = layoutOf(...rows);
    expect(layout.columns).toEqual(columns);
    expect(layout.firstBodyLine).toBe(headerLine + 1);
  });

  it.each([
    ['a row of words with its date', 'H-3;16.03.2019;not known;not measured;see remarks;0,35'],
    ['a row of the same word', 'H-3;16.03.2019;;not measured;not measured;not measured'],
    ['a row with serial and readings', 'H-3;unknown;not known;0,31;0,33;0,35'],
  ])('%s stays body', (_, first) => {
    const layout = layoutOf(
      'Serial;Date;Hours;Play found;Play left;Runout',
      first,
      'H-1;14.03.2019;12480;0,31;0,33;0,35',
      'H-2;15.03.2019;12481;0,32;0,34;0,35',
    );
    expect([layout.columns[0], layout.headerRecords, layout.firstBodyLine]).toEqual(['Serial', 1, 2]);
  });

  it('values alone are still no header', () => {
    expect(reasonOf('H-1;14.03.2019;12480;0,31', 'H-2;15.03.2019;12481;0,32')).toMatch(
      /no line with column names/,
    );
  });
});
