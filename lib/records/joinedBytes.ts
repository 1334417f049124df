/** Stretches of bytes one after another, copied into one. */
export function joinedBytes(stretches: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(stretches.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const stretch of stretches) {
    whole.set(stretch, at);
    at += stretch.length;
  }
  return whole;
}
