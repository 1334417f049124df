import { describe, expect, test } from 'vitest';
import { keptSentences, keptWords } from '../../app/words/keptWords';
import { sizeWords, storageSentence } from '../../app/words/storageWords';
import { mergeSentence, offerSentence } from '../../app/words/workspaceWords';
import type { KeptState } from '../../lib/analysis/engine/kept/KeptState';
import type { OfferedWorkspace } from '../../lib/analysis/engine/workspace/WorkspaceOffer';

const kept = (changes: Partial<KeptState> = {}): KeptState => ({
  number: 1,
  saving: 'saved',
  notKept: null,
  files: 2,
  entries: 5,
  writes: true,
  takenOver: false,
  changedElsewhere: false,
  aside: [],
  ...changes,
});

describe('what is kept', () => {
  test('in a few words; a visitor of the demo fleet has nothing to keep', () => {
    expect(keptWords(kept())).toBe('saved in this browser');
    expect(keptWords(kept({ saving: 'saving' }))).toBe('saving');
    expect(keptWords(kept({ saving: 'not saved', writes: false }))).toBe('not saved');
    expect(keptWords(kept({ writes: false }))).toBe('another tab writes');
    expect(keptWords(kept({ files: 0, entries: 0 }))).toBeNull();
    expect(keptSentences(kept())).toEqual([]);
  });

  test('a full storage and a browser that refuses say what to do', () => {
    const of = (cause: 'full' | 'refused') =>
      keptSentences(kept({ saving: 'not saved', notKept: { cause, detail: 'quota of 10 MB' } })).join(' ');
    expect(of('full')).toMatch(/storage .* is full \(quota of 10 MB\)\. .* Save the workspace file/);
    expect(of('refused')).toMatch(/refuses to keep anything .* Save the workspace file/);
  });

  test('tabs and values set aside', () => {
    expect(keptSentences(kept({ writes: false }))[0]).toContain('has this page open and writes');
    expect(keptSentences(kept({ writes: false, takenOver: true }))[0]).toContain('has taken over writing');
    expect(keptSentences(kept({ changedElsewhere: true }))[0]).toContain('open them before you go on');
    const aside = [{ name: 'journal', parts: 1, reason: 'an entry has no number' }] as const;
    expect(keptSentences(kept({ aside }))).toEqual([
      'What was kept here could not be read in full: 1 part of the journal of decisions (an entry has no number). It was set aside in this browser and is not in use: open the workspace file that you saved last.',
    ]);
  });
});

describe('storage', () => {
  test.each([
    [0, '0 kB'],
    [1500, '1.5 kB'],
    [38_400_000, '38 MB'],
    [1_240_000_000, '1.2 GB'],
  ])('%d bytes are %s', (bytes, words) => {
    expect(sizeWords(bytes).replace('\u00a0', ' ')).toBe(words);
  });

  test('what the browser may do with it', () => {
    const storage = { isPersistent: false, used_bytes: null, most_bytes: null };
    expect(storageSentence(storage, false)).toMatch(/^It may clear it .* ask it not to\.$/);
    expect(storageSentence(storage, true)).toContain('did not promise');
    expect(storageSentence({ ...storage, isPersistent: true }, false)).toBe(
      'It promises not to clear it by itself.',
    );
  });
});

describe('a chosen workspace file', () => {
  const offer = (changes: Partial<OfferedWorkspace> = {}): OfferedWorkspace => ({
    status: 'offered',
    files: 1,
    entries: 3,
    own: { files: 0, entries: 0 },
    merge: { added: ['b.csv'], renamed: [], conflicts: [] },
    ...changes,
  });

  test('beside what is here', () => {
    expect(offerSentence('a.workspace', offer())).toBe(
      'a.workspace holds 1 file and 3 entries of the journal. You have none of your own in this browser.',
    );
    expect(offerSentence('a.workspace', offer({ own: { files: 2, entries: 1 } }))).toContain(
      'In this browser you have 2 files and 1 entry.',
    );
  });

  test('merged', () => {
    expect(mergeSentence(offer())).toBe('Merging adds 1 file: b.csv; nothing was decided differently.');
    const merge = { added: [], renamed: [{ name: 'a.csv', as: 'a (2).csv' }], conflicts: [] };
    expect(mergeSentence(offer({ merge }))).toBe(
      'Merging adds no file; a.csv comes in as a (2).csv; nothing was decided differently.',
    );
  });
});
