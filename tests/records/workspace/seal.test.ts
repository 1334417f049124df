import { createDecipheriv, pbkdf2Sync } from 'node:crypto';
import { expect, it } from 'vitest';
import { isSealed, seal, unseal } from '../../../lib/records/workspace/seal';
import { PassphraseNeeded, WorkspaceRefused } from '../../../lib/records/workspace/Workspace';

const plain = new TextEncoder().encode('workspace bytes');

it('gives the bytes back for the passphrase, composed one way or another', async () => {
  const sealed = await seal(plain, 'Zähler 12');
  expect(isSealed(sealed)).toBe(true);
  expect(isSealed(plain)).toBe(false);
  expect(await unseal(sealed, 'Za\u0308hler 12')).toEqual(plain);
});

it('is AES-256-GCM under PBKDF2-HMAC-SHA-256 of 600,000 rounds, as another implementation opens it', async () => {
  const sealed = Buffer.from(await seal(plain, 'correct horse'));
  const line = Buffer.from('sealed workspace 1\n');
  const [salt, nonce] = [sealed.subarray(19, 35), sealed.subarray(35, 47)];
  const key = pbkdf2Sync('correct horse', salt, 600_000, 32, 'sha256');
  const decipher = createDecipheriv('aes-256-gcm', key, nonce).setAAD(line).setAuthTag(sealed.subarray(-16));
  expect(Buffer.concat([decipher.update(sealed.subarray(47, -16)), decipher.final()])).toEqual(
    Buffer.from(plain),
  );
});

it('two seals of one workspace have nothing in common but the opening line', async () => {
  const [one, other] = [await seal(plain, 'a'), await seal(plain, 'a')];
  expect(one.slice(19, 47)).not.toEqual(other.slice(19, 47));
});

it('a wrong passphrase, none, and a changed byte are told', async () => {
  const sealed = await seal(plain, 'right');
  await expect(unseal(sealed, 'wrong')).rejects.toThrow(PassphraseNeeded);
  await expect(unseal(sealed, '')).rejects.toThrow(/give its passphrase/);
  const changed = sealed.slice();
  changed[50] = (changed[50] as number) ^ 1;
  await expect(unseal(changed, 'right')).rejects.toThrow(/wrong, or the file was changed/);
  await expect(unseal(sealed.slice(0, 40), 'right')).rejects.toThrow(WorkspaceRefused);
  await expect(seal(plain, '')).rejects.toThrow('requires a passphrase');
});
