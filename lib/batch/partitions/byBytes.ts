/** Compares texts as the database orders them: by the bytes of UTF-8. */
export function byBytes(a: string, b: string): number {
  return Buffer.compare(Buffer.from(a), Buffer.from(b));
}
