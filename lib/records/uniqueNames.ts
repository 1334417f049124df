import type { InputFile } from './importReport';

/** Files of one name from several folders are told apart by a number. */
export function withUniqueNames(files: readonly InputFile[]): readonly InputFile[] {
  const seen = new Map<string, number>();
  return files.map((file) => {
    const times = (seen.get(file.name) ?? 0) + 1;
    seen.set(file.name, times);
    return times === 1 ? file : { ...file, name: file.name.replace(/(\.[^.]*)?$/, ` (${times})$1`) };
  });
}
