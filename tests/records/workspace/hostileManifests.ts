import { strFromU8, strToU8 } from 'fflate';
import { changedManifest, changedParts, setManifest } from './changedWorkspace';

/** A damaged or hostile file: how it is made, and what it comes to: its reason, or that it opens harmlessly as data. */
export type Hostile = readonly [
  name: string,
  make: () => Promise<Uint8Array> | Uint8Array,
  comesTo: RegExp | 'opens',
];

/** Workspace files whose manifest is not as this page writes it. */
export const manifests: readonly Hostile[] = [
  ['a newer version', () => changedManifest((m) => Object.assign(m, { version: 2 })), /newer version/],
  [
    'an absurd version',
    () => changedManifest((m) => Object.assign(m, { version: 1e308 })),
    /damaged|newer version/,
  ],
  ['an older version than any', () => changedManifest((m) => Object.assign(m, { version: 0 })), /form 0/],
  [
    'a version of words',
    () => changedManifest((m) => Object.assign(m, { version: 'one' })),
    /names no version/,
  ],
  ['a negative version', () => changedManifest((m) => Object.assign(m, { version: -1 })), /names no version/],
  ['another form', () => changedManifest((m) => Object.assign(m, { form: 'x' })), /does not say "form"/],
  ['a manifest that is no JSON', () => changedParts((p) => setManifest(p, '{')), /not JSON/],
  ['a manifest that is a list', () => changedParts((p) => setManifest(p, '[]')), /does not say "form"/],
  ['a manifest that is null', () => changedParts((p) => setManifest(p, 'null')), /does not say "form"/],
  [
    'a manifest of 200,000 brackets',
    () => changedParts((p) => setManifest(p, '['.repeat(200_000))),
    /not JSON/,
  ],
  [
    'a manifest of 100,000 lists within each other',
    () => changedParts((p) => setManifest(p, `${'['.repeat(100_000)}${']'.repeat(100_000)}`)),
    /not JSON|does not say "form"/,
  ],
  [
    'a manifest in another encoding',
    () =>
      changedParts((p) => {
        p['manifest.json'] = new Uint8Array([0xff, 0xfe, 0x7b, 0x00]);
      }),
    /not JSON/,
  ],
  [
    'a manifest without its checksum',
    () =>
      changedParts((p) => {
        delete p['manifest.sha256'];
      }),
    /manifest\.sha256, which it names, is missing/,
  ],
  [
    'a changed name in the manifest',
    () =>
      changedParts((p) => {
        const text = strFromU8(p['manifest.json'] as Uint8Array);
        p['manifest.json'] = strToU8(text.replace('karte.csv', 'warte.csv'));
      }),
    /the manifest in it does not agree/,
  ],
  ['files that are no list', () => changedManifest((m) => Object.assign(m, { files: {} })), /damaged: files/],
  [
    'a file without a name',
    () => changedManifest((m) => Object.assign(m.files[0] ?? {}, { name: '' })),
    /damaged/,
  ],
  [
    'a name of a million letters',
    () => changedManifest((m) => Object.assign(m.files[0] ?? {}, { name: 'a'.repeat(1_000_000) })),
    /damaged: files\.0\.name/,
  ],
  [
    'a size of words',
    () => changedManifest((m) => Object.assign(m.files[0] ?? {}, { bytes: '12' })),
    /damaged/,
  ],
  [
    'a negative size',
    () => changedManifest((m) => Object.assign(m.files[0] ?? {}, { bytes: -1 })),
    /damaged/,
  ],
  [
    'a size too large',
    () => changedManifest((m) => Object.assign(m.files[0] ?? {}, { bytes: 9e15 })),
    /damaged/,
  ],
  [
    'a checksum of 8 digits',
    () => changedManifest((m) => Object.assign(m.files[0] ?? {}, { sha256: '0'.repeat(8) })),
    /64 hexadecimal/,
  ],
];
