import { rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { ResultTable } from '../../analysis/fleetTables';
import { csvLines, writeCsv } from '../../records/csv/writeCsv';
import { TextFile } from '../TextFile';

/** A table that is written piece by piece. */
export interface OpenTable {
  /** Lines as they are. */
  text(lines: string): Promise<void>;
  end(): Promise<void>;
}

/** Tables of one run: all are written under temporary names, and take their own together once every one is whole. */
export class OutputFiles {
  private readonly names: string[] = [];

  constructor(private readonly folder: string) {}

  writeTable({ name, header, rows }: ResultTable): Promise<void> {
    return this.write(name, writeCsv(header, rows));
  }

  async write(name: string, text: string): Promise<void> {
    await writeFile(this.making(name), text);
  }

  async open(name: string, header: readonly string[]): Promise<OpenTable> {
    const file = new TextFile(this.making(name));
    await file.add(csvLines([header]));
    return {
      text: (lines) => file.add(lines),
      end: () => file.end(),
    };
  }

  async publish(): Promise<void> {
    for (const name of this.names)
      await rename(join(this.folder, `${name}.csv.part`), join(this.folder, `${name}.csv`));
  }

  private making(name: string): string {
    this.names.push(name);
    return join(this.folder, `${name}.csv.part`);
  }
}
