import { describe, expect, it } from 'vitest';
import { decodeText } from '../../../../lib/records/intake/decodeText';
import { encodeAs, encodings } from './encodeAs';

const text = 'Läufer;Größe\nQ-1;0,31 – gut\n';
const russian = '№;Ротор;Осевой зазор до разборки, мм;Наработка, ч\n1;ТК-1;0,31;12 480\n';
const latin = (bytes: readonly number[]) => decodeText(Uint8Array.from(bytes));
const codes = (ascii: string) => Array.from(ascii, (character) => character.charCodeAt(0));
const reasonOf = (bytes: Uint8Array) => {
  const decoded = decodeText(bytes);
  return 'reason' in decoded ? decoded.reason : `decoded as ${decoded.encoding}`;
};

describe('decodeText', () => {
  it.each(encodings)('reads %s', (encoding) => {
    const written = encoding === 'windows-1251' ? russian : text;
    const decoded = decodeText(encodeAs(written, encoding));
    if ('reason' in decoded) throw new Error(decoded.reason);
    expect(new TextDecoder().decode(decoded.bytes)).toBe(written);
    const named =
      encoding === 'UTF-8 marked' ? 'UTF-8 with byte order mark' : encoding.replace(' marked', '');
    expect(decoded.encoding).toBe(named);
  });

  it('does not copy clean UTF-8', () => {
    for (const encoding of ['UTF-8', 'UTF-8 marked'] as const) {
      const bytes = encodeAs(text, encoding);
      const decoded = decodeText(bytes);
      if ('reason' in decoded) throw new Error(decoded.reason);
      expect(decoded.bytes.buffer).toBe(bytes.buffer);
      expect(decoded.bytes.byteOffset).toBe(encoding === 'UTF-8' ? 0 : 3);
    }
  });

  it('reads UTF-16 without a mark in Russian, where few bytes are zero', () => {
    const long = 'Агрегат;Наработка\nТК-1;осмотр подшипников и лабиринтных уплотнений\n';
    for (const encoding of ['UTF-16 LE', 'UTF-16 BE'] as const) {
      const decoded = decodeText(encodeAs(long, encoding));
      if ('reason' in decoded) throw new Error(decoded.reason);
      expect([decoded.encoding, new TextDecoder().decode(decoded.bytes)]).toEqual([encoding, long]);
    }
  });

  it('decodes characters that a piece boundary cuts through', () => {
    const long = `${'x'.repeat((1 << 20) - 1)}ü€${'é'.repeat(1 << 20)}\n`;
    for (const encoding of ['UTF-8', 'UTF-16 BE marked', 'windows-1252'] as const) {
      const decoded = decodeText(encodeAs(long, encoding));
      if ('reason' in decoded) throw new Error(decoded.reason);
      expect(new TextDecoder().decode(decoded.bytes) === long).toBe(true);
    }
  });

  it('keeps UTF-8 with a damaged place or a cut-off end, and says so', () => {
    const sound = encodeAs('größe;Länge;Prüfstand;Öl;Maß;für', 'UTF-8');
    const damaged = decodeText(Uint8Array.from([...sound, 0xff, 0x3b, 0x31]));
    const cut = decodeText(encodeAs('für', 'UTF-8').subarray(0, 2));
    const cutLater = decodeText(encodeAs('größe;für;ü', 'UTF-8').slice(0, -1));
    expect(damaged).toMatchObject({ encoding: 'UTF-8', evidence: expect.stringContaining('1 place') });
    expect(cut).toMatchObject({ encoding: 'windows-1252' });
    expect(cutLater).toMatchObject({ encoding: 'UTF-8', evidence: expect.stringContaining('1 place') });
  });

  it.each([
    [
      'workbook',
      [...codes('PK\u0003\u0004'), 20, 0, 6, 0, ...codes('[Content_Types].xml'), 0],
      /spreadsheet workbook: save it as CSV/,
    ],
    ['archive', [...codes('PK\u0003\u0004'), 20, 0, ...codes('notes.txt'), 0], /ZIP archive: unpack it/],
    ['old workbook', [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1], /workbook .* binary format: save it as CSV/],
    ['PDF', codes('%PDF-1.7\n'), /PDF document/],
    ['picture', [0x89, ...codes('PNG\r\n\u001a\n'), 0], /picture \(PNG\)/],
    ['web page', codes('\r\n<html><table><tr><td>unit'), /web page/],
    ['nothing', [], /empty/],
    ['a mark alone', [0xef, 0xbb, 0xbf], /empty/],
    ['a UTF-16 mark alone', [0xff, 0xfe], /empty/],
    ['zero bytes of no pattern', [...codes('unit,date\nS-1,'), 0, 0, 0, 0, ...codes('2020')], /not text/],
    ['control characters', [0x80, 1, 2, 3, 4, 5, 6, 7, 8], /not text/],
    [
      'Cyrillic in KOI8-R', // 'Ротор;осевой зазор до'
      [
        0xf2, 0xcf, 0xd4, 0xcf, 0xd2, 0x3b, 0xcf, 0xd3, 0xc5, 0xd7, 0xcf, 0xca, 0x20, 0xda, 0xc1, 0xda, 0xcf,
        0xd2, 0x20, 0xc4, 0xcf,
      ],
      /Cyrillic in KOI8-R.*save the sheet as CSV/,
    ],
    [
      'Cyrillic in code page 866', // 'Ротор;осевой зазор до'
      [
        0x90, 0xae, 0xe2, 0xae, 0xe0, 0x3b, 0xae, 0xe1, 0xa5, 0xa2, 0xae, 0xa9, 0x20, 0xa7, 0xa0, 0xa7, 0xae,
        0xe0, 0x20, 0xa4, 0xae,
      ],
      /Cyrillic in code page 866.*save the sheet as CSV/,
    ],
  ] as const)('refuses %s', (_, bytes, reason) => {
    const decoded = latin(bytes);
    expect('reason' in decoded ? decoded.reason : decoded.encoding).toMatch(reason);
  });

  it('takes no-break spaces between digits for what they are, however many', () => {
    const written = `unit\tdate\thours\n${'T-1\t2019-01-01\t12\u00a0162\n'.repeat(60)}`;
    const decoded = decodeText(encodeAs(written, 'windows-1252'));
    if ('reason' in decoded) throw new Error(decoded.reason);
    expect(decoded.encoding).toBe('windows-1252');
    expect(new TextDecoder().decode(decoded.bytes)).toBe(written);
  });

  it.each([
    'Агрег;дата\n',
    'ДАТА;НАРАБОТКА;ОСЕВОЙ ЗАЗОР\n',
    'unit;date;hours;thrust play left (мм)\nT-1;2019-01-01;100;0,2\n',
    'Serial;Date;Remarks\nT-1;2019-01-01;подшипник заменён\n',
  ])('reads %j in windows-1251, and says why', (written) => {
    const decoded = decodeText(encodeAs(written, 'windows-1251'));
    if ('reason' in decoded) throw new Error(decoded.reason);
    expect(new TextDecoder().decode(decoded.bytes)).toBe(written);
    expect(decoded).toMatchObject({
      encoding: 'windows-1251',
      evidence: expect.stringContaining('as frequent as in Russian'),
    });
  });

  it.each([
    'Größe;0,3 µm\n',
    'Spalt °;½ µm\n',
    '25 µ\n',
    'ÜBERHOLUNG;LÄUFER;MASS für Öl\n',
    'måling før åpning;øvre lager\n',
    'année;relevé;créée;Noël\n',
    'señal;año;después\n',
  ])('reads %j in windows-1252', (written) => {
    expect(reasonOf(encodeAs(written, 'windows-1252'))).toBe('decoded as windows-1252');
  });

  it('does not call accented Western European words Cyrillic', () => {
    expect(reasonOf(encodeAs('Évaluée;créée;Prüfgröße;ÄÖÜ;año\n', 'windows-1252'))).toBe(
      'decoded as windows-1252',
    );
  });

  it('costs little for 100 MB of clean UTF-8', () => {
    const bytes = new Uint8Array(100_000_000).fill(0x61);
    bytes.set(encodeAs('unit,größe\n', 'UTF-8'));
    const start = performance.now();
    const decoded = decodeText(bytes);
    expect(performance.now() - start).toBeLessThan(5000);
    expect('bytes' in decoded && decoded.bytes.buffer === bytes.buffer).toBe(true);
  });
});
