const saveAsCsv = 'save it as CSV (UTF-8) and drop that file';

const signatures: readonly (readonly [readonly number[], string])[] = [
  [
    [0xd0, 0xcf, 0x11, 0xe0],
    `this is a spreadsheet workbook or another office document in a binary format: ${saveAsCsv}`,
  ],
  [[0x25, 0x50, 0x44, 0x46, 0x2d], 'this is a PDF document: ask for the table behind it as CSV'],
  [[0x89, 0x50, 0x4e, 0x47], 'this is a picture (PNG): type the readings into a sheet and save it as CSV'],
  [[0xff, 0xd8, 0xff], 'this is a picture (JPEG): type the readings into a sheet and save it as CSV'],
  [[0x47, 0x49, 0x46, 0x38], 'this is a picture (GIF): type the readings into a sheet and save it as CSV'],
  [[0x1f, 0x8b], 'this is a compressed file (gzip): unpack it and drop the CSV file in it'],
  [[0x37, 0x7a, 0xbc, 0xaf], 'this is a compressed archive (7z): unpack it and drop the CSV files in it'],
  [[0x7b, 0x5c, 0x72, 0x74, 0x66], `this is a word processor's document (RTF): ${saveAsCsv}`],
];

const zip = [0x50, 0x4b];
const ascii = new TextDecoder('latin1');

/** Why the file is of another kind than text with delimiters, told by its first bytes and in words that say what to do, or null. */
export function foreignFormat(bytes: Uint8Array): string | null {
  if (startsWith(bytes, zip) && (bytes[2] === 3 || bytes[2] === 5)) return zipContents(bytes);
  for (const [signature, reason] of signatures) if (startsWith(bytes, signature)) return reason;
  const start = ascii.decode(bytes.subarray(0, 2048)).replace(/^ï»¿/, '').trimStart().toLowerCase();
  if (/^<(!doctype html|html|table|head|body)/.test(start))
    return `this is a web page, whatever its name says: open it in a spreadsheet and ${saveAsCsv}`;
  if (start.startsWith('<?xml'))
    return `this is an XML document, not a CSV file: open it in a spreadsheet and ${saveAsCsv}`;
  return null;
}

function startsWith(bytes: Uint8Array, signature: readonly number[]): boolean {
  return signature.every((byte, index) => bytes[index] === byte);
}

/** Workbooks are ZIP archives; their parts' names stand in clear at the start and in the directory at the end. */
function zipContents(bytes: Uint8Array): string {
  const names =
    ascii.decode(bytes.subarray(0, 8192)) + ascii.decode(bytes.subarray(Math.max(0, bytes.length - 65_536)));
  return /xl\/|opendocument\.spreadsheet|\[Content_Types\]/.test(names)
    ? `this is a spreadsheet workbook: ${saveAsCsv}`
    : 'this is a ZIP archive: unpack it and drop the CSV files in it';
}
