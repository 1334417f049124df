import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readWorkspace } from '../../../lib/records/workspace/readWorkspace';
import { WorkspaceRefused } from '../../../lib/records/workspace/Workspace';
import { writeWorkspace } from '../../../lib/records/workspace/writeWorkspace';
import { savedAt, workspace } from './changedWorkspace';

describe('a workspace file', () => {
  it('gives files and journal back to the last byte, whatever the names and bytes', async () => {
    const file = fc.record({
      name: fc.string({ minLength: 1, unit: 'binary' }),
      bytes: fc.uint8Array({ maxLength: 300 }),
    });
    const files = fc.uniqueArray(file, { selector: ({ name }) => name.toWellFormed(), maxLength: 6 });
    await fc.assert(
      fc.asyncProperty(files, async (given) => {
        const named = given.map((one) => ({ ...one, name: one.name.toWellFormed() }));
        const whole = { files: named, journal: workspace.journal };
        expect(await readWorkspace(await writeWorkspace(whole, savedAt))).toEqual(whole);
      }),
      { numRuns: 200 },
    );
  });

  it('is the same bytes for the same workspace, and carries SHA-256 checksums in a readable manifest', async () => {
    const bytes = await writeWorkspace(workspace, savedAt);
    expect(await writeWorkspace(workspace, savedAt)).toEqual(bytes);
    const manifest = JSON.parse(strFromU8(unzipSync(bytes)['manifest.json'] as Uint8Array));
    expect(manifest.files[0].sha256).toBe(
      createHash('sha256').update('Seriennummer;Spiel\nL-1;0,31\n').digest('hex'),
    );
  });

  it('cut off anywhere or with any byte changed, is refused with a reason or is what was written', async () => {
    const bytes = await writeWorkspace(workspace, savedAt);
    const damage = fc.oneof(
      fc.record({ cut: fc.nat(bytes.length - 1) }),
      fc.record({ at: fc.nat(bytes.length - 1), flip: fc.integer({ min: 1, max: 255 }) }),
    );
    let refused = 0;
    await fc.assert(
      fc.asyncProperty(damage, async (one) => {
        const damaged = 'cut' in one ? bytes.slice(0, one.cut) : bytes.slice();
        if ('at' in one) damaged[one.at] = (damaged[one.at] as number) ^ one.flip;
        try {
          // A byte of the zip that nothing depends on, such as an entry's day, may change.
          expect(await readWorkspace(damaged)).toEqual(workspace);
        } catch (error) {
          expect(error).toBeInstanceOf(WorkspaceRefused);
          expect((error as Error).message).toMatch(/workspace file/);
          refused++;
        }
      }),
      { numRuns: 600 },
    );
    expect(refused).toBeGreaterThan(400);
  });
});
