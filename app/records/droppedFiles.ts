import { fromEvent } from 'file-selector';
import type { DroppedFile } from '../../lib/analysis/engine/EngineApi';

/** Name of a file with its folders, so that files of one name in two folders stay apart. */
function nameOf(file: File): string {
  const path =
    'relativePath' in file && typeof file.relativePath === 'string' ? file.relativePath : file.name;
  return path.replace(/^\.?\//, '');
}

/** Bytes of a file that are read at once: a large file in one piece would stop the page for half a second. */
const piece_bytes = 4_000_000;

async function bytesOf(file: File): Promise<ArrayBuffer> {
  const bytes = new Uint8Array(file.size);
  for (let from = 0; from < file.size; from += piece_bytes)
    bytes.set(new Uint8Array(await file.slice(from, from + piece_bytes).arrayBuffer()), from);
  return bytes.buffer;
}

/** The files of a drop or of a file picker, folders opened, as bytes; throws if one cannot be read. */
export async function droppedFiles(event: Event): Promise<readonly DroppedFile[]> {
  const found = (await fromEvent(event)).filter((item) => item instanceof File);
  return Promise.all(
    found.map(async (file) => {
      try {
        return { name: nameOf(file), bytes: await bytesOf(file) };
      } catch (error) {
        const cause = error instanceof Error ? error.message : String(error);
        throw new Error(`${nameOf(file)} cannot be read: ${cause}`);
      }
    }),
  );
}
