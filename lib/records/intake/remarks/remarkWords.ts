import { foldText } from '../words/foldText';

/** Beginnings of trade words in English, German, French, Spanish, Norwegian and Russian, folded when they are compiled. */
const stems = {
  meter:
    'hour meter|hourmeter|hours meter|meter|hour counter|counter|zähler|betriebsstundenzähler|stundenzähler|bstd zähler|compteur|horamètre|horómetro|contador|cuentahoras|timeteller|driftstimeteller|teller|telleverk|счётчик|моточасы счётчик',
  replaced:
    'replac|renew|exchang|swapp|chang|new|reset to|zeroed|getauscht|ausgetauscht|gewechselt|ersetzt|erneuert|tausch|austausch|wechsel|neue|auf null|remplac|échang|chang|neuf|nouveau|remis|reemplaz|sustitu|cambi|nuevo|puesto a cero|byttet|skiftet|utskiftet|bytte|bytta|ny |nullstilt|замен|нов|сменен|смена|обнул',
  corrected:
    'correct|adjust|korrigiert|korrektur|berichtigt|corrig|correg|correcc|korrigert|justert|исправлен|скорректир|поправк|корректир',
  unit: 'unit|turbocharger|turbo|charger|cartridge|rotor|läufer|lader|turbolader|rumpfgruppe|atl |turbocompresseur|turbosoufflante|groupe|turbocompresor|turbosobrealimentador|cartucho|turbolader|aggregat|патрон|агрегат|турбокомпрессор|ротор|тк ',
  part: 'bearing|seal|nozzle|ring|casing|nut|filter|pump|lager|axiallager|gleitlager|dichtung|düsen|gehäuse|palier|joint|garniture|tuyère|cojinete|sello|junta|tobera|tetning|dyse|подшипник|уплотнен|сопл|корпус',
  fitted:
    'fitted|installed|mounted|put on|eingebaut|montiert|aufgesetzt|einbau|monté|installé|posé|montad|instalad|montert|installert|innsatt|satt på|установлен|смонтирован|поставлен',
  here: 'here|this engine|hier|diesem motor|diesen motor|ici|ce moteur|aquí|este motor|her|denne motor|здесь|сюда|этот двигатель|этом двигател',
  cameWith:
    'came with|come with|arrived with|delivered with|had|has run|had run|with|kam mit|hatte|brachte|mit|gelaufen|arrivé avec|venu avec|livré avec|avait|avec|llegó con|vino con|entregado con|tenía|traía|con|kom med|levert med|hadde|med|пришёл с|поступил с|имел|наработк|с наработкой|прибыл с',
  cameFrom:
    'was on|were on|from|ex|previously on|formerly on|before on|transferred|war auf|war an|vorher auf|zuvor auf|von|aus|kam von|stammt|umgesetzt|était sur|venant d|vient d|provient d|de|du|estaba en|viene d|procede d|desde|del|var på|fra|sto på|был на|стоял на|со|с|из|перенес|перестав|снят с',
  /** The number after it is the first reading of the new meter. */
  startsAt:
    'starts|starting|start|reading|beginnt|begann|anfang|commence|début|démarre|empieza|comienza|inicio|starter|begynner|начин|начал',
  /** What is only planned or denied is no fact. */
  denied:
    'not|never|no longer|to be|should|must|will|shall|needs|next|nicht|kein|muss|müssen|soll|wird|zu tauschen|nächst|pas|jamais|doit|sera|à remplacer|prochain|nunca|debe|será|próxim|no se|sin cambi|ikke|skal|bør|må|neste|не|нужно|надо|следует|требуется|подлежит',
} as const;

export type RemarkConcept = keyof typeof stems;

/** Concepts whose words count whole; of the others a beginning does ('replac' for 'replacement'). */
const wholeWords: ReadonlySet<RemarkConcept> = new Set(['cameFrom', 'cameWith', 'denied', 'here', 'part']);
const wholeEndings: Partial<Record<RemarkConcept, string>> = {
  part: '\\p{L}{0,6}',
  denied: '(?:e[nrs]?|ed)?',
};

const patterns = new Map<RemarkConcept, RegExp>(
  (Object.entries(stems) as [RemarkConcept, string][]).map(([concept, list]) => {
    const words = list.split('|').map((word) => foldText(word).replaceAll(' ', '\\s'));
    const ending = wholeWords.has(concept) ? `${wholeEndings[concept] ?? ''}(?!\\p{L})` : '';
    // A German compound may end in the word: 'Motorzähler', 'Axiallager'.
    const start = concept === 'meter' || concept === 'part' ? '' : '(?<!\\p{L})';
    return [concept, new RegExp(`${start}(?:${words.join('|')})${ending}`, 'u')];
  }),
);

/** Whether a folded clause has a word of the concept. */
export function says(clause: string, concept: RemarkConcept): boolean {
  return (patterns.get(concept) as RegExp).test(`${clause} `);
}

const cameFromEngine = new RegExp(
  `(?<!\\p{L})(?:${stems.cameFrom
    .split('|')
    .map((word) => foldText(word).replaceAll(' ', '\\s'))
    .join(
      '|',
    )})\\p{L}?\\s+(?:(?:engine|motor|moteur|maskin|двигател\\p{L}*|the|der|dem|le|el|no\\.?|nr\\.?|мотор\\p{L}*)\\s+){0,3}§e(\\d+)§`,
  'u',
);

/** Number of the engine that a folded, masked clause says the unit came from, or null. */
export function engineCameFrom(clause: string): number | null {
  const found = cameFromEngine.exec(clause)?.[1];
  return found === undefined ? null : Number(found);
}
