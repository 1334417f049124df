import { formatCount, formatSignificant } from '../../lib/charts/format';

/** What the browser says of the space that it keeps for the page. */
export interface Storage {
  /** Whether it promises not to clear it by itself. */
  readonly isPersistent: boolean;
  readonly used_bytes: number | null;
  readonly most_bytes: number | null;
}

const units = [
  { name: 'GB', bytes: 1e9 },
  { name: 'MB', bytes: 1e6 },
  { name: 'kB', bytes: 1e3 },
] as const;

/** A size with two digits: '38 MB', '1.2 GB'; '0 kB' for nothing. */
export function sizeWords(bytes: number): string {
  const unit = units.find((one) => bytes >= one.bytes) ?? units[2];
  const size = bytes / unit.bytes;
  return `${size < 10 ? formatSignificant(size, 2) : formatCount(size)}\u00a0${unit.name}`;
}

/** How much is kept and whether the browser may clear it, with what was asked for. */
export function storageSentence({ isPersistent, used_bytes, most_bytes }: Storage, refused: boolean): string {
  const most = most_bytes === null ? '' : ` of at most ${sizeWords(most_bytes)}`;
  const used =
    used_bytes === null
      ? ''
      : `This browser holds ${sizeWords(used_bytes)}${most} for this page, the page itself included. `;
  if (isPersistent) return `${used}It promises not to clear it by itself.`;
  const may =
    'It may clear it by itself when the disk gets full or the page is not used for weeks; you can ask it not to.';
  return `${used}${may}${refused ? ' It was asked and did not promise it: save the workspace file from time to time.' : ''}`;
}
