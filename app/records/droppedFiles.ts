import { fromEvent } from 'file-selector';
import type { DroppedFile } from '../../lib/analysis/engine/EngineApi';

/** Name of a file with its folders, so that files of one name in two folders stay apart. */
function nameOf(file: File): string {
  const path =
    'relativePath' in file && typeof file.relativePath === 'string' ? file.relativePath : file.name;
  return path.replace(/^\.?\//, '');
}

/** The files of a drop or of a file picker, folders opened, as bytes; throws if one cannot be read. */
export async function droppedFiles(event: Event): Promise<readonly DroppedFile[]> {
  const found = (await fromEvent(event)).filter((item) => item instanceof File);
  return Promise.all(
    found.map(async (file) => {
      try {
        return { name: nameOf(file), bytes: await file.arrayBuffer() };
      } catch (error) {
        const cause = error instanceof Error ? error.message : String(error);
        throw new Error(`${nameOf(file)} cannot be read: ${cause}`);
      }
    }),
  );
}
