import { isMarkedCell } from './spreadsheetText';

/** Byte that parts fields in a normalised body: a control character that no sheet holds, so that no quoting is needed. */
export const fieldSeparator = 0x1f;
/** Byte that stands for a line break inside a quoted cell. */
export const lineBreakInCell = 0x1e;

const quote = 0x22;
const lf = 0x0a;
const cr = 0x0d;
const space = 0x20;
/** A quoted cell longer than this was not meant as one: its opening quote is a stray mark. */
const longestQuotedCell = 32_768;
/** A line longer than this is no overhaul sheet's. */
export const longestRecord_bytes = 262_144;

/** The output grows from here as it is needed: nearly all files are plain, and nothing but their header goes through it. */
const firstOutput_bytes = 1 << 13;

/** What one record came to. */
export type RecordFault = 'unclosed quote' | 'too long' | null;

/**
 * Reads records from CSV bytes one after another into one normalised output buffer.
 *
 * Quotes follow RFC 4180; a quote that is never closed, or closed before other text, counts as an ordinary character
 * and the record says so. Line ends may be LF, CRLF or CR, mixed.
 */
export class RecordReader {
  /** Normalised bytes: fields parted by `fieldSeparator`, records by LF. */
  output: Uint8Array;
  outputLength = 0;
  /** Next byte to read. */
  position: number;
  /** Line of the next byte, counted from 1. */
  line = 1;
  /** Of the record read last. */
  fieldCount = 0;
  isBlank = true;
  fault: RecordFault = null;

  constructor(
    private readonly input: Uint8Array,
    private readonly delimiter: number,
    start: number,
    /** Whether the apostrophe with which our own files keep a cell from being computed is taken off. */
    private readonly takesMarksOff = false,
  ) {
    this.position = start;
    this.output = new Uint8Array(firstOutput_bytes);
  }

  get atEnd(): boolean {
    return this.position >= this.input.length;
  }

  /** Goes on at the start of another line. */
  moveTo(position: number, line: number): void {
    this.position = position;
    this.line = line;
  }

  /** Appends one byte to the output. */
  push(byte: number): void {
    if (this.outputLength >= this.output.length) {
      const larger = new Uint8Array(this.output.length * 2);
      larger.set(this.output);
      this.output = larger;
    }
    this.output[this.outputLength++] = byte;
  }

  /** Reads the next record to the output (without a final LF) and moves on to the next line. */
  read(): void {
    const { input, delimiter } = this;
    const start = this.position;
    this.fieldCount = 1;
    this.isBlank = true;
    this.fault = null;
    let fieldStart = true;
    while (this.position < input.length) {
      const byte = input[this.position] as number;
      if (byte === lf || byte === cr) {
        this.endLine(byte);
        break;
      }
      if (this.position - start > longestRecord_bytes) this.fault = 'too long';
      if (byte === quote && fieldStart && this.fault === null && this.readQuoted()) {
        fieldStart = false;
        continue;
      }
      if (fieldStart && this.takesMarksOff && isMarkedCell(input, this.position, delimiter)) {
        this.position++;
        fieldStart = false;
        continue;
      }
      this.position++;
      if (byte === delimiter) {
        this.push(fieldSeparator);
        this.fieldCount++;
        fieldStart = true;
        continue;
      }
      if (byte !== space) {
        fieldStart = false;
        this.isBlank = false;
      }
      if (this.fault !== 'too long')
        this.push(byte === fieldSeparator || byte === lineBreakInCell ? space : byte);
    }
  }

  private endLine(byte: number): void {
    this.position++;
    if (byte === cr && this.input[this.position] === lf) this.position++;
    this.line++;
  }

  /** Reads a quoted cell from its opening quote; false, with nothing consumed, if it is not properly closed. */
  private readQuoted(): boolean {
    const { input } = this;
    const outputStart = this.outputLength;
    let at = this.position + 1;
    if (this.takesMarksOff && isMarkedCell(input, at, null)) at++;
    let lines = 0;
    let hasText = false;
    const end = Math.min(input.length, at + longestQuotedCell);
    while (at < end) {
      const byte = input[at] as number;
      if (byte === quote) {
        if (input[at + 1] === quote) {
          this.push(quote);
          hasText = true;
          at += 2;
          continue;
        }
        const after = input[at + 1];
        if (
          after !== undefined &&
          after !== this.delimiter &&
          after !== lf &&
          after !== cr &&
          after !== space
        )
          break;
        this.position = at + 1;
        this.line += lines;
        if (hasText) this.isBlank = false;
        return true;
      }
      if (byte === lf || (byte === cr && input[at + 1] !== lf)) lines++;
      else if (byte !== space && byte !== cr) hasText = true;
      if (byte === lf || byte === fieldSeparator) this.push(lineBreakInCell);
      else if (byte !== cr) this.push(byte);
      else if (input[at + 1] !== lf) this.push(lineBreakInCell);
      at++;
    }
    this.outputLength = outputStart;
    this.fault = 'unclosed quote';
    return false;
  }
}
