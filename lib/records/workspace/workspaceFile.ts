import { manifestPath } from './manifest';
import { readWorkspace } from './readWorkspace';
import { isSealed, seal, unseal } from './seal';
import type { Workspace } from './Workspace';
import { writeWorkspace } from './writeWorkspace';

/** Offset of the first entry's name in a zip, and the bytes it begins with: APPNOTE 6.3.10, 4.3.7. */
const nameOffset = 30;
const zipStart = [0x50, 0x4b, 0x03, 0x04];

/**
 * The bytes of a workspace file, sealed if there is a passphrase.
 *
 * @param savedAt ISO date and time, UTC
 */
export async function workspaceFile(
  workspace: Workspace,
  savedAt: string,
  passphrase: string,
): Promise<Uint8Array> {
  const plain = await writeWorkspace(workspace, savedAt);
  return passphrase === '' ? plain : seal(plain, passphrase);
}

/**
 * Reads a workspace file, sealed or not.
 *
 * @throws PassphraseNeeded if it is sealed and the passphrase is empty or wrong
 * @throws WorkspaceRefused with the reason if it cannot be opened
 */
export async function readWorkspaceFile(bytes: Uint8Array, passphrase: string): Promise<Workspace> {
  return readWorkspace(isSealed(bytes) ? await unseal(bytes, passphrase) : bytes);
}

/** Whether bytes begin as those of a workspace file do, so that a dropped one is not taken for an export. */
export function looksLikeWorkspace(bytes: Uint8Array): boolean {
  if (isSealed(bytes)) return true;
  const name = new TextEncoder().encode(manifestPath);
  return (
    zipStart.every((byte, index) => bytes[index] === byte) &&
    name.every((byte, index) => bytes[nameOffset + index] === byte)
  );
}
