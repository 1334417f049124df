import { tidyText } from './tidyText';

const words = `
n/a n.a. na n/m n.m. nm n/r none nil null nan void blank empty missing unknown ok okay good fine tbd tba nok
not ok|not measured|not taken|not recorded|not available|not applicable|not checked|not done|no reading|no data
within limits|in order|(blank)|(null)|(none)|<na>|<null>|undefined
i.o. io n.i.o. k.a. n.b. n.v. entf. entfällt fehlt leer kein keine keiner unbekannt gut
in ordnung|nicht in ordnung|keine angabe|nicht gemessen|nicht gem.|n. gem.|nicht vorhanden|nicht bekannt
nicht anwendbar|nicht geprüft|ohne befund|o.b.
s/o r.a.s. ras néant vide manquant manquante inconnu inconnue bon bonne conforme aucun aucune
sans objet|non mesuré|non mesurée|pas mesuré|pas mesurée|non relevé|non relevée|non disponible|non applicable
rien à signaler|n.d.|n.c.
s/d ninguno ninguna vacío falta desconocido desconocida bien correcto correcta conforme
no medido|no medida|sin medir|sin dato|sin datos|no disponible|no aplica|no aplicable|en orden
i/t tom mangler ukjent ingen bra i.a. i.m.
ikke målt|ikke tatt|ikke tilgjengelig|ikke aktuelt|ikke relevant|ikke kjent|i orden|uten anmerkning
н/д н/и нет норма норм пусто отсутствует неизвестно ок хорошо исправно
не измерено|не измерен|не измерялось|не измеряли|не замерено|не замеряли|нет данных|в норме|не применимо|не проверено
`;

/** Lower case, one space between words, no dots nor spaces after them: 'n.a.', 'N. A.', 'na' are one word. */
const key = (text: string) => text.toLowerCase().replaceAll(/\.\s*/g, '').replaceAll(/\s+/g, ' ').trim();

const known: ReadonlySet<string> = new Set(
  words
    .split('\n')
    .flatMap((line) => (line.includes('|') ? line.split('|') : line.split(' ')))
    .map(key)
    .filter((word) => word !== ''),
);

/**
 * The text itself if it is a word or mark for 'nothing was measured or written' in English, German, French, Spanish,
 * Norwegian or Russian ('n/a', 'i.O.', 'non mesuré', '-', 'xxx'); null for anything else and for an empty text.
 */
export function noneWord(text: string): string | null {
  const tidy = tidyText(text);
  const isMark = /^(?:[-\u2013\u2014_.\u2026/\\*?\s]+|x+)$/i.test(tidy);
  return tidy !== '' && (isMark || known.has(key(tidy))) ? tidy : null;
}
