/** A file with its bytes; one of many bytes lies in the store as a Blob. */
interface KeptFile {
  readonly bytes: Uint8Array<ArrayBuffer> | Blob;
}

/**
 * From here on a file is stored as a Blob: bytes inside a value are copied twice while it is written, which of 120 MB is more memory
 * than anything else takes at that moment.
 */
export const large_bytes = 4_000_000;

/** A value as the store takes it: large files in a list as Blobs, everything else as it is. */
export function asStored(value: unknown): unknown {
  if (!Array.isArray(value)) return value;
  return value.map((one: unknown) =>
    isFile(one) && !(one.bytes instanceof Blob) && one.bytes.byteLength >= large_bytes
      ? { ...one, bytes: new Blob([one.bytes]) }
      : one,
  );
}

/** A stored value as it was handed over; rejects where the bytes of a file cannot be read. */
export async function asHeld(value: unknown): Promise<unknown> {
  if (!Array.isArray(value)) return value;
  return Promise.all(
    value.map(async (one: unknown) =>
      isFile(one) && one.bytes instanceof Blob
        ? { ...one, bytes: new Uint8Array(await one.bytes.arrayBuffer()) }
        : one,
    ),
  );
}

function isFile(value: unknown): value is KeptFile {
  if (typeof value !== 'object' || value === null || !('bytes' in value)) return false;
  return value.bytes instanceof Uint8Array || value.bytes instanceof Blob;
}
