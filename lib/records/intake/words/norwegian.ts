import type { Words } from './concepts';

/** Norwegian trade words and abbreviations. */
export const norwegian: Words = {
  thrust_play:
    'aksialklaring, aksial klaring, aksialspill, aksialt spill, aksialslark, aksial slark, endespill, endeklaring, trykklagerklaring, trykklager klaring, aksialvandring, aksialbevegelse, aksial spill, langsgående spill',
  thrust_hint: 'aksial, aksialt',
  runout:
    'kast, akselkast, rundløp, rundlop, rundkast, eksentrisitet, urundhet, akslingskast, kast aksel, slag aksel',
  nut_stand_out: 'mutterutstikk, utstikk mutter, utstikk, mutterhøyde, mutter utstikk, mutterhoyde',
  tip: 'spissklaring, spiss klaring, toppklaring, bladklaring, skovlklaring, tippklaring, bladspissklaring, skovlspissklaring, toppspill, blad klaring',
  gap: 'klaring, spill, spalte, radialklaring, slark, åpning klaring',
  compressor: 'kompressor*, komp, kompressorhjul, kompressorside, luftside, impeller',
  turbine: 'turbin, turbinside, turbinhjul, turb, eksosside, turbinen',
  found:
    'før, før demontering, før åpning, før overhaling, før demontasje, for demontering, for apning, for demontasje, for overhaling, demontering, demontasje, funnet, som funnet, innkommende, ved åpning, mottatt, ved demontering, ankomst',
  left: 'etter, etter montering, etter montasje, etter overhaling, etter sammenbygging, montering, montasje, forlatt, som forlatt, ved montering, utgående, sammenstilling, sluttmåling',
  '12': 'topp, oppe, øverst, overst, opp',
  '3': 'høyre, hoyre, høyre side, hoyre side',
  '6': 'bunn, nede, nederst, ned',
  '9': 'venstre, venstre side',
  clock_word: 'kl, klokken, klokka, h',
  seen_from: 'sett fra, sett, fra, sett mot',
  hours:
    'timer, driftstimer, gangtimer, drifttimer, gangtid, timeteller, timetall, driftstid, løpetimer, lopetimer',
  engine: 'motor, hovedmotor, maskin, aggregat, motornr, hjelpemotor, dieselmotor',
  unit: 'turbolader, turbo, rotor, lader, enhet, rotorenhet, turbo lader, rotorpakke',
  serial: 'serienummer, serienr, serie nr, serie nummer, ser nr, fabrikasjonsnummer, fabrikknr',
  number: 'nummer, nr, navn, merking',
  frame: 'størrelse, storrelse, modell, rammestørrelse',
  type: 'type',
  site: 'anlegg, stasjon, kraftstasjon, skip, fartøy, sted, fartoy, kraftverk, lokasjon',
  bank: 'bank, rekke, sylinderrekke, side, sylinderbank',
  workshop: 'verksted, utført av, målt av, utfort av, leverandør service',
  kind: 'årsak, art, type overhaling, grunn, overhalingstype',
  planned: 'planlagt, rutine, planmessig, periodisk',
  unplanned: 'uplanlagt, ikke planlagt, havari, skade, feil, uforutsett',
  fitted:
    'nye deler, deler montert, monterte deler, skiftede deler, utskiftede deler, byttede deler, reservedeler, deler byttet',
  remarks: 'merknad*, anmerkning*, kommentar*, notat, notater, bemerkning*',
  revision: 'revisjon, utgave, versjon, rev nr',
  overhaul: 'overhaling, arbeidsordre, jobb, rapport, rapportnr, ordre, ordrenr, rapport nr, jobbnr, ao',
  characteristic:
    'karakteristikk, måling, målepunkt, parameter, mål, måleparameter, hva, målt størrelse, kontrollpunkt',
  stage: 'tilstand, trinn, fase, før etter, tidspunkt, stadium',
  position: 'posisjon, plassering, klokkeposisjon, klokkestilling, målested',
  value: 'verdi, måleverdi, målt, avlesning, resultat, målt verdi, avlest',
  uom: 'måleenhet, enhet, enheter, benevning',
  lower: 'går inn, går, går gjennom, passerer',
  upper: 'går ikke inn, går ikke, går ikke gjennom, passerer ikke',
  date: 'dato, dag, overhalingsdato, måledato, dato for overhaling',
  extreme: 'største, minste, maks, gjennomsnitt, middel, snitt',
  other:
    'grense, grenseverdi, tillatt, toleranse, nominell, siden, neste, forrige, pris, antall, kostnad, kunde, faktura, levering, produsent, byggeår, måleverktøy, avvik, differanse, slitasje, temperatur, trykk, turtall, intervall, beskrivelse, balansering',
  elsewhere: 'lager, lagerklaring, tetning, labyrint, dysering, diffusor, hus, foring, pakning',
  filler: 'på, i, og, eller, med, ved, aksel, hjul, spiss, mm, blad, til, sum, skovl',
};
