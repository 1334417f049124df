/** Letters are listed with their frequency, per mille of the letters (Russian) or of the accented letters (German, French, Spanish, Norwegian). */
/** Share of a letter in neither list, and of a sign that is no letter, per mille. */
const rare_permille = 0.5;
const sign_permille = 20;

/** Capitals are rarer than small letters, though whole sheets are written in them. */
const capitalShare = 0.5;
/** Letters beyond ASCII that touch a Latin letter: most accented ones, hardly any Russian one. */
const touchingLatin = { russian: 0.03, western: 0.93 } as const;
/** How common the encodings are beside windows-1252, so that a letter or two does not tell a rarer one. */
const commonness = { 'windows-1251': 1 / 20, old: 1 / 20_000 } as const;

const sampleBytes = 65_536;
const NO_BREAK_SPACE = 0xa0;

interface Script {
  readonly label: 'windows-1252' | 'windows-1251' | 'koi8-r' | 'ibm866';
  /** By byte: ln of its share among the characters beyond ASCII, and of that with touching a Latin letter or not. */
  readonly alone: Float64Array;
  readonly touching: Float64Array;
  readonly prior: number;
}

const russian = shares(
  'о110 е85 а80 и74 н67 т63 с55 р47 в45 л44 к35 м32 д30 п28 у26 я20 ы19 ь17 г17 з16 б16 ч14 й12 х10 ж9 ш7 ю6 ц5 щ4 э3 ф3 ъ1 ё1',
);
const western = shares('é200 ü110 ä100 å90 ø90 ö60 ó60 è50 í45 ß40 á40 à35 ñ30 ê15 ç15 ú15 æ15 î5 ô5 â5 û5');
const scripts: readonly Script[] = [
  script('windows-1252', western, touchingLatin.western, 1),
  script('windows-1251', russian, touchingLatin.russian, commonness['windows-1251']),
  script('koi8-r', russian, touchingLatin.russian, commonness.old),
  script('ibm866', russian, touchingLatin.russian, commonness.old),
];
const notRead = { 'koi8-r': 'KOI8-R', ibm866: 'code page 866' } as const;

function shares(permille: string): ReadonlyMap<string, number> {
  return new Map(permille.split(' ').map((entry) => [entry.charAt(0), Number(entry.slice(1)) / 1000]));
}

function script(
  label: Script['label'],
  letters: ReadonlyMap<string, number>,
  touches: number,
  common: number,
): Script {
  const all = Uint8Array.from({ length: 256 }, (_, byte) => byte);
  const characters = Array.from(new TextDecoder(label).decode(all));
  const share = Float64Array.from(characters, (character) => Math.log(shareOf(character, letters)));
  return {
    label,
    alone: share.map((one, byte) => one + (isLetter(characters[byte]) ? Math.log(1 - touches) : 0)),
    touching: share.map((one, byte) => one + (isLetter(characters[byte]) ? Math.log(touches) : 0)),
    prior: Math.log(common),
  };
}

/** µ, º and ª are signs. */
function isLetter(character: string | undefined): boolean {
  return character !== undefined && /[^µºª\P{L}]/u.test(character);
}

function shareOf(character: string, letters: ReadonlyMap<string, number>): number {
  const isDrawn = character >= '\u2500' && character <= '\u25ff';
  if (!isLetter(character)) return (isDrawn ? rare_permille : sign_permille) / 1000;
  const share = letters.get(character.toLowerCase()) ?? rare_permille / 1000;
  return character === character.toLowerCase() ? share : share * capitalShare;
}

/**
 * Tells windows-1251 (Cyrillic) from windows-1252 (Western European) by the characters beyond ASCII: how often each letter
 * stands in such text, and whether it touches a Latin letter.
 *
 * Log-likelihood of each way of reading them: sum of ln(share of the letter) + ln(share of such letters that touch a Latin one,
 * or do not); the largest is taken. KOI8-R and code page 866 are recognised, but refused by name.
 */
export function oneByteEncoding(
  bytes: Uint8Array,
):
  | { readonly encoding: 'windows-1251' | 'windows-1252'; readonly evidence: string }
  | { readonly reason: string } {
  const { alone, touching } = countBytes(bytes.subarray(0, sampleBytes));
  const read = scripts.map((one) => ({
    label: one.label,
    sum: one.prior + product(alone, one.alone) + product(touching, one.touching),
  }));
  const { label } = read.reduce((best, one) => (one.sum > best.sum ? one : best));
  if (label === 'windows-1252')
    return {
      encoding: label,
      evidence: 'not all bytes are UTF-8: read as windows-1252 (Western European)',
    };
  if (label === 'windows-1251')
    return {
      encoding: label,
      evidence:
        'not all bytes are UTF-8: read as windows-1251 (Cyrillic), since so its letters are as frequent as in Russian text',
    };
  return {
    reason: `the text looks Cyrillic in ${notRead[label]}, which is not read: save the sheet as CSV (UTF-8)`,
  };
}

/** How often each byte beyond ASCII stands there, with and without a Latin letter beside it. */
function countBytes(sample: Uint8Array): { readonly alone: Float64Array; readonly touching: Float64Array } {
  const counts = { alone: new Float64Array(256), touching: new Float64Array(256) };
  sample.forEach((byte, at) => {
    // The no-break space of numbers is a letter elsewhere: however often it stands, it tells nothing.
    if (byte < 0x80 || byte === NO_BREAK_SPACE) return;
    const counted = isLatin(sample[at - 1]) || isLatin(sample[at + 1]) ? counts.touching : counts.alone;
    counted[byte] = (counted[byte] as number) + 1;
  });
  return counts;
}

function isLatin(byte: number | undefined): boolean {
  return byte !== undefined && (byte | 0x20) >= 0x61 && (byte | 0x20) <= 0x7a;
}

function product(counts: Float64Array, logs: Float64Array): number {
  return counts.reduce((sum, count, byte) => (count === 0 ? sum : sum + count * (logs[byte] as number)), 0);
}
