import type { InputFile } from '../../lib/records/importReport';

/** A file from text, UTF-8; leading and trailing blank lines of a template are cut off. */
export function textFile(name: string, text: string): InputFile {
  return { name, bytes: new TextEncoder().encode(`${text.trim()}\n`) };
}
