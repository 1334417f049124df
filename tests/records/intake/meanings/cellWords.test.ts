import { describe, expect, it } from 'vitest';
import { builtInCharacteristics } from '../../../../lib/records/characteristics';
import {
  characteristicOfWord,
  clockOfWord,
  kindOfWord,
  stageOfWord,
} from '../../../../lib/records/intake/words/cellWords';
import { uomOfWord } from '../../../../lib/records/intake/words/uomWords';

function words(list: string): readonly string[] {
  return list.split(';').map((word) => word.trim());
}

describe('stageOfWord', () => {
  it.each(words('F; found; As Found; AF; before; vor Zerlegung; avant démontage; antes; før; до разборки'))(
    'reads %s as found',
    (word) => expect(stageOfWord(word)).toBe('found'),
  );
  it.each(words('L; left; AS LEFT; after; nach Montage; apres remontage; después; etter; после сборки'))(
    'reads %s as left',
    (word) => expect(stageOfWord(word)).toBe('left'),
  );
  it.each(words('; x; gauche; links; before assembly; found / left; 12; good'))(
    'takes %s as no stage',
    (word) => expect(stageOfWord(word)).toBeNull(),
  );
});

describe('clockOfWord', () => {
  it.each([
    ['12', "12; 12 o'clock; 12 Uhr; 12h; 12:00; kl. 12; T; top; oben; haut; arriba; oppe; верх"],
    ['6', '6; 06; 6 heures; B; bottom; unten; bas; abajo; bunn; низ'],
    ['3', '3; 3 Uhr; 03:00; 3 ч'],
    ['9', '9; 9 horas; kl 9'],
  ] as const)('reads %s o’clock without a question', (clock, list) => {
    for (const word of words(list)) expect(clockOfWord(word), word).toEqual({ clock, viewingEndOpen: false });
  });

  it.each([
    ['3', 'R; right; rechts; droite; derecha; høyre; hoyre; право'],
    ['9', 'L; left; links; gauche; izquierda; venstre; лево'],
  ] as const)('reads the side at %s o’clock with the viewing end open', (clock, list) => {
    for (const word of words(list)) expect(clockOfWord(word), word).toEqual({ clock, viewingEndOpen: true });
  });

  it('changes sides if the cell says that it is seen from the turbine end', () => {
    expect(clockOfWord('right, seen from turbine end')).toEqual({ clock: '9', viewingEndOpen: false });
    expect(clockOfWord('links vom Verdichter gesehen')).toEqual({ clock: '9', viewingEndOpen: false });
    expect(clockOfWord('left from turbine')).toEqual({ clock: '3', viewingEndOpen: false });
    expect(clockOfWord('top seen from turbine end')).toEqual({ clock: '12', viewingEndOpen: false });
  });

  it.each(words('; 5; 4 Uhr; H; D; as left; 12:30; 3 9; top right'))('takes %s as no position', (word) =>
    expect(clockOfWord(word)).toBeNull(),
  );
});

describe('characteristicOfWord', () => {
  it.each([
    [
      'thrust_play',
      'thrust_play; end float; Axialspiel; jeu axial; juego axial; aksialklaring; осевой зазор; осевой люфт; axial clearance',
    ],
    [
      'runout',
      'runout; shaft-end runout; TIR; Rundlauf; Schlag; faux-rond; excentricidad; alabeo; kast; биение',
    ],
    [
      'tip_compressor',
      'comp tip; Spalt Verdichter; Verdichterspalt; jeu en bout d’aubes compresseur; holgura de punta compresor; spissklaring kompressor; зазор по концам рабочего колеса компрессора',
    ],
    [
      'tip_turbine',
      "TIP_TURBINE; Tip clearance, turbine; Turbinenspalt; jeu en bout d'ailettes turbine; holgura turbina; spissklaring turbin; зазор по концам лопаток турбины",
    ],
    [
      'nut_stand_out',
      'nut stand-out; Mutterüberstand; dépassement de l’écrou; mutterutstikk; выступание гайки',
    ],
  ])('reads %s', (code, list) => {
    for (const word of words(list)) {
      expect(characteristicOfWord(word, builtInCharacteristics)?.code, word).toBe(code);
    }
  });

  it('takes what is none, or leaves the wheel open, as no characteristic', () => {
    for (const word of words(
      '; lube oil pressure; tip clearance; Spalt; bearing clearance turbine; Grenzwert Axialspiel; 0.31',
    )) {
      expect(characteristicOfWord(word, builtInCharacteristics), word).toBeNull();
    }
  });

  it('names only characteristics that it is given', () => {
    expect(characteristicOfWord('runout', [])).toBeNull();
  });
});

describe('uomOfWord', () => {
  it.each([
    ['mm', 'mm; MM; [mm]; (mm); мм'],
    ['um', 'µm; μm; um; my; micron; 1/1000 mm; 0.001 mm; мкм'],
    ['0.01mm', '0.01mm; 1/100 mm; 1/100; 0,01 mm; mm/100; Hundertstel; centièmes; hundredths of a mm'],
    ['mil', 'mil; mils; thou; 0.001"; 1/1000 in'],
    ['in', 'in; inch; "; Zoll; pouces; дюйм'],
  ])('reads %s', (uom, list) => {
    for (const word of words(list)) expect(uomOfWord(word), word).toBe(uom);
  });

  it('takes other units and other words as none', () => {
    for (const word of words('; cm; 1/100 in; 1/10 mm; h; bar; n/a; mm left; 0.31')) {
      expect(uomOfWord(word), word).toBeNull();
    }
  });
});

describe('kindOfWord', () => {
  it.each([
    ['planned', 'planned; scheduled; geplant; planifié; programado; planlagt; плановый'],
    [
      'unplanned',
      'unplanned; ungeplant; außerplanmäßig; non planifié; no programado; ikke planlagt; havari; внеплановый; breakdown',
    ],
  ])('reads %s', (kind, list) => {
    for (const word of words(list)) expect(kindOfWord(word), word).toBe(kind);
  });

  it('takes other words as neither', () => {
    for (const word of words('; x; 2020-01-01')) expect(kindOfWord(word), word).toBeNull();
  });
});
