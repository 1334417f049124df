import { joinedBytes } from '../joinedBytes';
import { PassphraseNeeded, WorkspaceRefused } from './Workspace';

const opening = new TextEncoder().encode('sealed workspace 1\n');
const salt_bytes = 16;
const nonce_bytes = 12;
const tag_bytes = 16;
/** Rounds of PBKDF2 with HMAC-SHA-256: OWASP Password Storage Cheat Sheet, 2023. */
const rounds = 600_000;

/**
 * Seals bytes with a passphrase: AES-256-GCM (NIST SP 800-38D) under a key from PBKDF2-HMAC-SHA-256 (RFC 8018) with 600,000
 * rounds and a random salt. Form: opening line, salt (16 bytes), nonce (12), sealed bytes with their tag.
 *
 * @throws Error if the passphrase is empty
 */
export async function seal(bytes: Uint8Array, passphrase: string): Promise<Uint8Array> {
  if (passphrase === '') throw new Error('seal requires a passphrase, got an empty one');
  const salt = crypto.getRandomValues(new Uint8Array(salt_bytes));
  const nonce = crypto.getRandomValues(new Uint8Array(nonce_bytes));
  const key = await keyOf(passphrase, salt);
  const sealed = await crypto.subtle.encrypt(
    { name: 'AES-GCM', iv: nonce, additionalData: opening },
    key,
    bytes as Uint8Array<ArrayBuffer>,
  );
  return joinedBytes([opening, salt, nonce, new Uint8Array(sealed)]);
}

/** True of bytes that seal has made. */
export function isSealed(bytes: Uint8Array): boolean {
  return opening.every((byte, index) => bytes[index] === byte);
}

/**
 * Opens sealed bytes.
 *
 * @throws PassphraseNeeded if the passphrase is empty, or wrong or the bytes changed, which cannot be told apart
 * @throws WorkspaceRefused if the bytes are cut off
 */
export async function unseal(bytes: Uint8Array, passphrase: string): Promise<Uint8Array> {
  if (passphrase === '') throw new PassphraseNeeded('This workspace is sealed: give its passphrase.');
  const salt = part(bytes, opening.length, salt_bytes);
  const nonce = part(bytes, opening.length + salt_bytes, nonce_bytes);
  const sealed = part(bytes, opening.length + salt_bytes + nonce_bytes, bytes.length);
  if (sealed.length < tag_bytes)
    throw new WorkspaceRefused('The sealed workspace is cut off: copy it again.');
  const key = await keyOf(passphrase, salt);
  try {
    return new Uint8Array(
      await crypto.subtle.decrypt({ name: 'AES-GCM', iv: nonce, additionalData: opening }, key, sealed),
    );
  } catch {
    throw new PassphraseNeeded(
      'The passphrase is wrong, or the file was changed or cut off: try again, or use another copy.',
    );
  }
}

async function keyOf(passphrase: string, salt: Uint8Array<ArrayBuffer>): Promise<CryptoKey> {
  // The same passphrase typed on another keyboard may be composed otherwise.
  const typed = new TextEncoder().encode(passphrase.normalize('NFC'));
  const material = await crypto.subtle.importKey('raw', typed, 'PBKDF2', false, ['deriveKey']);
  return crypto.subtle.deriveKey(
    { name: 'PBKDF2', hash: 'SHA-256', salt, iterations: rounds },
    material,
    { name: 'AES-GCM', length: 256 },
    false,
    ['encrypt', 'decrypt'],
  );
}

function part(bytes: Uint8Array, from: number, length: number): Uint8Array<ArrayBuffer> {
  return new Uint8Array(bytes.slice(from, from + length));
}
