import { readFileSync } from 'node:fs';
import type { WearReading } from '../../../lib/stats/wear/types';

/** Readings of a reference data set; a file without a run column has one run a unit. */
export function readFleet(path: string): readonly WearReading[] {
  const [header = '', ...lines] = readFileSync(`tests/reference/${path}`, 'utf8')
    .trim()
    .replaceAll('"', '')
    .split(/\r?\n/);
  const columns = header.split(',');
  return lines.map((line) => {
    const cells = line.split(',');
    const cell = (name: string) => cells[columns.indexOf(name)] ?? '';
    const unit = cell('unit');
    return { unit, run: cell('run') || unit, x: Number(cell('x')), y: Number(cell('y')) };
  });
}

/** Parsed reference file. */
export function readReference<T>(path: string): T {
  return JSON.parse(readFileSync(`tests/reference/${path}`, 'utf8')) as T;
}
