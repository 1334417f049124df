import { readFileSync } from 'node:fs';

/** A file of published or independently computed chart values; sources in tests/reference/README.md. */
export function chartReference<T>(name: string): T {
  return JSON.parse(readFileSync(`tests/reference/charts/${name}.json`, 'utf8')) as T;
}
