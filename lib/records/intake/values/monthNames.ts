/** Month names and abbreviations in English, German, French, Spanish, Norwegian and Russian, January first. */
const names: readonly string[] = [
  'january jan januar jän jänner janvier janv enero ene январь января янв',
  'february feb februar febr feber février févr fév febrero февраль февраля фев февр',
  'march mar märz maerz mär mrz mars marzo mrzo март марта мар',
  'april apr avril avr abril abr апрель апреля апр',
  'may mai mayo май мая',
  'june jun juni juin junio июнь июня июн',
  'july jul juli juillet juil julio июль июля июл',
  'august aug août agosto ago август августа авг',
  'september sep sept septembre septiembre setiembre set сентябрь сентября сен сент',
  'october oct oktober okt octobre octubre октябрь октября окт',
  'november nov novembre noviembre ноябрь ноября ноя нояб',
  'december dec dezember dez décembre déc diciembre dic desember des декабрь декабря дек',
];

/** Lower case without accents: sheets write 'fevrier', 'FÉVRIER', 'février'. */
const key = (word: string) => word.toLowerCase().normalize('NFD').replaceAll(/\p{M}/gu, '');

const numbers: ReadonlyMap<string, number> = new Map(
  names.flatMap((line, index) => line.split(' ').map((name) => [key(name), index + 1] as const)),
);

/** Number of the month (1 to 12) that a word names, or null. */
export function monthNumber(word: string): number | null {
  return numbers.get(key(word)) ?? null;
}
