import { strToU8, zipSync } from 'fflate';
import { seal } from '../../../lib/records/workspace/seal';
import { writeWorkspace } from '../../../lib/records/workspace/writeWorkspace';
import {
  changedFile,
  changedJournal,
  changedManifest,
  changedParts,
  savedAt,
  workspace,
} from './changedWorkspace';
import { type Hostile, manifests } from './hostileManifests';

const written = () => writeWorkspace(workspace, savedAt);
const cutTo = (share: number) => async () => {
  const bytes = await written();
  return bytes.slice(0, Math.floor(bytes.length * share));
};
const journalLine = (change: object) => JSON.stringify([{ ...workspace.journal[0], ...change }]);
const centralDirectory = 0x02014b50;
const localHeader = 0x04034b50;

/** The written zip with the four bytes at an offset from each of its headers of a kind changed. */
async function changedHeaders(signature: number, offset: number, value: number): Promise<Uint8Array> {
  const bytes = await written();
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  for (let at = 0; at < bytes.length - 46; at++)
    if (view.getUint32(at, true) === signature) view.setUint32(at + offset, value, true);
  return bytes;
}

const cutOff: readonly Hostile[] = [
  ['no bytes', () => new Uint8Array(0), /cannot be unpacked/],
  ['one byte', () => new Uint8Array([0x50]), /cannot be unpacked/],
  ['its first 4 bytes', async () => (await written()).slice(0, 4), /cannot be unpacked/],
  ['its first half', cutTo(0.5), /cannot be unpacked/],
  ['nine tenths of it', cutTo(0.9), /cannot be unpacked/],
  ['all but its last byte', async () => (await written()).slice(0, -1), /cannot be unpacked|damaged/],
  [
    'its end without its beginning',
    async () => (await written()).slice(200),
    /cannot be unpacked|damaged|not opened/,
  ],
  ['zeros of its length', async () => new Uint8Array((await written()).length), /cannot be unpacked/],
];

const foreign: readonly Hostile[] = [
  ['a CSV file', () => strToU8('unit,frame\nL-1,Lark\n'), /cannot be unpacked/],
  ['a page of the web', () => strToU8('<!doctype html><script>alert(1)</script>'), /cannot be unpacked/],
  ['another zip', () => zipSync({ 'letter.txt': strToU8('hello') }), /without manifest\.json/],
  ['an empty zip', () => zipSync({}), /without manifest\.json/],
  [
    'a workspace within a zip',
    async () => zipSync({ 'a.workspace': await written() }),
    /without manifest\.json/,
  ],
];

const parts: readonly Hostile[] = [
  [
    'a missing file',
    () =>
      changedParts((p) => {
        delete p['files/00001'];
      }),
    /files\/00001, which it names, is missing/,
  ],
  [
    'a changed file',
    () =>
      changedParts((p) => {
        p['files/00001'] = strToU8('Seriennummer;Spiel\nL-1;0,13\n');
      }),
    /'karte\.csv' in it does not agree/,
  ],
  [
    'a part of its own that climbs',
    () =>
      changedParts((p) => {
        p['../../evil.sh'] = strToU8('x');
      }),
    /'\.\.\/\.\.\/evil\.sh', which its manifest does not name/,
  ],
  [
    'a part named as an object has by itself',
    async () => {
      const bytes = await changedParts((p) => Object.assign(p, { _9letters: strToU8('{}') }));
      return Buffer.from(
        Buffer.from(bytes).toString('latin1').replaceAll('_9letters', '__proto__'),
        'latin1',
      );
    },
    /an entry of it cannot be named/,
  ],
  [
    'a path that climbs',
    () =>
      changedManifest((m) => {
        for (const file of m.files) file.path = `../${file.path}`;
      }),
    /paths that this page never writes/,
  ],
  [
    'a path from the root',
    () => changedManifest((m) => Object.assign(m.files[0] ?? {}, { path: '/etc/passwd' })),
    /paths that this page never writes/,
  ],
  [
    'two names for one part',
    () => changedManifest((m) => Object.assign(m.files[1] ?? {}, { path: 'files/00001' })),
    /paths that this page never writes/,
  ],
  [
    'two files of one name',
    () =>
      changedManifest((m) => {
        for (const file of m.files) file.name = 'one.csv';
      }),
    /two of its files have one name/,
  ],
  [
    'a bomb',
    () => changedParts((p) => Object.assign(p, { 'files/00001': new Uint8Array(60_000_000) })),
    /as no export does/,
  ],
  [
    'a size of 4 GB in its directory',
    () => changedHeaders(centralDirectory, 24, 0xfffffff0),
    /2 GB|as no export does/,
  ],
  [
    'a size of 100 in its directory for more',
    () => changedHeaders(centralDirectory, 24, 100),
    /damaged|cannot be unpacked/,
  ],
  [
    'entries that are elsewhere',
    () => changedHeaders(centralDirectory, 42, 0x7fffffff),
    /cannot be unpacked|damaged/,
  ],
  ['entries said to be enciphered', () => changedHeaders(localHeader, 4, 0x00010014), 'opens'],
  [
    '20,001 entries',
    () =>
      changedParts((p) => void Array.from({ length: 20_001 }, (_, n) => (p[`x${n}`] = new Uint8Array(0)))),
    /over 20000 entries/,
  ],
];

const journals: readonly Hostile[] = [
  [
    'a changed journal',
    () =>
      changedParts((p) => {
        p['journal.json'] = strToU8('[]');
      }),
    /the journal in it does not agree/,
  ],
  ['a journal that is no JSON', () => changedJournal('[{'), /journal\.json in it is not JSON/],
  ['a journal that is no list', () => changedJournal('{"length":3}'), /damaged: journal/],
  ['a journal of another length', () => changedJournal('[]'), /the journal in it does not agree/],
  ['a journal of numbers', () => changedJournal('[1,2,3]'), /damaged: journal 0/],
  [
    'a decision of no kind',
    () => changedJournal(journalLine({ decision: { kind: 'evil', id: 'x' } }), 1),
    /damaged: journal 0\.decision/,
  ],
  ['an act of no kind', () => changedJournal(journalLine({ act: 'forged' }), 1), /damaged: journal 0\.act/],
  ['lines out of order', () => changedJournal(journalLine({ number: 7 }), 1), /not in order/],
];

const sealed: readonly Hostile[] = [
  ['a sealed one without its passphrase', async () => seal(await written(), 'right'), /give its passphrase/],
  ['the opening line of a sealed one alone', () => strToU8('sealed workspace 1\n'), /give its passphrase/],
];

const harmless: readonly Hostile[] = [
  [
    'a name that climbs, with markup',
    () => changedFile('../../../../etc/<script>x</script>.csv', strToU8('a')),
    'opens',
  ],
  [
    'a name of control characters',
    () => changedFile('\u0000\u001b[2J\r\n\u202egpj.csv', strToU8('a')),
    'opens',
  ],
  ['a name as an object has by itself', () => changedFile('__proto__', strToU8('a')), 'opens'],
  [
    'bytes that are no text',
    () =>
      changedFile(
        'a.csv',
        new Uint8Array(4096).map((_, n) => n * 31),
      ),
    'opens',
  ],
];

/** Damaged and hostile files, each another one. */
export const hostileWorkspaces: readonly Hostile[] = [
  ...cutOff,
  ...foreign,
  ...manifests,
  ...parts,
  ...journals,
  ...sealed,
  ...harmless,
];
